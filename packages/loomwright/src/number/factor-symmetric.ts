import { InputError } from '../error/index.js';
import { needInput, needObject } from '../error/guard.js';
import type { SymmetricAnalysis } from './analyse-symmetric.js';

/** What `factorSymmetric` needs: the values of a matrix that was analysed. */
export interface FactorSymmetricInput {
  readonly analysis: SymmetricAnalysis;
  /** Value of each entry beside the diagonal, in the order of the analysis. Not changed. */
  readonly values: Float64Array;
  /** The diagonal, one number an unknown. Give this or `rowSums`. */
  readonly diagonal?: Float64Array;
  /**
   * Sum of each whole row, diagonal included, for a matrix whose other entries are all negative (node equations: the
   * conductance from each node to what is held). Nothing is then subtracted, and no digit lost.
   */
  readonly rowSums?: Float64Array;
  /** A factor of the same analysis whose arrays may be used again. */
  readonly into?: SymmetricFactor;
}

/** The factor: L without its diagonal of ones, by columns, and D. */
export interface SymmetricFactor {
  readonly definite: true;
  readonly analysis: SymmetricAnalysis;
  readonly lower: Float64Array;
  readonly pivots: Float64Array;
}

/** The matrix is singular, or not positive definite. */
export interface NotDefinite {
  readonly definite: false;
  /** The unknown at which its pivot came out as nothing or less, with what was eliminated before it. */
  readonly unknownIndex: number;
}

/**
 * Factors a sparse symmetric positive definite matrix, column by column.
 *
 * Use it with `analyseSymmetric` before and `solveSymmetric` after. A matrix that is not positive definite is an
 * answer, not an error: it names the unknown.
 *
 * $$A = L D L^\mathsf{T} \qquad d_k = a_{kk} - \sum_{j<k} l_{kj}^2 d_j \quad\text{or}\quad d_k = s_k - \sum_{i>k} l_{ik} d_k$$
 *
 * with $s_k$ the sum of the row in what is left, itself $s_k = r_k - \sum_{j<k} l_{kj} s_j$. A pivot within rounding of
 * the numbers that it was made of counts as 0.
 *
 * @param input analysis, values, diagonal or row sums
 * @returns the factor, or `definite: false` with the unknown
 * @throws InputError when an array is missing, has another length or holds what is no finite number, or not exactly
 * one of `diagonal` and `rowSums` is given
 * @source circuit-theory (elimination; row sums carried along so that nothing is subtracted)
 * @example factorSymmetric({ analysis: analyseSymmetric({ count: 2, rows: Int32Array.of(0), columns: Int32Array.of(1) }), values: Float64Array.of(-1), diagonal: Float64Array.of(2, 2) }).definite //=> true
 */
export function factorSymmetric(input: FactorSymmetricInput): SymmetricFactor | NotDefinite {
  const fn = 'factorSymmetric';
  needInput(fn, input);
  const { analysis, values, diagonal, rowSums, into } = input;
  needObject(fn, 'analysis', analysis);
  const { count, entryCount, order, rowIndex, place } = analysis;
  if ((diagonal === undefined) === (rowSums === undefined)) {
    throw new InputError(fn, 'diagonal', 'oneOfFields', diagonal, 'or rowSums is required, and not both');
  }
  needNumbers(fn, 'values', values, entryCount);
  if (diagonal !== undefined) needNumbers(fn, 'diagonal', diagonal, count);
  else needNumbers(fn, 'rowSums', rowSums as Float64Array, count);
  const lower = into?.lower.fill(0) ?? new Float64Array(rowIndex.length);
  for (let e = 0; e < place.length; e++) {
    const q = place[e] as number;
    lower[q] = (lower[q] as number) + (values[e] as number);
  }
  const given = (diagonal ?? rowSums) as Float64Array;
  const byTurn = new Float64Array(count);
  for (let k = 0; k < count; k++) byTurn[k] = given[order[k] as number] as number;
  const pivots = into?.pivots ?? new Float64Array(count);
  return factorColumns(analysis, lower, pivots, byTurn, diagonal === undefined, new Float64Array(count));
}

/**
 * Factors the matrix whose entries stand in `lower` already, where they fall; `given` is its diagonal, or its row sums,
 * by turn. It and the scratch are worked in.
 */
export function factorColumns(
  analysis: SymmetricAnalysis,
  lower: Float64Array,
  pivots: Float64Array,
  given: Float64Array,
  bySums: boolean,
  scratch: Float64Array,
): SymmetricFactor | NotDefinite {
  const { count, order, columnStart, rowIndex, rowStart, columnIndex } = analysis;
  // What a row of the factor is multiplied with for its pivot: sums of rows in what is left, or the pivots themselves.
  const carried = bySums ? given : pivots;
  const next = columnStart.slice(0, count);
  for (let k = 0; k < count; k++) {
    const begin = columnStart[k] as number;
    const end = columnStart[k + 1] as number;
    const first = rowStart[k] as number;
    const last = rowStart[k + 1] as number;
    let pivot = given[k] as number;
    let size = Math.abs(pivot);
    if (first < last) {
      for (let q = begin; q < end; q++) scratch[rowIndex[q] as number] = lower[q] as number;
      for (let p = first; p < last; p++) {
        const j = columnIndex[p] as number;
        const q = next[j] as number;
        next[j] = q + 1;
        const l = lower[q] as number;
        const f = l * (pivots[j] as number);
        pivot -= bySums ? l * (carried[j] as number) : l * f;
        for (let r = q + 1, stop = columnStart[j + 1] as number; r < stop; r++) {
          const i = rowIndex[r] as number;
          scratch[i] = (scratch[i] as number) - f * (lower[r] as number);
        }
      }
      for (let q = begin; q < end; q++) lower[q] = scratch[rowIndex[q] as number] as number;
    }
    if (bySums) {
      given[k] = pivot;
      size = Math.abs(pivot);
      for (let q = begin; q < end; q++) {
        const value = lower[q] as number;
        pivot -= value;
        size += Math.abs(value);
      }
    }
    if (!(pivot > 16 * Number.EPSILON * size)) return { definite: false, unknownIndex: order[k] as number };
    pivots[k] = pivot;
    for (let q = begin; q < end; q++) lower[q] = (lower[q] as number) / pivot;
  }
  return { definite: true, analysis, lower, pivots };
}

/** Throws unless it is a `Float64Array` of so many numbers. */
export function needFloats(fn: string, field: string, list: Float64Array, count: number): void {
  if (!(list instanceof Float64Array)) {
    throw new InputError(fn, field, list === undefined ? 'missing' : 'list', list, 'must be a Float64Array');
  }
  if (list.length !== count) throw new InputError(fn, field, 'list', list, `must have ${count} numbers`);
}

/** Throws unless it is a `Float64Array` of so many finite numbers. */
export function needNumbers(fn: string, field: string, list: Float64Array, count: number): void {
  needFloats(fn, field, list, count);
  // Sums of nought times each tell whether there is anything that is not finite; two of them, so that neither waits.
  let none = 0;
  let more = 0;
  for (let i = count & 1; i < count; i += 2) {
    none += (list[i] as number) * 0;
    more += (list[i + 1] as number) * 0;
  }
  if (none + more + (count > 0 ? (list[0] as number) * 0 : 0) === 0) return;
  const at = list.findIndex((value) => !Number.isFinite(value));
  throw new InputError(fn, `${field}[${at}]`, 'finite', list[at], 'must be a finite number');
}
