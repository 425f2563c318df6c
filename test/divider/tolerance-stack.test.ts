import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  divider,
  type TolerancePart,
  toleranceStack,
  type ToleranceStackInput,
  type ToleranceStackResult,
} from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenlyWithEnds } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';

const ratio = ([upperOhm, lowerOhm]: readonly number[]): number =>
  divider({ inV: 1, upperOhm: upperOhm!, lowerOhm: lowerOhm! }).outV;
const pair = (tolerance: number): readonly TolerancePart[] => [
  { name: 'R1', value: 10000, toleranceFraction: tolerance },
  { name: 'R2', value: 10000, toleranceFraction: tolerance },
];

describe('published', () => {
  // End-gauge calibration, GUM H.1; lengths in nm.
  const h1 = (place: string) => ({ source: 'jcgm-100', place: `H.1, ${place}`, status: 'published' }) as const;
  const sd = (name: string, value: number, deviationValue: number): TolerancePart => ({ name, value, deviationValue });
  const gauge: readonly TolerancePart[] = [
    sd('ls', 5.0000623e7, 25),
    sd('d0', 215, 5.8),
    sd('d1', 0, 3.9),
    sd('d2', 0, 6.7),
    { name: 'alpha_s', value: 11.5e-6, halfWidthValue: 2e-6 },
    { name: 'd_alpha', value: 0, halfWidthValue: 1e-6 },
    { name: 'd_theta', value: 0, halfWidthValue: 0.05 },
    sd('theta_bar', -0.1, 0.2),
    { name: 'Delta', value: 0, halfWidthValue: 0.5, distribution: 'arcsine' },
  ];
  const length = ([ls, d0, d1, d2, alpha, dAlpha, dTheta, theta, delta]: readonly number[]): number =>
    ls! + d0! + d1! + d2! - ls! * (dAlpha! * (theta! + delta!) + alpha! * dTheta!);
  const h1result = toleranceStack({ quantity: length, parts: gauge, seed: 11, runs: 400_000 });
  computed('length, nm', h1('result'), () => {
    expectPrinted(h1result.nominalValue, '50000838');
  });
  computed('standard uncertainty, nm', h1('result'), () => {
    expectPrinted(h1result.deviationValue, '32');
  });
  for (const [name, print] of [
    ['ls', '25'],
    ['d_theta', '16.599'],
    ['d2', '6.7'],
    ['d0', '5.8'],
    ['d1', '3.9'],
    ['d_alpha', '2.88679'],
    ['alpha_s', '0'],
    ['theta_bar', '0'],
    ['Delta', '0'],
  ] as const) {
    computed(`component of ${name}, nm`, h1('uncertainty budget'), () => {
      expectPrinted(h1result.shares.find((share) => share.name === name)!.deviationValue, print);
    });
  }
  computed('with second-order terms, nm, by simulation', h1('H.1.7'), () => {
    expectPrinted(h1result.monteCarlo.deviationValue, '34');
  });

  // Resistance and reactance, GUM H.2, from the full means, uncertainties and correlations of the five readings.
  const h2 = { source: 'jcgm-100', place: 'H.2, table H.3', status: 'published' } as const;
  const electrical = {
    parts: [sd('V', 4.999, 0.0032094), sd('I', 0.019661, 9.471e-6), sd('phi', 1.04446, 0.00075206)],
    correlations: [
      { firstIndex: 0, secondIndex: 1, correlationFactor: -0.355311 },
      { firstIndex: 0, secondIndex: 2, correlationFactor: 0.857624 },
      { firstIndex: 1, secondIndex: 2, correlationFactor: -0.645111 },
    ],
    seed: 3,
    runs: 200_000,
  } as const;
  for (const [name, quantity, value, u] of [
    ['R', ([v, i, phi]: readonly number[]) => (v! * Math.cos(phi!)) / i!, '127.732', '0.071'],
    ['X', ([v, i, phi]: readonly number[]) => (v! * Math.sin(phi!)) / i!, '219.847', '0.295'],
    ['Z', ([v, i]: readonly number[]) => v! / i!, '254.260', '0.236'],
  ] as const) {
    const result = toleranceStack({ ...electrical, quantity });
    computed(`${name}, Ω`, h2, () => {
      expectPrinted(result.nominalValue, value);
    });
    // The annex carries rounded inputs into the last digit of X.
    computed(`standard uncertainty of ${name}, Ω`, h2, () => {
      expectPrinted(result.deviationValue, u, 1);
    });
    computed(`standard uncertainty of ${name}, Ω, by simulation with the correlations`, h2, () => {
      expectPrinted(result.monteCarlo.deviationValue, u, 1.5);
    });
  }

  // Additive models, JCGM 101 9.2: in closed form 2·1.959964, 2√3·(2 − 0.6^¼), √103.
  const additive = (place: string) => ({ source: 'jcgm-101', place, status: 'memory' }) as const;
  const sum = (x: readonly number[]): number => x.reduce((a, b) => a + b, 0);
  const four = (make: (i: number) => TolerancePart): ToleranceStackResult =>
    toleranceStack({ quantity: sum, parts: [0, 1, 2, 3].map(make), seed: 101, runs: 1_000_000 });
  const normal = four((i) => sd(`X${i + 1}`, 0, 1));
  const box = four((i) => ({ name: `X${i + 1}`, value: 0, halfWidthValue: Math.sqrt(3) }));
  const wide = four((i) => ({ name: `X${i + 1}`, value: 0, halfWidthValue: Math.sqrt(3) * (i === 3 ? 10 : 1) }));
  // The ends of an interval of a million draws scatter by about half a unit of the second decimal.
  for (const [name, place, result, u, end, decimals] of [
    ['four normal', '9.2.2', normal, '2.0', 3.92, 0.015],
    ['four rectangular', '9.2.3', box, '2.0', 3.88, 0.015],
    ['one ten times wider', '9.2.4', wide, '10.1', 17.0, 0.06],
  ] as const) {
    computed(`${name}: estimate`, additive(place), () => {
      expect(Math.abs(result.nominalValue)).toBeLessThan(1e-12);
    });
    computed(`${name}: standard uncertainty`, additive(place), () => {
      expectPrinted(result.deviationValue, u);
    });
    computed(`${name}: standard uncertainty by simulation`, additive(place), () => {
      expectPrinted(result.monteCarlo.deviationValue, u);
    });
    computed(`${name}: 95 % interval`, additive(place), () => {
      expect(Math.abs(result.monteCarlo.highValue - end)).toBeLessThan(decimals);
      expect(Math.abs(result.monteCarlo.lowValue + end)).toBeLessThan(decimals);
    });
  }
  computed('GUM framework for the wide one, ± 1.96 u', additive('9.2.4'), () => {
    expectPrinted(1.959964 * wide.deviationValue, '19.9');
  });
  computed('GUM framework for the rectangular ones', additive('9.2.3'), () => {
    expectPrinted(1.959964 * box.deviationValue, '3.92');
  });

  // Mass calibration, JCGM 101 9.3, in mg from 100 g.
  const mass = additive('9.3, table 4');
  const weights = toleranceStack({
    quantity: ([mR, dR, air, w, r]) => (mR! + dR!) * (1 + (air! - 1.2) * (1 / w! - 1 / r!)) - 100000,
    parts: [
      sd('m_R', 100000, 0.05),
      sd('dm_R', 1.234, 0.02),
      { name: 'air', value: 1.2, halfWidthValue: 0.1 },
      { name: 'W', value: 8000, halfWidthValue: 1000 },
      { name: 'R', value: 8000, halfWidthValue: 50 },
    ],
    seed: 93,
    runs: 1_000_000,
  });
  computed('mass deviation, mg', mass, () => {
    expectPrinted(weights.nominalValue, '1.2340');
  });
  computed('first-order standard uncertainty, mg', mass, () => {
    expectPrinted(weights.deviationValue, '0.0539');
  });
  computed('standard uncertainty by simulation, mg', mass, () => {
    expectPrinted(weights.monteCarlo.deviationValue, '0.0754', 2);
  });
  computed('95 % interval by simulation, mg', mass, () => {
    const { shortestLowValue, shortestHighValue } = weights.monteCarlo;
    // The width is sharp; where the shortest interval lies is not, for the distribution is nearly symmetric.
    expect(Math.abs(shortestHighValue - shortestLowValue - (1.3825 - 1.0834))).toBeLessThan(0.001);
    expect(Math.abs(shortestLowValue - 1.0834)).toBeLessThan(0.003);
    expect(Math.abs(shortestHighValue - 1.3825)).toBeLessThan(0.003);
  });

  const two = {
    source: 'circuit-theory',
    place: 'two equal resistors, corners and root sum square',
    status: 'derived',
  } as const;
  for (const [tolerance, low, high, half] of [
    [0.01, '0.495', '0.505', '0.0035355'],
    [0.05, '0.475', '0.525', '0.0176777'],
  ] as const) {
    const { corners, rootSumSquare } = toleranceStack({ quantity: ratio, parts: pair(tolerance), seed: 1, runs: 1000 });
    computed(`${tolerance * 100} %: low corner`, two, () => {
      expectPrinted(corners.lowValue!, low);
    });
    computed(`${tolerance * 100} %: high corner`, two, () => {
      expectPrinted(corners.highValue!, high);
    });
    computed(`${tolerance * 100} %: root sum square`, two, () => {
      expectPrinted(rootSumSquare.halfWidthValue!, half);
    });
  }
});

describe('independent', () => {
  it('a rectangular and an arcsine part have their textbook spread', () => {
    const one = (part: Omit<TolerancePart, 'name' | 'value'>): ToleranceStackResult =>
      toleranceStack({ quantity: ([x]) => x!, parts: [{ name: 'x', value: 5, ...part }], seed: 4, runs: 400_000 });
    for (const [distribution, sd] of [
      ['rectangular', 1 / Math.sqrt(3)],
      ['triangular', 1 / Math.sqrt(6)],
      ['arcsine', 1 / Math.SQRT2],
    ] as const) {
      const result = one({ halfWidthValue: 1, distribution });
      expectWithin(result.deviationValue, sd, 1e-9);
      expectWithin(result.monteCarlo.deviationValue, sd, 0.005);
      expectWithin(result.monteCarlo.meanValue, 5, 0.001);
    }
    // Triangular on ±1: 95 % lie within ±(1 − √0.05).
    expectWithin(
      one({ halfWidthValue: 1, distribution: 'triangular' }).monteCarlo.highValue - 5,
      1 - Math.sqrt(0.05),
      0.01,
    );
    // Arcsine on ±1: 95 % lie within ±sin(0.475π).
    expectWithin(
      one({ halfWidthValue: 1, distribution: 'arcsine' }).monteCarlo.highValue - 5,
      Math.sin(0.475 * Math.PI),
      0.001,
    );
  });
  it('the shortest interval of a skewed quantity lies to the side of the many', () => {
    const { monteCarlo } = toleranceStack({
      quantity: ([x]) => Math.exp(x!),
      parts: [{ name: 'x', value: 0, deviationValue: 0.5 }],
      seed: 8,
      runs: 400_000,
    });
    expectWithin(monteCarlo.lowValue, Math.exp(-0.5 * 1.959964), 0.01);
    expectWithin(monteCarlo.highValue, Math.exp(0.5 * 1.959964), 0.01);
    expect(monteCarlo.shortestHighValue - monteCarlo.shortestLowValue).toBeLessThan(
      monteCarlo.highValue - monteCarlo.lowValue,
    );
    expect(monteCarlo.shortestLowValue).toBeLessThan(monteCarlo.lowValue);
    expectWithin(monteCarlo.meanValue, Math.exp(0.125), 0.005);
  });
});

const ohm = fc.double({ min: 100, max: 1e5, noNaN: true });
const tolerance = evenlyWithEnds(0, 0.2);

describe('laws', () => {
  it('corners hold every simulated build and, for a divider, are no narrower than the root sum square', () => {
    fc.assert(
      fc.property(ohm, ohm, tolerance, tolerance, fc.integer({ min: 0, max: 1e6 }), (r1, r2, t1, t2, seed) => {
        const result = toleranceStack({
          quantity: ratio,
          parts: [
            { name: 'R1', value: r1, toleranceFraction: t1 },
            { name: 'R2', value: r2, toleranceFraction: t2 },
          ],
          seed,
          runs: 1000,
        });
        const { corners, monteCarlo, rootSumSquare, nominalValue } = result;
        expect(corners.code).toBe('exact');
        expect(monteCarlo.leastValue).toBeGreaterThanOrEqual(corners.lowValue! - 1e-12);
        expect(monteCarlo.greatestValue).toBeLessThanOrEqual(corners.highValue! + 1e-12);
        // By interval arithmetic, each resistor named once: 1 ÷ (1 + R1 ÷ R2).
        expectWithin(corners.lowValue!, 1 / (1 + (r1 * (1 + t1)) / (r2 * (1 - t2))), 1e-12);
        expectWithin(corners.highValue!, 1 / (1 + (r1 * (1 - t1)) / (r2 * (1 + t2))), 1e-12);
        const widest = Math.max(corners.highValue! - nominalValue, nominalValue - corners.lowValue!);
        expect(rootSumSquare.halfWidthValue!).toBeLessThanOrEqual(widest * (1 + 1e-6) + 1e-12);
      }),
      { numRuns: 60 },
    );
  });
  it('the shares of the squares make the whole', () => {
    const { shares, deviationValue } = toleranceStack({ quantity: ratio, parts: pair(0.05), seed: 1, runs: 1000 });
    expectWithin(
      shares.reduce((sum, share) => sum + share.varianceFraction, 0),
      1,
      1e-12,
    );
    expectWithin(Math.hypot(...shares.map((share) => share.deviationValue)), deviationValue, 1e-12);
    expectWithin(shares[0]!.sensitivityFactor, -0.25 / 10000, 1e-6);
  });
  it('the same seed gives the same builds, another does not', () => {
    const run = (seed: number): number =>
      toleranceStack({ quantity: ratio, parts: pair(0.05), seed, runs: 1000 }).monteCarlo.meanValue;
    expect(run(9)).toBe(run(9));
    expect(run(9)).not.toBe(run(10));
  });
});

describe('edges', () => {
  it('says when the quantity turns inside the bounds', () => {
    const { corners } = toleranceStack({
      quantity: ([x]) => x! * x!,
      parts: [{ name: 'x', value: 0, halfWidthValue: 1 }],
      seed: 1,
      runs: 1000,
    });
    expect(corners.code).toBe('not-steady');
    expect(corners.lowValue).toBeLessThan(0.001);
    expect(corners.highValue).toBe(1);
  });
  it('has no corners where a part has no bounds', () => {
    const result = toleranceStack({
      quantity: ([x]) => x!,
      parts: [{ name: 'x', value: 1, deviationValue: 1 }],
      seed: 1,
      runs: 1000,
    });
    expect(result.corners).toEqual({ lowValue: null, highValue: null, code: 'unbounded-part' });
    expect(result.rootSumSquare).toEqual({
      halfWidthValue: null,
      lowValue: null,
      highValue: null,
      code: 'unbounded-part',
    });
  });
  it('a part without tolerance adds nothing', () => {
    const result = toleranceStack({ quantity: ratio, parts: pair(0), seed: 1, runs: 1000 });
    expect(result).toMatchObject({ deviationValue: 0, corners: { lowValue: 0.5, highValue: 0.5, code: 'exact' } });
    expect(result.monteCarlo).toMatchObject({ lowValue: 0.5, highValue: 0.5, deviationValue: 0 });
  });
  it('takes many parts', () => {
    const parts = Array.from({ length: 12 }, (_, i) => ({ name: `R${i}`, value: 100, toleranceFraction: 0.05 }));
    const { corners } = toleranceStack({ quantity: (x) => x.reduce((a, b) => a + b, 0), parts, seed: 1, runs: 1000 });
    expect(corners.code).toBe('exact');
    expectWithin(corners.lowValue!, 1140, 1e-12);
    expectWithin(corners.highValue!, 1260, 1e-12);
  });
  it('refuses nonsense', () => {
    const input: ToleranceStackInput = { quantity: ratio, parts: pair(0.05), seed: 1, runs: 1000 };
    refusesNonsense(toleranceStack, input, { required: ['seed'], optional: ['runs', 'coverageFraction'] });
    const bad =
      (part: object): (() => unknown) =>
      () =>
        toleranceStack({ ...input, parts: [part as TolerancePart, pair(0)[1]!] });
    expectInputError(bad({ name: 'R1', value: 1 }), 'parts[0].toleranceFraction', 'oneOfFields');
    expectInputError(
      bad({ name: 'R1', value: 1, toleranceFraction: 0.1, deviationValue: 1 }),
      'parts[0].toleranceFraction',
      'oneOfFields',
    );
    expectInputError(bad({ name: 'R1', value: 1, toleranceFraction: 5 }), 'parts[0].toleranceFraction', 'below');
    expectInputError(bad({ name: 'R1', value: 1, halfWidthValue: -1 }), 'parts[0].halfWidthValue', 'atLeast');
    expectInputError(
      bad({ name: 'R1', value: 1, halfWidthValue: 1, distribution: 'normal' }),
      'parts[0].distribution',
      'oneOf',
    );
    expectInputError(bad({ name: '', value: 1, halfWidthValue: 1 }), 'parts[0].name', 'text');
    expectInputError(() => toleranceStack({ ...input, parts: [] }), 'parts', 'list');
    expectInputError(() => toleranceStack({ ...input, quantity: 3 as never }), 'quantity', 'object');
    expectInputError(() => toleranceStack({ ...input, quantity: () => NaN }), 'quantity', 'finite');
    const correlated = (firstIndex: number, secondIndex: number, correlationFactor: number) => () =>
      toleranceStack({
        ...input,
        parts: [0, 1, 2].map((i) => ({
          name: `x${i}`,
          value: 1,
          ...(i === 2 ? { halfWidthValue: 1 } : { deviationValue: 1 }),
        })),
        correlations: [{ firstIndex, secondIndex, correlationFactor }],
      });
    expectInputError(correlated(0, 2, 0.5), 'correlations[0].firstIndex', 'range');
    expectInputError(correlated(0, 0, 0.5), 'correlations[0].firstIndex', 'range');
    expectInputError(correlated(0, 1, 1.5), 'correlations[0].correlationFactor', 'atMost');
    const impossible = [0, 1, 2].flatMap((i) =>
      [0, 1, 2].filter((j) => j > i).map((j) => ({ firstIndex: i, secondIndex: j, correlationFactor: -0.9 })),
    );
    const parts = [0, 1, 2].map((i) => ({ name: `x${i}`, value: 1, deviationValue: 1 }));
    expectInputError(() => toleranceStack({ ...input, parts, correlations: impossible }), 'correlations', 'range');
  });
});
