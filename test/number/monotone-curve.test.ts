import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { monotoneCurve, monotonePlace, monotoneValue, type MonotoneLimiter } from 'loomwright';
import { expectInputError } from '../support/edge.js';
import { evenlyWithEnds } from '../support/law.js';
import { computed, expectPrinted, expectWithin, type Citation } from '../support/published.js';

const slatec: Citation = { source: 'fritsch-butland-1984', place: 'SLATEC quick check of PCHIM', status: 'published' };
const rpn: Citation = { source: 'fritsch-carlson-1980', place: 'RPN 14, data from memory', status: 'memory' };

const x1 = [-2.2, -1.2, -1, -0.5, -0.01, 0.5, 1, 2, 2.2];
const bell = { fn: 'test', x: x1, y: x1.map((x) => Math.exp(-x * x)), limiter: 'fritsch-butland' } as const;
const x2 = [7.99, 8.09, 8.19, 8.7, 9.2, 10, 12, 15, 20];
const y2 = [0, 2.76429e-5, 4.37498e-2, 0.169183, 0.469428, 0.94374, 0.998636, 0.999919, 0.999994];
const limiters: readonly MonotoneLimiter[] = ['fritsch-butland', 'fritsch-carlson'];

describe('published', () => {
  const slopes = monotoneCurve(bell).slope;
  const prints = '0 0.380027352 0.717253009 0.582014161 0 -0.568208031 -0.513501618 -0.0777910977 -0.00245611117'.split(
    ' ',
  );
  prints.forEach((print, i) => {
    computed(`slope ${i} of exp(−x²): ${print}`, slatec, () => expectPrinted(Number(slopes[i]), print));
  });
});

describe('independent', () => {
  // By scipy's PchipInterpolator on the RPN 14 data, and on the 44031 thermistor in ln R and 1/T.
  const curve = monotoneCurve({ fn: 'test', x: x2, y: y2, limiter: 'fritsch-butland' });
  const slopes = [0, 0.000552508681868, 0.335876834608, 0.349449167686, 0.596958238927, 0.060321845523, 0.000900395382769, 3.14246836304e-5, 0]; // prettier-ignore
  slopes.forEach((slope, i) => {
    it(`slope ${i} of ${rpn.place}`, () => expect(curve.slope[i]).toBeCloseTo(slope, 12));
  });
  for (const [x, y] of [
    [8.04, 6.91509147665e-6],
    [8.14, 0.0176971673759],
    [8.5, 0.116632576939],
    [9, 0.337534326846],
    [9.5, 0.685217945111],
    [11, 0.986043362535],
    [13.5, 0.999603364012],
    [17.5, 0.999976140427],
  ] as const) {
    it(`value at ${x} of ${rpn.place}`, () => {
      expectWithin(monotoneValue({ fn: 'test', curve, x }).value, y, 1e-11);
    });
  }
  it('agrees with scipy on a thermistor', () => {
    const url = new URL('../temperature/fixture.json', import.meta.url);
    const { pchip } = JSON.parse(readFileSync(url, 'utf8')) as { pchip: Record<string, number[]> };
    const thermistor = monotoneCurve({ fn: 'test', x: pchip.x!, y: pchip.y!, limiter: 'fritsch-butland' });
    thermistor.slope.forEach((slope, i) => expectWithin(slope, pchip.slope![i]!, 1e-9));
    pchip.at!.forEach((x, i) => {
      expectWithin(monotoneValue({ fn: 'test', curve: thermistor, x }).value, pchip.value![i]!, 1e-12);
    });
  });
  it('keeps a parabola by the limiter of 1980 where it need not shorten', () => {
    const x = [1, 2, 4, 5];
    const parabola = monotoneCurve({ fn: 'test', x, y: x.map((v) => v * v), limiter: 'fritsch-carlson' });
    for (const at of [1.3, 2.9, 4.6])
      expectWithin(monotoneValue({ fn: 'test', curve: parabola, x: at }).value, at * at, 1e-14);
  });
});

describe('laws', () => {
  const steps = fc.array(fc.tuple(fc.double({ min: 1e-3, max: 10, noNaN: true }), evenlyWithEnds(0, 10)), {
    minLength: 2,
    maxLength: 10,
  });
  const build = (list: readonly (readonly [number, number])[], sign: number, limiter: MonotoneLimiter) => {
    const x = [0];
    const y = [0];
    for (const [dx, dy] of list) {
      x.push(Number(x[x.length - 1]) + dx);
      y.push(Number(y[y.length - 1]) + sign * dy);
    }
    return monotoneCurve({ fn: 'test', x, y, limiter });
  };
  it('goes through its points and never turns between them', () => {
    fc.assert(
      fc.property(steps, fc.constantFrom(1, -1), fc.constantFrom(...limiters), (list, sign, limiter) => {
        const curve = build(list, sign, limiter);
        const last = Number(curve.x[curve.x.length - 1]);
        curve.x.forEach((x, i) => expect(monotoneValue({ fn: 't', curve, x }).value).toBeCloseTo(curve.y[i]!, 9));
        let before = 0;
        for (let i = 1; i <= 200; i++) {
          const { value, slope } = monotoneValue({ fn: 't', curve, x: Math.min(last, (last * i) / 200) });
          expect((value - before) * sign).toBeGreaterThanOrEqual(-1e-9);
          expect(slope * sign).toBeGreaterThanOrEqual(-1e-9);
          before = value;
        }
      }),
    );
  });
  it('finds its way back', () => {
    fc.assert(
      fc.property(
        steps,
        evenlyWithEnds(0, 1),
        fc.constantFrom(1, -1),
        fc.constantFrom(...limiters),
        (list, share, sign, limiter) => {
          const curve = build(list.map(([dx, dy]) => [dx, dy + 0.1] as const), sign, limiter); // prettier-ignore
          const x = share * Number(curve.x[curve.x.length - 1]);
          const { value: y } = monotoneValue({ fn: 't', curve, x });
          const again = monotoneValue({ fn: 't', curve, x: monotonePlace({ fn: 't', curve, y }) }).value;
          expect(Math.abs(again - y)).toBeLessThan(1e-9);
        },
      ),
    );
  });
});

describe('edges', () => {
  it('is flat at a turn of the points, by either limiter', () => {
    for (const limiter of limiters) {
      expect(monotoneCurve({ fn: 't', x: [0, 1, 2, 3], y: [0, 2, 1, 1], limiter }).slope.slice(1, 3)).toEqual([0, 0]);
    }
  });
  it('is a straight line through two points', () => {
    const curve = monotoneCurve({ fn: 't', x: [1, 3], y: [4, 0], limiter: 'fritsch-carlson' });
    expect(monotoneValue({ fn: 't', curve, x: 2 })).toEqual({ value: 2, slope: -2 });
    expect(monotonePlace({ fn: 't', curve, y: 4 })).toBe(1);
    expect(monotonePlace({ fn: 't', curve, y: 0 })).toBe(3);
  });
  it('names what is wrong', () => {
    const make = (x: number[], y: number[]) => () => monotoneCurve({ fn: 'caller', x, y, limiter: 'fritsch-butland' });
    expectInputError(make([1], [1]), 'points', 'list');
    expectInputError(make([1, 2], [1]), 'points', 'list');
    expectInputError(make([1, 1], [1, 2]), 'points[1]', 'order');
    expectInputError(make([1, NaN], [1, 2]), 'points[1]', 'order');
    expectInputError(make([1, 2], [1, Infinity]), 'points[1]', 'order');
    const curve = monotoneCurve({ fn: 't', x: [1, 3], y: [4, 0], limiter: 'fritsch-butland' });
    for (const x of [0.999, 3.001, NaN]) expectInputError(() => monotoneValue({ fn: 't', curve, x }), 'x', 'range');
    for (const y of [-0.001, 4.001, NaN]) expectInputError(() => monotonePlace({ fn: 't', curve, y }), 'y', 'range');
  });
});
