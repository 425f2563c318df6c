// The error of an ordinary hand-held meter, as its data sheets give it (common practice): a share of the reading and
// some digits of the range.

/** What its error rests on, for people. */
export const METER_BASIS =
  'Meter: volts and millivolts 0.5 % and two digits (0.02 V from 1 V up, 0.2 mV below), ohms 0.5 % and 0.3 Ω for the leads, amperes 2 % and 0.05 A (common practice for a hand-held meter).';

/** Largest error of a reading in volts: below 1 V it stands on its millivolt range. */
export function meterErrorV(voltageV: number): number {
  return 0.005 * Math.abs(voltageV) + (Math.abs(voltageV) < 1 ? 0.0002 : 0.02);
}

/** Largest error of a reading in ohms, its leads counted. */
export function meterErrorOhm(resistanceOhm: number): number {
  return 0.005 * Math.abs(resistanceOhm) + 0.3;
}

/** Largest error of a reading in amperes. */
export function meterErrorA(currentA: number): number {
  return 0.02 * Math.abs(currentA) + 0.05;
}

/** Most current that the 10 A socket of a meter is used for here. */
export const MOST_IN_METER_A = 8;
