import type { Terms } from './type.js';

/** Names of batteries, alternators and what they feed. */
export const supplyTerms = {} as const satisfies Terms;
