import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { cToFahrenheit, cToKelvin, fahrenheitToC, kelvinToC } from 'loomwright';
import { expectInputError } from '../support/edge.js';
import { computed, expectPrinted, expectWithin, type Citation } from '../support/published.js';

const nist: Citation = { source: 'nist-sp-811', place: 'appendix B.8, exact', status: 'published' };

describe('published', () => {
  computed('t/°C = (t/°F − 32)/1.8', nist, () => expectPrinted(fahrenheitToC(33.8), '1'));
  computed('T/K = t/°C + 273.15', nist, () => expectPrinted(cToKelvin(0), '273.15', 0));
});

describe('independent', () => {
  it('knows ice, steam, 185 °F, and where the scales cross', () => {
    expect([32, 212, 185, -40].map(fahrenheitToC)).toEqual([0, 100, 85, -40]);
    expect([0, 100, 85, -40].map(cToFahrenheit)).toEqual([32, 212, 185, -40]);
  });
});

describe('laws', () => {
  it('goes there and back', () => {
    fc.assert(
      fc.property(fc.double({ min: -273, max: 2000, noNaN: true }), (c) => {
        expect(Math.abs(fahrenheitToC(cToFahrenheit(c)) - c)).toBeLessThan(1e-12);
        expect(Math.abs(kelvinToC(cToKelvin(c)) - c)).toBeLessThan(1e-12);
      }),
    );
  });
  it('a difference of 9 °F is one of 5 K, wherever it is', () => {
    fc.assert(
      fc.property(fc.double({ min: -400, max: 2000, noNaN: true }), (f) => {
        expectWithin(fahrenheitToC(f + 9) - fahrenheitToC(f), 5, 1e-12);
      }),
    );
  });
});

describe('edges', () => {
  const all = [
    [fahrenheitToC, 'fahrenheit', -459.67],
    [cToFahrenheit, 'celsius', -273.15],
    [cToKelvin, 'celsius', -273.15],
    [kelvinToC, 'kelvin', 0],
  ] as const;
  it('takes absolute zero and nothing below it', () => {
    for (const [convert, field, zero] of all) {
      expect(Number.isFinite(convert(zero))).toBe(true);
      expectInputError(() => convert(zero - 0.01), field, 'atLeast');
    }
    expect(() => kelvinToC(-1)).toThrow('kelvinToC: kelvin must be at least 0, got -1: below absolute zero');
  });
  it('refuses nonsense', () => {
    for (const [convert, field] of all) {
      for (const value of [NaN, Infinity, -Infinity]) expectInputError(() => convert(value), field, 'finite');
      for (const value of ['3', {}, []]) expectInputError(() => convert(value as never), field, 'number');
      expectInputError(() => convert(undefined as never), field, 'missing');
    }
  });
});
