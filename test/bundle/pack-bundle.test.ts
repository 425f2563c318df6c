import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { bundleDiameter, packBundle, type BundleWire } from 'loomwright';
import { expectInputError } from '../support/edge.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';

const equal = (count: number): readonly BundleWire[] => [{ outerDiameterMm: 1, count }];

/** No two wires overlap and none sticks out. */
function isPacking(wires: readonly BundleWire[]): void {
  const { circles, diameterMm, lowerBoundMm } = packBundle({ wires });
  expect(circles.length).toBe(wires.reduce((sum, { count }) => sum + count, 0));
  circles.forEach((a, i) => {
    expect(Math.hypot(a.xMm, a.yMm) + a.outerDiameterMm / 2).toBeLessThanOrEqual((diameterMm / 2) * (1 + 1e-12));
    for (const b of circles.slice(i + 1)) {
      const apart = Math.hypot(a.xMm - b.xMm, a.yMm - b.yMm);
      expect(apart).toBeGreaterThanOrEqual(((a.outerDiameterMm + b.outerDiameterMm) / 2) * (1 - 1e-12));
    }
  });
  wires.forEach((wire, i) => {
    const own = circles.filter(({ wireIndex }) => wireIndex === i);
    expect(own.length).toBe(wire.count);
    expect(own.every(({ outerDiameterMm }) => outerDiameterMm === wire.outerDiameterMm)).toBe(true);
  });
  expect(diameterMm).toBeGreaterThanOrEqual(lowerBoundMm);
}

describe('published', { timeout: 120_000 }, () => {
  const ratio = { source: 'circle-packing', place: 'table of ratios', status: 'published' } as const;
  for (const [n, print] of [
    [2, '2'],
    [3, '2.155'],
    [4, '2.414'],
    [5, '2.701'],
    [6, '3'],
    [7, '3'],
    [8, '3.304'],
    [9, '3.613'],
    [10, '3.813'],
    [11, '3.923'],
    [12, '4.029'],
    [13, '4.236'],
    [14, '4.328'],
    [15, '4.521'],
    [16, '4.615'],
    [17, '4.792'],
    [18, '4.863'],
    [19, '4.863'],
    [20, '5.122'],
  ] as const) {
    // The source cuts off or rounds after three decimals: up to a whole unit of the last digit.
    computed(`${n} equal wires drawn reach the best known ratio`, ratio, () =>
      expectPrinted(packBundle({ wires: equal(n) }).diameterMm, print, 1),
    );
  }
});

describe('independent', { timeout: 120_000 }, () => {
  it('2 to 20 equal wires come within 0.01 % of the ratio to nine decimals, and never below', () => {
    for (let n = 2; n <= 20; n++) {
      const best = bundleDiameter({ wires: equal(n), rule: 'packing' }).diameterMm;
      const { diameterMm } = packBundle({ wires: equal(n) });
      expectWithin(diameterMm, best, 1e-4);
      expect(diameterMm, `${n}`).toBeGreaterThanOrEqual(best * (1 - 1e-9));
    }
  });
  it('seven thin wires fill the gap round six: 1 + 6 of one size', () => {
    const { circles, diameterMm } = packBundle({ wires: equal(7) });
    expectWithin(diameterMm, 3, 1e-7);
    const distances = circles.map(({ xMm, yMm }) => Math.hypot(xMm, yMm)).sort((a, b) => a - b);
    expect(distances[0]).toBeLessThan(1e-6);
    for (const distance of distances.slice(1)) expectWithin(distance, 1, 1e-6);
  });
});

describe('laws', { timeout: 120_000 }, () => {
  it('no two wires overlap and none sticks out, whatever is packed', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.record({
            outerDiameterMm: fc.double({ min: 0.5, max: 20, noNaN: true }),
            count: fc.integer({ min: 1, max: 4 }),
          }),
          { minLength: 1, maxLength: 5 },
        ),
        isPacking,
      ),
      { numRuns: 15 },
    );
    isPacking([
      { outerDiameterMm: 1.6, count: 30 },
      { outerDiameterMm: 6, count: 2 },
      { outerDiameterMm: 2.4, count: 20 },
    ]);
  });
  it('the same wires give the same picture', () => {
    const wires = [
      { outerDiameterMm: 3, count: 4 },
      { outerDiameterMm: 1.6, count: 9 },
    ];
    expect(packBundle({ wires })).toEqual(packBundle({ wires }));
  });
  it('is within 17 % of the bound for a loom of thin and thick wires', () => {
    const { diameterMm, lowerBoundMm } = packBundle({
      wires: [
        { outerDiameterMm: 1.6, count: 16 },
        { outerDiameterMm: 2.4, count: 8 },
        { outerDiameterMm: 4.3, count: 3 },
      ],
    });
    expect(diameterMm / lowerBoundMm).toBeLessThan(1.17);
  });
});

describe('edges', () => {
  it('a wire alone lies in the middle', () => {
    expect(packBundle({ wires: [{ outerDiameterMm: 2.5, count: 1 }] })).toEqual({
      circles: [{ xMm: 0, yMm: 0, outerDiameterMm: 2.5, wireIndex: 0 }],
      diameterMm: 2.5,
      lowerBoundMm: 2.5,
    });
  });
  it('refuses nonsense with the field that is at fault', () => {
    expectInputError(() => packBundle(undefined as never), 'input', 'object');
    expectInputError(() => packBundle({ wires: [] }), 'wires', 'list');
    expectInputError(() => packBundle({ wires: equal(301) }), 'wires', 'atMost');
    expectInputError(
      () => packBundle({ wires: [{ outerDiameterMm: -1, count: 1 }] }),
      'wires[0].outerDiameterMm',
      'above',
    );
    expect(() => packBundle({ wires: equal(301) })).toThrow('packBundle: wires must be at most 300 wires');
  });
});
