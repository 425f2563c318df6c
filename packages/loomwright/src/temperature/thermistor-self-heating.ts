import { needMoreThan } from '../error/bounded.js';
import { needInput, needTempC } from '../error/guard.js';
import { findRoot } from '../number/index.js';
import type { SourceKey, SourceStatus } from '../source/index.js';
import type { ThermistorCurve } from '../table/index.js';
import { atTemp, lawOf, needWithin } from './law.js';
import { needPull, type PullInput, pullVolts } from './pull.js';
import { provenance } from './thermistor-temperature.js';

export interface ThermistorSelfHeatingInput extends PullInput {
  /** The sensor's curve. */
  readonly curve: ThermistorCurve;
  /** Temperature in °C of what the sensor sits in. */
  readonly ambientTempC: number;
  /** Heat in mW that warms the sensor by 1 K where it sits. Still air: about 1 for a bead. Stirred liquid: 5 to 10. */
  readonly dissipationMwPerK: number;
  /** Go on beyond the range that the curve is meant for; false unless given. */
  readonly extrapolate?: boolean;
}

export interface ThermistorSelfHeatingResult {
  /** Temperature of the sensor itself in °C: what the input reads. */
  readonly sensorTempC: number;
  /** How far it reads too hot, in K. */
  readonly riseK: number;
  /** Heat in the sensor in mW. */
  readonly sensorMw: number;
  /** Resistance of the warmed sensor in Ω. */
  readonly resistanceOhm: number;
  /** Volts at the input. */
  readonly inputV: number;
  readonly source: SourceKey;
  readonly sourceStatus: SourceStatus;
}

/**
 * How far a thermistor warms itself by the current that reads it.
 *
 * The warmer it gets the less it resists, and with a small fixed resistor the more heat it draws: the answer is
 * the first balance that a cold sensor comes to. A pull-up that suits the range keeps the rise below 0.1 K.
 *
 * $$T = T_a + \frac{P(R(T))}{\delta}, \qquad P = \frac{V_\mathrm{sensor}^2}{R}$$
 *
 * @param input divider, curve, ambient temperature, dissipation
 * @returns sensor temperature, rise in K, heat in mW, resistance, volts at the input
 * @throws InputError when a field is missing or out of range, or the balance lies outside the curve's range and
 * `extrapolate` is not set
 * @source circuit-theory (heat balance); the dissipation is the sensor maker's
 * @example thermistorSelfHeating({ curve: ntc2252, side: 'sensor-to-ground', supplyV: 5, pullOhm: 2252, ambientTempC: 25, dissipationMwPerK: 1 }).riseK //=> 2.77
 */
export function thermistorSelfHeating(input: ThermistorSelfHeatingInput): ThermistorSelfHeatingResult {
  const fn = 'thermistorSelfHeating';
  needInput(fn, input);
  const { curve, ambientTempC, dissipationMwPerK, extrapolate = false } = input;
  const law = lawOf(fn, curve);
  needPull(fn, input);
  needTempC(fn, 'ambientTempC', ambientTempC);
  needMoreThan(fn, 'dissipationMwPerK', dissipationMwPerK);
  const riseAt = (tempC: number): number =>
    (pullVolts(input, atTemp(fn, law, tempC).resistanceOhm).sensorW * 1000) / dissipationMwPerK;
  const f = (riseK: number): number => riseK - riseAt(ambientTempC + riseK);
  // The lowest balance is the first change of sign on the way up from a cold start. No more heat can reach the
  // sensor than a quarter of V²/R of the rest.
  const restOhm =
    input.side === 'sensor-to-supply' && input.inputOhm !== undefined
      ? 1 / (1 / input.pullOhm + 1 / input.inputOhm)
      : input.pullOhm;
  const most = ((input.supplyV ** 2 / (4 * restOhm)) * 1000 * (1 + 1e-9)) / dissipationMwPerK;
  const start = riseAt(ambientTempC);
  const step = Math.max(start / 4, most / 400);
  let low = 0;
  let high = Math.min(most, step);
  while (high < most && f(high) < 0) {
    low = high;
    high = Math.min(most, high + step);
  }
  const riseK = findRoot({ fn, f, low, high, tolerance: 1e-9 });
  const place = atTemp(fn, law, ambientTempC + riseK);
  needWithin(fn, curve, place, extrapolate, 'ambientTempC', ambientTempC);
  const { inputV, sensorW } = pullVolts(input, place.resistanceOhm);
  return {
    sensorTempC: place.tempC,
    riseK,
    sensorMw: sensorW * 1000,
    resistanceOhm: place.resistanceOhm,
    inputV,
    ...provenance(curve),
  };
}
