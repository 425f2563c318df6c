import { describe, expect, it } from 'vitest';
import {
  ntc103jl1a,
  ntc10k3mcd1,
  thermistorResiduals,
  type SteinhartHartCurve,
  type ThermistorResidualsInput,
} from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { computed, expectPrinted, type Citation } from '../support/published.js';
import { print10k3mcd1, print103jl1a, print2252, print44031 } from './ntc-print.js';

const pointsOf = (rows: readonly (readonly [number, string])[]) =>
  rows.map(([tempC, ohm]) => ({ tempC, resistanceOhm: Number(ohm) }));
const jl: Citation = { source: 'ntc-103jl1a-manual', place: 'equation 7 against table 16', status: 'published' };
const probe: Citation = { source: 'ntc-10k3mcd1-manual', place: 'appendix C', status: 'published' };

/** Solves through three rows of the printed tables, as worked by hand. */
const s1: SteinhartHartCurve = { kind: 'steinhart-hart', a: 1.473264438e-3, b: 2.372094987e-4, c: 1.074363115e-7 };
const s5: SteinhartHartCurve = { kind: 'steinhart-hart', a: 1.029194767e-3, b: 2.391275184e-4, c: 1.56627715e-7 };

describe('published', () => {
  computed('the probe repeats its table to 0.01 °C at every row', probe, () => {
    const { worst, warnings } = thermistorResiduals({ curve: ntc10k3mcd1, points: pointsOf(print10k3mcd1) });
    expect(Math.abs(worst.residualK)).toBeLessThan(0.005);
    expect(warnings).toEqual([]);
  });
  computed('273.2 as printed shifts every row by 0.05 K, and is found out', jl, () => {
    const points = pointsOf(print103jl1a.filter(([t]) => t >= 0 && t <= 100));
    const { meanK, warnings } = thermistorResiduals({ curve: { ...ntc103jl1a, zeroCInK: 273.2 }, points });
    expectPrinted(meanK, '-0.05');
    expect(warnings.map(({ code }) => code)).toEqual(['kelvin-offset']);
    expect(thermistorResiduals({ curve: ntc103jl1a, points }).warnings).toEqual([]);
  });
});

describe('independent', () => {
  it.each([
    [s1, print2252, -40, '-0.097'],
    [s1, print2252, 25, '0.015'],
    [s1, print2252, 70, '0.002'],
    [s1, print2252, 150, '-0.197'],
    [s5, print44031, -55, '0.012'],
    [s5, print44031, -40, '-0.003'],
    [s5, print44031, 70, '-0.006'],
    [s5, print44031, 100, '0.004'],
    [s5, print44031, 150, '0.154'],
  ] as const)('a solve of three rows leaves row %#: %j', (curve, rows, t, print) => {
    const points = pointsOf(rows.filter(([tempC]) => tempC === t));
    expectPrinted(thermistorResiduals({ curve, points }).worst.residualK, print);
  });
});

describe('laws', () => {
  it('mean and root mean square are those of the points', () => {
    const { points, meanK, rootMeanSquareK, worst } = thermistorResiduals({ curve: s1, points: pointsOf(print2252) });
    const errors = points.map(({ residualK }) => residualK);
    expect(meanK).toBeCloseTo(errors.reduce((sum, e) => sum + e, 0) / errors.length, 12);
    expect(rootMeanSquareK).toBeCloseTo(Math.sqrt(errors.reduce((sum, e) => sum + e * e, 0) / errors.length), 12);
    expect(Math.abs(worst.residualK)).toBe(Math.max(...errors.map(Math.abs)));
  });
});

describe('edges', () => {
  const ok: ThermistorResidualsInput = { curve: s1, points: [{ tempC: 0, resistanceOhm: 7355 }] };
  it('refuses nonsense', () => {
    refusesNonsense(thermistorResiduals, ok, {});
    expectInputError(() => thermistorResiduals({ ...ok, points: [] }), 'points', 'list');
    expectInputError(() => thermistorResiduals({ ...ok, points: [3 as never] }), 'points[0]', 'object');
    expectInputError(
      () => thermistorResiduals({ ...ok, points: [{ tempC: 0, resistanceOhm: -1 }] }),
      'points[0].resistanceOhm',
      'above',
    );
    expectInputError(() => thermistorResiduals({ ...ok, curve: undefined as never }), 'curve', 'missing');
  });
  it('passes on a point whose units disagree', () => {
    const points = [{ tempC: 20, tempF: 20, resistanceOhm: 2814 }];
    expect(thermistorResiduals({ ...ok, points }).warnings[0]?.code).toBe('celsius-fahrenheit-disagree');
  });
});
