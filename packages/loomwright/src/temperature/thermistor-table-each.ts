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

export interface ThermistorTableEachResult {
  /** Temperatures in °C, one a resistance. */
  readonly tempC: Float64Array;
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
 * @example thermistorTableEach({
 *   table: thermistorTable({ curve: ntc10k3mcd1, lowestOhm: 200, highestOhm: 300000, maxErrorK: 0.003 }),
 *   resistanceOhm: new Float64Array([10000]),
 * }).tempC[0] //=> 25.00
 */
export function thermistorTableEach(input: ThermistorTableEachInput): ThermistorTableEachResult {
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
  return { tempC: into };
}

/** Whether the first word of a number is its low one, as on nearly every machine. */
function lowWordFirst(): boolean {
  return new Uint8Array(new Uint32Array([1]).buffer)[0] === 1;
}

/** The loop, four readings a turn; returns where it stopped: the length, or the first reading out of range. */
function fill(
  { mantissaBits, firstPlace, pieces, lowestOhm: low, highestOhm: high }: ThermistorTable,
  resistanceOhm: Float64Array,
  into: Float64Array,
): number {
  const n = resistanceOhm.length;
  const words = new Int32Array(resistanceOhm.buffer, resistanceOhm.byteOffset, 2 * n);
  const word = lowWordFirst() ? 1 : 0;
  // Two numbers a piece: the place is taken one bit wider and made even.
  const shift = 19 - mantissaBits;
  const first = 2 * firstPlace;
  let i = 0;
  for (; i + 3 < n; i += 4) {
    const r0 = resistanceOhm[i] as number;
    const r1 = resistanceOhm[i + 1] as number;
    const r2 = resistanceOhm[i + 2] as number;
    const r3 = resistanceOhm[i + 3] as number;
    const within =
      r0 >= low && r0 <= high && r1 >= low && r1 <= high && r2 >= low && r2 <= high && r3 >= low && r3 <= high;
    if (!within) break;
    const at = 2 * i + word;
    const k0 = (((words[at] as number) >> shift) & -2) - first;
    const k1 = (((words[at + 2] as number) >> shift) & -2) - first;
    const k2 = (((words[at + 4] as number) >> shift) & -2) - first;
    const k3 = (((words[at + 6] as number) >> shift) & -2) - first;
    into[i] = (pieces[k0] as number) + (pieces[k0 + 1] as number) * r0;
    into[i + 1] = (pieces[k1] as number) + (pieces[k1 + 1] as number) * r1;
    into[i + 2] = (pieces[k2] as number) + (pieces[k2 + 1] as number) * r2;
    into[i + 3] = (pieces[k3] as number) + (pieces[k3 + 1] as number) * r3;
  }
  for (; i < n; i++) {
    const ohm = resistanceOhm[i] as number;
    if (!(ohm >= low && ohm <= high)) return i;
    const k = (((words[2 * i + word] as number) >> shift) & -2) - first;
    into[i] = (pieces[k] as number) + (pieces[k + 1] as number) * ohm;
  }
  return n;
}
