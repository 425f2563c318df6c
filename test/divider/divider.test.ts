import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { divider } from 'loomwright';
import { refusesNonsense } from '../support/edge.js';
import { swapsMatter } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';

describe('published', () => {
  const lec = {
    source: 'lessons-electric-circuits',
    place: 'volume I, chapter 6, 5 k, 10 k, 7.5 k in series',
    status: 'published',
  } as const;
  const drops = [
    ['R1 at 45 V', 45, 17500, 5000, '10'],
    ['R2 at 45 V', 45, 12500, 10000, '20'],
    ['R3 at 45 V', 45, 15000, 7500, '15'],
    ['R1 at 180 V', 180, 17500, 5000, '40'],
  ] as const;
  for (const [name, inV, upperOhm, lowerOhm, print] of drops) {
    computed(`${name}, V`, lec, () => {
      expectPrinted(divider({ inV, upperOhm, lowerOhm }).outV, print);
    });
  }
  computed('current, mA', lec, () => {
    expectPrinted(divider({ inV: 45, upperOhm: 17500, lowerOhm: 5000 }).currentA * 1000, '2');
  });

  const tutorial = (place: string) => ({ source: 'circuit-tutorials', place, status: 'published' }) as const;
  const course = divider({ inV: 15, upperOhm: 10000, lowerOhm: 20000 });
  computed('open volts of 10 k over 20 k at 15 V', tutorial('exercise'), () => {
    expectPrinted(course.outV, '10');
  });
  computed('its source resistance, kΩ', tutorial('exercise'), () => {
    expectPrinted(course.sourceOhm / 1000, '6.67');
  });

  const half = divider({ inV: 1, upperOhm: 10000, lowerOhm: 24900 });
  const probe = { source: 'circuit-theory', place: 'half bridge of 10 k and 24.9 k', status: 'derived' } as const;
  computed('half bridge of a probe at 25 °C', probe, () => {
    expectPrinted(half.outFraction, '0.713467');
  });

  const w7 = { source: 'circuit-theory', place: 'worked case: 12 V signal on a 5 V pin', status: 'derived' } as const;
  for (const [inV, upperOhm, print] of [
    [13.8, 18000, '4.929'],
    [14.4, 18000, '5.143'],
    [30, 18000, '10.71'],
    [14.4, 30000, '3.60'],
    [20, 30000, '5.00'],
  ] as const) {
    computed(`${inV} V on ${upperOhm}/10000 Ω`, w7, () => {
      expectPrinted(divider({ inV, upperOhm, lowerOhm: 10000 }).outV, print);
    });
  }
  for (const [upperOhm, print] of [
    [18000, '6.43'],
    [30000, '7.5'],
  ] as const) {
    computed(`source resistance of ${upperOhm}/10000, kΩ`, w7, () => {
      expectPrinted(divider({ inV: 1, upperOhm, lowerOhm: 10000 }).sourceOhm / 1000, print);
    });
  }
});

const ohm = fc.double({ min: 1, max: 1e7, noNaN: true });
const volts = fc.double({ min: 1e-3, max: 100, noNaN: true });

describe('laws', () => {
  it('shares the volts and the heat', () => {
    fc.assert(
      fc.property(volts, ohm, ohm, (inV, upperOhm, lowerOhm) => {
        const one = divider({ inV, upperOhm, lowerOhm });
        const other = divider({ inV, upperOhm: lowerOhm, lowerOhm: upperOhm });
        expectWithin(one.outV + other.outV, inV, 1e-12);
        expectWithin(one.upperW + one.lowerW, inV * one.currentA, 1e-12);
        expectWithin(one.sourceOhm, other.sourceOhm, 1e-12);
        expect(one.sourceOhm).toBeLessThanOrEqual(Math.min(upperOhm, lowerOhm));
      }),
    );
  });
  it('does not mistake one input for another', () => {
    swapsMatter(divider, { inV: 12, upperOhm: 18000, lowerOhm: 10000 });
  });
});

describe('edges', () => {
  it('takes no upper resistor, and a negative signal', () => {
    expect(divider({ inV: -5, upperOhm: 0, lowerOhm: 100 })).toMatchObject({ outV: -5, sourceOhm: 0, upperW: 0 });
  });
  it('refuses nonsense', () => {
    const input = { inV: 12, upperOhm: 18000, lowerOhm: 10000 };
    refusesNonsense(divider, input, { required: ['inV', 'upperOhm', 'lowerOhm'] });
    expect(() => divider({ ...input, lowerOhm: 0 })).toThrow('divider: lowerOhm must be above 0, got 0');
    expect(() => divider({ ...input, upperOhm: -1 })).toThrow('divider: upperOhm must be at least 0, got -1');
  });
});
