import type { AmpacityTable, ConductorTable } from './type.js';

/** AC 43.13-1B table 11-9: the circular mils of the same wires. A row is the size and the printed area. */
export const ac4313CircularMils: readonly (readonly [size: string, circularMils: number])[] = [
  ['24', 475],
  ['22', 755],
  ['20', 1216],
  ['18', 1900],
  ['16', 2426],
  ['14', 3831],
  ['12', 5874],
  ['10', 9354],
  ['8', 16983],
  ['6', 26818],
  ['4', 42615],
  ['2', 66500],
  ['1', 81700],
  ['1/0', 104500],
  ['2/0', 133000],
  ['3/0', 166500],
  ['4/0', 210900],
];

/** AC 43.13-1B table 11-9: tin-plated stranded copper by AWG, maximum at 20 °C. */
export const awgStranded: ConductorTable = {
  kind: 'table',
  key: 'awg-stranded',
  source: 'ac-43-13-1b',
  status: 'published',
  place:
    'Table 11-9, page 11-23: tin-plated stranded copper, maximum ohm per 1000 ft at 20 °C; two decimals only from No. 8 up, hence to 8 % either way; the 24 AWG row prints the value of a high-strength alloy',
  sizes: 'awg',
  metal: 'tinned-copper',
  ratedTempC: 20,
  prints: 'ohm/kft',
  circularMils: ac4313CircularMils,
  rows: [
    ['24', 28.4],
    ['22', 16.2],
    ['20', 9.88],
    ['18', 6.23],
    ['16', 4.81],
    ['14', 3.06],
    ['12', 2.02],
    ['10', 1.26],
    ['8', 0.7],
    ['6', 0.44],
    ['4', 0.28],
    ['2', 0.18],
    ['1', 0.15],
    ['1/0', 0.12],
    ['2/0', 0.09],
    ['3/0', 0.07],
    ['4/0', 0.06],
  ],
};

/** AC 43.13-1B table 11-9: amperes of stranded copper in large, lightly used bundles at 70 °C ambient. */
export const ac4313Ampacity: AmpacityTable = {
  key: 'ac-43-13-1b-table-11-9',
  source: 'ac-43-13-1b',
  status: 'published',
  place:
    'Table 11-9, page 11-23: 70 °C ambient, 33 or more wires (9 from No. 8 up), at most 20 % of the bundle in use, 60 000 ft',
  sizes: 'awg',
  baseTempC: 70,
  classesC: [105, 150, 200],
  circularMils: ac4313CircularMils,
  rows: [
    ['24', 2.5, 4, 5],
    ['22', 3, 5, 6],
    ['20', 4, 7, 9],
    ['18', 6, 9, 12],
    ['16', 7, 11, 14],
    ['14', 10, 14, 18],
    ['12', 13, 19, 25],
    ['10', 17, 26, 32],
    ['8', 38, 57, 71],
    ['6', 50, 76, 97],
    ['4', 68, 103, 133],
    ['2', 95, 141, 179],
    ['1', 113, 166, 210],
    ['1/0', 128, 192, 243],
    ['2/0', 147, 222, 285],
    ['3/0', 172, 262, 335],
    ['4/0', 204, 310, 395],
  ],
};
