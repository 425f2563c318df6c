import { describe, expect, it } from 'vitest';
import {
  gxlSheet,
  insulatedWire,
  mm2ToCircularMils,
  saeGpt,
  saeGxl,
  saeHdt,
  saeJ1128,
  saeSgt,
  saeSgx,
  saeSxl,
  saeTxl,
} from 'loomwright';
import { insulatedRows, type PrintedWire } from '../support/insulated-rows.js';
import { computed, expectPrinted, expectWithin, type Citation } from '../support/published.js';

// Walls from memory; conductor from strands that trade notes print; outer diameter and mass worked out from both.
const from = (place: string): Citation => ({ source: 'sae-j1128-dimensions', place, status: 'derived' });
const MEDIUM: readonly PrintedWire[] = [
  ['20', '0.0378', '0.023', '0.084', '6.0'],
  ['18', '0.0470', '0.023', '0.093', '7.9'],
  ['16', '0.0565', '0.023', '0.102', '10.8'],
  ['14', '0.0710', '0.023', '0.117', '15.7'],
  ['12', '0.0895', '0.026', '0.141', '24.2'],
  ['10', '0.1130', '0.031', '0.175', '37.9'],
  ['8', '0.1425', '0.037', '0.217', '59.4'],
];
const THICK: readonly PrintedWire[] = [
  ['20', '0.0378', '0.030', '0.098', '7.2'],
  ['18', '0.0470', '0.030', '0.107', '9.2'],
  ['16', '0.0565', '0.032', '0.120', '12.7'],
  ['14', '0.0710', '0.035', '0.141', '18.7'],
  ['12', '0.0895', '0.037', '0.163', '27.4'],
  ['10', '0.1130', '0.041', '0.195', '41.4'],
  ['8', '0.1425', '0.043', '0.229', '61.9'],
];
const BATTERY: readonly PrintedWire[] = [
  ['6', '-', '0.060', '0.306', '108'],
  ['4', '-', '0.065', '0.353', '151'],
  ['2', '-', '0.065', '0.419', '237'],
  ['1', '-', '0.065', '0.452', '288'],
  ['1/0', '-', '0.065', '0.493', '359'],
  ['2/0', '-', '0.065', '0.538', '445'],
  ['3/0', '-', '0.078', '0.616', '570'],
  ['4/0', '-', '0.078', '0.679', '724'],
];

describe('published', () => {
  insulatedRows(saeTxl, from('TXL'), [
    ['22', '0.0300', '0.016', '0.062', '3.5'],
    ['20', '0.0378', '0.016', '0.070', '5.0'],
    ['18', '0.0470', '0.016', '0.079', '6.8'],
    ['16', '0.0565', '0.016', '0.088', '9.6'],
    ['14', '0.0710', '0.016', '0.103', '14.3'],
    ['12', '0.0895', '0.018', '0.126', '22.1'],
    ['10', '0.1130', '0.020', '0.153', '34.4'],
  ]);
  insulatedRows(saeGxl, from('GXL'), MEDIUM);
  insulatedRows(saeGpt, from('GPT'), MEDIUM);
  insulatedRows(saeSxl, from('SXL'), THICK);
  insulatedRows(saeHdt, from('HDT, wall of SXL from memory'), THICK);
  insulatedRows(gxlSheet, { source: 'gxl-data-sheet', place: 'diameters and weights', status: 'published' }, [
    ['20', '-', '-', '0.096', '7'],
    ['18', '-', '-', '0.102', '9'],
    ['16', '-', '-', '0.118', '13'],
    ['14', '-', '-', '0.137', '19'],
    ['12', '-', '-', '0.160', '26'],
    ['10', '-', '-', '0.191', '40'],
    ['8', '-', '-', '0.234', '64'],
  ]);
  const battery: Citation = {
    source: 'sae-j1127-dimensions',
    place: 'derived from walls of low confidence',
    status: 'derived',
  };
  insulatedRows(saeSgt, battery, BATTERY);
  insulatedRows(saeSgx, battery, BATTERY);

  // The sheet titled GXL against the walls: its diameters fit SXL within 5 %, those of GXL are 7 to 15 % less.
  const sheet: Citation = { source: 'gxl-data-sheet', place: 'outer diameters, in', status: 'published' };
  for (const [size] of gxlSheet.rows) {
    computed(`SAE ${size} of the sheet fits the SXL wall`, sheet, () => {
      const mm = (wireTable: typeof saeSxl) => insulatedWire({ wireTable, size }).outerDiameterMm;
      expectWithin(mm(saeSxl), mm(gxlSheet), 0.05);
      const less = 1 - mm(saeGxl) / mm(gxlSheet);
      expect(less).toBeGreaterThan(0.07);
      expect(less).toBeLessThan(0.15);
    });
  }
});

describe('independent', () => {
  // Strands and their mils; seven lie three across, nineteen five, sixteen in a bunch of 47 mil.
  const STRANDS: Readonly<Record<string, readonly [count: number, mil: number, across: number]>> = {
    22: [7, 10, 3],
    20: [7, 12.6, 3],
    18: [16, 10, 4.7],
    16: [19, 11.3, 5],
    14: [19, 14.2, 5],
    12: [19, 17.9, 5],
    10: [19, 22.6, 5],
    8: [19, 28.5, 5],
  };
  it('diameters are those of the strands and two walls, masses those of copper and a tube of 1.40 g/cm³', () => {
    for (const table of [saeTxl, saeGxl, saeSxl]) {
      for (const [size, conductor, wall, outer, mass] of table.rows) {
        const [count, mil, across] = STRANDS[size]!;
        const name = `${table.key} ${size}`;
        expectPrinted((across * mil) / 1000, conductor!.toFixed(4), 0.51);
        expect(Math.abs(conductor! + 2 * wall! - outer), name).toBeLessThan(0.00051);
        const cover = (Math.PI / 4) * ((conductor! + 2 * wall!) ** 2 - conductor! ** 2);
        // 1 in² over 1000 ft is 12 000 in³; 1 lb/in³ is 27.68 g/cm³.
        const pounds = 3.027e-3 * count * mil * mil + (12_000 * cover * 1.4) / 27.6799;
        expect(Math.abs(pounds - mass!), name).toBeLessThan(0.06);
      }
    }
  });
  it('areas are those of the strands, a little above the least of the standard', () => {
    for (const [size] of saeGxl.rows) {
      const [count, mil] = STRANDS[size]!;
      const mils = mm2ToCircularMils(insulatedWire({ wireTable: saeGxl, size }).areaMm2);
      expect(Math.abs(mils - count * mil * mil)).toBeLessThan(1);
      const least = saeJ1128.rows.find(([name]) => name === size)?.[1];
      if (least !== undefined) {
        expect(mils).toBeGreaterThan(least);
        expect(mils).toBeLessThan(least * 1.06);
      }
    }
  });
  it('battery cable: least area at a fill of 0.75 within two walls', () => {
    for (const [size, , wall, outer] of saeSgt.rows) {
      const { areaMm2 } = insulatedWire({ wireTable: saeSgt, size });
      const d = Math.sqrt((4 / Math.PI) * (areaMm2 / 0.75)) / 25.4;
      expect(Math.abs(d + 2 * wall! - outer), size).toBeLessThan(0.0011);
    }
  });
});

describe('laws', () => {
  it('thin wall is thinner than medium, medium than thick', () => {
    for (const [size] of saeTxl.rows) {
      if (size === '22') continue;
      const outer = (wireTable: typeof saeTxl) => insulatedWire({ wireTable, size }).outerDiameterMm;
      expect(outer(saeTxl), size).toBeLessThan(outer(saeGxl));
      expect(outer(saeGxl), size).toBeLessThan(outer(saeSxl));
    }
  });
});
