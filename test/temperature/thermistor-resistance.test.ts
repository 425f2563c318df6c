import { describe, expect, it } from 'vitest';
import * as core from 'loomwright';
import {
  ntc100k,
  ntc10k3mcd1,
  ntc10k44031,
  ntc2252,
  ntcMaterial1Inverse,
  thermistorResistance,
  type ThermistorCurve,
} from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { computed, expectPrinted, expectWithin, transcribed, type Citation } from '../support/published.js';
import { fixture } from './fixture.js';
import { print2252, print44031, printCoolant2500, printMaterial1 } from './ntc-print.js';

const ohm = (curve: ThermistorCurve, tempC: number): number => thermistorResistance({ curve, tempC }).resistanceOhm;
const material: Citation = { source: 'ntc-material-1', place: 'ratio table and its own equation', status: 'published' };
const beta: Citation = { source: 'ntc-beta-equation', place: '10 kΩ, B25/100 = 3455 K, from memory', status: 'memory' };

describe('published', () => {
  for (const [t, ratio] of printMaterial1) {
    // The equation is stated to fit; at four printed digits it is within a unit and a half of the last.
    computed(`ratio at ${t} °C: ${ratio}`, material, () => {
      expectPrinted(ohm(ntcMaterial1Inverse, t) / ntcMaterial1Inverse.refOhm, ratio, 1.5);
    });
  }
  computed('100 °C: 973 Ω', beta, () => {
    expectPrinted(ohm({ kind: 'beta', refOhm: 10000, refTempC: 25, betaK: 3455 }, 100), '973.8');
  });
  for (const [name, source, status, curve, rows] of [
    ['2252', 'ntc-2252-table', 'published', ntc2252, print2252],
    ['44031', 'ntc-44031-table', 'published', ntc10k44031, print44031],
    ['coolant 2500', 'ntc-coolant-2500', 'memory', core.ntcCoolant2500, printCoolant2500],
  ] as const) {
    it(`${name} has as many rows as printed`, () => expect(curve.rows).toHaveLength(rows.length));
    rows.forEach(([t, print], i) => {
      transcribed(`${t} °C: ${print} Ω`, { source, place: `${name} table`, status }, () => {
        expect(curve.rows[i]).toEqual([t, Number(print)]);
        expectWithin(ohm(curve, t), Number(print), 1e-12);
      });
    });
  }
});

describe('independent', () => {
  it.each(fixture.inverses)('%s at %d °C: %d Ω, by mpmath', (name, tempC, expected) => {
    const curve = (core as unknown as Record<string, ThermistorCurve>)[name]!;
    expectWithin(thermistorResistance({ curve, tempC, extrapolate: true }).resistanceOhm, expected, 1e-12);
  });
  it('agrees with values worked from the coefficients', () => {
    for (const [curve, t, print] of [
      [ntc10k3mcd1, -40, '336049.70'],
      [ntc10k3mcd1, -20, '96999.28'],
      [ntc10k3mcd1, 0, '32649.92'],
      [ntc10k3mcd1, 25, '9999.99'],
      [ntc10k3mcd1, 70, '1751.60'],
      [ntc100k, -20, '1106749.37'],
      [ntc100k, 25, '99999.73'],
      [ntc100k, 100, '5572.84'],
    ] as const) {
      expectPrinted(ohm(curve, t), print);
    }
  });
  it('goes over into Beta when c vanishes', () => {
    const straight = { kind: 'steinhart-hart', a: 1e-3, b: 2.5e-4, c: 0 } as const;
    const tiny = { ...straight, c: 1e-22 };
    for (const t of [-40, 25, 150]) expectWithin(ohm(tiny, t), ohm(straight, t), 1e-13);
  });
});

describe('laws', () => {
  it('falls with temperature over every curve', () => {
    for (const curve of [
      ntc2252,
      ntc10k44031,
      core.ntcCoolant2500,
      core.ntc103jl1a,
      core.ntcMaterial1,
      ntcMaterial1Inverse,
    ]) {
      let before = Infinity;
      for (let t = -40; t <= 130; t += 0.5) {
        const { resistanceOhm, slopeOhmPerK } = thermistorResistance({ curve, tempC: t, extrapolate: true });
        expect(resistanceOhm).toBeLessThan(before);
        expect(slopeOhmPerK).toBeLessThan(0);
        before = resistanceOhm;
      }
    }
  });
  it('has no step where printed points end and the straight line goes on', () => {
    const at = (tempC: number): number =>
      thermistorResistance({ curve: ntc2252, tempC, extrapolate: true }).resistanceOhm;
    expectWithin(at(250 + 1e-7), at(250), 1e-8);
    expectWithin(at(-80 - 1e-7), at(-80), 1e-7);
    expect(at(300)).toBeLessThan(at(260));
    expect(at(-100)).toBeGreaterThan(at(-81));
  });
});

describe('edges', () => {
  const input = { curve: ntc2252, tempC: 25 };
  it('refuses nonsense', () => {
    refusesNonsense(thermistorResistance, input, { required: ['tempC'] });
    expectInputError(() => thermistorResistance({ ...input, tempC: -274 }), 'tempC', 'atLeast');
    expectInputError(() => thermistorResistance({ ...input, tempC: 250.1 }), 'tempC', 'range');
    expectInputError(() => thermistorResistance({ ...input, tempC: -80.1 }), 'tempC', 'range');
  });
  it('refuses a temperature that no resistance gives', () => {
    expectInputError(() => ohm({ kind: 'steinhart-hart', a: 1e-3, b: -1e-4, c: 1e-7 }, 25), 'tempC', 'range');
    expectInputError(() => ohm({ kind: 'steinhart-hart', a: 1e-3, b: -1e-4, c: -1e-7 }, 25), 'tempC', 'range');
    expectInputError(() => ohm({ kind: 'steinhart-hart', a: 1e-3, b: 0, c: 0 }, 25), 'tempC', 'range');
    const bent = { kind: 'cubic', refOhm: 1e4, a: 3.35e-3, b: 2.5e-4, c: -1e-4, d: 0 } as const;
    expectInputError(() => ohm(bent, -60), 'tempC', 'range');
  });
});
