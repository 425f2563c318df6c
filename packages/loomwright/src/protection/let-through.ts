import type { FuseFamily } from '../table/index.js';
import { bandAt, edgeOf } from './fuse-band.js';
import { limitsOf } from './fuse-data.js';
import { ADIABATIC_S, bearsS, type FusedWire, withstandA2s } from './fused-wire.js';

/** The wire against the longest that a fuse may let a current flow. */
export interface LetThrough {
  readonly currentA: number;
  /** The current as a multiple of the fuse's rating. */
  readonly ratingRatio: number;
  /** Latest opening in s. */
  readonly longestS: number;
  /** What then flows through the wire, in A²s. */
  readonly i2tA2s: number;
  /** What the wire bears in a short circuit, in A²s. */
  readonly withstandI2tA2s: number;
  /** Least area in mm² that bears it with all heat in the metal, by the short-time limit; null above 5 s. */
  readonly leastAreaMm2: number | null;
  /** How long in s the wire bears the current; null for good. */
  readonly bearsS: number | null;
  readonly ok: boolean;
}

/**
 * The rows at which the wire is judged. Between two printed points I²t runs straight on logarithmic scales, so that it
 * is largest at an end: every printed point above what the wire bears for good, the ends of that range, and the last
 * point, which stands for all larger currents: there a fuse's let-through is taken not to grow.
 */
export function letThroughOf(
  family: FuseFamily,
  ratingA: number,
  wire: FusedWire,
  ampacityA: number,
  mostA: number | null,
): LetThrough[] {
  const limits = limitsOf(family, ratingA);
  const points = edgeOf(limits, 'longest').map(([percent]) => (percent / 100) * ratingA);
  const first = points[0] as number;
  const last = points[points.length - 1] as number;
  const top = mostA === null ? last : Math.max(first, Math.min(last, mostA));
  const low = Math.min(top, Math.max(first, ampacityA));
  const currents = [...new Set([low, ...points.filter((currentA) => currentA > low && currentA < top), top])];
  const withstand = withstandA2s(wire);
  return currents.map((currentA) => {
    const longestS = bandAt(limits, currentA / ratingA).longestS as number;
    const bears = bearsS(wire, ampacityA, currentA);
    const i2tA2s = currentA * currentA * longestS;
    return {
      currentA,
      ratingRatio: currentA / ratingA,
      longestS,
      i2tA2s,
      withstandI2tA2s: withstand,
      leastAreaMm2: longestS > ADIABATIC_S ? null : wire.areaMm2 * Math.sqrt(i2tA2s / withstand),
      bearsS: bears,
      ok: bears === null || longestS <= bears,
    };
  });
}
