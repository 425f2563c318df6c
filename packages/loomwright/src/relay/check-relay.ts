import { type Check, makeCheck, tightestCheck } from '../check/index.js';
import { needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needBetween, needInput, needTempC } from '../error/guard.js';
import { InputError } from '../error/index.js';
import type { ContactLoad, ContactRatioTable } from '../table/index.js';

export interface CheckRelayInput {
  /** What hangs on the contact. */
  readonly load: ContactLoad;
  /** Running current in A, above 0. */
  readonly currentA: number;
  /** Voltage of the circuit in V, above 0. */
  readonly supplyV: number;
  /** By which rule the resistive rating must exceed the running current: `ac4313Switch12V`, `switchMakerRating` … */
  readonly ratingRule: ContactRatioTable;
  /** What the contact is rated to carry and switch, resistive, in A, above 0, at `ratedV` (d.c.). */
  readonly ratedA: number;
  readonly ratedV: number;
  /** Air around the relay in °C. */
  readonly ambientTempC: number;
  /** Air in °C up to which the rating holds in full, and at which nothing of it is left; straight between. */
  readonly fullToTempC: number;
  readonly noneAtTempC: number;
  /** By which rule the first current exceeds the running one: `relayModuleInrush` …; or `inrushA`, measured. */
  readonly inrushRule?: ContactRatioTable;
  /** First current in A, above 0. */
  readonly inrushA?: number;
  /** Current that the contact may close on, in A, above 0: its make rating. */
  readonly makeA?: number;
  /** Current to be broken in A, above 0 (a motor that has stalled, say); the running current where left out. */
  readonly brokenA?: number;
  /** Current that the contact may break, in A, above 0; judged where given. */
  readonly breakA?: number;
  /** Least current in A that keeps the contact clean, at least 0; judged where given. About 0.02 A for silver. */
  readonly leastA?: number;
}

export interface CheckRelayResult {
  /** Ratio of the rating rule, and the resistive rating that it asks for, in A. */
  readonly ratio: number;
  readonly neededRatingA: number;
  /** What is left of the contact's rating in this heat and at this voltage, in A. */
  readonly ratingA: number;
  /** Share left by the heat, and by a voltage above the rated one. */
  readonly ambientFactor: number;
  readonly voltageFactor: number;
  /** First current in A: least and largest; null where neither a rule nor a value is given. */
  readonly inrushLowA: number | null;
  readonly inrushHighA: number | null;
  readonly checks: readonly Check[];
  readonly decidedBy: string;
}

/**
 * Whether a relay's or switch's contact stands its load: by the kind of load, by the heat, closing and opening.
 *
 * Use it because the number on the case is for resistors. Sources differ by a factor of two for lamps and of three
 * for motors, so the rule is named and is never a default.
 *
 * $$I_{\mathrm{needed}} = k\,I \qquad
 * I_{\mathrm{left}} = I_r\,\frac{T_0 - T}{T_0 - T_1}\cdot\tfrac23\,\frac{V_r}{V} \quad (V > V_r)$$
 *
 * The two thirds over the ratio of volts hold for resistive loads above the rated d.c. voltage; at or below it the
 * rating stands.
 *
 * @param input load, current, voltage, rule, the contact's ratings, the air
 * @returns rating needed and left, first current, checks with their margins
 * @throws InputError when a field is missing or out of range, or a rule does not name this kind of load
 * @source automotive-relay-notes (voltage above the rated one, note 101); the rules' own
 * @example checkRelay({ load: 'lamp', currentA: 5, supplyV: 12, ratingRule: ac4313Switch12V, ratedA: 30, ratedV: 14, ambientTempC: 40, fullToTempC: 85, noneAtTempC: 125 }).neededRatingA //=> 25
 */
export function checkRelay(input: CheckRelayInput): CheckRelayResult {
  const fn = 'checkRelay';
  needInput(fn, input);
  const { load, currentA, supplyV, ratingRule, ratedA, ratedV, ambientTempC, fullToTempC, noneAtTempC } = input;
  const { inrushRule, inrushA, makeA, brokenA, breakA, leastA } = input;
  needMoreThan(fn, 'currentA', currentA);
  needMoreThan(fn, 'supplyV', supplyV);
  needMoreThan(fn, 'ratedA', ratedA);
  needMoreThan(fn, 'ratedV', ratedV);
  needTempC(fn, 'ambientTempC', ambientTempC);
  needTempC(fn, 'fullToTempC', fullToTempC);
  needBetween(fn, 'noneAtTempC', noneAtTempC, fullToTempC + 1, 2000);
  if (inrushA !== undefined) needMoreThan(fn, 'inrushA', inrushA);
  if (makeA !== undefined) needMoreThan(fn, 'makeA', makeA);
  if (brokenA !== undefined) needMoreThan(fn, 'brokenA', brokenA);
  if (breakA !== undefined) needMoreThan(fn, 'breakA', breakA);
  if (leastA !== undefined) needNoLessThan(fn, 'leastA', leastA);
  if (inrushRule !== undefined && inrushA !== undefined) {
    throw new InputError(fn, 'inrushA', 'oneOfFields', inrushA, 'and inrushRule must not both be given');
  }
  const ratio = ratioOf(fn, 'ratingRule', ratingRule, 'rating', load)[1];
  const neededRatingA = ratio * currentA;
  const left = (noneAtTempC - ambientTempC) / (noneAtTempC - fullToTempC);
  const ambientFactor = Math.min(1, Math.max(0, left));
  const voltageFactor = supplyV > ratedV ? (2 / 3) * (ratedV / supplyV) : 1;
  const ratingA = ratedA * ambientFactor * voltageFactor;
  const range = inrushRule === undefined ? null : ratioOf(fn, 'inrushRule', inrushRule, 'inrush', load);
  const inrushLowA = inrushA ?? (range === null ? null : range[0] * currentA);
  const inrushHighA = inrushA ?? (range === null ? null : range[1] * currentA);
  const given = { source: 'given-by-caller', sourceStatus: 'derived' } as const;
  const checks: Check[] = [
    makeCheck({
      name: 'rating for this kind of load',
      value: neededRatingA,
      limit: ratingA,
      unit: 'A',
      sense: 'atMost',
      source: ratingRule.source,
      sourceStatus: ratingRule.status,
    }),
  ];
  if (makeA !== undefined) {
    checks.push(
      makeCheck({
        name: 'current as it closes',
        value: inrushHighA ?? currentA,
        limit: makeA,
        unit: 'A',
        sense: 'atMost',
        ...(inrushRule === undefined ? given : { source: inrushRule.source, sourceStatus: inrushRule.status }),
      }),
    );
  }
  if (breakA !== undefined) {
    const value = brokenA ?? currentA;
    checks.push(makeCheck({ ...given, name: 'current as it opens', value, limit: breakA, unit: 'A', sense: 'atMost' }));
  }
  if (leastA !== undefined) {
    checks.push(
      makeCheck({
        ...given,
        name: 'current that keeps it clean',
        value: currentA,
        limit: leastA,
        unit: 'A',
        sense: 'atLeast',
      }),
    );
  }
  return {
    ratio,
    neededRatingA,
    ratingA,
    ambientFactor,
    voltageFactor,
    inrushLowA,
    inrushHighA,
    checks,
    decidedBy: tightestCheck(checks)?.name ?? '',
  };
}

/** The ratios of a rule for a kind of load. */
function ratioOf(
  fn: string,
  field: string,
  rule: ContactRatioTable,
  use: ContactRatioTable['use'],
  load: ContactLoad,
): readonly [low: number, high: number] {
  if (typeof rule !== 'object' || rule === null) {
    throw new InputError(fn, field, rule === undefined ? 'missing' : 'object', rule, 'must be a table of ratios');
  }
  if (rule.use !== use) throw new InputError(fn, field, 'oneOf', rule.key, `must be a table of ${use} ratios`);
  const row = rule.rows.find(([kind]) => kind === load);
  if (row === undefined) {
    const kinds = rule.rows.map(([kind]) => kind).join(', ');
    throw new InputError(fn, 'load', 'inTable', load, `must be in ${rule.key}: ${kinds}`);
  }
  return [row[1], row[2]];
}
