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
  needInput('voltageDrop', input);
  const { supplyV, currentA, outLengthM, returnLengthM, resistanceOhmPerM, ratedTempC, conductorTempC } = input;
  needAbove('voltageDrop', 'supplyV', supplyV);
  needAtLeast('voltageDrop', 'currentA', currentA);
  needAtLeast('voltageDrop', 'outLengthM', outLengthM);
  needAtLeast('voltageDrop', 'returnLengthM', returnLengthM);
  needAbove('voltageDrop', 'resistanceOhmPerM', resistanceOhmPerM);
  needConductorTempC('voltageDrop', 'ratedTempC', ratedTempC);
  needConductorTempC('voltageDrop', 'conductorTempC', conductorTempC);
  const hot = (234.5 + conductorTempC) / (234.5 + ratedTempC);
  const resistanceOhm = resistanceOhmPerM * (outLengthM + returnLengthM) * hot;
  const dropV = currentA * resistanceOhm;
  return { dropV, dropFraction: dropV / supplyV, loadV: supplyV - dropV, resistanceOhm, lossW: dropV * currentA };
}
