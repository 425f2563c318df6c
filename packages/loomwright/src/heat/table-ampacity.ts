import { needAreaMm2 } from '../conductor/area.js';
import { awgToAreaMm2 } from '../conductor/index.js';
import { needOneSize } from '../conductor/one-size.js';
import { InputError } from '../error/index.js';
import { needInput, needTempC } from '../error/guard.js';
import type { SourceKey, SourceStatus } from '../source/index.js';
import type { AmpacityTable } from '../table/index.js';
import { circularMilsToMm2 } from '../unit/index.js';
import { ambientFactor } from './ambient-factor.js';

export interface TableAmpacityInput {
  /** The published table of currents. */
  readonly table: AmpacityTable;
  /** Copper area in mm², above 0: exactly one of the three sizes. */
  readonly areaMm2?: number;
  /** American wire gauge, such as '18' or '4/0'. */
  readonly awg?: string;
  /** SAE gauge number; only for a table that names its sizes so. For another give the area of the SAE wire. */
  readonly saeGauge?: string;
  /** Temperature class of the insulation, in °C. */
  readonly insulationTempC: number;
  /** Temperature of the air around the wire, in °C. */
  readonly ambientTempC: number;
}

export interface TableAmpacityResult {
  /** Current that the wire may carry by this table at the ambient temperature, in A; 0 where the air is too hot. */
  readonly currentA: number;
  /** Current as printed, at the table's base temperature, in A. */
  readonly printedCurrentA: number;
  /** Factor from the table's base to the ambient temperature. */
  readonly ambientFactor: number;
  /** Base temperature of the table, in °C. */
  readonly baseTempC: number;
  /** Size of the row that was taken, as printed. */
  readonly rowSize: string;
  /** Class of the column that was taken, in °C. */
  readonly columnTempC: number;
  readonly source: SourceKey;
  readonly sourceStatus: SourceStatus;
}

/**
 * Current that a published table lets a wire carry, corrected for the air around it.
 *
 * Use it to see what a rule grants. It knows nothing of the wire's real resistance, covering or company beyond the
 * table's own conditions; for those use `ampacity` and `bundleFactor`.
 *
 * $$I = I_\mathrm{print} \sqrt{\frac{T_\mathrm{ins} - T_\mathrm{amb}}{T_\mathrm{ins} - T_\mathrm{base}}}$$
 *
 * A size that the table does not list takes the largest listed size that is not above it, and a class that it does
 * not list takes the column of the next lower class: both can only lower the current. The area of a row is the larger
 * of the gauge's defined area and the one that the table prints for its own wires.
 *
 * @param input table, size, insulation class, ambient temperature
 * @returns amperes at the ambient, amperes as printed, factor, row and column taken, source
 * @throws InputError when a field is missing or out of range, when more or less than one size is given, and when the
 * size or the class lies below the table's smallest
 * @source the table's own
 * @example tableAmpacity({ table: us33Cfr183Ampacity, awg: '14', insulationTempC: 105, ambientTempC: 60 }).currentA //=> 27.1109
 */
export function tableAmpacity(input: TableAmpacityInput): TableAmpacityResult {
  needInput('tableAmpacity', input);
  const { table, insulationTempC, ambientTempC } = input;
  needTable(table);
  needTempC('tableAmpacity', 'insulationTempC', insulationTempC);
  needTempC('tableAmpacity', 'ambientTempC', ambientTempC);

  let column = -1;
  table.classesC.forEach((tempC, i) => {
    if (tempC <= insulationTempC && (column < 0 || tempC > (table.classesC[column] as number))) column = i;
  });
  if (column < 0) {
    const least = Math.min(...table.classesC);
    throw new InputError(
      'tableAmpacity',
      'insulationTempC',
      'inTable',
      insulationTempC,
      `must be at least ${least}, the lowest class of ${table.key}`,
    );
  }
  const row = takeRow(input);
  const columnTempC = table.classesC[column] as number;
  const printedCurrentA = row[column + 1] as number;
  const factor = ambientFactor({
    insulationTempC: columnTempC,
    ambientTempC,
    baseTempC: table.baseTempC,
  }).ambientFactor;
  return {
    currentA: printedCurrentA * factor,
    printedCurrentA,
    ambientFactor: factor,
    baseTempC: table.baseTempC,
    rowSize: row[0],
    columnTempC,
    source: table.source,
    sourceStatus: table.status,
  };
}

/** The row of the size, or of the largest size that is not above it. */
function takeRow(input: TableAmpacityInput): AmpacityTable['rows'][number] {
  const { table, areaMm2, awg, saeGauge } = input;
  needOneSize('tableAmpacity', input);
  const name = table.sizes === 'awg' ? awg : table.sizes === 'sae' ? saeGauge : undefined;
  const exact = name === undefined ? undefined : table.rows.find(([size]) => size === name);
  if (exact !== undefined) return exact;
  if (saeGauge !== undefined) {
    throw new InputError(
      'tableAmpacity',
      'saeGauge',
      'inTable',
      saeGauge,
      `must be a size of ${table.key}`,
      'an SAE wire is thinner than the AWG wire of its number; give its areaMm2',
    );
  }
  if (areaMm2 !== undefined) needAreaMm2('tableAmpacity', areaMm2);
  const area = areaMm2 ?? awgToAreaMm2(awg as string);
  let best: AmpacityTable['rows'][number] | undefined;
  let bestArea = 0;
  for (const row of table.rows) {
    const rowArea = rowAreaMm2(table, row[0]);
    if (rowArea <= area * (1 + 1e-9) && rowArea > bestArea) {
      best = row;
      bestArea = rowArea;
    }
  }
  if (best === undefined) {
    const field = areaMm2 === undefined ? 'awg' : 'areaMm2';
    throw new InputError(
      'tableAmpacity',
      field,
      'inTable',
      areaMm2 ?? awg,
      `must not be below the smallest size of ${table.key}`,
    );
  }
  return best;
}

/** Area of a row's size: the larger of the gauge's defined area and the printed one, so that matching is safe. */
function rowAreaMm2(table: AmpacityTable, size: string): number {
  const printed = table.circularMils?.find(([name]) => name === size)?.[1];
  const own = printed === undefined ? 0 : circularMilsToMm2(printed);
  if (table.sizes === 'mm2') return Number(size);
  return table.sizes === 'awg' ? Math.max(own, awgToAreaMm2(size)) : own;
}

/** The table must be one of the objects of the table room, or made like them. */
function needTable(table: AmpacityTable): void {
  const is = typeof table === 'object' && table !== null;
  if (is && Array.isArray(table.rows) && Array.isArray(table.classesC) && typeof table.baseTempC === 'number') return;
  throw new InputError(
    'tableAmpacity',
    'table',
    table === undefined ? 'missing' : 'object',
    table,
    'must be a table of currents',
    'import one, such as us33Cfr183Ampacity',
  );
}
