import { InputError } from '../error/index.js';
import type { RestVoltsTable } from '../table/index.js';

/** Throws unless it is a list of volts at rest. */
export function needRestVolts(fn: string, field: string, list: RestVoltsTable): void {
  if (typeof list !== 'object' || list === null || !Array.isArray(list.rows) || list.rows.length < 2) {
    const rule = list === undefined || list === null ? 'missing' : 'object';
    throw new InputError(
      fn,
      field,
      rule,
      list,
      'must be a list of volts at rest',
      'import one, such as restVoltsTrade',
    );
  }
  list.rows.forEach(([percent, openV], i) => {
    const [before, beforeV] = list.rows[i - 1] ?? [Infinity, Infinity];
    if (!(percent >= 0 && percent < before && openV > 0 && openV < beforeV)) {
      throw new InputError(
        fn,
        `${field}.rows[${i}]`,
        'order',
        undefined,
        'must fall in charge and in volts, row by row',
      );
    }
  });
}

/** Straight lines between the rows, from one column to the other; null outside. Rows fall in both columns. */
export function alongRows(list: RestVoltsTable, from: 0 | 1, value: number): number | null {
  const to = from === 0 ? 1 : 0;
  for (let i = 1; i < list.rows.length; i++) {
    const [above, below] = [list.rows[i - 1], list.rows[i]] as [readonly [number, number], readonly [number, number]];
    if (value > above[from] || value < below[from]) continue;
    if (value === below[from]) return below[to];
    return above[to] + ((below[to] - above[to]) * (value - above[from])) / (below[from] - above[from]);
  }
  return null;
}
