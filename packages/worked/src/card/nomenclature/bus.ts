import type { Terms } from './type.js';

/** Names of CAN lines, frames and their times. */
export const busTerms = {} as const satisfies Terms;
