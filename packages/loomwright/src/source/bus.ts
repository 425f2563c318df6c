import type { Source } from './type.js';

/** Sources on CAN: lines, frames and response times. */
export const busSources = {} as const satisfies Record<string, Source>;
