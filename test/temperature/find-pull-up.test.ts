import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { divider, findPullUp, type FindPullUpInput } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenly, swapsMatter } from '../support/law.js';
import { expectWithin } from '../support/published.js';

const input: FindPullUpInput = {
  side: 'sensor-to-ground',
  supplyV: 5,
  knownOhm: 2200,
  inputV: 2.345,
  meterToleranceV: 0.01,
};

describe('independent', () => {
  it('finds the resistor of a divider again, on either side', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 100, max: 1e5, noNaN: true }),
        fc.double({ min: 100, max: 1e5, noNaN: true }),
        (knownOhm, pullOhm) => {
          const up = divider({ inV: 5, upperOhm: pullOhm, lowerOhm: knownOhm }).outV;
          expectWithin(findPullUp({ ...input, knownOhm, inputV: up, meterToleranceV: 0 }).pullOhm, pullOhm, 1e-9);
          const down = divider({ inV: 5, upperOhm: knownOhm, lowerOhm: pullOhm }).outV;
          const side = 'sensor-to-supply';
          expectWithin(
            findPullUp({ ...input, side, knownOhm, inputV: down, meterToleranceV: 0 }).pullOhm,
            pullOhm,
            1e-9,
          );
        },
      ),
    );
  });
});

describe('laws', () => {
  it('brackets the truth for every meter within its tolerance', () => {
    fc.assert(
      fc.property(
        evenly(-0.02, 0.02),
        evenly(-0.02, 0.02),
        fc.constantFrom('sensor-to-ground' as const, 'sensor-to-supply' as const),
        (offSupply, offInput, side) => {
          const found = findPullUp({ ...input, side, meterToleranceV: 0.02 });
          const true_ = findPullUp({
            ...input,
            ...{ side, supplyV: 5 + offSupply, inputV: 2.345 + offInput, meterToleranceV: 0 },
          }).pullOhm;
          expect(true_).toBeGreaterThanOrEqual(found.lowestOhm * (1 - 1e-12));
          expect(true_).toBeLessThanOrEqual(found.highestOhm! * (1 + 1e-12));
        },
      ),
    );
  });
  it('is sharpest where the input lies at half of the supply', () => {
    const width = (inputV: number): number => {
      const { pullOhm, lowestOhm, highestOhm } = findPullUp({ ...input, inputV });
      return (highestOhm! - lowestOhm) / pullOhm;
    };
    expect(width(2.5)).toBeLessThan(width(4.5));
    expect(width(2.5)).toBeLessThan(width(0.5));
  });
  it('sees swapped inputs', () => swapsMatter(findPullUp, input));
});

describe('edges', () => {
  it('has no upper bound where the meter might read nothing', () => {
    const { lowestOhm, highestOhm } = findPullUp({ ...input, inputV: 0.02, meterToleranceV: 0.02 });
    expect(highestOhm).toBeNull();
    expect(lowestOhm).toBeGreaterThan(0);
  });
  it('refuses nonsense', () => {
    refusesNonsense(findPullUp, input, { required: ['supplyV', 'knownOhm', 'inputV', 'meterToleranceV'] });
    expectInputError(() => findPullUp({ ...input, inputV: 5 }), 'inputV', 'below');
    expectInputError(() => findPullUp({ ...input, inputV: 4.99 }), 'inputV', 'below');
    expectInputError(() => findPullUp({ ...input, knownOhm: 0 }), 'knownOhm', 'above');
    expectInputError(() => findPullUp({ ...input, side: 'none' as never }), 'side', 'oneOf');
    expectInputError(() => findPullUp({ ...input, meterToleranceV: -1 }), 'meterToleranceV', 'atLeast');
  });
});
