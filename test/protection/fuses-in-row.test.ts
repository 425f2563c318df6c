import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  bladeFuse,
  boltInFuseSf30,
  checkFuse,
  fuseOpeningTime,
  fusesInRow,
  type FusesInRowInput,
  largeBladeFuse,
  miniFuse,
  type UpstreamFuse,
} from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';

const main40: UpstreamFuse = { name: 'main', family: bladeFuse, ratingA: 40 };
const main100: UpstreamFuse = { name: 'main', family: boltInFuseSf30, ratingA: 100, meltingI2tA2s: 9000 };
const base: FusesInRowInput = { family: bladeFuse, ratingA: 10, upstream: main100, prospectiveA: 900 };

describe('published', () => {
  const band = { source: 'iso-8820-3', place: 'type C: 600 % within 0.1 s', status: 'memory' } as const;
  for (const [ratingA, print] of [
    [5, '90'],
    [10, '360'],
    [20, '1440'],
  ] as const) {
    computed(`${ratingA} A lets through ${print} A²s`, band, () =>
      expectPrinted(fusesInRow({ ...base, ratingA }).letThroughA2s, print),
    );
  }
  computed(
    '48 % of a melting I²t of 9000 A²s: 4320 A²s',
    { source: 'fuse-selection-guides', place: 'guide of 2017: 100 pulses', status: 'published' },
    () => expectPrinted(fusesInRow(base).bearsA2s!, '4320'),
  );
});

describe('independent', () => {
  it('a fine walk along the bands meets them where it says', () => {
    for (const [family, ratingA, up] of [
      [bladeFuse, 5, 20],
      [bladeFuse, 10, 40],
      [bladeFuse, 20, 40],
      [miniFuse, 7.5, 30],
    ] as const) {
      const { upToA } = fusesInRow({ ...base, family, ratingA, upstream: { ...main40, ratingA: up } });
      let last = 0;
      for (let currentA = 1.36 * ratingA; currentA < 6 * ratingA; currentA *= 1.0002) {
        const down = fuseOpeningTime({ family, ratingA, currentA });
        const above = fuseOpeningTime({ family: bladeFuse, ratingA: up, currentA });
        const carried = currentA <= 1.1 * up;
        if (!carried && (above.shortestS === null || down.longestS! >= above.shortestS)) break;
        last = currentA;
      }
      // Beyond its own last printed current the one downstream is as it is there.
      if (last < 5.99 * ratingA) expectWithin(upToA, last, 1e-3);
      else expect(upToA).toBeGreaterThanOrEqual(last);
    }
  });
  it('says what checkFuse says of the same pair', () => {
    for (const upstream of [main40, main100, { ...main100, meltingI2tA2s: 700 }]) {
      for (const ratingA of [5, 20] as const) {
        const { verdict, upToA } = fusesInRow({ ...base, ratingA, upstream });
        const judged = checkFuse({
          ...base,
          ratingA,
          upstream,
          continuousA: 1,
          continuousFraction: 0.75,
          ambientTempC: 20,
          ampacityA: 45,
          overloadRule: 'strict',
          farShortA: 90,
          clearWithinS: 0.5,
        });
        expect([judged.selectivity, judged.selectiveUpToA]).toEqual([verdict, upToA]);
      }
    }
  });
});

describe('laws', () => {
  it('more current never mends it, more melting I²t never harms it', () => {
    const rank = { kept: 2, 'not-printed': 1, 'not-kept': 0 };
    fc.assert(
      fc.property(
        fc.constantFrom(1, 3, 5, 10, 20, 40),
        fc.constantFrom(30, 60, 100, 150),
        fc.double({ min: 10, max: 3000, noNaN: true }),
        fc.double({ min: 1, max: 3, noNaN: true }),
        fc.double({ min: 1, max: 1e5, noNaN: true }),
        (ratingA, upRatingA, prospectiveA, k, meltingI2tA2s) => {
          const upstream = { ...main100, ratingA: upRatingA, meltingI2tA2s };
          const input = { ...base, ratingA, upstream, prospectiveA };
          const { verdict } = fusesInRow(input);
          expect(rank[fusesInRow({ ...input, prospectiveA: k * prospectiveA }).verdict]).toBeLessThanOrEqual(
            rank[verdict],
          );
          const better = fusesInRow({ ...input, upstream: { ...upstream, meltingI2tA2s: k * meltingI2tA2s } });
          expect(rank[better.verdict]).toBeGreaterThanOrEqual(rank[verdict]);
        },
      ),
    );
  });
  it('two alike never keep apart, and to swap both is seen', () => {
    for (const family of [bladeFuse, miniFuse, largeBladeFuse]) {
      const ratingA = family.ratingsA[2]!;
      const alike = fusesInRow({ ...base, family, ratingA, upstream: { name: 'main', family, ratingA } });
      expect(alike).toMatchObject({ ok: false, verdict: 'not-kept' });
    }
    const turned = { family: bladeFuse, ratingA: 40, upstream: { name: 'main', family: bladeFuse, ratingA: 5 } };
    expect(fusesInRow({ ...turned, prospectiveA: 900 }).verdict).toBe('not-kept');
    expect(fusesInRow({ ...base, ratingA: 5, upstream: main40 }).verdict).toBe('kept');
  });
});

describe('edges', () => {
  it('where nothing is printed it says so', () => {
    const upstream = { name: 'main', family: boltInFuseSf30, ratingA: 100 };
    const open = fusesInRow({ ...base, upstream });
    expect(open).toMatchObject({ ok: false, verdict: 'not-printed', bearsA2s: null, upToA: 600 });
    expect(fusesInRow({ ...base, upstream, prospectiveA: 600 })).toMatchObject({ ok: true, verdict: 'kept' });
  });
  it('refuses nonsense', () => {
    refusesNonsense(fusesInRow, base, { required: ['prospectiveA'] });
    expectInputError(() => fusesInRow({ ...base, ratingA: 11 }), 'ratingA', 'inTable');
    expectInputError(() => fusesInRow({ ...base, family: null as never }), 'family');
    expectInputError(() => fusesInRow({ ...base, upstream: undefined as never }), 'upstream', 'missing');
    expectInputError(
      () => fusesInRow({ ...base, upstream: { ...main40, ratingA: 41 } }),
      'upstream.ratingA',
      'inTable',
    );
    expectInputError(() => fusesInRow({ ...base, upstream: { ...main40, name: '' } }), 'upstream.name', 'text');
    const none = { ...main100, meltingI2tA2s: 0 };
    expectInputError(() => fusesInRow({ ...base, upstream: none }), 'upstream.meltingI2tA2s', 'above');
  });
});
