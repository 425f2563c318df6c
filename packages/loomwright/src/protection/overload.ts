import { type Check, makeCheck } from '../check/index.js';
import type { FuseFamily } from '../table/index.js';
import { conventionalMultiple } from './fuse-data.js';

/** How a fuse's rating is held against the amperes that its wire bears. */
export type OverloadRule = 'strict' | 'iec-60364-4-43' | 'rating-at-most-ampacity' | 'us-33-cfr-183-455';

/** The words of `OverloadRule`, for guards. */
export const OVERLOAD_RULES: readonly OverloadRule[] = [
  'strict',
  'iec-60364-4-43',
  'rating-at-most-ampacity',
  'us-33-cfr-183-455',
];

/** Whether a rule is met: the verdict of its checks, without them. */
export function overloadIsMet(rule: OverloadRule, family: FuseFamily, ratingA: number, ampacityA: number): boolean {
  if (rule === 'us-33-cfr-183-455') return ratingA <= 1.5 * ampacityA;
  if (!(ratingA <= ampacityA)) return false;
  if (rule === 'rating-at-most-ampacity') return true;
  return ratingA * conventionalMultiple(family, ratingA) <= (rule === 'strict' ? ampacityA : 1.45 * ampacityA);
}

/** The checks of one rule for one rating. */
export function overloadChecks(rule: OverloadRule, family: FuseFamily, ratingA: number, ampacityA: number): Check[] {
  if (rule === 'us-33-cfr-183-455') {
    return [
      makeCheck({
        name: 'rating at most 150 % of the ampacity',
        value: ratingA,
        limit: 1.5 * ampacityA,
        source: 'us-33-cfr-183',
        unit: 'A',
        sense: 'atMost',
        sourceStatus: 'published',
      }),
    ];
  }
  const checks = [
    makeCheck({
      name: 'rating at most the ampacity',
      value: ratingA,
      limit: ampacityA,
      source: 'iec-60364-4-43',
      unit: 'A',
      sense: 'atMost',
      sourceStatus: 'memory',
    }),
  ];
  if (rule !== 'rating-at-most-ampacity') {
    const strict = rule === 'strict';
    checks.push(
      makeCheck({
        name: strict ? 'opening current at most the ampacity' : 'opening current at most 1.45 × the ampacity',
        value: ratingA * conventionalMultiple(family, ratingA),
        limit: strict ? ampacityA : 1.45 * ampacityA,
        source: strict ? 'common-practice' : 'iec-60364-4-43',
        unit: 'A',
        sense: 'atMost',
        sourceStatus: strict ? 'common-practice' : 'memory',
      }),
    );
  }
  return checks;
}
