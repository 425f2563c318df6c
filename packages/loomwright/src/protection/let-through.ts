import type { FuseFamily } from '../table/index.js';
import { bandAt, edgeOf } from './fuse-band.js';
import { limitsOf } from './fuse-data.js';
import { bearsForS, type FusedWire, goodA, turnsA, withstandA2s } from './fused-wire.js';

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

/** Rows between two turns of a wire that is followed in time: its line is curved there. */
const BETWEEN = 6;

/**
 * The rows at which the wire is judged: every printed point above what the wire bears for good, the ends of that range,
 * and where one of the wire's limits takes over from another. Between these both lines run straight on logarithmic
 * scales, so that the wire has least room at one of them. The last point stands for all larger currents: there a fuse's
 * let-through is taken not to grow.
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
  const good = goodA(wire, ampacityA);
  const low = Math.min(top, Math.max(first, good));
  const turns = [...points, ...turnsA(wire)].filter((currentA) => currentA > low && currentA < top);
  const currents = [...new Set([low, ...turns.sort((a, b) => a - b), top])];
  const withstand = withstandA2s(wire);
  return (wire.inTime === undefined ? currents : filled(currents)).map((currentA) => {
    const longestS = bandAt(limits, currentA / ratingA).longestS as number;
    // At the very current that it bears for good the row is that of a little more.
    const bears = currentA < good ? null : bearsForS(wire, currentA);
    const i2tA2s = currentA * currentA * longestS;
    return {
      currentA,
      ratingRatio: currentA / ratingA,
      longestS,
      i2tA2s,
      withstandI2tA2s: withstand,
      leastAreaMm2: wire.areaMm2 * Math.sqrt(i2tA2s / withstand),
      bearsS: bears,
      ok: bears === null || longestS <= bears,
    };
  });
}

/** The currents with others between them. */
function filled(currents: readonly number[]): number[] {
  return currents.flatMap((to, i) => {
    const from = currents[i - 1];
    if (from === undefined) return [to];
    return Array.from({ length: BETWEEN }, (_, k) =>
      k === BETWEEN - 1 ? to : from * (to / from) ** ((k + 1) / BETWEEN),
    );
  });
}
