import { needBetween, needInput, needInteger } from '../error/guard.js';

export interface AcidVoltageInput {
  /** Density of the acid over that of water as the hydrometer shows it, 1.0 to 1.4. */
  readonly densityRatio: number;
  /** Temperature of the acid in °C, −40 to 60. */
  readonly acidTempC: number;
  /** Cells in series, 1 or more: six in a 12 V battery. */
  readonly cellCount: number;
}

export interface AcidVoltageResult {
  /** The density that the hydrometer would show at 80 °F (26.7 °C). */
  readonly correctedDensityRatio: number;
  /** Volts at rest of one cell, and of all. */
  readonly cellV: number;
  readonly openV: number;
}

/**
 * Volts at rest of a wet lead battery from the density of its acid, the reading corrected for temperature.
 *
 * Use it beside the volts at the posts: cells that differ by more than 0.05 in density are not alike any more, which
 * volts at the posts do not show. Not for batteries that were just topped up, nor for closed ones.
 *
 * $$d_{80} = d + 0.004\,\frac{T_\mathrm{F} - 80}{10} \qquad V = N\,(d_{80} + 0.845)$$
 *
 * @param input reading of the hydrometer, temperature of the acid, cells
 * @returns density corrected to 26.7 °C, volts of a cell and of the battery
 * @throws InputError when a field is missing or out of range
 * Valid near room temperature; the correction is a straight line that the source does not bound.
 * @source acid-density-correction (0.004 each 10 °F from 80 °F); lead-cell-volts (density plus 0.845, from memory)
 * @example acidVoltage({ densityRatio: 1.265, acidTempC: 26.666666667, cellCount: 6 }).openV //=> 12.66
 */
export function acidVoltage(input: AcidVoltageInput): AcidVoltageResult {
  const fn = 'acidVoltage';
  needInput(fn, input);
  const { densityRatio, acidTempC, cellCount } = input;
  needBetween(fn, 'densityRatio', densityRatio, 1, 1.4, densityRatio > 100 ? '1265 is 1.265' : undefined);
  needBetween(fn, 'acidTempC', acidTempC, -40, 60);
  needInteger(fn, 'cellCount', cellCount, 1);
  const correctedDensityRatio = densityRatio + (0.004 * (acidTempC * 1.8 + 32 - 80)) / 10;
  const cellV = correctedDensityRatio + 0.845;
  return { correctedDensityRatio, cellV, openV: cellV * cellCount };
}
