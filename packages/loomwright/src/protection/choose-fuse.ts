import { type Check, makeCheck, type NotPossible, tightestCheck } from '../check/index.js';
import { needAbove, needBetween, needInput, needOneOf } from '../error/guard.js';
import type { FuseFamily } from '../table/index.js';
import {
  ambientShare,
  conventionalMultiple,
  hotResistanceOhm,
  limitsOf,
  needFamily,
  openingMultiple,
} from './fuse-data.js';

/** How a fuse's rating is held against the amperes that its wire bears. */
export type OverloadRule = 'strict' | 'iec-60364-4-43' | 'rating-at-most-ampacity' | 'us-33-cfr-183-455';

/** The words of `OverloadRule`, for guards. */
export const OVERLOAD_RULES: readonly OverloadRule[] = [
  'strict',
  'iec-60364-4-43',
  'rating-at-most-ampacity',
  'us-33-cfr-183-455',
];

export interface ChooseFuseInput {
  readonly family: FuseFamily;
  /** Continuous current in A, r.m.s., above 0. */
  readonly continuousA: number;
  /** Share of the rating that a continuous current may use at 25 °C, above 0 to 1; 0.75 in maker guides. */
  readonly continuousFraction: number;
  /** Temperature around the fuse in °C, −40 to the end of the family's re-rating. */
  readonly ambientTempC: number;
  /** Current in A that the wire bears where it lies, above 0. */
  readonly ampacityA: number;
  /** How the rating is held against the ampacity. */
  readonly overloadRule: OverloadRule;
  /** Current in A of a short at the far end of the wire: hot, with the largest resistance, at low battery. Above 0. */
  readonly farShortA: number;
  /** Time in s within which that short must be cleared, above 0. */
  readonly clearWithinS: number;
}

/** A fuse that was chosen. */
export interface ChosenFuse {
  readonly possible: true;
  readonly ratingA: number;
  /** Typical resistance hot in Ω, or null where no figure is known. */
  readonly hotOhm: number | null;
  /** Every limit with its margin. */
  readonly checks: readonly Check[];
  /** The check with the least room. */
  readonly decidedBy: string;
  /** Key of the family. */
  readonly family: string;
}

/** The rating that comes closest where none is possible, with what it fails. */
export interface NearestFuse {
  readonly ratingA: number;
  readonly checks: readonly Check[];
}

/**
 * The smallest fuse of a family that carries the load and still protects the wire.
 *
 * Use it for a steady load. It holds three things against each rating: the continuous current, the wire's ampacity by
 * a named rule, and whether a short at the far end of the wire opens it in time. Inrush is not judged here.
 *
 * $$\frac{I}{I_n\,k_{\mathrm{amb}}} \le f_{\mathrm{cont}}, \qquad I_n \text{ or } I_2 \le c\,I_z, \qquad
 * I_{\mathrm{short}} \ge m(t)\,I_n$$
 *
 * with $I_2$ the current at which the family is sure to open (1.35 $I_n$ for blades). `strict`: $I_2 \le I_z$.
 * `iec-60364-4-43`: $I_n \le I_z$ and $I_2 \le 1.45 I_z$. `rating-at-most-ampacity`: $I_n \le I_z$ alone.
 * `us-33-cfr-183-455`: $I_n \le 1.5 I_z$, a code's bound for boats under 50 V.
 *
 * @param input family, load, wire, rule, short
 * @returns the fuse with its checks, or `possible: false` with code `no-rating-fits` and the nearest rating
 * @throws InputError when a field is missing or out of range
 * @source fuse-selection-guides (75 % of rating); iso-8820-3 (opening times); iec-60364-4-43 (433.1, from memory);
 * us-33-cfr-183 (183.455 (c)(1))
 * @example chooseFuse({ family: bladeFuse, continuousA: 9, continuousFraction: 0.75, ambientTempC: 20, ampacityA: 25, overloadRule: 'strict', farShortA: 90, clearWithinS: 0.5 }).ratingA //=> 15
 */
export function chooseFuse(input: ChooseFuseInput): ChosenFuse | NotPossible<NearestFuse> {
  needInput('chooseFuse', input);
  const { family, continuousA, continuousFraction, ambientTempC, ampacityA, overloadRule, farShortA, clearWithinS } =
    input;
  needFamily('chooseFuse', family);
  needAbove('chooseFuse', 'continuousA', continuousA);
  needAbove('chooseFuse', 'continuousFraction', continuousFraction);
  needBetween('chooseFuse', 'continuousFraction', continuousFraction, 0, 1);
  needBetween('chooseFuse', 'ambientTempC', ambientTempC, -40, 200);
  needAbove('chooseFuse', 'ampacityA', ampacityA);
  needOneOf('chooseFuse', 'overloadRule', overloadRule, OVERLOAD_RULES);
  needAbove('chooseFuse', 'farShortA', farShortA);
  needAbove('chooseFuse', 'clearWithinS', clearWithinS);
  const share = ambientShare('chooseFuse', family, ambientTempC);
  let nearest: NearestFuse | null = null;
  for (const ratingA of family.ratingsA) {
    const checks = fuseChecks(input, ratingA, share);
    const failed = checks.filter((check) => !check.ok);
    if (failed.length === 0) {
      const decidedBy = tightestCheck(checks)?.name ?? '';
      return {
        possible: true,
        ratingA,
        hotOhm: hotResistanceOhm(family, ratingA),
        checks,
        decidedBy,
        family: family.key,
      };
    }
    // Larger ratings only help the continuous check: the first that carries the load is the nearest.
    if (nearest === null && checks[0]?.ok === true) nearest = { ratingA, checks };
  }
  const last = family.ratingsA.at(-1) as number;
  nearest ??= { ratingA: last, checks: fuseChecks(input, last, share) };
  const failed = nearest.checks.filter((check) => !check.ok).map((check) => check.name);
  return {
    possible: false,
    code: 'no-rating-fits',
    because: `no rating of ${family.key} meets every limit; the nearest, ${nearest.ratingA} A, fails: ${failed.join(', ')}`,
    nearest,
  };
}

/** The checks of one rating. */
function fuseChecks(input: ChooseFuseInput, ratingA: number, share: number): Check[] {
  const { family, continuousA, continuousFraction, ampacityA, overloadRule, farShortA, clearWithinS } = input;
  const status = limitsOf(family, ratingA).status;
  const checks = [
    makeCheck({
      name: 'continuous current of the fuse',
      value: continuousA,
      limit: ratingA * share * continuousFraction,
      unit: 'A',
      sense: 'atMost',
      source: continuousFraction === 0.75 ? 'fuse-selection-guides' : 'given-by-caller',
      sourceStatus: continuousFraction === 0.75 ? 'published' : 'derived',
    }),
  ];
  if (overloadRule === 'us-33-cfr-183-455') {
    checks.push(
      makeCheck({
        name: 'rating at most 150 % of the ampacity',
        value: ratingA,
        limit: 1.5 * ampacityA,
        unit: 'A',
        sense: 'atMost',
        source: 'us-33-cfr-183',
        sourceStatus: 'published',
      }),
    );
  } else {
    checks.push(
      makeCheck({
        name: 'rating at most the ampacity',
        value: ratingA,
        limit: ampacityA,
        unit: 'A',
        sense: 'atMost',
        source: 'iec-60364-4-43',
        sourceStatus: 'memory',
      }),
    );
    if (overloadRule !== 'rating-at-most-ampacity') {
      const strict = overloadRule === 'strict';
      checks.push(
        makeCheck({
          name: strict ? 'opening current at most the ampacity' : 'opening current at most 1.45 × the ampacity',
          value: ratingA * conventionalMultiple(family, ratingA),
          limit: strict ? ampacityA : 1.45 * ampacityA,
          unit: 'A',
          sense: 'atMost',
          source: strict ? 'common-practice' : 'iec-60364-4-43',
          sourceStatus: strict ? 'common-practice' : 'memory',
        }),
      );
    }
  }
  const multiple = openingMultiple(family, ratingA, clearWithinS);
  checks.push(
    makeCheck({
      name: 'far-end short opens the fuse in time',
      value: farShortA,
      limit: multiple === null ? null : multiple * ratingA,
      unit: 'A',
      sense: 'atLeast',
      source: family.source,
      sourceStatus: status,
      okWithoutNumber: false,
      ...(multiple === null ? { because: `no printed limit of ${family.key} opens within ${clearWithinS} s` } : {}),
    }),
  );
  return checks;
}
