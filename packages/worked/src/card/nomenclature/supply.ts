import type { Terms } from './type.js';

/** Names of batteries, alternators and what they feed. */
export const supplyTerms = {
  ratedChargeAh: { label: 'Rated charge', symbol: 'C' },
  ratedTimeH: { label: 'For a discharge over', symbol: 'H' },
  peukertExponent: { label: 'Exponent', symbol: 'k' },
  startChargeFraction: { label: 'Charge at the start', symbol: 'q_1' },
  endChargeFraction: { label: 'Charge to be left', symbol: 'q_2' },
  runTimeH: { label: 'It lasts', symbol: 't' },
  drawnAh: { label: 'Drawn in that time', symbol: 'Q' },
  fullTimeH: { label: 'From full to empty', symbol: 't_\\mathrm{full}' },
  plainTimeH: { label: 'Plain ampere-hours would promise', symbol: 't_\\mathrm{plain}' },
  afterStagesFraction: { label: 'Charge left after the stages', symbol: 'q' },
  effectiveChargeAh: { label: 'Whole charge at this current', symbol: 'C_I' },
  ratedCurrentA: { label: 'Current of the rated charge', symbol: 'I_H' },
  unreferencedRatio: { label: 'C / Iᵏ would be off by a factor of', symbol: 'f' },
  firstA: { label: 'One current', symbol: 'I_1' },
  firstTimeH: { label: 'Lasts', symbol: 't_1' },
  secondA: { label: 'A larger current', symbol: 'I_2' },
  secondTimeH: { label: 'Lasts', symbol: 't_2' },
  firstChargeAh: { label: 'Charge at the first', symbol: 'C_1' },
  secondChargeAh: { label: 'Charge at the second', symbol: 'C_2' },
} as const satisfies Terms;
