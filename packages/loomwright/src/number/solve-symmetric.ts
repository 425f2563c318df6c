import { InputError } from '../error/index.js';
import { needInput, needObject } from '../error/guard.js';
import type { SymmetricFactor } from './factor-symmetric.js';
import { needNumbers } from './factor-symmetric.js';

/** What `solveSymmetric` needs. */
export interface SolveSymmetricInput {
  readonly factor: SymmetricFactor;
  /** Right-hand sides, one after another: a whole number of times the count of unknowns. Not changed, unless `into`. */
  readonly sides: Float64Array;
  /** An array for the solutions, as long as `sides`; it may be `sides` itself. A new one unless given. */
  readonly into?: Float64Array;
  /** An array as long as there are unknowns to work in, for callers that solve often. */
  readonly scratch?: Float64Array;
}

/**
 * Solves a factored sparse symmetric system for one or many right-hand sides.
 *
 * $$L y = b \qquad D L^\mathsf{T} x = y$$
 *
 * @param input factor, sides, where to put the solutions
 * @returns the solutions, in the order of the sides: `into` where it was given
 * @throws InputError when an array is missing, has a length that does not fit or holds what is no finite number
 * @source circuit-theory (substitution)
 * @example solveSymmetric({ factor: factorSymmetric({ analysis: analyseSymmetric({ count: 2, rows: Int32Array.of(0), columns: Int32Array.of(1) }), values: Float64Array.of(-1), diagonal: Float64Array.of(2, 2) }), sides: Float64Array.of(3, 0) })[1] //=> 1
 */
export function solveSymmetric(input: SolveSymmetricInput): Float64Array {
  const fn = 'solveSymmetric';
  needInput(fn, input);
  const { factor, sides } = input;
  needObject(fn, 'factor', factor);
  if (!factor.definite) throw new InputError(fn, 'factor', 'object', factor, 'must be a factor');
  const { analysis, lower, pivots } = factor;
  const { count, order, columnStart, rowIndex } = analysis;
  const runs = count === 0 ? 0 : Math.ceil((sides?.length ?? 0) / count);
  needNumbers(fn, 'sides', sides, runs * count);
  const { into = new Float64Array(sides.length), scratch = new Float64Array(count) } = input;
  if (into.length !== sides.length) throw new InputError(fn, 'into', 'list', into, 'must be as long as sides');
  if (scratch.length < count) throw new InputError(fn, 'scratch', 'list', scratch, `must have ${count} numbers`);
  for (let first = 0; first < sides.length; first += count) {
    for (let k = 0; k < count; k++) scratch[k] = sides[first + (order[k] as number)] as number;
    for (let k = 0; k < count; k++) {
      const y = scratch[k] as number;
      if (y === 0) continue;
      for (let q = columnStart[k] as number, end = columnStart[k + 1] as number; q < end; q++) {
        const i = rowIndex[q] as number;
        scratch[i] = (scratch[i] as number) - (lower[q] as number) * y;
      }
    }
    for (let k = count - 1; k >= 0; k--) {
      let x = (scratch[k] as number) / (pivots[k] as number);
      for (let q = columnStart[k] as number, end = columnStart[k + 1] as number; q < end; q++) {
        x -= (lower[q] as number) * (scratch[rowIndex[q] as number] as number);
      }
      scratch[k] = x;
      into[first + (order[k] as number)] = x;
    }
  }
  return into;
}
