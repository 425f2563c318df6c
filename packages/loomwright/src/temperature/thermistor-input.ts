import { InputError } from '../error/index.js';
import { needMoreThan } from '../error/bounded.js';
import { needFinite, needInput, needTempC } from '../error/guard.js';
import type { SourceKey, SourceStatus } from '../source/index.js';
import type { ThermistorCurve } from '../table/index.js';
import { atResistance, atTemp, lawOf, needWithin, type Place } from './law.js';
import { needPull, type PullInput, pullOhms, pullVolts } from './pull.js';
import { provenance, slopes } from './thermistor-temperature.js';

export interface ThermistorInputInput extends PullInput {
  /** The sensor's curve. */
  readonly curve: ThermistorCurve;
  /** Volts at the input, 0 to the supply. Exactly one of the three. */
  readonly inputV?: number;
  /** Temperature of the sensor in °C. */
  readonly tempC?: number;
  /** Resistance of the sensor in Ω, above 0. */
  readonly resistanceOhm?: number;
  /** Steps of the converter over the supply, such as 1024 or 1023 for 10 bits: the two are both in use. */
  readonly adcSteps?: number;
  /** Heat in mW that warms the sensor by 1 K where it sits; given for still air or stirred liquid by its maker. */
  readonly dissipationMwPerK?: number;
  /** Go on beyond the range that the curve is meant for; false unless given. */
  readonly extrapolate?: boolean;
}

export interface ThermistorInputResult {
  /** Volts at the input. */
  readonly inputV: number;
  /** The same as a fraction of the supply: what a ratiometric converter reads. */
  readonly inputFraction: number;
  /** Resistance of the sensor in Ω, or null where it is open or shorted. */
  readonly resistanceOhm: number | null;
  /** Temperature of the sensor in °C, or null where it is open or shorted. */
  readonly tempC: number | null;
  /** Why there is no temperature: as far as the input can tell the sensor is open, or shorted. */
  readonly fault: 'open' | 'short' | null;
  /** Volts a kelvin at that place; below 0 with the sensor to ground. */
  readonly slopeVPerK: number | null;
  /** Kelvins a count of the converter, or null where no steps were given. */
  readonly countK: number | null;
  /** Heat in the sensor in mW. */
  readonly sensorMw: number | null;
  /** How far that heat lifts the sensor above what it measures, in K, or null where no dissipation was given. */
  readonly selfHeatingRiseK: number | null;
  /** Whether the answer lies beyond the range that the curve is meant for. */
  readonly extrapolated: boolean;
  readonly source: SourceKey;
  readonly sourceStatus: SourceStatus;
}

/**
 * A thermistor in its divider: from volts to °C, or from °C or Ω to volts, with what a count is worth there.
 *
 * A table made for one pull-up is wrong for every other. Give the one that is really there; `findPullUp` finds it.
 *
 * $$V = V_s\,\frac{R}{R + R_\mathrm{pull}} \quad\text{(to ground)} \qquad V = V_s\,\frac{R_\mathrm{pull}}{R + R_\mathrm{pull}} \quad\text{(to supply)}$$
 *
 * @param input divider, curve, and one of volts, temperature, resistance
 * @returns all three, with V/K, K a count, self-heating; null with `fault` for an open or shorted sensor
 * @throws InputError when a field is missing or out of range, not exactly one of the three is given, or the
 * temperature lies outside the curve's range and `extrapolate` is not set
 * @source circuit-theory; the curve's own
 * @example thermistorInput({ curve: ntc2252, side: 'sensor-to-ground', supplyV: 5, pullOhm: 2252, tempC: 25 }).inputV //=> 2.5
 */
export function thermistorInput(input: ThermistorInputInput): ThermistorInputResult {
  const fn = 'thermistorInput';
  needInput(fn, input);
  const { curve, inputV, tempC, resistanceOhm, adcSteps, dissipationMwPerK, extrapolate = false } = input;
  const law = lawOf(fn, curve);
  needPull(fn, input);
  if (adcSteps !== undefined) needMoreThan(fn, 'adcSteps', adcSteps, 1);
  if (dissipationMwPerK !== undefined) needMoreThan(fn, 'dissipationMwPerK', dissipationMwPerK);
  const given = Number(inputV !== undefined) + Number(tempC !== undefined) + Number(resistanceOhm !== undefined);
  if (given !== 1) {
    const must = 'or tempC or resistanceOhm must be given, one only';
    throw new InputError(fn, 'inputV', 'oneOfFields', given === 0 ? undefined : given, must);
  }
  let place: Place;
  let extrapolated: boolean;
  if (tempC !== undefined) {
    needTempC(fn, 'tempC', tempC);
    place = atTemp(fn, law, tempC);
    extrapolated = needWithin(fn, curve, place, extrapolate, 'tempC', tempC);
  } else {
    let ohm: number;
    if (resistanceOhm !== undefined) {
      needMoreThan(fn, 'resistanceOhm', resistanceOhm);
      ohm = resistanceOhm;
    } else {
      needFinite(fn, 'inputV', inputV as number);
      const read = pullOhms(fn, input, inputV as number);
      if ('fault' in read) return noNumber(input, read.fault);
      ohm = read.ohm;
    }
    place = atResistance(fn, law, ohm);
    const field = resistanceOhm === undefined ? 'inputV' : 'resistanceOhm';
    extrapolated = needWithin(fn, curve, place, extrapolate, field, (resistanceOhm ?? inputV) as number);
  }
  const { inputV: volts, sensorW } = pullVolts(input, place.resistanceOhm);
  const slopeVPerK = slopes(place).slopeOhmPerK * voltsPerOhm(input, place.resistanceOhm);
  const sensorMw = sensorW * 1000;
  return {
    inputV: volts,
    inputFraction: volts / input.supplyV,
    resistanceOhm: place.resistanceOhm,
    tempC: place.tempC,
    fault: null,
    slopeVPerK,
    countK: adcSteps === undefined ? null : input.supplyV / adcSteps / Math.abs(slopeVPerK),
    sensorMw,
    selfHeatingRiseK: dissipationMwPerK === undefined ? null : sensorMw / dissipationMwPerK,
    extrapolated,
    ...provenance(curve),
  };
}

function noNumber(input: ThermistorInputInput, fault: 'open' | 'short'): ThermistorInputResult {
  return {
    inputV: input.inputV as number,
    inputFraction: (input.inputV as number) / input.supplyV,
    resistanceOhm: null,
    tempC: null,
    fault,
    slopeVPerK: null,
    countK: null,
    sensorMw: null,
    selfHeatingRiseK: null,
    extrapolated: false,
    ...provenance(input.curve),
  };
}

/** dV/dR of the divider. */
function voltsPerOhm({ side, supplyV, pullOhm, inputOhm }: PullInput, sensorOhm: number): number {
  const inputS = inputOhm === undefined ? 0 : 1 / inputOhm;
  if (side === 'sensor-to-supply') {
    const lower = 1 / (1 / pullOhm + inputS);
    return (-supplyV * lower) / (sensorOhm + lower) ** 2;
  }
  const sum = pullOhm / sensorOhm + 1 + pullOhm * inputS;
  return (supplyV * pullOhm) / (sensorOhm * sum) ** 2;
}
