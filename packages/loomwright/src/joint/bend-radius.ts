import { InputError } from '../error/index.js';
import { needAbove, needInput } from '../error/guard.js';
import type { SourceKey, SourceStatus } from '../source/index.js';
import type { BendRule } from '../table/index.js';

export interface BendRadiusInput {
  /** Which published rule or practice. */
  readonly rule: BendRule;
  /** Diameter over the insulation or the sheath in mm, above 0. */
  readonly outerDiameterMm: number;
}

export interface BendRadiusResult {
  /** Smallest radius at the inside of a bend, in mm. */
  readonly bendRadiusMm: number;
  /** Smallest radius of a bend that stays, in mm; the same where the rule does not tell them apart. */
  readonly longTermRadiusMm: number;
  readonly source: SourceKey;
  readonly sourceStatus: SourceStatus;
}

/**
 * Smallest bend of a wire or a cable by a named rule.
 *
 * $$r = k\,D$$
 *
 * @param input rule and diameter
 * @returns radius at the inside of the bend in mm, for a while and for good
 * @throws InputError when a field is missing or out of range
 * @source the rule's own
 * @example bendRadius({ rule: bendWelding, outerDiameterMm: 14.3 }).bendRadiusMm //=> 85.8
 */
export function bendRadius(input: BendRadiusInput): BendRadiusResult {
  needInput('bendRadius', input);
  const { rule, outerDiameterMm } = input;
  if (typeof rule !== 'object' || rule === null || typeof rule.radiusFactor !== 'number') {
    const kind = rule === undefined || rule === null ? 'missing' : 'object';
    throw new InputError('bendRadius', 'rule', kind, rule, 'must be a bend rule', 'import one, such as bendSingleWire');
  }
  needAbove('bendRadius', 'outerDiameterMm', outerDiameterMm);
  return {
    bendRadiusMm: rule.radiusFactor * outerDiameterMm,
    longTermRadiusMm: (rule.longTermFactor ?? rule.radiusFactor) * outerDiameterMm,
    source: rule.source,
    sourceStatus: rule.status,
  };
}
