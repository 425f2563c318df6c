import { needOneOf } from '../error/guard.js';
import { akimaSlopes, splineSlopes } from './cubic-slopes.js';
import { curvePieces } from './curve-pieces.js';
import { monotoneCurve } from './monotone-curve.js';

/** How a curve is laid through its points. */
export type CubicMethod = 'monotone' | 'akima' | 'natural-spline' | 'not-a-knot';

export interface CubicCurveInput {
  /** Name of the caller, for the error. */
  readonly fn: string;
  /** At least two places, strictly rising. */
  readonly x: readonly number[];
  /** The value at each. */
  readonly y: readonly number[];
  /** Which curve. They differ between the points, so that none is a default. */
  readonly method: CubicMethod;
}

/** A piecewise cubic as data: places, values and slopes. */
export interface PiecewiseCubic {
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly slope: readonly number[];
}

const METHODS: readonly CubicMethod[] = ['monotone', 'akima', 'natural-spline', 'not-a-knot'];

/**
 * A smooth curve through points, by the method of your choice; `cubicValue` reads it.
 *
 * For a calibration take `monotone`: it alone shows nothing that was not measured, and where the points rise it rises
 * (it is `monotoneCurve` by Fritsch and Butland, what scipy and SLATEC call PCHIP). **The others overshoot**: next to a
 * step a spline runs below and above all its points, and a level or a pressure may come out below nothing. They serve
 * smooth curves, such as one from a formula: there a spline is the most exact. `akima` bends only near what bends and
 * overshoots less. `natural-spline` does not bend at its ends, which is seldom true; `not-a-knot` takes the first two
 * pieces, and the last two, as one cubic.
 *
 * $$h_i m_{i-1} + 2(h_{i-1} + h_i)\,m_i + h_{i-1} m_{i+1} = 3(h_i \delta_{i-1} + h_{i-1} \delta_i) \quad\text{(spline)}$$
 *
 * $$m_i = \frac{|\delta_{i+1} - \delta_i|\,\delta_{i-1} + |\delta_{i-1} - \delta_{i-2}|\,\delta_i}{|\delta_{i+1} -
 * \delta_i| + |\delta_{i-1} - \delta_{i-2}|} \quad\text{(Akima)}$$
 *
 * Two points give a straight line; three give `not-a-knot` a parabola.
 *
 * @param input places, values, method
 * @returns the places, the values and the slope at each
 * @throws InputError when the lists differ in length, hold fewer than two points, or the places do not rise
 * @source akima-1970 (Akima's slopes); young-gregory-1972 (natural spline); slatec-pchip (not a knot)
 * @example cubicCurve({ fn: 't', x: [0, 1, 2, 3], y: [0, 1, 8, 27], method: 'not-a-knot' }).slope[1] //=> 3
 */
export function cubicCurve(input: CubicCurveInput): PiecewiseCubic {
  const { fn, x, y, method } = input;
  needOneOf(fn, 'method', method, METHODS);
  if (method === 'monotone') return monotoneCurve({ fn, x, y, limiter: 'fritsch-butland' });
  const { h, secant } = curvePieces(fn, x, y);
  const [first] = secant as [number];
  const [h0, h1] = h as [number, number];
  if (x.length === 2) return { x, y, slope: [first, first] };
  if (method === 'akima') return { x, y, slope: akimaSlopes(secant) };
  if (method === 'natural-spline') return { x, y, slope: splineSlopes(h, secant, 'natural') };
  if (x.length > 3) return { x, y, slope: splineSlopes(h, secant, 'not-a-knot') };
  const bend = ((secant[1] as number) - first) / (h0 + h1);
  return { x, y, slope: [first - bend * h0, first + bend * h0, first + bend * (h0 + 2 * h1)] };
}
