import type { Terms } from './type.js';

/** Names of networks, their nodes and branches. */
export const networkTerms = {} as const satisfies Terms;
