import { InputError } from '../error/index.js';

/** The pieces between the points of a curve: how wide each is, and how steep the straight line across it. */
export interface CurvePieces {
  readonly h: readonly number[];
  readonly secant: readonly number[];
}

/** The pieces of a curve through points, of which there are at least two, in rising order. */
export function curvePieces(fn: string, x: readonly number[], y: readonly number[]): CurvePieces {
  const n = x.length;
  if (n < 2 || y.length !== n) throw new InputError(fn, 'points', 'list', x, 'must be at least 2, each with a value');
  const h: number[] = [];
  const secant: number[] = [];
  for (let i = 0; i < n - 1; i++) {
    const step = (x[i + 1] as number) - (x[i] as number);
    const rise = (y[i + 1] as number) - (y[i] as number);
    if (!(step > 0 && step < Infinity) || !Number.isFinite(rise)) {
      throw new InputError(fn, `points[${i + 1}]`, 'order', x[i + 1], 'must lie above the one before');
    }
    h.push(step);
    secant.push(rise / step);
  }
  return { h, secant };
}
