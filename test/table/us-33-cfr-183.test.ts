import { describe, expect, it } from 'vitest';
import { us33Cfr183Ampacity } from 'loomwright';
import { expectPrinted, transcribed, type Citation } from '../support/published.js';

const cite: Citation = { source: 'us-33-cfr-183', place: '183.425 table 5', status: 'published' };

/** AWG, then amperes at 60, 75, 80, 90, 105, 125, 200 °C. */
const printed: readonly (readonly [string, ...number[]])[] = [
  ['18', 10, 10, 15, 20, 20, 25, 25],
  ['16', 15, 15, 20, 25, 25, 30, 35],
  ['14', 20, 20, 25, 30, 35, 40, 45],
  ['12', 25, 25, 35, 40, 45, 50, 55],
  ['10', 40, 40, 50, 55, 60, 70, 70],
  ['8', 55, 65, 70, 70, 80, 90, 100],
  ['6', 80, 95, 100, 100, 120, 125, 135],
  ['4', 105, 125, 130, 135, 160, 170, 180],
  ['3', 120, 145, 150, 155, 180, 195, 210],
  ['2', 140, 170, 175, 180, 210, 225, 240],
  ['1', 165, 195, 210, 210, 245, 265, 280],
  ['1/0', 195, 230, 245, 245, 285, 305, 325],
  ['2/0', 225, 265, 285, 285, 330, 355, 370],
  ['3/0', 260, 310, 330, 330, 385, 410, 430],
  ['4/0', 300, 360, 385, 385, 445, 475, 510],
];

describe('published', () => {
  for (const [awg, ...amperes] of printed) {
    transcribed(`No. ${awg}: ${amperes.join(', ')} A`, cite, () =>
      expect(us33Cfr183Ampacity.rows.find(([size]) => size === awg)).toEqual([awg, ...amperes]),
    );
  }
  it('has 15 rows and 7 classes at 30 °C', () => {
    expect(us33Cfr183Ampacity.rows).toHaveLength(15);
    expect(us33Cfr183Ampacity).toMatchObject({
      baseTempC: 30,
      classesC: [60, 75, 80, 90, 105, 125, 200],
      sizes: 'awg',
    });
    for (const row of us33Cfr183Ampacity.rows) expect(row).toHaveLength(8);
  });
});

describe('independent', () => {
  // A trade table that quotes the same regulation prints the amperes of the 105 °C class in an engine space, × 0.85.
  it('agrees with a second print of its 105 °C column, to half an ampere', () => {
    const engineSpace: Readonly<Record<string, string>> = {
      '18': '17',
      '16': '21',
      '14': '30',
      '12': '38',
      '10': '51',
      '8': '68',
      '6': '102',
      '4': '136',
      '3': '153',
      '2': '178',
      '1': '208',
      '1/0': '242',
      '2/0': '280',
      '3/0': '327',
      '4/0': '378',
    };
    const column = us33Cfr183Ampacity.classesC.indexOf(105) + 1;
    expect(Object.keys(engineSpace)).toHaveLength(15);
    for (const row of us33Cfr183Ampacity.rows) {
      expectPrinted((row[column] as number) * 0.85, engineSpace[row[0]]!);
    }
  });
});

describe('laws', () => {
  it('amperes never fall with the class and always grow with the size', () => {
    for (const [i, [awg, ...amperes]] of us33Cfr183Ampacity.rows.entries()) {
      for (let j = 1; j < amperes.length; j++) expect(amperes[j], awg).toBeGreaterThanOrEqual(amperes[j - 1]!);
      if (i > 0) {
        us33Cfr183Ampacity.rows[i - 1]!.slice(1).forEach((less, j) =>
          expect(amperes[j], awg).toBeGreaterThan(less as number),
        );
      }
    }
  });
  it('from No. 8 up the 105 °C class is the 75 °C class times the root of their rises, within 6 %', () => {
    const [c75, c105] = [75, 105].map((c) => us33Cfr183Ampacity.classesC.indexOf(c) + 1) as [number, number];
    for (const row of us33Cfr183Ampacity.rows.slice(5)) {
      const expected = (row[c75] as number) * Math.sqrt(75 / 45);
      expect(Math.abs((row[c105] as number) / expected - 1), row[0]).toBeLessThan(0.06);
    }
  });
});
