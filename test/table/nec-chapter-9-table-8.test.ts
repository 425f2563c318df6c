import { describe, expect, it } from 'vitest';
import { necChapter9Table8Aluminium, necChapter9Table8Coated, necChapter9Table8Uncoated } from 'loomwright';
import type { Citation } from '../support/published.js';
import { conductorRows, fallsRowByRow, withinBand } from '../support/table-law.js';

const cite: Citation = {
  source: 'nec-chapter-9-table-8',
  place: '2011, stranded, d.c. ohm per 1000 ft at 75 °C',
  status: 'published',
};

/** AWG, uncoated copper, coated copper, aluminium. */
const printed: readonly (readonly [string, string, string, string])[] = [
  ['18', '7.95', '8.45', '13.1'],
  ['16', '4.99', '5.29', '8.21'],
  ['14', '3.14', '3.26', '5.17'],
  ['12', '1.98', '2.05', '3.25'],
  ['10', '1.24', '1.29', '2.04'],
  ['8', '0.778', '0.809', '1.28'],
  ['6', '0.491', '0.510', '0.808'],
  ['4', '0.308', '0.321', '0.508'],
  ['3', '0.245', '0.254', '0.403'],
  ['2', '0.194', '0.201', '0.319'],
  ['1', '0.154', '0.160', '0.253'],
  ['1/0', '0.122', '0.127', '0.201'],
  ['2/0', '0.0967', '0.101', '0.159'],
  ['3/0', '0.0766', '0.0797', '0.126'],
  ['4/0', '0.0608', '0.0626', '0.100'],
];
const column = (i: 1 | 2 | 3): (readonly [string, string])[] => printed.map((row) => [row[0], row[i]]);

describe('published', () => {
  conductorRows(necChapter9Table8Uncoated, cite, column(1));
  conductorRows(necChapter9Table8Coated, cite, column(2));
  conductorRows(necChapter9Table8Aluminium, cite, column(3));
});

describe('laws', () => {
  for (const table of [necChapter9Table8Uncoated, necChapter9Table8Coated, necChapter9Table8Aluminium]) {
    fallsRowByRow(table);
    it(`${table.key} holds at 75 °C`, () => expect(table.ratedTempC).toBe(75));
  }
  // Brought to 20 °C, the stranded wires are the solid ones plus the 2 % that the lay adds.
  withinBand(necChapter9Table8Uncoated, 1.018, 1.028);
  withinBand(necChapter9Table8Coated, 1.045, 1.09);
  withinBand(necChapter9Table8Aluminium, 1.01, 1.035, [], 0.028264);

  it('the coat adds 3 to 6.5 %', () => {
    for (const [i, [size, uncoated]] of necChapter9Table8Uncoated.rows.entries()) {
      const ratio = necChapter9Table8Coated.rows[i]![1] / uncoated;
      expect(ratio, size).toBeGreaterThan(1.029);
      expect(ratio, size).toBeLessThan(1.065);
    }
  });
});
