import { InputError } from '../error/index.js';
import { needMoreThan } from '../error/bounded.js';
import { needInput, needTempC } from '../error/guard.js';
import type { BetaCurve } from '../table/index.js';
import { ZERO_C_IN_K } from '../unit/index.js';

export interface BetaFromPointsInput {
  /** The cooler temperature in °C. */
  readonly coldTempC: number;
  /** Resistance there, in Ω. */
  readonly coldOhm: number;
  /** The warmer temperature in °C. */
  readonly hotTempC: number;
  /** Resistance there, in Ω: less than the cold one. */
  readonly hotOhm: number;
}

export interface BetaFromPointsResult {
  /** Beta between the two temperatures, in K. */
  readonly betaK: number;
  /** The curve through both points, with the cold one as its reference; range from one to the other. */
  readonly curve: BetaCurve;
}

/**
 * Beta of a thermistor from two points.
 *
 * A Beta is true at its two temperatures only: between 0 and 100 °C it is a kelvin or more off in the middle. It
 * serves to name a part, or over a span of 25 K. For a sensor that is to be read, take three points and
 * `fitSteinhartHart`.
 *
 * $$\beta = \frac{\ln(R_1/R_2)}{1/T_1 - 1/T_2}$$
 *
 * @param input two temperatures with their resistances
 * @returns Beta in K and the curve through both points
 * @throws InputError when a field is missing, the temperatures are not in order or the resistance does not fall
 * @source ntc-beta-equation
 * @example betaFromPoints({ coldTempC: 0, coldOhm: 5900, hotTempC: 100, hotOhm: 186 }).betaK //=> 3523.5
 */
export function betaFromPoints(input: BetaFromPointsInput): BetaFromPointsResult {
  needInput('betaFromPoints', input);
  const { coldTempC, coldOhm, hotTempC, hotOhm } = input;
  needTempC('betaFromPoints', 'coldTempC', coldTempC);
  needMoreThan('betaFromPoints', 'coldOhm', coldOhm);
  needTempC('betaFromPoints', 'hotTempC', hotTempC);
  needMoreThan('betaFromPoints', 'hotOhm', hotOhm);
  // Below a thousandth of a kelvin the difference of 1/T has no digits left.
  if (!(hotTempC - coldTempC >= 1e-3)) {
    throw new InputError(
      'betaFromPoints',
      'hotTempC',
      'order',
      hotTempC,
      `must be at least 0.001 above coldTempC, ${coldTempC}`,
    );
  }
  if (!(hotOhm < coldOhm)) {
    const hint = 'the resistance of an NTC thermistor falls when it warms';
    throw new InputError('betaFromPoints', 'hotOhm', 'order', hotOhm, `must be below coldOhm, ${coldOhm}`, hint);
  }
  const betaK = Math.log(coldOhm / hotOhm) / (1 / (coldTempC + ZERO_C_IN_K) - 1 / (hotTempC + ZERO_C_IN_K));
  return {
    betaK,
    curve: { kind: 'beta', refOhm: coldOhm, refTempC: coldTempC, betaK, lowTempC: coldTempC, highTempC: hotTempC },
  };
}
