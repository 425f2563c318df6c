import { describe, expect, it } from 'vitest';
import {
  fitSteinhartHart,
  fitUncertainty,
  ntc10k3mcd1,
  thermistorResistance,
  type FitUncertaintyInput,
} from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { expectWithin } from '../support/published.js';

const temps = [0, 12, 25, 38, 50, 62, 75, 88, 100];
const u = 0.4;
const points = temps.map((tempC) => ({
  tempC,
  resistanceOhm: thermistorResistance({ curve: ntc10k3mcd1, tempC }).resistanceOhm,
  uncertaintyK: u,
}));
const fit = fitSteinhartHart({ points });
const ohmAt = (tempC: number): number => thermistorResistance({ curve: ntc10k3mcd1, tempC }).resistanceOhm;
const at = (tempC: number) =>
  fitUncertainty({ fit, resistanceOhm: ohmAt(tempC), resistanceUncertaintyFraction: 0, coverageFactor: 2 });

/** A normal number from two of a fixed recurrence. */
function normals(seed: number): () => number {
  let state = seed;
  const next = (): number => (state = (state * 16807) % 2147483647) / 2147483647;
  return () => Math.sqrt(-2 * Math.log(next())) * Math.cos(2 * Math.PI * next());
}

describe('independent', () => {
  it('is the scatter of many fits of noisy points', () => {
    const normal = normals(2026);
    const places = [0, 25, 60, 100, 120];
    const sums = places.map(() => [0, 0] as [number, number]);
    const runs = 2000;
    for (let run = 0; run < runs; run++) {
      const noisy = points.map((point) => ({ ...point, tempC: point.tempC + u * normal() }));
      const { curve } = fitSteinhartHart({ points: noisy });
      places.forEach((tempC, i) => {
        const l = Math.log(ohmAt(tempC));
        const read = 1 / (curve.a + curve.b * l + curve.c * l ** 3) - 273.15;
        sums[i]![0] += read - tempC;
        sums[i]![1] += (read - tempC) ** 2;
      });
    }
    places.forEach((tempC, i) => {
      const [sum, squares] = sums[i]!;
      const scatter = Math.sqrt(squares / runs - (sum / runs) ** 2);
      // 2000 runs know a standard deviation to 1.6 %; five of those.
      expectWithin(at(tempC).curveK, scatter, 0.08);
    });
  });
  it('adds a reading by the slope of the curve', () => {
    const found = fitUncertainty({ fit, resistanceOhm: 10000, resistanceUncertaintyFraction: 0.01, coverageFactor: 2 });
    const { slopeOhmPerK } = thermistorResistance({ curve: fit.curve, tempC: found.tempC });
    expectWithin(found.readingK, 100 / -slopeOhmPerK, 1e-9);
    expectWithin(found.standardUncertaintyK, Math.hypot(found.readingK, found.curveK), 1e-12);
    expectWithin(found.bandK, 2 * found.standardUncertaintyK, 1e-15);
  });
});

describe('laws', () => {
  it('is best among the points and grows beyond them', () => {
    expect(at(50).curveK).toBeLessThan(u);
    expect(at(130).curveK).toBeGreaterThan(2 * at(100).curveK);
    expect(at(-30).curveK).toBeGreaterThan(2 * at(0).curveK);
  });
  it('scales with the uncertainty of the points', () => {
    const half = fitSteinhartHart({ points: points.map((point) => ({ ...point, uncertaintyK: u / 2 })) });
    const found = fitUncertainty({
      fit: half,
      resistanceOhm: 5000,
      resistanceUncertaintyFraction: 0,
      coverageFactor: 1,
    });
    const whole = fitUncertainty({ fit, resistanceOhm: 5000, resistanceUncertaintyFraction: 0, coverageFactor: 1 });
    expectWithin(found.curveK, whole.curveK / 2, 1e-6);
  });
});

describe('edges', () => {
  const input: FitUncertaintyInput = {
    fit,
    resistanceOhm: 5000,
    resistanceUncertaintyFraction: 0.01,
    coverageFactor: 2,
  };
  it('refuses a fit that knows no uncertainty', () => {
    const bare = fitSteinhartHart({
      points: points.slice(0, 3).map(({ tempC, resistanceOhm }) => ({ tempC, resistanceOhm })),
    });
    expectInputError(() => fitUncertainty({ ...input, fit: bare }), 'fit', 'object');
    expectInputError(() => fitUncertainty({ ...input, fit: undefined as never }), 'fit', 'missing');
  });
  it('refuses nonsense', () => {
    refusesNonsense(fitUncertainty, input, {
      required: ['resistanceOhm', 'resistanceUncertaintyFraction', 'coverageFactor'],
    });
    expectInputError(() => fitUncertainty({ ...input, resistanceOhm: 1e-12 }), 'resistanceOhm', 'range');
    expectInputError(() => fitUncertainty({ ...input, coverageFactor: 0 }), 'coverageFactor', 'above');
    expectInputError(() => fitUncertainty({ ...input, resistanceUncertaintyFraction: -1 }), 'resistanceUncertaintyFraction', 'atLeast'); // prettier-ignore
  });
});
