import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { ampacity, bundleAmpacity, type BundleAmpacityInput, bundleTemperature } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenly, swapsMatter } from '../support/law.js';
import { expectWithin } from '../support/published.js';

const bundle: BundleAmpacityInput = {
  wireCount: 7,
  loadedFraction: 1,
  maxConductorTempC: 105,
  resistanceOhmPerM: 0.0076,
  ratedTempC: 20,
  conductorDiameterMm: 2.1,
  outerDiameterMm: 3,
  insulationConductivityWPerMK: 0.17,
  ambientTempC: 40,
  altitudeM: 0,
};

/** Equal wires in rings of six, twelve … around one. */
function rings(count: number): { x: number; y: number }[] {
  const places = [{ x: 0, y: 0 }];
  for (let ring = 1; places.length < count; ring++) {
    for (let i = 0; i < 6 * ring && places.length < count; i++) {
      const side = Math.floor(i / ring);
      const part = (i % ring) / ring;
      const corner = (k: number) => ({ x: ring * Math.cos((k * Math.PI) / 3), y: ring * Math.sin((k * Math.PI) / 3) });
      const a = corner(side);
      const b = corner(side + 1);
      places.push({ x: a.x + (b.x - a.x) * part, y: a.y + (b.y - a.y) * part });
    }
  }
  return places;
}

describe('independent', () => {
  it('agrees with the temperature of every wire in its place, for 7, 19 and 37 equal wires in rings', () => {
    for (const count of [7, 19, 37]) {
      const places = rings(count);
      const d = bundle.outerDiameterMm;
      const bundleDiameterMm = 2 * Math.max(...places.map(({ x, y }) => Math.hypot(x, y) * d)) + d;
      const found = bundleAmpacity({ ...bundle, wireCount: count, bundleDiameterMm });
      const placed = bundleTemperature({
        wires: places.map(({ x, y }) => ({ ...bundle, currentA: found.currentA, xMm: x * d, yMm: y * d })),
        bundleDiameterMm,
        ambientTempC: 40,
        altitudeM: 0,
      });
      expect(placed.hottestIndex).toBe(0);
      // Heat spread around the middle wire against heat in places: in a hexagon it lies a little closer.
      expectWithin(placed.hottestTempC! - 40, 65, 0.04);
    }
  });
  it('closes its balance: what all wires make at the limit is what the surface gives off', () => {
    const { currentA, lossWPerM } = bundleAmpacity(bundle);
    const hot = (0.0076 * (234.5 + 105)) / 254.5;
    expectWithin(7 * currentA * currentA * hot, lossWPerM, 1e-9);
  });
});

describe('laws', () => {
  it('one wire is a wire alone', () => {
    const one = bundleAmpacity({ ...bundle, wireCount: 1 });
    expectWithin(one.currentA, ampacity(bundle).currentA, 1e-9);
    expect(one.factor).toBeCloseTo(1, 9);
    expect(one.bundleConductivityWPerMK).toBe(null);
  });
  it('more wires, more use, more heat around and more altitude never raise it', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 80 }),
        evenly(0.02, 0.95),
        evenly(-20, 90),
        fc.double({ min: 1.05, max: 3, noNaN: true }),
        fc.double({ min: 0.1, max: 0.6, noNaN: true }),
        (wireCount, loadedFraction, ambientTempC, ratio, insulationConductivityWPerMK) => {
          const input = {
            ...bundle,
            wireCount,
            loadedFraction,
            ambientTempC,
            insulationConductivityWPerMK,
            outerDiameterMm: 2.1 * ratio,
          };
          const { currentA, singleCurrentA } = bundleAmpacity(input);
          expect(currentA).toBeLessThanOrEqual(singleCurrentA);
          const never = (rest: Partial<BundleAmpacityInput>): void =>
            expect(bundleAmpacity({ ...input, ...rest }).currentA).toBeLessThanOrEqual(currentA * (1 + 1e-9));
          never({ wireCount: wireCount + 1 });
          never({ loadedFraction: loadedFraction + 0.05 });
          never({ ambientTempC: ambientTempC + 3 });
          never({ altitudeM: 2500 });
        },
      ),
    );
  });
  it('changes when two inputs of a kind are swapped', () =>
    swapsMatter(bundleAmpacity, { ...bundle, loadedFraction: 0.5 }));
});

describe('edges', () => {
  it('bears nothing in air as hot as the limit', () => {
    expect(bundleAmpacity({ ...bundle, ambientTempC: 105 })).toMatchObject({
      currentA: 0,
      factor: null,
      reason: 'air-at-limit',
    });
  });
  it('takes a wider bundle when told, and refuses one that is too narrow', () => {
    expect(bundleAmpacity({ ...bundle, bundleDiameterMm: 9 }).bundleDiameterMm).toBe(9);
    expectInputError(() => bundleAmpacity({ ...bundle, bundleDiameterMm: 8 }), 'bundleDiameterMm', 'atLeast');
  });
  it('refuses nonsense', () => {
    refusesNonsense(
      bundleAmpacity,
      { ...bundle, bundleDiameterMm: 9, emissivity: 0.9 },
      {
        required: [
          'wireCount',
          'loadedFraction',
          'maxConductorTempC',
          'resistanceOhmPerM',
          'ambientTempC',
          'altitudeM',
        ],
        optional: ['bundleDiameterMm', 'emissivity'],
      },
    );
  });
});
