import { InputError } from '../error/index.js';
import { needMoreThan } from '../error/bounded.js';
import { needBetween, needInput } from '../error/guard.js';
import { M_PER_MILE } from '../unit/index.js';
import { tyreDiameterMm } from './tyre.js';

export interface PulsesPerDistanceInput {
  /** Rolling circumference in m, above 0: roll the laden car one turn of the wheel and measure. Or `tyreSize`. */
  readonly circumferenceM?: number;
  /** Size on the sidewall, such as '205/55R16' or '31x10.5R15'. */
  readonly tyreSize?: string;
  /**
   * Rolling circumference over that of the free tyre, 0.9 to 1; needed with `tyreSize`. About 0.97 for a radial tyre
   * and 0.95 for a diagonal one.
   */
  readonly rollingFactor?: number;
  /** Pulses in one turn of the part with the teeth, above 0. */
  readonly turnPulses: number;
  /** Turns of that part in one turn of the wheel, above 0: 1 at the hub, the axle ratio on the propeller shaft. */
  readonly turnRatio: number;
  /** Pulses a kilometre that the display is set to, above 0: gives the error that it shows. */
  readonly setPulsesPerKm?: number;
}

export interface PulsesPerDistanceResult {
  readonly circumferenceM: number;
  /** Diameter of the free tyre in mm; null where the circumference was measured. */
  readonly diameterMm: number | null;
  /** Turns of the wheel in a kilometre. */
  readonly wheelTurnsPerKm: number;
  readonly pulsesPerKm: number;
  readonly pulsesPerMile: number;
  readonly pulsesPerM: number;
  /** Frequency at 1 km/h, in Hz: times the speed it is the frequency at that speed. */
  readonly frequencyHzPerKmh: number;
  /** Error of the displayed speed and distance as a fraction, above 0 where it shows too much; null without a setting. */
  readonly displayErrorFraction: number | null;
}

/**
 * Pulses of a speed sensor in a kilometre, from the tyre or a measured circumference.
 *
 * A tyre rolls on a circumference some 3 % shorter than its free one, and worn it loses 1 to 2 % more: for a speed
 * that matters measure.
 *
 * $$U = \pi d\,k_r \qquad d = d_\mathrm{rim} + 2\,b\,q$$
 *
 * @param input tyre or circumference, pulses a turn, ratio, setting
 * @returns circumference in m, pulses a km, mile and m, Hz a km/h, error of a setting
 * @throws InputError when a field is missing or out of range, or not exactly one of tyre and circumference is given
 * @source tyre-standards (marking; 3.05 d ÷ π d = 0.971 for radial tyres, from memory); common-practice (0.95 for
 * diagonal ones)
 * @example pulsesPerDistance({ circumferenceM: 1.95, turnPulses: 44, turnRatio: 1 }).pulsesPerKm //=> 22564.1
 */
export function pulsesPerDistance(input: PulsesPerDistanceInput): PulsesPerDistanceResult {
  const fn = 'pulsesPerDistance';
  needInput(fn, input);
  const { circumferenceM: measured, tyreSize, rollingFactor, turnPulses, turnRatio, setPulsesPerKm } = input;
  if ((measured === undefined) === (tyreSize === undefined)) {
    throw new InputError(fn, 'circumferenceM', 'oneOfFields', measured, 'or tyreSize must be given, one only');
  }
  if (measured !== undefined) needMoreThan(fn, 'circumferenceM', measured);
  else needBetween(fn, 'rollingFactor', rollingFactor as number, 0.9, 1, 'about 0.97 for a radial tyre');
  needMoreThan(fn, 'turnPulses', turnPulses);
  needMoreThan(fn, 'turnRatio', turnRatio);
  if (setPulsesPerKm !== undefined) needMoreThan(fn, 'setPulsesPerKm', setPulsesPerKm);
  const diameterMm = measured === undefined ? tyreDiameterMm(fn, tyreSize as string) : null;
  const circumferenceM = measured ?? ((Math.PI * (diameterMm as number)) / 1000) * (rollingFactor as number);
  const pulsesPerM = (turnPulses * turnRatio) / circumferenceM;
  return {
    circumferenceM,
    diameterMm,
    wheelTurnsPerKm: 1000 / circumferenceM,
    pulsesPerKm: pulsesPerM * 1000,
    pulsesPerMile: pulsesPerM * M_PER_MILE,
    pulsesPerM,
    frequencyHzPerKmh: pulsesPerM / 3.6,
    displayErrorFraction: setPulsesPerKm === undefined ? null : (pulsesPerM * 1000) / setPulsesPerKm - 1,
  };
}
