import { InputError } from '../error/index.js';
import { needMoreThan } from '../error/bounded.js';
import { needInput } from '../error/guard.js';

export interface PeukertExponentInput {
  /** One current in A and the hours that a full battery lasts at it, both above 0. */
  readonly firstA: number;
  readonly firstTimeH: number;
  /** Another, larger current in A, and its hours. */
  readonly secondA: number;
  readonly secondTimeH: number;
}

export interface PeukertExponentResult {
  /** Exponent k. */
  readonly peukertExponent: number;
  /** Charge had at each current, in Ah. */
  readonly firstChargeAh: number;
  readonly secondChargeAh: number;
}

/**
 * The exponent of Peukert's law from two run times of one battery.
 *
 * A battery's label gives one at the hour rate; its reserve capacity, minutes at 25 A, is the second.
 *
 * $$k = \frac{\ln (t_1 / t_2)}{\ln (I_2 / I_1)}$$
 *
 * @param input two currents and the hours at each
 * @returns the exponent, and the charge at each current in Ah
 * @throws InputError when a field is missing or out of range, the second current is not above the first, or its
 * charge is above that of the first (an exponent below 1)
 * Valid for one battery at one temperature and one end voltage.
 * @source peukert-law
 * @example peukertExponent({ firstA: 5, firstTimeH: 20, secondA: 10, secondTimeH: 7.5 }).peukertExponent //=> 1.415
 */
export function peukertExponent(input: PeukertExponentInput): PeukertExponentResult {
  const fn = 'peukertExponent';
  needInput(fn, input);
  const { firstA, firstTimeH, secondA, secondTimeH } = input;
  needMoreThan(fn, 'firstA', firstA);
  needMoreThan(fn, 'firstTimeH', firstTimeH);
  needMoreThan(fn, 'secondA', secondA, firstA);
  needMoreThan(fn, 'secondTimeH', secondTimeH);
  const firstChargeAh = firstA * firstTimeH;
  const secondChargeAh = secondA * secondTimeH;
  if (secondChargeAh > firstChargeAh) {
    const must = `must give no more charge than the smaller current (at most ${firstChargeAh / secondA} h)`;
    throw new InputError(fn, 'secondTimeH', 'atMost', secondTimeH, must);
  }
  return {
    peukertExponent: Math.log(firstTimeH / secondTimeH) / Math.log(secondA / firstA),
    firstChargeAh,
    secondChargeAh,
  };
}
