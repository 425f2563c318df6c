import type { Terms } from './type.js';

/** Names of networks, their nodes and branches. */
export const networkTerms = {
  network: { label: 'Network', symbol: 'N' },
  reference: { label: 'Node that counts as 0 V', symbol: '0' },
  grounds: { label: 'Grounds', symbol: 'G' },
  pairs: { label: 'Two at a time as well', symbol: 'n_2' },
  watched: { label: 'Sensors and what they bear', symbol: '\\Delta_\\mathrm{allowed}' },
  limited: { label: 'Wires not laid for current', symbol: 'I_\\mathrm{allowed}' },
  worstLost: { label: 'Worst to lose', symbol: 'k' },
  worstShiftMv: { label: 'Sensor shifted by up to', symbol: '\\Delta_\\mathrm{worst}' },
  worstLimitedA: { label: 'In a wire not laid for it, up to', symbol: 'I_\\mathrm{stray}' },
  cutOffCount: { label: 'Points cut off at once', symbol: 'n_\\mathrm{off}' },
  states: { label: 'States', symbol: 'S' },
  faults: { label: 'Faults', symbol: 'F' },
  relays: { label: 'Relays', symbol: 'K' },
  aliveV: { label: 'Counts as alive above', symbol: 'V_\\mathrm{alive}' },
  unwantedCount: { label: 'Alive although it ought to be dead', symbol: 'n' },
  worstPath: { label: 'The most volts come by', symbol: 'p' },
  worstSneakV: { label: 'Most volts where there ought to be none', symbol: 'V_\\mathrm{sneak}' },
  coilLeftV: { label: 'Left at a coil that is in', symbol: 'V_\\mathrm{coil}' },
  heldRelayCount: { label: 'Relays held in', symbol: 'n_\\mathrm{held}' },
} as const satisfies Terms;
