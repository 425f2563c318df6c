import type { Source } from './type.js';

/** Sources on batteries, cranking, alternators and charging. */
export const supplySources = {} as const satisfies Record<string, Source>;
