import { leastRatio } from './equal.js';
import { type BundleWire, squareSumMm2 } from './wires.js';

/** What keeps a bundle from being thinner. */
export type BoundReason = 'area' | 'two-thickest' | 'three-thickest' | 'equal-part';

/** A diameter below which no bundle of the wires can be, and why. Sizes from the thickest down. */
export function leastDiameterMm(sizes: readonly BundleWire[]): {
  readonly diameterMm: number;
  readonly by: BoundReason;
} {
  let best: { diameterMm: number; by: BoundReason } = { diameterMm: Math.sqrt(squareSumMm2(sizes)), by: 'area' };
  const offer = (diameterMm: number, by: BoundReason): void => {
    if (diameterMm > best.diameterMm * (1 + 1e-9)) best = { diameterMm, by };
  };
  const [first = 0, second = 0, third = 0] = sizes.flatMap(({ outerDiameterMm, count }) =>
    Array.from({ length: Math.min(3, count) }, () => outerDiameterMm),
  );
  if (second > 0) offer(first + second, 'two-thickest');
  if (third > 0) offer(aroundThreeMm(first, second, third), 'three-thickest');
  // The k thickest hold at least as much as k circles of the size of the k-th.
  let k = 0;
  for (const { outerDiameterMm, count } of sizes) {
    k += count;
    offer(outerDiameterMm * leastRatio(k), 'equal-part');
  }
  return best;
}

/**
 * Diameter of the circle around three circles that touch each other (Descartes' theorem), or of the two larger ones
 * side by side where the third finds room beside them.
 */
function aroundThreeMm(a: number, b: number, c: number): number {
  const beside = (a * b * (a + b)) / (a * a + a * b + b * b);
  if (c <= beside) return a + b;
  const [p, q, r] = [1 / a, 1 / b, 1 / c];
  return 1 / (2 * Math.sqrt(p * q + q * r + r * p) - p - q - r);
}
