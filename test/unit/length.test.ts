import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { feetToM, inchesToMm, milesToKm, mmToInches, mToFeet } from 'loomwright';
import { expectInputError } from '../support/edge.js';
import { computed, expectPrinted, expectWithin, type Citation } from '../support/published.js';

const nist: Citation = { source: 'nist-sp-811', place: 'appendix B.8, exact', status: 'published' };

describe('published', () => {
  computed('a foot is 3.048 E−01 m', nist, () => expectPrinted(feetToM(1), '3.048e-1', 0));
  computed('an inch is 2.54 E+01 mm', nist, () => expectPrinted(inchesToMm(1), '25.4', 0));
  computed('a mile is 1.609 344 E+00 km', nist, () => expectPrinted(milesToKm(1), '1.609344', 0));
});

describe('independent', () => {
  it('twelve inches are a foot and 5280 feet a mile, exactly as a double can say it', () => {
    expect(feetToM(1) * 1000).toBeCloseTo(12 * 25.4, 12);
    expectWithin(milesToKm(1) * 1000, feetToM(5280), 1e-15);
  });
});

describe('laws', () => {
  it('goes there and back, either sign', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e9, max: 1e9, noNaN: true }), (value) => {
        fc.pre(Math.abs(value) > 1e-200);
        expectWithin(mToFeet(feetToM(value)), value, 1e-15);
        expectWithin(mmToInches(inchesToMm(value)), value, 1e-15);
      }),
    );
  });
});

describe('edges', () => {
  it('refuses nonsense, each in its own name', () => {
    const all = [
      [feetToM, 'feet'],
      [mToFeet, 'metres'],
      [inchesToMm, 'inches'],
      [mmToInches, 'millimetres'],
      [milesToKm, 'miles'],
    ] as const;
    for (const [convert, field] of all) {
      expect(convert(0)).toBe(0);
      for (const value of [NaN, Infinity, -Infinity]) expectInputError(() => convert(value), field, 'finite');
      for (const value of ['3 ft', {}, []]) expectInputError(() => convert(value as never), field, 'number');
      expectInputError(() => convert(undefined as never), field, 'missing');
      expect(() => convert('3 ft' as never)).toThrow(
        `${convert.name}: ${field} must be a number, without its unit, got '3 ft'`,
      );
    }
  });
});
