import { type Check, makeCheck, tightestCheck } from '../check/index.js';
import { InputError } from '../error/index.js';
import { needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needInput } from '../error/guard.js';

export interface TwoWireSensorInput {
  /** Lowest supply of the loop in V, above 0. */
  readonly lowestSupplyV: number;
  /** Resistor that turns the current into volts, in Ω, above 0, and its tolerance as a fraction, 0 to below 1. */
  readonly loadOhm: number;
  readonly loadToleranceFraction: number;
  /** Least and most of the low current, and of the high one, in A, rising, the least above 0. */
  readonly lowLeastA: number;
  readonly lowMostA: number;
  readonly highLeastA: number;
  readonly highMostA: number;
  /** Volts that the sensor itself needs, above 0. */
  readonly sensorLeastV: number;
  /** Resistance of the wires out and back in Ω, at least 0. */
  readonly wireOhm: number;
  /** Least volts between the worst cases of low and high, at least 0. */
  readonly guardV: number;
}

export interface TwoWireSensorResult {
  /** Worst cases of the volts across the resistor. */
  readonly lowLeastV: number;
  readonly lowMostV: number;
  readonly highLeastV: number;
  readonly highMostV: number;
  /** Room between low and high, and its middle, where the input should decide. */
  readonly gapV: number;
  readonly thresholdV: number;
  /** Below this the wire is broken, above that it is shorted: half-way from the worst cases to 0 and to the supply. */
  readonly openBelowV: number;
  readonly shortAboveV: number;
  /** Volts left for the sensor at the lowest supply and the highest current. */
  readonly sensorV: number;
  readonly checks: readonly Check[];
  readonly decidedBy: string;
}

/**
 * A two-wire sensor that talks by drawing a low or a high current, such as an active wheel sensor with 7 and 14 mA.
 *
 * @param input supply, resistor, currents, what the sensor needs
 * @returns volts across the resistor at their worst, threshold, fault limits, volts left for the sensor, checks
 * @throws InputError when a field is missing or out of range, or the currents do not rise
 * @source speed-sensor-notes (5.9 to 8.4 mA, 11.8 to 16.8 mA, 100 Ω); circuit-theory
 * @example twoWireSensor({ lowestSupplyV: 9, loadOhm: 100, loadToleranceFraction: 0.01, lowLeastA: 0.0059, lowMostA: 0.0084, highLeastA: 0.0118, highMostA: 0.0168, sensorLeastV: 4.5, wireOhm: 1, guardV: 0.1 }).thresholdV //=> 1.0083
 */
export function twoWireSensor(input: TwoWireSensorInput): TwoWireSensorResult {
  const fn = 'twoWireSensor';
  needInput(fn, input);
  const { lowestSupplyV, loadOhm, loadToleranceFraction, sensorLeastV, wireOhm, guardV } = input;
  needMoreThan(fn, 'lowestSupplyV', lowestSupplyV);
  needMoreThan(fn, 'loadOhm', loadOhm);
  needNoLessThan(fn, 'loadToleranceFraction', loadToleranceFraction);
  if (loadToleranceFraction >= 1) {
    throw new InputError(fn, 'loadToleranceFraction', 'below', loadToleranceFraction, 'must be below 1', '5 % is 0.05');
  }
  needMoreThan(fn, 'lowLeastA', input.lowLeastA, 0, 'amperes are wanted: 7 mA is 0.007');
  needNoLessThan(fn, 'lowMostA', input.lowMostA, input.lowLeastA);
  needMoreThan(fn, 'highLeastA', input.highLeastA, input.lowMostA);
  needNoLessThan(fn, 'highMostA', input.highMostA, input.highLeastA);
  needMoreThan(fn, 'sensorLeastV', sensorLeastV);
  needNoLessThan(fn, 'wireOhm', wireOhm);
  needNoLessThan(fn, 'guardV', guardV);
  const least = loadOhm * (1 - loadToleranceFraction);
  const most = loadOhm * (1 + loadToleranceFraction);
  const lowLeastV = input.lowLeastA * least;
  const lowMostV = input.lowMostA * most;
  const highLeastV = input.highLeastA * least;
  const highMostV = input.highMostA * most;
  const gapV = highLeastV - lowMostV;
  const sensorV = lowestSupplyV - input.highMostA * (most + wireOhm);
  const given = { unit: 'V', sense: 'atLeast', source: 'given-by-caller', sourceStatus: 'derived' } as const;
  const checks: readonly Check[] = [
    makeCheck({ ...given, name: 'room between low and high', value: gapV, limit: guardV }),
    makeCheck({ ...given, name: 'volts left for the sensor', value: sensorV, limit: sensorLeastV }),
  ];
  return {
    lowLeastV,
    lowMostV,
    highLeastV,
    highMostV,
    gapV,
    thresholdV: lowMostV + gapV / 2,
    openBelowV: lowLeastV / 2,
    shortAboveV: (highMostV + lowestSupplyV) / 2,
    sensorV,
    checks,
    decidedBy: tightestCheck(checks)?.name ?? '',
  };
}
