import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { circularMilsToMm2, inchesToMm, mm2ToCircularMils } from 'loomwright';
import { expectInputError } from '../support/edge.js';
import { computed, expectPrinted, expectWithin, type Citation } from '../support/published.js';

const nist: Citation = { source: 'nist-sp-811', place: 'appendix B.8', status: 'published' };

describe('published', () => {
  computed('a circular mil is 5.067 075 E−10 m2', nist, () =>
    expectPrinted(circularMilsToMm2(1) * 1e-6, '5.067075e-10'),
  );
});

describe('independent', () => {
  it('is the circle of so many thousandths of an inch', () => {
    expectWithin(circularMilsToMm2(1624.3), (Math.PI / 4) * inchesToMm(Math.sqrt(1624.3) / 1000) ** 2, 1e-14);
  });
});

describe('laws', () => {
  it('goes there and back', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 1e9, noNaN: true }), (value) => {
        expectWithin(mm2ToCircularMils(circularMilsToMm2(value)), value, 1e-15);
      }),
    );
  });
});

describe('edges', () => {
  it('takes 0 and nothing below it', () => {
    expect(circularMilsToMm2(0)).toBe(0);
    expect(mm2ToCircularMils(0)).toBe(0);
    expectInputError(() => circularMilsToMm2(-1e-9), 'circularMils', 'atLeast');
    expectInputError(() => mm2ToCircularMils(-1e-9), 'areaMm2', 'atLeast');
  });
  it('refuses nonsense', () => {
    for (const value of [NaN, Infinity, -Infinity, 'abc', {}, undefined, null]) {
      expectInputError(() => circularMilsToMm2(value as never), 'circularMils');
      expectInputError(() => mm2ToCircularMils(value as never), 'areaMm2');
    }
  });
});
