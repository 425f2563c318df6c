import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  ntc10k44031,
  ntc2252,
  thermistorInput,
  thermistorResistance,
  thermistorSelfHeating,
  type ThermistorSelfHeatingInput,
} from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenly, swapsMatter } from '../support/law.js';
import { expectWithin } from '../support/published.js';

const input: ThermistorSelfHeatingInput = {
  curve: ntc2252,
  side: 'sensor-to-ground',
  supplyV: 5,
  pullOhm: 2252,
  ambientTempC: 20,
  dissipationMwPerK: 1,
};

describe('independent', () => {
  it('is where a slow warming from cold comes to rest', () => {
    for (const [pullOhm, side, supplyV] of [
      [2252, 'sensor-to-ground', 5],
      [10000, 'sensor-to-supply', 12],
      [300, 'sensor-to-ground', 5],
      [150, 'sensor-to-ground', 9],
    ] as const) {
      let tempC = 20;
      for (let step = 0; step < 40000; step++) {
        const { resistanceOhm } = thermistorResistance({ curve: ntc2252, tempC });
        const currentA = supplyV / (resistanceOhm + pullOhm);
        tempC += 0.01 * (1000 * currentA * currentA * resistanceOhm - (tempC - 20));
      }
      const found = thermistorSelfHeating({ ...input, pullOhm, side, supplyV });
      expect(Math.abs(found.sensorTempC - tempC)).toBeLessThan(1e-4);
      expectWithin(found.riseK, found.sensorMw, 1e-8);
    }
  });
  it('takes the cooler of two balances: a sensor that is cold stays there', () => {
    // 5 V through 50 Ω at 1 mW/K: from 20 °C it rests at 37 °C, but once above 70 °C it would run on to 145 °C.
    const cold = thermistorSelfHeating({ ...input, pullOhm: 50 });
    const ohms = (tempC: number): number => thermistorResistance({ curve: ntc2252, tempC }).resistanceOhm;
    const excess = (tempC: number): number => (25000 * ohms(tempC)) / (ohms(tempC) + 50) ** 2 - (tempC - 20);
    let crossings = 0;
    for (let t = 20; t < 249; t += 0.1) if (excess(t) > 0 !== excess(t + 0.1) > 0) crossings++;
    expect(crossings).toBe(3);
    expect(cold.sensorTempC).toBeLessThan(40);
    for (let t = 20; t < cold.sensorTempC - 0.01; t += 0.01) expect(excess(t)).toBeGreaterThan(0);
  });
});

describe('laws', () => {
  it('vanishes with the volts, and balances everywhere', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 5, noNaN: true }),
        fc.double({ min: 500, max: 50000, noNaN: true }),
        evenly(-30, 90),
        fc.double({ min: 0.5, max: 10, noNaN: true }),
        fc.boolean(),
        (supplyV, pullOhm, ambientTempC, dissipationMwPerK, loaded) => {
          const sensor = { ...input, curve: ntc10k44031, supplyV, pullOhm, ...(loaded ? { inputOhm: 47000 } : {}) };
          const found = thermistorSelfHeating({ ...sensor, ambientTempC, dissipationMwPerK });
          expect(found.riseK).toBeGreaterThan(0);
          const read = thermistorInput({ ...sensor, inputV: found.inputV, dissipationMwPerK });
          expect(Math.abs(read.tempC! - read.selfHeatingRiseK! - ambientTempC)).toBeLessThan(1e-5);
          const less = thermistorSelfHeating({ ...sensor, supplyV: supplyV / 2, ambientTempC, dissipationMwPerK });
          expect(less.riseK).toBeLessThan(found.riseK);
        },
      ),
    );
  });
  it('sees swapped inputs', () => swapsMatter(thermistorSelfHeating, { ...input, inputOhm: 30000 }));
});

describe('edges', () => {
  it('refuses nonsense', () => {
    refusesNonsense(thermistorSelfHeating, input, {
      required: ['supplyV', 'pullOhm', 'ambientTempC', 'dissipationMwPerK'],
      optional: ['inputOhm'],
    });
    expectInputError(() => thermistorSelfHeating({ ...input, dissipationMwPerK: 0 }), 'dissipationMwPerK', 'above');
    expectInputError(() => thermistorSelfHeating({ ...input, ambientTempC: 260 }), 'ambientTempC', 'range');
    expectInputError(() => thermistorSelfHeating({ ...input, ambientTempC: -300 }), 'ambientTempC', 'atLeast');
  });
});
