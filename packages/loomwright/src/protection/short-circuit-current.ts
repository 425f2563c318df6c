import type { Metal } from '../conductor/index.js';
import { METALS, resistanceRatio } from '../conductor/metal.js';
import { InputError } from '../error/index.js';
import { needConductorTempC, needInput, needList, needObject, needOneOf, needText } from '../error/guard.js';
import { needMoreThan, needNoLessThan } from '../error/bounded.js';
import type { PathPart } from '../load/index.js';

export interface ShortCircuitCurrentInput {
  /** Voltage in V at which the short is judged, above 0: low for the far end, high for the interrupting rating. */
  readonly supplyV: number;
  /** Everything else that the current goes through: battery, fuse, holder, joints, body. May be empty. */
  readonly parts: readonly PathPart[];
  /** Wire in the way of the current, out and back, in m, at least 0. */
  readonly wireLengthM: number;
  /** Resistance of that wire in Ω/m at `ratedTempC`: the most that its standard allows for the far end. Above 0. */
  readonly resistanceOhmPerM: number;
  /** Temperature in °C of that value. */
  readonly ratedTempC: number;
  /** Temperature of the wire in °C: as hot as it may run for the far end, cold for the interrupting rating. */
  readonly conductorTempC: number;
  /** Metal; annealed copper unless given. */
  readonly metal?: Metal;
}

export interface ShortCircuitCurrentResult {
  /** Current of the short in A. */
  readonly currentA: number;
  /** Of the whole loop, in Ω. */
  readonly resistanceOhm: number;
  /** Of its wire, hot, in Ω. */
  readonly wireResistanceOhm: number;
}

/**
 * Current of a dead short at the end of a wire.
 *
 * Use it twice. For the far end take the low battery, the hot wire and the largest resistance that its standard
 * allows: the fuse must still see this current. For the interrupting rating take the full battery, cold wire and the
 * least resistance: the fuse must be able to break that one. A real short has an arc and less current.
 *
 * $$I = \frac{V}{\sum_k R_k + l\,r\,\dfrac{T_0 + T}{T_0 + T_\mathrm{rated}}}$$
 *
 * @param input supply, parts, wire
 * @returns current in A, resistance of loop and wire in Ω
 * @throws InputError when a field is missing or out of range, or nothing limits the current
 * @source circuit-theory; nbs-hb-100 (resistance by temperature)
 * @example shortCircuitCurrent({ supplyV: 12.6, parts: [{ name: 'battery', resistanceOhm: 0.009 }, { name: 'fuse', resistanceOhm: 0.0014 }], wireLengthM: 2, resistanceOhmPerM: 0.00078, ratedTempC: 20, conductorTempC: 20 }).currentA //=> 1053.51
 */
export function shortCircuitCurrent(input: ShortCircuitCurrentInput): ShortCircuitCurrentResult {
  const fn = 'shortCircuitCurrent';
  needInput(fn, input);
  const { supplyV, parts, wireLengthM, resistanceOhmPerM, ratedTempC, conductorTempC, metal = 'copper' } = input;
  needMoreThan(fn, 'supplyV', supplyV);
  needList(fn, 'parts', parts);
  needNoLessThan(fn, 'wireLengthM', wireLengthM);
  needMoreThan(fn, 'resistanceOhmPerM', resistanceOhmPerM);
  needConductorTempC(fn, 'ratedTempC', ratedTempC);
  needConductorTempC(fn, 'conductorTempC', conductorTempC);
  needOneOf(fn, 'metal', metal, METALS);
  const wireResistanceOhm = wireLengthM * resistanceOhmPerM * resistanceRatio(metal, ratedTempC, conductorTempC);
  let resistanceOhm = wireResistanceOhm;
  parts.forEach((part, i) => {
    needObject(fn, `parts[${i}]`, part);
    needText(fn, `parts[${i}].name`, part.name);
    needNoLessThan(fn, `parts[${i}].resistanceOhm`, part.resistanceOhm);
    resistanceOhm += part.resistanceOhm;
  });
  if (!(resistanceOhm >= 1e-9)) {
    const hint = 'every battery has a resistance: list it';
    throw new InputError(fn, 'parts', 'range', resistanceOhm, 'and the wire must add up to 1e-9 Ω or more', hint);
  }
  return { currentA: supplyV / resistanceOhm, resistanceOhm, wireResistanceOhm };
}
