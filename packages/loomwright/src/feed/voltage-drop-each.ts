import { InputError } from '../error/index.js';
import { needInput, needInteger } from '../error/guard.js';
import { voltageDrop } from './voltage-drop.js';

/** One value for all cases, or one for each. */
type Column = number | Float64Array;

export interface VoltageDropEachInput {
  /** How many cases there are, at least 1. Every array must have this length. */
  readonly count: number;
  /** Supply voltage in V, above 0. */
  readonly supplyV: Column;
  /** Current in A, at least 0. */
  readonly currentA: Column;
  /** Length of the wire to the load in m, at least 0. */
  readonly outLengthM: Column;
  /** Length of the wire back in m, at least 0. */
  readonly returnLengthM: Column;
  /** Resistance of one metre of the wire in Ω/m at `ratedTempC`, above 0. */
  readonly resistanceOhmPerM: Column;
  /** Temperature in °C for which that resistance is stated; −100 to 400. */
  readonly ratedTempC: Column;
  /** Temperature of the copper in use in °C, −100 to 400. */
  readonly conductorTempC: Column;
}

export interface VoltageDropEachResult {
  /** Volts lost in the wire, out and back. */
  readonly dropV: Float64Array;
  /** The same as a fraction of the supply. */
  readonly dropFraction: Float64Array;
  /** Volts left for the load. */
  readonly loadV: Float64Array;
  /** Resistance of the wire out and back, hot, in Ω. */
  readonly resistanceOhm: Float64Array;
  /** Heat made in the wire in W. */
  readonly lossW: Float64Array;
}

const FN = 'voltageDropEach';
const FIELDS = [
  'supplyV',
  'currentA',
  'outLengthM',
  'returnLengthM',
  'resistanceOhmPerM',
  'ratedTempC',
  'conductorTempC',
] as const;

/**
 * `voltageDrop` for many cases at once: typed arrays in, typed arrays out, every case checked.
 *
 * Use it for sweeps and sheets of many thousand wires; for one wire `voltageDrop` says the same. A field that is the
 * same in all cases may be one number.
 *
 * $$U = I\,r\,(l_{\mathrm{out}} + l_{\mathrm{return}})\,\frac{234.5 + T}{234.5 + T_{\mathrm{rated}}}$$
 *
 * @param input count, and each field of `voltageDrop` as a number or a Float64Array of that length
 * @returns the results of `voltageDrop`, one array each
 * @throws InputError when an array has another length, or a case is refused; the field then holds its index
 * @source ac-43-13-1b, tables 11-7 and 11-8; nbs-hb-100 (temperature)
 * @example voltageDropEach({ count: 2, supplyV: 12, currentA: new Float64Array([5, 10]), outLengthM: 5, returnLengthM: 5, resistanceOhmPerM: 0.039, ratedTempC: 20, conductorTempC: 85 }).dropV[1] //=> 4.89607
 */
export function voltageDropEach(input: VoltageDropEachInput): VoltageDropEachResult {
  needInput(FN, input);
  const { count } = input;
  needInteger(FN, 'count', count, 1);
  const columns = FIELDS.map((field) => columnOf(field, input[field], count));
  const [v, i, out, back, r, rated, temp] = columns as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  // A column of one value is read again and again: its index does not move.
  const [vs, is, os, bs, rs, ds, ts] = columns.map(({ length }) => (length === count ? 1 : 0)) as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const dropV = new Float64Array(count);
  const dropFraction = new Float64Array(count);
  const loadV = new Float64Array(count);
  const resistanceOhm = new Float64Array(count);
  const lossW = new Float64Array(count);
  for (let k = 0; k < count; k++) {
    const supply = v[k * vs] as number;
    const current = i[k * is] as number;
    const lengthOut = out[k * os] as number;
    const lengthBack = back[k * bs] as number;
    const perM = r[k * rs] as number;
    const from = rated[k * ds] as number;
    const to = temp[k * ts] as number;
    const ohm = perM * (lengthOut + lengthBack) * ((234.5 + to) / (234.5 + from));
    const drop = current * ohm;
    const left = supply - drop;
    const loss = drop * current;
    const sound =
      supply > 0 &&
      current >= 0 &&
      lengthOut >= 0 &&
      lengthBack >= 0 &&
      perM > 0 &&
      from >= -100 &&
      from <= 400 &&
      to >= -100 &&
      to <= 400 &&
      left - left === 0 &&
      loss - loss === 0;
    if (!sound)
      refuse(k, {
        supplyV: supply,
        currentA: current,
        outLengthM: lengthOut,
        returnLengthM: lengthBack,
        resistanceOhmPerM: perM,
        ratedTempC: from,
        conductorTempC: to,
      });
    resistanceOhm[k] = ohm;
    dropV[k] = drop;
    dropFraction[k] = drop / supply;
    loadV[k] = left;
    lossW[k] = loss;
  }
  return { dropV, dropFraction, loadV, resistanceOhm, lossW };
}

function columnOf(field: string, value: Column, count: number): Float64Array {
  if (typeof value === 'number') return new Float64Array([value]);
  if (!(value instanceof Float64Array)) {
    throw new InputError(
      FN,
      field,
      value === undefined ? 'missing' : 'number',
      value,
      'must be a number or a Float64Array',
    );
  }
  if (value.length !== count) {
    throw new InputError(FN, field, 'list', value.length, `must have ${count} entries, one a case`);
  }
  return value;
}

/** Throws what `voltageDrop` says of a case, with the case's index in the field. */
function refuse(k: number, one: Parameters<typeof voltageDrop>[0]): never {
  try {
    voltageDrop(one);
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    const must = error.message
      .slice(error.message.indexOf(`${error.field} `) + error.field.length + 1)
      .replace(/, got .*$/, '');
    throw new InputError(FN, `${error.field}[${k}]`, error.rule, error.value, must);
  }
  throw new InputError(FN, `case[${k}]`, 'range', k, 'must be accepted by voltageDrop');
}
