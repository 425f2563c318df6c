import { InputError } from '../error/index.js';

/** What `solveLinear` needs. */
export interface SolveLinearInput {
  /** Rows of the matrix, one after another: n² numbers. Not changed. */
  readonly matrix: Float64Array;
  /** Right-hand sides of n numbers each. Not changed. */
  readonly sides: readonly Float64Array[];
}

/**
 * Solves a dense square system for several right-hand sides, by elimination with the largest pivot of a column.
 *
 * @param input matrix and right-hand sides
 * @returns one solution for each side, or null where the matrix is singular
 * @throws InputError where a side has another length than the matrix has rows
 * @source circuit-theory (plain arithmetic: Gauss's elimination)
 * @example solveLinear({ matrix: Float64Array.of(2, 1, 1, 3), sides: [Float64Array.of(3, 5)] })[0][1] //=> 1.4
 */
export function solveLinear(input: SolveLinearInput): readonly Float64Array[] | null {
  const { matrix, sides } = input;
  const n = Math.round(Math.sqrt(matrix.length));
  if (n * n !== matrix.length || sides.some((side) => side.length !== n)) {
    throw new InputError(
      'solveLinear',
      'sides',
      'list',
      sides,
      `must have ${n} numbers each, and the matrix their square`,
    );
  }
  const a = matrix.slice();
  const xs = sides.map((side) => side.slice());
  for (let k = 0; k < n; k++) {
    let pivot = k;
    for (let i = k + 1; i < n; i++) {
      if (Math.abs(a[i * n + k] as number) > Math.abs(a[pivot * n + k] as number)) pivot = i;
    }
    const p = a[pivot * n + k] as number;
    if (!(Math.abs(p) > 0)) return null;
    if (pivot !== k) {
      for (let j = k; j < n; j++) swap(a, k * n + j, pivot * n + j);
      for (const x of xs) swap(x, k, pivot);
    }
    for (let i = k + 1; i < n; i++) {
      const f = (a[i * n + k] as number) / p;
      if (f === 0) continue;
      for (let j = k + 1; j < n; j++) a[i * n + j] = (a[i * n + j] as number) - f * (a[k * n + j] as number);
      for (const x of xs) x[i] = (x[i] as number) - f * (x[k] as number);
    }
  }
  for (const x of xs) {
    for (let i = n - 1; i >= 0; i--) {
      let sum = x[i] as number;
      for (let j = i + 1; j < n; j++) sum -= (a[i * n + j] as number) * (x[j] as number);
      x[i] = sum / (a[i * n + i] as number);
    }
  }
  return xs;
}

function swap(list: Float64Array, i: number, j: number): void {
  const t = list[i] as number;
  list[i] = list[j] as number;
  list[j] = t;
}
