import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  airProperties,
  conductorTemperature,
  type ConductorTemperatureInput,
  nusseltHorizontalCylinder,
} from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenly, evenlyWithEnds, swapsMatter } from '../support/law.js';
import { computed, expectWithin } from '../support/published.js';

const wire: ConductorTemperatureInput = {
  currentA: 15,
  resistanceOhmPerM: 0.0076,
  ratedTempC: 20,
  conductorDiameterMm: 2.1,
  outerDiameterMm: 3,
  insulationConductivityWPerMK: 0.17,
  ambientTempC: 40,
  altitudeM: 0,
};

/** A result that has numbers. */
function warm(input: ConductorTemperatureInput): {
  conductorTempC: number;
  surfaceTempC: number;
  lossWPerM: number;
  convectionWPerM: number;
  radiationWPerM: number;
} {
  const result = conductorTemperature(input);
  expect(result.reason).toBe(null);
  return result as never;
}

describe('published', () => {
  // A wire of 3 mm in a cover of 1.5 mm, 12 m long, in air of 30 °C: 10 A at 8 V or 7 V. The volts are those of the
  // warm wire, so the resistance is stated at the temperature found. Tolerance: 2.5 % of the rise (half a kelvin),
  // for the 1.7 % more conductivity of our air.
  const covered = (volts: number, insulationConductivityWPerMK: number, tempC: number): ConductorTemperatureInput => ({
    currentA: 10,
    resistanceOhmPerM: volts / 10 / 12,
    ratedTempC: tempC,
    conductorDiameterMm: 3,
    outerDiameterMm: 6,
    insulationConductivityWPerMK,
    ambientTempC: 30,
    altitudeM: 0,
    emissivity: 0.9,
  });
  for (const [volts, k, surface, inside, status] of [
    [8, 0.15, 52.6, 57.5, 'memory'],
    [8, 0.2, 52.6, 56.2, 'derived'],
    [7, 0.2, 49.9, 53.1, 'derived'],
  ] as const) {
    computed(
      `wire of 3 mm under 1.5 mm of plastic, ${volts * 10} W, k ${k}`,
      { source: 'cengel-heat-transfer', place: 'problem 9-35', status },
      () => {
        const found = warm(covered(volts, k, inside));
        expectWithin(found.surfaceTempC - 30, surface - 30, 0.025);
        expectWithin(found.conductorTempC - 30, inside - 30, 0.025);
        expectWithin(found.lossWPerM, (volts * 10) / 12, 0.003);
      },
    );
  }
  computed(
    'a bare pipe of 0.08 m that makes 443 W by convection in 6 m stands at 70 °C in air of 20 °C',
    { source: 'cengel-heat-transfer', place: 'example 9-1', status: 'published' },
    () => {
      const found = warm({
        currentA: 100,
        resistanceOhmPerM: 443 / 6 / 1e4,
        ratedTempC: 70,
        conductorDiameterMm: 80,
        outerDiameterMm: 80,
        ambientTempC: 20,
        altitudeM: 0,
        emissivity: 0,
      });
      expectWithin(found.conductorTempC - 20, 50, 0.02);
      expect(found.surfaceTempC).toBeCloseTo(found.conductorTempC, 9);
      expect(found.radiationWPerM).toBe(0);
    },
  );
  computed(
    'a wire of 0.02 mm that makes 0.836 W in 0.5 m stands at 54 °C in air of 0 °C',
    { source: 'holman-heat-transfer', place: 'example 7-5, Morgan', status: 'memory' },
    () => {
      const found = warm({
        currentA: 0.1,
        resistanceOhmPerM: 0.836 / 0.5 / 0.01,
        ratedTempC: 54,
        conductorDiameterMm: 0.02,
        outerDiameterMm: 0.02,
        ambientTempC: 0,
        altitudeM: 0,
        emissivity: 0,
        convection: 'morgan',
      });
      expectWithin(found.conductorTempC, 54, 0.03);
    },
  );
});

describe('independent', () => {
  it('closes the balance written out plainly, by bisection over the conductor temperature', () => {
    fc.assert(
      fc.property(
        fc.record({
          currentA: fc.double({ min: 0.5, max: 30, noNaN: true }),
          conductorDiameterMm: fc.double({ min: 1.5, max: 6, noNaN: true }),
          wallMm: fc.double({ min: 0.1, max: 2, noNaN: true }),
          ambientTempC: evenly(-30, 100),
          altitudeM: evenlyWithEnds(0, 5000),
          emissivity: fc.double({ min: 0.05, max: 1, noNaN: true }),
          convection: fc.constantFrom('churchill-chu' as const, 'morgan' as const),
          metal: fc.constantFrom('copper' as const, 'aluminium' as const),
        }),
        ({ wallMm, ...rest }) => {
          const input = { ...wire, ...rest, outerDiameterMm: rest.conductorDiameterMm + 2 * wallMm };
          const found = conductorTemperature(input);
          if (found.conductorTempC === null) return;
          const d = input.outerDiameterMm / 1000;
          const off = (surfaceC: number): { off: number; hot: number } => {
            const p = airProperties({ filmTempC: (surfaceC + input.ambientTempC) / 2, altitudeM: input.altitudeM });
            const rise = surfaceC - input.ambientTempC;
            const rayleigh =
              (9.80665 * p.expansionPerK * rise * d ** 3) / (p.kinematicViscosityM2PerS * p.diffusivityM2PerS);
            const { nusselt } = nusseltHorizontalCylinder({
              rayleigh,
              prandtl: p.prandtl,
              convection: input.convection,
            });
            const out =
              Math.PI * nusselt * p.conductivityWPerMK * rise +
              Math.PI *
                d *
                input.emissivity *
                5.670374419e-8 *
                ((surfaceC + 273.15) ** 4 - (input.ambientTempC + 273.15) ** 4);
            const inside = Math.log(input.outerDiameterMm / input.conductorDiameterMm) / (2 * Math.PI * 0.17);
            const hot = surfaceC + out * inside;
            const zero = input.metal === 'aluminium' ? 228 : 234.5;
            return { off: out - (input.currentA ** 2 * 0.0076 * (zero + hot)) / (zero + 20), hot };
          };
          let low = input.ambientTempC + 1e-7;
          let high = Math.min(453 - input.ambientTempC, 400);
          for (let i = 0; i < 80; i++) {
            const mid = (low + high) / 2;
            if (off(mid).off > 0) high = mid;
            else low = mid;
          }
          expect(Math.abs((found.surfaceTempC as number) - low)).toBeLessThan(2e-6);
          expect(Math.abs(found.conductorTempC - off(low).hot)).toBeLessThan(4e-6);
        },
      ),
    );
  });
});

describe('laws', () => {
  it('no current, no rise', () => {
    expect(conductorTemperature({ ...wire, currentA: 0 })).toMatchObject({
      conductorTempC: 40,
      surfaceTempC: 40,
      lossWPerM: 0,
      reason: null,
    });
    expect(warm({ ...wire, currentA: 1e-6 }).conductorTempC).toBeCloseTo(40, 9);
  });
  it('runs hotter with more current, more heat around, more altitude, more resistance, less emissivity', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 25, noNaN: true }), evenly(-40, 90), (i, t) => {
        const input = { ...wire, currentA: i, ambientTempC: t };
        const { conductorTempC } = warm(input);
        expect(warm({ ...input, currentA: i * 1.05 }).conductorTempC).toBeGreaterThan(conductorTempC);
        expect(warm({ ...input, ambientTempC: t + 2 }).conductorTempC).toBeGreaterThan(conductorTempC);
        expect(warm({ ...input, altitudeM: 1000 }).conductorTempC).toBeGreaterThan(conductorTempC);
        expect(warm({ ...input, resistanceOhmPerM: 0.009 }).conductorTempC).toBeGreaterThan(conductorTempC);
        expect(warm({ ...input, emissivity: 0.5 }).conductorTempC).toBeGreaterThan(conductorTempC);
      }),
    );
  });
  it('a larger wire never runs hotter: area, diameters and resistance scaled together', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.3, max: 100, noNaN: true }),
        fc.double({ min: 1.02, max: 2, noNaN: true }),
        fc.double({ min: 0.1, max: 6, noNaN: true }),
        (areaMm2, f, density) => {
          const of = (a: number): ConductorTemperatureInput => {
            const d = Math.sqrt((4 * a) / 0.75 / Math.PI);
            const wall = 0.2 + 0.03 * d;
            return {
              ...wire,
              currentA: density * Math.sqrt(areaMm2) * 2,
              resistanceOhmPerM: 0.019 / a,
              conductorDiameterMm: d,
              outerDiameterMm: d + 2 * wall,
            };
          };
          const thin = conductorTemperature(of(areaMm2)).conductorTempC;
          const thick = conductorTemperature(of(areaMm2 * f)).conductorTempC;
          if (thin !== null) expect(thick as number).toBeLessThanOrEqual(thin);
        },
      ),
    );
  });
  it('changes when two inputs of a kind are swapped', () =>
    swapsMatter(conductorTemperature, { ...wire, emissivity: 0.8 }));
});

describe('edges', () => {
  it('refuses nonsense', () => {
    refusesNonsense(
      conductorTemperature,
      { ...wire, emissivity: 0.9 },
      {
        required: [
          'currentA',
          'resistanceOhmPerM',
          'ratedTempC',
          'conductorDiameterMm',
          'outerDiameterMm',
          'insulationConductivityWPerMK',
          'ambientTempC',
          'altitudeM',
        ],
        optional: ['emissivity'],
      },
    );
    expectInputError(() => conductorTemperature({ ...wire, metal: 'gold' as never }), 'metal', 'oneOf');
    expectInputError(() => conductorTemperature({ ...wire, convection: 'wind' as never }), 'convection', 'oneOf');
  });
  it('ends where it says', () => {
    expectInputError(() => conductorTemperature({ ...wire, currentA: -1 }), 'currentA', 'atLeast');
    expectInputError(() => conductorTemperature({ ...wire, resistanceOhmPerM: 0 }), 'resistanceOhmPerM', 'above');
    expectInputError(() => conductorTemperature({ ...wire, outerDiameterMm: 2.09 }), 'outerDiameterMm', 'atLeast');
    expectInputError(() => conductorTemperature({ ...wire, outerDiameterMm: 301 }), 'outerDiameterMm', 'atMost');
    expectInputError(() => conductorTemperature({ ...wire, emissivity: 1.01 }), 'emissivity', 'atMost');
    expectInputError(() => conductorTemperature({ ...wire, ambientTempC: 201 }), 'ambientTempC', 'atMost');
    expectInputError(() => conductorTemperature({ ...wire, ambientTempC: -61 }), 'ambientTempC', 'atLeast');
    expectInputError(() => conductorTemperature({ ...wire, altitudeM: 20001 }), 'altitudeM', 'atMost');
    expect(() => conductorTemperature({ ...wire, emissivity: 2 })).toThrow(
      'conductorTemperature: emissivity must be at most 1, got 2',
    );
  });
  it('needs no insulation where there is none', () => {
    const { insulationConductivityWPerMK: _, ...bare } = { ...wire, outerDiameterMm: 2.1 };
    const found = warm(bare);
    expect(found.surfaceTempC).toBe(found.conductorTempC);
  });
  it('says why there is no temperature', () => {
    expect(conductorTemperature({ ...wire, currentA: 95 })).toMatchObject({
      conductorTempC: null,
      reason: 'beyond-air-data',
    });
    expect(conductorTemperature({ ...wire, currentA: 1e4 })).toMatchObject({
      conductorTempC: null,
      reason: 'runs-away',
    });
  });
});
