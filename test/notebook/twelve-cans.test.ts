// What the notebook comes to, worked out apart from the library: means, a straight line, sums of squares.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

const text = readFileSync(new URL('../../docs/notebooks/twelve-cans.ipynb', import.meta.url), 'utf8');

const twice = { 25: [1.934, 1.929, 1.936], 50: [0.967, 0.971, 0.965] };
const singly = { 10: 2.391, 15: 2.247, 20: 2.089, 30: 1.771, 35: 1.603, 40: 1.419, 45: 1.208, 55: 0.702 };
const fullL = 55 + 1.1 * 4.54609;
const up = (v: number, decimals: number): string =>
  (Math.ceil(v * 10 ** decimals - 1e-9) / 10 ** decimals).toFixed(decimals);
const litres = (v: number, decimals: number): string => `${up(v, decimals)}\u202fL`;

const mean = (list: readonly number[]): number => list.reduce((a, b) => a + b, 0) / list.length;
const squares = Object.values(twice).reduce(
  (sum, list) => sum + list.reduce((s, r) => s + (r - mean(list)) ** 2, 0),
  0,
);
const sigma = Math.sqrt(squares / 4);

describe('twelve-cans.ipynb', () => {
  it('states the noise of the repeats, in volts', () => {
    expect(text).toContain(`| noise of one reading | ${up(sigma, 4)}\u202fV |\\n| from repeats | 4 |`);
  });
  it('states what the float on its stop hides: the line through the next two cans', () => {
    const stopV = (2.497 + 2.494) / 2;
    const hiddenL = 10 - (stopV - 2.391) / ((2.391 - 2.247) / 5);
    expect(text).toContain(
      `| hidden at the bottom | ${litres(hiddenL, 1)} |\\n| in reserve below nought | 4.0\u202fL |`,
    );
  });
  it('states how well the litres are known at full: 1 % of all by the one can, and the noise of one reading', () => {
    const can = (0.01 * fullL) / Math.sqrt(3);
    const noise = (sigma * (fullL - 55)) / (0.702 - 0.611);
    expect(text).toContain(`| litres known at full to ± | ${litres(2 * Math.hypot(can, noise), 2)} |`);
  });
  it('states the errors of the table that it shows, at the cans and on the curve between them', () => {
    const rows = [...text.matchAll(/\| ([\d.]+)\u202fV \| ([\d.]+)\u202fL \|(?=\\n|")/g)].map(
      ([, v, l]) => [Number(v), Number(l)] as const,
    );
    const shown = (v: number): number => {
      const i = Math.max(
        1,
        rows.findIndex(([at]) => at >= v),
      );
      const [[v0, l0], [v1, l1]] = [rows[i - 1]!, rows[i]!];
      return l0 + ((l1 - l0) * (v - v0)) / (v1 - v0);
    };
    const above = (l: number): number => Math.max(0, l - 7);
    const cans: (readonly [number, number])[] = [
      ...Object.entries(singly).map(([l, v]) => [Number(l), v] as const),
      ...Object.entries(twice).flatMap(([l, list]) => list.map((v) => [Number(l), v] as const)),
      [fullL, 0.611],
    ];
    const atCans = Math.max(...cans.map(([l, v]) => Math.abs(shown(v) - above(l))));
    // Fritsch and Carlson's cubic through the means and the float's stop, where the least, 0 L, is shown.
    const points: (readonly [number, number])[] = [
      [(2.497 + 2.494) / 2, 0],
      ...Object.entries({ ...singly, 25: mean(twice[25]), 50: mean(twice[50]) })
        .map(([l, v]) => [v, Number(l)] as const)
        .sort((p, q) => q[0] - p[0]),
      [0.611, fullL],
    ];
    const n = points.length - 1;
    const step = (i: number): number => points[i + 1]![0] - points[i]![0];
    const secant = (i: number): number => (points[i + 1]![1] - points[i]![1]) / step(i);
    const parabola = (i: number): number =>
      i === 0
        ? secant(0) + ((secant(0) - secant(1)) * step(0)) / (step(0) + step(1))
        : i === n
          ? secant(n - 1) + ((secant(n - 1) - secant(n - 2)) * step(n - 1)) / (step(n - 1) + step(n - 2))
          : (secant(i - 1) * step(i) + secant(i) * step(i - 1)) / (step(i - 1) + step(i));
    const slope = points.map((_, i) =>
      i % n === 0 && parabola(i) * secant(i === 0 ? 0 : n - 1) <= 0 ? 0 : parabola(i),
    );
    for (let i = 0; i < n; i++) {
      const tooSteep = Math.hypot(slope[i]!, slope[i + 1]!) / Math.abs(3 * secant(i));
      if (tooSteep > 1) [slope[i], slope[i + 1]] = [slope[i]! / tooSteep, slope[i + 1]! / tooSteep];
    }
    let worst = 0;
    for (let i = 0; i < n; i++) {
      for (let k = 0; k <= 400; k++) {
        const t = k / 400;
        const [h, y0, y1] = [step(i), points[i]![1], points[i + 1]![1]];
        const litre =
          y0 * (1 + 2 * t) * (1 - t) ** 2 +
          h * slope[i]! * t * (1 - t) ** 2 +
          y1 * t * t * (3 - 2 * t) -
          h * slope[i + 1]! * t * t * (1 - t);
        worst = Math.max(worst, Math.abs(shown(points[i]![0] + h * t) - above(litre)));
      }
    }
    expect(worst).toBeLessThan(0.6);
    expect(text).toContain(`| cells | ${rows.length} |\\n| off by at most | ${litres(worst, 2)} |`);
    expect(text).toContain(`| at a can by at most | ${litres(atCans, 2)} |`);
  });
  it('states the share of each reading, the lag and the lamp', () => {
    // From 6 to 0.5 L at 2.6 s, read each 0.1 s: (1 − a)² (1 − h²) = 4 a h² sin²(π T/P).
    const h = 0.5 / 6;
    const s = Math.sin((Math.PI * 0.1) / 2.6);
    const p = (4 * s * s * h * h) / (1 - h * h);
    const b = (-p + Math.sqrt(p * p + 4 * p)) / 2;
    const steps = Math.ceil(Math.log(0.5 / 20) / Math.log(1 - b));
    const use = 25 / 3600 / (0.5 * 2 * Math.PI);
    const lampL = 2 * 0.5 * (Math.sqrt(1 - use * use) - use * Math.acos(use));
    expect(text).toContain(
      `| take of each new reading | ${(100 * b).toFixed(2)} % |\\n| late by | ${up(0.1 / b, 1)}\u202fs |`,
    );
    expect(text).toContain(`| a filling is shown after | ${(steps / 10).toFixed(1)}\u202fs |`);
    expect(text).toContain(`| a lamp needs between on and off | ${litres(lampL, 2)} |`);
  });
});
