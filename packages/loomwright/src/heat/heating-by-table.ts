import type { ResolvedSize } from '../conductor/index.js';
import { InputError } from '../error/index.js';
import { needInput, needObject } from '../error/guard.js';
import type { AmpacityTable } from '../table/index.js';
import type { Heated } from './heating.js';
import { tableAmpacity } from './table-ampacity.js';

export interface HeatingByTableInput {
  readonly table: AmpacityTable;
  /** Temperature class of the insulation in °C, 40 to 300. */
  readonly insulationTempC: number;
  /** Temperature of the air around the wire in °C, −60 to 200. */
  readonly ambientTempC: number;
  /** The size to judge, as the conductor tables give it. */
  readonly size: ResolvedSize;
}

/** Heating judged by a published table of currents, carried to the ambient temperature. */
export interface TableHeating extends Omit<HeatingByTableInput, 'size'> {
  readonly by: typeof heatingByTable;
}

/**
 * What a size bears, and how hot a current makes it, by a published table of currents.
 *
 * Hand it to `sizeFeed` as `heating.by`. The temperature follows from the table's own promise, the class temperature
 * at the printed current:
 *
 * $$T = T_\mathrm{amb} + (T_\mathrm{ins} - T_\mathrm{amb})\,(I/I_z)^2$$
 *
 * @param input table, insulation class, ambient, size
 * @returns current borne in A, and temperature in °C by current; a size below the table's smallest bears nothing
 * @throws InputError as `tableAmpacity` throws it
 * @source the table's own
 * @example heatingByTable({ table: us33Cfr183Ampacity, insulationTempC: 105, ambientTempC: 30, size: nearestSizes({ areaMm2: 2.5, table: iso19642 }).atLeast }).ampacityA //=> 35
 */
export function heatingByTable(input: HeatingByTableInput): Heated {
  needInput('heatingByTable', input);
  const { table, insulationTempC, ambientTempC, size } = input;
  needObject('heatingByTable', 'size', size, 'must be a size', 'take one from nearestSizes');
  let found;
  try {
    found = tableAmpacity({ table, areaMm2: size.areaMm2, insulationTempC, ambientTempC });
  } catch (error) {
    if (!(error instanceof InputError) || error.rule !== 'inTable' || error.field !== 'areaMm2') throw error;
    return nothing(table, `${table.key} does not reach down to ${size.label}`);
  }
  const { currentA: ampacityA, columnTempC } = found;
  if (ampacityA === 0) return nothing(table, 'the air alone is as hot as the insulation bears');
  return {
    ampacityA,
    tempC: (currentA) => {
      const tempC = ambientTempC + (columnTempC - ambientTempC) * (currentA / ampacityA) ** 2;
      return tempC > 400 ? null : tempC;
    },
    because: null,
    source: table.source,
    status: table.status,
  };
}

function nothing(table: AmpacityTable, because: string): Heated {
  return { ampacityA: 0, tempC: () => null, because, source: table.source, status: table.status };
}
