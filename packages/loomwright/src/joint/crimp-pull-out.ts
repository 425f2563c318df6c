import { gaugeName, gaugeNumber } from '../conductor/gauge.js';
import { InputError } from '../error/index.js';
import { needInput, needText } from '../error/guard.js';
import type { SourceKey, SourceStatus } from '../source/index.js';
import type { PullOutTable } from '../table/index.js';
import { KG_PER_POUND, STANDARD_GRAVITY } from '../unit/index.js';

export interface CrimpPullOutInput {
  readonly table: PullOutTable;
  /** Size as the table names it: a gauge ('18') or an area in mm² ('2.5'). */
  readonly size: string;
}

export interface CrimpPullOutResult {
  /** Least force that the crimp must hold, in N. */
  readonly pullOutN: number;
  /** Size of the row that was taken. */
  readonly rowSize: string;
  readonly source: SourceKey;
  readonly sourceStatus: SourceStatus;
}

/**
 * Force that a crimp must hold before the wire comes out.
 *
 * Use it to judge a sample crimp that was pulled apart on a scale; never pull a crimp that is to be used so hard. Where
 * a table prints pounds-force and newtons and they differ, the larger one counts. An area between two rows takes the
 * force of the larger one.
 *
 * @param input table and size
 * @returns newtons, and the row that they were read from
 * @throws InputError when a field is missing, the gauge is not in the table, or the area is outside it
 * @source the table's own: ul-486a, as7928, iec-60352-2 (from memory)
 * @example crimpPullOut({ table: ul486aPullOut, size: '16' }).pullOutN //=> 133.5
 */
export function crimpPullOut(input: CrimpPullOutInput): CrimpPullOutResult {
  needInput('crimpPullOut', input);
  const { table, size } = input;
  if (typeof table !== 'object' || table === null || table.rows === undefined) {
    const rule = table === undefined || table === null ? 'missing' : 'object';
    throw new InputError(
      'crimpPullOut',
      'table',
      rule,
      table,
      'must be a table of pull-out forces',
      'import one, such as ul486aPullOut',
    );
  }
  needText('crimpPullOut', 'size', size);
  const row = table.sizes === 'mm2' ? rowByArea(table, size) : rowByGauge(table, size);
  if (row === undefined) {
    const names = table.rows.map(([name]) => name).join(' ');
    throw new InputError('crimpPullOut', 'size', 'inTable', size, `must be a size of ${table.key} (${names})`);
  }
  const [rowSize, poundsForce, newtons, sourceStatus] = row;
  const fromPoundsN = (poundsForce ?? 0) * KG_PER_POUND * STANDARD_GRAVITY;
  return { pullOutN: Math.max(fromPoundsN, newtons ?? 0), rowSize, source: table.source, sourceStatus };
}

type Row = PullOutTable['rows'][number];

function rowByGauge(table: PullOutTable, size: string): Row | undefined {
  const name = gaugeName(gaugeNumber('crimpPullOut', 'size', size));
  return table.rows.find(([rowSize]) => rowSize === name);
}

function rowByArea(table: PullOutTable, size: string): Row | undefined {
  const areaMm2 = /^\d*\.?\d+$/.test(size) ? Number(size) : NaN;
  const least = Number(table.rows[0]?.[0]);
  return areaMm2 >= least ? table.rows.find(([rowSize]) => Number(rowSize) >= areaMm2) : undefined;
}
