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
  'ratiometric-sensor-pages': {
    title: 'Ratiometric pressure sensors: 10, 50 and 90 % of the supply; 0.5 to 4.5 V and 0 to 5 V spans',
    publisher: 'sensor makers, data pages',
    status: 'published',
    note: 'Common practice of makers, not a standard: the data sheet of the part decides.',
  },
  'pedal-service-texts': {
    title: 'Service manuals of road cars, 2006 to 2021: trouble codes of two- and three-track throttle pedals',
    publisher: 'vehicle makers',
    status: 'published',
    note: 'Figures of single models, not a standard: the maker of the pedal and of the controller decide.',
  },
} as const satisfies Record<string, Source>;
