import { InputError } from '../error/index.js';
import { needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needBetween, needInput, needInteger, needObject, needOneOf, needText } from '../error/guard.js';
import type { SourceKey, SourceStatus } from '../source/index.js';
import type { CrankingRating } from '../table/index.js';

/** A rating of cranking, at the test point of the rule that it was given by. */
export interface ResistanceFromRating {
  readonly kind: 'cranking-rating';
  /** The rule: `crankingSaeJ537`, `crankingEn50342`, `crankingIec60095`, `crankingDin43539` or `crankingBci`. */
  readonly rule: CrankingRating;
  /** Rating in A by that rule, above 0. */
  readonly ratedA: number;
  /** Volts at rest, full, in V; above the least volts of the test. */
  readonly openV: number;
  /** Cells in series: six in a 12 V battery. The least volts of the test go with them. */
  readonly cellCount: number;
}

/** Volts at two loads, one right after the other. */
export interface ResistanceFromLoads {
  readonly kind: 'two-loads';
  /** The lesser load in A, at least 0, and volts at the posts with it. */
  readonly lowA: number;
  readonly lowV: number;
  /** The greater load in A, and the lower volts with it. */
  readonly highA: number;
  readonly highV: number;
  /** Temperature of the battery in °C, −40 to 80. */
  readonly batteryTempC: number;
}

/** Volts at rest, and at the end of a load test. */
export interface ResistanceFromLoadTest {
  readonly kind: 'load-test';
  /** Volts at rest in V, above 0. */
  readonly openV: number;
  /** Load in A, above 0, and volts at its end, below those at rest. */
  readonly testA: number;
  readonly testV: number;
  /** Temperature of the battery in °C, −40 to 80. */
  readonly batteryTempC: number;
}

export interface BatteryResistanceInput {
  readonly from: ResistanceFromRating | ResistanceFromLoads | ResistanceFromLoadTest;
  /** Equal batteries side by side, 1 or more; 1 unless given. */
  readonly parallelCount?: number;
  /** Another temperature in °C, and the resistance there over that at the test: both or neither, from measurement. */
  readonly otherTempC?: number;
  readonly otherFactor?: number;
}

export interface BatteryResistanceResult {
  /** Resistance in Ω at the temperature of the test. */
  readonly resistanceOhm: number;
  readonly testTempC: number;
  /** The same at the other temperature; null where no factor was given, since none is published. */
  readonly otherOhm: number | null;
  /** `at-most`: a battery that meets the rating has no more. `measured`: as these readings give it. */
  readonly bound: 'at-most' | 'measured';
  /** Volts at no load that go with it. */
  readonly openV: number;
  /** Volts and amperes of the test point, of one battery. */
  readonly testV: number;
  readonly testA: number;
  /** Current in A into a dead short at the posts. With `at-most` a good battery gives more. */
  readonly shortA: number;
  readonly source: SourceKey;
  readonly sourceStatus: SourceStatus;
}

const FN = 'batteryResistance';

/**
 * Resistance inside a battery: from a cranking rating, from two loads, or from a load test.
 *
 * Use it for volts while cranking, and for the least current of a short (with care: see `shortA`). Each rating is a
 * test point of its own, in volts, seconds and °C; the seconds count, since volts go on sagging. So ratings are not
 * converted into one another: that would need the volts over time of the very battery. How resistance goes with
 * temperature is not published either; give a factor that you measured, or take the test's temperature.
 *
 * $$R = \frac{V_0 - V_\mathrm{test}}{I_\mathrm{rated}} \qquad R = \frac{V_1 - V_2}{I_2 - I_1} \qquad
 * R_n = \frac{R}{n}$$
 *
 * @param input rating with its rule, or readings; batteries side by side; another temperature with its factor
 * @returns resistance in Ω and its temperature, whether it is a bound, volts at no load, current of a short
 * @throws InputError when a field is missing or out of range, or a reading does not fall with the load
 * @source the rule's own (sae-j537, en-50342-1, iec-60095-1, din-43539-2, bci-cranking); circuit-theory
 * @example batteryResistance({ from: { kind: 'cranking-rating', rule: crankingSaeJ537, ratedA: 600, openV: 12.6, cellCount: 6 } }).resistanceOhm //=> 0.009
 */
export function batteryResistance(input: BatteryResistanceInput): BatteryResistanceResult {
  needInput(FN, input);
  const { from, parallelCount = 1, otherTempC, otherFactor } = input;
  if (typeof from !== 'object' || from === null) {
    throw new InputError(FN, 'from', from === undefined ? 'missing' : 'object', from, 'must be an object with a kind');
  }
  needOneOf(FN, 'from.kind', from.kind, ['cranking-rating', 'two-loads', 'load-test']);
  needInteger(FN, 'parallelCount', parallelCount, 1);
  if ((otherTempC === undefined) !== (otherFactor === undefined)) {
    const field = otherTempC === undefined ? 'otherTempC' : 'otherFactor';
    throw new InputError(FN, field, 'missing', undefined, 'is required: both or neither');
  }
  if (otherTempC !== undefined) needBetween(FN, 'otherTempC', otherTempC, -40, 80);
  if (otherFactor !== undefined) needMoreThan(FN, 'otherFactor', otherFactor);
  const one =
    from.kind === 'cranking-rating' ? byRating(from) : from.kind === 'two-loads' ? byLoads(from) : byTest(from);
  const resistanceOhm = one.ohm / parallelCount;
  const rated = from.kind === 'cranking-rating';
  return {
    resistanceOhm,
    testTempC: one.testTempC,
    otherOhm: otherFactor === undefined ? null : resistanceOhm * otherFactor,
    bound: rated ? 'at-most' : 'measured',
    openV: one.openV,
    testV: one.testV,
    testA: one.testA,
    shortA: one.openV / resistanceOhm,
    source: rated ? from.rule.source : 'circuit-theory',
    sourceStatus: 'derived',
  };
}

/** One battery at its test point. */
interface TestPoint {
  readonly ohm: number;
  readonly testTempC: number;
  readonly openV: number;
  readonly testV: number;
  readonly testA: number;
}

function byRating({ rule, ratedA, openV, cellCount }: ResistanceFromRating): TestPoint {
  needObject(FN, 'from.rule', rule, 'must be the rule of a rating', 'import one: crankingSaeJ537');
  needMoreThan(FN, 'from.rule.leastV', rule.leastV);
  needBetween(FN, 'from.rule.testTempC', rule.testTempC, -40, 80);
  needText(FN, 'from.rule.source', rule.source);
  needMoreThan(FN, 'from.ratedA', ratedA);
  needInteger(FN, 'from.cellCount', cellCount, 1);
  const testV = (rule.leastV * cellCount) / 6;
  needMoreThan(FN, 'from.openV', openV, testV);
  return { ohm: (openV - testV) / ratedA, testTempC: rule.testTempC, openV, testV, testA: ratedA };
}

function byLoads({ lowA, lowV, highA, highV, batteryTempC }: ResistanceFromLoads): TestPoint {
  needNoLessThan(FN, 'from.lowA', lowA);
  needMoreThan(FN, 'from.highA', highA, lowA);
  needNoLessThan(FN, 'from.highV', highV);
  needMoreThan(FN, 'from.lowV', lowV, highV, 'volts fall as the load grows');
  needBetween(FN, 'from.batteryTempC', batteryTempC, -40, 80);
  const ohm = (lowV - highV) / (highA - lowA);
  return { ohm, testTempC: batteryTempC, openV: lowV + lowA * ohm, testV: highV, testA: highA };
}

function byTest({ openV, testA, testV, batteryTempC }: ResistanceFromLoadTest): TestPoint {
  needMoreThan(FN, 'from.testA', testA);
  needNoLessThan(FN, 'from.testV', testV);
  needMoreThan(FN, 'from.openV', openV, testV, 'volts fall under load');
  needBetween(FN, 'from.batteryTempC', batteryTempC, -40, 80);
  return { ohm: (openV - testV) / testA, testTempC: batteryTempC, openV, testV, testA };
}
