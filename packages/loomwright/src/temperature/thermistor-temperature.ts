import { needMoreThan } from '../error/bounded.js';
import { needInput } from '../error/guard.js';
import type { SourceKey, SourceStatus } from '../source/index.js';
import type { ThermistorCurve } from '../table/index.js';
import { atResistance, lawOf, needWithin, type Place } from './law.js';

export interface ThermistorTemperatureInput {
  /** The sensor's curve: a published one, a fitted one, or printed points. */
  readonly curve: ThermistorCurve;
  /** Resistance in Ω, above 0. */
  readonly resistanceOhm: number;
  /** Go on beyond the range that the curve is meant for; false unless given. */
  readonly extrapolate?: boolean;
}

export interface ThermistorTemperatureResult {
  /** Temperature in °C. */
  readonly tempC: number;
  /** How fast the resistance falls there, in Ω/K: below 0. */
  readonly slopeOhmPerK: number;
  /** Beta of the curve at that place, in K: R falls by β/T² of itself a kelvin. */
  readonly localBetaK: number;
  /** Whether the answer lies beyond the range that the curve is meant for. */
  readonly extrapolated: boolean;
  readonly source: SourceKey;
  readonly sourceStatus: SourceStatus;
}

/**
 * Temperature of a thermistor from its resistance.
 *
 * For a sensor in a divider take `thermistorInput`, which starts from volts.
 *
 * $$\frac{1}{T} = a + b \ln R + c\,(\ln R)^3$$
 *
 * and likewise for Beta and the four-term forms; printed points are joined by a monotone cubic of 1/T over ln R.
 *
 * @param input curve and resistance
 * @returns °C, slope in Ω/K, local Beta in K, whether it is extrapolated
 * @throws InputError when a field is missing, the curve is not one, the resistance is not above 0, or the
 * temperature lies outside the curve's range and `extrapolate` is not set
 * @source steinhart-hart-1968; the curve's own for its coefficients
 * @example thermistorTemperature({ curve: ntc2252, resistanceOhm: 2252 }).tempC //=> 25
 */
export function thermistorTemperature(input: ThermistorTemperatureInput): ThermistorTemperatureResult {
  needInput('thermistorTemperature', input);
  const { curve, resistanceOhm, extrapolate = false } = input;
  const law = lawOf('thermistorTemperature', curve);
  needMoreThan('thermistorTemperature', 'resistanceOhm', resistanceOhm);
  const place = atResistance('thermistorTemperature', law, resistanceOhm);
  const extrapolated = needWithin('thermistorTemperature', curve, place, extrapolate, 'resistanceOhm', resistanceOhm);
  return { tempC: place.tempC, ...slopes(place), extrapolated, ...provenance(curve) };
}

/** What a place on a curve says of its steepness. */
export function slopes({ tempC, resistanceOhm, slope }: Place): { slopeOhmPerK: number; localBetaK: number } {
  const localBetaK = 1 / slope;
  return { slopeOhmPerK: (-resistanceOhm * localBetaK) / (tempC + 273.15) ** 2, localBetaK };
}

/** Where a curve is from: the caller, unless it says so itself. */
export function provenance(curve: ThermistorCurve): { source: SourceKey; sourceStatus: SourceStatus } {
  return { source: curve.source ?? 'given-by-caller', sourceStatus: curve.status ?? 'derived' };
}
