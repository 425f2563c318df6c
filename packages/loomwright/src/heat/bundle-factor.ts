import { needBetween, needInput, needInteger, needOneOf } from '../error/guard.js';
import { milW5088Bundle } from '../table/index.js';
import type { AmpacityInput } from './ampacity.js';
import { bundleAmpacity, needShare } from './bundle-ampacity.js';
import { needWire, range, type RuleFactor } from './rule-factor.js';

/** Rules for the current of a wire in a bundle. They genuinely disagree. */
export type BundleRule = 'mil-w-5088' | 'eee-inst-002' | 'us-33-cfr-183' | 'nec-310-15' | 'heat';

const RULES: readonly BundleRule[] = ['mil-w-5088', 'eee-inst-002', 'us-33-cfr-183', 'nec-310-15', 'heat'];

export interface BundleFactorInput {
  /** Number of wires in the bundle, at least 1. */
  readonly wireCount: number;
  /** Share of the bundle's total capacity in use at once, above 0 to 1: for the aviation curves and `heat`. */
  readonly loadedFraction: number;
  /** Number of wires that carry current at once: for the boat and building rules; all of them unless given. */
  readonly currentCarryingCount?: number;
  /** The rule that `factor` is to follow. All are shown. */
  readonly rule: BundleRule;
  /** The wire, for the rule `heat`: required there, and shown beside the other rules when given. */
  readonly wire?: AmpacityInput;
  /** Diameter over the bundle in mm, for `heat`; 1.2 √N wire diameters unless given. */
  readonly bundleDiameterMm?: number;
}

export interface BundleFactorResult extends RuleFactor<BundleRule> {
  /** Every rule's answer. */
  readonly rules: readonly RuleFactor<BundleRule>[];
  /** The least and the most of them. */
  readonly minFactor: number | null;
  readonly maxFactor: number | null;
}

/**
 * Factor on the current of a wire for the company that it keeps in a bundle, by every rule that we know.
 *
 * The rules come from different trades and disagree by a factor of two, each for its own reasons. Aviation
 * (`mil-w-5088`) counts wires and the share of their total capacity in use; space (`eee-inst-002`) counts wires in
 * vacuum; boat (`us-33-cfr-183`, mandatory only where three or more conductors carry 50 V or more) and building
 * (`nec-310-15`) count those that carry current, in a sheath or a conduit. `heat` is our own balance of a bundle in
 * still air, `bundleAmpacity`. Take one on purpose and look at the range.
 *
 * $$I_\mathrm{bundle} = F\,I_\mathrm{single},\qquad F_\mathrm{space} = \frac{29 - N}{28}\ (N \le 15),\ 0.5\ \text{above}$$
 *
 * The aviation curves are read between their shares on a double-logarithmic line, which lies about 1 % below a
 * straight one; below 20 % they keep the 20 % curve; a number of wires that is not listed takes the next larger one.
 *
 * @param input number of wires, share in use, rule; for `heat` the wire
 * @returns the rule's factor, and every rule's with the least and the most
 * @throws InputError when a field is missing, out of range or not a known word
 * @source mil-w-5088 (curves, digitised); eee-inst-002 (from memory); us-33-cfr-183, 183.425 note 2 (from memory);
 * nec-310-15, table 310.15(B)(3)(a) of 2014; heat-balance
 * @example bundleFactor({ wireCount: 8, loadedFraction: 0.6, rule: 'mil-w-5088' }).factor //=> 0.595
 */
export function bundleFactor(input: BundleFactorInput): BundleFactorResult {
  needInput('bundleFactor', input);
  const { wireCount, loadedFraction, currentCarryingCount = wireCount, rule, wire } = input;
  needInteger('bundleFactor', 'wireCount', wireCount, 1);
  needBetween('bundleFactor', 'wireCount', wireCount, 1, 1000);
  needShare('bundleFactor', loadedFraction);
  needInteger('bundleFactor', 'currentCarryingCount', currentCarryingCount, 0);
  needBetween('bundleFactor', 'currentCarryingCount', currentCarryingCount, 0, wireCount);
  needOneOf('bundleFactor', 'rule', rule, RULES);
  if (rule === 'heat' || wire !== undefined) needWire('bundleFactor', wire);
  const rules: readonly RuleFactor<BundleRule>[] = [
    aviation(wireCount, loadedFraction),
    { rule: 'eee-inst-002', factor: space(wireCount), reason: null, source: 'eee-inst-002', sourceStatus: 'memory' },
    {
      rule: 'us-33-cfr-183',
      factor: stepped(currentCarryingCount, BOAT),
      reason: null,
      source: 'us-33-cfr-183',
      sourceStatus: 'memory',
    },
    {
      rule: 'nec-310-15',
      factor: stepped(currentCarryingCount, BUILDING),
      reason: null,
      source: 'nec-310-15',
      sourceStatus: 'published',
    },
    balance(input),
  ];
  const chosen = rules.find((each) => each.rule === rule) as RuleFactor<BundleRule>;
  return { ...chosen, rules, ...range(rules) };
}

/** 33 CFR 183.425 note 2, from memory: most conductors and factor. */
const BOAT: readonly (readonly [upTo: number, factor: number])[] = [
  [2, 1],
  [3, 0.7],
  [6, 0.6],
  [24, 0.5],
  [Infinity, 0.4],
];

/** NFPA 70, table 310.15(B)(3)(a): most current-carrying conductors and factor. */
const BUILDING: readonly (readonly [upTo: number, factor: number])[] = [
  [3, 1],
  [6, 0.8],
  [9, 0.7],
  [20, 0.5],
  [30, 0.45],
  [40, 0.4],
  [Infinity, 0.35],
];

function stepped(count: number, steps: readonly (readonly [upTo: number, factor: number])[]): number {
  return (steps.find(([upTo]) => count <= upTo) as readonly [number, number])[1];
}

function space(wireCount: number): number {
  if (wireCount === 1) return 1;
  return wireCount <= 15 ? (29 - wireCount) / 28 : 0.5;
}

/** The aviation curves: the row of at least so many wires, between its columns by a power of the share. */
function aviation(wireCount: number, share: number): RuleFactor<BundleRule> {
  const { rows, sharesPercent, source } = milW5088Bundle;
  const row = rows.find(([count]) => count >= wireCount);
  const head = { rule: 'mil-w-5088', source, sourceStatus: wireCount > 20 ? 'memory' : 'published' } as const;
  const percent = Math.max(100 * share, sharesPercent[0] as number);
  const right = sharesPercent.findIndex((each) => percent <= each * (1 + 1e-12));
  const high = row?.[right + 1] ?? null;
  if (row === undefined || high === null) return { ...head, factor: null, reason: 'beyond-table' };
  if (right === 0) return { ...head, factor: high, reason: null };
  const low = row[right] as number;
  const from = sharesPercent[right - 1] as number;
  const to = sharesPercent[right] as number;
  const part = Math.log(percent / from) / Math.log(to / from);
  return { ...head, factor: part >= 1 ? high : low * (high / low) ** part, reason: null };
}

/** Our own: the current in the bundle over that alone. */
function balance(input: BundleFactorInput): RuleFactor<BundleRule> {
  const { wire, wireCount, loadedFraction, bundleDiameterMm } = input;
  const head = { rule: 'heat', source: 'heat-balance', sourceStatus: 'derived' } as const;
  if (wire === undefined) return { ...head, factor: null, reason: 'no-wire-given' };
  const { factor } = bundleAmpacity({
    ...wire,
    wireCount,
    loadedFraction,
    ...(bundleDiameterMm === undefined ? {} : { bundleDiameterMm }),
  });
  return { ...head, factor, reason: factor === null ? 'air-at-limit' : null };
}
