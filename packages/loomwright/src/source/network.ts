import type { Source } from './type.js';

/** Sources on networks of wires, grounds and loads. */
export const networkSources = {} as const satisfies Record<string, Source>;
