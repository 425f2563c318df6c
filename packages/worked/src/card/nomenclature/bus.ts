import type { Terms } from './type.js';

/** Names of CAN lines, frames and their times. */
export const busTerms = {
  idBits: { label: 'Identifier', symbol: 'n_\\mathrm{id}' },
  dataByteCount: { label: 'Bytes of data', symbol: 's' },
  bitRateBitPerS: { label: 'Bit rate', symbol: 'f_\\mathrm{bit}' },
  stuffableBits: { label: 'From the start to the checksum', symbol: 'n_\\mathrm{head}' },
  stuffBits: { label: 'Stuff bits at most', symbol: 'n_\\mathrm{stuff}' },
  leastBits: { label: 'Frame without stuff bits', symbol: 'n_\\mathrm{min}' },
  mostBits: { label: 'Frame with most stuff bits', symbol: 'n_\\mathrm{max}' },
  mostWithSpaceBits: { label: 'With the space after it', symbol: 'n' },
  mostWithSpaceS: { label: 'Holds the line for', symbol: 'C' },
  loadFraction: { label: 'Load of the line', symbol: 'U' },
  framesPerS: { label: 'Frames in a second', symbol: 'f' },
  faultCount: { label: 'Faults', symbol: 'k' },
  worstResponseS: { label: 'Longest response', symbol: 'R' },
} as const satisfies Terms;
