import { describe, expect, it } from 'vitest';
import {
  as22759Slash16,
  as22759Slash34,
  flexibleBatteryPvc,
  h01n2d,
  hookUpFluoropolymer,
  insulatedWire,
  iso19642ThickWall,
  iso19642ThinWall,
  iso19642UltraThinWall,
  saeSgx,
  saeTxl,
  standardWallSheet,
  thinWallSheet,
  weldingCable,
} from 'loomwright';
import { expectInputError } from '../support/edge.js';
import { insulatedTables } from '../support/insulated-tables.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';

describe('published', () => {
  const ac = { source: 'ac-43-13-1b', place: 'table 11-9, page 11-23', status: 'published' } as const;
  for (const [awg, print] of [
    ['22', '16.20'],
    ['20', '9.88'],
    ['18', '6.23'],
    ['16', '4.81'],
    ['14', '3.06'],
    ['12', '2.02'],
    ['10', '1.26'],
    ['8', '0.70'],
    ['6', '0.44'],
    ['4', '0.28'],
    ['2', '0.18'],
    ['1', '0.15'],
    ['1/0', '0.12'],
  ] as const) {
    computed(`AS22759/16 ${awg} AWG in ohm per 1000 ft`, ac, () => {
      const { resistanceOhmPerM } = insulatedWire({
        wireTable: as22759Slash16.rows.some(([s]) => s === awg) ? as22759Slash16 : as22759Slash34,
        size: awg,
      });
      expectPrinted(resistanceOhmPerM! * 304.8, print, 0.501);
    });
  }
  const bench = {
    source: 'sae-j1128-dimensions',
    place: 'bench note: TXL 14 measured 2.59 to 2.70 mm',
    status: 'published',
  } as const;
  computed('TXL 14 lies in the measured range', bench, () => {
    const { outerDiameterMm } = insulatedWire({ wireTable: saeTxl, size: '14' });
    expect(outerDiameterMm).toBeGreaterThan(2.59);
    expect(outerDiameterMm).toBeLessThan(2.7);
  });
});

describe('independent', () => {
  it('converts inches and pounds a thousand feet by hand', () => {
    const txl = insulatedWire({ wireTable: saeTxl, size: '14' });
    expectWithin(txl.outerDiameterMm, 0.103 * 25.4, 1e-12);
    expectWithin(txl.wallMm!, 0.016 * 25.4, 1e-12);
    expectWithin(txl.massKgPerM!, (14.3 * 0.45359237) / 304.8, 1e-12);
    expectWithin(txl.areaMm2, (3831 * Math.PI * 0.0254 ** 2) / 4, 1e-12);
    expect(txl).toMatchObject({ maxTempC: 125, massFrom: 'table', sourceStatus: 'derived', outerIs: 'typical' });
  });
  it('a hook-up wire is strands and two walls, within 4 % of the sheet', () => {
    // Nineteen strands are five across, thirty-seven seven.
    for (const [size, across, strandMm] of [
      ['0.35', 5, 0.16],
      ['0.5', 5, 0.18],
      ['0.75', 5, 0.23],
      ['1', 5, 0.26],
      ['1.5', 5, 0.32],
      ['2', 5, 0.37],
      ['2.5', 5, 0.41],
      ['4', 7, 0.37],
      ['6', 7, 0.45],
    ] as const) {
      const { outerDiameterMm, wallMm } = insulatedWire({ wireTable: hookUpFluoropolymer, size });
      expectWithin(across * strandMm + 2 * wallMm!, outerDiameterMm, 0.04);
    }
  });
  it('a mass that no table prints is reckoned from the wall, and says so', () => {
    const ultra = insulatedWire({ wireTable: iso19642UltraThinWall, size: '0.5', temperatureClass: 'B' });
    expect(ultra).toMatchObject({ massFrom: 'dimensions', massStatus: 'derived', maxTempC: 100 });
    // Conductor of 1.0 mm within walls of 0.20 mm.
    expectWithin(ultra.massKgPerM!, 0.5e-6 * 8890 + (Math.PI / 4) * (1.4e-3 ** 2 - 1e-3 ** 2) * 1350, 1e-12);
  });
});

describe('laws', () => {
  it('in every table thicker copper is thicker outside, heavier and lower in resistance, and every figure is sane', () => {
    expect(insulatedTables.length).toBeGreaterThan(20);
    for (const wireTable of insulatedTables) {
      const wires = wireTable.rows.map(([size]) => insulatedWire({ wireTable, size }));
      wires.forEach((wire, i) => {
        const name = `${wireTable.key} ${wire.label}`;
        const copperMm = Math.sqrt((4 / Math.PI) * wire.areaMm2);
        expect(wire.outerDiameterMm, name).toBeGreaterThan(copperMm);
        if (wire.conductorDiameterMm !== null) {
          expect(wire.conductorDiameterMm, name).toBeLessThan(wire.outerDiameterMm);
          expect(wire.conductorDiameterMm, name).toBeGreaterThan(copperMm * 0.96);
        }
        if (wire.leastOuterMm !== null) expect(wire.leastOuterMm, name).toBeLessThan(wire.outerDiameterMm);
        if (wire.massKgPerM !== null) expect(wire.massKgPerM, name).toBeGreaterThan(wire.areaMm2 * 8.89e-3);
        expect(wire.massFrom === null, name).toBe(wire.massKgPerM === null);
        expect(wire.massStatus === null, name).toBe(wire.massKgPerM === null);
        if (wire.resistanceOhmPerM !== null) {
          // Within what plating, alloy and stranding explain; SAE strands are above the least area of the standard.
          expectWithin(wire.resistanceOhmPerM, 0.0172 / wire.areaMm2, 0.32);
        }
        const before = wires[i - 1];
        if (before === undefined) return;
        expect(wire.areaMm2, name).toBeGreaterThan(before.areaMm2);
        expect(wire.outerDiameterMm, name).toBeGreaterThan(before.outerDiameterMm);
        if (wire.massKgPerM !== null && before.massKgPerM !== null) {
          expect(wire.massKgPerM, name).toBeGreaterThan(before.massKgPerM);
        }
        if (wire.resistanceOhmPerM !== null && before.resistanceOhmPerM !== null) {
          expect(wire.resistanceOhmPerM, name).toBeLessThan(before.resistanceOhmPerM);
        }
      });
    }
  });
  it('ultra-thin is thinner than thin, thin thinner than thick', () => {
    for (const [size] of iso19642UltraThinWall.rows) {
      const outer = (wireTable: typeof iso19642ThinWall) => insulatedWire({ wireTable, size }).outerDiameterMm;
      expect(outer(iso19642UltraThinWall), size).toBeLessThan(outer(iso19642ThinWall));
    }
    for (const [size] of iso19642ThickWall.rows) {
      if (size === '120') continue; // 19.7 mm in both, as remembered
      const outer = (wireTable: typeof iso19642ThinWall) => insulatedWire({ wireTable, size }).outerDiameterMm;
      expect(outer(iso19642ThinWall), size).toBeLessThan(outer(iso19642ThickWall));
    }
  });
});

describe('edges', () => {
  it('what is not printed is null', () => {
    expect(insulatedWire({ wireTable: thinWallSheet, size: '4.5' })).toMatchObject({
      conductorDiameterMm: null,
      wallMm: null,
      massKgPerM: null,
      massFrom: null,
      resistanceOhmPerM: null,
      resistanceStatus: null,
      maxTempC: 105,
    });
    expect(insulatedWire({ wireTable: iso19642ThinWall, size: '2.5' }).maxTempC).toBeNull();
    expect(insulatedWire({ wireTable: saeTxl, size: '22' }).resistanceOhmPerM).toBeNull();
    expect(insulatedWire({ wireTable: standardWallSheet, size: '2.9' }).resistanceOhmPerM).toBeNull();
    expect(insulatedWire({ wireTable: weldingCable, size: '150' }).note).toMatch(/1360/);
  });
  it('gives the least diameter where there is one', () => {
    expect(insulatedWire({ wireTable: h01n2d, size: '35' })).toMatchObject({
      leastOuterMm: 11.4,
      outerDiameterMm: 14.2,
    });
    expect(insulatedWire({ wireTable: flexibleBatteryPvc, size: '50' })).toMatchObject({
      leastOuterMm: 12.8,
      outerDiameterMm: 13.2,
    });
    expect(insulatedWire({ wireTable: saeSgx, size: '4/0' }).leastOuterMm).toBeNull();
  });
  it('refuses nonsense with the field that is at fault', () => {
    expectInputError(() => insulatedWire(undefined as never), 'input', 'object');
    expectInputError(() => insulatedWire({ size: '1' } as never), 'wireTable', 'missing');
    expectInputError(() => insulatedWire({ wireTable: {} as never, size: '1' }), 'wireTable', 'object');
    expectInputError(() => insulatedWire({ wireTable: saeTxl, size: '2.5' }), 'size', 'inTable');
    expectInputError(() => insulatedWire({ wireTable: saeTxl } as never), 'size', 'missing');
    expectInputError(
      () => insulatedWire({ wireTable: iso19642ThinWall, size: '1', temperatureClass: 'Z' }),
      'temperatureClass',
      'inTable',
    );
    expectInputError(
      () => insulatedWire({ wireTable: saeTxl, size: '14', temperatureClass: 'B' }),
      'temperatureClass',
      'inTable',
    );
    expect(() => insulatedWire({ wireTable: saeTxl, size: '2.5' })).toThrow(
      "insulatedWire: size must be a size of sae-txl (22 20 18 16 14 12 10), got '2.5'",
    );
  });
});
