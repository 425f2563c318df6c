import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { bundleTemperature, type BundleTemperatureInput, conductorTemperature, type WireInBundle } from 'loomwright';
import { expectInputError } from '../support/edge.js';
import { evenly, evenlyWithEnds } from '../support/law.js';
import { expectWithin } from '../support/published.js';

const wire: WireInBundle = {
  currentA: 15,
  xMm: 0,
  yMm: 0,
  resistanceOhmPerM: 0.0076,
  ratedTempC: 20,
  conductorDiameterMm: 2.1,
  outerDiameterMm: 3,
  insulationConductivityWPerMK: 0.17,
};
const air = { ambientTempC: 40, altitudeM: 0 };
const three: BundleTemperatureInput = {
  wires: [
    { ...wire, xMm: 1.7, yMm: 0 },
    { ...wire, xMm: -1.5, yMm: 1.6, currentA: 5 },
    {
      ...wire,
      xMm: -1.2,
      yMm: -1.6,
      currentA: 20,
      conductorDiameterMm: 1.6,
      outerDiameterMm: 2.4,
      resistanceOhmPerM: 0.012,
    },
  ],
  bundleDiameterMm: 8,
  ...air,
};

describe('independent', () => {
  it('agrees with a heat source in a rod as a Fourier series, and with the heat of each wire at its temperature', () => {
    const found = bundleTemperature(three);
    const k = found.bundleConductivityWPerMK!;
    const temps = found.conductorTempsC!;
    const heat = three.wires.map(
      ({ currentA, resistanceOhmPerM, ratedTempC }, j) =>
        (currentA ** 2 * resistanceOhmPerM * (234.5 + temps[j]!)) / (234.5 + ratedTempC),
    );
    expectWithin(
      heat.reduce((a, b) => a + b),
      found.lossWPerM!,
      1e-9,
    );
    const R = three.bundleDiameterMm / 2;
    // Rise at a point for a line source of 1 W/m elsewhere, surface at 0: separation of variables.
    const series = (r: number, s: number, angle: number): number => {
      let sum = Math.log(R / Math.max(r, s));
      for (let n = 1; n < 4000; n++) {
        sum += ((Math.min(r, s) / Math.max(r, s)) ** n - ((r * s) / (R * R)) ** n) * (Math.cos(n * angle) / n);
      }
      return sum / (2 * Math.PI * k);
    };
    three.wires.forEach((a, i) => {
      let rise = 0;
      three.wires.forEach((b, j) => {
        const ra = Math.hypot(a.xMm, a.yMm);
        const rb = Math.hypot(b.xMm, b.yMm);
        if (i !== j) {
          rise += heat[j]! * series(ra, rb, Math.atan2(a.yMm, a.xMm) - Math.atan2(b.yMm, b.xMm));
          return;
        }
        // Own heat: mean over the wire's outline, then through its insulation.
        let own = 0;
        const points = 60;
        for (let p = 0; p < points; p++) {
          const x = a.xMm + (a.outerDiameterMm / 2) * Math.cos((2 * Math.PI * p) / points);
          const y = a.yMm + (a.outerDiameterMm / 2) * Math.sin((2 * Math.PI * p) / points);
          const image = Math.log(
            Math.hypot(R * R - x * a.xMm - y * a.yMm, x * a.yMm - y * a.xMm) / (R * (a.outerDiameterMm / 2)),
          );
          own += image / (2 * Math.PI * k) / points;
        }
        rise += heat[j]! * (own + Math.log(a.outerDiameterMm / a.conductorDiameterMm) / (2 * Math.PI * 0.17));
      });
      expectWithin(temps[i]! - found.surfaceTempC!, rise, 1e-6);
    });
  });
  it('its surface is that of a bare rod which makes the same heat', () => {
    const { lossWPerM, surfaceTempC } = bundleTemperature(three);
    const rod = conductorTemperature({
      currentA: 100,
      resistanceOhmPerM: lossWPerM! / 1e4,
      ratedTempC: surfaceTempC!,
      conductorDiameterMm: 8,
      outerDiameterMm: 8,
      ...air,
    });
    expectWithin(rod.conductorTempC!, surfaceTempC!, 1e-8);
  });
  it('the conductivity across is the lower bound for rods in air', () => {
    const found = bundleTemperature({ ...three, wires: [wire], bundleDiameterMm: 6 });
    const T = 313.15;
    const ka = (2.334e-3 * T ** 1.5) / (164.54 + T);
    const f = 0.49;
    const kw = (0.17 * (1 + f)) / (1 - f);
    const k = (ka * (kw + ka + 0.25 * (kw - ka))) / (kw + ka - 0.25 * (kw - ka));
    expectWithin(found.bundleConductivityWPerMK!, k, 1e-12);
  });
});

describe('laws', () => {
  it('one wire that is the bundle has the temperature of a wire alone', () => {
    fc.assert(
      fc.property(evenlyWithEnds(0, 30), evenly(-40, 90), (currentA, ambientTempC) => {
        const alone = conductorTemperature({ ...wire, ...air, currentA, ambientTempC });
        const found = bundleTemperature({
          ...air,
          ambientTempC,
          wires: [{ ...wire, currentA }],
          bundleDiameterMm: 3,
        });
        expect(Math.abs(found.hottestTempC! - alone.conductorTempC!)).toBeLessThan(2e-6);
        expect(found.bundleConductivityWPerMK).toBe(null);
      }),
    );
  });
  it('turning the bundle or its mirror changes nothing; order only orders', () => {
    const temps = bundleTemperature(three).conductorTempsC!;
    const turned = bundleTemperature({
      ...three,
      wires: three.wires.map((w) => ({ ...w, xMm: w.xMm * 0.6 - w.yMm * 0.8, yMm: w.xMm * 0.8 + w.yMm * 0.6 })),
    }).conductorTempsC!;
    const mirrored = bundleTemperature({
      ...three,
      wires: three.wires.map((w) => ({ ...w, xMm: -w.xMm })),
    }).conductorTempsC!;
    const reversed = bundleTemperature({ ...three, wires: [...three.wires].reverse() }).conductorTempsC!;
    temps.forEach((tempC, i) => {
      expectWithin(turned[i]!, tempC, 1e-9);
      expectWithin(mirrored[i]!, tempC, 1e-9);
      expectWithin(reversed[2 - i]!, tempC, 1e-9);
    });
  });
  it('more current anywhere warms every wire', () => {
    const before = bundleTemperature(three).conductorTempsC!;
    for (let j = 0; j < 3; j++) {
      const after = bundleTemperature({
        ...three,
        wires: three.wires.map((w, i) => (i === j ? { ...w, currentA: w.currentA + 1 } : w)),
      }).conductorTempsC!;
      after.forEach((tempC, i) => expect(tempC).toBeGreaterThan(before[i]!));
    }
  });
  it('no current, no rise; swapped places matter', () => {
    const cold = bundleTemperature({ ...three, wires: three.wires.map((w) => ({ ...w, currentA: 0 })) });
    for (const tempC of cold.conductorTempsC!) expectWithin(tempC, 40, 1e-12);
    const swapped = bundleTemperature({ ...three, wires: three.wires.map((w) => ({ ...w, xMm: w.yMm, yMm: w.xMm })) });
    // Mirrored at the diagonal: the same by symmetry.
    expectWithin(swapped.hottestTempC!, bundleTemperature(three).hottestTempC!, 1e-9);
    const moved = bundleTemperature({
      ...three,
      wires: three.wires.map((w, i) => (i === 0 ? { ...w, currentA: 5 } : i === 1 ? { ...w, currentA: 15 } : w)),
    });
    expect(moved.hottestTempC).not.toBe(bundleTemperature(three).hottestTempC);
  });
});

describe('edges', () => {
  it('says why there is no temperature', () => {
    const hot = { ...three, wires: three.wires.map((w) => ({ ...w, currentA: 70 })) };
    expect(bundleTemperature(hot)).toMatchObject({ hottestTempC: null, conductorTempsC: null });
    const away = { ...three, wires: three.wires.map((w) => ({ ...w, currentA: 5000 })) };
    expect(bundleTemperature(away)).toMatchObject({ hottestTempC: null, reason: 'runs-away' });
  });
  it('refuses wires that overlap, stick out, are not whole, or are none', () => {
    const put = (rest: Partial<WireInBundle>) => () =>
      bundleTemperature({ ...three, wires: [three.wires[0]!, { ...three.wires[1]!, ...rest }] });
    expectInputError(put({ xMm: 0.5, yMm: 0.5 }), 'wires[1].xMm', 'range');
    expectInputError(put({ xMm: -3 }), 'wires[1].xMm', 'range');
    expectInputError(put({ xMm: NaN }), 'wires[1].xMm', 'finite');
    expectInputError(put({ yMm: undefined as never }), 'wires[1].yMm', 'missing');
    expectInputError(put({ currentA: -1 }), 'wires[1].currentA', 'atLeast');
    expectInputError(put({ resistanceOhmPerM: 0 }), 'wires[1].resistanceOhmPerM', 'above');
    expectInputError(
      put({ insulationConductivityWPerMK: undefined as never }),
      'wires[1].insulationConductivityWPerMK',
      'missing',
    );
    expectInputError(() => bundleTemperature({ ...three, wires: [] }), 'wires', 'list');
    expectInputError(() => bundleTemperature({ ...three, wires: undefined as never }), 'wires', 'missing');
    expectInputError(() => bundleTemperature({ ...three, wires: [null as never] }), 'wires[0]', 'object');
    expectInputError(() => bundleTemperature({ ...three, bundleDiameterMm: NaN }), 'bundleDiameterMm', 'finite');
    expectInputError(
      () => bundleTemperature({ ...three, ambientTempC: undefined as never }),
      'ambientTempC',
      'missing',
    );
    expectInputError(() => bundleTemperature({ ...three, altitudeM: undefined as never }), 'altitudeM', 'missing');
    expectInputError(() => bundleTemperature({ ...three, emissivity: 2 }), 'emissivity', 'atMost');
    expectInputError(() => bundleTemperature({ ...three, convection: 'x' as never }), 'convection', 'oneOf');
    expectInputError(() => bundleTemperature(3 as never), 'input', 'object');
  });
});
