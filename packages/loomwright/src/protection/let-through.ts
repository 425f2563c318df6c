import type { FuseFamily } from '../table/index.js';
import { bandAt, edgeOf } from './fuse-band.js';
import { limitsOf } from './fuse-data.js';
import { type FusedWire, wireLine } from './fused-wire.js';

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
  /** Least area in mm² that bears it with all heat in the metal, by the short-time limit; above 5 s more than is needed. */
  readonly leastAreaMm2: number;
  /** How long in s the wire bears the current; null for good. */
  readonly bearsS: number | null;
  readonly ok: boolean;
}

/** Looks between two turns of a wire that is followed in time, where each look is a solve of its own. */
const LOOKS = 6;
/** Steps of the search between two turns, each by the golden section. */
const STEPS = 18;
const GOLDEN = 0.6180339887498949;

/**
 * The rows at which the wire is judged: every printed point above what the wire bears for good, the ends of that range,
 * where the short-time limit takes over, and between any two of these the place of least room where that is less than
 * at all of them. The last point stands for all larger currents: there a fuse's let-through is taken not to grow.
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
  const { goodA, turnA, withstandI2tA2s, bearsForS } = wireLine(wire, ampacityA);
  const low = Math.min(top, Math.max(first, goodA));
  const row = (currentA: number): LetThrough => {
    const longestS = bandAt(limits, currentA / ratingA).longestS as number;
    // At the very current that it bears for good the row is that of a little more.
    const bears = currentA < goodA ? null : bearsForS(currentA);
    const i2tA2s = currentA * currentA * longestS;
    return {
      currentA,
      ratingRatio: currentA / ratingA,
      longestS,
      i2tA2s,
      withstandI2tA2s,
      leastAreaMm2: wire.areaMm2 * Math.sqrt(i2tA2s / withstandI2tA2s),
      bearsS: bears,
      ok: bears === null || longestS <= bears,
    };
  };
  const turns = [...points, turnA].filter((currentA) => currentA > low && currentA < top);
  const ends = [...new Set([low, ...turns.sort((a, b) => a - b), top])].map(row);
  let worst = Math.max(...ends.map(strain));
  return ends.flatMap((to, i) => {
    const from = ends[i - 1];
    if (from === undefined) return [to];
    const at = (share: number): LetThrough => row(from.currentA * (to.currentA / from.currentA) ** share);
    if (wire.inTime !== undefined) {
      return [...Array.from({ length: LOOKS }, (_, k) => at((k + 1) / (LOOKS + 1))), to];
    }
    // Both lines fall, so that nowhere between the strain is more than this.
    if (to.bearsS === null || from.longestS / to.bearsS <= worst) return [to];
    const found = least(at);
    if (!(strain(found) > worst * (1 + 1e-6))) return [to];
    worst = strain(found);
    return [found, to];
  });
}

/** How far the fuse's time has come towards what the wire bears: above 1 it is too long. */
export function strain({ longestS, bearsS }: LetThrough): number {
  return bearsS === null ? 0 : longestS / bearsS;
}

/**
 * The place of least room between two turns. On logarithmic scales the fuse's line is straight there and the wire's
 * bends upwards, so that there is one such place at most.
 */
function least(at: (share: number) => LetThrough): LetThrough {
  let low = 0;
  let high = 1;
  let left = at(1 - GOLDEN);
  let right = at(GOLDEN);
  for (let step = 0; step < STEPS; step++) {
    if (strain(left) < strain(right)) {
      low += (1 - GOLDEN) * (high - low);
      left = right;
      right = at(low + GOLDEN * (high - low));
    } else {
      high -= (1 - GOLDEN) * (high - low);
      right = left;
      left = at(high - GOLDEN * (high - low));
    }
  }
  return strain(left) > strain(right) ? left : right;
}
