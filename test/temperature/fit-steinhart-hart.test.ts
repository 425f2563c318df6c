import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  cToFahrenheit,
  fitSteinhartHart,
  ntc10k3mcd1,
  thermistorResistance,
  thermistorTemperature,
  type ThermistorPoint,
} from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenly } from '../support/law.js';
import { computed, expectPrinted, expectWithin, type Citation } from '../support/published.js';
import { fixture } from './fixture.js';
import { print10k3mcd1, print103jl1a, print2252, print44031 } from './ntc-print.js';

const pointsOf = (rows: readonly (readonly [number, string | number])[]): readonly ThermistorPoint[] =>
  rows.map(([tempC, ohm]) => ({ tempC, resistanceOhm: Number(ohm) }));
const codes = (points: readonly ThermistorPoint[]): readonly string[] =>
  fitSteinhartHart({ points }).warnings.map(({ code }) => code);
const three = pointsOf([
  [0, 5900],
  [50, 834],
  [100, 186],
]);

const worked: Citation = { source: 'circuit-theory', place: 'worked case of three points', status: 'derived' };

describe('published', () => {
  // Printed tables through fitted curves: each row within the residual that the best three letters have, which is
  // what the source's own letters have where it prints them (10K3MCD1: 0.005 K; 103JL1A: 0.05 K to 100 °C).
  for (const [name, source, rows, tolerance] of [
    ['10K3MCD1', 'ntc-10k3mcd1-manual', print10k3mcd1, 0.005],
    ['103JL1A to 100 °C', 'ntc-103jl1a-manual', print103jl1a.filter(([t]) => t <= 100), 0.05],
    ['2252 from −40 to 150 °C', 'ntc-2252-table', print2252.filter(([t]) => t >= -40 && t <= 150), 0.07],
    ['44031', 'ntc-44031-table', print44031, 0.06],
  ] as const) {
    const fit = fitSteinhartHart({ points: pointsOf(rows) });
    for (const { tempC, resistanceOhm, fittedTempC } of fit.points) {
      computed(
        `${name}: ${resistanceOhm} Ω is ${tempC} °C`,
        { source, place: `${name} table`, status: 'published' },
        () => {
          expect(Math.abs(fittedTempC - tempC)).toBeLessThanOrEqual(tolerance);
        },
      );
    }
  }
  const { a, b, c } = fitSteinhartHart({ points: three }).curve;
  computed('a of 5900, 834, 186 Ω: 1.313427e-3', worked, () => expectPrinted(a, '1.313427e-3'));
  computed('b: 2.564390e-4', worked, () => expectPrinted(b, '2.564390e-4'));
  computed('c: 1.84820e-7', worked, () => expectPrinted(c, '1.84820e-7'));
  computed('5750, 800, 190 Ω: c is negative, and it says so', worked, () => {
    const fit = fitSteinhartHart({ points: pointsOf([[0, 5750], [50, 800], [100, 190]]) }); // prettier-ignore
    expect(fit.curve.c).toBeLessThan(0);
    expect(fit.warnings.map(({ code }) => code)).toEqual(['c-negative']);
    expect(fit.warnings[0]?.message).toMatch(/c is below 0/);
  });
});

describe('independent', () => {
  // Solves by the three-point formula, printed to ten digits by a hand calculation, and by mpmath to 40 digits.
  const hand = [
    ['1.473264438e-03', '2.372094987e-04', '1.074363115e-07'],
    ['1.470506000e-03', '2.378007401e-04', '1.038860593e-07'],
    ['1.470873889e-03', '2.377905230e-04', '1.032577936e-07'],
    ['1.469264869e-03', '2.380572775e-04', '1.022791230e-07'],
    ['1.029194767e-03', '2.391275184e-04', '1.566277150e-07'],
    ['1.029262983e-03', '2.391226948e-04', '1.565972689e-07'],
    ['1.028443688e-03', '2.392435315e-04', '1.562214251e-07'],
    ['1.031126209e-03', '2.388161877e-04', '1.577645857e-07'],
  ] as const;
  fixture.threes.forEach(({ points, letters }, i) => {
    it(`three points ${JSON.stringify(points)}`, () => {
      const { curve } = fitSteinhartHart({ points: pointsOf(points) });
      [curve.a, curve.b, curve.c].forEach((letter, j) => {
        expectWithin(letter, letters[j]!, 3e-11);
        expectPrinted(letter, hand[i]![j]!);
      });
    });
  });
  for (const [name, fit] of Object.entries(fixture.fits)) {
    it(`${name}: letters, residuals, scatter and covariance by mpmath; temperatures by scipy`, () => {
      const points = fit.points.map(([tempC, resistanceOhm], i) => ({
        tempC,
        resistanceOhm,
        ...(fit.uncertaintiesK === undefined ? {} : { uncertaintyK: fit.uncertaintiesK[i]! }),
      }));
      const ours = fitSteinhartHart({ points });
      const dof = points.length - 3;
      [ours.curve.a, ours.curve.b, ours.curve.c].forEach((letter, j) => expectWithin(letter, fit.letters[j]!, 1e-9));
      ours.points.forEach(({ residualK }, i) => expect(residualK).toBeCloseTo(fit.residualsK[i]!, 8));
      expect(ours.degreesOfFreedom).toBe(dof);
      const scale = fit.uncertaintiesK === undefined ? fit.sumOfSquares / dof : 1;
      ours.covariance!.forEach((row, i) => {
        row.forEach((v, j) => expectWithin(v, fit.inverseNormal[i]![j]! * scale, 1e-6));
      });
      if (fit.uncertaintiesK === undefined) {
        expectWithin(ours.standardDeviationK!, Math.sqrt(fit.sumOfSquares / dof), 1e-8);
      }
      // scipy minimises the kelvins themselves, we their first order: the temperatures differ by less than a millikelvin.
      const [a, b, c] = fit.scipyLetters;
      for (const { resistanceOhm, fittedTempC } of ours.points) {
        const l = Math.log(resistanceOhm);
        expect(Math.abs(1 / (a + b * l + c * l ** 3) - 273.15 - fittedTempC)).toBeLessThan(5e-4);
      }
    });
  }
});

describe('laws', () => {
  const tempsC = [-40, -20, 0, 15, 30, 50, 70, 90, 110];
  it('finds the letters again from points of a curve, in any order and unit', () => {
    fc.assert(
      fc.property(fc.shuffledSubarray(tempsC, { minLength: 3 }), fc.boolean(), (temps, inF) => {
        const points = temps.map((tempC) => {
          const { resistanceOhm } = thermistorResistance({ curve: ntc10k3mcd1, tempC });
          return inF ? { tempF: cToFahrenheit(tempC), resistanceOhm } : { tempC, resistanceOhm };
        });
        const { curve, worstResidualK, suspicious } = fitSteinhartHart({ points });
        expectWithin(curve.a, ntc10k3mcd1.a, 1e-7);
        expectWithin(curve.b, ntc10k3mcd1.b, 1e-7);
        expectWithin(curve.c, ntc10k3mcd1.c, 1e-6);
        expect(worstResidualK).toBeLessThan(1e-9);
        expect(suspicious).toBeNull();
      }),
    );
  });
  it('names the one reading that is off, wherever it is', () => {
    fc.assert(
      fc.property(
        fc.nat({ max: tempsC.length - 1 }),
        fc.double({ min: 1.5, max: 6, noNaN: true }),
        fc.constantFrom(1, -1),
        fc.infiniteStream(evenly(-0.05, 0.05)),
        (bad, off, sign, noise) => {
          const points = tempsC.map((tempC, i) => ({
            tempC: tempC + Number(noise.next().value) + (i === bad ? sign * off : 0),
            resistanceOhm: thermistorResistance({ curve: ntc10k3mcd1, tempC }).resistanceOhm,
          }));
          const { suspicious, warnings } = fitSteinhartHart({ points });
          expect(suspicious?.resistanceOhm).toBe(points[bad]!.resistanceOhm);
          expect(suspicious!.withoutItK * -sign).toBeGreaterThan(off / 2);
          expect(warnings.map(({ code }) => code)).toContain('suspicious-point');
        },
      ),
    );
  });
  it('trusts a point less that is less certain', () => {
    const points = tempsC.map((tempC) => ({
      tempC: tempC === 50 ? 51 : tempC,
      resistanceOhm: thermistorResistance({ curve: ntc10k3mcd1, tempC }).resistanceOhm,
    }));
    const offAt = (uncertaintyK: number): number => {
      const weighed = points.map((point) => ({ ...point, uncertaintyK: point.tempC === 51 ? uncertaintyK : 0.1 }));
      const { curve } = fitSteinhartHart({ points: weighed });
      const { resistanceOhm } = thermistorResistance({ curve: ntc10k3mcd1, tempC: 50 });
      return Math.abs(thermistorTemperature({ curve, resistanceOhm }).tempC - 50);
    };
    expect(offAt(10)).toBeLessThan(offAt(1) / 10);
    expect(offAt(1)).toBeLessThan(offAt(0.1) / 5);
  });
});

describe('edges', () => {
  it('is quiet where nothing is doubtful', () => {
    expect(codes(three)).toEqual([]);
    expect(fitSteinhartHart({ points: three })).toMatchObject({
      degreesOfFreedom: 0,
      standardDeviationK: null,
      suspicious: null,
      covariance: null,
    });
  });
  it('gives three points a covariance where they have uncertainties', () => {
    const points = three.map((point) => ({ ...point, uncertaintyK: 0.2 }));
    const { covariance } = fitSteinhartHart({ points });
    expect(covariance?.[0]?.[0]).toBeGreaterThan(0);
    const half = fitSteinhartHart({ points: points.map((p) => ({ ...p, uncertaintyK: 0.1 })) }).covariance!;
    expectWithin(covariance![2]![2]!, 4 * half[2]![2]!, 1e-9);
  });
  it('warns of points too close', () => {
    expect(codes(pointsOf([[20, 2500], [30, 1707], [45, 990]]))).toEqual(['points-too-close']); // prettier-ignore
    expect(codes(pointsOf([[0, 5896], [9, 3950], [100, 187]]))).toEqual(['points-too-close']); // prettier-ignore
    expect(codes(pointsOf([[0, 5896], [9, 3950], [50, 834], [100, 187]]))).toEqual([]); // prettier-ignore
  });
  it('warns of kelvins made with 273.2', () => {
    const kelvins = three.map(({ tempC, resistanceOhm }) => ({ tempK: tempC! + 273.2, resistanceOhm }));
    expect(codes(kelvins)).toEqual(['kelvin-offset']);
    expect(codes(three.map(({ tempC, resistanceOhm }) => ({ tempK: tempC! + 273.15, resistanceOhm })))).toEqual([]);
    const both = three.map((point) => ({ ...point, tempK: point.tempC! + 273.2 }));
    expect(codes(both)).toEqual(['kelvin-offset', 'kelvin-offset', 'kelvin-offset']);
    expect(codes(three.map((point) => ({ ...point, tempK: point.tempC! + 273.15 })))).toEqual([]);
    expect(codes(three.map((point) => ({ ...point, tempK: point.tempC! + 283.15 })))[0]).toBe(
      'celsius-kelvin-disagree',
    );
  });
  it('warns of °C and °F that disagree, and names the point', () => {
    const points = [
      { ...three[0]!, tempF: 32 },
      { ...three[1]!, tempF: 112 },
      { ...three[2]!, tempF: 212 },
    ];
    expect(fitSteinhartHart({ points }).warnings).toEqual([
      { code: 'celsius-fahrenheit-disagree', message: '50 °C is 122.0 °F, not 112 °F', pointIndex: 1 },
    ]);
    expect(codes(points.map((point, i) => (i === 1 ? { ...point, tempF: 122 } : point)))).toEqual([]);
  });
  it('warns where the resistance does not fall from point to point', () => {
    const points = pointsOf([[0, 5896], [10, 3792], [20, 3800], [30, 1707], [60, 596], [100, 187]]); // prettier-ignore
    expect(codes(points)).toContain('not-falling');
  });
  it('names the reading with a slipped digit even where no curve goes through', () => {
    const points = pointsOf([[0, 5896], [20, 2500], [40, 11750], [60, 596], [80, 323], [100, 187]]); // prettier-ignore
    expect(() => fitSteinhartHart({ points })).toThrow(/look at the point 40 °C, 11750 Ω/);
  });
  it('cannot tell a bad one among four', () => {
    const points = pointsOf([[0, 5896], [30, 1900], [60, 596], [100, 187]]); // prettier-ignore
    expect(fitSteinhartHart({ points }).suspicious).toBeNull();
  });
  it('refuses nonsense', () => {
    refusesNonsense(fitSteinhartHart, { points: three }, {});
    const wrong =
      (points: unknown): (() => unknown) =>
      () =>
        fitSteinhartHart({ points: points as ThermistorPoint[] });
    expectInputError(wrong(undefined), 'points', 'missing');
    expectInputError(wrong(three.slice(0, 2)), 'points', 'list');
    expectInputError(wrong([...three.slice(0, 2), null]), 'points[2]', 'object');
    expectInputError(
      wrong([...three.slice(0, 2), { tempC: 100, resistanceOhm: 0 }]),
      'points[2].resistanceOhm',
      'above',
    );
    expectInputError(wrong([...three.slice(0, 2), { resistanceOhm: 186 }]), 'points[2].tempC', 'missing');
    expectInputError(wrong([...three.slice(0, 2), { tempF: NaN, resistanceOhm: 186 }]), 'points[2].tempF', 'finite');
    expectInputError(wrong([...three.slice(0, 2), { tempK: 'x', resistanceOhm: 186 }]), 'points[2].tempK', 'number');
    expectInputError(wrong([...three.slice(0, 2), { tempC: -300, resistanceOhm: 186 }]), 'points[2].tempC', 'atLeast');
    expectInputError(
      wrong([...three.slice(0, 2), { ...three[2], uncertaintyK: 0 }]),
      'points[2].uncertaintyK',
      'above',
    );
    expectInputError(wrong([...three.slice(0, 2), { ...three[2], uncertaintyK: 1 }]), 'points', 'missing');
    expectInputError(wrong(pointsOf([[0, 100], [50, 200], [100, 300]])), 'points', 'order'); // prettier-ignore
    expectInputError(wrong(pointsOf([[0, 300], [50, 100], [100, 100]])), 'points', 'order'); // prettier-ignore
    expectInputError(wrong(pointsOf([[0, 300], [0, 200], [0, 100]])), 'points', 'order'); // prettier-ignore
  });
});

describe('regression', () => {
  it('names a gross slip: it once hid behind the bend of 1/T, kelvins being taken where the fit is straight', () => {
    const points = pointsOf([[0, 5896], [20, 2500], [40, 1175], [60, 956], [80, 323], [100, 187]]); // prettier-ignore
    expect(fitSteinhartHart({ points }).suspicious).toMatchObject({ tempC: 60, resistanceOhm: 956 });
  });
});
