import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { betaFromPoints, fahrenheitToC, thermistorResistance, thermistorTemperature } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenly, swapsMatter } from '../support/law.js';
import { computed, expectPrinted, expectWithin, type Citation } from '../support/published.js';
import { kernelOhm, printMaterial1 } from './ntc-print.js';

const material: Citation = { source: 'ntc-material-1', place: 'Beta a span', status: 'published' };
const kernel: Citation = {
  source: 'ntc-kernel-tables',
  place: 'Beta in the name of the part, from memory',
  status: 'memory',
};
const worked: Citation = { source: 'circuit-theory', place: 'worked case of three points', status: 'derived' };
const beta = (coldTempC: number, coldOhm: number, hotTempC: number, hotOhm: number): number =>
  betaFromPoints({ coldTempC, coldOhm, hotTempC, hotOhm }).betaK;

describe('published', () => {
  const ratio = (t: number): number => Number(printMaterial1.find(([tempC]) => tempC === t)?.[1]);
  for (const [cold, hot, print] of [
    [0, 50, '3892'],
    [0, 70, '3917'],
    [25, 50, '3937'],
    [25, 85, '3977'],
    [25, 100, '3992'],
    [25, 125, '4013'],
  ] as const) {
    // Ratios of four digits leave Beta uncertain by a kelvin or two.
    computed(`${cold} to ${hot} °C: ${print} K`, material, () => {
      expectPrinted(beta(cold, ratio(cold), hot, ratio(hot)), print, 2.5);
    });
  }
  for (const [name, hot, print, ulps] of [
    ['wb473', 50, '4050', 0.5],
    ['wl333', 50, '4485', 0.5],
    ['wf104', 50, '4250', 0.5],
    ['b57330v2103', 50, '3380', 2.5],
    ['b57330v2103', 100, '3455', 1.5],
  ] as const) {
    computed(`${name} 25 to ${hot} °C: ${print} K`, kernel, () => {
      expectPrinted(beta(25, kernelOhm(name, 25), hot, kernelOhm(name, hot)), print, ulps);
    });
  }
  computed('0 and 100 °C of three points: 3523.5 K', worked, () => expectPrinted(beta(0, 5900, 100, 186), '3523.5'));
  computed('that Beta reads 48.84 °C at 834 Ω, where it is 50', worked, () => {
    const { curve } = betaFromPoints({ coldTempC: 0, coldOhm: 5900, hotTempC: 100, hotOhm: 186 });
    expectPrinted(thermistorTemperature({ curve, resistanceOhm: 834 }).tempC, '48.84');
  });
});

describe('independent', () => {
  it('agrees with values worked by hand', () => {
    expectPrinted(beta(25, 10000, 50, 5982.6), '1979.9');
    expectPrinted(beta(fahrenheitToC(32), 13690.6, fahrenheitToC(77), 10000), '1023.3');
    expectPrinted(beta(0, 7355, 50, 811.3), '3891.8');
  });
  it('finds the one table that is a curve of constant Beta', () => {
    const betas = [-40, 0, 50, 85, 125].map((t) =>
      t < 25
        ? beta(t, kernelOhm('xh103', t), 25, kernelOhm('xh103', 25))
        : beta(25, kernelOhm('xh103', 25), t, kernelOhm('xh103', t)),
    );
    for (const b of betas) expect(Math.abs(b - 3431)).toBeLessThan(2);
  });
});

describe('laws', () => {
  it('makes a curve through both points', () => {
    fc.assert(
      fc.property(
        evenly(-50, 60),
        fc.double({ min: 1, max: 100, noNaN: true }),
        fc.double({ min: 100, max: 1e6, noNaN: true }),
        evenly(0.01, 0.99),
        (coldTempC, span, coldOhm, share) => {
          const hotTempC = coldTempC + span;
          const { curve, betaK } = betaFromPoints({ coldTempC, coldOhm, hotTempC, hotOhm: coldOhm * share });
          expect(betaK).toBeGreaterThan(0);
          expectWithin(thermistorResistance({ curve, tempC: coldTempC }).resistanceOhm, coldOhm, 1e-12);
          expectWithin(thermistorResistance({ curve, tempC: hotTempC }).resistanceOhm, coldOhm * share, 1e-11);
        },
      ),
    );
  });
  it('sees swapped inputs', () => {
    swapsMatter(betaFromPoints, { coldTempC: 0, coldOhm: 5900, hotTempC: 100, hotOhm: 186 });
  });
});

describe('edges', () => {
  const ok = { coldTempC: 0, coldOhm: 5900, hotTempC: 100, hotOhm: 186 };
  it('refuses nonsense', () => {
    refusesNonsense(betaFromPoints, ok, { required: ['coldTempC', 'coldOhm', 'hotTempC', 'hotOhm'] });
    expectInputError(() => betaFromPoints({ ...ok, hotTempC: 0 }), 'hotTempC', 'order');
    expectInputError(() => betaFromPoints({ ...ok, hotOhm: 5900 }), 'hotOhm', 'order');
    expectInputError(() => betaFromPoints({ ...ok, coldOhm: 0 }), 'coldOhm', 'above');
    expectInputError(() => betaFromPoints({ ...ok, hotOhm: -1 }), 'hotOhm', 'above');
  });
});
