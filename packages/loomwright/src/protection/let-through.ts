import type { FuseFamily } from '../table/index.js';
import { bandAt, edgeOf } from './fuse-band.js';
import { limitsOf } from './fuse-data.js';
import { ADIABATIC_S, bearsForS, type FusedWire, goodA, turnA, withstandA2s } from './fused-wire.js';

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

/**
 * The rows at which the wire is judged: every printed point above what the wire bears for good, the ends of that range,
 * where the short-time limit takes over, and between any two of these the place of least room. The last point stands
 * for all larger currents: there a fuse's let-through is taken not to grow.
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
  const withstand = withstandA2s(wire);
  const row = (currentA: number): LetThrough => {
    const longestS = bandAt(limits, currentA / ratingA).longestS as number;
    // At the very current that it bears for good the row is that of a little more.
    const bears = currentA < good ? null : bearsForS(wire, ampacityA, currentA);
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
  };
  const turns = [...points, turnA(wire)].filter((currentA) => currentA > low && currentA < top);
  const currents = [...new Set([low, ...turns.sort((a, b) => a - b), top])];
  const rows: LetThrough[] = [];
  for (const currentA of currents) {
    const to = row(currentA);
    const from = rows.at(-1);
    if (from !== undefined) rows.push(...between(row, from, to, wire.inTime !== undefined));
    rows.push(to);
  }
  return rows;
}

/** How far the fuse's time has come towards what the wire bears: above 1 it is too long. */
export function strain({ longestS, bearsS }: LetThrough): number {
  return bearsS === null ? 0 : longestS / bearsS;
}

/**
 * Rows between two others where the wire has less room than at both. On logarithmic scales the fuse's line is straight
 * there and the wire's bends upwards, so that there is one such place at most.
 */
function between(
  row: (currentA: number) => LetThrough,
  from: LetThrough,
  to: LetThrough,
  looks: boolean,
): LetThrough[] {
  const at = (share: number): LetThrough => row(from.currentA * (to.currentA / from.currentA) ** share);
  if (looks) return Array.from({ length: LOOKS }, (_, k) => at((k + 1) / (LOOKS + 1)));
  if (to.longestS <= ADIABATIC_S && from.longestS <= ADIABATIC_S && to.bearsS !== null && to.bearsS <= ADIABATIC_S) {
    if (from.bearsS !== null && from.bearsS <= ADIABATIC_S) return [];
  }
  let low = 0;
  let high = 1;
  for (let step = 0; step < 24; step++) {
    const third = (high - low) / 3;
    if (strain(at(low + third)) < strain(at(high - third))) low += third;
    else high -= third;
  }
  const best = at((low + high) / 2);
  const least = Math.max(strain(from), strain(to));
  return strain(best) > least * (1 + 1e-6) && best.currentA > from.currentA && best.currentA < to.currentA
    ? [best]
    : [];
}
