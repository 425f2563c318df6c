// The table builder's card: points as written, or the library's own functions of a sensor.
import { describe, expect, it } from 'vitest';
import type { CalibrationTable } from 'loomwright';
import { calibrationTableCard, exampleValues, inputOf, type Values } from '@loomwright/worked/card';
import { expectInputError } from '../support/edge.js';
import { expectWithin } from '../support/published.js';

const example = exampleValues(calibrationTableCard);
const build = (over: Values): CalibrationTable => {
  const values = { ...example, inStepValue: null, outStepValue: null, ...over };
  const result = calibrationTableCard.run(inputOf(calibrationTableCard, values));
  if (!result.possible) throw new Error(result.because);
  return result;
};

/** Steinhart and Hart's equation with the letters of 5900, 834 and 186 Ω at 0, 50 and 100 °C, turned round by halving. */
const ohmAt = (tempC: number): number => {
  const [a, b, c] = [1.313427e-3, 2.56439e-4, 1.8482e-7];
  let [low, high] = [Math.log(1), Math.log(1e7)];
  for (let i = 0; i < 100; i++) {
    const l = (low + high) / 2;
    if (1 / (a + b * l + c * l ** 3) - 273.15 > tempC) low = l;
    else high = l;
  }
  return Math.exp((low + high) / 2);
};

describe('the curve of the table builder', () => {
  it('a thermistor with a pull-up: cells lie on its curve, the ends on the ends of the range', () => {
    for (const side of ['sensor-to-ground', 'sensor-to-supply']) {
      const table = build({ from: 'thermistor-volts', side, cellCount: 8 });
      const voltsAt = (tempC: number): number =>
        side === 'sensor-to-ground' ? (5 * ohmAt(tempC)) / (ohmAt(tempC) + 2490) : (5 * 2490) / (ohmAt(tempC) + 2490);
      expect(table.cells).toHaveLength(8);
      for (const { inValue, outValue } of table.cells) expectWithin(inValue, voltsAt(outValue), 2e-5);
      const shown = table.cells.map(({ outValue }) => outValue).sort((p, q) => p - q);
      expectWithin(shown[0]! + 100, 80, 1e-9);
      expectWithin(shown.at(-1)!, 120, 1e-9);
      expect(table.betweenErrorValue!).toBeGreaterThanOrEqual(table.leastErrorValue * 0.999);
      expect(table.betweenErrorValue!).toBeLessThan(table.leastErrorValue * 1.2);
    }
  });
  it('the same sensor as a function and as fifteen rounded points leaves nearly the same error', () => {
    const points = build({ from: 'points', cellCount: 6 });
    const range = build({ from: 'thermistor-volts', lowTempC: -20, highTempC: 120, cellCount: 6 });
    expectWithin(range.worstErrorValue, points.worstErrorValue, 0.35);
    expect(range.worstErrorValue).toBeGreaterThan(0);
  });
  it('a thermistor by its ohms, hottest first', () => {
    const table = build({ from: 'thermistor-ohms', cellCount: 10 });
    for (const { inValue, outValue } of table.cells) expectWithin(inValue, ohmAt(outValue), 2e-5);
    expectWithin(table.cells[0]!.inValue, ohmAt(120), 2e-5);
    expectWithin(table.cells.at(-1)!.inValue, ohmAt(-20), 2e-5);
    expect(table.betweenErrorValue).toBeNull();
  });
  it('a straight sensor needs its two ends', () => {
    const table = build({ from: 'straight', lowV: 0.5, lowValue: 10, highV: 4.5, highValue: -30, cellCount: 5 });
    expect(table.worstErrorValue).toBeLessThan(1e-9);
    expect(table.cells[0]).toEqual({ inValue: 0.5, outValue: 10 });
    expect(table.cells.at(-1)).toEqual({ inValue: 4.5, outValue: -30 });
  });
  it('names the field at fault, for each', () => {
    const bad = (over: Values, field: string) => {
      expectInputError(() => build(over), field);
    };
    for (const from of ['thermistor-volts', 'thermistor-ohms']) {
      bad({ from, curve: 'ntc-2252', lowTempC: -200 }, 'lowTempC');
      bad({ from, curve: 'ntc-2252', highTempC: 900 }, 'highTempC');
      bad({ from, highTempC: -20 }, 'highTempC');
      bad({ from, lowTempC: null }, 'lowTempC');
    }
    for (const field of ['pullOhm', 'supplyV']) {
      bad({ from: 'thermistor-volts', [field]: null }, field);
      bad({ from: 'thermistor-volts', [field]: 0 }, field);
    }
    for (const field of ['lowV', 'lowValue', 'highV', 'highValue']) bad({ from: 'straight', [field]: null }, field);
    bad({ from: 'straight', highV: 0.5 }, 'highV');
    bad({ from: 'points', points: '1 2; x' }, 'points');
  });
});
