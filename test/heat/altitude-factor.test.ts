import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { altitudeFactor, ampacity, feetToM, type WireAtAltitude } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenlyWithEnds } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';

// No. 14 aviation wire of 200 °C in air of 50 °C.
const wire: WireAtAltitude = {
  maxConductorTempC: 200,
  resistanceOhmPerM: 0.01004,
  ratedTempC: 20,
  conductorDiameterMm: 1.85,
  outerDiameterMm: 2.36,
  insulationConductivityWPerMK: 0.24,
  ambientTempC: 50,
};
const at = (feet: number) => altitudeFactor({ altitudeM: feetToM(feet), rule: 'ac-43-13-1b', wire });

describe('published', () => {
  computed('20 000 ft', { source: 'ac-43-13-1b', place: 'figure 11-5, example 2', status: 'published' }, () =>
    expectPrinted(at(20000).factor!, '0.91'),
  );
  computed('60 000 ft', { source: 'ac-43-13-1b', place: 'figure 11-5, paragraph 11-69', status: 'memory' }, () =>
    expectPrinted(at(60000).factor!, '0.79'),
  );
  computed(
    '47 A in free air at 20 000 ft, example 2',
    { source: 'ac-43-13-1b', place: 'page 11-27', status: 'published' },
    () => expectPrinted(47 * at(20000).factor!, '42.77'),
  );
  for (const [feet, print] of [
    [20000, 0.91],
    [60000, 0.79],
  ] as const) {
    computed(
      `our own balance at ${feet} ft lies within 6 % above the curve, which is made for a mean wire`,
      { source: 'ac-43-13-1b', place: 'figure 11-5', status: feet === 20000 ? 'published' : 'memory' },
      () => {
        const { factor } = altitudeFactor({ altitudeM: feetToM(feet), rule: 'heat', wire });
        expect(factor!).toBeGreaterThan(print);
        expectWithin(factor!, print, 0.065);
      },
    );
  }
});

describe('independent', () => {
  it('the rule `heat` is the ratio of two ampacities', () => {
    const { factor } = altitudeFactor({ altitudeM: 3000, rule: 'heat', wire });
    const ratio = ampacity({ ...wire, altitudeM: 3000 }).currentA / ampacity({ ...wire, altitudeM: 0 }).currentA;
    expect(factor).toBe(ratio);
  });
});

describe('laws', () => {
  it('more altitude never raises a factor; no rule grants more than sea level above it', () => {
    fc.assert(
      fc.property(evenlyWithEnds(0, 18000), evenlyWithEnds(0, 2000), (h, up) => {
        for (const rule of ['ac-43-13-1b', 'heat'] as const) {
          const low = altitudeFactor({ altitudeM: h, rule, wire }).factor!;
          expect(low).toBeLessThanOrEqual(1);
          const high = altitudeFactor({ altitudeM: Math.min(18288, h + up), rule, wire }).factor!;
          expect(high).toBeLessThanOrEqual(low + 1e-12);
        }
      }),
    );
  });
  it('never grants more than a straight line between the points of the curve', () => {
    for (let feet = 100; feet <= 60000; feet += 100) {
      const line = feet <= 20000 ? 1 - (0.09 * feet) / 20000 : 0.91 - (0.12 * (feet - 20000)) / 40000;
      expect(at(feet).factor!).toBeLessThanOrEqual(line + 1e-12);
    }
    expectWithin(at(5000).factor!, 0.955, 1e-9);
    expectWithin(at(30000).factor!, 0.865, 1e-9);
  });
  it('shows every rule and their range', () => {
    const { rules, minFactor, maxFactor } = at(30000);
    expect(rules.map(({ rule }) => rule)).toEqual(['ac-43-13-1b', 'heat']);
    expect(minFactor).toBe(Math.min(...rules.map(({ factor }) => factor!)));
    expect(maxFactor).toBe(Math.max(...rules.map(({ factor }) => factor!)));
  });
});

describe('edges', () => {
  it('is 1 at and below sea level by the curve, and has no number above 60 000 ft', () => {
    expect(at(0)).toMatchObject({ factor: 1, sourceStatus: 'published' });
    expect(at(-1000).factor).toBe(1);
    expect(at(-1000).rules[1]!.factor!).toBeGreaterThan(1);
    expect(altitudeFactor({ altitudeM: 18289, rule: 'ac-43-13-1b' })).toMatchObject({
      factor: null,
      reason: 'beyond-table',
      minFactor: null,
    });
    expect(at(10000).sourceStatus).toBe('memory');
  });
  it('shows the balance only where there is a wire that bears something', () => {
    const without = altitudeFactor({ altitudeM: 1000, rule: 'ac-43-13-1b' });
    expect(without.rules[1]).toMatchObject({ factor: null, reason: 'no-wire-given' });
    const hot = altitudeFactor({ altitudeM: 1000, rule: 'heat', wire: { ...wire, ambientTempC: 200 } });
    expect(hot).toMatchObject({ factor: null, reason: 'air-at-limit' });
    expectInputError(() => altitudeFactor({ altitudeM: 1000, rule: 'heat' }), 'wire', 'missing');
  });
  it('refuses nonsense', () => {
    refusesNonsense(altitudeFactor, { altitudeM: 1000, rule: 'ac-43-13-1b' }, { required: ['altitudeM'] });
    expectInputError(() => altitudeFactor({ altitudeM: 1, rule: 'guess' as never }), 'rule', 'oneOf');
    expectInputError(() => altitudeFactor({ altitudeM: 1, rule: 'heat', wire: 3 as never }), 'wire', 'object');
    expectInputError(
      () => altitudeFactor({ altitudeM: 1, rule: 'heat', wire: { ...wire, emissivity: 2 } }),
      'wire.emissivity',
      'atMost',
    );
    expectInputError(
      () => altitudeFactor({ altitudeM: 1, rule: 'heat', wire: { ...wire, maxConductorTempC: 401 } }),
      'wire.maxConductorTempC',
      'atMost',
    );
  });
});
