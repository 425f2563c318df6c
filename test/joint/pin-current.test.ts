import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { pinCurrent, type PinCurrentInput } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenly, swapsMatter } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';

const pin: PinCurrentInput = {
  ratedCurrentA: 13,
  ratedRiseK: 30,
  maxTempC: 125,
  ambientTempC: 100,
  reductionFraction: 0.8,
  loadingFactor: 1,
};

describe('published', () => {
  // Worked with the form of the standard, which is from memory.
  const cite = { source: 'iec-60512-5-2', place: '13 A at 30 K, 125 °C, at 100 °C', status: 'derived' } as const;
  computed('base curve 11.87 A', cite, () => expectPrinted(pinCurrent(pin).baseCurrentA, '11.87'));
  computed('0.8 of it, 9.49 A', cite, () => expectPrinted(pinCurrent(pin).currentA, '9.49'));
});

describe('laws', () => {
  const temp = evenly(-40, 124);
  it('hotter surroundings, more neighbours, a lower limit never raise it; it never exceeds the rating', () => {
    fc.assert(
      fc.property(temp, fc.double({ min: 0.1, max: 50, noNaN: true }), (ambientTempC, more) => {
        const here = pinCurrent({ ...pin, ambientTempC });
        expect(here.currentA).toBeLessThanOrEqual(13);
        expect(pinCurrent({ ...pin, ambientTempC: ambientTempC + more }).currentA).toBeLessThanOrEqual(here.currentA);
        expect(pinCurrent({ ...pin, ambientTempC, maxTempC: 125 - more }).currentA).toBeLessThanOrEqual(here.currentA);
        expect(pinCurrent({ ...pin, ambientTempC, ratedRiseK: 30 + more }).currentA).toBeLessThanOrEqual(here.currentA);
        expect(pinCurrent({ ...pin, ambientTempC, loadingFactor: 1 / (1 + more) }).currentA).toBeLessThan(
          here.currentA,
        );
        if (here.baseCurrentA < 13) {
          expect(pinCurrent({ ...pin, ambientTempC, exponent: 0.6 }).currentA).toBeLessThanOrEqual(here.currentA);
        }
      }),
    );
  });
  it('at the rated rise below the limit the base curve is the rating, and at the limit nothing is left', () => {
    expectWithin(pinCurrent({ ...pin, ambientTempC: 95 }).baseCurrentA, 13, 1e-12);
    expect(pinCurrent({ ...pin, ambientTempC: 125 })).toMatchObject({ currentA: 0, baseCurrentA: 0 });
    expect(pinCurrent({ ...pin, ambientTempC: 150 }).currentA).toBe(0);
    expect(pinCurrent({ ...pin, ambientTempC: 20 })).toMatchObject({ currentA: 13, cappedAtRating: true });
  });
  it('the temperature of the contact by the square of the current stays at its limit', () => {
    const { baseCurrentA } = pinCurrent(pin);
    expectWithin(100 + 30 * (baseCurrentA / 13) ** 2, 125, 1e-12);
  });
  it('two swapped inputs of one kind do not go unseen, but reduction and loading are both factors', () =>
    swapsMatter(pinCurrent, pin));
});

describe('edges', () => {
  it('refuses nonsense with the field that is at fault', () => {
    refusesNonsense(pinCurrent, pin, {
      required: ['ratedCurrentA', 'ratedRiseK', 'maxTempC', 'ambientTempC', 'reductionFraction', 'loadingFactor'],
      optional: ['exponent'],
    });
    expectInputError(() => pinCurrent({ ...pin, reductionFraction: 80 }), 'reductionFraction', 'atMost');
    expectInputError(() => pinCurrent({ ...pin, loadingFactor: 0 }), 'loadingFactor', 'atLeast');
    expectInputError(() => pinCurrent({ ...pin, exponent: 1 }), 'exponent', 'atMost');
    expectInputError(() => pinCurrent({ ...pin, ambientTempC: -300 }), 'ambientTempC', 'atLeast');
    expectInputError(() => pinCurrent({ ...pin, ratedRiseK: 0 }), 'ratedRiseK', 'above');
  });
});
