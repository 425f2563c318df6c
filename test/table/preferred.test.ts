import { describe, expect, it } from 'vitest';
import { e12, e192, e24, e3, e48, e6, e96, type PreferredSeries } from 'loomwright';
import { transcribed } from '../support/published.js';

// Typed from the printed lists, apart from the code.
const PRINT: readonly (readonly [PreferredSeries, number, string])[] = [
  [e3, 3, '10 22 47'],
  [e6, 6, '10 15 22 33 47 68'],
  [e12, 12, '10 12 15 18 22 27 33 39 47 56 68 82'],
  [e24, 24, '10 11 12 13 15 16 18 20 22 24 27 30 33 36 39 43 47 51 56 62 68 75 82 91'],
  [
    e48,
    48,
    '100 105 110 115 121 127 133 140 147 154 162 169 178 187 196 205 215 226 237 249 261 274 287 301 316 332 348 365 ' +
      '383 402 422 442 464 487 511 536 562 590 619 649 681 715 750 787 825 866 909 953',
  ],
  [
    e96,
    96,
    '100 102 105 107 110 113 115 118 121 124 127 130 133 137 140 143 147 150 154 158 162 165 169 174 178 182 187 191 ' +
      '196 200 205 210 215 221 226 232 237 243 249 255 261 267 274 280 287 294 301 309 316 324 332 340 348 357 365 ' +
      '374 383 392 402 412 422 432 442 453 464 475 487 499 511 523 536 549 562 576 590 604 619 634 649 665 681 698 ' +
      '715 732 750 768 787 806 825 845 866 887 909 931 953 976',
  ],
  [
    e192,
    192,
    '100 101 102 104 105 106 107 109 110 111 113 114 115 117 118 120 121 123 124 126 127 129 130 132 133 135 137 138 ' +
      '140 142 143 145 147 149 150 152 154 156 158 160 162 164 165 167 169 172 174 176 178 180 182 184 187 189 191 ' +
      '193 196 198 200 203 205 208 210 213 215 218 221 223 226 229 232 234 237 240 243 246 249 252 255 258 261 264 ' +
      '267 271 274 277 280 284 287 291 294 298 301 305 309 312 316 320 324 328 332 336 340 344 348 352 357 361 365 ' +
      '370 374 379 383 388 392 397 402 407 412 417 422 427 432 437 442 448 453 459 464 470 475 481 487 493 499 505 ' +
      '511 517 523 530 536 542 549 556 562 569 576 583 590 597 604 612 619 626 634 642 649 657 665 673 681 690 698 ' +
      '706 715 723 732 741 750 759 768 777 787 796 806 816 825 835 845 856 866 876 887 898 909 920 931 942 953 965 ' +
      '976 988',
  ],
];

describe('published', () => {
  for (const [series, count, print] of PRINT) {
    transcribed(series.key, { source: 'iec-60063', place: `series ${series.key}`, status: 'published' }, () => {
      expect(series.values.join(' ')).toBe(print);
      expect(series.values).toHaveLength(count);
    });
  }
});

describe('independent', () => {
  // 10^(i/n) rounded to the digits of the series, with the exceptions that the printed lists have.
  const exceptions: Readonly<Record<string, readonly number[]>> = {
    E3: [2],
    E6: [3, 4],
    E12: [5, 6, 7, 8, 11],
    E24: [10, 11, 12, 13, 14, 15, 16, 22],
    E48: [],
    E96: [],
    E192: [185],
  };
  for (const [{ key, values }, n] of PRINT) {
    it(`${key} is 10^(i/${n}) rounded, but for ${exceptions[key]!.length} values`, () => {
      const scale = n <= 24 ? 10 : 100;
      const off = values.flatMap((value, i) => (value === Math.round(scale * 10 ** (i / n)) ? [] : [i]));
      expect(off).toEqual(exceptions[key]);
    });
  }
});

describe('laws', () => {
  it('rises within the decade and closes on the next', () => {
    for (const [{ values }] of PRINT) {
      values.forEach((value, i) => {
        expect(value).toBeLessThan(values[i + 1] ?? values[0]! * 10);
      });
    }
  });
  it('holds the coarser series of its own kind, and not those of the other', () => {
    const within = (a: PreferredSeries, b: PreferredSeries): boolean => a.values.every((v) => b.values.includes(v));
    for (const [a, b] of [
      [e6, e12],
      [e12, e24],
      [e48, e96],
      [e96, e192],
    ] as const)
      expect(within(a, b)).toBe(true);
    const both = e24.values.filter((v) => e96.values.includes(v * 10));
    expect(both.map((v) => v * 10)).toEqual([100, 110, 130, 150, 200, 750]);
  });
});
