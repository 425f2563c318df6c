import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { bladeFuse, boltInFuseSf30, fuseDropCurrent, type FuseDropCurrentInput, miniFuse } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { neverRunsOut } from '../support/extremes.js';
import { evenlyWithEnds, swapsMatter } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';

const base: FuseDropCurrentInput = { family: bladeFuse, ratingA: 10, dropMv: 1, fuseToleranceFraction: 0.15 };
const milli = (change: Partial<FuseDropCurrentInput>): number =>
  1000 * fuseDropCurrent({ ...base, ...change }).currentA;

describe('published', () => {
  const blade = { source: 'fuse-drop-charts', place: 'standard blade, 10 A', status: 'published' } as const;
  const mini = { source: 'fuse-drop-charts', place: 'mini blade, 15 A', status: 'published' } as const;
  computed('1.0 mV across a 10 A blade is 130 mA', blade, () => expectPrinted(milli({}), '130'));
  computed('0.1 mV across a 15 A mini is 22 mA', mini, () =>
    expectPrinted(milli({ family: miniFuse, ratingA: 15, dropMv: 0.1 }), '22'),
  );
  computed('1.0 mV across it is 218 mA', mini, () => expectPrinted(milli({ family: miniFuse, ratingA: 15 }), '218'));
});

describe('independent', () => {
  // A power law laid through the cold resistances of the standard blade, 123 mΩ × I^−1.2, and by how much that law is
  // off at each rating.
  it.each([
    [1, 0.01],
    [2, 0.01],
    [3, 0.06],
    [5, 0.01],
    [7.5, 0.01],
    [10, 0.011],
    [15, 0.01],
    [20, 0.01],
    [25, 0.03],
    [30, 0.055],
    [40, 0.025],
  ])('%s A: a power law of the rating', (ratingA, within) => {
    expectWithin(milli({ ratingA }), 1000 / (123 * ratingA ** -1.2), within);
  });
});

describe('laws', () => {
  it('goes with the millivolts; the tolerance lies around it', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-3, max: 100, noNaN: true }), evenlyWithEnds(0, 0.9), (dropMv, t) => {
        const found = fuseDropCurrent({ ...base, dropMv, fuseToleranceFraction: t });
        expectWithin(found.currentA, dropMv * found.currentAPerMv, 1e-12);
        expectWithin(found.lowA * found.coldOhm * (1 + t), dropMv / 1000, 1e-12);
        expectWithin(found.highA * found.coldOhm * (1 - t), dropMv / 1000, 1e-12);
      }),
    );
  });
  it('at rated current the warmth is that of the drop at rated current', () => {
    const { coldOhm } = fuseDropCurrent(base);
    // 10 A blade: 109 mV hot at 10 A, 77 mV were it cold.
    const { warmFraction } = fuseDropCurrent({ ...base, dropMv: 10 * coldOhm * 1000 });
    expectWithin(warmFraction, 109 / 77 - 1, 1e-9);
  });
  it('swapping two inputs of a kind is seen', () => swapsMatter(fuseDropCurrent, base));
});

describe('edges', () => {
  it('no millivolts, no current', () => expect(milli({ dropMv: 0 })).toBe(0));
  it('refuses nonsense', () => {
    refusesNonsense(fuseDropCurrent, base, { required: ['dropMv', 'fuseToleranceFraction', 'ratingA'] });
    expectInputError(() => fuseDropCurrent({ ...base, family: undefined as never }), 'family', 'missing');
    expectInputError(() => fuseDropCurrent({ ...base, ratingA: 12 }), 'ratingA', 'inTable');
    expectInputError(() => fuseDropCurrent({ ...base, ratingA: 35 }), 'ratingA', 'inTable');
    expectInputError(() => fuseDropCurrent({ ...base, family: boltInFuseSf30, ratingA: 100 }), 'ratingA', 'inTable');
    expectInputError(() => fuseDropCurrent({ ...base, fuseToleranceFraction: 1 }), 'fuseToleranceFraction', 'below');
    expectInputError(() => fuseDropCurrent({ ...base, dropMv: -1 }), 'dropMv', 'atLeast');
    expect(() => fuseDropCurrent({ ...base, dropMv: 1001 })).toThrow(
      'fuseDropCurrent: dropMv must be at most 1000, got 1001: a fuse with a volt across it is open',
    );
  });
  it('never runs out of numbers', () => neverRunsOut(fuseDropCurrent, base));
});
