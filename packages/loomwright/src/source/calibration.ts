import type { Source } from './type.js';

/** Sources on calibration tables, ratiometric sensors and pedal tracks. */
export const calibrationSources = {
  'imai-iri-1988': {
    title: 'Imai and Iri, polygonal approximations of a curve: formulations and algorithms',
    publisher: 'Computational Morphology, North-Holland, 71–86',
    edition: '1988',
    status: 'published',
    note: 'The method as public documentation describes it; the answers are checked against every choice tried.',
  },
} as const satisfies Record<string, Source>;
