import { needAbove, needInput } from '../error/guard.js';
import type { ConductorTable } from '../table/index.js';
import { needBasis, resolveRow, type ResolvedSize } from './size.js';

export interface NearestSizesInput {
  /** Wanted area in mm², above 0. */
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
 * @param input wanted area in mm² and a conductor table
 * @returns both neighbours, or null where the table ends
 * @throws InputError when the area is not above 0 or the table is not one
 * @source the table's own
 * @example nearestSizes({ areaMm2: 3.36, table: iso19642 }).atLeast.label //=> '4 mm²'
 */
export function nearestSizes(input: NearestSizesInput): NearestSizesResult {
  needInput('nearestSizes', input);
  const { areaMm2, table } = input;
  needAbove('nearestSizes', 'areaMm2', areaMm2);
  needBasis('nearestSizes', table);
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
