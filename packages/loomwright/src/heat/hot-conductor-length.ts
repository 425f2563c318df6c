import { InputError } from '../error/index.js';
import { needAbove, needAtLeast, needConductorTempC, needInput, needOneOf } from '../error/guard.js';

export interface HotConductorLengthInput {
  /** Length that a chart or table for 20 °C allows, out and back as the chart counts it, in m, above 0. */
  readonly coldLengthM: number;
  /** Current in A, at least 0 and at most `maxCurrentA`. */
  readonly currentA: number;
  /** Current in A that brings the wire, where it lies, to its rated temperature. */
  readonly maxCurrentA: number;
  /** Temperature of the air in °C. */
  readonly ambientTempC: number;
  /** Rated temperature of the wire in °C, above the ambient. */
  readonly ratedTempC: number;
  /** Metal; copper unless given. */
  readonly metal?: 'copper' | 'aluminium';
}

export interface HotConductorLengthResult {
  /** Length for the same drop with the wire hot, in m. */
  readonly hotLengthM: number;
  /** Conductor temperature that the form assumes, in °C: above the true one. */
  readonly conductorTempC: number;
}

/**
 * Shortens a length that was found for a cold wire, by the form of an aviation circular.
 *
 * Use it to follow that circular. Its temperature rises with the root of the current's share where physics has the
 * square, so it is too high, and the length on the safe side, as long as the current stays at or below the wire's
 * limit. Above the limit it would be too low: the function refuses.
 *
 * $$T_2 = T_1 + (T_R - T_1)\sqrt{I_2/I_\mathrm{max}},\qquad L_2 = \frac{(254.5)\,L_1}{234.5 + T_2}$$
 *
 * with 258.1 and 238.1 for aluminium.
 *
 * @param input length, currents, temperatures, metal
 * @returns the shorter length in m, and the temperature assumed in °C
 * @throws InputError when a field is missing or out of range, or the current is above the limit
 * @source ac-43-13-1b, pages 11-22, 11-23 and 11-27 (lengths and the remark that it is conservative were read; the
 * radical form from memory)
 * @example hotConductorLength({ coldLengthM: 4.7244, currentA: 20, maxCurrentA: 26, ambientTempC: 50, ratedTempC: 200 }).conductorTempC //=> 181.559
 */
export function hotConductorLength(input: HotConductorLengthInput): HotConductorLengthResult {
  const fn = 'hotConductorLength';
  needInput(fn, input);
  const { coldLengthM, currentA, maxCurrentA, ambientTempC, ratedTempC, metal = 'copper' } = input;
  needAbove(fn, 'coldLengthM', coldLengthM);
  needAtLeast(fn, 'currentA', currentA);
  needAbove(fn, 'maxCurrentA', maxCurrentA);
  needConductorTempC(fn, 'ambientTempC', ambientTempC);
  needConductorTempC(fn, 'ratedTempC', ratedTempC);
  needOneOf(fn, 'metal', metal, ['copper', 'aluminium']);
  if (!(ratedTempC > ambientTempC)) {
    throw new InputError(fn, 'ratedTempC', 'above', ratedTempC, `must be above the ambient ${ambientTempC}`);
  }
  if (currentA > maxCurrentA) {
    const hint = 'above the limit this form is on the unsafe side: use conductorTemperature';
    throw new InputError(fn, 'currentA', 'atMost', currentA, `must be at most the limit of ${maxCurrentA}`, hint);
  }
  const conductorTempC = ambientTempC + (ratedTempC - ambientTempC) * Math.sqrt(currentA / maxCurrentA);
  const zero = metal === 'aluminium' ? 238.1 : 234.5;
  return { hotLengthM: (coldLengthM * (zero + 20)) / (zero + conductorTempC), conductorTempC };
}
