import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  as22759Slash32,
  gxlSheet,
  insulatedWire,
  insulatedWireMass,
  iso19642ThinWall,
  saeSxl,
  weldingCable,
  wireMass,
  type InsulatedWireMassInput,
} from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { swapsMatter } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';

/** kg/m to pounds a thousand feet. */
const LB_PER_KFT = 304.8 / 0.45359237;
const wire: InsulatedWireMassInput = {
  areaMm2: 2.5,
  conductorDiameterMm: 2.09,
  outerDiameterMm: 2.79,
  insulationDensityKgPerM3: 1350,
  lengthM: 10,
};

describe('published', () => {
  const chart = (strands: string) =>
    ({ source: 'stranded-wire-chart', place: `weight of ${strands}`, status: 'published' }) as const;
  for (const [awg, strands, print] of [
    ['26', '19x38', '0.92'],
    ['24', '19x36', '1.43'],
    ['22', '19x34', '2.28'],
    ['20', '19x32', '3.68'],
    ['18', '19x30', '5.75'],
    ['16', '19x29', '7.35'],
  ] as const) {
    // 1 unit of the last digit: 475 circular mils give 1.438, which the chart cuts off.
    computed(`copper of ${awg} AWG in lb/kft`, chart(strands), () => {
      const { areaMm2 } = insulatedWire({ wireTable: as22759Slash32, size: awg });
      expectPrinted(wireMass({ areaMm2, lengthM: 1 }).massKgPerM * LB_PER_KFT, print, 1);
    });
  }
  // The sheet titled GXL fits the SXL wall: reckoned from that wall, within 7 %.
  const sheet = { source: 'gxl-data-sheet', place: 'weights, lb/kft', status: 'published' } as const;
  for (const [size, print] of [
    ['20', '7'],
    ['18', '9'],
    ['16', '13'],
    ['14', '19'],
    ['12', '26'],
    ['10', '40'],
    ['8', '64'],
  ] as const) {
    computed(`SAE ${size} with the SXL wall, within 7 % of the sheet`, sheet, () => {
      const { areaMm2, conductorDiameterMm, wallMm } = insulatedWire({ wireTable: saeSxl, size });
      const { massKgPerM } = insulatedWireMass({
        areaMm2,
        conductorDiameterMm: conductorDiameterMm!,
        outerDiameterMm: conductorDiameterMm! + 2 * wallMm!,
        insulationDensityKgPerM3: 1400,
        lengthM: 1,
      });
      expectWithin(massKgPerM * LB_PER_KFT, Number(print), 0.07);
      expect(gxlSheet.rows.find(([name]) => name === size)![4]).toBe(Number(print));
    });
  }
  // Rope-laid strands are about 3 % longer than the cable; covering of 1350 kg/m³. Within 8 % of the sheet.
  const welding = { source: 'welding-cable-data', place: 'mass, kg/km', status: 'published' } as const;
  for (const [size, print] of [
    ['16', '215'],
    ['25', '305'],
    ['35', '400'],
    ['50', '587'],
    ['70', '775'],
    ['95', '1040'],
    ['120', '1256'],
    ['185', '1875'],
    ['240', '2534'],
  ] as const) {
    computed(`welding cable ${size} mm², within 8 % of the sheet`, welding, () => {
      const { areaMm2, conductorDiameterMm, outerDiameterMm } = insulatedWire({ wireTable: weldingCable, size });
      const { massKgPerM } = insulatedWireMass({
        areaMm2,
        conductorDiameterMm: conductorDiameterMm!,
        outerDiameterMm,
        insulationDensityKgPerM3: 1350,
        lengthM: 1,
        layFactor: 1.03,
      });
      expectWithin(massKgPerM * 1000, Number(print), 0.08);
    });
  }
  // From memory, with low confidence: what such wires usually weigh.
  const usual = { source: 'iso-19642-dimensions', place: 'usual mass of type B, kg/km', status: 'memory' } as const;
  for (const [size, low, high] of [
    ['0.35', 4.5, 5],
    ['0.5', 6.5, 6.5],
    ['0.75', 9, 9],
    ['1', 11.5, 11.5],
    ['1.5', 16, 16],
    ['2.5', 26, 26],
    ['4', 41, 41],
    ['6', 61, 61],
    ['10', 107, 107],
    ['16', 170, 170],
    ['25', 265, 265],
    ['35', 365, 365],
    ['50', 515, 515],
    ['70', 720, 720],
    ['95', 970, 970],
    ['120', 1250, 1250],
  ] as const) {
    computed(`thin wall ${size} mm² within 9 %`, usual, () => {
      const { areaMm2, conductorDiameterMm, wallMm } = insulatedWire({ wireTable: iso19642ThinWall, size });
      const d = 0.95 * conductorDiameterMm!;
      const { massKgPerM } = insulatedWireMass({
        areaMm2,
        conductorDiameterMm: d,
        outerDiameterMm: d + 2 * wallMm!,
        insulationDensityKgPerM3: 1350,
        lengthM: 1,
      });
      expect(massKgPerM * 1000).toBeGreaterThan(low * 0.91);
      expect(massKgPerM * 1000).toBeLessThan(high * 1.09);
    });
  }
});

describe('independent', () => {
  it('is copper plus a tube of insulation, by hand', () => {
    const { massKg, metalKgPerM, insulationKgPerM } = insulatedWireMass(wire);
    expectWithin(metalKgPerM, 2.5e-6 * 8890, 1e-12);
    expectWithin(insulationKgPerM, Math.PI * (1.395e-3 ** 2 - 1.045e-3 ** 2) * 1350, 1e-12);
    expectWithin(massKg, 10 * (metalKgPerM + insulationKgPerM), 1e-12);
  });
});

describe('laws', () => {
  it('grows with length, wall, density and lay, and aluminium is lighter', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 5, noNaN: true }), (more) => {
        const base = insulatedWireMass(wire).massKg;
        expect(insulatedWireMass({ ...wire, lengthM: 10 + more }).massKg).toBeGreaterThan(base);
        expect(insulatedWireMass({ ...wire, outerDiameterMm: 2.79 + more }).massKg).toBeGreaterThan(base);
        expect(insulatedWireMass({ ...wire, insulationDensityKgPerM3: 1350 + more }).massKg).toBeGreaterThan(base);
        expect(insulatedWireMass({ ...wire, layFactor: 1 + more / 50 }).massKg).toBeGreaterThan(base);
        expect(insulatedWireMass({ ...wire, metal: 'aluminium' }).massKg).toBeLessThan(base);
      }),
    );
  });
  it('two swapped inputs of one kind do not go unseen', () => swapsMatter(insulatedWireMass, wire));
});

describe('edges', () => {
  it('refuses nonsense with the field that is at fault', () => {
    refusesNonsense(insulatedWireMass, wire, {
      required: ['areaMm2', 'conductorDiameterMm', 'outerDiameterMm', 'insulationDensityKgPerM3', 'lengthM'],
      optional: ['layFactor'],
    });
    expectInputError(() => insulatedWireMass({ ...wire, outerDiameterMm: 2 }), 'outerDiameterMm', 'atLeast');
    expectInputError(() => insulatedWireMass({ ...wire, areaMm2: 3.5 }), 'areaMm2', 'atMost');
    expectInputError(() => insulatedWireMass({ ...wire, areaMm2: 2.5e-6 }), 'areaMm2', 'atLeast');
    expectInputError(() => insulatedWireMass({ ...wire, layFactor: 0.99 }), 'layFactor', 'atLeast');
    expectInputError(() => insulatedWireMass({ ...wire, lengthM: -1 }), 'lengthM', 'atLeast');
    expectInputError(() => insulatedWireMass({ ...wire, metal: 'gold' as never }), 'metal', 'oneOf');
    expect(insulatedWireMass({ ...wire, lengthM: 0 }).massKg).toBe(0);
  });
});
