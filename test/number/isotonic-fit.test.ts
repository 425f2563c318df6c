import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { isotonicFit } from 'loomwright';
import { expectInputError } from '../support/edge.js';
import { evenly } from '../support/law.js';
import { type Citation, computed, expectPrinted } from '../support/published.js';

const fn = 'test';

/** The fit as one value a point. */
function fitted(values: readonly number[], weights?: readonly number[]): number[] {
  const blocks = isotonicFit({ fn, values, ...(weights === undefined ? {} : { weights }) });
  return blocks.flatMap(({ fromIndex, toIndex, value }) =>
    Array.from({ length: toIndex - fromIndex + 1 }, () => value),
  );
}

describe('published', () => {
  const worked: Citation = { source: 'ayer-1955', place: 'pooled by hand', status: 'derived' };
  // 3 and 2 pool to 2.5. Then 9, 4 and 5: 9 and 4 to 6.5, with 5 to 6. Last, 5.5 pulls all four to 5.875.
  const print = '1 2.5 2.5 5.875 5.875 5.875 5.875 8'.split(' ');
  fitted([1, 3, 2, 9, 4, 5, 5.5, 8]).forEach((value, i) => {
    computed(`place ${i}: ${print[i]!}`, worked, () => expectPrinted(value, print[i]!));
  });
  computed('three times the weight draws the mean of 4 and 0 to 1', worked, () => {
    expect(fitted([4, 0], [1, 3])).toEqual([1, 1]);
  });
});

interface Case {
  readonly kind: string;
  readonly values: readonly number[];
  readonly weights: readonly number[];
  readonly fit: readonly number[];
}
const { cases } = JSON.parse(readFileSync(new URL('isotonic.json', import.meta.url), 'utf8')) as {
  cases: readonly Case[];
};

describe('independent', () => {
  it.each(cases.map((each) => [`${each.kind}, ${each.values.length}`, each] as const))(
    'non-negative least squares give the same: %s',
    (_, { values, weights, fit }) => {
      const ours = fitted(values, weights);
      expect(ours.length).toBe(fit.length);
      fit.forEach((value, i) => expect(Math.abs(ours[i]! - value)).toBeLessThan(1e-9));
    },
  );
  it('the greatest of the least means from each start says the same', () => {
    const list = fc.array(fc.tuple(fc.integer({ min: -20, max: 20 }), fc.integer({ min: 1, max: 5 })), {
      minLength: 1,
      maxLength: 12,
    });
    fc.assert(
      fc.property(list, (pairs) => {
        const [values, weights] = [pairs.map(([v]) => v), pairs.map(([, w]) => w)];
        const mean = (from: number, to: number): number => {
          let [sum, all] = [0, 0];
          for (let i = from; i <= to; i++) {
            sum += values[i]! * weights[i]!;
            all += weights[i]!;
          }
          return sum / all;
        };
        fitted(values, weights).forEach((value, i) => {
          let greatest = -Infinity;
          for (let from = 0; from <= i; from++) {
            let least = Infinity;
            for (let to = i; to < values.length; to++) least = Math.min(least, mean(from, to));
            greatest = Math.max(greatest, least);
          }
          expect(Math.abs(value - greatest)).toBeLessThan(1e-12 * 20);
        });
      }),
    );
  });
});

describe('laws', () => {
  it('what rises already stays, what only falls becomes its mean', () => {
    expect(fitted([1, 2, 4, 9])).toEqual([1, 2, 4, 9]);
    expect(fitted([9, 4, 2, 1])).toEqual([4, 4, 4, 4]);
  });
  it('blocks rise, follow one another and keep the sum', () => {
    fc.assert(
      fc.property(fc.array(evenly(-100, 100), { minLength: 1 }), (values) => {
        const blocks = isotonicFit({ fn, values });
        let next = 0;
        let sum = 0;
        blocks.forEach(({ fromIndex, toIndex, value }, i) => {
          expect(fromIndex).toBe(next);
          next = toIndex + 1;
          sum += value * (next - fromIndex);
          if (i > 0) expect(value).toBeGreaterThan(blocks[i - 1]!.value);
        });
        expect(next).toBe(values.length);
        expect(Math.abs(sum - values.reduce((a, b) => a + b, 0))).toBeLessThan(1e-9);
      }),
    );
  });
});

describe('edges', () => {
  it('refuses what is no list of numbers with weights', () => {
    expectInputError(() => isotonicFit({ fn, values: [] }), 'values', 'list');
    expectInputError(() => isotonicFit({ fn, values: [1, 2], weights: [1] }), 'values', 'list');
    for (const bad of [NaN, Infinity]) expectInputError(() => isotonicFit({ fn, values: [1, bad] }), 'values[1]');
    for (const bad of [0, -1, NaN, Infinity]) {
      expectInputError(() => isotonicFit({ fn, values: [1, 2], weights: [1, bad] }), 'values[1]', 'finite');
    }
  });
  it('one value is its own fit', () => {
    expect(isotonicFit({ fn, values: [3] })).toEqual([{ fromIndex: 0, toIndex: 0, value: 3 }]);
  });
});
