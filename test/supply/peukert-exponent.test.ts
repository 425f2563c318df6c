import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { peukertExponent, runTime } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { neverRunsOut } from '../support/extremes.js';
import { swapsMatter } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';

const base = { firstA: 5, firstTimeH: 20, secondA: 10, secondTimeH: 7.5 };

describe('published', () => {
  const cite = { source: 'battery-guides', place: '10 A about 7.5 h where 5 A is 20 h', status: 'derived' } as const;
  computed('an exponent of 1.415', cite, () => expectPrinted(peukertExponent(base).peukertExponent, '1.415'));
});

describe('laws', () => {
  it('run times of a known exponent give it back', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1.01, max: 2, noNaN: true }),
        fc.double({ min: 1.1, max: 40, noNaN: true }),
        (k, ratio) => {
          const t = (currentA: number): number => {
            const result = runTime({
              form: 'referenced',
              ratedChargeAh: 60,
              ratedTimeH: 20,
              peukertExponent: k,
              startChargeFraction: 1,
              endChargeFraction: 0,
              currentA,
              belowRate: 'rated-charge',
            });
            return result.possible ? result.runTimeH! : NaN;
          };
          const found = peukertExponent({ firstA: 3, firstTimeH: t(3), secondA: 3 * ratio, secondTimeH: t(3 * ratio) });
          expectWithin(found.peukertExponent, k, 1e-9);
        },
      ),
    );
  });
  it('the same charge at both is an exponent of 1', () => {
    expect(peukertExponent({ ...base, secondTimeH: 10 }).peukertExponent).toBeCloseTo(1, 12);
  });
  it('swapping two inputs of a kind is seen', () => swapsMatter(peukertExponent, base));
});

describe('edges', () => {
  it('refuses nonsense', () => {
    refusesNonsense(peukertExponent, base, { required: ['firstA', 'firstTimeH', 'secondA', 'secondTimeH'] });
    expectInputError(() => peukertExponent({ ...base, secondA: 5 }), 'secondA', 'above');
    expectInputError(() => peukertExponent({ ...base, secondTimeH: 10.01 }), 'secondTimeH', 'atMost');
    expectInputError(() => peukertExponent({ ...base, firstTimeH: 0 }), 'firstTimeH', 'above');
    expect(() => peukertExponent({ ...base, secondTimeH: 11 })).toThrow(
      'peukertExponent: secondTimeH must give no more charge than the smaller current (at most 10 h), got 11',
    );
  });
  it('never runs out of numbers', () => neverRunsOut(peukertExponent, base));
});
