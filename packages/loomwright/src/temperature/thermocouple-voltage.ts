import { InputError } from '../error/index.js';
import { needInput, needFinite } from '../error/guard.js';
import type { SourceKey, SourceStatus } from '../source/index.js';
import type { ThermocoupleType } from '../table/index.js';

export interface ThermocoupleVoltageInput {
  /** The type: `thermocoupleK`, `thermocoupleJ`, `thermocoupleT` or `thermocoupleN`. */
  readonly thermocouple: ThermocoupleType;
  /** Temperature of the measuring junction in °C. */
  readonly hotTempC: number;
  /** Temperature in °C where the thermocouple wires end on copper: the cold junction. */
  readonly coldTempC: number;
}

export interface ThermocoupleVoltageResult {
  /** Voltage at the copper ends in mV; below 0 where the measuring junction is the colder one. */
  readonly emfMv: number;
  /** What the measuring junction alone would give against 0 °C, in mV: the value of printed tables. */
  readonly hotMv: number;
  /** What the cold junction takes off, in mV. */
  readonly coldMv: number;
  /** Sensitivity at the measuring junction, in mV/K. */
  readonly slopeMvPerK: number;
  readonly source: SourceKey;
  readonly sourceStatus: SourceStatus;
}

/**
 * Voltage of a thermocouple between two temperatures.
 *
 * $$E = E(t_\mathrm{hot}) - E(t_\mathrm{cold}), \qquad E(t) = \sum_i c_i t^i \;(+\, a_0 e^{a_1 (t - a_2)^2} \text{ for K above } 0\,°\mathrm{C})$$
 *
 * @param input type, temperatures of both junctions
 * @returns mV at the ends, of either junction, and sensitivity in mV/K
 * @throws InputError when a field is missing or a temperature lies outside the type's range
 * @source nist-monograph-175 (reference functions on the ITS-90)
 * @example thermocoupleVoltage({ thermocouple: thermocoupleK, hotTempC: 900, coldTempC: 25 }).emfMv //=> 36.3257
 */
export function thermocoupleVoltage(input: ThermocoupleVoltageInput): ThermocoupleVoltageResult {
  const fn = 'thermocoupleVoltage';
  needInput(fn, input);
  const { thermocouple, hotTempC, coldTempC } = input;
  needThermocouple(fn, thermocouple);
  const hot = emfAt(fn, 'hotTempC', thermocouple, hotTempC);
  const cold = emfAt(fn, 'coldTempC', thermocouple, coldTempC);
  return {
    emfMv: hot.mv - cold.mv,
    hotMv: hot.mv,
    coldMv: cold.mv,
    slopeMvPerK: hot.mvPerK,
    source: thermocouple.source,
    sourceStatus: thermocouple.status,
  };
}

/** A thermocouple must be one of the table room's. */
export function needThermocouple(fn: string, thermocouple: ThermocoupleType): void {
  if (typeof thermocouple !== 'object' || thermocouple === null || !Array.isArray(thermocouple.pieces)) {
    const rule = thermocouple === undefined ? 'missing' : 'object';
    const hint = 'import one, such as thermocoupleK';
    throw new InputError(fn, 'thermocouple', rule, thermocouple, 'must be a thermocouple type', hint);
  }
}

/** The reference function against 0 °C and its slope. */
export function emfAt(fn: string, field: string, type: ThermocoupleType, t: number): { mv: number; mvPerK: number } {
  needFinite(fn, field, t);
  const { pieces, letter } = type;
  const piece = pieces.find(({ fromTempC, toTempC }) => t >= fromTempC && t <= toTempC);
  if (piece === undefined) {
    const low = pieces[0]?.fromTempC;
    const high = pieces[pieces.length - 1]?.toTempC;
    throw new InputError(fn, field, 'range', t, `must lie from ${low} to ${high} for type ${letter}`);
  }
  const { coefficients, bell } = piece;
  let mv = 0;
  let mvPerK = 0;
  for (let i = coefficients.length - 1; i >= 0; i--) {
    mvPerK = mvPerK * t + mv;
    mv = mv * t + (coefficients[i] as number);
  }
  if (bell === undefined) return { mv, mvPerK };
  const [a0, a1, a2] = bell;
  const swell = a0 * Math.exp(a1 * (t - a2) ** 2);
  return { mv: mv + swell, mvPerK: mvPerK + swell * 2 * a1 * (t - a2) };
}
