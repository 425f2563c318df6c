import { InputError } from '../error/index.js';
import { needInput } from '../error/guard.js';
import { needArrays, outOfRange } from './thermistor-temperature-each.js';
import type { ThermistorTable } from './thermistor-table.js';

export interface ThermistorTableEachInput {
  /** A table made by `thermistorTable`. */
  readonly table: ThermistorTable;
  /** Resistances in Ω, each within the table. */
  readonly resistanceOhm: Float64Array;
  /** Where the results go, as long as the resistances; a new array unless given. */
  readonly into?: Float64Array;
}

/**
 * Temperature in °C of many thermistor readings by a table: within its `boundK` of the exact curve.
 *
 * One function serves any number of sensors: the table is data, so nothing is compiled anew for a second sensor.
 *
 * $$T = p_k + q_k R, \qquad k = \text{exponent and first mantissa bits of } R$$
 *
 * @param input table and resistances
 * @returns °C, one a resistance
 * @throws InputError naming the first reading that does not lie within the table, or when the table is not one
 * @source circuit-theory (linear interpolation)
 * @example thermistorTableEach({ table, resistanceOhm: new Float64Array([10000]) })[0] //=> 25
 */
export function thermistorTableEach(input: ThermistorTableEachInput): Float64Array {
  const fn = 'thermistorTableEach';
  needInput(fn, input);
  const { table, resistanceOhm } = input;
  if (typeof table !== 'object' || table === null || !(table.pieces instanceof Float64Array)) {
    const rule = table === undefined ? 'missing' : 'object';
    throw new InputError(fn, 'table', rule, table, 'must be a table made by thermistorTable');
  }
  const into = needArrays(fn, resistanceOhm, input.into);
  const stopped = fill(table, resistanceOhm, into);
  if (stopped < resistanceOhm.length) {
    throw outOfRange(fn, stopped, resistanceOhm[stopped] as number, table.lowestOhm, table.highestOhm);
  }
  return into;
}

/** Whether the first word of a number is its low one, as on nearly every machine. */
function lowWordFirst(): boolean {
  return new Uint8Array(new Uint32Array([1]).buffer)[0] === 1;
}

/** The loop; returns where it stopped: the length, or the first reading out of range. */
function fill(
  { mantissaBits, firstPlace, pieces, lowestOhm, highestOhm }: ThermistorTable,
  resistanceOhm: Float64Array,
  into: Float64Array,
): number {
  const n = resistanceOhm.length;
  const words = new Int32Array(resistanceOhm.buffer, resistanceOhm.byteOffset, 2 * n);
  const high = lowWordFirst() ? 1 : 0;
  const shift = 20 - mantissaBits;
  for (let i = 0; i < n; i++) {
    const ohm = resistanceOhm[i] as number;
    if (!(ohm >= lowestOhm && ohm <= highestOhm)) return i;
    const k = 2 * (((words[2 * i + high] as number) >> shift) - firstPlace);
    into[i] = (pieces[k] as number) + (pieces[k + 1] as number) * ohm;
  }
  return n;
}
