import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  type CalibrationCell,
  type CalibrationTable,
  calibrationTable,
  type CalibrationTableInput,
  ntcCoolant2500,
  thermistorInput,
} from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenly } from '../support/law.js';
import { expectWithin } from '../support/published.js';

const made = (input: CalibrationTableInput): CalibrationTable => {
  const result = calibrationTable(input);
  if (!result.possible) throw new Error(result.because);
  return result;
};
const exact = { inStepValue: null, outStepValue: null } as const;
const pointsOf = (x: readonly number[], y: readonly number[]): CalibrationCell[] =>
  x.map((inValue, i) => ({ inValue, outValue: y[i]! }));

/** Worst miss of the straight line from point i to point j, written out. */
function chordError(points: readonly CalibrationCell[], i: number, j: number): number {
  const [p, q] = [points[i]!, points[j]!];
  let worst = 0;
  for (let k = i + 1; k < j; k++) {
    const { inValue, outValue } = points[k]!;
    const line = (p.outValue * (q.inValue - inValue) + q.outValue * (inValue - p.inValue)) / (q.inValue - p.inValue);
    worst = Math.max(worst, Math.abs(outValue - line));
  }
  return worst;
}

/** Every choice of so many cells or fewer, tried. */
function bestByTrying(points: readonly CalibrationCell[], cellCount: number): number {
  const last = points.length - 1;
  const go = (from: number, legs: number): number => {
    let best = chordError(points, from, last);
    if (legs <= 1) return best;
    for (let next = from + 1; next < last; next++) {
      best = Math.min(best, Math.max(chordError(points, from, next), go(next, legs - 1)));
    }
    return best;
  };
  return go(0, cellCount - 1);
}

/** A small generator with a seed, so that the cases are the same on every machine. */
function numbers(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

describe('independent', () => {
  const next = numbers(20261);
  const cases = Array.from({ length: 200 }, (_, n) => {
    const count = 3 + Math.floor(next() * 8);
    let x = next() * 10 - 5;
    let y = 0;
    const points = Array.from({ length: count }, () => {
      x += 0.01 + next() * 3;
      // Every third case is monotone, as a sensor is; the rest wander.
      y += n % 3 === 0 ? next() * 4 : next() * 8 - 4;
      return { inValue: x, outValue: y };
    });
    return { n, points, cellCount: 2 + Math.floor(next() * (count - 1)) };
  });
  it.each(cases)('case $n: no choice of $cellCount cells is better', ({ points, cellCount }) => {
    const { worstErrorValue, leastErrorValue, cells } = made({ points, cellCount, ...exact });
    const tried = bestByTrying(points, cellCount);
    const height = Math.max(...points.map(({ outValue }) => Math.abs(outValue - points[0]!.outValue)));
    expect(Math.abs(worstErrorValue - tried)).toBeLessThanOrEqual(4e-12 * height);
    expect(leastErrorValue).toBe(worstErrorValue);
    expect(cells.length).toBeLessThanOrEqual(cellCount);
    for (const cell of cells) expect(points).toContainEqual(cell);
  });

  it('a parabola has its cells evenly spaced and misses by the height of a chord, h²/4', () => {
    const x = Array.from({ length: 121 }, (_, i) => i);
    const { cells, worstErrorValue } = made({
      points: pointsOf(
        x,
        x.map((v) => v * v),
      ),
      cellCount: 7,
      ...exact,
    });
    expect(cells.map(({ inValue }) => inValue)).toEqual([0, 20, 40, 60, 80, 100, 120]);
    expect(worstErrorValue).toBe(100);
  });

  it('beats evenly spaced cells on a coolant sensor by far', () => {
    const pin = (tempC: number): number =>
      thermistorInput({ curve: ntcCoolant2500, side: 'sensor-to-ground', supplyV: 5, pullOhm: 2490, tempC }).inputV;
    const temps = Array.from({ length: 141 }, (_, i) => 120 - i);
    const points = pointsOf(temps.map(pin), temps);
    const { worstErrorValue } = made({ points, cellCount: 8, ...exact });
    const even = Array.from({ length: 8 }, (_, i) => Math.round((i * 140) / 7));
    const evenly = Math.max(...even.slice(1).map((k, i) => chordError(points, even[i]!, k)));
    expect(worstErrorValue).toBeLessThan(evenly * 0.75);
  });
});

describe('laws', () => {
  const curve = fc
    .array(fc.tuple(fc.double({ min: 0.01, max: 5, noNaN: true }), evenly(-9, 9)), {
      minLength: 3,
      maxLength: 40,
    })
    .map((steps) => {
      let x = 0;
      return steps.map(([dx, outValue]): CalibrationCell => ({ inValue: (x += dx), outValue }));
    });
  it('more cells never raise the worst error, and enough leave none', () => {
    fc.assert(
      fc.property(curve, (points) => {
        let before = Infinity;
        for (let cellCount = 2; cellCount <= points.length; cellCount++) {
          const { worstErrorValue } = made({ points, cellCount, ...exact });
          expect(worstErrorValue).toBeLessThanOrEqual(before + 1e-10);
          before = worstErrorValue;
        }
        expect(before).toBeLessThanOrEqual(1e-10);
      }),
      { numRuns: 30 },
    );
  });
  it('scales with what is shown, and takes no notice of an offset or of the scale that comes in', () => {
    fc.assert(
      fc.property(curve, fc.integer({ min: 2, max: 6 }), (points, cellCount) => {
        const plain = made({ points, cellCount, ...exact }).worstErrorValue;
        const other = points.map(({ inValue, outValue }) => ({
          inValue: 7 * inValue - 3,
          outValue: 100 - 4 * outValue,
        }));
        expect(made({ points: other, cellCount, ...exact }).worstErrorValue).toBeCloseTo(4 * plain, 8);
      }),
      { numRuns: 30 },
    );
  });
  it('turned round, it has the same error', () => {
    fc.assert(
      fc.property(curve, fc.integer({ min: 2, max: 6 }), (points, cellCount) => {
        const back = points.map(({ inValue, outValue }) => ({ inValue: -inValue, outValue })).reverse();
        const there = made({ points, cellCount, ...exact }).worstErrorValue;
        expect(made({ points: back, cellCount, ...exact }).worstErrorValue).toBeCloseTo(there, 9);
      }),
      { numRuns: 30 },
    );
  });
  it('the residuals are those of the cells', () => {
    fc.assert(
      fc.property(curve, fc.integer({ min: 2, max: 6 }), (points, cellCount) => {
        const { residuals, cells, worstErrorValue, worstInValue } = made({ points, cellCount, ...exact });
        expect(residuals.map(({ inValue }) => inValue)).toEqual(points.map(({ inValue }) => inValue));
        const at = residuals.find(({ inValue }) => inValue === worstInValue)!;
        expect(Math.abs(Math.abs(at.errorValue) - worstErrorValue)).toBeLessThanOrEqual(1e-9);
        for (const cell of cells) {
          expect(residuals.find(({ inValue }) => inValue === cell.inValue)!.errorValue).toBe(0);
        }
      }),
      { numRuns: 30 },
    );
  });
  it('what comes in and what is shown are not the same thing', () => {
    const points = pointsOf([0, 1, 2, 3, 4], [0, 1, 4, 9, 16]);
    const swapped = points.map(({ inValue, outValue }) => ({ inValue: outValue, outValue: inValue }));
    expect(made({ points: swapped, cellCount: 3, ...exact }).worstErrorValue).not.toBe(
      made({ points, cellCount: 3, ...exact }).worstErrorValue,
    );
    const steps = { points, cellCount: 3, inStepValue: 3, outStepValue: 5 };
    expect(made(steps).cells).not.toEqual(made({ ...steps, inStepValue: 5, outStepValue: 3 }).cells);
  });
});

describe('what the controller holds', () => {
  const x = Array.from({ length: 41 }, (_, i) => 0.13 + i / 10);
  const points = pointsOf(
    x,
    x.map((v) => 20 * Math.sqrt(v)),
  );
  it('rounds cells to its steps, ends outwards, and states the loss', () => {
    const { cells, worstErrorValue, leastErrorValue, roundingLossValue, residuals } = made({
      points,
      cellCount: 6,
      inStepValue: 0.25,
      outStepValue: 0.5,
    });
    for (const { inValue, outValue } of cells) {
      expect(inValue * 4).toBe(Math.round(inValue * 4));
      expect(outValue * 2).toBe(Math.round(outValue * 2));
    }
    expect(cells[0]!.inValue).toBe(0);
    expect(cells.at(-1)!.inValue).toBe(4.25);
    expect(worstErrorValue).toBe(Math.max(...residuals.map(({ errorValue }) => Math.abs(errorValue))));
    expectWithin(leastErrorValue, bestByTrying(points.slice(), 6), 1e-9);
    expect(roundingLossValue).toBe(worstErrorValue - leastErrorValue);
    expect(roundingLossValue).toBeGreaterThan(0);
  });
  it('holds 0.1 and not its dust', () => {
    const { cells } = made({ points, cellCount: 4, inStepValue: 0.1, outStepValue: 0.1 });
    for (const { inValue, outValue } of cells) {
      expect(String(inValue).length).toBeLessThanOrEqual(4);
      expect(String(outValue).length).toBeLessThanOrEqual(4);
    }
  });
  it('a fine step costs nothing to speak of', () => {
    const { roundingLossValue } = made({ points, cellCount: 6, inStepValue: 1e-9, outStepValue: 1e-9 });
    expect(Math.abs(roundingLossValue)).toBeLessThan(1e-6);
  });
  it('two cells on one step become one; a step over the whole curve leaves no table', () => {
    expect(made({ points, cellCount: 30, inStepValue: 1, outStepValue: null }).cells).toHaveLength(6);
    const inside = pointsOf([2, 2.5, 3], [0, 1, 5]);
    const inOne = made({ points: inside, cellCount: 3, inStepValue: 10, outStepValue: null });
    expect(inOne.cells.map(({ inValue }) => inValue)).toEqual([0, 10]);
  });
});

describe('an error that is wanted', () => {
  const x = Array.from({ length: 121 }, (_, i) => i);
  const points = pointsOf(
    x,
    x.map((v) => v * v),
  );
  it('met: the table; not met: how many cells would do, and the nearest', () => {
    expect(calibrationTable({ points, cellCount: 7, ...exact, wantedErrorValue: 100 }).possible).toBe(true);
    const short = calibrationTable({ points, cellCount: 6, ...exact, wantedErrorValue: 100 });
    expect(short).toMatchObject({ possible: false, code: 'too-few-cells', because: '6 cells leave 144; 7 would do' });
    if (short.possible) throw new Error('possible');
    expect(short.nearest!.worstErrorValue).toBe(144);
  });
  it('lost by rounding alone, it says so', () => {
    const result = calibrationTable({ points, cellCount: 7, inStepValue: 7, outStepValue: 500, wantedErrorValue: 100 });
    expect(result).toMatchObject({ possible: false, code: 'rounding' });
  });
});

describe('a function', () => {
  const curve = { valueAt: Math.sqrt, lowInValue: 1, highInValue: 9, sampleCount: 201 };
  it('gives what its points give, and looks between them', () => {
    const result = made({ curve, cellCount: 5, ...exact });
    const x = Array.from({ length: 201 }, (_, i) => 1 + (8 * i) / 200);
    const same = made({ points: pointsOf(x, x.map(Math.sqrt)), cellCount: 5, ...exact });
    expectWithin(result.worstErrorValue, same.worstErrorValue, 1e-9);
    expect(same.betweenErrorValue).toBeNull();
    expect(result.betweenErrorValue).toBeGreaterThanOrEqual(result.worstErrorValue * 0.99);
    expect(result.betweenErrorValue).toBeLessThan(result.worstErrorValue * 1.05);
  });
  it('few points hide what lies between them, and the result shows it', () => {
    const wave = { valueAt: (v: number) => Math.sin(v * 2 * Math.PI), lowInValue: 0, highInValue: 4, sampleCount: 5 };
    const { worstErrorValue, betweenErrorValue } = made({ curve: wave, cellCount: 5, ...exact });
    expect(worstErrorValue).toBeLessThan(1e-12);
    expect(betweenErrorValue).toBeGreaterThan(0.9);
  });
});

describe('edges', () => {
  const points = pointsOf([0, 1, 2], [0, 1, 4]);
  const input: CalibrationTableInput = { points, cellCount: 2, inStepValue: 1, outStepValue: 1 };
  it('refuses nonsense', () => {
    refusesNonsense(calibrationTable, input, {
      required: ['cellCount', 'inStepValue', 'outStepValue'],
      optional: ['wantedErrorValue'],
    });
    expectInputError(() => calibrationTable({ ...input, cellCount: 1 }), 'cellCount', 'atLeast');
    expectInputError(() => calibrationTable({ ...input, cellCount: 2.5 }), 'cellCount', 'integer');
    expectInputError(() => calibrationTable({ ...input, cellCount: 5001 }), 'cellCount', 'atMost');
    expectInputError(() => calibrationTable({ ...input, inStepValue: 0 }), 'inStepValue', 'above');
    expectInputError(() => calibrationTable({ ...input, wantedErrorValue: -1 }), 'wantedErrorValue', 'atLeast');
  });
  it('points must be there, rise, and be numbers', () => {
    const { points: _, ...without } = input;
    expectInputError(() => calibrationTable(without), 'points', 'oneOfFields');
    const curve = { valueAt: Math.sqrt, lowInValue: 0, highInValue: 1, sampleCount: 5 };
    expectInputError(() => calibrationTable({ ...input, curve }), 'points', 'oneOfFields');
    expectInputError(() => calibrationTable({ ...input, points: points.slice(0, 1) }), 'points', 'list');
    expectInputError(
      () => calibrationTable({ ...input, points: pointsOf([0, 1, 1], [0, 1, 2]) }),
      'points[2].inValue',
      'order',
    );
    expectInputError(() => calibrationTable({ ...input, points: pointsOf([0, 1], [0, NaN]) }), 'points[1].outValue');
    expectInputError(
      () => calibrationTable({ ...without, curve: { ...curve, valueAt: () => NaN } }),
      'curve.valueAt',
      'finite',
    );
    expectInputError(() => calibrationTable({ ...without, curve: { ...curve, valueAt: 3 as never } }), 'curve.valueAt');
    expectInputError(() => calibrationTable({ ...without, curve: { ...curve, highInValue: 0 } }), 'curve.highInValue');
    expectInputError(() => calibrationTable({ ...without, curve: { ...curve, sampleCount: 1 } }), 'curve.sampleCount');
    expectInputError(
      () => calibrationTable({ ...without, curve: { ...curve, sampleCount: 5001 } }),
      'curve.sampleCount',
      'atMost',
    );
  });
  it('two points, a straight line and a flat one leave nothing to miss', () => {
    expect(made({ points: points.slice(0, 2), cellCount: 9, ...exact }).worstErrorValue).toBe(0);
    const x = Array.from({ length: 30 }, (_, i) => i);
    expect(
      made({
        points: pointsOf(
          x,
          x.map((v) => 0.1 * v),
        ),
        cellCount: 2,
        ...exact,
      }).worstErrorValue,
    ).toBeLessThan(1e-11);
    expect(
      made({
        points: pointsOf(
          x,
          x.map(() => 5),
        ),
        cellCount: 4,
        ...exact,
      }).cells,
    ).toHaveLength(2);
  });
  it('values far from nought lose no digits', () => {
    const x = Array.from({ length: 41 }, (_, i) => i);
    const near = made({
      points: pointsOf(
        x,
        x.map((v) => v * v),
      ),
      cellCount: 5,
      ...exact,
    });
    const far = made({
      points: pointsOf(
        x,
        x.map((v) => 1e9 + v * v),
      ),
      cellCount: 5,
      ...exact,
    });
    expect(far.worstErrorValue).toBe(near.worstErrorValue);
  });
});

describe('regression', () => {
  it('heights next to nothing end: halving once went on for ever', () => {
    for (const tiny of [5e-324, 1e-310, 1e-200, 1e-31, 1e-29, 1e-13]) {
      const x = [0.01, 0.02, 0.03, 0.04, 0.05];
      const points = pointsOf(x, [0, tiny, 0, tiny, 0]);
      expect(made({ points, cellCount: 3, ...exact }).worstErrorValue).toBeLessThanOrEqual(tiny);
      expect(made({ points, cellCount: 2, ...exact }).cells).toHaveLength(2);
    }
  });
  it('three points of heights that cannot be halved', () => {
    const points = pointsOf([0.01, 0.02, 5.02], [4.4e-323, 0, 9e-323]);
    expect(made({ points, cellCount: 2, ...exact }).cells).toHaveLength(2);
  });
  it('points that lie closer than 1e-12 are refused', () => {
    expectInputError(
      () => calibrationTable({ points: pointsOf([0, 5e-324], [0, 1]), cellCount: 2, ...exact }),
      'points[1].inValue',
      'order',
    );
  });
});
