import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  ntc10k44031,
  ntc2252,
  thermistorErrorBudget,
  thermistorResistance,
  thermistorTemperature,
  type ThermistorErrorBudgetInput,
} from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenlyWithEnds } from '../support/law.js';
import { expectWithin } from '../support/published.js';

const input: ThermistorErrorBudgetInput = {
  curve: ntc10k44031,
  side: 'sensor-to-ground',
  supplyV: 5,
  pullOhm: 2200,
  tempsC: [-20, 0, 25, 60, 100],
  pullToleranceFraction: 0.01,
  sensorToleranceK: 0.3,
  adcSteps: 1024,
  adcErrorCounts: 2,
  reference: 'ratiometric',
};

describe('independent', () => {
  it('is what ohms and fractions give by hand', () => {
    const { rows } = thermistorErrorBudget({ ...input, tempsC: [60] });
    const row = rows[0]!;
    const { resistanceOhm } = thermistorResistance({ curve: ntc10k44031, tempC: 60 });
    const read = (ohm: number): number => thermistorTemperature({ curve: ntc10k44031, resistanceOhm: ohm }).tempC - 60;
    // A fixed resistor 1 % too large reads the sensor 1 % too low, and the other way round.
    const pull = [1.01, 0.99].map((x) => Math.abs(read(resistanceOhm / x)));
    expectWithin(row.pullK!, Math.max(...pull), 1e-9);
    const fraction = resistanceOhm / (resistanceOhm + 2200);
    const adc = [2, -2].map((c) => fraction + c / 1024).map((f) => Math.abs(read((2200 * f) / (1 - f))));
    expectWithin(row.adcK!, Math.max(...adc), 1e-9);
    expectWithin(row.sensorK!, 0.3, 1e-9);
    expectWithin(row.rootSumSquareK!, Math.hypot(row.pullK!, row.sensorK!, row.adcK!), 1e-12);
    expect(row).toMatchObject({ supplyK: 0, heatK: 0, code: null });
  });
  it('contains every part drawn within its tolerance', () => {
    // A plain Monte Carlo of 400 parts with numbers from a fixed recurrence: none beyond the worst case.
    let state = 12345;
    const draw = (): number => {
      state = (state * 16807) % 2147483647;
      return (2 * state) / 2147483647 - 1;
    };
    const budget = thermistorErrorBudget({
      ...input,
      sensorToleranceFraction: 0.02,
      sensorToleranceK: undefined as never,
    });
    for (const { tempC, worstHighK, worstLowK } of budget.rows) {
      let high = -9;
      let low = 9;
      for (let i = 0; i < 400; i++) {
        const nominal = thermistorResistance({ curve: ntc10k44031, tempC }).resistanceOhm;
        const sensor = nominal * (1 + 0.02 * draw());
        const pull = 2200 * (1 + 0.01 * draw());
        const f = sensor / (sensor + pull) + (2 / 1024) * draw();
        const off = thermistorTemperature({ curve: ntc10k44031, resistanceOhm: (2200 * f) / (1 - f) }).tempC - tempC;
        high = Math.max(high, off);
        low = Math.min(low, off);
      }
      expect(high).toBeLessThanOrEqual(worstHighK!);
      expect(low).toBeGreaterThanOrEqual(worstLowK!);
      expect(high).toBeGreaterThan(worstHighK! / 2);
    }
  });
});

describe('laws', () => {
  it('adds up: no part alone beats the worst case, the worst case never beats the sum by much, and it is bracketed', () => {
    fc.assert(
      fc.property(
        evenlyWithEnds(0, 0.05),
        evenlyWithEnds(0, 1),
        fc.double({ min: 0.5, max: 4, noNaN: true }),
        evenlyWithEnds(0, 0.03),
        fc.constantFrom('sensor-to-ground' as const, 'sensor-to-supply' as const),
        (pullToleranceFraction, sensorToleranceK, adcErrorCounts, supplyToleranceFraction, side) => {
          const { rows } = thermistorErrorBudget({
            ...input,
            ...{ pullToleranceFraction, sensorToleranceK, adcErrorCounts, supplyToleranceFraction, side },
            reference: 'absolute',
            tempsC: [0, 25, 60],
            dissipationMwPerK: 2,
          });
          for (const row of rows) {
            const parts = [row.pullK!, row.sensorK!, row.adcK!, row.supplyK!];
            const worst = Math.max(row.worstHighK!, -row.worstLowK!);
            expect(worst).toBeGreaterThanOrEqual(Math.max(...parts) - 1e-9);
            expect(row.rootSumSquareK!).toBeLessThanOrEqual(worst * 1.02 + row.heatK! + 1e-9);
            expect(worst).toBeLessThan(1.25 * (parts.reduce((sum, part) => sum + part, 0) + row.heatK!) + 1e-9);
            expect(row.heatK!).toBeGreaterThan(0);
          }
        },
      ),
    );
  });
  it('does not feel the supply where the converter measures against it', () => {
    const warm = { ...input, tempsC: [0, 25, 60, 100] };
    const ratio = thermistorErrorBudget({ ...warm, supplyToleranceFraction: 0.05 });
    expect(ratio.rows).toEqual(thermistorErrorBudget(warm).rows);
    const fixed = thermistorErrorBudget({ ...warm, reference: 'absolute', supplyToleranceFraction: 0.05 });
    expect(fixed.worstK!).toBeGreaterThan(2 * ratio.worstK!);
    expect(fixed.decidedBy).toBe('supply');
  });
  it('names what counts most', () => {
    expect(thermistorErrorBudget({ ...input, sensorToleranceK: 5, tempsC: [25] }).decidedBy).toBe('sensor');
    expect(thermistorErrorBudget({ ...input, pullToleranceFraction: 0.2, tempsC: [25] }).decidedBy).toBe(
      'fixed resistor',
    );
    expect(thermistorErrorBudget({ ...input, adcErrorCounts: 40, tempsC: [25] }).decidedBy).toBe('converter');
    expect(thermistorErrorBudget({ ...input, dissipationMwPerK: 0.1, tempsC: [25] }).decidedBy).toBe('self-heating');
  });
});

describe('edges', () => {
  it('has no number where the input can reach its end', () => {
    const { rows, worstK, worstTempC, decidedBy } = thermistorErrorBudget({
      ...input,
      curve: ntc2252,
      pullOhm: 100000,
      tempsC: [25, 240],
      adcSteps: 256,
    });
    expect(rows[0]?.code).toBeNull();
    expect(rows[1]).toMatchObject({ code: 'reaches-the-end', worstHighK: null, worstLowK: null, rootSumSquareK: null });
    expect([worstK, worstTempC, decidedBy]).toEqual([null, null, null]);
  });
  it('refuses nonsense', () => {
    refusesNonsense(thermistorErrorBudget, input, {
      required: ['supplyV', 'pullOhm', 'pullToleranceFraction', 'adcSteps', 'adcErrorCounts'],
      optional: ['sensorToleranceK', 'dissipationMwPerK', 'inputOhm'],
    });
    const wrong =
      (change: object): (() => unknown) =>
      () =>
        thermistorErrorBudget({ ...input, ...change });
    expectInputError(wrong({ pullToleranceFraction: 1 }), 'pullToleranceFraction', 'atMost');
    expectInputError(wrong({ sensorToleranceFraction: 0.01 }), 'sensorToleranceFraction', 'oneOfFields');
    expectInputError(wrong({ sensorToleranceK: undefined }), 'sensorToleranceFraction', 'oneOfFields');
    expectInputError(
      wrong({ sensorToleranceK: undefined, sensorToleranceFraction: -1 }),
      'sensorToleranceFraction',
      'atLeast',
    );
    expectInputError(wrong({ adcErrorCounts: 0.4 }), 'adcErrorCounts', 'atLeast');
    expectInputError(wrong({ reference: 'bandgap' }), 'reference', 'oneOf');
    expectInputError(wrong({ reference: 'absolute' }), 'supplyToleranceFraction', 'missing');
    expectInputError(wrong({ tempsC: [] }), 'tempsC', 'list');
    expectInputError(wrong({ tempsC: [NaN] }), 'tempsC[0]', 'finite');
    expectInputError(wrong({ tempsC: [200] }), 'tempC', 'range');
  });
});
