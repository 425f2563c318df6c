import { InputError } from '../error/index.js';
import { findRoot } from './find-root.js';
import type { MonotoneCurve } from './monotone-curve.js';
import { monotoneValue } from './monotone-value.js';

/**
 * The place where a monotone cubic has a value: `monotoneValue` turned round, by bracketing within one piece.
 *
 * @param input caller, curve (strictly rising or strictly falling) and value
 * @returns the place
 * @throws InputError for a value outside the curve's
 * @source fritsch-carlson-1980 (a monotone piece has one such place)
 * @example monotonePlace({ fn: 't', curve: { x: [0, 1], y: [0, 1], slope: [0, 0] }, y: 0.15625 }) //=> 0.25
 */
export function monotonePlace(input: {
  readonly fn: string;
  readonly curve: MonotoneCurve;
  readonly y: number;
}): number {
  const { fn, curve, y } = input;
  const { x, y: values } = curve;
  const end = x.length - 1;
  const rising = (values[end] as number) > (values[0] as number);
  const [least, most] = rising ? [values[0], values[end]] : [values[end], values[0]];
  // A cubic may come out a rounding beyond the value at its end.
  const slack = 4 * Number.EPSILON * Math.max(Math.abs(least as number), Math.abs(most as number));
  if (!(y >= (least as number) - slack && y <= (most as number) + slack)) {
    throw new InputError(fn, 'y', 'range', y, `must lie from ${least} to ${most}`);
  }
  let low = 0;
  let high = end;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (y < (values[middle] as number) === rising) high = middle;
    else low = middle;
  }
  const from = x[low] as number;
  const to = x[high] as number;
  const sign = rising ? 1 : -1;
  if ((y - (values[low] as number)) * sign <= 0) return from;
  if ((y - (values[high] as number)) * sign >= 0) return to;
  const rise = (values[high] as number) - (values[low] as number);
  return findRoot({
    fn,
    f: (place) => (monotoneValue({ fn, curve, x: place }).value - y) / rise,
    low: from,
    high: to,
    tolerance: 4 * Number.EPSILON * Math.max(Math.abs(from), Math.abs(to)),
  });
}
