import { ConvergenceError } from '../error/index.js';

/** What `findRoot` needs. */
export interface FindRootInput {
  /** Name of the caller, for the error. */
  readonly fn: string;
  /** A continuous function with a change of sign between `low` and `high`. */
  readonly f: (x: number) => number;
  readonly low: number;
  readonly high: number;
  /** Half-width of the bracket at which to stop, in units of x. */
  readonly tolerance: number;
  /** Most evaluations; 100 unless given. */
  readonly steps?: number;
}

/**
 * The root of a continuous function in a bracket, by the Chandrupatla method: inverse quadratic steps where the
 * three last points allow it, bisection otherwise. It always ends: the bracket never grows.
 *
 * @returns x with a change of sign within `tolerance`.
 * @throws ConvergenceError where the ends have the same sign, a value is not a number, or the steps run out.
 * @source chandrupatla-1997
 * @example findRoot({ fn: 'demo', f: (x) => x * x - 2, low: 0, high: 2, tolerance: 1e-12 }) //=> 1.414213562
 */
export function findRoot(input: FindRootInput): number {
  const { fn, f, low, high, tolerance, steps = 100 } = input;
  let x1 = low;
  let x2 = high;
  let f1 = f(x1);
  let f2 = f(x2);
  if (f1 === 0) return x1;
  if (f2 === 0) return x2;
  if (!(f1 * f2 < 0)) throw new ConvergenceError(fn, 2, x1, f1);
  let share = 0.5;
  for (let step = 2; step < steps; step++) {
    const x = x1 + share * (x2 - x1);
    const fx = f(x);
    if (fx !== fx) throw new ConvergenceError(fn, step, x, fx);
    let x3 = x2;
    let f3 = f2;
    if (fx > 0 === f1 > 0) {
      x3 = x1;
      f3 = f1;
    } else {
      x2 = x1;
      f2 = f1;
    }
    x1 = x;
    f1 = fx;
    const best = Math.abs(f1) < Math.abs(f2) ? x1 : x2;
    const width = Math.abs(x2 - x1);
    const close = (2 * Number.EPSILON * Math.abs(best) + 0.5 * tolerance) / width;
    if (close > 0.5 || f1 === 0 || f2 === 0) return f1 === 0 ? x1 : f2 === 0 ? x2 : best;
    const xi = (x1 - x2) / (x3 - x2);
    const phi = (f1 - f2) / (f3 - f2);
    share =
      phi * phi < xi && (1 - phi) * (1 - phi) < 1 - xi
        ? (f1 / (f2 - f1)) * (f3 / (f2 - f3)) + ((x3 - x1) / (x2 - x1)) * (f1 / (f3 - f1)) * (f2 / (f3 - f2))
        : 0.5;
    share = Math.min(1 - close, Math.max(close, share));
  }
  throw new ConvergenceError(fn, steps, x1, f1);
}
