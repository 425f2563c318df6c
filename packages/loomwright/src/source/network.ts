import type { Source } from './type.js';

/** Sources on networks of wires, grounds and loads. */
export const networkSources = {
  'sherman-morrison-1950': {
    title: 'Sherman and Morrison, adjustment of an inverse matrix corresponding to a change in one element',
    publisher: 'Annals of Mathematical Statistics 21, 124–127',
    edition: '1950',
    status: 'memory',
    note: 'The formula and its form for two changes (Woodbury). Answers are checked against networks solved anew.',
  },
  'tarjan-1972': {
    title: 'Tarjan, depth-first search and linear graph algorithms',
    publisher: 'SIAM Journal on Computing 1, 146–160',
    edition: '1972',
    status: 'memory',
    note: 'The search for ties that are the only one. Answers are checked against plain walks through the network.',
  },
} as const satisfies Record<string, Source>;
