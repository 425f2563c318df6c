import type { Source } from './type.js';

/** Sources on conductors, their resistance, sizes and permitted voltage drop. */
export const conductorSources = {
  'nbs-hb-100': {
    title: 'Copper Wire Tables, NBS Handbook 100',
    publisher: 'US National Bureau of Standards',
    edition: '1966',
    status: 'published',
    note: 'Annealed copper standard: 0.15328 Ω·g/m², 8.89 g/cm³ at 20 °C. Its page tables are cited from memory.',
  },
  'nbs-circ-31': {
    title: 'Copper Wire Tables, NBS Circular 31',
    publisher: 'US National Bureau of Standards',
    edition: '1914',
    status: 'published',
    note: 'Values as reprinted in an electrical textbook (Floyd, Electric Circuit Fundamentals, 2nd ed.).',
  },
  'astm-b258': {
    title: 'ASTM B258, diameters and areas of solid round AWG wires',
    publisher: 'ASTM International',
    status: 'published',
    note: 'Defining ratio 92^(1/39) between No. 0000 (0.4600 in) and No. 36 (0.0050 in).',
  },
  'astm-b33': {
    title: 'ASTM B33, tin-coated soft or annealed copper wire',
    publisher: 'ASTM International',
    status: 'memory',
    note: 'Minimum conductivity by strand diameter, from memory.',
  },
  'iec-60889': {
    title: 'IEC 60889, hard-drawn aluminium wire (61 % IACS)',
    publisher: 'IEC',
    status: 'memory',
  },
  'iec-60228': {
    title: 'IEC 60228, conductors of insulated cables, maximum resistance at 20 °C',
    publisher: 'IEC',
    edition: '2004',
    status: 'published',
    note: 'Read in copies that agree; the simplified temperature factor 1/(1 + 0.004 (T − 20)) is its own.',
  },
  'iso-19642': {
    title: 'ISO 6722-1 / ISO 19642, road vehicle cables, maximum conductor resistance',
    publisher: 'ISO',
    edition: '2011 / 2019',
    status: 'memory',
    note: 'From memory; one row (1.5 mm²) confirmed by a published worked example.',
  },
  'sae-j1128': {
    title: 'SAE J1128, low-voltage primary cable, minimum conductor area',
    publisher: 'SAE International',
    status: 'memory',
    note: 'Minimum circular mils from memory. SAE sizes are 3 to 11 % smaller than AWG sizes of the same number.',
  },
  'sae-j1127': {
    title: 'SAE J1127, low-voltage battery cable, minimum conductor area',
    publisher: 'SAE International',
    status: 'memory',
  },
  'ac-43-13-1b': {
    title: 'AC 43.13-1B change 1, chapter 11, aircraft electrical systems',
    publisher: 'US Federal Aviation Administration',
    edition: '1998, change 1 of 2001',
    status: 'published',
    note: 'Public domain. Table 11-8 prints .366 V for a product of 0.4914 V: a printing error.',
  },
  'nec-chapter-9-table-8': {
    title: 'NFPA 70 chapter 9 table 8, conductor properties, d.c. resistance at 75 °C',
    publisher: 'NFPA',
    edition: '2011',
    status: 'published',
  },
  'bs-7671-4f3b': {
    title: 'BS 7671 table 4F3B, voltage drop of flexible cables at 60 °C',
    publisher: 'IET / BSI',
    status: 'published',
  },
} as const satisfies Record<string, Source>;
