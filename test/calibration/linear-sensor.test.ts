import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { linearSensor, type LinearSensorInput, lookUp } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { swapsMatter } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';

const bar: LinearSensorInput = {
  lowV: 0.5,
  highV: 4.5,
  lowValue: 0,
  highValue: 10,
  output: 'ratiometric',
  ratedSupplyV: 5,
  supplyV: 5,
  inputV: 2.5,
  lowFaultV: 0.25,
  highFaultV: 4.75,
};

describe('published', () => {
  const cite = { source: 'ratiometric-sensor-pages', place: 'worked examples', status: 'published' } as const;
  for (const [volts, print] of [
    [0.5, '0'],
    [2.5, '5'],
    [4.5, '10'],
  ] as const) {
    computed(`0 to 10 bar on 5 V: ${volts} V is ${print} bar`, cite, () =>
      expectPrinted(linearSensor({ ...bar, inputV: volts }).value!, print, 1e-6),
    );
  }
  for (const [percent, print] of [
    [10, '0'],
    [50, '50'],
    [90, '100'],
  ] as const) {
    computed(`${percent} % of a sagging supply is ${print} % of the span`, cite, () => {
      const { spanFraction } = linearSensor({ ...bar, supplyV: 4.7, inputV: (4.7 * percent) / 100 });
      expectPrinted(100 * spanFraction, print, 1e-6);
    });
  }
  computed('0.5 to 4.5 V, 100 psi: 2.5 V is 50 psi', cite, () =>
    expectPrinted(linearSensor({ ...bar, highValue: 100 }).value!, '50'),
  );
  const psi = { ...bar, lowV: 0, highV: 5, highValue: 75, lowFaultV: -1, highFaultV: 6 };
  computed('0 to 5 V, 75 psi: 2.5 V is 37.5 psi', cite, () => expectPrinted(linearSensor(psi).value!, '37.5'));
});

describe('independent', () => {
  it('is a table of two cells', () => {
    const cells = [
      { inValue: 0.5, outValue: 30 },
      { inValue: 4.5, outValue: -20 },
    ];
    for (let v = 0.5; v <= 4.5; v += 0.125) {
      const { value } = linearSensor({ ...bar, lowValue: 30, highValue: -20, inputV: v });
      expect(value).toBeCloseTo(lookUp({ cells, inValue: v, outside: 'throw' }).outValue!, 12);
    }
  });
});

describe('laws', () => {
  const volts = fc.double({ min: 0.6, max: 4.4, noNaN: true });
  it('a ratiometric sensor and its supply move together; an absolute one does not care', () => {
    fc.assert(
      fc.property(volts, fc.double({ min: 0.8, max: 1.2, noNaN: true }), (inputV, factor) => {
        const there = linearSensor({ ...bar, inputV }).value!;
        const moved = { ...bar, supplyV: 5 * factor, inputV: inputV * factor };
        expect(linearSensor(moved).value).toBeCloseTo(there, 9);
        const absolute = { ...bar, output: 'absolute', inputV } as const;
        expect(linearSensor({ ...absolute, supplyV: 5 * factor }).value).toBe(linearSensor(absolute).value);
      }),
    );
  });
  it('the error by the supply is that of a reader who takes it for the rated one', () => {
    const found = linearSensor({ ...bar, supplyV: 4.8 });
    const taken = linearSensor({ ...bar, output: 'absolute', supplyV: 4.8 });
    expectWithin(found.supplyErrorValue!, taken.value! - found.value!, 1e-9);
    expect(taken.supplyErrorValue).toBe(0);
  });
  it('the slope is that of the value, and the zero reads nought', () => {
    const at = (inputV: number) => linearSensor({ ...bar, lowValue: -4, supplyV: 4.6, inputV });
    expect((at(2.1).value! - at(2).value!) / 0.1).toBeCloseTo(at(2).valuePerV, 9);
    expect(at(at(2).zeroV).value).toBeCloseTo(0, 12);
  });
  it('a sensor of ±g, laid on either side, has its middle between', () => {
    const g = { ...bar, lowV: 1.7, highV: 3.3, lowValue: -1, highValue: 1, lowFaultV: 0.2, highFaultV: 4.8 };
    const { zeroV, value, valuePerV } = linearSensor({ ...g, inputV: 4.1 });
    expect(zeroV).toBeCloseTo(2.5, 12);
    expect(value).toBeCloseTo(2, 12);
    expect(valuePerV).toBeCloseTo(1.25, 12);
  });
  it('swapping two inputs of a kind is seen', () => {
    swapsMatter(linearSensor, { ...bar, lowValue: 1, supplyV: 4.8, inputV: 2.2 });
  });
});

describe('edges', () => {
  it('at a limit it reads, a step outside it faults', () => {
    expect(linearSensor({ ...bar, inputV: 0.25 })).toMatchObject({ fault: null });
    expect(linearSensor({ ...bar, inputV: 0.2499 })).toMatchObject({
      fault: 'low',
      value: null,
      supplyErrorValue: null,
    });
    expect(linearSensor({ ...bar, inputV: 4.75 }).fault).toBeNull();
    expect(linearSensor({ ...bar, inputV: 4.7501 }).fault).toBe('high');
  });
  it('refuses nonsense', () => {
    refusesNonsense(linearSensor, bar, {
      required: [
        ...(['lowV', 'highV', 'lowValue', 'highValue', 'ratedSupplyV', 'supplyV', 'inputV'] as const),
        ...(['lowFaultV', 'highFaultV'] as const),
      ],
    });
    expectInputError(() => linearSensor({ ...bar, highV: 0.5 }), 'highV', 'above');
    expectInputError(() => linearSensor({ ...bar, highValue: 0 }), 'highValue', 'order');
    expectInputError(() => linearSensor({ ...bar, lowFaultV: 0.6 }), 'lowFaultV', 'atMost');
    expectInputError(() => linearSensor({ ...bar, highFaultV: 4.4 }), 'highFaultV', 'atLeast');
    expectInputError(() => linearSensor({ ...bar, supplyV: 0 }), 'supplyV', 'above');
    expectInputError(() => linearSensor({ ...bar, output: 'digital' as never }), 'output', 'oneOf');
  });
});
