import { InputError } from '../error/index.js';
import { needAbove, needAtLeast, needInput, needConductorTempC } from '../error/guard.js';

export interface VoltageDropInput {
  /** Supply voltage in V, above 0. */
  readonly supplyV: number;
  /** Current in A, at least 0. */
  readonly currentA: number;
  /** Length of the wire to the load in m, at least 0. */
  readonly outLengthM: number;
  /** Length of the wire back in m, at least 0. With a return by the body give 0 and mind the body's own drop. */
  readonly returnLengthM: number;
  /** Resistance of one metre of the wire in Ω/m at `ratedTempC`, above 0: see `wireResistance` for a size's. */
  readonly resistanceOhmPerM: number;
  /** Temperature in °C for which that resistance is stated; 20 in nearly all tables; −100 to 400. */
  readonly ratedTempC: number;
  /** Temperature of the copper in use in °C, −100 to 400. */
  readonly conductorTempC: number;
}

export interface VoltageDropResult {
  /** Volts lost in the wire, out and back. */
  readonly dropV: number;
  /** The same as a fraction of the supply. */
  readonly dropFraction: number;
  /** Volts left for the load; below 0 where the wire cannot carry the current at all. */
  readonly loadV: number;
  /** Resistance of the wire out and back, hot, in Ω. */
  readonly resistanceOhm: number;
  /** Heat made in the wire in W. */
  readonly lossW: number;
}

/**
 * Voltage lost in a copper wire, out and back, at its working temperature.
 *
 * Use it for one wire and a known current. Where fuses, relays, joints or a body return are in the path use
 * `solveFeed`, and to choose a size use `sizeFeed`: fixed parts often take more than the wire.
 *
 * $$U = I\,r\,(l_{\mathrm{out}} + l_{\mathrm{return}})\,\frac{234.5 + T}{234.5 + T_{\mathrm{rated}}}$$
 *
 * @param input supply, current, lengths, resistance a metre with its temperature, conductor temperature
 * @returns drop in V and as a fraction, volts left, resistance in Ω, heat in W
 * @throws InputError when a field is missing or out of range
 * @source ac-43-13-1b, tables 11-7 and 11-8 (drop from Ω a foot); nbs-hb-100 (temperature, inferred-zero form of
 * annealed copper)
 * @example voltageDrop({ supplyV: 12, currentA: 5, outLengthM: 5, returnLengthM: 5, resistanceOhmPerM: 0.039, ratedTempC: 20, conductorTempC: 85 }).dropV //=> 2.44804
 */
export function voltageDrop(input: VoltageDropInput): VoltageDropResult {
  if (typeof input !== 'object' || input === null) refuse(input);
  const { supplyV, currentA, outLengthM, returnLengthM, resistanceOhmPerM, ratedTempC, conductorTempC } = input;
  const hot = (234.5 + conductorTempC) / (234.5 + ratedTempC);
  const resistanceOhm = resistanceOhmPerM * (outLengthM + returnLengthM) * hot;
  const dropV = currentA * resistanceOhm;
  const loadV = supplyV - dropV;
  const lossW = dropV * currentA;
  // One expression, so that a million calls cost little more than the arithmetic; `refuse` finds out what is wrong.
  // Infinite inputs show in the results: x − x is 0 for finite numbers only.
  const sound =
    typeof supplyV === 'number' &&
    typeof currentA === 'number' &&
    typeof outLengthM === 'number' &&
    typeof returnLengthM === 'number' &&
    typeof resistanceOhmPerM === 'number' &&
    typeof ratedTempC === 'number' &&
    typeof conductorTempC === 'number' &&
    supplyV > 0 &&
    currentA >= 0 &&
    outLengthM >= 0 &&
    returnLengthM >= 0 &&
    resistanceOhmPerM > 0 &&
    ratedTempC >= -100 &&
    ratedTempC <= 400 &&
    conductorTempC >= -100 &&
    conductorTempC <= 400 &&
    loadV - loadV === 0 &&
    lossW - lossW === 0;
  if (!sound) refuse(input);
  return { dropV, dropFraction: dropV / supplyV, loadV, resistanceOhm, lossW };
}

/** Throws for the first field that is at fault. */
function refuse(input: VoltageDropInput): never {
  const fn = 'voltageDrop';
  needInput(fn, input);
  needAbove(fn, 'supplyV', input.supplyV);
  needAtLeast(fn, 'currentA', input.currentA);
  needAtLeast(fn, 'outLengthM', input.outLengthM);
  needAtLeast(fn, 'returnLengthM', input.returnLengthM);
  needAbove(fn, 'resistanceOhmPerM', input.resistanceOhmPerM);
  needConductorTempC(fn, 'ratedTempC', input.ratedTempC);
  needConductorTempC(fn, 'conductorTempC', input.conductorTempC);
  throw new InputError(fn, 'currentA', 'range', input.currentA, 'is too large');
}
