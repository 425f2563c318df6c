import { describe, expect, it } from 'vitest';
import { ac4313Ampacity, ac4313CircularMils, awgStranded, awgToAreaMm2 } from 'loomwright';
import { transcribed, type Citation } from '../support/published.js';
import { conductorRows, fallsRowByRow, overGeometry } from '../support/table-law.js';

const cite: Citation = { source: 'ac-43-13-1b', place: 'change 1, table 11-9, page 11-23', status: 'published' };

/** AWG, amperes at 105, 150 and 200 °C, ohm per 1000 ft at 20 °C, circular mils. */
const printed: readonly (readonly [string, number, number, number, string, number])[] = [
  ['24', 2.5, 4, 5, '28.40', 475],
  ['22', 3, 5, 6, '16.20', 755],
  ['20', 4, 7, 9, '9.88', 1216],
  ['18', 6, 9, 12, '6.23', 1900],
  ['16', 7, 11, 14, '4.81', 2426],
  ['14', 10, 14, 18, '3.06', 3831],
  ['12', 13, 19, 25, '2.02', 5874],
  ['10', 17, 26, 32, '1.26', 9354],
  ['8', 38, 57, 71, '0.70', 16983],
  ['6', 50, 76, 97, '0.44', 26818],
  ['4', 68, 103, 133, '0.28', 42615],
  ['2', 95, 141, 179, '0.18', 66500],
  ['1', 113, 166, 210, '0.15', 81700],
  ['1/0', 128, 192, 243, '0.12', 104500],
  ['2/0', 147, 222, 285, '0.09', 133000],
  ['3/0', 172, 262, 335, '0.07', 166500],
  ['4/0', 204, 310, 395, '0.06', 210900],
];

describe('published', () => {
  conductorRows(
    awgStranded,
    cite,
    printed.map((row) => [row[0], row[4]]),
  );
  for (const [awg, a105, a150, a200, , circularMils] of printed) {
    transcribed(`No. ${awg}: ${a105}, ${a150}, ${a200} A`, cite, () =>
      expect(ac4313Ampacity.rows.find(([size]) => size === awg)).toEqual([awg, a105, a150, a200]),
    );
    transcribed(`No. ${awg}: ${circularMils} circular mils`, cite, () =>
      expect(ac4313CircularMils.find(([size]) => size === awg)).toEqual([awg, circularMils]),
    );
  }
  it('has 17 rows of each, in one order', () => {
    const sizes = printed.map(([awg]) => awg);
    expect(ac4313Ampacity.rows.map(([awg]) => awg)).toEqual(sizes);
    expect(ac4313CircularMils.map(([awg]) => awg)).toEqual(sizes);
    expect(ac4313Ampacity).toMatchObject({ baseTempC: 70, classesC: [105, 150, 200], sizes: 'awg' });
  });
});

describe('laws', () => {
  fallsRowByRow(awgStranded);
  it('is 3 to 18 % more than ideal copper of its area, as far as the print is fine enough to say', () => {
    for (const [size, printedOhm] of awgStranded.rows) {
      const times = overGeometry(awgStranded, size);
      // From No. 8 up the print has two decimals: half a unit of the last one either way.
      const half = printedOhm < 1 ? 0.005 / printedOhm : 0;
      if (size === '24') continue;
      expect(times * (1 + half), size).toBeGreaterThan(1.03);
      expect(times * (1 - half), size).toBeLessThan(1.18);
    }
  });
  it('No. 24 is 30 % more than copper: an alloy’s figure, on the safe side, and the table says so', () => {
    expect(overGeometry(awgStranded, '24')).toBeCloseTo(1.3, 2);
    expect(awgStranded.place).toContain('high-strength alloy');
  });
  it('areas lie between 11 % below and 20 % above the solid AWG wire', () => {
    for (const [awg, circularMils] of ac4313CircularMils) {
      const share = (circularMils * 5.067075e-4) / awgToAreaMm2(awg);
      expect(share, awg).toBeGreaterThan(0.89);
      expect(share, awg).toBeLessThan(1.2);
    }
  });
  it('amperes grow with size and class, as the root of the rise above 70 °C does, within 14 % and a half ampere', () => {
    for (const [i, [awg, ...amperes]] of ac4313Ampacity.rows.entries()) {
      const [a105, a150, a200] = amperes as [number, number, number];
      expect(a150, awg).toBeGreaterThan(a105);
      expect(a200, awg).toBeGreaterThan(a150);
      if (i > 0) {
        ac4313Ampacity.rows[i - 1]!.slice(1).forEach((less, j) =>
          expect(amperes[j], awg).toBeGreaterThan(less as number),
        );
      }
      for (const [amps, classC] of [
        [a150, 150],
        [a200, 200],
      ] as const) {
        const expected = a105 * Math.sqrt((classC - 70) / (105 - 70));
        expect(Math.abs(amps - expected), `${awg} at ${classC} °C`).toBeLessThanOrEqual(0.14 * expected + 0.5);
      }
    }
  });
});
