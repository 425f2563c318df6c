import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { acidVoltage, type AcidVoltageInput, restVoltsTrade } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenly } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';

const F80 = (80 - 32) / 1.8;
const full: AcidVoltageInput = { densityRatio: 1.265, acidTempC: F80, cellCount: 6 };

describe('published', () => {
  const cell = { source: 'lead-cell-volts', place: 'density 1.265', status: 'memory' } as const;
  computed('1.265: 2.110 V a cell', cell, () => expectPrinted(acidVoltage(full).cellV, '2.110'));
  computed('1.265: 12.66 V', cell, () => expectPrinted(acidVoltage(full).openV, '12.66'));
  const density = {
    source: 'acid-density-correction',
    place: '0.004 each 10 °F from 80 °F',
    status: 'published',
  } as const;
  for (const [degreesF, change] of [
    [80, '0.000'],
    [90, '0.004'],
    [70, '-0.004'],
    [40, '-0.016'],
    [110, '0.012'],
  ] as const) {
    computed(`${degreesF} °F: ${change}`, density, () => {
      const { correctedDensityRatio } = acidVoltage({ ...full, acidTempC: (degreesF - 32) / 1.8 });
      expectPrinted(correctedDensityRatio - full.densityRatio, change, 1e-6);
    });
  }
});

describe('independent', () => {
  it("agrees with the trade's list of volts and densities within 0.1 V from full to empty", () => {
    for (const [percent, densityRatio] of restVoltsTrade.densities!) {
      const [, openV] = restVoltsTrade.rows.find(([p]) => p === percent)!;
      expect(Math.abs(acidVoltage({ ...full, densityRatio }).openV - openV), `${percent} %`).toBeLessThan(0.1 + 1e-9);
    }
  });
});

describe('laws', () => {
  it('rises with density and temperature, and with the cells in proportion', () => {
    const density = fc.double({ min: 1, max: 1.4, noNaN: true });
    fc.assert(
      fc.property(density, evenly(-40, 59), fc.integer({ min: 1, max: 12 }), (d, t, n) => {
        const one = acidVoltage({ densityRatio: d, acidTempC: t, cellCount: 1 });
        const all = acidVoltage({ densityRatio: d, acidTempC: t, cellCount: n });
        expectWithin(all.openV, one.cellV * n, 1e-12);
        expect(acidVoltage({ densityRatio: d, acidTempC: t + 1, cellCount: n }).openV).toBeGreaterThan(all.openV);
      }),
    );
  });
});

describe('edges', () => {
  it('refuses nonsense', () => {
    refusesNonsense(acidVoltage, full, { required: ['densityRatio', 'acidTempC', 'cellCount'] });
    for (const [field, value, rule] of [
      ['densityRatio', 0.999, 'atLeast'],
      ['densityRatio', 1.401, 'atMost'],
      ['acidTempC', -40.1, 'atLeast'],
      ['acidTempC', 60.1, 'atMost'],
      ['cellCount', 0, 'atLeast'],
      ['cellCount', 1.5, 'integer'],
    ] as const) {
      expectInputError(() => acidVoltage({ ...full, [field]: value }), field, rule);
    }
    expect(() => acidVoltage({ ...full, densityRatio: 1265 })).toThrow('must be at most 1.4, got 1265: 1265 is 1.265');
  });
});
