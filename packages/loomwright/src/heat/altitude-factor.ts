import { needInput, needOneOf } from '../error/guard.js';
import { M_PER_FOOT } from '../unit/index.js';
import { ampacity, type AmpacityInput } from './ampacity.js';
import { needWire, range, type RuleFactor } from './rule-factor.js';
import { needAltitudeM } from './standard-pressure.js';

/** Rules for the current of a wire at altitude. */
export type AltitudeRule = 'ac-43-13-1b' | 'heat';

/** A wire with its limit, at whatever altitude. */
export type WireAtAltitude = Omit<AmpacityInput, 'altitudeM'>;

export interface AltitudeFactorInput {
  /** Altitude in m, −500 to 20 000. */
  readonly altitudeM: number;
  /** The rule that `factor` is to follow. All are shown. */
  readonly rule: AltitudeRule;
  /** The wire, for the rule `heat`: required there, and shown beside the other rule when given. */
  readonly wire?: WireAtAltitude;
}

export interface AltitudeFactorResult extends RuleFactor<AltitudeRule> {
  /** Every rule's answer. */
  readonly rules: readonly RuleFactor<AltitudeRule>[];
  /** The least and the most of them. */
  readonly minFactor: number | null;
  readonly maxFactor: number | null;
}

/** Points of figure 11-5 in feet; the second was read in an example, the third is from memory. */
const POINTS: readonly (readonly [altitudeFt: number, factor: number])[] = [
  [0, 1],
  [20000, 0.91],
  [60000, 0.79],
];

/**
 * Factor on the current of a wire at altitude, where thin air carries less heat away.
 *
 * `ac-43-13-1b` has three points of an aviation curve; between two it gives the least that a falling, hollow curve
 * through them can have (0.955 at 5000 ft), so it never grants more than the curve. `heat` is the ampacity of your
 * wire at the altitude over that at sea level, by its heat balance: the hotter the limit, the more is radiated and the
 * less the altitude matters.
 *
 * $$F = I(h)/I(0)$$
 *
 * @param input altitude, rule, and for `heat` the wire
 * @returns the rule's factor, and every rule's with the least and the most
 * @throws InputError when a field is missing, out of range or not a known word
 * @source ac-43-13-1b, figure 11-5 (0.91 at 20 000 ft read in an example, 0.79 at 60 000 ft from memory); heat-balance
 * @example altitudeFactor({ altitudeM: 6096, rule: 'ac-43-13-1b' }).factor //=> 0.91
 */
export function altitudeFactor(input: AltitudeFactorInput): AltitudeFactorResult {
  needInput('altitudeFactor', input);
  const { altitudeM, rule, wire } = input;
  needAltitudeM('altitudeFactor', altitudeM);
  needOneOf('altitudeFactor', 'rule', rule, ['ac-43-13-1b', 'heat']);
  if (rule === 'heat' || wire !== undefined) {
    needWire('altitudeFactor', typeof wire === 'object' && wire !== null ? { ...wire, altitudeM } : wire);
  }
  const rules = [aviation(altitudeM), balance(altitudeM, wire)];
  const chosen = rules.find((each) => each.rule === rule) as RuleFactor<AltitudeRule>;
  return { ...chosen, rules, ...range(rules) };
}

/** The aviation curve between its points: the higher of the lines through the neighbouring pairs, and the next point. */
function aviation(altitudeM: number): RuleFactor<AltitudeRule> {
  const ft = altitudeM / M_PER_FOOT;
  // Between points the bound leans on the last one, which is from memory.
  const read = ft <= 0 || Math.abs(ft - 20000) < 1e-6;
  const head = { rule: 'ac-43-13-1b', source: 'ac-43-13-1b', sourceStatus: read ? 'published' : 'memory' } as const;
  if (ft <= 0) return { ...head, factor: 1, reason: null };
  const next = POINTS.findIndex(([at]) => ft <= at * (1 + 1e-12));
  if (next < 0) return { ...head, factor: null, reason: 'beyond-table' };
  const [at, factor] = POINTS[next] as (typeof POINTS)[number];
  let least = factor;
  for (const [i, j] of [
    [next - 2, next - 1],
    [next, next + 1],
  ] as const) {
    const a = POINTS[i];
    const b = POINTS[j];
    if (a !== undefined && b !== undefined) {
      least = Math.max(least, a[1] + ((b[1] - a[1]) * (ft - a[0])) / (b[0] - a[0]));
    }
  }
  return { ...head, factor: Math.abs(ft - at) <= at * 1e-12 ? factor : least, reason: null };
}

/** Our own: the wire's ampacity there over that at sea level. */
function balance(altitudeM: number, wire: WireAtAltitude | undefined): RuleFactor<AltitudeRule> {
  const head = { rule: 'heat', source: 'heat-balance', sourceStatus: 'derived' } as const;
  if (wire === undefined) return { ...head, factor: null, reason: 'no-wire-given' };
  const low = ampacity({ ...wire, altitudeM: 0 }).currentA;
  if (low === 0) return { ...head, factor: null, reason: 'air-at-limit' };
  return { ...head, factor: ampacity({ ...wire, altitudeM }).currentA / low, reason: null };
}
