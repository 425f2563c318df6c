import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { feetToM, hotConductorLength, type HotConductorLengthInput, mToFeet } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenlyWithEnds, swapsMatter } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';

const example: HotConductorLengthInput = {
  coldLengthM: feetToM(15.5),
  currentA: 20,
  maxCurrentA: 26,
  ambientTempC: 50,
  ratedTempC: 200,
};

describe('published', () => {
  computed(
    'T2 of example 2; the circular rounds it to 182',
    { source: 'ac-43-13-1b', place: 'page 11-27', status: 'derived' },
    () => expectPrinted(hotConductorLength(example).conductorTempC, '181.6'),
  );
  computed('T2 of example 2, rounded', { source: 'ac-43-13-1b', place: 'page 11-27', status: 'memory' }, () =>
    expectPrinted(hotConductorLength(example).conductorTempC, '182'),
  );
  computed('L2 of example 2', { source: 'ac-43-13-1b', place: 'page 11-27', status: 'memory' }, () =>
    expectPrinted(mToFeet(hotConductorLength(example).hotLengthM), '9.5'),
  );
  computed(
    'L2 of example 2 with T2 as 182',
    { source: 'ac-43-13-1b', place: 'page 11-22, 254.5 L1/(234.5 + T2)', status: 'published' },
    () => {
      const at182 = hotConductorLength({ ...example, currentA: 26, ratedTempC: 182 });
      expectPrinted(mToFeet(at182.hotLengthM), '9.47');
    },
  );
  computed(
    'aluminium: 258.1 L1/(238.1 + T2)',
    { source: 'ac-43-13-1b', place: 'page 11-22', status: 'published' },
    () =>
      expectWithin(
        hotConductorLength({ ...example, metal: 'aluminium', currentA: 26 }).hotLengthM,
        (258.1 * example.coldLengthM) / (238.1 + 200),
        1e-12,
      ),
  );
});

describe('laws', () => {
  it('is never warmer than the rating, and never cooler than the square law says', () => {
    fc.assert(
      fc.property(evenlyWithEnds(0, 1), (share) => {
        const { conductorTempC, hotLengthM } = hotConductorLength({ ...example, currentA: 26 * share });
        expect(conductorTempC).toBeLessThanOrEqual(200 + 1e-9);
        expect(conductorTempC).toBeGreaterThanOrEqual(50 + 150 * share * share - 1e-9);
        expect(hotLengthM).toBeLessThan(example.coldLengthM);
      }),
    );
  });
  it('at the limit it is the rating', () => {
    expectWithin(hotConductorLength({ ...example, currentA: 26 }).conductorTempC, 200, 1e-12);
  });
  it('changes when two inputs of a kind are swapped', () => swapsMatter(hotConductorLength, example));
});

describe('edges', () => {
  it('refuses a current above the limit, where the form is unsafe', () => {
    expect(() => hotConductorLength({ ...example, currentA: 39 })).toThrow(
      'hotConductorLength: currentA must be at most the limit of 26, got 39: above the limit this form is on the unsafe side: use conductorTemperature',
    );
  });
  it('refuses nonsense', () => {
    refusesNonsense(hotConductorLength, example, {
      required: ['coldLengthM', 'currentA', 'maxCurrentA', 'ambientTempC', 'ratedTempC'],
    });
    expectInputError(() => hotConductorLength({ ...example, ratedTempC: 50 }), 'ratedTempC', 'above');
    expectInputError(() => hotConductorLength({ ...example, metal: 'gold' as never }), 'metal', 'oneOf');
  });
});
