import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  fitSteinhartHart,
  loadedDivider,
  ntc2252,
  ntc10k44031,
  thermistorInput,
  type PointCurve,
  type ThermistorInputInput,
} from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenly, swapsMatter } from '../support/law.js';
import { computed, expectPrinted, expectWithin, type Citation } from '../support/published.js';
import { printChiller } from './ntc-print.js';

const chiller: Citation = { source: 'ntc-5k-chiller-manual', place: 'table 42B', status: 'published' };
const coolant: Citation = {
  source: 'ntc-coolant-service-data',
  place: '2002 model, 5 V through 1.0 kΩ',
  status: 'published',
};
const worked: Citation = { source: 'circuit-theory', place: 'worked case of three points', status: 'derived' };

const { curve } = fitSteinhartHart({
  points: [
    { tempC: 0, resistanceOhm: 5900 },
    { tempC: 50, resistanceOhm: 834 },
    { tempC: 100, resistanceOhm: 186 },
  ],
});
const case6 = { curve, side: 'sensor-to-ground', supplyV: 5, pullOhm: 2490, extrapolate: true } as const;

describe('published', () => {
  const rows = printChiller.map(([t, ohm]) => [t, ohm] as const);
  const sensor: PointCurve = { kind: 'points', rows };
  for (const [tempC, , volt] of printChiller) {
    // The manual does not print its fixed resistor. One of 3571 Ω gives all of its volts: within a unit of the last
    // digit, and 5 mV at 75 °C and 80 °C, where its ohms are smoothed less than its volts.
    computed(`${tempC} °C: ${volt} V`, chiller, () => {
      const { inputV } = thermistorInput({ curve: sensor, side: 'sensor-to-ground', supplyV: 5, pullOhm: 3571, tempC });
      expectPrinted(inputV, volt, 1.5);
    });
  }
  // The service data gives ranges of kΩ and "approximately" a voltage: the middle of the range within 0.04 V.
  for (const [tempC, lowKohm, highKohm, volt] of [
    [-30, 20, 30, 4.8],
    [-10, 7.0, 11.4, 4.5],
    [20, 2.1, 2.9, 3.6],
    [40, 1.0, 1.3, 2.7],
    [60, 0.565, 0.67, 1.9],
    [80, 0.295, 0.365, 1.2],
    [90, 0.24, 0.26, 1.0],
    [110, 0.14, 0.16, 0.65],
  ] as const) {
    computed(`${tempC} °C: about ${volt} V`, coolant, () => {
      const resistanceOhm = 500 * (lowKohm + highKohm);
      const { inputV } = thermistorInput({ ...case6, pullOhm: 1000, resistanceOhm });
      expect(Math.abs(inputV - volt)).toBeLessThan(0.045);
    });
  }
  const hot = thermistorInput({ ...case6, tempC: 100, adcSteps: 1024 });
  const smaller = thermistorInput({ ...case6, pullOhm: 1000, tempC: 100, adcSteps: 1024 });
  for (const [name, value, print] of [
    ['100 °C with 2.49 kΩ, V', hot.inputV, '0.3475'],
    ['mV a kelvin', -1000 * hot.slopeVPerK!, '8.55'],
    ['K a count of 10 bits', hot.countK, '0.57'],
    ['100 °C with 1.0 kΩ, V', smaller.inputV, '0.7841'],
    ['mV a kelvin', -1000 * smaller.slopeVPerK!, '17.5'],
    ['K a count of 10 bits', smaller.countK, '0.28'],
    ['above 4.8 V with 2.49 kΩ, kΩ', thermistorInput({ ...case6, inputV: 4.8 }).resistanceOhm! / 1000, '59.8'],
    ['that is below, °C', thermistorInput({ ...case6, inputV: 4.8 }).tempC, '-44.8'],
    ['below 0.10 V with 2.49 kΩ, Ω', thermistorInput({ ...case6, inputV: 0.1 }).resistanceOhm, '50.8'],
    ['that is above, °C', thermistorInput({ ...case6, inputV: 0.1 }).tempC, '155.7'],
    [
      'above 4.8 V with 1.0 kΩ, kΩ',
      thermistorInput({ ...case6, pullOhm: 1000, inputV: 4.8 }).resistanceOhm! / 1000,
      '24',
    ],
    ['a healthy sensor in winter, °C', thermistorInput({ ...case6, pullOhm: 1000, inputV: 4.8 }).tempC, '-28.6'],
  ] as const) {
    computed(`${name}: ${print}`, worked, () => expectPrinted(Number(value), print));
  }
});

describe('independent', () => {
  it('is a divider loaded by the input, on either side', () => {
    for (const side of ['sensor-to-ground', 'sensor-to-supply'] as const) {
      const found = thermistorInput({ ...case6, side, inputOhm: 47000, tempC: 20 });
      const [upperOhm, lowerOhm] =
        side === 'sensor-to-ground' ? [2490, found.resistanceOhm!] : [found.resistanceOhm!, 2490];
      const { outV } = loadedDivider({ inV: 5, sourceOhm: 0, upperOhm, lowerOhm, inputOhm: 47000 });
      expectWithin(found.inputV, outV, 1e-13);
      expectWithin(thermistorInput({ ...case6, side, inputOhm: 47000, inputV: outV }).tempC!, 20, 1e-10);
    }
  });
  it('heats the sensor by its own volts and amps', () => {
    const found = thermistorInput({ ...case6, tempC: 50, dissipationMwPerK: 1.5 });
    const currentA = 5 / (2490 + 834);
    expectWithin(found.sensorMw!, 1000 * currentA * currentA * 834, 1e-12);
    expectWithin(found.selfHeatingRiseK!, found.sensorMw! / 1.5, 1e-15);
  });
});

describe('laws', () => {
  const sides = fc.constantFrom('sensor-to-ground' as const, 'sensor-to-supply' as const);
  const temps = evenly(-40, 140);
  const ohms = fc.double({ min: 200, max: 50000, noNaN: true });
  const loads = fc.option(fc.double({ min: 1e4, max: 1e7, noNaN: true }), { nil: undefined });
  it('comes back from volts, and its slope is that of two readings', () => {
    fc.assert(
      fc.property(sides, temps, ohms, loads, (side, tempC, pullOhm, load) => {
        const pull = {
          curve: ntc10k44031,
          side,
          supplyV: 5,
          pullOhm,
          ...(load === undefined ? {} : { inputOhm: load }),
        };
        const { inputV, slopeVPerK } = thermistorInput({ ...pull, tempC });
        const back = thermistorInput({ ...pull, inputV });
        expect(Math.abs(back.tempC! - tempC)).toBeLessThan(1e-6);
        const above = thermistorInput({ ...pull, tempC: tempC + 1e-4 }).inputV;
        const below = thermistorInput({ ...pull, tempC: tempC - 1e-4 }).inputV;
        expect((above - below) / 2e-4 / slopeVPerK!).toBeCloseTo(1, 3);
        expect(Math.sign(slopeVPerK!)).toBe(side === 'sensor-to-ground' ? -1 : 1);
      }),
    );
  });
  it('sees swapped inputs', () => {
    const input: ThermistorInputInput = { ...case6, resistanceOhm: 800, adcSteps: 1024, dissipationMwPerK: 2 };
    swapsMatter(thermistorInput, { ...input, inputOhm: 90000 });
  });
});

describe('edges', () => {
  const input: ThermistorInputInput = {
    curve: ntc2252,
    side: 'sensor-to-ground',
    supplyV: 5,
    pullOhm: 2252,
    inputV: 2.5,
  };
  it('says open or shorted at the ends, with no number', () => {
    const none = { tempC: null, resistanceOhm: null, slopeVPerK: null, countK: null, sensorMw: null };
    expect(thermistorInput({ ...input, inputV: 5 })).toMatchObject({ ...none, fault: 'open', inputFraction: 1 });
    expect(thermistorInput({ ...input, inputV: 0 })).toMatchObject({ ...none, fault: 'short', inputFraction: 0 });
    const down = { ...input, side: 'sensor-to-supply' } as const;
    expect(thermistorInput({ ...down, inputV: 0 }).fault).toBe('open');
    expect(thermistorInput({ ...down, inputV: 5 }).fault).toBe('short');
    // The input's own resistance alone gives more than half of the supply: nothing else is connected.
    expect(thermistorInput({ ...input, inputOhm: 2252, inputV: 2.5 }).fault).toBe('open');
    expect(thermistorInput(input)).toMatchObject({ fault: null, extrapolated: false, countK: null });
    expect(thermistorInput(input).selfHeatingRiseK).toBeNull();
  });
  it('refuses nonsense', () => {
    refusesNonsense(thermistorInput, input, {
      required: ['supplyV', 'pullOhm'],
      optional: ['inputV', 'inputOhm', 'adcSteps', 'dissipationMwPerK'],
    });
    refusesNonsense(thermistorInput, { ...case6, tempC: 20 }, { optional: ['tempC'] });
    refusesNonsense(thermistorInput, { ...case6, resistanceOhm: 20 }, { optional: ['resistanceOhm'] });
    expectInputError(() => thermistorInput({ ...input, side: 'both' as never }), 'side', 'oneOf');
    expectInputError(() => thermistorInput({ ...input, inputV: 5.001 }), 'inputV', 'range');
    expectInputError(() => thermistorInput({ ...input, inputV: -0.001 }), 'inputV', 'range');
    expectInputError(() => thermistorInput({ ...input, tempC: 20 }), 'inputV', 'oneOfFields');
    expectInputError(() => thermistorInput({ ...case6 }), 'inputV', 'oneOfFields');
    expectInputError(() => thermistorInput({ ...input, adcSteps: 1 }), 'adcSteps', 'above');
    expectInputError(() => thermistorInput({ ...input, pullOhm: 0 }), 'pullOhm', 'above');
    expectInputError(() => thermistorInput({ ...input, inputV: 4.9999 }), 'inputV', 'range');
  });
});
