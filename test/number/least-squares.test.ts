import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { leastSquares, type LeastSquaresResult } from 'loomwright';
import { expectInputError } from '../support/edge.js';
import { evenly } from '../support/law.js';
import { computed, expectPrinted, expectWithin, type Citation } from '../support/published.js';
import { filip, longley, pontius } from './nist-strd.js';

const cite = (place: string): Citation => ({ source: 'nist-strd', place, status: 'published' });
const wampler = (n: number): Citation => ({ source: 'nist-strd', place: `Wampler${n}, from memory`, status: 'memory' });
const gum: Citation = { source: 'jcgm-100', place: 'annex H.3', status: 'published' };

const powers = (x: number, degree: number): number[] => Array.from({ length: degree + 1 }, (_, j) => x ** j);
const sd = (fit: LeastSquaresResult, i: number): number =>
  Number(fit.standardDeviation) * Math.sqrt(Number(fit.inverseNormal[i]?.[i]));

describe('published', () => {
  // Certified to 15 digits. Double precision keeps 16 of them less those of the condition number. Rounding the
  // powers of Filip (degree 10) to doubles alone moves its answer by 2e-8, by mpmath with 60 digits.
  for (const { name, rows, values, certified, deviations, sumOfSquares, relative } of [longley, filip, pontius]) {
    const fit = leastSquares({ fn: 'test', rows, values });
    certified.forEach((print, i) => {
      computed(`${name} coefficient ${i}: ${print}`, cite(name), () => {
        expectWithin(Number(fit.coefficients[i]), Number(print), relative);
      });
    });
    deviations.forEach((print, i) => {
      computed(`${name} standard deviation of coefficient ${i}: ${print}`, cite(name), () => {
        expectWithin(sd(fit, i), Number(print), relative);
      });
    });
    computed(`${name} residual sum of squares: ${sumOfSquares}`, cite(name), () => {
      expectWithin(fit.sumOfSquares, Number(sumOfSquares), relative);
    });
  }

  const x = Array.from({ length: 21 }, (_, i) => i);
  for (const [n, base] of [
    [1, 1],
    [2, 0.1],
  ] as const) {
    const fit = leastSquares({
      fn: 'test',
      rows: x.map((v) => powers(v, 5)),
      values: x.map((v) => powers(v, 5).reduce((sum, p, j) => sum + p * base ** j, 0)),
    });
    for (let j = 0; j <= 5; j++) {
      computed(`Wampler${n} coefficient ${j}: ${base ** j}`, wampler(n), () => {
        expectWithin(Number(fit.coefficients[j]), base ** j, n === 1 ? 1e-8 : 1e-10);
      });
    }
  }

  const temps = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.01, 26.511];
  const corrections = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.16];
  const line = leastSquares({ fn: 'test', rows: temps.map((t) => [1, t - 20]), values: corrections });
  const [[v00 = NaN, v01 = NaN] = [], [, v11 = NaN] = []] = line.inverseNormal;
  const s2 = Number(line.standardDeviation) ** 2;
  for (const [name, value, print] of [
    ['intercept', line.coefficients[0], '-0.1712'],
    ['its standard uncertainty', Math.sqrt(s2 * v00), '0.0029'],
    ['slope', line.coefficients[1], '0.00218'],
    ['its standard uncertainty', Math.sqrt(s2 * v11), '0.00067'],
    ['correlation', v01 / Math.sqrt(v00 * v11), '-0.930'],
    ['standard deviation of a reading', line.standardDeviation, '0.0035'],
    ['sum of squares', line.sumOfSquares, '0.000110096583109'],
    ['correction at 30 °C', Number(line.coefficients[0]) + 10 * Number(line.coefficients[1]), '-0.1494'],
    ['its standard uncertainty', Math.sqrt(s2 * (v00 + 20 * v01 + 100 * v11)), '0.0041'],
  ] as const) {
    computed(`H.3 ${name}: ${print}`, gum, () => expectPrinted(Number(value), print));
  }
});

describe('laws', () => {
  const points = fc.array(fc.tuple(evenly(-5, 5), evenly(-5, 5)), { minLength: 6, maxLength: 12 });
  it('leaves residuals at right angles to every column, and leverages that sum to the columns', () => {
    fc.assert(
      fc.property(points, (list) => {
        const rows = list.map(([x], i) => [1, x + i, (x + i) ** 2]);
        const values = list.map(([, y]) => y);
        const fit = leastSquares({ fn: 'test', rows, values });
        for (let j = 0; j < 3; j++) {
          const scale = rows.reduce((sum, row) => sum + Math.abs(Number(row[j])), 0);
          const dot = rows.reduce((sum, row, i) => sum + Number(row[j]) * Number(fit.residuals[i]), 0);
          expect(Math.abs(dot) / scale).toBeLessThan(1e-11);
        }
        expectWithin(
          fit.leverages.reduce((sum, h) => sum + h, 0),
          3,
          1e-9,
        );
      }),
    );
  });
  it('weights a point like so many copies of it', () => {
    const rows = [1, 2, 3, 5].map((x) => [1, x]);
    const values = [1, 3, 2, 6];
    const weighted = leastSquares({ fn: 'test', rows, values, weights: [1, Math.sqrt(3), 1, 1] });
    const copied = leastSquares({
      fn: 'test',
      rows: [...rows, [1, 2], [1, 2]],
      values: [...values, 3, 3],
    });
    weighted.coefficients.forEach((c, i) => expectWithin(c, Number(copied.coefficients[i]), 1e-13));
  });
  it('does not care in which unit a column is', () => {
    const rows = [1, 2, 4, 7, 8].map((x) => [1, x, x * x]);
    const values = [1, 2, 2, 5, 4];
    const one = leastSquares({ fn: 'test', rows, values });
    const other = leastSquares({ fn: 'test', rows: rows.map(([a, b, c]) => [a!, b! * 1e9, c! * 1e-9]), values });
    expectWithin(Number(other.coefficients[1]) * 1e9, Number(one.coefficients[1]), 1e-12);
    expectWithin(Number(other.coefficients[2]) * 1e-9, Number(one.coefficients[2]), 1e-12);
  });
});

describe('edges', () => {
  const rows = [
    [1, 0],
    [1, 1],
  ];
  it('goes exactly through as many points as coefficients, and knows no scatter then', () => {
    const fit = leastSquares({ fn: 'test', rows, values: [2, 5] });
    expect(fit).toMatchObject({ degreesOfFreedom: 0, standardDeviation: null });
    expectWithin(Number(fit.coefficients[0]), 2, 1e-15);
    expectWithin(Number(fit.coefficients[1]), 3, 1e-15);
  });
  it('names what is wrong', () => {
    const wrong = (input: object): (() => unknown) => {
      return () => leastSquares({ fn: 'caller', rows, values: [1, 2], ...input });
    };
    expectInputError(wrong({ rows: [], values: [] }), 'rows', 'list');
    expectInputError(wrong({ rows: [[1, 2]], values: [1] }), 'rows', 'list');
    expectInputError(wrong({ values: [1] }), 'rows', 'list');
    expectInputError(wrong({ weights: [1] }), 'rows', 'list');
    expectInputError(wrong({ rows: [[1, 0], [1]] }), 'rows[1]', 'finite');
    expectInputError(
      wrong({
        rows: [
          [1, 0],
          [1, NaN],
        ],
      }),
      'rows[1]',
      'finite',
    );
    expectInputError(wrong({ values: [1, Infinity] }), 'rows[1]', 'finite');
    expectInputError(wrong({ rows: [[1, 2], [2, 4], [3, 6]], values: [1, 2, 3] }), 'rows', 'range'); // prettier-ignore
    expect(wrong({ values: [1] })).toThrow(/^caller: rows must be at least 2, one for each value/);
  });
});
