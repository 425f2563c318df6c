import type { PiecewiseCubic } from './cubic-curve.js';
import { monotoneValue } from './monotone-value.js';

/** What a curve has at a place. */
export interface CubicValue {
  readonly value: number;
  readonly slope: number;
  /** The area below the curve from its first place to this one. */
  readonly integralValue: number;
}

/**
 * The value, the slope and the integral of a curve of cubics at a place. Outside its points it throws: a cubic runs off
 * fast.
 *
 * $$\int_0^h y\,\mathrm{d}x = h\,\frac{y_0 + y_1}{2} + h^2\,\frac{m_0 - m_1}{12}$$
 *
 * over each whole piece; up to a place within one, the same with the value and the slope there.
 *
 * @param input caller, curve (`cubicCurve`, `monotoneCurve`) and place
 * @returns value, slope, integral from the curve's first place
 * @throws InputError for a place outside the points
 * @source young-gregory-1972
 * @example cubicValue({ fn: 't', curve: { x: [0, 1], y: [0, 1], slope: [0, 2] }, x: 0.3 }).integralValue //=> 0.009
 */
export function cubicValue(input: {
  readonly fn: string;
  readonly curve: PiecewiseCubic;
  readonly x: number;
}): CubicValue {
  const { curve, x: place } = input;
  const { value, slope } = monotoneValue(input);
  const { x, y, slope: m } = curve;
  let integralValue = 0;
  for (let i = 0; i < x.length - 1 && (x[i] as number) < place; i++) {
    const whole = (x[i + 1] as number) <= place;
    const h = (whole ? (x[i + 1] as number) : place) - (x[i] as number);
    const y1 = whole ? (y[i + 1] as number) : value;
    const m1 = whole ? (m[i + 1] as number) : slope;
    integralValue += (h * ((y[i] as number) + y1)) / 2 + (h * h * ((m[i] as number) - m1)) / 12;
  }
  return { value, slope, integralValue };
}
