import { describe, expect, it } from 'vitest';
import {
  as22759Alloy,
  as22759Silver,
  as22759Slash16,
  as22759Slash32,
  as22759Slash33,
  as22759Slash34,
  as22759Slash43,
  as22759Slash44,
  as22759Tin,
  awgStranded,
  insulatedWire,
} from 'loomwright';
import { insulatedRows, type PrintedWire } from '../support/insulated-rows.js';
import { transcribed, type Citation } from '../support/published.js';
import { conductorRows, fallsRowByRow, withinBand } from '../support/table-law.js';

const from = (place: string): Citation => ({ source: 'sae-as22759', place, status: 'memory' });
const printed: Citation = { source: 'ac-43-13-1b', place: 'table 11-9, page 11-23', status: 'published' };
const LIGHT: readonly PrintedWire[] = [
  ['26', '0.02', '-', '0.032', '1.4'],
  ['24', '0.024', '-', '0.037', '2.0'],
  ['22', '0.031', '-', '0.043', '2.9'],
  ['20', '0.037', '-', '0.050', '4.4'],
  ['18', '0.049', '-', '0.060', '6.6'],
  ['16', '0.058', '-', '0.068', '8.4'],
  ['14', '-', '-', '0.085', '12.9'],
  ['12', '-', '-', '0.103', '19.8'],
];
const DUAL: readonly PrintedWire[] = [
  ['26', '0.02', '-', '0.040', '1.7'],
  ['24', '0.024', '-', '0.045', '2.4'],
  ['22', '0.031', '-', '0.050', '3.4'],
  ['20', '0.037', '-', '0.058', '5.0'],
  ['18', '0.049', '-', '0.070', '7.6'],
  ['16', '0.058', '-', '0.077', '9.6'],
  ['14', '-', '-', '0.094', '14.3'],
  ['12', '-', '-', '0.112', '21.6'],
  ['10', '-', '-', '0.139', '33.6'],
  ['8', '-', '-', '0.195', '62'],
  ['6', '-', '-', '0.240', '97'],
  ['4', '-', '-', '0.300', '152'],
  ['2', '-', '-', '0.370', '235'],
  ['1', '-', '-', '0.415', '290'],
  ['1/0', '-', '-', '0.460', '370'],
];

describe('published', () => {
  conductorRows(as22759Tin, from('tin-plated copper'), [
    ['26', '41.3'],
    ['24', '26.2'],
    ['22', '16.2'],
    ['20', '9.88'],
    ['18', '6.23'],
    ['16', '4.81'],
    ['14', '3.06'],
    ['12', '2.02'],
    ['10', '1.26'],
    ['8', '0.701'],
    ['6', '0.445'],
    ['4', '0.28'],
    ['2', '0.183'],
    ['1', '0.149'],
    ['1/0', '0.116'],
  ]);
  conductorRows(as22759Silver, from('silver-plated copper'), [
    ['26', '38.4'],
    ['24', '24.3'],
    ['22', '15.1'],
    ['20', '9.19'],
    ['18', '5.79'],
    ['16', '4.52'],
    ['14', '2.88'],
    ['12', '1.9'],
    ['10', '1.19'],
    ['8', '0.658'],
    ['6', '0.418'],
    ['4', '0.264'],
    ['2', '0.17'],
    ['1', '0.139'],
    ['1/0', '0.108'],
  ]);
  conductorRows(as22759Alloy, from('silver-plated high-strength alloy'), [
    ['26', '44.8'],
    ['24', '28.4'],
    ['22', '17.5'],
    ['20', '10.7'],
  ]);
  for (const size of ['22', '20', '18', '16', '14', '12', '10']) {
    transcribed(`tin-plated ${size} AWG is as AC 43.13-1B prints it`, printed, () => {
      const of = (table: typeof awgStranded) => table.rows.find(([name]) => name === size)?.[1];
      expect(of(as22759Tin)).toBe(of(awgStranded));
    });
  }
  transcribed('the 24 AWG row of AC 43.13-1B prints the value of the high-strength alloy', printed, () => {
    const of = (table: typeof awgStranded) => table.rows.find(([name]) => name === '24')?.[1];
    expect(of(awgStranded)).toBe(of(as22759Alloy));
    expect(of(awgStranded)).not.toBe(of(as22759Tin));
  });
  insulatedRows(as22759Slash16, from('/16'), [
    ['24', '0.024', '-', '0.045', '2.4'],
    ['22', '0.031', '-', '0.050', '3.4'],
    ['20', '0.037', '-', '0.058', '5.1'],
    ['18', '0.049', '-', '0.068', '7.4'],
    ['16', '0.058', '-', '0.077', '9.4'],
    ['14', '-', '-', '0.091', '13.9'],
    ['12', '-', '-', '0.111', '21.1'],
    ['10', '-', '-', '0.137', '32.7'],
    ['8', '-', '-', '0.200', '63'],
    ['6', '-', '-', '0.248', '98'],
    ['4', '-', '-', '0.310', '155'],
    ['2', '-', '-', '0.390', '240'],
    ['1', '-', '-', '0.440', '295'],
    ['1/0', '-', '-', '0.490', '375'],
  ]);
  insulatedRows(as22759Slash32, from('/32'), LIGHT);
  insulatedRows(as22759Slash44, from('/44'), LIGHT);
  insulatedRows(as22759Slash33, from('/33, to No. 20 only'), LIGHT.slice(0, 4));
  insulatedRows(as22759Slash34, from('/34'), DUAL);
  insulatedRows(as22759Slash43, from('/43'), DUAL);
});

describe('laws', () => {
  for (const table of [as22759Tin, as22759Silver, as22759Alloy]) fallsRowByRow(table);
  // Tin on thin strands and rope lay; silver adds nothing, the alloy conducts 85 to 88 % as well.
  withinBand(as22759Tin, 1.04, 1.22);
  withinBand(as22759Silver, 1.0, 1.14);
  withinBand(as22759Alloy, 1.24, 1.32);
  it('light is thinner and lighter than medium, medium no thicker than two walls', () => {
    for (const [size] of as22759Slash32.rows) {
      const of = (wireTable: typeof as22759Slash16) => insulatedWire({ wireTable, size });
      if (size === '26') continue;
      expect(of(as22759Slash32).outerDiameterMm).toBeLessThan(of(as22759Slash16).outerDiameterMm);
      expect(of(as22759Slash32).massKgPerM!).toBeLessThan(of(as22759Slash16).massKgPerM!);
      expect(of(as22759Slash16).outerDiameterMm).toBeLessThanOrEqual(of(as22759Slash34).outerDiameterMm);
    }
  });
  it('says the class: 150 °C with tin, 200 °C with silver', () => {
    for (const [wireTable, tempC] of [
      [as22759Slash16, 150],
      [as22759Slash32, 150],
      [as22759Slash33, 200],
      [as22759Slash34, 150],
      [as22759Slash43, 200],
      [as22759Slash44, 200],
    ] as const) {
      expect(insulatedWire({ wireTable, size: '22' }).maxTempC, wireTable.key).toBe(tempC);
    }
  });
});
