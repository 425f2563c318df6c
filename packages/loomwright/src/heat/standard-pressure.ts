import { needBetween, needInput } from '../error/guard.js';

export interface StandardPressureInput {
  /** Pressure altitude in m, −500 to 20 000; 0 is sea level. */
  readonly altitudeM: number;
}

export interface StandardPressureResult {
  /** Pressure of the air in kPa. */
  readonly pressureKpa: number;
  /** Pressure over that at sea level. */
  readonly pressureRatio: number;
}

/**
 * Pressure of the standard atmosphere at an altitude. Thin air carries less heat from a wire.
 *
 * $$p = p_0\left(1 - \frac{0.0065\,h}{288.15}\right)^{5.25588}\ (h \le 11\,000\,\mathrm{m}),\qquad
 * p = p_{11}\,e^{-(h - 11\,000)/6341.62}\ \text{above}$$
 *
 * @param input altitude
 * @returns pressure in kPa and as a share of 101.325 kPa
 * @throws InputError when the altitude is missing or outside −500 to 20 000 m
 * @source us-standard-atmosphere (geopotential altitude, which aviation calls pressure altitude)
 * @example standardPressure({ altitudeM: 3000 }).pressureKpa //=> 70.1085
 */
export function standardPressure(input: StandardPressureInput): StandardPressureResult {
  needInput('standardPressure', input);
  const { altitudeM } = input;
  needAltitudeM('standardPressure', altitudeM);
  const pressureRatio = pressureRatioAt(altitudeM);
  return { pressureKpa: 101.325 * pressureRatio, pressureRatio };
}

/** Pressure over that at sea level, unguarded. */
export function pressureRatioAt(altitudeM: number): number {
  if (altitudeM === 0) return 1;
  return altitudeM <= 11000
    ? (1 - (0.0065 * altitudeM) / 288.15) ** 5.255876
    : 0.2233611 * Math.exp((11000 - altitudeM) / 6341.62);
}

/** The altitude of a guard. */
export function needAltitudeM(fn: string, altitudeM: number, field = 'altitudeM'): void {
  needBetween(fn, field, altitudeM, -500, 20000, altitudeM > 20000 ? 'is this in ft?' : '');
}
