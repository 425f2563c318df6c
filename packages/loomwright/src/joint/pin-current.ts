import { needAbove, needBetween, needInput, needTempC } from '../error/guard.js';

export interface PinCurrentInput {
  /** Rated current of one contact in A, above 0. */
  readonly ratedCurrentA: number;
  /** Rise in K of the contact above its surroundings at that current, above 0. */
  readonly ratedRiseK: number;
  /** Largest temperature of the contact in °C. */
  readonly maxTempC: number;
  /** Temperature around the connector in °C. */
  readonly ambientTempC: number;
  /** Share of the base curve that may be used, 0.01 to 1; 0.8 by IEC 60512-5-2. */
  readonly reductionFraction: number;
  /** Factor for neighbours and thin wires, 0.01 to 1; 1 for one contact alone with its thickest wire. */
  readonly loadingFactor: number;
  /** Exponent of the curve, 0.5 to 0.6; 0.5 unless given. */
  readonly exponent?: number;
}

export interface PinCurrentResult {
  /** Current that the contact may carry, in A; 0 where its surroundings are as hot as it may get. */
  readonly currentA: number;
  /** Current of the base curve before the reduction, in A. */
  readonly baseCurrentA: number;
  /** Whether the rated current caps the curve. */
  readonly cappedAtRating: boolean;
}

/**
 * Current that a contact may carry where it sits.
 *
 * Use it with the figures of the maker's sheet. A contact warms by the square of its current, so that the current
 * falls with the root of the room that is left below its limit; the rated current is never exceeded in the cold.
 *
 * $$I = k_\mathrm{load}\,\min\!\left(I_0,\; r\,I_0\left(\frac{T_\mathrm{max} - T_\mathrm{amb}}{\Delta T_0}\right)^{n}\right)$$
 *
 * @param input rating with its rise, limit, surroundings, reduction, loading
 * @returns amperes allowed, and those of the base curve
 * @throws InputError when a field is missing or out of range
 * @source iec-60512-5-2 (form and 0.8, from memory)
 * @example pinCurrent({ ratedCurrentA: 13, ratedRiseK: 30, maxTempC: 125, ambientTempC: 100, reductionFraction: 0.8, loadingFactor: 1 }).currentA //=> 9.4939
 */
export function pinCurrent(input: PinCurrentInput): PinCurrentResult {
  needInput('pinCurrent', input);
  const { ratedCurrentA, ratedRiseK, maxTempC, ambientTempC, reductionFraction, loadingFactor, exponent = 0.5 } = input;
  needAbove('pinCurrent', 'ratedCurrentA', ratedCurrentA);
  needAbove('pinCurrent', 'ratedRiseK', ratedRiseK);
  needTempC('pinCurrent', 'maxTempC', maxTempC);
  needTempC('pinCurrent', 'ambientTempC', ambientTempC);
  needBetween('pinCurrent', 'reductionFraction', reductionFraction, 0.01, 1);
  needBetween('pinCurrent', 'loadingFactor', loadingFactor, 0.01, 1);
  needBetween('pinCurrent', 'exponent', exponent, 0.5, 0.6);
  const roomK = maxTempC - ambientTempC;
  const baseCurrentA = roomK <= 0 ? 0 : ratedCurrentA * (roomK / ratedRiseK) ** exponent;
  const reduced = baseCurrentA * reductionFraction;
  return {
    currentA: Math.min(ratedCurrentA, reduced) * loadingFactor,
    baseCurrentA,
    cappedAtRating: reduced > ratedCurrentA,
  };
}
