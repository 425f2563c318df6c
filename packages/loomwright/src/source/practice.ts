import type { Source } from './type.js';

/** What the trade does without a standard to cite, and what we worked out ourselves. */
export const practiceSources = {
  'common-practice': {
    title: 'Common practice of the trade',
    publisher: 'none',
    status: 'common-practice',
    note: 'A rule of thumb. It names no authority and is no substitute for one.',
  },
  'circuit-theory': {
    title: "Ohm's and Kirchhoff's laws, energy balance",
    publisher: 'none',
    status: 'derived',
  },
  'given-by-caller': {
    title: 'A limit that you gave',
    publisher: 'none',
    status: 'derived',
  },
  'service-drop-limits': {
    title: 'Voltage-drop limits printed in vehicle service and tester manuals',
    publisher: 'service literature',
    status: 'published',
  },
} as const satisfies Record<string, Source>;
