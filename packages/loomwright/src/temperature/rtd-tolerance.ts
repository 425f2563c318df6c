import { type Check, makeCheck } from '../check/index.js';
import { InputError } from '../error/index.js';
import { needInput, needOneOf } from '../error/guard.js';
import type { PlatinumClass } from '../table/index.js';
import { rtdResistance, type RtdResistanceInput } from './rtd-resistance.js';

export interface RtdToleranceInput extends RtdResistanceInput {
  /** Tolerance class: `platinumClassAA`, `platinumClassA`, `platinumClassB` or `platinumClassC`. */
  readonly toleranceClass: PlatinumClass;
  /** How the resistor is made: the class holds over a narrower range for films. */
  readonly element: 'wire-wound' | 'film';
}

export interface RtdToleranceResult {
  /** Tolerance in K, to either side. */
  readonly toleranceK: number;
  /** The same in Ω at that temperature. */
  readonly toleranceOhm: number;
  /** Least and most resistance of a part in the class, in Ω. */
  readonly lowestOhm: number;
  readonly highestOhm: number;
  /** Whether the temperature lies in the range of the class; its bounds are from memory. */
  readonly checks: readonly Check[];
}

/**
 * How far a platinum resistor of a tolerance class may be off at a temperature.
 *
 * $$\Delta t = \pm(\Delta_0 + k\,|t|)$$
 *
 * @param input curve, resistance at 0 °C, temperature, class, kind of element
 * @returns tolerance in K and in Ω, bounds in Ω, and whether the class holds at that temperature
 * @throws InputError when a field is missing or the temperature lies outside the curve
 * @source iec-60751 (classes AA, A, B, C); their temperature ranges from memory
 * @example rtdTolerance({ curve: iec60751, nominalOhm: 100, tempC: 100, toleranceClass: platinumClassB, element: 'film' }).toleranceK //=> 0.8
 */
export function rtdTolerance(input: RtdToleranceInput): RtdToleranceResult {
  const fn = 'rtdTolerance';
  needInput(fn, input);
  const { tempC, toleranceClass, element } = input;
  if (typeof toleranceClass !== 'object' || toleranceClass === null) {
    const rule = toleranceClass === undefined ? 'missing' : 'object';
    throw new InputError(fn, 'toleranceClass', rule, toleranceClass, 'must be a class, such as platinumClassB');
  }
  needOneOf(fn, 'element', element, ['wire-wound', 'film']);
  const { resistanceOhm, slopeOhmPerK } = rtdResistance(input);
  const { fixedK, shareFraction, key, wireWoundRangeC, filmRangeC } = toleranceClass;
  const toleranceK = fixedK + shareFraction * Math.abs(tempC);
  const toleranceOhm = toleranceK * slopeOhmPerK;
  const [low, high] = element === 'film' ? filmRangeC : wireWoundRangeC;
  const check = (sense: 'atLeast' | 'atMost', limit: number): Check =>
    makeCheck({
      name: `class ${key} ${sense === 'atLeast' ? 'from' : 'to'}`,
      value: tempC,
      limit,
      unit: '°C',
      sense,
      source: 'iec-60751',
      sourceStatus: 'memory',
    });
  return {
    toleranceK,
    toleranceOhm,
    lowestOhm: resistanceOhm - toleranceOhm,
    highestOhm: resistanceOhm + toleranceOhm,
    checks: [check('atLeast', low), check('atMost', high)],
  };
}
