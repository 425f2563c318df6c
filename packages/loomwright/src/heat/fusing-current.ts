import { needAbove, needBetween, needInput, needOneOf } from '../error/guard.js';
import type { SourceKey, SourceStatus } from '../source/index.js';
import { MM_PER_INCH, mm2ToCircularMils } from '../unit/index.js';

/** Rules for the current that melts a wire. */
export type FusingRule = 'onderdonk' | 'icea-p-32-382' | 'preece';

/** Metals with a coefficient after Preece, in A/in^1.5. */
const PREECE = {
  copper: 10244,
  aluminium: 7585,
  'german-silver': 5230,
  iron: 3148,
  tin: 1642,
  lead: 1379,
} as const;

export interface FusingCurrentInput {
  /** Which rule. */
  readonly rule: FusingRule;
  /** Copper area in mm², above 0: for Onderdonk and ICEA. */
  readonly areaMm2?: number;
  /** Time to melt in s, above 0 to 10: for Onderdonk and ICEA. */
  readonly durationS?: number;
  /** Temperature of the wire before, in °C, −60 to 400: for Onderdonk and ICEA. */
  readonly startTempC?: number;
  /** Diameter of the bare wire in mm, above 0: for Preece. */
  readonly diameterMm?: number;
  /** Metal, for Preece; copper unless given. */
  readonly metal?: keyof typeof PREECE;
}

export interface FusingCurrentResult {
  /** Current that melts the wire, in A. */
  readonly currentA: number;
  readonly rule: FusingRule;
  readonly source: SourceKey;
  readonly sourceStatus: SourceStatus;
}

/**
 * Current that melts a bare wire: in a given time (Onderdonk, ICEA) or at last, in free air (Preece).
 *
 * It tells what destroys a wire, not what one may carry; insulation burns long before. For short times no heat leaves
 * the copper, so that Onderdonk's current is a little low and above 10 s means nothing. Preece's coefficients are for
 * long bare wires and are off by a tenth either way on thin ones.
 *
 * $$I = A\sqrt{\frac{\log_{10}\!\left(\frac{1083 - T_a}{234 + T_a} + 1\right)}{33\,t}}\ (\text{Onderdonk}),\qquad
 * I = A\sqrt{\frac{0.0297}{t}\log_{10}\frac{1083 + 234}{T_a + 234}}\ (\text{ICEA}),\qquad I = a\,d^{3/2}\ (\text{Preece})$$
 *
 * with $A$ in circular mils and $d$ in inches.
 *
 * @param input rule, and what it needs
 * @returns current in A, with rule, source and status
 * @throws InputError when a field that the rule needs is missing or out of range
 * @source onderdonk-1928; icea-p-32-382; preece-1888 (copper 10 244; other metals from memory)
 * @example fusingCurrent({ rule: 'onderdonk', areaMm2: 1.3087, durationS: 1, startTempC: 25 }).currentA //=> 377.847
 */
export function fusingCurrent(input: FusingCurrentInput): FusingCurrentResult {
  const fn = 'fusingCurrent';
  needInput(fn, input);
  const { rule, areaMm2, durationS, startTempC, diameterMm, metal = 'copper' } = input;
  needOneOf(fn, 'rule', rule, ['onderdonk', 'icea-p-32-382', 'preece']);
  needOneOf(fn, 'metal', metal, Object.keys(PREECE));
  const preece = rule === 'preece';
  if (preece || diameterMm !== undefined) needAbove(fn, 'diameterMm', diameterMm as number);
  if (!preece || areaMm2 !== undefined) needAbove(fn, 'areaMm2', areaMm2 as number);
  if (!preece || durationS !== undefined) {
    needBetween(fn, 'durationS', durationS as number, 0, 10, 'a wire gives heat away in longer times');
    needAbove(fn, 'durationS', durationS as number);
  }
  if (!preece || startTempC !== undefined) needBetween(fn, 'startTempC', startTempC as number, -60, 400);
  if (preece) {
    const currentA = PREECE[metal] * ((diameterMm as number) / MM_PER_INCH) ** 1.5;
    return { currentA, rule, source: 'preece-1888', sourceStatus: metal === 'copper' ? 'published' : 'memory' };
  }
  const circularMils = mm2ToCircularMils(areaMm2 as number);
  const log = Math.log10((1083 - (startTempC as number)) / (234 + (startTempC as number)) + 1);
  const factor = rule === 'onderdonk' ? 1 / 33 : 0.0297;
  const currentA = circularMils * Math.sqrt((factor * log) / (durationS as number));
  return {
    currentA,
    rule,
    source: rule === 'onderdonk' ? 'onderdonk-1928' : 'icea-p-32-382',
    sourceStatus: 'published',
  };
}
