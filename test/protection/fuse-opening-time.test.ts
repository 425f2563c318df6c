import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bladeFuse, boltInFuseSf51, fuseOpeningTime, largeBladeFuse, miniFuse } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenlyWithEnds, swapsMatter } from '../support/law.js';
import { computed, expectWithin, type Citation } from '../support/published.js';

const typeC: Citation = { source: 'iso-8820-3', place: 'type C, 35 and 40 A', status: 'published' };
const typeE: Citation = { source: 'iso-8820-3', place: 'type E', status: 'published' };

describe('published', () => {
  // Longest times of a 40 A blade at 135 … 600 %, and the I²t that they let through.
  for (const [percent, longestS, i2t] of [
    [135, 600, 1749600],
    [160, 50, 204800],
    [200, 5, 32000],
    [350, 0.5, 9800],
    [600, 0.15, 8640],
  ] as const) {
    computed(`40 A blade at ${percent} %: ${longestS} s, ${i2t} A²s`, typeC, () => {
      const result = fuseOpeningTime({ family: bladeFuse, ratingA: 40, currentA: 0.4 * percent });
      expect(result).toMatchObject({ longestS, longestBasis: 'published', mayNeverOpen: false });
      expectWithin(result.longestI2tA2s as number, i2t, 1e-12);
    });
  }
  for (const [percent, shortestS] of [
    [100, 360000],
    [135, 0.75],
    [160, 0.25],
    [200, 0.15],
    [350, 0.08],
  ] as const) {
    computed(`35 A blade at ${percent} % opens no sooner than ${shortestS} s`, typeC, () =>
      expect(fuseOpeningTime({ family: bladeFuse, ratingA: 35, currentA: 0.35 * percent })).toMatchObject({
        shortestS,
        shortestBasis: 'published',
      }),
    );
  }
  for (const [percent, shortestS, longestS] of [
    [135, 60, 1800],
    [200, 2, 50],
    [350, 0.2, 7],
    [600, 0.04, 1],
  ] as const) {
    computed(`30 A large blade at ${percent} %: ${shortestS} to ${longestS} s`, typeE, () =>
      expect(fuseOpeningTime({ family: largeBladeFuse, ratingA: 30, currentA: 0.3 * percent })).toMatchObject({
        shortestS,
        longestS,
      }),
    );
  }
  const mayNever: Citation = { source: 'iso-8820-3', place: 'no longest time below 135 %', status: 'published' };
  for (const percent of [100, 110, 120, 134]) {
    computed(`a 40 A blade may never open at ${percent} %`, mayNever, () =>
      expect(fuseOpeningTime({ family: bladeFuse, ratingA: 40, currentA: 0.4 * percent })).toMatchObject({
        mayNeverOpen: true,
        longestS: null,
        longestI2tA2s: null,
        sureToOpenA: 54,
      }),
    );
  }
});

describe('independent', () => {
  it('between two points the band is straight on logarithmic scales', () => {
    const { shortestS, longestS, shortestBasis, longestBasis } = fuseOpeningTime({
      family: bladeFuse,
      ratingA: 20,
      currentA: 50,
    });
    const between = (t1: number, t2: number): number =>
      Math.exp(Math.log(t1) + ((Math.log(250) - Math.log(200)) / (Math.log(350) - Math.log(200))) * Math.log(t2 / t1));
    expectWithin(shortestS as number, between(0.15, 0.04), 1e-12);
    expectWithin(longestS as number, between(5, 0.5), 1e-12);
    expect([shortestBasis, longestBasis]).toEqual(['interpolated', 'interpolated']);
  });
});

describe('laws', () => {
  it('opening time never rises with current, and the shortest never passes the longest', () => {
    const families = [bladeFuse, miniFuse, largeBladeFuse, boltInFuseSf51];
    fc.assert(
      fc.property(
        fc.constantFrom(...families),
        evenlyWithEnds(0, 0.999),
        fc.double({ min: 0.1, max: 20, noNaN: true }),
        fc.double({ min: 1, max: 3, noNaN: true }),
        (family, pick, ratio, more) => {
          const ratingA = family.ratingsA[Math.floor(pick * family.ratingsA.length)] as number;
          const low = fuseOpeningTime({ family, ratingA, currentA: ratio * ratingA });
          const high = fuseOpeningTime({ family, ratingA, currentA: ratio * ratingA * more });
          if (high.longestS !== null && low.longestS !== null) {
            expect(high.longestS).toBeLessThanOrEqual(low.longestS * (1 + 1e-12));
          }
          if (high.shortestS !== null) expect(high.shortestS).toBeLessThanOrEqual(low.shortestS! * (1 + 1e-12));
          if (!low.mayNeverOpen) expect(high.mayNeverOpen).toBe(false);
          if (low.shortestS !== null && low.longestS !== null) expect(low.shortestS).toBeLessThan(low.longestS);
        },
      ),
    );
  });
  it('a swap of rating and current changes the answer or is refused', () =>
    swapsMatter(fuseOpeningTime, { family: bladeFuse, ratingA: 30, currentA: 40 }));
});

describe('edges', () => {
  it('says bound below the first and above the last point, and nothing where none is printed', () => {
    const at = (currentA: number): ReturnType<typeof fuseOpeningTime> =>
      fuseOpeningTime({ family: bladeFuse, ratingA: 40, currentA });
    expect(at(1)).toMatchObject({ shortestS: 360000, shortestBasis: 'bound', shortestI2tA2s: null });
    expect(at(1000)).toMatchObject({
      shortestS: null,
      shortestBasis: null,
      longestS: 0.15,
      longestBasis: 'bound',
      longestI2tA2s: null,
    });
    expect(at(200)).toMatchObject({ shortestS: null, longestBasis: 'interpolated' });
    expect(at(1).sourceStatus).toBe('published');
    expect(fuseOpeningTime({ family: bladeFuse, ratingA: 10, currentA: 20 }).sourceStatus).toBe('memory');
  });
  it('refuses nonsense', () => {
    const base = { family: bladeFuse, ratingA: 20, currentA: 30 };
    refusesNonsense(fuseOpeningTime, base, { required: ['ratingA', 'currentA'] });
    expectInputError(() => fuseOpeningTime({ ...base, ratingA: 21 }), 'ratingA', 'inTable');
    expectInputError(() => fuseOpeningTime({ ...base, currentA: 0 }), 'currentA', 'above');
    expectInputError(() => fuseOpeningTime({ ...base, family: null as never }), 'family', 'object');
  });
});
