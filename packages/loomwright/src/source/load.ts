import type { Source } from './type.js';

/** Sources on loads, lamps, coils and contacts. */
export const loadSources = {
  'un-r37': {
    title: 'UN Regulation 37, filament lamps for vehicles, category sheets',
    publisher: 'UN Economic Commission for Europe',
    status: 'memory',
    note: 'Nominal watts of H1, H3 and H4 read; test volts, largest watts and light from memory.',
  },
  'lamp-rerating': {
    title:
      'Rerating of filament lamps: powers of the voltage ratio (a handbook for electrical engineers, 11th edition)',
    publisher: 'handbook and lamp makers',
    status: 'published',
    note: 'Life exponent 12 (lamp maker), 13 (common) or 12 to 16 (handbook). Halogen lamps under-run do not follow it.',
  },
  'tungsten-filament': {
    title: 'Tungsten: resistance with the 1.2th power of absolute temperature, radiation with the 4th',
    publisher: 'textbooks of lamp physics',
    status: 'memory',
    note: 'Together they give current with the 0.54th power of volts, beside the 0.55 of the rerating tables.',
  },
  'vehicle-load-guide': {
    title: 'Typical amperage guide of a wire and cable catalogue',
    publisher: 'wire trade',
    edition: '2024–25',
    status: 'published',
  },
  'vehicle-load-textbook': {
    title: 'List of electrical loads of a car in a textbook of automobile electronics',
    publisher: 'textbook',
    status: 'memory',
    note: 'Its title says 14 V; its amperes are its watts over 12 V, rounded to the half.',
  },
  'vehicle-service-data': {
    title: 'Resistances and currents of coils, heaters and solenoids printed in vehicle service manuals',
    publisher: 'service literature',
    status: 'published',
  },
  'switch-maker-guides': {
    title: 'Selection rules of switch makers: multiples of the steady current by kind of load',
    publisher: 'component makers',
    status: 'published',
  },
  'relay-module-manual': {
    title: 'Manual of relay modules: inrush by kind of load',
    publisher: 'instrument makers',
    status: 'published',
  },
  'mil-r-5757': {
    title: 'MIL-R-5757J, electromagnetic relays, lamp load and life tests',
    publisher: 'US Department of Defense',
    status: 'published',
    note: 'Public domain.',
  },
  'mil-prf-22885': {
    title: 'MIL-PRF-22885/71C, push-button switches, contact ratings of table III',
    publisher: 'US Department of Defense',
    status: 'published',
    note: 'Public domain.',
  },
} as const satisfies Record<string, Source>;
