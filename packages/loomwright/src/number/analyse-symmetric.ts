import { InputError } from '../error/index.js';
import { needInput, needInteger } from '../error/guard.js';
import { eliminate } from './elimination.js';

/** What `analyseSymmetric` needs: where a sparse symmetric matrix has entries beside its diagonal. */
export interface AnalyseSymmetricInput {
  /** Number of unknowns, at least 0. */
  readonly count: number;
  /** Row of each entry, 0 to `count` − 1. Not changed. */
  readonly rows: Int32Array;
  /** Column of each entry, another than its row. Each pair stands for both halves; given twice, values add up. */
  readonly columns: Int32Array;
}

/**
 * In which order a matrix is eliminated and where its factor has entries: plain arrays, good for every matrix with
 * entries at the same places. Turns count from 0; a row of the factor belongs to a turn, not to an unknown.
 */
export interface SymmetricAnalysis {
  readonly count: number;
  readonly entryCount: number;
  /** The unknown of each turn, and the turn of each unknown. */
  readonly order: Int32Array;
  readonly turn: Int32Array;
  /** The factor below its diagonal by columns: where each begins, and its rows upwards. */
  readonly columnStart: Int32Array;
  readonly rowIndex: Int32Array;
  /** The same by rows: where each begins, and its columns upwards. */
  readonly rowStart: Int32Array;
  readonly columnIndex: Int32Array;
  /** Entries of the matrix by the column that they fall into: where each begins, its row, and which entry it is. */
  readonly entryStart: Int32Array;
  readonly entryRow: Int32Array;
  readonly entryIndex: Int32Array;
}

/**
 * Finds an order of elimination that keeps the factor of a sparse symmetric matrix sparse, and the places of its
 * entries.
 *
 * Do it once for all matrices with entries at the same places: `factorSymmetric` and `solveSymmetric` take it from
 * there. For a small or full matrix use `solveLinear`.
 *
 * The order is by minimum degree: $d_v = |\{u : a_{uv} \ne 0\}|$, the least first, and the neighbours of what is
 * eliminated become neighbours of one another. What hangs on a single neighbour goes first and in linear time, so that
 * a tree is never filled in.
 *
 * @param input count, rows and columns of the entries
 * @returns the analysis: typed arrays, as data
 * @throws InputError when `count` is no whole number, the arrays differ in length or are no `Int32Array`, or an entry
 * lies outside or on the diagonal
 * @source circuit-theory (elimination graph; every order gives the same solution)
 * @example analyseSymmetric({ count: 3, rows: Int32Array.of(0, 1), columns: Int32Array.of(1, 2) }).rowIndex.length //=> 2
 */
export function analyseSymmetric(input: AnalyseSymmetricInput): SymmetricAnalysis {
  const fn = 'analyseSymmetric';
  needInput(fn, input);
  const { count, rows, columns } = input;
  needInteger(fn, 'count', count);
  needPlaces(fn, 'rows', rows, count, rows);
  needPlaces(fn, 'columns', columns, count, rows);
  for (let e = 0; e < rows.length; e++) {
    if (rows[e] === columns[e])
      throw new InputError(fn, `columns[${e}]`, 'range', columns[e], 'must differ from its row');
  }
  const { order, start, pattern } = eliminate(count, rows, columns);
  const turn = new Int32Array(count);
  for (let k = 0; k < count; k++) turn[order[k] as number] = k;
  const size = pattern.length;
  // By rows first, column after column, so that each row has its columns upwards; then back, for rows upwards.
  const rowStart = new Int32Array(count + 1);
  for (let p = 0; p < size; p++) add(rowStart, (turn[pattern[p] as number] as number) + 1);
  for (let k = 0; k < count; k++) rowStart[k + 1] = (rowStart[k + 1] as number) + (rowStart[k] as number);
  const columnIndex = new Int32Array(size);
  const rowIndex = new Int32Array(size);
  const next = rowStart.slice();
  for (let j = 0; j < count; j++) {
    for (let p = start[j] as number; p < (start[j + 1] as number); p++) {
      const i = turn[pattern[p] as number] as number;
      columnIndex[add(next, i)] = j;
    }
  }
  next.set(start);
  for (let i = 0; i < count; i++) {
    for (let p = rowStart[i] as number; p < (rowStart[i + 1] as number); p++) {
      rowIndex[add(next, columnIndex[p] as number)] = i;
    }
  }
  const entries = byColumn(count, rows, columns, turn);
  return {
    count,
    entryCount: rows.length,
    order,
    turn,
    columnStart: start,
    rowIndex,
    rowStart,
    columnIndex,
    ...entries,
  };
}

type Entries = Pick<SymmetricAnalysis, 'entryStart' | 'entryRow' | 'entryIndex'>;

function byColumn(count: number, rows: Int32Array, columns: Int32Array, turn: Int32Array): Entries {
  const entryStart = new Int32Array(count + 1);
  for (let e = 0; e < rows.length; e++) {
    const i = turn[rows[e] as number] as number;
    const j = turn[columns[e] as number] as number;
    add(entryStart, (i < j ? i : j) + 1);
  }
  for (let k = 0; k < count; k++) entryStart[k + 1] = (entryStart[k + 1] as number) + (entryStart[k] as number);
  const next = entryStart.slice();
  const entryRow = new Int32Array(rows.length);
  const entryIndex = new Int32Array(rows.length);
  for (let e = 0; e < rows.length; e++) {
    const i = turn[rows[e] as number] as number;
    const j = turn[columns[e] as number] as number;
    const at = add(next, i < j ? i : j);
    entryRow[at] = i < j ? j : i;
    entryIndex[at] = e;
  }
  return { entryStart, entryRow, entryIndex };
}

/** Counts one up, and gives what was there. */
function add(list: Int32Array, at: number): number {
  const value = list[at] as number;
  list[at] = value + 1;
  return value;
}

/** Throws unless it is an `Int32Array` of the same length as another with numbers from 0 to `count` − 1. */
export function needPlaces(fn: string, field: string, list: Int32Array, count: number, other: Int32Array): void {
  if (!(list instanceof Int32Array)) {
    throw new InputError(fn, field, list === undefined ? 'missing' : 'list', list, 'must be an Int32Array');
  }
  if (list.length !== other.length) {
    throw new InputError(fn, field, 'list', list, `must have ${other.length} numbers, as many as there are entries`);
  }
  for (let e = 0; e < list.length; e++) {
    const place = list[e] as number;
    if (place < 0 || place >= count) {
      throw new InputError(fn, `${field}[${e}]`, 'range', place, `must be 0 to ${count - 1}`);
    }
  }
}
