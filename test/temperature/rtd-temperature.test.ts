import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { iec60751, iec751of1983, rtdResistance, rtdTemperature } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenly, swapsMatter } from '../support/law.js';
import { computed, type Citation } from '../support/published.js';
import { fixture } from './fixture.js';
import { pt100Rows } from './platinum-print.js';

const iec: Citation = { source: 'iec-60751', place: 'Pt100 table, read backwards', status: 'published' };
const tempC = (resistanceOhm: number): number =>
  rtdTemperature({ curve: iec60751, nominalOhm: 100, resistanceOhm }).tempC;

describe('published', () => {
  for (const [t, print] of pt100Rows) {
    // Half of the last printed digit is 0.005 Ω, at 0.43 Ω/K (cold) to 0.29 Ω/K (hot) at most 0.018 K. The first and
    // the last row are a hair inside the equation's own range.
    computed(`${print} Ω: ${t} °C`, iec, () => {
      const printed = Math.min(Math.max(Number(print), 18.5201), 390.4811);
      expect(Math.abs(tempC(printed) - t)).toBeLessThan(0.018);
    });
  }
});

describe('independent', () => {
  it.each(fixture.platinum)('%d Ω: %d °C, by mpmath', (ohm, t) => expect(Math.abs(tempC(ohm) - t)).toBeLessThan(1e-9));
});

describe('laws', () => {
  it('comes back from the resistance', () => {
    fc.assert(
      fc.property(
        evenly(-200, 850),
        fc.constantFrom(100, 500, 1000),
        fc.constantFrom(iec60751, iec751of1983),
        (t, nominalOhm, curve) => {
          const { resistanceOhm, slopeOhmPerK } = rtdResistance({ curve, nominalOhm, tempC: t });
          const found = rtdTemperature({ curve, nominalOhm, resistanceOhm });
          expect(Math.abs(found.tempC - t)).toBeLessThan(1e-9);
          expect(found.slopeOhmPerK).toBeCloseTo(slopeOhmPerK, 8);
        },
      ),
    );
  });
  it('sees swapped inputs', () => {
    swapsMatter(rtdTemperature, { curve: iec60751, nominalOhm: 100, resistanceOhm: 138 });
  });
});

describe('edges', () => {
  const ok = { curve: iec60751, nominalOhm: 100, resistanceOhm: 110 };
  it('knows its ends and 0 °C exactly', () => {
    expect(tempC(100)).toBe(0);
    expect(tempC(rtdResistance({ curve: iec60751, nominalOhm: 100, tempC: -200 }).resistanceOhm)).toBeCloseTo(-200, 9);
    expect(tempC(rtdResistance({ curve: iec60751, nominalOhm: 100, tempC: 850 }).resistanceOhm)).toBeCloseTo(850, 9);
  });
  it('refuses nonsense', () => {
    refusesNonsense(rtdTemperature, ok, { required: ['nominalOhm', 'resistanceOhm'] });
    expectInputError(() => rtdTemperature({ ...ok, resistanceOhm: 18.5 }), 'resistanceOhm', 'range');
    expectInputError(() => rtdTemperature({ ...ok, resistanceOhm: 390.5 }), 'resistanceOhm', 'range');
    expect(() => rtdTemperature({ ...ok, resistanceOhm: 1100 })).toThrow(
      'rtdTemperature: resistanceOhm must lie from 18.52 to 390.48 Ω, got 1100: is nominalOhm that of another part?',
    );
    expectInputError(() => rtdTemperature({ ...ok, curve: null as never }), 'curve', 'object');
  });
});
