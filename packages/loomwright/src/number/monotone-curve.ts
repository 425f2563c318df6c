import { curvePieces } from './curve-pieces.js';

/** How the slopes of a monotone cubic are kept from overshooting. */
export type MonotoneLimiter = 'fritsch-butland' | 'fritsch-carlson';

/** What `monotoneCurve` needs. */
export interface MonotoneCurveInput {
  /** Name of the caller, for the error. */
  readonly fn: string;
  /** At least two places, strictly rising. */
  readonly x: readonly number[];
  /** The value at each. */
  readonly y: readonly number[];
  /** Which slopes. They differ, and each has its users: neither is a default. */
  readonly limiter: MonotoneLimiter;
}

/** A piecewise cubic as data: places, values and slopes. */
export interface MonotoneCurve {
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly slope: readonly number[];
}

/**
 * A cubic through points that rises only where they rise and falls only where they fall.
 *
 * `fritsch-butland` takes a weighted harmonic mean of the neighbouring secants (what scipy and SLATEC call PCHIP);
 * it is the more careful one. `fritsch-carlson` takes the slope of the parabola through three points and shortens
 * it only where it would overshoot; on smooth data it is the more accurate one.
 *
 * $$m_k = \frac{w_1 + w_2}{w_1/\delta_{k-1} + w_2/\delta_k}, \qquad w_1 = 2h_k + h_{k-1},\; w_2 = h_k + 2h_{k-1}$$
 *
 * @param input places, values, limiter
 * @returns the places, the values and the slope at each
 * @throws InputError when the lists differ in length, hold fewer than two points, or the places do not rise
 * @source fritsch-butland-1984; fritsch-carlson-1980
 * @example monotoneCurve({ fn: 't', x: [0, 1, 3], y: [0, 1, 2], limiter: 'fritsch-butland' }).slope[1] //=> 0.692308
 */
export function monotoneCurve(input: MonotoneCurveInput): MonotoneCurve {
  const { fn, x, y, limiter } = input;
  const n = x.length;
  const { h, secant } = curvePieces(fn, x, y);
  if (n === 2) return { x, y, slope: [secant[0] as number, secant[0] as number] };
  const slope = x.map((_, k) => {
    if (k === 0) return endSlope(h[0] as number, h[1] as number, secant[0] as number, secant[1] as number);
    if (k === n - 1) {
      return endSlope(h[n - 2] as number, h[n - 3] as number, secant[n - 2] as number, secant[n - 3] as number);
    }
    const before = secant[k - 1] as number;
    const after = secant[k] as number;
    if (before * after <= 0) return 0;
    const hBefore = h[k - 1] as number;
    const hAfter = h[k] as number;
    if (limiter === 'fritsch-carlson') return (before * hAfter + after * hBefore) / (hBefore + hAfter);
    const w1 = 2 * hAfter + hBefore;
    const w2 = hAfter + 2 * hBefore;
    return (w1 + w2) / (w1 / before + w2 / after);
  });
  return { x, y, slope: limiter === 'fritsch-carlson' ? shorten(slope, secant) : slope };
}

/** The slope of the parabola at an end, kept to the sign of the end's secant and to three times its size. */
function endSlope(h0: number, h1: number, d0: number, d1: number): number {
  const slope = ((2 * h0 + h1) * d0 - h0 * d1) / (h0 + h1);
  if (slope * d0 <= 0) return 0;
  return d0 * d1 <= 0 && Math.abs(slope) > 3 * Math.abs(d0) ? 3 * d0 : slope;
}

/** Fritsch and Carlson's circle of radius 3: slopes over their secant that lie outside are drawn back on to it. */
function shorten(slope: readonly number[], secant: readonly number[]): readonly number[] {
  const out = slope.slice();
  secant.forEach((d, k) => {
    const length = Math.hypot(out[k] as number, out[k + 1] as number);
    const most = 3 * Math.abs(d);
    if (length > most) {
      out[k] = (out[k] as number) * (most / length);
      out[k + 1] = (out[k + 1] as number) * (most / length);
    }
  });
  return out;
}
