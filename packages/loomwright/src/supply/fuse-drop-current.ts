import { needInput } from '../error/guard.js';
import type { SourceKey, SourceStatus } from '../source/index.js';
import type { FuseFamily } from '../table/index.js';
import { coldFuseOhm, type FuseReading, needDropMv, needFuseTolerance, readFuse } from './fuse-reading.js';

export interface FuseDropCurrentInput {
  /** The fuse: `bladeFuse`, `miniFuse` …, and its rating in A. */
  readonly family: FuseFamily;
  readonly ratingA: number;
  /** Reading in mV between the two test points on its back, at least 0 and at most 1000. */
  readonly dropMv: number;
  /** Tolerance of the fuse's resistance as a fraction, at least 0 and below 1: makers differ by about 0.15. */
  readonly fuseToleranceFraction: number;
}

export interface FuseDropCurrentResult extends FuseReading {
  /** Typical resistance of the cold fuse in Ω. */
  readonly coldOhm: number;
  /** Amperes for each millivolt. */
  readonly currentAPerMv: number;
  readonly source: SourceKey;
  readonly sourceStatus: SourceStatus;
}

/**
 * The current in a circuit from the millivolts across its fuse, without pulling it.
 *
 * Use it to find which circuit empties a battery at rest: a pulled fuse wakes controllers, or sends them to sleep, and
 * what was looked for is gone. For small currents: near its rating a fuse is warm and reads too high.
 *
 * $$I = \frac{U}{R_\mathrm{cold}}$$
 *
 * @param input fuse, reading, tolerance
 * @returns current in A, typical and at the ends of the tolerance, and how far the fuse's own warmth deceives
 * @throws InputError when a field is missing or out of range, or the family has no resistance for the rating
 * Valid for genuine fuses of the family; counterfeit ones follow no chart.
 * @source fuse-drop-charts; the family's own cold resistances
 * @example fuseDropCurrent({ family: bladeFuse, ratingA: 10, dropMv: 1, fuseToleranceFraction: 0.15 }).currentA //=> 0.12987
 */
export function fuseDropCurrent(input: FuseDropCurrentInput): FuseDropCurrentResult {
  const fn = 'fuseDropCurrent';
  needInput(fn, input);
  const { family, ratingA, dropMv, fuseToleranceFraction } = input;
  const coldOhm = coldFuseOhm(fn, family, ratingA);
  needDropMv(fn, 'dropMv', dropMv);
  needFuseTolerance(fn, 'fuseToleranceFraction', fuseToleranceFraction);
  return {
    ...readFuse(family, ratingA, coldOhm, dropMv, fuseToleranceFraction),
    coldOhm,
    currentAPerMv: 1 / 1000 / coldOhm,
    source: family.source,
    sourceStatus: family.status,
  };
}
