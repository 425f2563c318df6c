import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { bladeFuse, chooseFuse, type ChooseFuseInput, type ChosenFuse } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { computed, transcribed } from '../support/published.js';

const base: ChooseFuseInput = {
  family: bladeFuse,
  continuousA: 9,
  continuousFraction: 0.75,
  ambientTempC: 20,
  ampacityA: 30,
  overloadRule: 'iec-60364-4-43',
  farShortA: 200,
  clearWithinS: 0.5,
};
const chosen = (change: Partial<ChooseFuseInput>): ChosenFuse => {
  const result = chooseFuse({ ...base, ...change });
  if (!result.possible) throw new Error(result.because);
  return result;
};

describe('published', () => {
  const guide = { source: 'fuse-selection-guides', place: '9 A continuous at 25 °C, 75 %', status: 'derived' } as const;
  computed('9 A asks for 12 A: the next rating is 15 A', guide, () => expect(chosen({}).ratingA).toBe(15));
  // The worked figure takes the share at 85 °C as 0.75: 16 A, next rating 20 A.
  computed('the same at 85 °C asks for 16 A: 20 A', { ...guide, place: 're-rating 0.75 at 85 °C' }, () =>
    expect(chosen({ ambientTempC: 85 }).ratingA).toBe(20),
  );
  const short = { source: 'iso-8820-3', place: '12.6 V, 226.9 mΩ: 55.5 A at the far end', status: 'derived' } as const;
  computed('a 30 A fuse cannot see a far-end short of 55.5 A', short, () => {
    const result = chooseFuse({ ...base, continuousA: 22, ampacityA: 60, farShortA: 55.5 });
    expect(result).toMatchObject({ possible: false, code: 'no-rating-fits', nearest: { ratingA: 30 } });
  });
  computed('a 10 A fuse sees it, 5.55 times its rating', short, () => {
    const result = chosen({ continuousA: 6, farShortA: 55.5 });
    expect(result.ratingA).toBe(10);
    const check = result.checks.find(({ name }) => name === 'far-end short opens the fuse in time');
    expect((check?.value as number) / result.ratingA).toBeCloseTo(5.55, 9);
  });
  const rules = { source: 'iec-60364-4-43', place: '20 A blade on a wire of 22 A', status: 'memory' } as const;
  const on22 = (overloadRule: ChooseFuseInput['overloadRule']) =>
    chooseFuse({ ...base, continuousA: 15, ampacityA: 22, overloadRule });
  computed('rating at most the ampacity: yes', rules, () =>
    expect(on22('rating-at-most-ampacity')).toMatchObject({ possible: true, ratingA: 20 }),
  );
  computed('27 A at most 1.45 × 22 A = 31.9 A: yes', rules, () => {
    const result = on22('iec-60364-4-43');
    expect(result).toMatchObject({ possible: true, ratingA: 20 });
    const check = result.possible ? result.checks.find(({ name }) => name.includes('1.45')) : undefined;
    expect(check?.value).toBeCloseTo(27, 9);
    expect(check?.limit).toBeCloseTo(31.9, 9);
  });
  computed('27 A at most 22 A: no', rules, () => expect(on22('strict').possible).toBe(false));
  const cfr = { source: 'us-33-cfr-183', place: '183.455 (c)(1): 150 %', status: 'published' } as const;
  for (const [ampacityA, limit] of [
    [45, 67.5],
    [20, 30],
    [21.25, 31.875],
  ] as const) {
    computed(`150 % of ${ampacityA} A is ${limit} A`, cfr, () => {
      const check = chosen({ ampacityA, overloadRule: 'us-33-cfr-183-455' }).checks.find(({ name }) =>
        name.includes('150 %'),
      );
      expect(check?.limit).toBeCloseTo(limit, 9);
    });
  }
  const typeC = { source: 'iso-8820-3', place: 'type C, 35 and 40 A', status: 'published' } as const;
  [
    [100, 360000, null],
    [135, 0.75, 600],
    [160, 0.25, 50],
    [200, 0.15, 5],
    [350, 0.08, 0.5],
    [600, null, 0.15],
  ].forEach((row, i) =>
    transcribed(`${row[0]} % of rating`, typeC, () => expect(bladeFuse.limits[1]?.rows[i]).toEqual(row)),
  );
});

describe('laws', () => {
  it('a chosen fuse meets every check, and every smaller rating fails one', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 35, noNaN: true }),
        fc.double({ min: 1, max: 80, noNaN: true }),
        fc.double({ min: 1, max: 500, noNaN: true }),
        fc.constantFrom('strict', 'iec-60364-4-43', 'rating-at-most-ampacity', 'us-33-cfr-183-455'),
        (continuousA, ampacityA, farShortA, overloadRule) => {
          const input = { ...base, continuousA, ampacityA, farShortA, overloadRule } as ChooseFuseInput;
          const result = chooseFuse(input);
          if (!result.possible) return;
          expect(result.checks.every((check) => check.ok)).toBe(true);
          for (const ratingA of bladeFuse.ratingsA.filter((r) => r < result.ratingA)) {
            expect(chooseFuse({ ...input, family: { ...bladeFuse, ratingsA: [ratingA] } }).possible).toBe(false);
          }
        },
      ),
    );
  });
  it('a fuse that suits a wire suits every larger one, and more short current never hurts', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 25, noNaN: true }),
        fc.double({ min: 5, max: 60, noNaN: true }),
        fc.double({ min: 1, max: 3, noNaN: true }),
        (i, iz, k) => {
          const before = chooseFuse({ ...base, continuousA: i, ampacityA: iz });
          const after = chooseFuse({ ...base, continuousA: i, ampacityA: iz * k, farShortA: base.farShortA * k });
          if (before.possible) expect(after).toMatchObject({ possible: true, ratingA: before.ratingA });
        },
      ),
    );
  });
});

describe('edges', () => {
  it('has no answer where no printed limit is fast enough, and says so', () => {
    const result = chooseFuse({ ...base, clearWithinS: 0.01 });
    expect(result).toMatchObject({ possible: false, nearest: { ratingA: 15 } });
    const check = result.possible ? undefined : result.nearest?.checks.find(({ ok }) => !ok);
    expect(check).toMatchObject({
      limit: null,
      ok: false,
      because: 'no printed limit of blade-fuse opens within 0.01 s',
    });
  });
  it('refuses an ambient beyond the re-rating curve', () => {
    expectInputError(() => chooseFuse({ ...base, ambientTempC: 125.1 }), 'ambientTempC', 'atMost');
    expect(chosen({ ambientTempC: 125, continuousA: 2 }).ratingA).toBe(5);
  });
  it('refuses nonsense with the field that is at fault', () => {
    refusesNonsense(chooseFuse, base, {
      required: ['continuousA', 'continuousFraction', 'ambientTempC', 'ampacityA', 'farShortA', 'clearWithinS'],
    });
    expectInputError(() => chooseFuse({ ...base, family: undefined as never }), 'family', 'missing');
    expectInputError(() => chooseFuse({ ...base, overloadRule: 'mine' as never }), 'overloadRule', 'oneOf');
    expectInputError(() => chooseFuse({ ...base, continuousFraction: 0 }), 'continuousFraction', 'above');
  });
});
