import { describe, it } from 'vitest';
import fc from 'fast-check';
import { adiabaticConstant } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';

const copper = { volumetricHeatJPerKMm3: 3.45e-3, beta: 234.5, resistivity20OhmMm: 17.241e-6 };

describe('published', () => {
  for (const [metal, heat, beta, rho, whole, digits] of [
    ['copper', 3.45e-3, 234.5, 17.241e-6, '226', '225.67'],
    ['aluminium', 2.5e-3, 228, 28.264e-6, '148', '148.11'],
    ['lead', 1.45e-3, 230, 214e-6, '41', '41.16'],
    ['steel', 3.8e-3, 202, 138e-6, '78', '78.19'],
  ] as const) {
    const input = { volumetricHeatJPerKMm3: heat, beta, resistivity20OhmMm: rho };
    computed(`K of ${metal}`, { source: 'iec-60949', place: 'table I', status: 'memory' }, () =>
      expectPrinted(adiabaticConstant(input).K, whole),
    );
    computed(`K of ${metal}, worked out apart`, { source: 'iec-60949', place: 'clause 3', status: 'derived' }, () =>
      expectPrinted(adiabaticConstant(input).K, digits, 0.6),
    );
  }
});

describe('laws', () => {
  it('goes with the root of heat and the inverse root of resistivity', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 10, noNaN: true }), (f) => {
        const { K } = adiabaticConstant(copper);
        expectWithin(adiabaticConstant({ ...copper, volumetricHeatJPerKMm3: f * 3.45e-3 }).K, K * Math.sqrt(f), 1e-12);
        expectWithin(adiabaticConstant({ ...copper, resistivity20OhmMm: f * 17.241e-6 }).K, K / Math.sqrt(f), 1e-12);
      }),
    );
  });
});

describe('edges', () => {
  it('refuses nonsense', () => {
    refusesNonsense(adiabaticConstant, copper, { required: ['volumetricHeatJPerKMm3', 'beta', 'resistivity20OhmMm'] });
    expectInputError(() => adiabaticConstant({ ...copper, beta: -20 }), 'beta', 'above');
    expectInputError(() => adiabaticConstant({ ...copper, resistivity20OhmMm: 0 }), 'resistivity20OhmMm', 'above');
  });
});
