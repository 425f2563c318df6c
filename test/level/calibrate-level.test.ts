import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  calibrateLevel,
  type CalibrateLevelInput,
  type CalibrateLevelResult,
  type LevelCalibration,
  type LevelCan,
  tankVolume,
} from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { neverRunsOut } from '../support/extremes.js';
import { evenly, swapsMatter } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';

type Pairs = readonly (readonly [totalL: number, reading: number])[];
const list = (pairs: Pairs): LevelCan[] => pairs.map(([totalL, readingValue]) => ({ totalL, readingValue }));
const base: CalibrateLevelInput = {
  cans: list([
    [0, 90],
    [20, 60],
    [40, 10],
  ]),
  readingUnit: 'Ω',
  readingGoes: 'down',
  noiseValue: 0.5,
  canToleranceFraction: 0.01,
  canErrors: 'same-can',
  coverageFactor: 2,
  noughtAtL: 0,
  unusableL: 0,
  deadShows: 'least',
  between: 'straight',
  mostGapL: 20,
  cellCount: 2,
  wantedErrorL: null,
  readingStepValue: null,
  shownStepL: null,
};
const up: CalibrateLevelInput = { ...base, readingUnit: 'V', readingGoes: 'up' };

/** The answer where there must be one. */
function made(input: CalibrateLevelInput): LevelCalibration {
  const result: CalibrateLevelResult = calibrateLevel(input);
  if (!result.possible) throw new Error(result.because);
  return result;
}
const codes = (input: CalibrateLevelInput): readonly string[] => made(input).warnings.map(({ code }) => code);

describe('published', () => {
  const byHand = (place: string) =>
    ({ source: 'imai-iri-1988', place: `by hand: ${place}`, status: 'derived' }) as const;
  // From 90 Ω, 0 L to 10 Ω, 40 L a straight line has 15 L at 60 Ω.
  const two = byHand('two cells');
  computed('two cells miss the bend by 5 L', two, () => {
    const { worstErrorL, worstReadingValue, worstCanErrorL, worstCanL } = made(base);
    expectPrinted(worstErrorL, '5.000');
    expectPrinted(worstReadingValue, '60.000');
    expectPrinted(worstCanErrorL, '5.000');
    expectPrinted(worstCanL, '20.000');
  });
  computed('three cells miss nothing', two, () => {
    const { cells, worstErrorL } = made({ ...base, cellCount: 3 });
    expect(cells).toEqual([
      { readingValue: 10, shownL: 40 },
      { readingValue: 60, shownL: 20 },
      { readingValue: 90, shownL: 0 },
    ]);
    expect(worstErrorL).toBe(0);
  });
  computed('5 L allowed need two cells, 4.9 L three', two, () => {
    expect(made({ ...base, cellCount: null, wantedErrorL: 5 }).cells.length).toBe(2);
    expect(made({ ...base, cellCount: null, wantedErrorL: 4.9 }).fewestCount).toBe(3);
  });
  computed('two cells cannot keep 4.9 L: the nearest misses by 5, and 3 would do', two, () => {
    const result = calibrateLevel({ ...base, wantedErrorL: 4.9 });
    expect(result).toMatchObject({ possible: false, code: 'too-few-cells', because: '2 cells leave 5 L; 3 would do' });
    if (!result.possible) expectPrinted(result.nearest!.worstErrorL, '5.0');
  });
  computed('nought at 10 L: half way from 90 to 60 Ω', two, () => {
    const { cells } = made({ ...base, cellCount: 4, noughtAtL: 10 });
    expect(cells.map(({ shownL }) => Number(shownL.toFixed(9)))).toEqual([30, 10, 0, 0]);
    expectPrinted(cells[2]!.readingValue, '75.0000');
  });
  // Held in whole 25 Ω: 0, 50 and 100. Drawn on: at 0 Ω 44 L, kept to 40; at 50 Ω 24 L; below nothing at 100 Ω: 0.
  computed('held in steps of 25 Ω', byHand('rounding'), () => {
    const { cells, worstErrorL, roundingLossL, leastErrorL } = made({ ...base, cellCount: 3, readingStepValue: 25 });
    expect(cells).toEqual([
      { readingValue: 0, shownL: 40 },
      { readingValue: 50, shownL: 24 },
      { readingValue: 100, shownL: 0 },
    ]);
    // At 90 Ω 4.8 L are shown and none is there; at 10 Ω 36.8 for 40.
    expectPrinted(worstErrorL, '4.800');
    expectPrinted(roundingLossL, '4.800');
    expect(leastErrorL).toBe(0);
  });
  computed('litres held in steps of 7: 42 and 21', byHand('rounding'), () => {
    const { cells } = made({ ...base, cellCount: 3, shownStepL: 7 });
    expect(cells.map(({ shownL }) => shownL)).toEqual([42, 21, 0]);
  });

  const pooled = { source: 'ayer-1955', place: 'pooled by hand', status: 'derived' } as const;
  // 38 after 40 becomes 39 for both, 12.5 L; each is off by 1, and noise of 2 allows 2 · 2 · √½ = 2.8.
  const wiggle: CalibrateLevelInput = {
    ...up,
    cans: list([
      [0, 10],
      [5, 20],
      [10, 40],
      [15, 38],
      [20, 60],
    ]),
    noiseValue: 2,
    cellCount: 9,
  };
  computed('two readings that cross by less than noise', pooled, () => {
    const { cans, curve, warnings } = made(wiggle);
    expectPrinted(cans[2]!.fittedValue, '39.000');
    expectPrinted(cans[2]!.offValue, '1.000');
    expectPrinted(cans[3]!.offValue, '-1.000');
    expectPrinted(curve.find(({ readingValue }) => readingValue === 39)!.volumeL, '12.500');
    // They are one reading to the sender: that is said.
    expect(warnings.map(({ code }) => code)).toEqual(['dead-middle']);
  });
  computed('the same two with a noise of 0.7: either may be at fault', pooled, () => {
    const { warnings } = made({ ...wiggle, noiseValue: 0.7 });
    expect(warnings.map(({ code, fromL }) => [code, fromL])).toEqual([
      ['can-off', 10],
      ['can-off', 15],
    ]);
    expect(warnings[0]!.message).toBe(
      'the reading at 10 L goes against the others by more than noise, or that at 15 L does',
    );
  });

  const gum = (place: string) => ({ source: 'jcgm-100', place, status: 'derived' }) as const;
  const twelve: CalibrateLevelInput = {
    ...up,
    cans: list(Array.from({ length: 13 }, (_, i): [number, number] => [5 * i, 1 + 0.25 * i])),
    noiseValue: 0.02,
    cellCount: 2,
  };
  computed('one can of 1 % twelve times: 60 L ± 0.6/√3', gum('4.3.7, the same can'), () => {
    expectPrinted(made(twelve).cans[12]!.canL, '0.3464');
    expectPrinted(made(twelve).cans[6]!.canL, '0.1732');
  });
  computed('twelve cans of 1 %: 0.05 √12 / √3', gum('5.1.2, cans of their own'), () => {
    expectPrinted(made({ ...twelve, canErrors: 'each-its-own' }).cans[12]!.canL, '0.1000');
  });
  // 5 L for 0.25 V: 0.02 V are 0.4 L. Band: 2 √(0.3464² + 0.4²).
  computed('noise of 0.02 V at 20 L/V is 0.4 L; the band at full 1.0583 L', gum('5.1.2'), () => {
    const { cans, noiseMostL, widestBandL } = made(twelve);
    expectPrinted(cans[12]!.curveL, '0.4000');
    expectPrinted(cans[12]!.readingL, '0.4000');
    expectPrinted(widestBandL, '1.0583');
    expectPrinted(noiseMostL, '0.8000');
  });
  // Repeats 1.00 1.02 0.98 and 2.00 2.02: squares 0.0008 and 0.0002 over 2 + 1 degrees of freedom.
  computed('noise from repeats: √(0.0010/3)', gum('4.2.2 and 4.2.4, pooled'), () => {
    const repeated: CalibrateLevelInput = {
      ...up,
      cans: list([
        [0, 1],
        [0, 1.02],
        [0, 0.98],
        [10, 2],
        [10, 2.02],
        [20, 3],
      ]),
      noiseValue: null,
    };
    const { noiseValue, degreesOfFreedom, cans } = made(repeated);
    expectPrinted(noiseValue, '0.018257');
    expect(degreesOfFreedom).toBe(3);
    expectPrinted(cans[3]!.fittedValue, '2.01000');
    // Three readings of the first can know it √3 better: 0.018257/√3 · 10/1.01 L.
    expectPrinted(cans[0]!.curveL, '0.10437');
  });

  const flat = byHand('dead zones');
  // 100 100 100 at 0, 5, 10 L, then 90 at 15 and 70 at 20: the line through these meets 100 at 12.5 L.
  // At the top 50 at 25 and 45 at 30, then 44 44: the line through 50 and 45 meets 44 at 31 L.
  const dead: CalibrateLevelInput = {
    ...base,
    cans: list([
      [0, 100],
      [5, 100],
      [10, 100],
      [15, 90],
      [20, 70],
      [25, 50],
      [30, 45],
      [35, 44],
      [40, 44],
    ]),
    noiseValue: 0.1,
    cellCount: 20,
    mostGapL: 5,
  };
  computed('hidden at the bottom 12.5 L, at the top 9 L', flat, () => {
    const [bottom, top] = made(dead).zones;
    expect(bottom).toMatchObject({ where: 'bottom', readingValue: 100, fromL: 0, toL: 10 });
    expectPrinted(bottom!.hiddenL, '12.500');
    expect(top).toMatchObject({ where: 'top', readingValue: 44, fromL: 35, toL: 40 });
    expectPrinted(top!.turnL, '31.000');
    expectPrinted(top!.hiddenL, '9.000');
  });
  computed('the least shows 0 and 31 L there, the most 12.5 and 40', flat, () => {
    const ends = (deadShows: 'least' | 'most') => {
      const { cells } = made({ ...dead, deadShows });
      return [cells.at(-1)!.shownL, cells[0]!.shownL];
    };
    ends('least').forEach((litres, i) => expectPrinted(litres, ['0.000', '31.000'][i]!));
    ends('most').forEach((litres, i) => expectPrinted(litres, ['12.500', '40.000'][i]!));
  });
  computed('in the dead zone the deviation is 12.5/√12 L', flat, () => {
    expectPrinted(made(dead).cans[1]!.curveL, '3.6084');
    expect(made(dead).cans.map((can) => can.dead)).toEqual([
      true,
      true,
      true,
      ...Array<boolean>(4).fill(false),
      true,
      true,
    ]);
  });
  computed('with nought at 14 L and 11 that the pump leaves, 3 L are in reserve', flat, () => {
    const shown = { ...dead, noughtAtL: 14, unusableL: 11 };
    expectPrinted(made(shown).reserveL, '3.000');
    expect(codes(shown)).not.toContain('unusable-shown');
    expectPrinted(made(dead).reserveL, '0.000');
    const { warnings } = made({ ...dead, unusableL: 11 });
    expect(warnings.find(({ code }) => code === 'unusable-shown')!.message).toBe(
      'the pump draws air while up to 11 L are shown',
    );
  });
});

/** A lying tank with a float whose ohms follow the level, filled by cans: what it holds is known in closed form. */
const tank = { shape: 'lying', lengthMm: 600, widthMm: 360, heightMm: null, headDepthMm: 0, tiltDeg: 0 } as const;
const litresAt = (levelMm: number): number =>
  tankVolume({ ...tank, levelMm, measuredFromLowMm: 0, crossTiltDeg: 0, measuredFromLowSideMm: 0, rowCount: 1 })
    .volumeL;
const ohmAt = (levelMm: number): number => 240 - (207 * levelMm) / 360;
function ohmFor(litres: number): number {
  let [low, high] = [0, 360];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (litresAt(middle) < litres) low = middle;
    else high = middle;
  }
  return ohmAt((low + high) / 2);
}
const wholeL = litresAt(360);
const filled = (count: number): LevelCan[] =>
  Array.from({ length: count + 1 }, (_, i) => {
    const totalL = Math.min(wholeL, (wholeL * i) / count);
    return { totalL, readingValue: ohmFor(totalL) };
  });
const lying: CalibrateLevelInput = {
  ...base,
  cans: filled(12),
  between: 'smooth',
  cellCount: 6,
  noiseValue: 0.2,
};

describe('independent', () => {
  it.each([
    ['smooth', 0.3],
    ['straight', 0.8],
  ] as const)('twelve cans know a lying tank to %s: within litres of its closed form', (between, limit) => {
    const { curve } = made({ ...lying, between });
    let worst = 0;
    for (const { readingValue, volumeL } of curve) {
      worst = Math.max(worst, Math.abs(volumeL - litresAt(((240 - readingValue) * 360) / 207)));
    }
    expect(worst).toBeLessThan(limit);
    // At the cans themselves it is exact.
    for (const { errorL } of made({ ...lying, between, cellCount: 1000 }).cans)
      expect(Math.abs(errorL)).toBeLessThan(1e-9);
  });
  it('more cans are nearer to it, and a smooth curve nearer than straight lines', () => {
    const off = (count: number, between: 'smooth' | 'straight'): number => {
      const { curve } = made({ ...lying, cans: filled(count), between });
      return Math.max(
        ...curve.map(({ readingValue, volumeL }) => Math.abs(volumeL - litresAt(((240 - readingValue) * 360) / 207))),
      );
    };
    for (const between of ['smooth', 'straight'] as const) expect(off(24, between)).toBeLessThan(off(8, between) / 2);
    expect(off(12, 'smooth')).toBeLessThan(off(12, 'straight'));
  });
  /** Worst error of the best table of so many points, every choice weighed: dynamic programming on chords. */
  function leastByAll(points: LevelCalibration['curve'], count: number): number {
    const n = points.length;
    const chord = (i: number, j: number): number => {
      let worst = 0;
      const [a, b] = [points[i]!, points[j]!];
      for (let k = i + 1; k < j; k++) {
        const p = points[k]!;
        const on =
          a.volumeL + ((b.volumeL - a.volumeL) * (p.readingValue - a.readingValue)) / (b.readingValue - a.readingValue);
        worst = Math.max(worst, Math.abs(p.volumeL - on));
      }
      return worst;
    };
    let best = points.map((_, j) => chord(0, j));
    for (let leg = 2; leg < count; leg++) {
      const before = best;
      best = points.map((_, j) => {
        let least = before[j]!;
        for (let i = 0; i < j; i++) if (before[i]! < least) least = Math.min(least, Math.max(before[i]!, chord(i, j)));
        return least;
      });
    }
    return best[n - 1]!;
  }
  it.each([3, 4, 5])('no table of %i of the points is better', (cellCount) => {
    const few = { ...lying, cans: filled(3), between: 'smooth' } as const;
    const { leastErrorL, curve } = made({ ...few, cellCount });
    expectWithin(leastErrorL, leastByAll(curve, cellCount), 1e-9);
    // And the fewest that keep a hair more, or a hair less, are those that it takes.
    const fewest = (error: number): number => [2, 3, 4, 5, 6, 7].find((count) => leastByAll(curve, count) <= error)!;
    for (const wantedErrorL of [leastErrorL * 1.001, leastErrorL * 0.999]) {
      expect(made({ ...few, cellCount: null, wantedErrorL }).fewestCount).toBe(fewest(wantedErrorL));
    }
  });
  it('the band holds the litres as often as it says: noise drawn a hundred times', () => {
    // A seeded generator, twelve uniform draws for one normal.
    let state = 7;
    const draw = (): number => {
      let sum = 0;
      for (let i = 0; i < 12; i++) {
        state = (state * 48271) % 2147483647;
        sum += state / 2147483647;
      }
      return sum - 6;
    };
    let [inside, all] = [0, 0];
    for (let run = 0; run < 100; run++) {
      const cans = filled(12).map(({ totalL, readingValue }) => ({
        totalL,
        readingValue: readingValue + 1.5 * draw(),
      }));
      const { curve, cans: rows } = made({ ...lying, cans, noiseValue: 1.5, canToleranceFraction: 0 });
      for (const row of rows.slice(2, -2)) {
        // Litres that the fitted curve has at the true reading of this can.
        const truth = ohmFor(row.totalL);
        const i = curve.findIndex(({ readingValue }) => readingValue >= truth);
        if (i < 1) continue;
        const [a, b] = [curve[i - 1]!, curve[i]!];
        const on = a.volumeL + ((b.volumeL - a.volumeL) * (truth - a.readingValue)) / (b.readingValue - a.readingValue);
        all++;
        if (Math.abs(on - row.totalL) <= row.bandL) inside++;
      }
    }
    expect(all).toBeGreaterThan(800);
    expect(inside / all).toBeGreaterThan(0.93);
    expect(inside / all).toBeLessThan(0.995);
  });
});

describe('laws', () => {
  it('readings turned round give the table turned round', () => {
    const turned = { ...lying, cans: lying.cans.map((can) => ({ ...can, readingValue: 300 - can.readingValue })) };
    const a = made(lying);
    const b = made({ ...turned, readingGoes: 'up' });
    expectWithin(a.worstErrorL, b.worstErrorL, 1e-6);
    a.cans.forEach((can, i) => {
      expectWithin(can.bandL + 1, b.cans[i]!.bandL + 1, 1e-9);
      expectWithin(can.curveL + 1, b.cans[i]!.curveL + 1, 1e-9);
    });
  });
  it('twice the litres are twice the litres; other units of the reading change no litres', () => {
    const a = made(lying);
    const b = made({ ...lying, cans: lying.cans.map((can) => ({ ...can, totalL: 2 * can.totalL })), mostGapL: 40 });
    expectWithin(b.worstErrorL, 2 * a.worstErrorL, 1e-6);
    expectWithin(b.widestBandL, 2 * a.widestBandL, 1e-9);
    const milli = lying.cans.map((can) => ({ ...can, readingValue: 1000 * can.readingValue }));
    const c = made({ ...lying, cans: milli, noiseValue: 200, readingUnit: 'count' });
    expectWithin(c.worstErrorL, a.worstErrorL, 1e-6);
    expectWithin(c.noiseMostL, a.noiseMostL, 1e-9);
  });
  it('more cells are no worse; the curve and the cells go one way', () => {
    let before = Infinity;
    for (const cellCount of [2, 3, 4, 5, 6, 8, 10]) {
      const { worstErrorL, cells, curve } = made({ ...lying, cellCount });
      expect(worstErrorL).toBeLessThanOrEqual(before + 1e-9);
      before = worstErrorL;
      for (let i = 1; i < cells.length; i++) expect(cells[i]!.shownL).toBeLessThanOrEqual(cells[i - 1]!.shownL);
      for (let i = 1; i < curve.length; i++) {
        expect(curve[i]!.readingValue).toBeGreaterThan(curve[i - 1]!.readingValue);
        expect(curve[i]!.volumeL).toBeLessThan(curve[i - 1]!.volumeL);
      }
    }
  });
  it('whatever is read, the table goes one way and keeps what it states', () => {
    const cans = fc.array(fc.tuple(fc.double({ min: 0.5, max: 9, noNaN: true }), evenly(-3, 3)), {
      minLength: 3,
      maxLength: 14,
    });
    fc.assert(
      fc.property(
        cans,
        fc.constantFrom(0, 0.5, 2),
        fc.constantFrom('least', 'most'),
        fc.constantFrom('smooth', 'straight'),
        (steps, noiseValue, deadShows, between) => {
          let [totalL, readingValue] = [0, 0];
          const poured = steps.map(([litres, move]) => {
            totalL += litres;
            readingValue += move + 1;
            return { totalL, readingValue };
          });
          if (poured.at(-1)!.readingValue < poured[0]!.readingValue) return;
          const result = calibrateLevel({ ...up, cans: poured, noiseValue, deadShows, between, cellCount: 5 });
          if (!result.possible) {
            expect(result.code).toBe('sender-does-not-move');
            return;
          }
          const { cells, curve, worstErrorL } = result;
          for (let i = 1; i < cells.length; i++) {
            expect(cells[i]!.readingValue).toBeGreaterThan(cells[i - 1]!.readingValue);
            expect(cells[i]!.shownL).toBeGreaterThanOrEqual(cells[i - 1]!.shownL);
          }
          for (const { readingValue: at, volumeL } of curve) {
            const i = Math.max(
              1,
              cells.findIndex((cell) => cell.readingValue >= at),
            );
            const [a, b] = [cells[i - 1]!, cells[i]!];
            const on = a.shownL + ((b.shownL - a.shownL) * (at - a.readingValue)) / (b.readingValue - a.readingValue);
            expect(Math.abs(on - volumeL)).toBeLessThanOrEqual(worstErrorL + 1e-9 * totalL);
          }
        },
      ),
    );
  });
  it('a reading with two digits crossed is named, alone, and a wiggle of noise is not', () => {
    const clean = made(lying);
    expect(clean.warnings).toEqual([]);
    const crossed = lying.cans.map((can, i) => (i === 6 ? { ...can, readingValue: can.readingValue - 45 } : can));
    const { warnings } = made({ ...lying, cans: crossed });
    expect(warnings.map(({ code, fromL }) => [code, fromL])).toEqual([['can-off', lying.cans[6]!.totalL]]);
  });
  it('says where no single can is at fault', () => {
    const wild = lying.cans.map((can, i) =>
      i > 3 && i < 9 ? { ...can, readingValue: 100 + 30 * (-1) ** i + i } : can,
    );
    expect(codes({ ...lying, cans: wild })).toContain('not-monotone');
  });
  it('does not mistake one input for another', () => {
    swapsMatter(calibrateLevel, {
      ...lying,
      noughtAtL: 4,
      unusableL: 6,
      mostGapL: 4.5,
      wantedErrorL: 3,
      shownStepL: 0.5,
      readingStepValue: 2,
    });
  });
});

describe('edges', () => {
  it('warns of what was not read', () => {
    expect(
      codes({
        ...up,
        cans: list([
          [5, 1],
          [10, 2],
          [30, 3],
        ]),
        noiseValue: 0.01,
      }),
    ).toEqual(['no-empty-reading']);
    expect(
      codes({
        ...up,
        cans: list([
          [0, 1],
          [10, 2],
          [30.1, 3],
        ]),
        noiseValue: 0.01,
      }),
    ).toEqual(['few-cans']);
    expect(
      codes({
        ...up,
        cans: list([
          [0, 1],
          [10, 2],
          [20, 3],
        ]),
        noiseValue: 0.1,
        wantedErrorL: 1.9,
      }),
    ).toEqual(['noise-above-error']);
    expect(
      codes({
        ...up,
        cans: list([
          [0, 1],
          [10, 2],
          [20, 3],
        ]),
        noiseValue: 0.1,
        wantedErrorL: 2.1,
      }),
    ).toEqual([]);
    const repeats = list([
      [0, 1],
      [10, 2],
      [10, 2.5],
      [10, 2],
      [20, 3],
    ]);
    expect(codes({ ...up, cans: repeats, noiseValue: 0.05 })).toEqual(Array(3).fill('repeat-off'));
  });
  it('says that a sender does not move', () => {
    for (const cans of [
      list([
        [0, 2],
        [10, 2],
        [20, 2],
      ]),
      list([
        [0, 2],
        [10, 2.001],
        [20, 2.002],
      ]),
    ]) {
      expect(calibrateLevel({ ...up, cans })).toMatchObject({
        possible: false,
        code: 'sender-does-not-move',
        nearest: null,
      });
    }
  });
  it('calls a stretch dead below a fifth of the mean movement, and not above', () => {
    // 33 V over 40 L: a fifth of that for 10 L is 1.65 V. Two readings of a noise of 1 V differ by up to 2.83 V.
    const from = (firstV: number) =>
      codes({
        ...up,
        noiseValue: 1,
        cans: list([
          [0, 0],
          [10, firstV],
          [20, 13],
          [30, 23],
          [40, 33],
        ]),
      });
    expect(from(1.64)).toContain('dead-bottom');
    expect(from(1.66)).not.toContain('dead-bottom');
  });
  it('gives back with a cell more what rounding took', () => {
    // Before rounding four cells keep 4 L: at 0, 10, 15 and 22 V, and a step of 4 L takes them beyond it.
    const cans = list([
      [0, 0],
      [10, 8],
      [20, 12],
      [30, 13],
      [40, 15],
      [50, 22],
    ]);
    const coarse = { ...up, cans, noiseValue: 0, cellCount: null, wantedErrorL: 4, readingStepValue: 1, shownStepL: 4 };
    const { cells, fewestCount, worstErrorL } = made(coarse);
    expect(calibrateLevel({ ...coarse, cellCount: fewestCount }).possible).toBe(false);
    expect(cells.length).toBeGreaterThan(fewestCount!);
    expect(worstErrorL).toBeLessThanOrEqual(4);
  });
  it('says that rounding takes too much', () => {
    const coarse = { ...base, cellCount: null, wantedErrorL: 1, shownStepL: 15 };
    expect(calibrateLevel(coarse)).toMatchObject({ possible: false, code: 'rounding' });
    const far = list([
      [0, 90.2],
      [40, 90.7],
    ]);
    const none = { ...base, cans: far, readingGoes: 'up', noiseValue: 0.01 } as const;
    expect(made({ ...none, readingStepValue: 5 }).cells.length).toBe(2);
    expect(
      calibrateLevel({
        ...none,
        cans: list([
          [0, 5],
          [40, 5.0001],
        ]),
        readingStepValue: 5,
        noiseValue: 0,
      }).possible,
    ).toBe(true);
  });
  it('a level that is met on a can needs no cell of its own', () => {
    expect(made({ ...base, noughtAtL: 20, cellCount: 3 }).worstErrorL).toBe(0);
  });
  it('refuses nonsense', () => {
    refusesNonsense(calibrateLevel, base, {
      required: ['canToleranceFraction', 'coverageFactor', 'noughtAtL', 'unusableL', 'mostGapL'],
      optional: ['noiseValue', 'cellCount', 'wantedErrorL', 'readingStepValue', 'shownStepL'],
    });
    const bad = (over: Partial<CalibrateLevelInput>, field: string) => {
      expectInputError(() => calibrateLevel({ ...base, ...over }), field);
    };
    bad({ cans: list([[0, 1]]) }, 'cans');
    bad(
      {
        cans: list([
          [0, 90],
          [-1, 60],
        ]),
      },
      'cans[1].totalL',
    );
    bad(
      {
        cans: list([
          [0, 90],
          [10, NaN],
        ]),
      },
      'cans[1].readingValue',
    );
    bad(
      {
        cans: list([
          [0, 90],
          [20, 60],
          [15, 30],
        ]),
      },
      'cans[2].totalL',
    );
    bad(
      {
        cans: list([
          [5, 90],
          [5, 60],
          [5, 30],
        ]),
      },
      'cans[2].totalL',
    );
    bad({ cans: Array.from({ length: 501 }, (_, i) => ({ totalL: i, readingValue: -i })) }, 'cans.length');
    bad({ readingUnit: 'mV' as never }, 'readingUnit');
    bad({ readingGoes: 'up' }, 'readingGoes');
    bad({ readingGoes: undefined as never }, 'readingGoes');
    bad({ noiseValue: null }, 'noiseValue');
    bad({ noiseValue: -0.1 }, 'noiseValue');
    bad({ canToleranceFraction: 1 }, 'canToleranceFraction');
    bad({ canErrors: 'none' as never }, 'canErrors');
    bad({ coverageFactor: 0.9 }, 'coverageFactor');
    bad({ coverageFactor: 5.1 }, 'coverageFactor');
    bad({ noughtAtL: 40 }, 'noughtAtL');
    bad({ unusableL: -1 }, 'unusableL');
    bad({ deadShows: 'middle' as never }, 'deadShows');
    bad({ between: 'spline' as never }, 'between');
    bad({ mostGapL: 0 }, 'mostGapL');
    bad({ cellCount: 1 }, 'cellCount');
    bad({ cellCount: 2.5 }, 'cellCount');
    bad({ cellCount: 5001 }, 'cellCount');
    bad({ cellCount: null }, 'cellCount');
    bad({ wantedErrorL: -1 }, 'wantedErrorL');
    bad({ cans: [null as never, null as never] }, 'cans[0]');
    bad({ readingStepValue: 0 }, 'readingStepValue');
    bad({ shownStepL: 0 }, 'shownStepL');
    expect(() => calibrateLevel({ ...base, readingGoes: 'up' })).toThrow(
      "calibrateLevel: readingGoes must be 'down': so the readings go from the first can to the last, got 'up'",
    );
  });
  it('never runs out of numbers', () => {
    neverRunsOut(
      ({ litres, ohm, ...rest }: CalibrateLevelInput & { litres: number; ohm: number }) =>
        calibrateLevel({
          ...rest,
          cans: list([
            [0, 90],
            [20, 60],
            [20 + litres, ohm],
          ]),
        }),
      { ...base, litres: 20, ohm: 10, wantedErrorL: 1, readingStepValue: 1, shownStepL: 1 },
    );
  });
});
