import { ConvergenceError } from '../error/index.js';
import { solveLinear } from './solve-linear.js';

/** What `integrate` needs. */
export interface IntegrateInput {
  /** Name of the caller, for the error. */
  readonly fn: string;
  /** Writes the rates of change of `y` into `out`. They do not depend on time. */
  readonly rates: (y: Float64Array, out: Float64Array) => void;
  /** State at time 0. */
  readonly start: Float64Array;
  /** Length of the stretch; Infinity ends at the event or at `settled` alone. */
  readonly duration: number;
  /** Most error of a step in any component, in its unit. */
  readonly tolerance: number;
  /** Ends the stretch where this passes from below 0 to 0 or above. */
  readonly event?: (y: Float64Array) => number;
  /** Ends the stretch after a step where this is true. */
  readonly settled?: (y: Float64Array) => boolean;
  /** Most steps; 20 000 unless given. */
  readonly steps?: number;
}

/** How a stretch ended. */
export interface IntegrateResult {
  readonly time: number;
  readonly state: Float64Array;
  readonly ended: 'duration' | 'event' | 'settled';
}

/**
 * A small stiff system of ordinary differential equations over a stretch of time, by a Rosenbrock method of order 4
 * with an error estimate of order 3, in steps that keep the stated error. Fast parts that have died away do not hold
 * it up. The moment of an event is found by taking the last step anew, shorter, to 10⁻¹² of the stretch so far.
 *
 * @param input rates, start, duration, tolerance, event
 * @returns time and state at the end, and what ended it
 * @throws ConvergenceError where the steps run out or a state is not a number
 * @source shampine-1982
 * @example integrate({ fn: 'decay', rates: (y, out) => { out[0] = -y[0]; }, start: Float64Array.of(1), duration: 1, tolerance: 1e-9 }).state[0] //=> 0.367879
 */
export function integrate(input: IntegrateInput): IntegrateResult {
  const { fn, rates, start, duration, tolerance, event, settled, steps = 20_000 } = input;
  let y: Float64Array = start.slice();
  let t = 0;
  let before = event === undefined ? 0 : event(y);
  if (event !== undefined && before >= 0) return { time: 0, state: y, ended: 'event' };
  if (settled?.(y) === true) return { time: 0, state: y, ended: 'settled' };
  let at = tangent(rates, y);
  let h = firstStep(at.rate, tolerance, duration);
  for (let step = 0; step < steps && t < duration; step++) {
    const last = h >= duration - t;
    if (last) h = duration - t;
    const next = rosenbrock(rates, y, at, h);
    const error = next === null ? NaN : next.error / tolerance;
    if (next === null || !(error < Infinity)) throw new ConvergenceError(fn, step, t, error);
    if (error > 1) {
      h *= Math.max(0.2, 0.9 * error ** (-1 / 3));
      continue;
    }
    const after = event === undefined ? 0 : event(next.state);
    if (event !== undefined && after >= 0) {
      const short = (share: number): Float64Array => (rosenbrock(rates, y, at, share) as { state: Float64Array }).state;
      const moment = passing((share) => event(short(share)), before, after, h, 1e-12 * (t + h));
      return { time: t + moment, state: short(moment), ended: 'event' };
    }
    before = after;
    y = next.state;
    t = last ? duration : t + h;
    if (settled?.(y) === true) return { time: t, state: y, ended: 'settled' };
    at = tangent(rates, y);
    h *= Math.min(4, error === 0 ? 4 : 0.9 * error ** -0.25);
  }
  if (t < duration) throw new ConvergenceError(fn, steps, t, y[0] as number);
  return { time: t, state: y, ended: 'duration' };
}

/** Rates at a state, and how they change with it (forward differences). */
interface Tangent {
  readonly rate: Float64Array;
  readonly jacobian: Float64Array;
}

function tangent(rates: IntegrateInput['rates'], y: Float64Array): Tangent {
  const n = y.length;
  const rate = new Float64Array(n);
  rates(y, rate);
  const jacobian = new Float64Array(n * n);
  const moved = y.slice();
  const there = new Float64Array(n);
  for (let j = 0; j < n; j++) {
    const dy = 1e-7 * Math.max(1, Math.abs(y[j] as number));
    moved[j] = (y[j] as number) + dy;
    rates(moved, there);
    for (let i = 0; i < n; i++) jacobian[i * n + j] = ((there[i] as number) - (rate[i] as number)) / dy;
    moved[j] = y[j] as number;
  }
  return { rate, jacobian };
}

/** A first step that changes no component by more than a thousand tolerances. */
function firstStep(rate: Float64Array, tolerance: number, duration: number): number {
  let most = 0;
  for (const each of rate) most = Math.max(most, Math.abs(each));
  return Math.min(most > 0 ? (1000 * tolerance) / most : 1, duration);
}

/** One step of the Kaps–Rentrop form with Shampine's parameters: its end, and the largest estimated error. */
function rosenbrock(
  rates: IntegrateInput['rates'],
  y: Float64Array,
  { rate, jacobian }: Tangent,
  h: number,
): { state: Float64Array; error: number } | null {
  const n = y.length;
  const matrix = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) matrix[i * n + j] = (i === j ? 2 / h : 0) - (jacobian[i * n + j] as number);
  }
  const unit = Array.from({ length: n }, (_, i) => {
    const column = new Float64Array(n);
    column[i] = 1;
    return column;
  });
  const inverse = solveLinear({ matrix, sides: unit });
  if (inverse === null) return null;
  const solve = (side: (i: number) => number): Float64Array => {
    const x = new Float64Array(n);
    for (let j = 0; j < n; j++) {
      const s = side(j);
      const column = inverse[j] as Float64Array;
      for (let i = 0; i < n; i++) x[i] = (x[i] as number) + s * (column[i] as number);
    }
    return x;
  };
  const at = new Float64Array(n);
  const f = new Float64Array(n);
  const v = (list: Float64Array, i: number): number => list[i] as number;
  const g1 = solve((i) => v(rate, i));
  for (let i = 0; i < n; i++) at[i] = v(y, i) + 2 * v(g1, i);
  rates(at, f);
  const g2 = solve((i) => v(f, i) - (8 / h) * v(g1, i));
  for (let i = 0; i < n; i++) at[i] = v(y, i) + (48 / 25) * v(g1, i) + (6 / 25) * v(g2, i);
  rates(at, f);
  const g3 = solve((i) => v(f, i) + ((372 / 25) * v(g1, i) + (12 / 5) * v(g2, i)) / h);
  const g4 = solve((i) => v(f, i) - ((112 / 125) * v(g1, i) + (54 / 125) * v(g2, i) + (2 / 5) * v(g3, i)) / h);
  const state = new Float64Array(n);
  let error = 0;
  for (let i = 0; i < n; i++) {
    state[i] = v(y, i) + (19 / 9) * v(g1, i) + (1 / 2) * v(g2, i) + (25 / 108) * v(g3, i) + (125 / 108) * v(g4, i);
    const e = (17 / 54) * v(g1, i) + (7 / 36) * v(g2, i) + (125 / 108) * v(g4, i);
    error = e !== e ? NaN : Math.max(error, Math.abs(e));
  }
  return { state, error };
}

/** Where a rising function passes zero between 0 and `high`: the Illinois form of the false position. */
function passing(f: (x: number) => number, atLow: number, atHigh: number, high: number, width: number): number {
  let low = 0;
  let fLow = atLow;
  let fHigh = atHigh;
  let side = 0;
  for (let k = 0; k < 200 && high - low > width; k++) {
    const x = k % 5 === 4 ? 0.5 * (low + high) : low + ((high - low) * fLow) / (fLow - fHigh);
    const fx = f(x);
    if (fx >= 0) {
      high = x;
      fHigh = fx;
      if (side === 1) fLow *= 0.5;
      side = 1;
    } else {
      low = x;
      fLow = fx;
      if (side === -1) fHigh *= 0.5;
      side = -1;
    }
    if (fx === 0) return x;
  }
  return high;
}
