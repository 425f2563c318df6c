// The slopes that make a smooth curve out of pieces of cubics, by two methods that look at no limit.

const at = (list: readonly number[], i: number): number => list[i] as number;

/**
 * Akima's slopes: of the two secants beside a point the one counts more on whose far side the curve bends less.
 * Beyond each end two secants are made up by going on in equal steps. Where neither side bends it is their mean;
 * bends of 1e−9 of the largest count as none, so that the dust of subtractions decides nothing.
 */
export function akimaSlopes(secant: readonly number[]): readonly number[] {
  const last = secant.length - 1;
  const before = 2 * at(secant, 0) - at(secant, 1);
  const after = 2 * at(secant, last) - at(secant, last - 1);
  const m = [2 * before - at(secant, 0), before, ...secant, after, 2 * after - at(secant, last)];
  const bend = m.slice(1).map((slope, i) => Math.abs(slope - at(m, i)));
  let most = 0;
  for (let k = 0; k + 2 < bend.length; k++) most = Math.max(most, at(bend, k) + at(bend, k + 2));
  return Array.from({ length: secant.length + 1 }, (_, k) => {
    const far = at(bend, k + 2);
    const near = at(bend, k);
    const left = at(m, k + 1);
    const right = at(m, k + 2);
    return near + far > 1e-9 * most ? (far * left + near * right) / (near + far) : (left + right) / 2;
  });
}

/**
 * The slopes of a cubic spline, whose second derivative has no step: three of them a row, solved from end to end. At
 * its ends it either does not bend (`natural`), or its first two pieces are one cubic, and its last two (`not a knot`).
 */
export function splineSlopes(
  h: readonly number[],
  secant: readonly number[],
  ends: 'natural' | 'not-a-knot',
): readonly number[] {
  const n = h.length + 1;
  const first = endRow(at(h, 0), at(h, 1), at(secant, 0), at(secant, 1), ends);
  const last = endRow(at(h, n - 2), at(h, n - 3), at(secant, n - 2), at(secant, n - 3), ends);
  // Each row in turn is divided by its pivot, and takes the one before it out of the next.
  const upper: number[] = [first.beside / first.own];
  const right: number[] = [first.right / first.own];
  for (let i = 1; i < n - 1; i++) {
    const pivot = 2 * (at(h, i - 1) + at(h, i)) - at(h, i) * at(upper, i - 1);
    const sum = 3 * (at(h, i) * at(secant, i - 1) + at(h, i - 1) * at(secant, i));
    upper.push(at(h, i - 1) / pivot);
    right.push((sum - at(h, i) * at(right, i - 1)) / pivot);
  }
  const slope = new Array<number>(n);
  slope[n - 1] = (last.right - last.beside * at(right, n - 2)) / (last.own - last.beside * at(upper, n - 2));
  for (let i = n - 2; i >= 0; i--) slope[i] = at(right, i) - at(upper, i) * at(slope, i + 1);
  return slope;
}

/** The row of an end: what its own slope, the slope beside it and both together come to. */
function endRow(
  h0: number,
  h1: number,
  d0: number,
  d1: number,
  ends: 'natural' | 'not-a-knot',
): { readonly own: number; readonly beside: number; readonly right: number } {
  if (ends === 'natural') return { own: 2, beside: 1, right: 3 * d0 };
  const both = h0 + h1;
  return { own: h1, beside: both, right: ((h0 + 2 * both) * h1 * d0 + h0 * h0 * d1) / both };
}
