import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { AWG_SIZES, areaMm2ToAwg, awgToAreaMm2, circularMilsToMm2 } from 'loomwright';
import { expectInputError } from '../support/edge.js';
import { circular31Rows } from './circular-31.js';

describe('published', () => {
  // The printed area is a little above the true one at some numbers; 0.2 % less is within the size at every one.
  it('gives back the number of every area that NBS Circular 31 prints, less 0.2 %', () => {
    for (const [awg, , mils] of circular31Rows) {
      expect(areaMm2ToAwg(circularMilsToMm2(Number(mils) * 0.998))).toBe(awg);
    }
  });
});

describe('independent', () => {
  it('agrees with the formula solved for the number', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.006, max: 107, noNaN: true }), (areaMm2) => {
        const n = 36 - (39 * Math.log(Math.sqrt((4 * areaMm2) / Math.PI) / 0.127)) / Math.log(92);
        fc.pre(Math.abs(n - Math.round(n)) > 1e-6);
        const number = Math.floor(n);
        expect(areaMm2ToAwg(areaMm2)).toBe(number > 0 ? String(number) : `${1 - number}/0`);
      }),
    );
  });
});

describe('laws', () => {
  it('goes there and back for every size, also after a rounding in the last digits', () => {
    for (const awg of AWG_SIZES) {
      expect(areaMm2ToAwg(awgToAreaMm2(awg))).toBe(awg);
      expect(areaMm2ToAwg(awgToAreaMm2(awg) * (1 + 5e-10))).toBe(awg);
    }
  });
  it('is never thinner than what was asked, and the next thinner size is', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 107.2, noNaN: true }), (areaMm2) => {
        const awg = areaMm2ToAwg(areaMm2);
        expect(awgToAreaMm2(awg)).toBeGreaterThanOrEqual(areaMm2 * (1 - 1e-9));
        const thinner = AWG_SIZES[AWG_SIZES.indexOf(awg) + 1];
        if (thinner !== undefined) expect(awgToAreaMm2(thinner)).toBeLessThan(areaMm2);
      }),
    );
  });
});

describe('edges', () => {
  it('throws above 4/0, a hair below it does not', () => {
    expect(areaMm2ToAwg(107.2)).toBe('4/0');
    expectInputError(() => areaMm2ToAwg(107.3), 'areaMm2', 'inTable');
    expect(() => areaMm2ToAwg(120)).toThrow('areaMm2ToAwg: areaMm2 must be at most that of 4/0, 107.2 mm², got 120');
  });
  it('names the slip of m², and gives No. 40 for the thinnest wires', () => {
    expect(areaMm2ToAwg(0.001)).toBe('40');
    expectInputError(() => areaMm2ToAwg(0.000999), 'areaMm2', 'atLeast');
    expect(() => areaMm2ToAwg(0.0000025)).toThrow(
      'areaMm2ToAwg: areaMm2 must be at least 0.001, got 0.0000025: is this in m²?',
    );
  });
  it('refuses nonsense', () => {
    expectInputError(() => areaMm2ToAwg(0), 'areaMm2', 'above');
    expectInputError(() => areaMm2ToAwg(-1), 'areaMm2', 'above');
    for (const area of [NaN, Infinity, -Infinity]) expectInputError(() => areaMm2ToAwg(area), 'areaMm2', 'finite');
    expectInputError(() => areaMm2ToAwg('2.5' as never), 'areaMm2', 'number');
    expectInputError(() => areaMm2ToAwg(undefined as never), 'areaMm2', 'missing');
  });
});
