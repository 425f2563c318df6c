import { monotoneCurve } from '../number/monotone-curve.js';
import { monotoneValue } from '../number/monotone-value.js';
import type { CanPoint } from './can-zones.js';

/** Litres by the reading, both rising. */
export interface JoinedCurve {
  /** Litres at a reading; those of the nearest end outside. */
  readonly volumeAt: (reading: number) => number;
  /** The steeper of the straight lines on both sides of a reading, in litres for one of it. */
  readonly steepAt: (reading: number) => number;
  /** Readings at which the curve is taken: the points, places evenly between them, and where a volume is reached. */
  readonly places: readonly number[];
}

/** Joins points by a monotone cubic or by straight lines. */
export function joinPoints(
  fn: string,
  points: readonly CanPoint[],
  between: 'smooth' | 'straight',
  noughtL: number,
): JoinedCurve {
  const x = points.map(({ reading }) => reading);
  const y = points.map(({ volumeL }) => volumeL);
  const last = points.length - 1;
  const pieceOf = (reading: number): number => {
    let piece = 0;
    while (piece < last - 1 && reading >= (x[piece + 1] as number)) piece++;
    return piece;
  };
  const secant = (i: number): number =>
    ((y[i + 1] as number) - (y[i] as number)) / ((x[i + 1] as number) - (x[i] as number));
  const smooth = between === 'smooth' ? monotoneCurve({ fn, x, y, limiter: 'fritsch-carlson' }) : null;
  const volumeAt = (reading: number): number => {
    if (reading <= (x[0] as number)) return y[0] as number;
    if (reading >= (x[last] as number)) return y[last] as number;
    if (smooth !== null) return monotoneValue({ fn, curve: smooth, x: reading }).value;
    const i = pieceOf(reading);
    return (y[i] as number) + secant(i) * (reading - (x[i] as number));
  };
  const per = Math.min(40, Math.max(4, Math.floor(480 / last)));
  const places = new Set<number>([x[0] as number]);
  for (let i = 0; i < last; i++) {
    let [from, to] = [x[i] as number, x[i + 1] as number];
    for (let k = 1; k <= per; k++) places.add(k === per ? to : from + ((to - from) * k) / per);
    if (!(noughtL > (y[i] as number) && noughtL < (y[i + 1] as number))) continue;
    // The curve only rises, so that halving finds the one place; a root finder would weigh more than all of this.
    for (let halves = 0; halves < 60; halves++) {
      const middle = (from + to) / 2;
      if (volumeAt(middle) < noughtL) from = middle;
      else to = middle;
    }
    places.add(from);
  }
  const steepAt = (reading: number): number => {
    const i = pieceOf(reading);
    const own = secant(i);
    return reading === x[i] && i > 0 ? Math.max(own, secant(i - 1)) : own;
  };
  return { volumeAt, steepAt, places: [...places].sort((a, b) => a - b) };
}
