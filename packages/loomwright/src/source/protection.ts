import type { Source } from './type.js';

/** Sources on ampacity rules, fuses, channels and relays. */
export const protectionSources = {
  'us-33-cfr-183': {
    title: '33 CFR part 183 subpart I, electrical systems of recreational boats',
    publisher: 'US Coast Guard',
    status: 'published',
    note: 'Table 5 of 183.425 at 30 °C; 183.455 on overcurrent protection.',
  },
  'iso-8820-3': {
    title: 'ISO 8820-3, road vehicle blade fuses, time-current limits',
    publisher: 'ISO',
    edition: '2010 / 2015',
    status: 'published',
    note: 'Limits as printed in component data; the 110 % and the smaller-rating rows are from memory.',
  },
  'iso-8820-5': {
    title: 'ISO 8820-5, road vehicle fuse-links with axial terminals (bolt-in), types SF30 and SF51',
    publisher: 'ISO',
    status: 'memory',
    note: 'Limits and ratings from memory, with low confidence.',
  },
  'fuse-selection-guides': {
    title: 'Fuse selection guides of component makers: 75 % of rating, pulse cycles, wave shapes',
    publisher: 'component makers',
    status: 'published',
  },
  'iec-60364-4-43': {
    title: 'IEC 60364-4-43, protection against overcurrent',
    publisher: 'IEC',
    status: 'published',
    note: 'Clause 433.1 (In ≤ Iz, I2 ≤ 1.45 Iz) from memory; table 43A read in a copy, its other rows from memory.',
  },
  'blade-fuse-data': {
    title: 'Component data of blade fuses: cold resistance, drop at rated current, melting I²t',
    publisher: 'component makers',
    status: 'memory',
    note: 'Some rows read, most remembered; makers differ by about 15 % in resistance.',
  },
  'automotive-relay-notes': {
    title: 'Application notes of relay makers: coil temperature, suppression, contact loads',
    publisher: 'component makers',
    status: 'published',
  },
} as const satisfies Record<string, Source>;
