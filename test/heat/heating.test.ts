import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  ampacity,
  awgStranded,
  heatingByBalance,
  type HeatingByBalanceInput,
  heatingByTable,
  type HeatingByTableInput,
  iso19642,
  iso19642ThinWall,
  nearestSizes,
  type ResolvedSize,
  us33Cfr183Ampacity,
} from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';

const size = (areaMm2: number): ResolvedSize => nearestSizes({ areaMm2, table: iso19642 }).atLeast as ResolvedSize;
const table: HeatingByTableInput = {
  table: us33Cfr183Ampacity,
  insulationTempC: 105,
  ambientTempC: 30,
  size: size(2.5),
};
const balance: HeatingByBalanceInput = {
  wireTable: iso19642ThinWall,
  insulationTempC: 105,
  ambientTempC: 40,
  altitudeM: 0,
  insulationConductivityWPerMK: 0.17,
  bundleFactor: 1,
  size: size(2.5),
};

describe('published', () => {
  const cite = { source: 'us-33-cfr-183', place: '183.425 table 5, 105 °C', status: 'published' } as const;
  // 2.5 mm² is more than 14 AWG (2.08) and less than 12 (3.31): the row of 14 AWG.
  computed('2.5 mm² at 30 °C bears what 14 AWG does', cite, () => expect(heatingByTable(table).ampacityA).toBe(35));
  computed('and in an engine space at 50 °C 30 A, by the factor 0.85', cite, () =>
    // The table rounds the factor 0.856 down to 0.85 and cuts 29.75 up to 30.
    expectPrinted(heatingByTable({ ...table, ambientTempC: 50 }).ampacityA, '30'),
  );
});

describe('independent', () => {
  it('a wire at its ampacity is at its class, one at rest at the ambient', () => {
    for (const heated of [heatingByTable(table), heatingByBalance(balance)]) {
      expectWithin(heated.tempC(heated.ampacityA) ?? NaN, 105, 1e-6);
    }
    expectWithin(heatingByTable(table).tempC(0) ?? NaN, 30, 1e-12);
    expectWithin(heatingByBalance(balance).tempC(0) ?? NaN, 40, 1e-9);
  });
  it('the balance is that of the wire alone with the diameters of its type', () => {
    // Thin wall, 2.5 mm²: conductor 2.20 mm and outer 3.0 mm at most (ISO 6722-1, from memory).
    const alone = ampacity({
      maxConductorTempC: 105,
      resistanceOhmPerM: 0.0076,
      ratedTempC: 20,
      conductorDiameterMm: 2.2,
      outerDiameterMm: 3,
      insulationConductivityWPerMK: 0.17,
      ambientTempC: 40,
      altitudeM: 0,
    });
    expectWithin(heatingByBalance(balance).ampacityA, alone.currentA, 1e-9);
  });
});

describe('laws', () => {
  it('a bundle, hot air and altitude take ampacity away; a larger size bears more', () => {
    const share = fc.double({ min: 0.2, max: 0.95, noNaN: true });
    fc.assert(
      fc.property(share, fc.integer({ min: -20, max: 90 }), (bundleFactor, ambientTempC) => {
        const base = heatingByBalance({ ...balance, ambientTempC });
        const bundled = heatingByBalance({ ...balance, ambientTempC, bundleFactor });
        expectWithin(bundled.ampacityA, base.ampacityA * bundleFactor, 1e-12);
        expect(bundled.tempC(10) as number).toBeGreaterThan(base.tempC(10) as number);
        expect(heatingByBalance({ ...balance, ambientTempC: ambientTempC + 5 }).ampacityA).toBeLessThan(base.ampacityA);
        expect(heatingByBalance({ ...balance, ambientTempC, altitudeM: 3000 }).ampacityA).toBeLessThan(base.ampacityA);
        expect(heatingByBalance({ ...balance, ambientTempC, size: size(4) }).ampacityA).toBeGreaterThan(base.ampacityA);
        expect(heatingByTable({ ...table, ambientTempC: ambientTempC + 5 }).ampacityA).toBeLessThan(
          heatingByTable({ ...table, ambientTempC }).ampacityA,
        );
      }),
    );
  });
});

describe('edges', () => {
  it('a size that the rule does not know bears nothing, and says why', () => {
    expect(heatingByTable({ ...table, size: size(0.5) })).toMatchObject({
      ampacityA: 0,
      because: 'us-33-cfr-183-425 does not reach down to 0.5 mm²',
    });
    const awg = nearestSizes({ areaMm2: 2, table: awgStranded }).atLeast as ResolvedSize;
    expect(heatingByBalance({ ...balance, size: awg })).toMatchObject({ ampacityA: 0 });
    expect(heatingByBalance({ ...balance, size: awg }).because).toContain('does not name its sizes');
    for (const heated of [
      heatingByTable({ ...table, ambientTempC: 105 }),
      heatingByBalance({ ...balance, ambientTempC: 110 }),
    ]) {
      expect(heated).toMatchObject({ ampacityA: 0, because: 'the air alone is as hot as the insulation bears' });
      expect(heated.tempC(1)).toBeNull();
    }
  });
  it('has no temperature beyond 400 °C', () => {
    expect(heatingByTable(table).tempC(1000)).toBeNull();
    expect(heatingByBalance(balance).tempC(1000)).toBeNull();
  });
  it('refuses nonsense with the field that is at fault', () => {
    refusesNonsense(heatingByTable, table, { required: ['insulationTempC', 'ambientTempC'] });
    refusesNonsense(heatingByBalance, balance, { required: ['bundleFactor', 'altitudeM', 'ambientTempC'] });
    expectInputError(() => heatingByBalance({ ...balance, bundleFactor: 0 }), 'bundleFactor', 'above');
    expectInputError(() => heatingByBalance({ ...balance, bundleFactor: 1.01 }), 'bundleFactor', 'atMost');
  });
});
