import type { Terms } from './type.js';

/** Names of level senders and tanks. */
export const levelTerms = {
  stepOhm: { label: 'Ω with each contact closed', symbol: 'R_k' },
  stepLevelFraction: { label: 'Level at each contact', symbol: 'h_k' },
  overlapFraction: { label: 'Two contacts closed over', symbol: 'o' },
  senderIdleOhm: { label: 'With no contact closed', symbol: 'R_0' },
  strapping: { label: 'Litres at equal steps of the level', symbol: 'V_h' },
  emptyOhm: { label: 'Sender at empty', symbol: 'R_\\mathrm{empty}' },
  fullOhm: { label: 'Sender at full', symbol: 'R_\\mathrm{full}' },
  emptyV: { label: 'Pin at empty', symbol: 'V_\\mathrm{empty}' },
  fullV: { label: 'Pin at full', symbol: 'V_\\mathrm{full}' },
  worstUncertaintyL: { label: 'Off by at most', symbol: 'u_L' },
  worstUncertaintyFraction: { label: 'The same as a share of the level', symbol: 'u' },
  straightWorstErrorFraction: { label: 'Read as a smooth sender, off by up to', symbol: 'e' },
  openThresholdV: { label: 'Broken wire above', symbol: 'V_\\mathrm{open}' },
  shortThresholdV: { label: 'Shorted wire below', symbol: 'V_\\mathrm{short}' },
} as const satisfies Terms;
