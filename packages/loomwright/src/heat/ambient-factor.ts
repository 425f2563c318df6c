import { InputError } from '../error/index.js';
import { needInput, needTempC } from '../error/guard.js';

export interface AmbientFactorInput {
  /** Highest temperature that the insulation bears all day, in °C. */
  readonly insulationTempC: number;
  /** Temperature of the air around the wire, in °C. */
  readonly ambientTempC: number;
  /** Ambient temperature at which the current to be corrected was printed, in °C. It belongs to that table alone. */
  readonly baseTempC: number;
}

export interface AmbientFactorResult {
  /** Factor on the printed current; 0 where the air is as hot as the insulation bears. */
  readonly ambientFactor: number;
}

/**
 * Factor that carries a printed current from its table's ambient temperature to another.
 *
 * Use it on a current of a table, with the base of that table and no other: 10 A printed for 70 °C and 35 A printed
 * for 30 °C are two statements about two conditions. It takes the heat given off as proportional to the rise, which
 * is a little unfavourable in hotter air and a little favourable in colder air (below the base it is above 1).
 *
 * $$F = \sqrt{\frac{T_\mathrm{ins} - T_\mathrm{amb}}{T_\mathrm{ins} - T_\mathrm{base}}}$$
 *
 * @param input insulation class, ambient and base temperature
 * @returns the factor, without unit
 * @throws InputError when a field is missing or below absolute zero, or the base is not below the insulation's class
 * @source us-33-cfr-183, 183.425 table 5 note 1 prints this form's values at 50 °C from base 30 °C, rounded
 * @example ambientFactor({ insulationTempC: 105, ambientTempC: 60, baseTempC: 30 }).ambientFactor //=> 0.774597
 */
export function ambientFactor(input: AmbientFactorInput): AmbientFactorResult {
  needInput('ambientFactor', input);
  const { insulationTempC, ambientTempC, baseTempC } = input;
  needTempC('ambientFactor', 'insulationTempC', insulationTempC);
  needTempC('ambientFactor', 'ambientTempC', ambientTempC);
  needTempC('ambientFactor', 'baseTempC', baseTempC);
  if (!(baseTempC < insulationTempC)) {
    throw new InputError(
      'ambientFactor',
      'baseTempC',
      'below',
      baseTempC,
      `must be below the insulation's ${insulationTempC}`,
    );
  }
  const room = insulationTempC - ambientTempC;
  return { ambientFactor: room <= 0 ? 0 : Math.sqrt(room / (insulationTempC - baseTempC)) };
}
