import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { airProperties, type Convection, nusseltHorizontalCylinder } from 'loomwright';
import { nusseltOf } from '../../packages/loomwright/src/heat/surface.js';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { swapsMatter } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';

const nu = (rayleigh: number, prandtl: number, convection: Convection = 'churchill-chu'): number =>
  nusseltHorizontalCylinder({ rayleigh, prandtl, convection }).nusselt;

describe('published', () => {
  for (const [id, pr, gr, print] of [
    ['C1', 0.69, 2.63e9, 139.13493970073597],
    ['C2', 0.7, 1e5, 7.07684],
    ['C3', 1.2, 5e6, 25.9779],
    ['C4', 0.9, 1e9, 115.819],
  ] as const) {
    computed(
      `Churchill–Chu ${id}`,
      {
        source: 'heat-library-tests',
        place: 'test_conv_free_immersed, Nu_horizontal_cylinder_Churchill_Chu',
        status: 'published',
      },
      () => (id === 'C1' ? expectWithin(nu(pr * gr, pr), print, 1e-14) : expectPrinted(nu(pr * gr, pr), String(print))),
    );
  }
  for (const [id, pr, gr, print] of [
    ['M1', 0.9, 1e-2, 0.5136293570857408],
    ['M2', 0.9, 1e2, 1.9853087795801612],
    ['M3', 0.9, 1e4, 4.707783879945983],
    ['M4', 0.9, 1e7, 26.290682760247975],
    ['M5', 0.9, 1e10, 258.0315247153301],
    ['M6', 0.72, 1e7, 24.864192615468973],
  ] as const) {
    computed(
      `Morgan ${id}`,
      {
        source: 'heat-library-tests',
        place: 'test_conv_free_immersed, Nu_horizontal_cylinder_Morgan',
        status: 'published',
      },
      () => expectWithin(nu(pr * gr, pr, 'morgan'), print, 1e-12),
    );
  }
  computed(
    'pipe of 0.08 m at 70 °C in 20 °C air',
    { source: 'cengel-heat-transfer', place: 'example 9-1, Ra 1.869e6, Pr 0.7241', status: 'published' },
    () => expectPrinted(nu(1.869e6, 0.7241), '17.40'),
  );
  computed(
    'insulated wire of 6 mm, first trial at 50 °C; the book cuts its steps short',
    { source: 'cengel-heat-transfer', place: 'problem 9-35, Ra 339.3; printed answer from memory', status: 'memory' },
    () => expectPrinted(nu(339.3, 0.7255), '2.101', 1.5),
  );
  computed(
    'steam pipe of 0.1 m at 165 °C; the book rounds its way to 23.3',
    { source: 'incropera-heat-transfer', place: 'example 9.4, Ra 5.07e6, Pr 0.697', status: 'memory' },
    () => expectWithin(nu(5.07e6, 0.697), 23.3, 0.01),
  );
  computed(
    'wire of 0.02 mm: Gr·Pr 4.06e-5',
    { source: 'holman-heat-transfer', place: 'example 7-5, C 0.675, n 0.058', status: 'memory' },
    () => expectPrinted(nu(4.06e-5, 0.708, 'morgan'), '0.375'),
  );
});

describe('independent', () => {
  it('is the formula written with plain powers', () => {
    for (let e = -6; e <= 12; e++) {
      for (const pr of [0.01, 0.7, 7, 900]) {
        const ra = 10 ** e;
        const naive = (0.6 + (0.387 * ra ** (1 / 6)) / (1 + (0.559 / pr) ** (9 / 16)) ** (8 / 27)) ** 2;
        expectWithin(nu(ra, pr), naive, 1e-13);
      }
    }
  });
  it('is what the solvers use: their fit in the film temperature is within 3e-10 of it', () => {
    for (let filmK = 200; filmK <= 500; filmK += 0.5) {
      const { prandtl } = airProperties({ filmTempC: Math.min(filmK - 273.15, 226.85), altitudeM: 0 });
      for (const ra of [0, 1e-6, 1, 1e3, 1e7]) {
        expectWithin(nusseltOf(ra, filmK, false), nu(ra, prandtl), 6e-10);
        if (ra > 0) expectWithin(nusseltOf(ra, filmK, true), nu(ra, prandtl, 'morgan'), 1e-15);
      }
    }
  });
  it('Churchill–Chu at Pr 0.7 against values worked out apart', () => {
    for (const [ra, value] of [
      [0.01, '0.5609'],
      [0.1, '0.6702'],
      [1, '0.8481'],
      [10, '1.1471'],
      [100, '1.6677'],
      [1e3, '2.6077'],
      [1e4, '4.3664'],
      [1e5, '7.7641'],
      [1e6, '14.5102'],
    ] as const) {
      expectPrinted(nu(ra, 0.7), value);
    }
  });
  it('the two correlations agree within a quarter over the range of wires, which is what they are worth', () => {
    for (let e = -3; e <= 7; e += 0.25) {
      const ratio = nu(10 ** e, 0.71, 'morgan') / nu(10 ** e, 0.71);
      expect(ratio).toBeGreaterThan(0.75);
      expect(ratio).toBeLessThan(1.25);
    }
  });
});

describe('laws', () => {
  it('rises with Ra and with Pr, and ends at 0.36 for no rise', () => {
    expect(nu(0, 0.7)).toBeCloseTo(0.36, 15);
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 9e11, noNaN: true }),
        fc.double({ min: 0.01, max: 900, noNaN: true }),
        fc.double({ min: 1.0001, max: 1.1, noNaN: true }),
        (ra, pr, f) => {
          expect(nu(ra * f, pr)).toBeGreaterThanOrEqual(nu(ra, pr));
          expect(nu(ra, pr * f)).toBeGreaterThanOrEqual(nu(ra, pr));
        },
      ),
    );
  });
  it('changes when its numbers are swapped', () => {
    swapsMatter(nusseltHorizontalCylinder, { rayleigh: 400, prandtl: 0.7, convection: 'churchill-chu' });
  });
});

describe('edges', () => {
  const input = { rayleigh: 100, prandtl: 0.7, convection: 'churchill-chu' } as const;
  it('refuses nonsense', () => {
    refusesNonsense(nusseltHorizontalCylinder, input, { required: ['rayleigh', 'prandtl'] });
    expectInputError(
      () => nusseltHorizontalCylinder({ ...input, convection: 'other' as never }),
      'convection',
      'oneOf',
    );
    expectInputError(
      () => nusseltHorizontalCylinder({ ...input, convection: undefined as never }),
      'convection',
      'missing',
    );
  });
  it('ends at the published range', () => {
    expect(nu(1e12, 0.7)).toBeGreaterThan(0);
    expectInputError(() => nu(1.001e12, 0.7), 'rayleigh', 'atMost');
    expectInputError(() => nu(-1, 0.7), 'rayleigh', 'atLeast');
    expectInputError(() => nu(0.9e-10, 0.7, 'morgan'), 'rayleigh', 'atLeast');
    expectInputError(() => nu(1, 0.009), 'prandtl', 'atLeast');
    expectInputError(() => nu(1, 1001), 'prandtl', 'atMost');
  });
});
