import { needMoreThan, needNoLessThan } from '../error/bounded.js';
import { InputError } from '../error/index.js';
import { coldResistanceOhm, hotResistanceOhm, needFamily, needRating } from '../protection/fuse-data.js';
import type { FuseFamily } from '../table/index.js';

/** The typical cold resistance of a fuse in Ω, or an error where its family has no figure for this rating. */
export function coldFuseOhm(fn: string, family: FuseFamily, ratingA: number, at = ''): number {
  needFamily(fn, family, `${at}family`);
  needRating(fn, family, ratingA, `${at}ratingA`);
  const ohm = coldResistanceOhm(family, ratingA);
  if (ohm !== null) return ohm;
  const must = 'must be a rating whose cold resistance the family names';
  throw new InputError(fn, `${at}ratingA`, 'inTable', ratingA, must);
}

/** A tolerance: at least 0 and below 1. */
export function needFuseTolerance(fn: string, field: string, value: number): void {
  needNoLessThan(fn, field, value);
  if (value >= 1) throw new InputError(fn, field, 'below', value, 'must be below 1', '15 % is 0.15');
}

/** A drop across a fuse as the current that makes it. */
export interface FuseReading {
  /** Current in A with a typical cold fuse; at the ends of its tolerance. */
  readonly currentA: number;
  readonly lowA: number;
  readonly highA: number;
  /** By how much the fuse's own warmth raises its resistance at this current: the true current is less by that. */
  readonly warmFraction: number;
}

/** Millivolts across a fuse read as amperes. */
export function readFuse(family: FuseFamily, ratingA: number, ohm: number, dropMv: number, t: number): FuseReading {
  const currentA = dropMv / 1000 / ohm;
  const hot = hotResistanceOhm(family, ratingA) ?? ohm;
  // Warmth goes with the heat made, and the drop at rated current says how much that is there.
  const warmFraction = Math.max(hot / ohm - 1, 0) * (currentA / ratingA) ** 2;
  return { currentA, lowA: currentA / (1 + t), highA: currentA / (1 - t), warmFraction };
}

/** Millivolts on a meter: at least 0, and below a volt. */
export function needDropMv(fn: string, field: string, value: number): void {
  needNoLessThan(fn, field, value);
  if (value > 0) needMoreThan(fn, field, value);
  if (value > 1000) {
    throw new InputError(fn, field, 'atMost', value, 'must be at most 1000', 'a fuse with a volt across it is open');
  }
}
