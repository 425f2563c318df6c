import { needInput, needTempC } from '../error/guard.js';
import type { SourceKey, SourceStatus } from '../source/index.js';
import type { ThermistorCurve } from '../table/index.js';
import { atTemp, lawOf, needWithin } from './law.js';
import { provenance, slopes } from './thermistor-temperature.js';

export interface ThermistorResistanceInput {
  /** The sensor's curve. */
  readonly curve: ThermistorCurve;
  /** Temperature of the sensor in °C. */
  readonly tempC: number;
  /** Go on beyond the range that the curve is meant for; false unless given. */
  readonly extrapolate?: boolean;
}

export interface ThermistorResistanceResult {
  /** Resistance in Ω. */
  readonly resistanceOhm: number;
  /** How fast it falls there, in Ω/K: below 0. */
  readonly slopeOhmPerK: number;
  /** Beta of the curve at that place, in K. */
  readonly localBetaK: number;
  /** Whether the answer lies beyond the range that the curve is meant for. */
  readonly extrapolated: boolean;
  readonly source: SourceKey;
  readonly sourceStatus: SourceStatus;
}

/**
 * Resistance of a thermistor at a temperature: `thermistorTemperature` turned round exactly.
 *
 * For Steinhart–Hart in closed form, with $x = (1/T - a)/c$ and $y = \sqrt{(b/3c)^3 + x^2/4}$:
 *
 * $$\ln R = \sqrt[3]{y + x/2} - \sqrt[3]{y - x/2}$$
 *
 * The four-term forms and printed points are turned round by bracketing, to the last digits.
 *
 * @param input curve and temperature
 * @returns Ω, slope in Ω/K, local Beta in K, whether it is extrapolated
 * @throws InputError when a field is missing, the curve is not one or does not fall there, or the temperature
 * lies outside the curve's range and `extrapolate` is not set
 * @source steinhart-hart-1968 (closed inverse); the curve's own for its coefficients
 * @example thermistorResistance({ curve: ntc10k3mcd1, tempC: 25 }).resistanceOhm //=> 9999.99
 */
export function thermistorResistance(input: ThermistorResistanceInput): ThermistorResistanceResult {
  needInput('thermistorResistance', input);
  const { curve, tempC, extrapolate = false } = input;
  const law = lawOf('thermistorResistance', curve);
  needTempC('thermistorResistance', 'tempC', tempC);
  const place = atTemp('thermistorResistance', law, tempC);
  const extrapolated = needWithin('thermistorResistance', curve, place, extrapolate, 'tempC', tempC);
  return { resistanceOhm: place.resistanceOhm, ...slopes(place), extrapolated, ...provenance(curve) };
}
