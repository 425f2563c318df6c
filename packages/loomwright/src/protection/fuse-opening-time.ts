import { needInput } from '../error/guard.js';
import { needMoreThan } from '../error/bounded.js';
import type { SourceKey, SourceStatus } from '../source/index.js';
import type { FuseFamily } from '../table/index.js';
import { bandAt, type BandBasis } from './fuse-band.js';
import { conventionalMultiple, limitsOf, needFamily, needRating } from './fuse-data.js';

export interface FuseOpeningTimeInput {
  readonly family: FuseFamily;
  /** Rating in A: one that the family is made in. */
  readonly ratingA: number;
  /** Steady current in A, r.m.s., above 0. */
  readonly currentA: number;
}

export interface FuseOpeningTimeResult {
  /** The current as a multiple of the rating. */
  readonly ratingRatio: number;
  /** Soonest that a fuse of the family may open, in s; null above the last printed point of this edge. */
  readonly shortestS: number | null;
  /** What that rests on; null with it. */
  readonly shortestBasis: BandBasis | null;
  /** Latest that it must have opened, in s; null where it may never open. */
  readonly longestS: number | null;
  /** What that rests on; null with it. */
  readonly longestBasis: BandBasis | null;
  /** Whether no time is printed by which it must open: the wire must then bear the current for good. */
  readonly mayNeverOpen: boolean;
  /** Current in A from which it is sure to open at all. */
  readonly sureToOpenA: number;
  /** I²t at the shortest time, in A²s; null with it or where it is only a bound. */
  readonly shortestI2tA2s: number | null;
  /** I²t let through at the longest time, in A²s; null with it or where it is only a bound. */
  readonly longestI2tA2s: number | null;
  readonly source: SourceKey;
  readonly sourceStatus: SourceStatus;
}

/**
 * Within what times a fuse opens at a steady current: the band of its family, not one fuse's curve.
 *
 * Use the shortest time to ask whether a load opens the fuse, and the longest to ask what a wire must bear. Limits
 * hold at room temperature; in heat a fuse opens sooner. Between printed points the band runs straight on
 * logarithmic scales. Beyond them nothing is drawn: below its first point the shortest time is at least that one,
 * above its last the longest is at most that one (`bound`), and what no point bounds is null.
 *
 * $$t(I) = t_1\left(\frac{t_2}{t_1}\right)^{\ln(I/I_1)/\ln(I_2/I_1)}$$
 *
 * @param input family, rating, current
 * @returns the band in s with what each edge rests on, whether the fuse may never open, and the I²t of both edges
 * @throws InputError when a field is missing or out of range, or the rating is not made
 * @source iso-8820-3; iso-8820-5; the family's own
 * @example fuseOpeningTime({ family: bladeFuse, ratingA: 40, currentA: 80 }).longestI2tA2s //=> 32000
 */
export function fuseOpeningTime(input: FuseOpeningTimeInput): FuseOpeningTimeResult {
  const fn = 'fuseOpeningTime';
  needInput(fn, input);
  const { family, ratingA, currentA } = input;
  needFamily(fn, family);
  needRating(fn, family, ratingA);
  needMoreThan(fn, 'currentA', currentA);
  const limits = limitsOf(family, ratingA);
  const ratingRatio = currentA / ratingA;
  const band = bandAt(limits, ratingRatio);
  const i2t = (timeS: number | null, basis: BandBasis | null): number | null =>
    timeS === null || basis === 'bound' ? null : currentA * currentA * timeS;
  return {
    ratingRatio,
    ...band,
    mayNeverOpen: band.longestS === null,
    sureToOpenA: conventionalMultiple(family, ratingA) * ratingA,
    shortestI2tA2s: i2t(band.shortestS, band.shortestBasis),
    longestI2tA2s: i2t(band.longestS, band.longestBasis),
    source: family.source,
    sourceStatus: limits.status,
  };
}
