import { InputError } from '../error/index.js';
import { needInput } from '../error/guard.js';
import type { ConductorTable } from '../table/index.js';
import { needAreaMm2 } from './area.js';
import { resolveRow, type ResolvedSize } from './size.js';

export interface NearestSizesInput {
  /** Wanted area in mm², 0.001 to 1e6. */
  readonly areaMm2: number;
  /** The table of sizes that can be bought. */
  readonly table: ConductorTable;
}

export interface NearestSizesResult {
  /** The largest size below the wanted area, or null where there is none. */
  readonly below: ResolvedSize | null;
  /** The smallest size of at least the wanted area, or null where the table ends before it. */
  readonly atLeast: ResolvedSize | null;
}

/**
 * The sizes of a table on either side of an area. Take `atLeast`: `below` is there to show what was turned down.
 *
 * An area says nothing of the resistance that a standard allows: where volts decide, use `sizeFeed`.
 *
 * $$A_{\mathrm{below}} < A \le A_{\mathrm{at\,least}}$$
 *
 * @param input wanted area in mm² and a conductor table
 * @returns both neighbours, or null where the table ends
 * @throws InputError when the area is below 0.001 mm² (the slip of m²), or the table is missing or not one of sizes
 * @source the table's own
 * @example nearestSizes({ areaMm2: 3.36, table: iso19642 }).atLeast.label //=> '4 mm²'
 */
export function nearestSizes(input: NearestSizesInput): NearestSizesResult {
  needInput('nearestSizes', input);
  const { areaMm2, table } = input;
  needAreaMm2('nearestSizes', areaMm2);
  if (typeof table !== 'object' || table === null || table.kind !== 'table') {
    throw new InputError(
      'nearestSizes',
      'table',
      table === undefined || table === null ? 'missing' : 'object',
      table,
      'must be a conductor table',
      'import one, such as iso19642 or awgStranded; geometric has no sizes',
    );
  }
  let below: ResolvedSize | null = null;
  let atLeast: ResolvedSize | null = null;
  for (const row of table.rows) {
    const size = resolveRow(table, row);
    if (size.areaMm2 < areaMm2) {
      if (below === null || size.areaMm2 > below.areaMm2) below = size;
    } else if (atLeast === null || size.areaMm2 < atLeast.areaMm2) atLeast = size;
  }
  return { below, atLeast };
}
