import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { cubicCurve, type CubicMethod, cubicValue, monotoneValue } from 'loomwright';
import { expectInputError } from '../support/edge.js';
import { evenly } from '../support/law.js';
import { type Citation, computed, expectPrinted, expectWithin } from '../support/published.js';

const fn = 'test';
const methods: readonly CubicMethod[] = ['monotone', 'akima', 'natural-spline', 'not-a-knot'];

const bellX = [-2.2, -1.2, -1, -0.5, -0.01, 0.5, 1, 2, 2.2];
const bellY = bellX.map((x) => Math.exp(-x * x));
const row = (n: number): number[] => Array.from({ length: n }, (_, i) => i);

// Akima's data of 1970, from memory.
const akimaX = [0, 2, 3, 5, 6, 8, 9, 11, 12, 14, 15];
const akimaY = [10, 10, 10, 10, 10, 10, 10.5, 15, 50, 60, 85];

describe('published', () => {
  const slatec: Citation = { source: 'slatec-pchip', place: 'cubic spline, exp(−x²)', status: 'published' };
  const spline = cubicCurve({ fn, x: bellX, y: bellY, method: 'not-a-knot' });
  const prints =
    '-0.0516830792 0.571455855 0.740530225 0.763864934 0.0192614386 -0.765324380 -0.728209035 -0.0798445427 -0.0285983446';
  prints.split(' ').forEach((print, i) => {
    computed(`slope ${i} of the spline through exp(−x²): ${print}`, slatec, () =>
      expectPrinted(spline.slope[i]!, print),
    );
  });

  const packaged: Citation = { source: 'akima-1970', place: 'set of a numerical package’s tests', status: 'published' };
  const akima = cubicCurve({ fn, x: row(11), y: [0, 2, 1, 3, 2, 6, 5.5, 5.5, 2.7, 5.1, 3], method: 'akima' });
  for (const [x, print] of [
    [0.5, '1.375'],
    [1, '2'],
    [1.5, '1.5'],
    [2.5, '1.953125'],
    [3.5, '2.484375'],
    [4.5, '4.13636363636364'],
    [5.1, '5.98036239103362'],
    [6.5, '5.50672915164624'],
    [7.2, '5.20313674597453'],
    [8.6, '4.17965541590171'],
    [9.9, '3.41103865979381'],
  ] as const) {
    // Fifteen digits are all that double precision has: one unit of the last is rounding.
    computed(`Akima at ${x}: ${print}`, packaged, () =>
      expectPrinted(cubicValue({ fn, curve: akima, x }).value, print, 1),
    );
  }

  const runge: Citation = { source: 'young-gregory-1972', place: 'natural spline of 1/(1+x²)', status: 'published' };
  const x = [0, 0.2, 0.4, 0.6, 0.8, 1];
  const curve = cubicCurve({ fn, x, y: x.map((v) => 1 / (1 + v * v)), method: 'natural-spline' });
  for (const [at, what, print] of [
    [0.02, 'value', '0.997583282975581'],
    [0.1, 'value', '0.986183764184894'],
    [0.3, 'value', '0.918438097365742'],
    [0.5, 'value', '0.799846963843167'],
    [0.7, 'value', '0.671004731246381'],
    [0.9, 'value', '0.553412100584061'],
    [0.98, 'value', '0.510588599432241'],
    [0, 'slope', '-0.120113913432180'],
    [0.1, 'slope', '-0.174259247588814'],
    [0.5, 'slope', '-0.638121834629033'],
    [0.98, 'slope', '-0.529820891131095'],
    [0.1, 'integralValue', '0.099354309321042'],
    [0.5, 'integralValue', '0.463246950320456'],
    [0.98, 'integralValue', '0.774989397332469'],
  ] as const) {
    // The source prints fifteen decimals of sums in double precision: two units of the last are rounding.
    computed(`${what} at ${at}: ${print}`, runge, () =>
      expectPrinted(cubicValue({ fn, curve, x: at })[what], print, 2),
    );
  }

  const line: Citation = { source: 'young-gregory-1972', place: 'straight line y = x at 0 … 4', status: 'published' };
  for (const method of methods) {
    const straight = cubicCurve({ fn, x: row(5), y: row(5), method });
    for (const [at, print] of [
      [1, '0.5'],
      [2, '2'],
      [3.95, '7.80125'],
    ] as const) {
      computed(`integral of y = x to ${at}, ${method}: ${print}`, line, () => {
        const found = cubicValue({ fn, curve: straight, x: at });
        expectPrinted(found.integralValue, print, 1e-6);
        expect(found.value).toBeCloseTo(at, 14);
        expect(found.slope).toBeCloseTo(1, 14);
      });
    }
  }
});

describe('independent', () => {
  interface Case {
    readonly kind: string;
    readonly x: number[];
    readonly y: number[];
    readonly at: number[];
    readonly methods: Record<CubicMethod, { slope: number[]; value: number[]; integral: number[] }>;
  }
  const { cases } = JSON.parse(readFileSync(new URL('curves.json', import.meta.url), 'utf8')) as { cases: Case[] };
  it.each(methods)('%s agrees with scipy on points of five kinds, by curves.py', (method) => {
    expect(cases.length).toBe(30);
    for (const { kind, x, y, at, methods: by } of cases) {
      const wanted = by[method];
      const curve = cubicCurve({ fn, x, y, method });
      const steepest = Math.max(...wanted.slope.map(Math.abs), 1e-3);
      const highest = Math.max(...y.map(Math.abs), ...wanted.value.map(Math.abs));
      const widest = x[x.length - 1]! - x[0]!;
      const where = `${kind}, ${x.length} points`;
      curve.slope.forEach((m, i) => expect(Math.abs(m - wanted.slope[i]!) / steepest, where).toBeLessThan(1e-10));
      at.forEach((place, i) => {
        const { value, integralValue } = cubicValue({ fn, curve, x: place });
        expect(Math.abs(value - wanted.value[i]!) / highest, where).toBeLessThan(1e-10);
        expect(Math.abs(integralValue - wanted.integral[i]!) / (highest * widest), where).toBeLessThan(1e-10);
      });
    }
  });

  // By scipy 1.17 on Akima's data of 1970.
  const slopes = {
    akima: [0, 0, 0, 0, 0, 0, 0.526315789473684, 4.05511811023622, 16.3744075829384, 17, 35],
    monotone: [0, 0, 0, 0, 0, 0, 0.764150943396226, 4.68595041322314, 9.54545454545455, 9, 31.6666666666667],
  };
  const values = {
    akima: [10.1842105263158, 11.8677994198094, 30.9600888159122, 54.8436018957346, 70.25],
    monotone: [10.1544811320755, 11.7695501325433, 31.8925619834711, 55.1363636363636, 69.6666666666667],
  };
  for (const method of ['akima', 'monotone'] as const) {
    const curve = cubicCurve({ fn, x: akimaX, y: akimaY, method });
    slopes[method].forEach((slope, i) => {
      it(`${method}, slope ${i} of the data of 1970`, () => expect(curve.slope[i]).toBeCloseTo(slope, 12));
    });
    [8.5, 10, 11.5, 13, 14.5].forEach((x, i) => {
      it(`${method} at ${x} of the data of 1970`, () =>
        expectWithin(cubicValue({ fn, curve, x }).value, values[method][i]!, 1e-13));
    });
  }
  it('has the integral that a quadrature finds', () => {
    for (const method of methods) {
      const curve = cubicCurve({ fn, x: akimaX, y: akimaY, method });
      for (const x of [0.7, 8.3, 11, 14.9]) {
        // Piece by piece, because Simpson's rule is exact for a cubic and not across the joint of two.
        let sum = 0;
        for (let i = 0; akimaX[i]! < x; i++) {
          const [a, b] = [akimaX[i]!, Math.min(x, akimaX[i + 1]!)];
          const y = (place: number): number => monotoneValue({ fn, curve, x: place }).value;
          sum += ((b - a) / 6) * (y(a) + 4 * y((a + b) / 2) + y(b));
        }
        expectWithin(cubicValue({ fn, curve, x }).integralValue, sum, 1e-13);
      }
    }
  });
});

describe('laws', () => {
  const points = fc
    .array(fc.tuple(fc.double({ min: 0.01, max: 5, noNaN: true }), evenly(-10, 10)), {
      minLength: 4,
      maxLength: 12,
    })
    .map((list) => {
      let at = 0;
      return { x: list.map(([gap]) => (at += gap)), y: list.map(([, value]) => value) };
    });
  const twice = (x: number[], slope: readonly number[], y: number[], i: number, end: 0 | 1): number => {
    const h = x[i + 1]! - x[i]!;
    const d = (y[i + 1]! - y[i]!) / h;
    const [m0, m1] = [slope[i]!, slope[i + 1]!];
    return end === 0 ? (6 * d - 4 * m0 - 2 * m1) / h : (2 * m0 + 4 * m1 - 6 * d) / h;
  };
  it('every method goes through its points and is straight where they are', () => {
    fc.assert(
      fc.property(points, fc.constantFrom(...methods), ({ x, y }, method) => {
        const curve = cubicCurve({ fn, x, y, method });
        // Slopes grow with the ratio of the gaps, and digits go with its square: 500 from the widest to the narrowest.
        const gaps = x.slice(1).map((place, i) => place - x[i]!);
        const room = 1e-12 + 5e-15 * (Math.max(...gaps) / Math.min(...gaps)) ** 2;
        x.forEach((place, i) => expect(Math.abs(cubicValue({ fn, curve, x: place }).value - y[i]!)).toBeLessThan(room));
        const straight = cubicCurve({ fn, x, y: x.map((v) => 3 - 2 * v), method });
        straight.slope.forEach((m) => expect(Math.abs(m + 2)).toBeLessThan(room));
      }),
    );
  });
  it('a spline bends without a step; a natural one not at all at its ends', () => {
    fc.assert(
      fc.property(points, fc.constantFrom('natural-spline' as const, 'not-a-knot' as const), ({ x, y }, method) => {
        const { slope } = cubicCurve({ fn, x, y, method });
        const last = x.length - 2;
        const bends = x.slice(0, -1).map((_, i) => [twice(x, slope, y, i, 0), twice(x, slope, y, i, 1)] as const);
        const scale = 1e-9 * Math.max(1, ...bends.flat().map(Math.abs)) * 100;
        for (let i = 0; i < last; i++) expect(Math.abs(bends[i]![1] - bends[i + 1]![0])).toBeLessThan(scale);
        if (method === 'natural-spline') {
          expect(Math.abs(bends[0]![0])).toBeLessThan(scale);
          expect(Math.abs(bends[last]![1])).toBeLessThan(scale);
        }
      }),
    );
  });
  it('not a knot keeps a cubic, Akima’s keeps a parabola inside even points', () => {
    const x = [-1, 0.2, 1, 1.1, 3, 4];
    const y = x.map((v) => v ** 3 - 2 * v * v + 5);
    cubicCurve({ fn, x, y, method: 'not-a-knot' }).slope.forEach((m, i) =>
      expect(m).toBeCloseTo(3 * x[i]! ** 2 - 4 * x[i]!, 10),
    );
    const even = row(9);
    const { slope } = cubicCurve({ fn, x: even, y: even.map((v) => v * v), method: 'akima' });
    even.forEach((v, i) => expect(slope[i]).toBeCloseTo(2 * v, 12));
  });
  it('is exact for the integral of a cubic, between points too', () => {
    const x = [0, 1, 2.5, 4];
    const curve = cubicCurve({ fn, x, y: x.map((v) => v ** 3), method: 'not-a-knot' });
    for (const at of [0.3, 1, 1.7, 4])
      expect(cubicValue({ fn, curve, x: at }).integralValue).toBeCloseTo(at ** 4 / 4, 11);
  });
  it('the monotone curve stays between its points; splines overshoot, and Akima’s less than they', () => {
    const beyond = (method: CubicMethod): number => {
      const curve = cubicCurve({ fn, x: akimaX, y: akimaY, method });
      let below = 0;
      for (let i = 0; i <= 1500; i++) below = Math.max(below, 10 - cubicValue({ fn, curve, x: i / 100 }).value);
      return below;
    };
    // No point lies below 10.
    expect(beyond('monotone')).toBeLessThan(1e-12);
    expect(beyond('akima')).toBeLessThan(1e-12);
    expect(beyond('natural-spline')).toBeGreaterThan(1);
    expect(beyond('not-a-knot')).toBeGreaterThan(1);
    // RPN 14 (from memory) rises to 0.999994: a curve that goes above it shows more than was measured.
    const x = [7.99, 8.09, 8.19, 8.7, 9.2, 10, 12, 15, 20];
    const y = [0, 2.76429e-5, 4.37498e-2, 0.169183, 0.469428, 0.94374, 0.998636, 0.999919, 0.999994];
    const highest = (method: CubicMethod): number => {
      const curve = cubicCurve({ fn, x, y, method });
      return Math.max(...row(1201).map((i) => cubicValue({ fn, curve, x: 7.99 + (12.01 * i) / 1201 }).value));
    };
    expect(highest('monotone')).toBeLessThanOrEqual(0.999994);
    expect(highest('akima')).toBeGreaterThan(1);
    expect(highest('not-a-knot')).toBeGreaterThan(highest('akima'));
  });
});

describe('edges', () => {
  it('two points are a straight line, three a parabola for not a knot', () => {
    for (const method of methods) {
      const curve = cubicCurve({ fn, x: [1, 3], y: [4, 0], method });
      expect(cubicValue({ fn, curve, x: 2 })).toEqual({ value: 2, slope: -2, integralValue: 3 });
    }
    const three = cubicCurve({ fn, x: [0, 1, 4], y: [0, 1, 16], method: 'not-a-knot' });
    expect(three.slope).toEqual([0, 2, 8]);
    expect(cubicValue({ fn, curve: three, x: 3 }).integralValue).toBeCloseTo(9, 12);
  });
  it('begins with nothing', () => {
    const curve = cubicCurve({ fn, x: akimaX, y: akimaY, method: 'akima' });
    expect(cubicValue({ fn, curve, x: 0 }).integralValue).toBe(0);
  });
  it('names what is wrong', () => {
    for (const method of methods) {
      expectInputError(() => cubicCurve({ fn, x: [1], y: [1], method }), 'points', 'list');
      expectInputError(() => cubicCurve({ fn, x: [1, 2], y: [1], method }), 'points', 'list');
      expectInputError(() => cubicCurve({ fn, x: [1, 1, 2], y: [1, 2, 3], method }), 'points[1]', 'order');
      expectInputError(() => cubicCurve({ fn, x: [1, NaN], y: [1, 2], method }), 'points[1]', 'order');
      const curve = cubicCurve({ fn, x: [1, 3, 4], y: [4, 0, 1], method });
      for (const x of [0.999, 4.001, NaN]) expectInputError(() => cubicValue({ fn, curve, x }), 'x', 'range');
    }
    expectInputError(() => cubicCurve({ fn, x: [1, 2], y: [1, 2], method: 'spline' as never }), 'method', 'oneOf');
  });
});
