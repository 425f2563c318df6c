import { describe, it } from 'vitest';
import fc from 'fast-check';
import { adiabaticConstant } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';

const copper = { volumetricHeatJPerKMm3: 3.45e-3, betaC: 234.5, resistivity20OhmMm2PerM: 17.241e-3 };

describe('published', () => {
  for (const [metal, heat, betaC, rho, whole, digits] of [
    ['copper', 3.45e-3, 234.5, 17.241e-3, '226', '225.67'],
    ['aluminium', 2.5e-3, 228, 28.264e-3, '148', '148.11'],
    ['lead', 1.45e-3, 230, 214e-3, '41', '41.16'],
    ['steel', 3.8e-3, 202, 138e-3, '78', '78.19'],
  ] as const) {
    const input = { volumetricHeatJPerKMm3: heat, betaC, resistivity20OhmMm2PerM: rho };
    computed(`K of ${metal}`, { source: 'iec-60949', place: 'table I', status: 'memory' }, () =>
      expectPrinted(adiabaticConstant(input).oneSecondAPerMm2, whole),
    );
    computed(`K of ${metal}, worked out apart`, { source: 'iec-60949', place: 'clause 3', status: 'derived' }, () =>
      expectPrinted(adiabaticConstant(input).oneSecondAPerMm2, digits, 0.6),
    );
  }
});

describe('laws', () => {
  it('goes with the root of heat and the inverse root of resistivity', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 10, noNaN: true }), (f) => {
        const { oneSecondAPerMm2: K } = adiabaticConstant(copper);
        expectWithin(
          adiabaticConstant({ ...copper, volumetricHeatJPerKMm3: f * 3.45e-3 }).oneSecondAPerMm2,
          K * Math.sqrt(f),
          1e-12,
        );
        expectWithin(
          adiabaticConstant({ ...copper, resistivity20OhmMm2PerM: f * 17.241e-3 }).oneSecondAPerMm2,
          K / Math.sqrt(f),
          1e-12,
        );
      }),
    );
  });
});

describe('edges', () => {
  it('refuses nonsense', () => {
    refusesNonsense(adiabaticConstant, copper, {
      required: ['volumetricHeatJPerKMm3', 'betaC', 'resistivity20OhmMm2PerM'],
    });
    expectInputError(() => adiabaticConstant({ ...copper, betaC: -20 }), 'betaC', 'above');
    expectInputError(
      () => adiabaticConstant({ ...copper, resistivity20OhmMm2PerM: 0 }),
      'resistivity20OhmMm2PerM',
      'above',
    );
  });
});
