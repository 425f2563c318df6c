import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { conductorTemperature, pulsedTemperature, type PulsedTemperatureInput, timeToTemperature } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenly } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';

const input: PulsedTemperatureInput = {
  onCurrentA: 24,
  offCurrentA: 0,
  onS: 0.006,
  periodS: 0.01,
  areaMm2: 2.5,
  insulationHeatJPerCm3K: 1.7,
  resistanceOhmPerM: 0.0076,
  ratedTempC: 20,
  conductorDiameterMm: 2.1,
  outerDiameterMm: 3,
  insulationConductivityWPerMK: 0.17,
  ambientTempC: 40,
  altitudeM: 0,
};

describe('published', () => {
  computed(
    '24 A at duty 0.60: r.m.s. for wire and fuse',
    { source: 'circuit-theory', place: '24 √0.6', status: 'derived' },
    () => expectPrinted(pulsedTemperature(input).rmsCurrentA, '18.59'),
  );
  computed(
    '24 A at duty 0.60: mean for the battery',
    { source: 'circuit-theory', place: '24 · 0.6', status: 'derived' },
    () => expectPrinted(pulsedTemperature(input).meanCurrentA, '14.40'),
  );
});

describe('independent', () => {
  it('fast pulses warm as their r.m.s. current does', () => {
    const found = pulsedTemperature(input);
    const steady = conductorTemperature({ ...input, currentA: found.rmsCurrentA }).conductorTempC!;
    expect(found.method).toBe('rms');
    expectWithin(found.conductorTempC!, steady + found.rippleK!, 1e-12);
    expect(found.rippleK!).toBeLessThan(0.01);
  });
  it('slow pulses end as following them one by one does', { timeout: 60_000 }, () => {
    for (const [onCurrentA, onS, periodS] of [
      [40, 12, 30],
      [120, 1, 20],
    ] as const) {
      const found = pulsedTemperature({ ...input, onCurrentA, onS, periodS });
      expect(found.method).toBe('transient');
      // Sixty pulses from cold, by steps of current, and then the end of one more.
      const { onCurrentA: _1, offCurrentA: _2, onS: _3, periodS: _4, ...wire } = input;
      const currentSteps = Array.from({ length: 60 }, () => [
        { currentA: onCurrentA, durationS: onS },
        { currentA: 0, durationS: periodS - onS },
      ]).flat();
      const limitTempC = 390;
      const high = timeToTemperature({
        ...wire,
        startTempC: 40,
        limitTempC,
        currentSteps: [...currentSteps, { currentA: onCurrentA, durationS: onS }],
      });
      const low = timeToTemperature({ ...wire, startTempC: 40, limitTempC, currentSteps });
      expect(Math.abs(found.conductorTempC! - high.endTempC)).toBeLessThan(2e-3);
      expect(Math.abs(found.rippleK! - (high.endTempC - low.endTempC))).toBeLessThan(2e-3);
    }
  });
  it('very slow pulses reach the steady state of the current while on', () => {
    const found = pulsedTemperature({ ...input, onS: 3000, periodS: 6000 });
    expect(found.method).toBe('transient');
    expectWithin(found.conductorTempC!, conductorTemperature({ ...input, currentA: 24 }).conductorTempC!, 1e-6);
    expect(found.rippleK!).toBeCloseTo(found.conductorTempC! - 40, 3);
  });
  it('the time constant is that of the last stretch towards the steady state', () => {
    const { timeConstantS, rmsCurrentA } = pulsedTemperature(input);
    const { onCurrentA: _1, offCurrentA: _2, onS: _3, periodS: _4, ...wire } = input;
    const steady = conductorTemperature({ ...input, currentA: rmsCurrentA }).conductorTempC!;
    const at = (share: number): number =>
      timeToTemperature({ ...wire, currentA: rmsCurrentA, startTempC: 40, limitTempC: steady - share * (steady - 40) })
        .timeS!;
    expectWithin(at(0.1) - at(0.1 * Math.E), timeConstantS!, 0.2);
  });
});

describe('laws', () => {
  it(
    'pulses never leave the wire cooler than their r.m.s. current, nor hotter than the current while on',
    { timeout: 60_000 },
    () => {
      fc.assert(
        fc.property(
          fc.double({ min: 5, max: 35, noNaN: true }),
          fc.double({ min: 0.05, max: 0.95, noNaN: true }),
          evenly(-2, 3),
          (onCurrentA, share, exponent) => {
            const periodS = 10 ** exponent;
            const found = pulsedTemperature({ ...input, onCurrentA, periodS, onS: share * periodS });
            const rms = conductorTemperature({ ...input, currentA: found.rmsCurrentA }).conductorTempC!;
            const on = conductorTemperature({ ...input, currentA: onCurrentA }).conductorTempC!;
            expect(found.conductorTempC!).toBeGreaterThan(rms - 0.01);
            expect(found.conductorTempC!).toBeLessThan(on + 1);
            expect(found.meanCurrentA).toBeLessThanOrEqual(found.rmsCurrentA);
            expect(found.rmsCurrentA).toBeLessThanOrEqual(onCurrentA);
          },
        ),
        { numRuns: 30 },
      );
    },
  );
  it('equal currents on and off are a steady one', () => {
    const found = pulsedTemperature({ ...input, offCurrentA: 24 });
    expectWithin(found.conductorTempC!, conductorTemperature({ ...input, currentA: 24 }).conductorTempC!, 1e-9);
    expect(found.rippleK!).toBeCloseTo(0, 9);
  });
});

describe('edges', () => {
  it('says why there is no temperature', { timeout: 60_000 }, () => {
    expect(pulsedTemperature({ ...input, onCurrentA: 200 })).toMatchObject({
      conductorTempC: null,
      method: 'rms',
      reason: 'beyond-air-data',
    });
    expect(pulsedTemperature({ ...input, onCurrentA: 800, onS: 1, periodS: 1000 })).toMatchObject({
      conductorTempC: null,
      method: 'transient',
      reason: 'beyond-air-data',
    });
    expect(pulsedTemperature({ ...input, onCurrentA: 1e5 })).toMatchObject({
      conductorTempC: null,
      reason: 'runs-away',
    });
  });
  it('no current at all', () => {
    expect(pulsedTemperature({ ...input, onCurrentA: 0 })).toMatchObject({
      conductorTempC: 40,
      timeConstantS: null,
      rippleK: 0,
    });
  });
  it('refuses nonsense', () => {
    refusesNonsense(pulsedTemperature, input, {
      required: [
        'onCurrentA',
        'offCurrentA',
        'onS',
        'periodS',
        'areaMm2',
        'resistanceOhmPerM',
        'ambientTempC',
        'altitudeM',
      ],
    });
    expectInputError(() => pulsedTemperature({ ...input, onS: 0.01 }), 'onS', 'below');
    expectInputError(() => pulsedTemperature({ ...input, offCurrentA: 25 }), 'onCurrentA', 'atLeast');
    expectInputError(() => pulsedTemperature({ ...input, offCurrentA: -1 }), 'offCurrentA', 'atLeast');
  });
});
