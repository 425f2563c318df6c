import { type Check } from '../check/index.js';
import { needInput } from '../error/guard.js';
import { needMoreThan } from '../error/bounded.js';
import type { FuseFamily } from '../table/index.js';
import { needFamily, needRating } from './fuse-data.js';
import { needUpstream, selectivityOf, type SelectivityVerdict, type UpstreamFuse } from './selectivity.js';

export interface FusesInRowInput {
  /** The fuse nearer to the fault, and its rating in A. */
  readonly family: FuseFamily;
  readonly ratingA: number;
  /** The fuse nearer to the battery. */
  readonly upstream: UpstreamFuse;
  /** Largest current in A of a short right behind the first, above 0. */
  readonly prospectiveA: number;
}

export interface FusesInRowResult {
  /** Whether the fuse nearer to the fault opens alone at every current up to that of the short. */
  readonly ok: boolean;
  /** `kept`, `not-kept`, or `not-printed` where nothing tells above some current. */
  readonly verdict: SelectivityVerdict;
  /** Largest current in A up to which the printed bands keep both apart. */
  readonly upToA: number;
  /** Above the bands: the most in A²s that the fuse nearer to the fault lets through. */
  readonly letThroughA2s: number;
  /** And what the other bears: the share of its melting I²t; null where none is known. */
  readonly bearsA2s: number | null;
  readonly checks: readonly [Check];
  readonly decidedBy: string;
}

/**
 * Two fuses in a row: whether the one nearer to the fault opens alone.
 *
 * Use it for a main fuse before a fuse box, or a box before another. Up to the last printed current of the one nearer
 * to the battery the bands tell: the longest opening of the one must lie below the shortest of the other. Above that
 * its let-through is held against the share of the other's melting I²t that a fuse may see a hundred times.
 *
 * $$t_\mathrm{longest}(I) < t'_\mathrm{shortest}(I) \qquad \max_I I^2 t_\mathrm{longest}(I) \le 0.48\,(I^2t)'_\mathrm{melt}$$
 *
 * Above the last printed current of the fuse nearer to the fault its let-through is taken not to grow (common practice).
 *
 * @param input both fuses and the largest short behind the first
 * @returns verdict, current in A up to which the bands tell, A²s let through and borne, the check
 * @throws InputError when a field is missing or out of range, or a family does not come in the rating
 * @source iso-8820-3 (bands), fuse-selection-guides (share of the melting I²t, as for 100 pulses)
 * @example fusesInRow({ family: bladeFuse, ratingA: 5, upstream: { name: 'main', family: bladeFuse, ratingA: 40 }, prospectiveA: 900 }).letThroughA2s //=> 90
 */
export function fusesInRow(input: FusesInRowInput): FusesInRowResult {
  const fn = 'fusesInRow';
  needInput(fn, input);
  const { family, ratingA, upstream, prospectiveA } = input;
  needFamily(fn, family);
  needRating(fn, family, ratingA);
  needUpstream(fn, upstream);
  needMoreThan(fn, 'prospectiveA', prospectiveA);
  const { verdict, upToA, letA2s, bearsA2s, check } = selectivityOf(family, ratingA, upstream, prospectiveA);
  return {
    ok: check.ok,
    verdict,
    upToA,
    letThroughA2s: letA2s,
    bearsA2s,
    checks: [check],
    decidedBy: check.name,
  };
}
