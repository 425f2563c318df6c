import { needAbove, needInput } from '../error/guard.js';

export interface AdiabaticConstantInput {
  /** Heat that the metal takes at 20 °C, in J/(K·mm³), above 0. */
  readonly volumetricHeatJPerKMm3: number;
  /** Reciprocal of the temperature coefficient of resistance at 0 °C: the β of the standards, in °C, above −20. */
  readonly betaC: number;
  /** Resistivity at 20 °C in Ω·mm²/m, above 0. */
  readonly resistivity20OhmMm2PerM: number;
}

export interface AdiabaticConstantResult {
  /** The K of the standards: the current that 1 mm² bears for one second a factor e in (β + T), in A/mm². */
  readonly oneSecondAPerMm2: number;
}

/**
 * The constant of short-time heating of a metal from its properties.
 *
 * Use it for a metal that `shortCircuitWithstand` does not know, or to see where its constants come from.
 *
 * $$K = \sqrt{\frac{Q_c(\beta + 20)}{\rho_{20}}}$$
 *
 * @param input volumetric heat, β, resistivity
 * @returns K in A·√s/mm², as the current density of one second
 * @throws InputError when a field is missing or out of range
 * @source iec-60949, clause 3
 * @example adiabaticConstant({ volumetricHeatJPerKMm3: 0.00345, betaC: 234.5, resistivity20OhmMm2PerM: 0.017241 }).oneSecondAPerMm2 //=> 225.669
 */
export function adiabaticConstant(input: AdiabaticConstantInput): AdiabaticConstantResult {
  needInput('adiabaticConstant', input);
  const { volumetricHeatJPerKMm3, betaC, resistivity20OhmMm2PerM } = input;
  needAbove('adiabaticConstant', 'volumetricHeatJPerKMm3', volumetricHeatJPerKMm3);
  needAbove('adiabaticConstant', 'betaC', betaC, -20);
  needAbove('adiabaticConstant', 'resistivity20OhmMm2PerM', resistivity20OhmMm2PerM);
  return { oneSecondAPerMm2: Math.sqrt((1000 * volumetricHeatJPerKMm3 * (betaC + 20)) / resistivity20OhmMm2PerM) };
}
