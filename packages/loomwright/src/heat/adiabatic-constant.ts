import { needAbove, needFinite, needInput } from '../error/guard.js';
import { InputError } from '../error/index.js';

export interface AdiabaticConstantInput {
  /** Heat that the metal takes at 20 °C, in J/(K·mm³), above 0. */
  readonly volumetricHeatJPerKMm3: number;
  /** Reciprocal of the temperature coefficient of resistance at 0 °C, in °C. */
  readonly beta: number;
  /** Resistivity at 20 °C in Ω·mm, above 0. */
  readonly resistivity20OhmMm: number;
}

export interface AdiabaticConstantResult {
  /** The constant K of short-time heating in A·√s/mm². */
  readonly K: number;
}

/**
 * The constant of short-time heating of a metal from its properties.
 *
 * Use it for a metal that `shortCircuitWithstand` does not know, or to see where its constants come from.
 *
 * $$K = \sqrt{\frac{Q_c(\beta + 20)}{\rho_{20}}}$$
 *
 * @param input volumetric heat, β, resistivity
 * @returns K in A·√s/mm²
 * @throws InputError when a field is missing or out of range
 * @source iec-60949, clause 3
 * @example adiabaticConstant({ volumetricHeatJPerKMm3: 0.00345, beta: 234.5, resistivity20OhmMm: 17.241e-6 }).K //=> 225.669
 */
export function adiabaticConstant(input: AdiabaticConstantInput): AdiabaticConstantResult {
  needInput('adiabaticConstant', input);
  const { volumetricHeatJPerKMm3, beta, resistivity20OhmMm } = input;
  needAbove('adiabaticConstant', 'volumetricHeatJPerKMm3', volumetricHeatJPerKMm3);
  needFinite('adiabaticConstant', 'beta', beta);
  if (!(beta > -20)) throw new InputError('adiabaticConstant', 'beta', 'above', beta, 'must be above -20');
  needAbove('adiabaticConstant', 'resistivity20OhmMm', resistivity20OhmMm);
  return { K: Math.sqrt((volumetricHeatJPerKMm3 * (beta + 20)) / resistivity20OhmMm) };
}
