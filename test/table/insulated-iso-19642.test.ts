import { describe, expect, it } from 'vitest';
import {
  insulatedWire,
  insulatedWireMass,
  iso19642ThickWall,
  iso19642ThinWall,
  iso19642UltraThinWall,
  thinWallSheet,
} from 'loomwright';
import { insulatedRows } from '../support/insulated-rows.js';
import { expectPrinted, transcribed, type Citation } from '../support/published.js';

const from = (place: string): Citation => ({ source: 'iso-19642-dimensions', place, status: 'memory' });

describe('published', () => {
  // Conductor, wall and outer diameter from memory; mass worked out from them.
  insulatedRows(iso19642ThinWall, from('thin wall'), [
    ['0.13', '0.55', '0.25', '1.05', '2.0'],
    ['0.22', '0.70', '0.25', '1.2', '2.9'],
    ['0.35', '0.90', '0.25', '1.4', '4.3'],
    ['0.5', '1.10', '0.28', '1.6', '6.0'],
    ['0.75', '1.30', '0.30', '1.9', '8.6'],
    ['1', '1.50', '0.30', '2.1', '11.1'],
    ['1.25', '1.70', '0.30', '2.3', '13.5'],
    ['1.5', '1.80', '0.30', '2.4', '15.9'],
    ['2', '2.00', '0.35', '2.8', '21.1'],
    ['2.5', '2.20', '0.35', '3.0', '25.8'],
    ['3', '2.40', '0.35', '3.4', '30.6'],
    ['4', '2.80', '0.40', '3.7', '40.8'],
    ['5', '3.10', '0.40', '4.2', '50.1'],
    ['6', '3.40', '0.40', '4.3', '59.5'],
    ['8', '4.30', '0.40', '5.0', '78.7'],
    ['10', '4.50', '0.60', '6.0', '101.3'],
    ['12', '5.40', '0.60', '6.5', '121.3'],
    ['16', '5.80', '0.65', '7.2', '159.2'],
    ['20', '6.90', '0.65', '7.8', '197.7'],
    ['25', '7.20', '0.65', '8.7', '242.9'],
    ['30', '8.30', '0.80', '9.6', '296.2'],
    ['35', '8.50', '0.80', '10.4', '341.3'],
    ['40', '9.60', '0.90', '11.1', '393.8'],
    ['50', '10.50', '0.90', '12.2', '486.0'],
    ['60', '11.60', '1.00', '13.3', '584.4'],
    ['70', '12.50', '1.00', '14.4', '676.9'],
    ['95', '14.80', '1.10', '16.7', '915.3'],
    ['120', '16.50', '1.60', '19.7', '1184.0'],
  ]);
  insulatedRows(iso19642UltraThinWall, from('ultra-thin wall'), [
    ['0.13', '-', '0.20', '0.95', '-'],
    ['0.22', '-', '0.20', '1.05', '-'],
    ['0.35', '-', '0.20', '1.20', '-'],
    ['0.5', '-', '0.20', '1.40', '-'],
    ['0.75', '-', '0.20', '1.60', '-'],
    ['1', '-', '0.20', '1.75', '-'],
    ['1.5', '-', '0.20', '2.10', '-'],
    ['2.5', '-', '0.25', '2.70', '-'],
  ]);
  insulatedRows(iso19642ThickWall, from('thick wall'), [
    ['0.5', '-', '0.60', '2.3', '-'],
    ['0.75', '-', '0.60', '2.5', '-'],
    ['1', '-', '0.60', '2.7', '-'],
    ['1.5', '-', '0.60', '3.0', '-'],
    ['2.5', '-', '0.70', '3.6', '-'],
    ['4', '-', '0.80', '4.4', '-'],
    ['6', '-', '0.80', '5.0', '-'],
    ['10', '-', '1.0', '6.5', '-'],
    ['16', '-', '1.0', '8.3', '-'],
    ['25', '-', '1.3', '10.4', '-'],
    ['35', '-', '1.3', '11.6', '-'],
    ['50', '-', '1.5', '13.5', '-'],
    ['70', '-', '1.5', '15.5', '-'],
    ['95', '-', '1.6', '18.0', '-'],
    ['120', '-', '1.6', '19.7', '-'],
  ]);
  insulatedRows(thinWallSheet, { source: 'thin-wall-data-sheet', place: 'largest diameters', status: 'published' }, [
    ['0.5', '-', '-', '1.7', '-'],
    ['0.75', '-', '-', '1.9', '-'],
    ['1', '-', '-', '2.1', '-'],
    ['1.5', '-', '-', '2.4', '-'],
    ['2', '-', '-', '2.8', '-'],
    ['2.5', '-', '-', '3.0', '-'],
    ['3', '-', '-', '3.4', '-'],
    ['4', '-', '-', '3.7', '-'],
    ['4.5', '-', '-', '4.1', '-'],
    ['6', '-', '-', '4.3', '-'],
    ['8.5', '-', '-', '5.6', '-'],
    ['10', '-', '-', '6.0', '-'],
  ]);
  for (const [letter, tempC] of [
    ['A', 85],
    ['B', 100],
    ['C', 125],
    ['D', 150],
    ['E', 175],
    ['F', 200],
    ['G', 225],
    ['H', 250],
  ] as const) {
    transcribed(`class ${letter}, ${tempC} °C`, from('temperature classes'), () =>
      expect(insulatedWire({ wireTable: iso19642ThinWall, size: '1', temperatureClass: letter }).maxTempC).toBe(tempC),
    );
  }
});

describe('independent', () => {
  it('the masses come from 0.95 of the conductor, the nominal wall and PVC of 1.35 g/cm³', () => {
    for (const [size, conductor, wall, , mass] of iso19642ThinWall.rows) {
      const d = 0.95 * conductor!;
      const { massKgPerM } = insulatedWireMass({
        areaMm2: Number(size),
        conductorDiameterMm: d,
        outerDiameterMm: d + 2 * wall!,
        insulationDensityKgPerM3: 1350,
        lengthM: 1,
      });
      expectPrinted(massKgPerM * 1000, mass!.toFixed(1), 0.51);
    }
  });
  it('a diameter is called published where the data sheet agrees, and only there', () => {
    for (const [size, , , outer, , status] of iso19642ThinWall.rows) {
      const sheet = thinWallSheet.rows.find(([name]) => name === size)?.[3];
      expect(status, size).toBe(sheet === outer ? 'published' : 'memory');
    }
    expect(insulatedWire({ wireTable: iso19642ThinWall, size: '0.5' }).note).toMatch(/1\.7/);
  });
});

describe('laws', () => {
  it('a conductor with two nominal walls fits within the largest diameter but for one size', () => {
    const over = iso19642ThinWall.rows.filter(
      ([, conductor, wall, outer]) => 0.95 * conductor! + 2 * wall! > outer + 0.006,
    );
    expect(over.map(([size]) => size)).toEqual(['20']);
    expect(over[0]![7]).toMatch(/7\.85/);
  });
});
