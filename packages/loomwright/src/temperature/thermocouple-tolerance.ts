import { type Check, makeCheck } from '../check/index.js';
import { needInput, needOneOf } from '../error/guard.js';
import type { SourceKey, SourceStatus } from '../source/index.js';
import type { ThermocoupleClass, ThermocoupleType } from '../table/index.js';
import { emfAt, needThermocouple } from './thermocouple-voltage.js';

export interface ThermocoupleToleranceInput {
  /** The type: `thermocoupleK`, `thermocoupleJ`, `thermocoupleT` or `thermocoupleN`. */
  readonly thermocouple: ThermocoupleType;
  /** Temperature of the measuring junction in °C. */
  readonly hotTempC: number;
  /** Tolerance class of the wire. */
  readonly toleranceClass: '1' | '2';
}

export interface ThermocoupleToleranceResult {
  /** Tolerance in K, to either side, of new wire. */
  readonly toleranceK: number;
  /** The same in mV at that temperature. */
  readonly toleranceMv: number;
  /** Whether the temperature lies in the range of the class. */
  readonly checks: readonly Check[];
  readonly source: SourceKey;
  readonly sourceStatus: SourceStatus;
}

/**
 * How far a new thermocouple of a class may be off at a temperature. Used wire drifts, and may be further off.
 *
 * $$\Delta t = \pm\max(\Delta_0,\; k\,|t|)$$
 *
 * @param input type, temperature, class
 * @returns tolerance in K and in mV, and whether the class holds there
 * @throws InputError when a field is missing or the temperature lies outside the type's range
 * @source iec-60584-1 (type K as printed in component data; J, T and N from memory)
 * @example thermocoupleTolerance({ thermocouple: thermocoupleK, hotTempC: 700, toleranceClass: '2' }).toleranceK //=> 5.25
 */
export function thermocoupleTolerance(input: ThermocoupleToleranceInput): ThermocoupleToleranceResult {
  const fn = 'thermocoupleTolerance';
  needInput(fn, input);
  const { thermocouple, hotTempC, toleranceClass } = input;
  needThermocouple(fn, thermocouple);
  needOneOf(fn, 'toleranceClass', toleranceClass, ['1', '2']);
  const { mvPerK } = emfAt(fn, 'hotTempC', thermocouple, hotTempC);
  const found = thermocouple.classes.find(({ key }) => key === toleranceClass) as ThermocoupleClass;
  const { fixedK, shareFraction, rangeC, source, status } = found;
  const toleranceK = Math.max(fixedK, shareFraction * Math.abs(hotTempC));
  const check = (sense: 'atLeast' | 'atMost', limit: number): Check =>
    makeCheck({
      name: `class ${toleranceClass} ${sense === 'atLeast' ? 'from' : 'to'}`,
      value: hotTempC,
      limit,
      unit: '°C',
      sense,
      source,
      sourceStatus: status,
    });
  return {
    toleranceK,
    toleranceMv: toleranceK * mvPerK,
    checks: [check('atLeast', rangeC[0]), check('atMost', rangeC[1])],
    source,
    sourceStatus: status,
  };
}
