import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { imperialGallonsToL, poundsToKg, psiToKpa, usGallonsToL } from 'loomwright';
import { expectInputError } from '../support/edge.js';
import { computed, expectPrinted, expectWithin, type Citation } from '../support/published.js';

const nist: Citation = { source: 'nist-sp-811', place: 'appendix B.8', status: 'published' };
const converters = [
  [poundsToKg, 'pounds'],
  [psiToKpa, 'psi'],
  [usGallonsToL, 'gallons'],
  [imperialGallonsToL, 'gallons'],
] as const;

describe('published', () => {
  computed('a pound is 4.535 924 E−01 kg', nist, () => expectPrinted(poundsToKg(1), '4.535924e-1'));
  computed('a pound-force a square inch is 6.894 757 E+00 kPa', nist, () => expectPrinted(psiToKpa(1), '6.894757'));
  computed('a US gallon is 3.785 412 E+00 L', nist, () => expectPrinted(usGallonsToL(1), '3.785412'));
  computed('an imperial gallon is 4.546 09 E+00 L', nist, () => expectPrinted(imperialGallonsToL(1), '4.54609'));
});

describe('independent', () => {
  it('a US gallon is 231 cubic inches, a psi is a pound’s weight on a square inch', () => {
    expectWithin(usGallonsToL(1), 231 * 0.254 ** 3, 1e-14);
    expectWithin(psiToKpa(1), (0.45359237 * 9.80665) / 0.0254 ** 2 / 1000, 1e-14);
  });
  it('the two gallons differ by a fifth', () =>
    expect(imperialGallonsToL(1) / usGallonsToL(1)).toBeCloseTo(1.20095, 5));
});

describe('laws', () => {
  it('is proportional', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 1e9, noNaN: true }), (value) => {
        for (const [convert] of converters) expectWithin(convert(3 * value), 3 * convert(value), 1e-15);
      }),
    );
  });
});

describe('edges', () => {
  it('takes 0 and below, refuses nonsense', () => {
    for (const [convert, field] of converters) {
      expect(convert(0)).toBe(0);
      expect(convert(-1)).toBe(-convert(1));
      for (const value of [NaN, Infinity, -Infinity]) expectInputError(() => convert(value), field, 'finite');
      for (const value of ['3', {}, []]) expectInputError(() => convert(value as never), field, 'number');
      expectInputError(() => convert(undefined as never), field, 'missing');
    }
  });
});
