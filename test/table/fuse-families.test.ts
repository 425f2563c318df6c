import { describe, expect, it } from 'vitest';
import {
  bladeFuse,
  boltInFuseSf30,
  boltInFuseSf51,
  type FuseFamily,
  fusePulses,
  largeBladeFuse,
  miniFuse,
} from 'loomwright';
import { expectWithin, transcribed, type Citation } from '../support/published.js';

const families: readonly FuseFamily[] = [bladeFuse, miniFuse, largeBladeFuse, boltInFuseSf30, boltInFuseSf51];

describe('published', () => {
  const limits = (
    family: FuseFamily,
    cite: Citation,
    rows: readonly (readonly [number, number | null, number | null])[],
  ): void => {
    for (const [i, row] of rows.entries()) {
      transcribed(`${family.key} at ${row[0]} %`, cite, () => expect(family.limits[0]?.rows[i]).toEqual(row));
    }
    it(`${family.key} has ${rows.length} rows`, () => expect(family.limits[0]?.rows).toHaveLength(rows.length));
  };
  limits(largeBladeFuse, { source: 'iso-8820-3', place: 'type E, component data', status: 'published' }, [
    [100, 360000, null],
    [135, 60, 1800],
    [200, 2, 50],
    [350, 0.2, 7],
    [600, 0.04, 1],
  ]);
  limits(miniFuse, { source: 'iso-8820-3', place: 'type F', status: 'memory' }, [
    [110, 360000, null],
    [135, 0.75, 600],
    [160, 0.25, 50],
    [200, 0.15, 5],
    [350, 0.04, 0.5],
    [600, null, 0.1],
  ]);
  for (const family of [boltInFuseSf30, boltInFuseSf51]) {
    limits(family, { source: 'iso-8820-5', place: 'SF30 and SF51', status: 'memory' }, [
      [75, 14400, null],
      [135, 120, 1800],
      [200, 1, 20],
      [350, 0.3, 5],
      [600, 0.1, 1],
    ]);
  }
  const large: Citation = { source: 'iso-8820-3', place: 'type E, component data', status: 'published' };
  for (const [ratingA, milliohm, i2t] of [
    [30, 1.9, 4100],
    [35, 1.7, 6000],
    [40, 1.4, 8500],
  ] as const) {
    transcribed(`large blade ${ratingA} A: ${milliohm} mΩ, ${i2t} A²s`, large, () => {
      expect(largeBladeFuse.coldMilliohm).toContainEqual([ratingA, milliohm]);
      expect(largeBladeFuse.meltingI2t).toContainEqual([ratingA, i2t]);
    });
  }
  transcribed('large blade 40 A: 75 mV at rated current', large, () =>
    expect(largeBladeFuse.dropMillivolt).toEqual([[40, 75]]),
  );
  const mini: Citation = { source: 'blade-fuse-data', place: 'small size', status: 'memory' };
  for (const [ratingA, milliohm, drop, i2t] of [
    [2, 58, 171, 2],
    [3, 33, 153, 5],
    [4, 24, 140, 9],
    [5, 17.6, 130, 19],
    [7.5, 11, 119, 46],
    [10, 7.54, 107, 77],
    [15, 4.58, 101, 180],
    [20, 3.21, 95, 380],
    [25, 2.36, 91, 620],
    [30, 1.85, 87, 970],
  ] as const) {
    transcribed(`mini ${ratingA} A: ${milliohm} mΩ, ${drop} mV, ${i2t} A²s`, mini, () => {
      expect(miniFuse.coldMilliohm).toContainEqual([ratingA, milliohm]);
      expect(miniFuse.dropMillivolt).toContainEqual([ratingA, drop]);
      expect(miniFuse.meltingI2t).toContainEqual([ratingA, i2t]);
    });
  }
  const guide: Citation = { source: 'fuse-selection-guides', place: 'chart 2, 2017', status: 'published' };
  for (const row of [
    [100, 0.48],
    [1000, 0.38],
    [10000, 0.29],
    [100000, 0.22],
  ] as const) {
    transcribed(`${row[0]} pulses: ${row[1]}`, guide, () => expect(fusePulses.rows).toContainEqual(row));
  }
});

describe('laws', () => {
  it('ratings rise, limits rise in current and fall in time, and the shortest lies below the longest', () => {
    for (const { key, ratingsA, limits } of families) {
      expect(
        [...ratingsA].sort((a, b) => a - b),
        key,
      ).toEqual(ratingsA);
      for (const { rows, upToA } of limits) {
        expect(upToA).toBeGreaterThanOrEqual(ratingsA[0] as number);
        for (let i = 0; i < rows.length; i++) {
          const [percent, shortestS, longestS] = rows[i]!;
          if (shortestS !== null && longestS !== null) expect(shortestS, key).toBeLessThan(longestS);
          if (i === 0) continue;
          const [before, shorter, longer] = rows[i - 1]!;
          expect(percent).toBeGreaterThan(before);
          if (shortestS !== null && shorter !== null) expect(shortestS).toBeLessThan(shorter);
          if (longestS !== null && longer !== null) expect(longestS).toBeLessThan(longer);
        }
      }
      expect(limits.at(-1)!.upToA, key).toBeGreaterThanOrEqual(ratingsA.at(-1)!);
    }
  });
  it('typical figures belong to ratings that are made; resistance falls and melting I²t rises with the rating', () => {
    for (const { ratingsA, coldMilliohm, dropMillivolt, meltingI2t } of families) {
      for (const rows of [coldMilliohm, dropMillivolt, meltingI2t]) {
        for (const [ratingA] of rows) expect(ratingsA).toContain(ratingA);
      }
      for (let i = 1; i < coldMilliohm.length; i++) expect(coldMilliohm[i]![1]).toBeLessThan(coldMilliohm[i - 1]![1]);
      for (let i = 1; i < meltingI2t.length; i++) expect(meltingI2t[i]![1]).toBeGreaterThan(meltingI2t[i - 1]![1]);
    }
  });
  it('a typical fuse is hotter at rated current than cold: 1.2 to 1.8 times the resistance', () => {
    for (const { coldMilliohm, dropMillivolt } of families) {
      for (const [ratingA, drop] of dropMillivolt) {
        const cold = coldMilliohm.find(([rating]) => rating === ratingA)![1];
        expect(drop / ratingA / cold).toBeGreaterThan(1.2);
        expect(drop / ratingA / cold).toBeLessThan(1.8);
      }
    }
  });
  it('cold resistance of medium blades follows 123 × I^−1.20 mΩ within 7 %', () => {
    for (const [ratingA, milliohm] of bladeFuse.coldMilliohm) expectWithin(milliohm, 123 * ratingA ** -1.2, 0.07);
  });
  it('a fuse of typical melting I²t opens inside its band at 350 % of its rating', () => {
    for (const family of [bladeFuse, miniFuse, largeBladeFuse]) {
      for (const [ratingA, i2t] of family.meltingI2t.filter(([r]) => r >= 7.5)) {
        const rows = (family.limits.find(({ upToA }) => ratingA <= upToA) ?? family.limits[0]!).rows;
        const [, shortestS, longestS] = rows.find(([percent]) => percent === 350)!;
        const timeS = i2t / (3.5 * ratingA) ** 2;
        expect(timeS, `${family.key} ${ratingA}`).toBeGreaterThan(shortestS!);
        expect(timeS, `${family.key} ${ratingA}`).toBeLessThan(longestS!);
      }
    }
  });
});
