import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { feetToM, standardPressure } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenly } from '../support/law.js';
import { computed, expectPrinted } from '../support/published.js';

const kpa = (altitudeM: number): number => standardPressure({ altitudeM }).pressureKpa;

describe('published', () => {
  for (const [h, print] of [
    [0, '101.325'],
    [1000, '89.875'],
    [2000, '79.495'],
    [3000, '70.109'],
    [5000, '54.020'],
    [10000, '26.436'],
    [11000, '22.632'],
    [15000, '12.045'],
    [20000, '5.4749'],
  ] as const) {
    computed(
      `pressure at ${h} m`,
      { source: 'us-standard-atmosphere', place: 'table of pressure by geopotential altitude', status: 'memory' },
      () => expectPrinted(kpa(h), print, 1),
    );
  }
  computed(
    'pressure at 20 000 ft, 465.6 hPa',
    { source: 'us-standard-atmosphere', place: 'table in feet', status: 'memory' },
    () => expectPrinted(kpa(feetToM(20000)) * 10, '465.6'),
  );
});

describe('laws', () => {
  it('falls with altitude, without a step at 11 000 m', () => {
    expect(kpa(11000) / kpa(11000.001)).toBeCloseTo(1, 6);
    fc.assert(
      fc.property(evenly(-500, 19900), (h) => {
        expect(kpa(h + 10)).toBeLessThan(kpa(h));
      }),
    );
  });
});

describe('edges', () => {
  it('refuses nonsense and what lies outside', () => {
    refusesNonsense(standardPressure, { altitudeM: 0 }, { required: ['altitudeM'] });
    expectInputError(() => kpa(20001), 'altitudeM', 'atMost');
    expectInputError(() => kpa(-500.1), 'altitudeM', 'atLeast');
  });
});
