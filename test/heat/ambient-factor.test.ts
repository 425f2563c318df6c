import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { ambientFactor } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenly, swapsMatter } from '../support/law.js';
import { computed, expectPrinted } from '../support/published.js';

const factor = (insulationTempC: number, ambientTempC: number, baseTempC: number): number =>
  ambientFactor({ insulationTempC, ambientTempC, baseTempC }).ambientFactor;

describe('published', () => {
  // 33 CFR 183.425 table 5 note 1: engine spaces (50 °C) from 30 °C. The print has .7746 as .78 and .8563 as .85,
  // and its 200 °C column keeps 1.00 where the form gives .939.
  for (const [tempC, print] of [
    [60, '0.58'],
    [75, '0.75'],
    [80, '0.78'],
    [90, '0.82'],
    [105, '0.85'],
    [125, '0.89'],
  ] as const) {
    computed(
      `factor at 50 °C, ${tempC} °C insulation`,
      { source: 'us-33-cfr-183', place: '183.425 table 5 note 1', status: tempC === 105 ? 'published' : 'memory' },
      () => expectPrinted(factor(tempC, 50, 30), print, tempC === 80 || tempC === 105 ? 1 : 0.5),
    );
  }
  computed(
    'the 200 °C column of the note departs from the form, and ours is the lower',
    { source: 'us-33-cfr-183', place: '183.425 table 5 note 1, 200 °C column', status: 'memory' },
    () => {
      expectPrinted(factor(200, 50, 30), '0.939');
      expect(factor(200, 50, 30)).toBeLessThan(1);
    },
  );
  for (const [tins, tamb, print] of [
    [90, 50, '0.816'],
    [75, 50, '0.745'],
    [105, 60, '0.775'],
    [125, 85, '0.649'],
    [105, 85, '0.516'],
  ] as const) {
    computed(
      `ambient factor ${tins} °C insulation at ${tamb} °C from 30 °C`,
      { source: 'nec-310-15', place: 'the form behind the ambient correction factors', status: 'derived' },
      () => expectPrinted(factor(tins, tamb, 30), print),
    );
  }
  computed(
    '90 °C insulation at 120 °F (48.9 °C)',
    { source: 'nec-310-15', place: 'table 310.15(B)(2)(a), 90 °C column, 46 to 50 °C', status: 'published' },
    () => expectPrinted(factor(90, 50, 30), '0.82'),
  );
  for (const [tins, tamb, print] of [
    [80, 60, '0.577'],
    [125, 60, '0.787'],
    [125, 90, '0.577'],
  ] as const) {
    computed(
      `base 20 °C: ${tins} °C class at ${tamb} °C`,
      { source: 'common-practice', place: 'insulation factors from 20 °C', status: 'common-practice' },
      () => expectPrinted(factor(tins, tamb, 20), print),
    );
  }
  computed(
    'base 20 °C: 80 °C class at 90 °C is rejected',
    { source: 'common-practice', place: 'insulation factors from 20 °C', status: 'common-practice' },
    () => expect(factor(80, 90, 20)).toBe(0),
  );
});

describe('laws', () => {
  const temp = evenly(-40, 250);
  it('is 1 at the base, falls with the ambient, and never is negative', () => {
    fc.assert(
      fc.property(temp, temp, temp, (a, b, c) => {
        const [base, tins] = a < b ? [a, b] : [b, a];
        fc.pre(tins - base > 1e-6);
        expect(factor(tins, base, base)).toBe(1);
        expect(factor(tins, c, base)).toBeGreaterThanOrEqual(0);
        expect(factor(tins, c + 1, base)).toBeLessThanOrEqual(factor(tins, c, base));
      }),
    );
  });
  it('carries on in steps: base to a, a to b is base to b', () => {
    fc.assert(
      fc.property(evenly(-20, 60), evenly(-20, 60), (a, b) => {
        expect(factor(105, a, 20) * factor(105, b, a)).toBeCloseTo(factor(105, b, 20), 12);
      }),
    );
  });
  it('changes when two temperatures are swapped', () => {
    swapsMatter(ambientFactor, { insulationTempC: 105, ambientTempC: 60, baseTempC: 30 });
  });
});

describe('edges', () => {
  const input = { insulationTempC: 105, ambientTempC: 60, baseTempC: 30 };
  it('refuses nonsense', () => {
    refusesNonsense(ambientFactor, input, { required: ['insulationTempC', 'ambientTempC', 'baseTempC'] });
  });
  it('refuses a base at or above the class', () => {
    expectInputError(() => ambientFactor({ ...input, baseTempC: 105 }), 'baseTempC', 'below');
    expect(() => ambientFactor({ ...input, baseTempC: 120 })).toThrow(
      "ambientFactor: baseTempC must be below the insulation's 105, got 120",
    );
  });
  it('is 0 at and above the class', () => {
    expect(factor(105, 105, 30)).toBe(0);
    expect(factor(105, 104.999, 30)).toBeGreaterThan(0);
  });
});
