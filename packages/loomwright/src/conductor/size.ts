import { InputError } from '../error/index.js';
import type { ConductorTable, ResistanceBasis } from '../table/index.js';
import { M_PER_FOOT, circularMilsToMm2 } from '../unit/index.js';
import { needAreaMm2 } from './area.js';
import { gaugeAreaMm2, gaugeName, gaugeNumber } from './gauge.js';
import { COPPER_20, type Metal } from './metal.js';
import { needOneSize } from './one-size.js';

/** A conductor's size: exactly one of the three. They are never converted into one another unasked. */
export interface SizeInput {
  /** Nominal area in mm², 0.001 to 1e6. */
  readonly areaMm2?: number;
  /** American wire gauge, such as '18' or '4/0'. */
  readonly awg?: string;
  /** SAE gauge number of vehicle cable, such as '12'. */
  readonly saeGauge?: string;
}

/** A size with what its basis says of it. */
export interface ResolvedSize {
  /** The size in the words of the trade: '2.5 mm²', 'AWG 12', 'SAE 12'. */
  readonly label: string;
  /** Area in mm²: as printed where the table prints one, else the nominal or the AWG number's. */
  readonly areaMm2: number;
  /** Resistance in Ω/m at `ratedTempC`. */
  readonly resistanceOhmPerM: number;
  /** Temperature in °C at which that resistance holds. */
  readonly ratedTempC: number;
  readonly metal: Metal;
}

/** Looks a size up in its basis. The slip of a gauge given to a table of mm² is named, not guessed around. */
export function resolveSize(fn: string, input: SizeInput, basis: ResistanceBasis): ResolvedSize {
  needBasis(fn, basis);
  const { areaMm2, awg, saeGauge } = input;
  needOneSize(fn, input);
  if (areaMm2 !== undefined) needAreaMm2(fn, areaMm2);
  const awgNumber = awg === undefined ? 0 : gaugeNumber(fn, 'awg', awg);
  if (basis.kind === 'geometric') {
    if (saeGauge !== undefined) {
      throw new InputError(
        fn,
        'saeGauge',
        'inTable',
        saeGauge,
        'needs resistanceBasis saeJ1128',
        'an SAE size has no geometry of its own',
      );
    }
    const area = areaMm2 ?? gaugeAreaMm2(awgNumber);
    return {
      label: awg === undefined ? `${area} mm²` : `AWG ${gaugeName(awgNumber)}`,
      areaMm2: area,
      resistanceOhmPerM: COPPER_20 / area,
      ratedTempC: 20,
      metal: 'copper',
    };
  }
  const field = basis.sizes === 'mm2' ? 'areaMm2' : basis.sizes === 'awg' ? 'awg' : 'saeGauge';
  const size = input[field];
  if (size === undefined) {
    throw new InputError(fn, field, 'missing', size, `is required: ${basis.key} names its sizes by it`);
  }
  const wanted =
    field === 'areaMm2'
      ? String(size)
      : gaugeName(field === 'awg' ? awgNumber : gaugeNumber(fn, field, size as string));
  const row = basis.rows.find(([name]) => name === wanted);
  if (row === undefined) {
    const names = basis.rows.map(([name]) => name).join(' ');
    throw new InputError(fn, field, 'inTable', size, `must be a size of ${basis.key} (${names})`);
  }
  return resolveRow(basis, row);
}

/** A row of a table as a resolved size. */
export function resolveRow(table: ConductorTable, row: ConductorTable['rows'][number]): ResolvedSize {
  const [name, printed] = row;
  const { sizes, prints, ratedTempC, metal } = table;
  const circularMils = prints === 'circular-mils' ? printed : table.circularMils?.find(([size]) => size === name)?.[1];
  const areaMm2 =
    circularMils !== undefined
      ? circularMilsToMm2(circularMils)
      : sizes === 'mm2'
        ? Number(name)
        : gaugeAreaMm2(gaugeNumber('resolveRow', 'awg', name));
  const resistanceOhmPerM =
    prints === 'ohm/km' ? printed / 1000 : prints === 'ohm/kft' ? printed / (1000 * M_PER_FOOT) : COPPER_20 / areaMm2;
  const label = sizes === 'mm2' ? `${name} mm²` : `${sizes === 'awg' ? 'AWG' : 'SAE'} ${name}`;
  return { label, areaMm2, resistanceOhmPerM, ratedTempC, metal };
}

/** A basis must be one of the objects of the table room. */
export function needBasis(fn: string, basis: ResistanceBasis): void {
  if (typeof basis !== 'object' || basis === null || (basis.kind !== 'geometric' && basis.kind !== 'table')) {
    throw new InputError(
      fn,
      'resistanceBasis',
      basis === undefined || basis === null ? 'missing' : 'object',
      basis,
      'must be one of the resistance bases',
      'import one, such as iso19642, iec60228Class5 or geometric',
    );
  }
}
