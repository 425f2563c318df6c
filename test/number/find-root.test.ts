import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { findRoot } from 'loomwright';
import { evenly } from '../support/law.js';
import { expectWithin } from '../support/published.js';

describe('independent', () => {
  it('finds roots known in closed form', () => {
    expectWithin(findRoot({ fn: 't', f: (x) => x * x - 2, low: 0, high: 2, tolerance: 1e-14 }), Math.SQRT2, 1e-13);
    expectWithin(
      findRoot({ fn: 't', f: (x) => Math.cos(x) - x, low: 0, high: 1, tolerance: 1e-14 }),
      0.7390851332151607,
      1e-13,
    );
    expect(findRoot({ fn: 't', f: (x) => x, low: 0, high: 1, tolerance: 1e-9 })).toBe(0);
  });
});

describe('laws', () => {
  it('stays within tolerance of the root of any shifted cubic', () => {
    fc.assert(
      fc.property(evenly(-9, 9), fc.double({ min: 1e-3, max: 1e3, noNaN: true }), (root, k) => {
        const x = findRoot({
          fn: 't',
          f: (v) => k * (v - root) ** 3 + (v - root),
          low: -10,
          high: 10.5,
          tolerance: 1e-9,
        });
        expect(Math.abs(x - root)).toBeLessThan(2e-9);
      }),
    );
  });
});

describe('edges', () => {
  const wrong = (f: (x: number) => number): unknown => {
    try {
      return findRoot({ fn: 'caller', f, low: 1, high: 2, tolerance: 1e-9 });
    } catch (e) {
      return e;
    }
  };
  it('says so when there is no change of sign, or no number', () => {
    expect(wrong((x) => x)).toMatchObject({ code: 'LOOMWRIGHT_CONVERGENCE', fn: 'caller', steps: 2 });
    expect(wrong((x) => (x === 1 ? -1 : x === 2 ? 1 : NaN))).toMatchObject({ code: 'LOOMWRIGHT_CONVERGENCE' });
  });
  it('ends after its steps', () => {
    expect(() => findRoot({ fn: 'caller', f: (x) => x - 1.2345, low: 0, high: 2, tolerance: 0, steps: 3 })).toThrow(
      /caller: no answer/,
    );
  });
});
