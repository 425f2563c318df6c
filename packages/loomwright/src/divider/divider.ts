import { needEarthly, needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needInput } from '../error/guard.js';

export interface DividerInput {
  /** Volts across the whole divider. */
  readonly inV: number;
  /** Resistance in Ω from the input to the tap, at least 0. */
  readonly upperOhm: number;
  /** Resistance in Ω from the tap to ground, above 0. */
  readonly lowerOhm: number;
}

export interface DividerResult {
  /** Volts at the tap with nothing connected to it. */
  readonly outV: number;
  /** The same as a fraction of the input. */
  readonly outFraction: number;
  /** Current through the divider in A. */
  readonly currentA: number;
  /** Resistance in Ω that a load sees at the tap (Thévenin), the source taken as stiff. */
  readonly sourceOhm: number;
  /** Heat in the upper resistor in W. */
  readonly upperW: number;
  /** Heat in the lower resistor in W. */
  readonly lowerW: number;
}

/**
 * Volts at the tap of two resistors, with nothing connected to the tap.
 *
 * Whatever is connected changes it: an input's own resistance, its pull-up, a long wire. For those use
 * `loadedDivider`, and to choose the two resistors use `designDivider`.
 *
 * $$V_\mathrm{out} = V_\mathrm{in}\,\frac{R_2}{R_1 + R_2} \qquad R_\mathrm{source} = \frac{R_1 R_2}{R_1 + R_2}$$
 *
 * @param input volts, upper and lower resistance
 * @returns volts at the tap, fraction, current in A, source resistance in Ω, heat of each resistor in W
 * @throws InputError when a field is missing or out of range
 * @source lessons-electric-circuits, volume I, chapter 6 (voltage divider formula)
 * @example divider({ inV: 13.8, upperOhm: 18000, lowerOhm: 10000 }).outV //=> 4.92857
 */
export function divider(input: DividerInput): DividerResult {
  needInput('divider', input);
  const { inV, upperOhm, lowerOhm } = input;
  needEarthly('divider', 'inV', inV);
  needNoLessThan('divider', 'upperOhm', upperOhm);
  needMoreThan('divider', 'lowerOhm', lowerOhm);
  const outFraction = lowerOhm / (upperOhm + lowerOhm);
  const currentA = inV / (upperOhm + lowerOhm);
  return {
    outV: inV * outFraction,
    outFraction,
    currentA,
    sourceOhm: upperOhm * outFraction,
    upperW: currentA * currentA * upperOhm,
    lowerW: currentA * currentA * lowerOhm,
  };
}
