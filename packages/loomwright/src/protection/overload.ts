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

/** The checks of one rule for one rating. */
export function overloadChecks(rule: OverloadRule, family: FuseFamily, ratingA: number, ampacityA: number): Check[] {
  const common = { unit: 'A', sense: 'atMost' } as const;
  if (rule === 'us-33-cfr-183-455') {
    return [
      makeCheck({
        ...common,
        name: 'rating at most 150 % of the ampacity',
        value: ratingA,
        limit: 1.5 * ampacityA,
        source: 'us-33-cfr-183',
        sourceStatus: 'published',
      }),
    ];
  }
  const checks = [
    makeCheck({
      ...common,
      name: 'rating at most the ampacity',
      value: ratingA,
      limit: ampacityA,
      source: 'iec-60364-4-43',
      sourceStatus: 'memory',
    }),
  ];
  if (rule !== 'rating-at-most-ampacity') {
    const strict = rule === 'strict';
    checks.push(
      makeCheck({
        ...common,
        name: strict ? 'opening current at most the ampacity' : 'opening current at most 1.45 × the ampacity',
        value: ratingA * conventionalMultiple(family, ratingA),
        limit: strict ? ampacityA : 1.45 * ampacityA,
        source: strict ? 'common-practice' : 'iec-60364-4-43',
        sourceStatus: strict ? 'common-practice' : 'memory',
      }),
    );
  }
  return checks;
}
