import { describe, expect, it } from 'vitest';
import { doubleInsulatedSheet, hookUpFluoropolymer, hookUpMetric, insulatedWire, standardWallSheet } from 'loomwright';
import { insulatedRows } from '../support/insulated-rows.js';
import { computed, expectPrinted, type Citation } from '../support/published.js';
import { conductorRows, fallsRowByRow, withinBand } from '../support/table-law.js';

const hookUp: Citation = { source: 'hook-up-data', place: 'walls, diameters, ohm/km', status: 'published' };
const auto: Citation = { source: 'auto-cable-data', place: 'strands and diameters', status: 'published' };

describe('published', () => {
  insulatedRows(hookUpFluoropolymer, hookUp, [
    ['0.35', '-', '0.25', '1.30', '-'],
    ['0.5', '-', '0.25', '1.40', '-'],
    ['0.75', '-', '0.25', '1.70', '-'],
    ['1', '-', '0.25', '1.80', '-'],
    ['1.5', '-', '0.30', '2.20', '-'],
    ['2', '-', '0.30', '2.45', '-'],
    ['2.5', '-', '0.40', '2.95', '-'],
    ['4', '-', '0.40', '3.40', '-'],
    ['6', '-', '0.50', '4.20', '-'],
    ['10', '-', '0.50', '5.80', '-'],
    ['16', '-', '0.60', '7.00', '-'],
    ['25', '-', '0.60', '8.80', '-'],
    ['35', '-', '0.70', '10.4', '-'],
    ['50', '-', '0.80', '12.2', '-'],
    ['70', '-', '1.0', '14.6', '-'],
    ['95', '-', '1.2', '17.2', '-'],
  ]);
  conductorRows(hookUpMetric, hookUp, [
    ['0.35', '49.5'],
    ['0.5', '36.0'],
    ['0.75', '22.7'],
    ['1', '19.0'],
    ['1.5', '11.7'],
    ['2', '9.45'],
    ['2.5', '6.86'],
    ['4', '4.51'],
    ['6', '3.05'],
    ['10', '1.68'],
    ['16', '1.13'],
    ['25', '0.734'],
    ['35', '0.511'],
    ['50', '0.358'],
    ['70', '0.270'],
    ['95', '0.210'],
  ]);
  insulatedRows(standardWallSheet, auto, [
    ['1.13', '-', '-', '2.2', '-'],
    ['1.84', '-', '-', '2.6', '-'],
    ['2.9', '-', '-', '3.0', '-'],
    ['4.59', '-', '-', '4.0', '-'],
  ]);
  insulatedRows(doubleInsulatedSheet, auto, [
    ['1.13', '-', '-', '3.8', '-'],
    ['1.84', '-', '-', '4.2', '-'],
    ['2.9', '-', '-', '4.9', '-'],
    ['4.59', '-', '-', '5.7', '-'],
  ]);
  for (const [strands, print] of [
    [14, '1.13'],
    [23, '1.84'],
    [36, '2.90'],
    [57, '4.59'],
  ] as const) {
    computed(`${strands} strands of 0.32 mm are ${print} mm²`, auto, () => {
      const { areaMm2 } = insulatedWire({ wireTable: standardWallSheet, size: String(Number(print)) });
      // The table's area is the nominal of its name; the sheet rounds up to 0.01.
      expectPrinted(strands * (Math.PI / 4) * 0.32 ** 2, print, 1);
      expect(areaMm2).toBe(Number(print));
    });
  }
});

describe('laws', () => {
  fallsRowByRow(hookUpMetric);
  // Strands of some sizes add up to more than the nominal area: 133 of 0.32 mm are 10.7 mm².
  withinBand(hookUpMetric, 0.97, 1.17);
  it('two covers are thicker than one', () => {
    for (const [size] of standardWallSheet.rows) {
      const outer = (wireTable: typeof standardWallSheet) => insulatedWire({ wireTable, size }).outerDiameterMm;
      expect(outer(doubleInsulatedSheet)).toBeGreaterThan(outer(standardWallSheet));
    }
  });
});
