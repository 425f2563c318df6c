import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { iec60751, iec751of1983, rtdResistance, type PlatinumCurve } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenly, swapsMatter } from '../support/law.js';
import { computed, expectPrinted, expectWithin, type Citation } from '../support/published.js';
import { pt100Rows } from './platinum-print.js';

const iec: Citation = { source: 'iec-60751', place: 'Pt100 table', status: 'published' };
const old: Citation = { source: 'iec-751-1983', place: 'Pt100 table', status: 'published' };
const ohm = (tempC: number, nominalOhm = 100, curve: PlatinumCurve = iec60751): number =>
  rtdResistance({ curve, nominalOhm, tempC }).resistanceOhm;

describe('published', () => {
  for (const [t, print] of pt100Rows) computed(`${t} °C: ${print} Ω`, iec, () => expectPrinted(ohm(t), print));
  computed('alpha: 0.003851', iec, () => expectPrinted((ohm(100) - ohm(0)) / (100 * ohm(0)), '0.003851'));
  computed('the older curve, 100 °C: 138.50 Ω', old, () => expectPrinted(ohm(100, 100, iec751of1983), '138.50'));
  computed('the older curve, 850 °C: 390.26 Ω', old, () => expectPrinted(ohm(850, 100, iec751of1983), '390.26'));
  computed('Pt1000 is ten times Pt100', iec, () => {
    for (const [t] of pt100Rows) expectWithin(ohm(t, 1000), 10 * ohm(t), 1e-15);
  });
});

describe('independent', () => {
  it('agrees with the polynomial written out', () => {
    for (const [t, print] of [
      [25, '109.7347'],
      [37, '114.3817'],
      [125, '147.9514'],
      [175, '166.6267'],
      [-160, '35.5433'],
    ] as const) {
      expectPrinted(ohm(t), print);
    }
  });
});

describe('laws', () => {
  const temps = evenly(-199.9, 849.9);
  it('rises with temperature at the stated slope, and in proportion to its size', () => {
    fc.assert(
      fc.property(temps, fc.double({ min: 10, max: 2000, noNaN: true }), (t, nominalOhm) => {
        const { slopeOhmPerK } = rtdResistance({ curve: iec60751, nominalOhm, tempC: t });
        expect(slopeOhmPerK).toBeGreaterThan(0);
        const h = 1e-3;
        expectWithin((ohm(t + h, nominalOhm) - ohm(t - h, nominalOhm)) / (2 * h), slopeOhmPerK, 1e-6);
        expectWithin(ohm(t, 2 * nominalOhm), 2 * ohm(t, nominalOhm), 1e-15);
      }),
    );
  });
  it('sees swapped inputs', () => swapsMatter(rtdResistance, { curve: iec60751, nominalOhm: 100, tempC: 99 }));
});

describe('edges', () => {
  const ok = { curve: iec60751, nominalOhm: 100, tempC: 20 };
  it('refuses nonsense', () => {
    refusesNonsense(rtdResistance, ok, { required: ['nominalOhm', 'tempC'] });
    expect(ohm(0)).toBe(100);
    for (const tempC of [-200.001, 850.001]) expectInputError(() => rtdResistance({ ...ok, tempC }), 'tempC', 'range');
    expectInputError(() => rtdResistance({ ...ok, nominalOhm: 0 }), 'nominalOhm', 'above');
    expectInputError(() => rtdResistance({ ...ok, curve: undefined as never }), 'curve', 'missing');
    expectInputError(() => rtdResistance({ ...ok, curve: 'iec' as never }), 'curve', 'object');
    expectInputError(() => rtdResistance({ ...ok, curve: { ...iec60751, a: NaN } }), 'curve.a', 'finite');
    expect(() => rtdResistance({ ...ok, tempC: 900 })).toThrow(
      'rtdResistance: tempC must lie from -200 to 850, got 900',
    );
  });
});
