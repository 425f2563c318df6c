import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  fitSteinhartHart,
  ntc100k,
  ntc103jl1a,
  ntc10k3mcd1,
  ntc10k44031,
  ntc2252,
  ntc3k44005,
  ntcCoolant2500,
  ntcMaterial1,
  ntcMaterial1Inverse,
  thermistorResistance,
  thermistorTemperature,
  type PointCurve,
  type ThermistorCurve,
} from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenly } from '../support/law.js';
import { computed, expectPrinted, type Citation } from '../support/published.js';
import { print10k3mcd1, print103jl1a, print2252, print44031, printMaterial1 } from './ntc-print.js';

const tempC = (curve: ThermistorCurve, resistanceOhm: number, extrapolate = false): number =>
  thermistorTemperature({ curve, resistanceOhm, extrapolate }).tempC;
const within = (actual: number, expected: number, tolerance: number): void => {
  expect(Math.abs(actual - expected), `${actual} against ${expected}`).toBeLessThanOrEqual(tolerance);
};

const mcd: Citation = { source: 'ntc-10k3mcd1-manual', place: 'appendix C, table C-1', status: 'published' };
const jl: Citation = { source: 'ntc-103jl1a-manual', place: 'equation 7, table 16', status: 'published' };
const material: Citation = { source: 'ntc-material-1', place: 'ratio table', status: 'published' };
const t2252: Citation = { source: 'ntc-2252-table', place: '5 °C rows', status: 'published' };
const t44031: Citation = { source: 'ntc-44031-table', place: '5 °C rows', status: 'published' };
const kettle: Citation = { source: 'circuit-theory', place: 'worked case of three points', status: 'derived' };

describe('published', () => {
  for (const [t, ohm] of print10k3mcd1) {
    computed(`${ohm} Ω is ${t}.00 °C`, mcd, () => within(tempC(ntc10k3mcd1, Number(ohm)), t, 0.005));
  }
  for (const [t, ohm] of print103jl1a) {
    // The equation leaves its own table by up to 0.05 K to 100 °C and by a third of a kelvin above, where the table
    // goes its own way: that is the residual of the source's own coefficients.
    computed(`${ohm} Ω is ${t} °C`, jl, () => within(tempC(ntc103jl1a, Number(ohm), true), t, t <= 100 ? 0.05 : 0.36));
  }
  for (const [t, ratio] of printMaterial1) {
    // Four printed digits are 0.005 K at the cold end and 0.015 K at the hot end; the equation adds its own.
    computed(`ratio ${ratio} is ${t} °C`, material, () => {
      within(tempC(ntcMaterial1, Number(ratio) * ntcMaterial1.refOhm, true), t, 0.03);
    });
  }
  // Every second row left out of the curve, and found again between its neighbours.
  for (const [name, cite, rows, full] of [
    ['2252', t2252, print2252, ntc2252],
    ['44031', t44031, print44031, ntc10k44031],
  ] as const) {
    const thin: PointCurve = { ...full, rows: full.rows.filter(([t]) => t % 10 === 0 && t >= -50 && t <= 150) };
    for (const [t, ohm] of rows.filter(([t]) => t % 10 !== 0 && t > -50 && t < 150)) {
      const halfDigitK =
        (0.5 * 10 ** -(ohm.split('.')[1]?.length ?? (Number(ohm) > 9999 ? -1 : 0))) / Number(ohm) / 0.028;
      computed(`${name} curve of 10 °C rows: ${ohm} Ω is ${t} °C`, cite, () => {
        within(tempC(thin, Number(ohm), true), t, 0.012 + 2 * halfDigitK);
      });
    }
  }
  const fit = fitSteinhartHart({
    points: [
      { tempC: 0, resistanceOhm: 5900 },
      { tempC: 50, resistanceOhm: 834 },
      { tempC: 100, resistanceOhm: 186 },
    ],
  });
  for (const [ohm, print] of [
    [2500, '20.25'],
    [320, '80.44'],
    [150, '108.30'],
  ] as const) {
    computed(`${ohm} Ω of three points is ${print} °C`, kettle, () =>
      expectPrinted(tempC(fit.curve, ohm, true), print),
    );
  }
});

describe('independent', () => {
  it('agrees with the coefficients worked by hand, and with the other zero of a manual', () => {
    for (const [ohm, t] of [
      [336103.2, -40.0024],
      [97006.9, -20.0014],
      [31030.8, 0.9994],
      [10000, 25.0],
      [3602, 49.9934],
      [678.6, 99.9908],
    ] as const) {
      within(tempC(ntc10k3mcd1, ohm), t, 0.00006);
    }
    for (const [ohm, t] of [
      [176974, -30.032],
      [10000, 25.002],
      [3602, 49.996],
      [186.1, 149.667],
      [28.09, 249.647],
    ] as const) {
      within(tempC(ntc103jl1a, ohm, true), t, 0.0006);
    }
    const { zeroCInK: _, ...usual } = ntc3k44005;
    within(tempC(usual, 3000) - tempC(ntc3k44005, 3000), 0.05, 1e-9);
    within(tempC(ntc100k, 99999.73), 25, 0.00005);
  });
  it('gives Beta its temperature by the plain formula', () => {
    const curve = { kind: 'beta', refOhm: 10000, refTempC: 25, betaK: 3380 } as const;
    const ohm = 10000 * Math.exp(3380 * (1 / 323.15 - 1 / 298.15));
    within(tempC(curve, ohm), 50, 1e-9);
    expectPrinted(ohm, '4160.1');
    expectPrinted(thermistorTemperature({ curve, resistanceOhm: 777 }).localBetaK, '3380.0');
  });
});

describe('laws', () => {
  const curves: readonly ThermistorCurve[] = [
    ntc2252,
    ntc10k44031,
    ntcCoolant2500,
    ntc10k3mcd1,
    ntc100k,
    ntc3k44005,
    ntc103jl1a,
    ntcMaterial1,
    ntcMaterial1Inverse,
    { kind: 'beta', refOhm: 10000, refTempC: 25, betaK: 3455 },
  ];
  const temps = evenly(-40, 120);
  it('comes back from the resistance of a temperature, for every kind of curve', () => {
    fc.assert(
      fc.property(temps, fc.constantFrom(...curves), (t, curve) => {
        const { resistanceOhm } = thermistorResistance({ curve, tempC: t, extrapolate: true });
        within(tempC(curve, resistanceOhm, true), t, 1e-8);
      }),
    );
  });
  it('falls with resistance, at the stated slope', () => {
    fc.assert(
      fc.property(temps, fc.constantFrom(...curves), (t, curve) => {
        const { resistanceOhm } = thermistorResistance({ curve, tempC: t, extrapolate: true });
        const { slopeOhmPerK, localBetaK } = thermistorTemperature({ curve, resistanceOhm, extrapolate: true });
        const h = 1e-5;
        const hotter = tempC(curve, resistanceOhm * (1 - h), true);
        const colder = tempC(curve, resistanceOhm * (1 + h), true);
        expect(hotter).toBeGreaterThan(colder);
        expect((-2 * h * resistanceOhm) / (hotter - colder) / slopeOhmPerK).toBeCloseTo(1, 3);
        expect((-slopeOhmPerK / resistanceOhm) * (t + 273.15) ** 2).toBeCloseTo(localBetaK, 4);
      }),
    );
  });
});

describe('edges', () => {
  const ok = { curve: ntc2252, resistanceOhm: 2252 };
  it('refuses nonsense', () => {
    refusesNonsense(thermistorTemperature, ok, { required: ['resistanceOhm'] });
    for (const resistanceOhm of [0, -1]) {
      expectInputError(() => thermistorTemperature({ ...ok, resistanceOhm }), 'resistanceOhm', 'above');
    }
  });
  it('refuses what is no curve', () => {
    const wrong =
      (curve: unknown): (() => unknown) =>
      () =>
        thermistorTemperature({ curve: curve as ThermistorCurve, resistanceOhm: 1000 });
    expectInputError(wrong(undefined), 'curve', 'missing');
    expectInputError(wrong('ntc'), 'curve', 'object');
    expectInputError(wrong(null), 'curve', 'object');
    expectInputError(wrong({ kind: 'ptc' }), 'curve.kind', 'oneOf');
    expectInputError(wrong({ kind: 'steinhart-hart', a: 1e-3, b: 2e-4 }), 'curve.c', 'missing');
    expectInputError(wrong({ ...ntc103jl1a, d: undefined }), 'curve.d', 'missing');
    expectInputError(wrong({ ...ntc10k3mcd1, a: NaN }), 'curve.a', 'finite');
    expectInputError(wrong({ ...ntc10k3mcd1, zeroCInK: 0 }), 'curve.zeroCInK', 'range');
    expectInputError(wrong({ ...ntc10k3mcd1, lowTempC: 'x' }), 'curve.lowTempC', 'number');
    expectInputError(wrong({ ...ntc10k3mcd1, highTempC: 9e9 }), 'curve.highTempC', 'atMost');
    expectInputError(wrong({ ...ntcMaterial1, refOhm: 0 }), 'curve.refOhm', 'above');
    expectInputError(wrong({ kind: 'beta', refOhm: 1, refTempC: -300, betaK: 1 }), 'curve.refTempC', 'atLeast');
    expectInputError(wrong({ kind: 'beta', refOhm: 1, refTempC: 25, betaK: 0 }), 'curve.betaK', 'above');
    expectInputError(wrong({ kind: 'points', rows: [[0, 1000]] }), 'curve.rows', 'list');
    expectInputError(wrong({ kind: 'points', rows: [[0, 1000], [10, 1000]] }), 'curve.rows[0]', 'order'); // prettier-ignore
    expectInputError(wrong({ kind: 'points', rows: [[10, 1000], [0, 500]] }), 'curve.rows[0]', 'order'); // prettier-ignore
  });
  it('stays within the curve unless told to go on', () => {
    expect(tempC(ntc2252, 6.4)).toBe(250);
    expect(tempC(ntc2252, 1660000)).toBeCloseTo(-80, 9);
    expectInputError(() => tempC(ntc2252, 6.39), 'resistanceOhm', 'range');
    expectInputError(() => tempC(ntc2252, 1660100), 'resistanceOhm', 'range');
    expect(() => tempC(ntc2252, 5)).toThrow(
      'thermistorTemperature: resistanceOhm must stay within the curve, -80 to 250 °C (that is 266.5 °C), got 5: ' +
        'say extrapolate: true to go on without support',
    );
    expect(thermistorTemperature({ curve: ntc2252, resistanceOhm: 5, extrapolate: true })).toMatchObject({
      extrapolated: true,
      source: 'ntc-2252-table',
      sourceStatus: 'published',
    });
    expect(thermistorTemperature({ curve: ntc10k3mcd1, resistanceOhm: 5 }).extrapolated).toBe(false);
  });
  it('takes the range of points from their ends where none is given', () => {
    const curve: PointCurve = { kind: 'points', rows: [[0, 5900], [50, 834], [100, 186]] }; // prettier-ignore
    expectInputError(() => tempC(curve, 185), 'resistanceOhm', 'range');
    expect(thermistorTemperature({ curve, resistanceOhm: 834 })).toMatchObject({
      source: 'given-by-caller',
      sourceStatus: 'derived',
    });
  });
  it('refuses a resistance where the curve has no temperature, or turns', () => {
    expectInputError(() => tempC(ntc10k3mcd1, 1e-9), 'resistanceOhm', 'range');
    const turning: ThermistorCurve = { kind: 'steinhart-hart', a: 1e-3, b: 2.5e-4, c: -1e-6 };
    expectInputError(() => tempC(turning, 1e5), 'resistanceOhm', 'range');
    expectInputError(() => thermistorResistance({ curve: turning, tempC: -100 }), 'tempC', 'range');
    expect(tempC(turning, thermistorResistance({ curve: turning, tempC: 150 }).resistanceOhm)).toBeCloseTo(150, 9);
  });
});
