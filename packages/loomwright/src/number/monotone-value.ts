import { InputError } from '../error/index.js';
import type { MonotoneCurve } from './monotone-curve.js';

/** A value of a monotone cubic with its slope. */
export interface MonotoneValue {
  readonly value: number;
  readonly slope: number;
}

/**
 * The value and the slope of a monotone cubic at a place. Outside its points it throws: a cubic runs off fast.
 *
 * @param input caller, curve and place
 * @returns value and slope
 * @throws InputError for a place outside the points
 * @source fritsch-carlson-1980, equation 1 (cubic Hermite form)
 * @example monotoneValue({ fn: 't', curve: { x: [0, 1], y: [0, 1], slope: [0, 0] }, x: 0.25 }).value //=> 0.15625
 */
export function monotoneValue(input: {
  readonly fn: string;
  readonly curve: MonotoneCurve;
  readonly x: number;
}): MonotoneValue {
  const { fn, curve, x } = input;
  const first = curve.x[0] as number;
  const last = curve.x[curve.x.length - 1] as number;
  if (!(x >= first && x <= last)) {
    throw new InputError(fn, 'x', 'range', x, `must lie from ${first} to ${last}`);
  }
  let low = 0;
  let high = curve.x.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (x < (curve.x[middle] as number)) high = middle;
    else low = middle;
  }
  const x0 = curve.x[low] as number;
  const h = (curve.x[high] as number) - x0;
  const t = (x - x0) / h;
  const y0 = curve.y[low] as number;
  const rise = (curve.y[high] as number) - y0;
  const m0 = h * (curve.slope[low] as number);
  const m1 = h * (curve.slope[high] as number);
  const quadratic = 3 * rise - 2 * m0 - m1;
  const cubic = m0 + m1 - 2 * rise;
  return {
    value: y0 + t * (m0 + t * (quadratic + t * cubic)),
    slope: (m0 + t * (2 * quadratic + t * 3 * cubic)) / h,
  };
}
