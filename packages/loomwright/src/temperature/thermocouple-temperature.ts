import { InputError } from '../error/index.js';
import { needFinite, needInput, needOneOf } from '../error/guard.js';
import { findRoot } from '../number/index.js';
import type { SourceKey, SourceStatus } from '../source/index.js';
import type { ThermocoupleType } from '../table/index.js';
import { polynomial } from './law.js';
import { emfAt, needThermocouple } from './thermocouple-voltage.js';

export interface ThermocoupleTemperatureInput {
  /** The type: `thermocoupleK`, `thermocoupleJ`, `thermocoupleT` or `thermocoupleN`. */
  readonly thermocouple: ThermocoupleType;
  /** Voltage measured at the copper ends, in mV. */
  readonly emfMv: number;
  /** Temperature in °C where the thermocouple wires end on copper: the cold junction. */
  readonly coldTempC: number;
  /** `exact` turns the reference function round; `printed-inverse` takes the published approximation. `exact` unless given. */
  readonly method?: 'exact' | 'printed-inverse';
}

export interface ThermocoupleTemperatureResult {
  /** Temperature of the measuring junction in °C. */
  readonly hotTempC: number;
  /** Measured voltage with the cold junction made good, in mV: what printed tables are read with. */
  readonly hotMv: number;
  /** Sensitivity at the measuring junction, in mV/K. */
  readonly slopeMvPerK: number;
  /** Kelvins that the answer is off a kelvin of error at the cold junction. */
  readonly coldJunctionFraction: number;
  readonly source: SourceKey;
  readonly sourceStatus: SourceStatus;
}

/**
 * Temperature of a thermocouple's measuring junction from its voltage and the temperature of its cold junction.
 *
 * The voltage of the cold junction is added, never its degrees: a thermocouple is not straight. Extend it with
 * wire of its own type only; where it goes over to copper, there the cold junction is.
 *
 * $$E(t_\mathrm{hot}) = E_\mathrm{measured} + E(t_\mathrm{cold})$$
 *
 * @param input type, voltage, cold junction, method
 * @returns °C, mV against 0 °C, mV/K, how much an error at the cold junction counts
 * @throws InputError when a field is missing, or the voltage lies outside the type's range or that of the printed
 * inverse
 * @source nist-monograph-175 (reference functions and approximate inverses on the ITS-90)
 * @example thermocoupleTemperature({ thermocouple: thermocoupleK, emfMv: 36.3257, coldTempC: 25 }).hotTempC //=> 900
 */
export function thermocoupleTemperature(input: ThermocoupleTemperatureInput): ThermocoupleTemperatureResult {
  const fn = 'thermocoupleTemperature';
  needInput(fn, input);
  const { thermocouple, emfMv, coldTempC, method = 'exact' } = input;
  needThermocouple(fn, thermocouple);
  needFinite(fn, 'emfMv', emfMv);
  needOneOf(fn, 'method', method, ['exact', 'printed-inverse']);
  const cold = emfAt(fn, 'coldTempC', thermocouple, coldTempC);
  const hotMv = emfMv + cold.mv;
  const hotTempC =
    method === 'exact' ? turnedRound(fn, thermocouple, emfMv, hotMv) : printedInverse(fn, thermocouple, emfMv, hotMv);
  // The printed inverse may run past the end of the reference function by its own error.
  const { low, high } = rangeOf(thermocouple);
  const { mvPerK } = emfAt(fn, 'emfMv', thermocouple, Math.min(high, Math.max(low, hotTempC)));
  return {
    hotTempC,
    hotMv,
    slopeMvPerK: mvPerK,
    coldJunctionFraction: cold.mvPerK / mvPerK,
    source: thermocouple.source,
    sourceStatus: thermocouple.status,
  };
}

function rangeOf({ pieces }: ThermocoupleType): { low: number; high: number } {
  return { low: pieces[0]?.fromTempC as number, high: pieces[pieces.length - 1]?.toTempC as number };
}

function turnedRound(fn: string, type: ThermocoupleType, emfMv: number, hotMv: number): number {
  const { low, high } = rangeOf(type);
  const f = (t: number): number => emfAt(fn, 'emfMv', type, t).mv - hotMv;
  const [atLow, atHigh] = [f(low), f(high)];
  // A picovolt beyond an end is rounding.
  if (atLow > 1e-9 || atHigh < -1e-9) throw outside(fn, type, emfMv, atLow + hotMv, atHigh + hotMv);
  if (atLow >= 0) return low;
  if (atHigh <= 0) return high;
  return findRoot({ fn, f, low, high, tolerance: 1e-10 });
}

function printedInverse(fn: string, type: ThermocoupleType, emfMv: number, hotMv: number): number {
  const { inverse } = type;
  const piece = inverse.find(({ fromMv, toMv }) => hotMv >= fromMv && hotMv <= toMv);
  if (piece === undefined) {
    throw outside(fn, type, emfMv, inverse[0]?.fromMv as number, inverse[inverse.length - 1]?.toMv as number);
  }
  return polynomial(piece.coefficients, hotMv).value;
}

function outside(fn: string, { letter }: ThermocoupleType, emfMv: number, low: number, high: number): InputError {
  const must = `must with its cold junction lie from ${low.toFixed(3)} to ${high.toFixed(3)} mV for type ${letter}`;
  return new InputError(fn, 'emfMv', 'range', emfMv, must, Math.abs(emfMv) > 100 ? 'is this in µV?' : '');
}
