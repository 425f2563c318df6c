import { InputError } from '../error/index.js';
import { needInput, needInteger } from '../error/guard.js';
import { analysisOf } from './elimination-pattern.js';

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
  /** The same by rows: where each begins, and its columns. */
  readonly rowStart: Int32Array;
  readonly columnIndex: Int32Array;
  /** Where each entry of the matrix falls among those of the factor by columns. */
  readonly place: Int32Array;
}

/**
 * Finds an order of elimination that keeps the factor of a sparse symmetric matrix sparse, and the places of its
 * entries.
 *
 * Do it once for all matrices with entries at the same places: `factorSymmetric` and `solveSymmetric` take it from
 * there. For a small or full matrix use `solveLinear`.
 *
 * The order is by minimum degree: $d_v = |\{u : a_{uv} \ne 0\}|$, the least first, and the neighbours of what is
 * eliminated become neighbours of one another. What hangs on a single neighbour goes first, so that a tree is never
 * filled in, then what lies between two, both in linear time; after that a bound stands for the degree, and hubs that
 * far more than others meet at come last.
 *
 * @param input count, rows and columns of the entries
 * @returns the analysis: typed arrays, as data
 * @throws InputError when `count` is no whole number, the arrays differ in length or are no `Int32Array`, or an entry
 * lies outside or on the diagonal
 * @source amestoy-davis-duff-1996 (bound of the degree), liu-1990 (rows of the factor)
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
  return analysisOf(count, rows, columns);
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
