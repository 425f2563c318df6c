import type { ResolvedSize } from '../conductor/index.js';
import { InputError } from '../error/index.js';
import { needBetween, needOneOf } from '../error/guard.js';
import { tableAmpacity } from '../heat/index.js';
import type { SourceKey, SourceStatus } from '../source/index.js';
import type { AmpacityTable } from '../table/index.js';

/** Heating judged by a published table of currents, carried to the ambient temperature. */
export interface TableHeating {
  readonly kind: 'table';
  readonly table: AmpacityTable;
  /** Temperature class of the insulation in °C, 40 to 300. */
  readonly insulationTempC: number;
  /** Temperature of the air around the wire in °C, −60 to 200. */
  readonly ambientTempC: number;
}

/** How a wire's heating is judged. */
export type Heating = TableHeating;

/** What a wire bears and how hot a current makes it, by one way of judging. */
export interface Heated {
  /** Current in A that brings the conductor to its class; 0 where the air alone does. */
  readonly ampacityA: number;
  /** Conductor temperature in °C at a current in A; null beyond 400 °C. */
  readonly tempC: (currentA: number) => number | null;
  readonly source: SourceKey;
  readonly status: SourceStatus;
}

/** Throws unless the heating is whole. */
export function needHeating(fn: string, heating: Heating): void {
  if (typeof heating !== 'object' || heating === null) {
    throw new InputError(
      fn,
      'heating',
      heating === undefined ? 'missing' : 'object',
      heating,
      'must be an object with a kind',
    );
  }
  needOneOf(fn, 'heating.kind', heating.kind, ['table']);
  needBetween(fn, 'heating.insulationTempC', heating.insulationTempC, 40, 300, 'no class of wire is there');
  needBetween(fn, 'heating.ambientTempC', heating.ambientTempC, -60, 200);
}

/** The heating of one size, or null where the table does not reach down to it. */
export function heatOf(heating: Heating, size: ResolvedSize): Heated | null {
  let found;
  try {
    found = tableAmpacity({
      table: heating.table,
      areaMm2: size.areaMm2,
      insulationTempC: heating.insulationTempC,
      ambientTempC: heating.ambientTempC,
    });
  } catch (error) {
    if (error instanceof InputError && error.rule === 'inTable' && error.field === 'areaMm2') return null;
    throw error;
  }
  const { currentA: ampacityA, columnTempC } = found;
  const { ambientTempC } = heating;
  return {
    ampacityA,
    tempC: (currentA) => {
      if (ampacityA === 0) return currentA === 0 ? ambientTempC : null;
      const tempC = ambientTempC + (columnTempC - ambientTempC) * (currentA / ampacityA) ** 2;
      return tempC > 400 ? null : tempC;
    },
    source: found.source,
    status: found.sourceStatus,
  };
}
