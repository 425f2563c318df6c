import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { type FaultBands, faultBands, type FaultBandsInput, fitSteinhartHart } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenly, swapsMatter } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';
import { simulate } from '../support/simulator.js';

const { curve } = fitSteinhartHart({
  points: [
    { tempC: 0, resistanceOhm: 5900 },
    { tempC: 50, resistanceOhm: 834 },
    { tempC: 100, resistanceOhm: 186 },
  ],
});
const coolant: FaultBandsInput = {
  side: 'sensor-to-ground',
  supplyV: 5,
  pullOhm: 2490,
  pullToleranceFraction: 0.01,
  lowestSensorOhm: 89,
  highestSensorOhm: 45313,
  shortMostOhm: 5,
  openLeastOhm: null,
  guardV: 0.03,
};
const bands = (input: FaultBandsInput): FaultBands => {
  const result = faultBands(input);
  const found = result.possible ? result : result.nearest;
  if (found === null) throw new Error('no bands');
  return found;
};

describe('published', () => {
  const cite = { source: 'circuit-theory', place: 'Ohm’s law, worked by hand', status: 'derived' } as const;
  const set = { ...coolant, lowLimitV: 0.1, highLimitV: 4.8, curve };
  const with2490 = bands(set);
  const with1000 = bands({ ...set, pullOhm: 1000 });
  computed('4.8 V behind 2.49 kΩ is 59.8 kΩ', cite, () => expectPrinted(with2490.highLimitOhm / 1000, '59.8'));
  computed('which is −44.8 °C', cite, () => expectPrinted(with2490.highLimitTempC!, '-44.8'));
  computed('0.10 V behind 2.49 kΩ is 50.8 Ω', cite, () => expectPrinted(with2490.lowLimitOhm, '50.8'));
  computed('which is 155.7 °C', cite, () => expectPrinted(with2490.lowLimitTempC!, '155.7'));
  computed('4.8 V behind 1.0 kΩ is 24 kΩ', cite, () => expectPrinted(with1000.highLimitOhm / 1000, '24'));
  computed('which is −28.6 °C', cite, () => expectPrinted(with1000.highLimitTempC!, '-28.6'));
  it('the limit of one pull-up takes a healthy sensor behind another for a broken wire', () => {
    expect(faultBands(set).possible).toBe(true);
    const other = faultBands({ ...set, pullOhm: 1000 });
    expect(other).toMatchObject({ possible: false, code: 'healthy-reads-as-fault' });
    expect(other.possible || other.because).toContain('room above the healthy readings');
  });
});

describe('independent', () => {
  it.each(['sensor-to-ground', 'sensor-to-supply'] as const)(
    '%s: a circuit simulator at every corner',
    async (side) => {
      const input = { ...coolant, side, openLeastOhm: 1e6, guardV: 0 };
      const found = bands(input);
      const lines: string[] = ['vs s 0 5'];
      const at: string[] = [];
      for (const pull of [0.99, 1.01]) {
        for (const ohm of [89, 45313, 5, 1e6]) {
          const n = `p${at.length}`;
          const [upper, lower] = side === 'sensor-to-ground' ? [2490 * pull, ohm] : [ohm, 2490 * pull];
          lines.push(`ru${n} s ${n} ${upper}`, `rl${n} ${n} 0 ${lower}`);
          at.push(n);
        }
      }
      const v = await simulate([...lines, '.op'].join('\n'));
      const read = (k: number): number => v[`v(p${k})`]![0]!;
      const healthy = [0, 1, 4, 5].map(read);
      const short = [2, 6].map(read);
      const open = [3, 7].map(read);
      expectWithin(found.healthyLowV, Math.min(...healthy), 1e-9);
      expectWithin(found.healthyHighV, Math.max(...healthy), 1e-9);
      const [below, above] = side === 'sensor-to-ground' ? [short, open] : [open, short];
      expectWithin(found.lowFaultV, Math.max(...below), 1e-9);
      expectWithin(found.highFaultV, Math.min(...above), 1e-9);
      expect(found.lowFault).toBe(side === 'sensor-to-ground' ? 'short' : 'open');
    },
  );
});

describe('laws', () => {
  it('limits of its own lie between fault and health, and what reads at a limit is the resistance named', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 100, max: 1e5, noNaN: true }),
        evenly(0, 0.2),
        fc.constantFrom('sensor-to-ground', 'sensor-to-supply'),
        (pullOhm, pullToleranceFraction, side) => {
          const b = bands({ ...coolant, pullOhm, pullToleranceFraction, side });
          expect(b.lowLimitV).toBeCloseTo((b.lowFaultV + b.healthyLowV) / 2, 12);
          expect(b.highLimitV).toBeCloseTo((b.highFaultV + b.healthyHighV) / 2, 12);
          for (const [v, ohm] of [
            [b.lowLimitV, b.lowLimitOhm],
            [b.highLimitV, b.highLimitOhm],
          ] as const) {
            const share = side === 'sensor-to-ground' ? ohm / (ohm + pullOhm) : pullOhm / (ohm + pullOhm);
            expectWithin(5 * share, v, 1e-9);
          }
        },
      ),
    );
  });
  it('follow the supply', () => {
    const one = bands(coolant);
    const two = bands({ ...coolant, supplyV: 10 });
    expectWithin(two.lowLimitV, 2 * one.lowLimitV, 1e-12);
    expect(two.lowLimitFraction).toBeCloseTo(one.lowLimitFraction, 12);
    expectWithin(two.highLimitOhm, one.highLimitOhm, 1e-12);
  });
  it('sides mirror each other', () => {
    const ground = bands(coolant);
    const supply = bands({ ...coolant, side: 'sensor-to-supply' });
    expect(supply.healthyLowV).toBeCloseTo(5 - ground.healthyHighV, 12);
    expect(supply.highFaultV).toBeCloseTo(5 - ground.lowFaultV, 12);
  });
  it('swapping two inputs of a kind is seen', () => {
    swapsMatter(faultBands, { ...coolant, openLeastOhm: 2e6, lowLimitV: 0.1, highLimitV: 4.9 });
  });
});

describe('edges', () => {
  it('damp across a broken wire hides it from a sensor of many kilohms', () => {
    expect(faultBands({ ...coolant, openLeastOhm: 30000 })).toMatchObject({ possible: false });
    const set = { ...coolant, openLeastOhm: 30000, lowLimitV: 0.1, highLimitV: 4.9 };
    expect(faultBands({ ...set, guardV: 0 })).toMatchObject({ possible: false, code: 'fault-reads-as-healthy' });
  });
  it('exactly the guard is enough', () => {
    const { checks } = bands({ ...coolant, guardV: 0 });
    const least = Math.min(...checks.map(({ value }) => value!));
    expect(faultBands({ ...coolant, guardV: least }).possible).toBe(true);
    expect(faultBands({ ...coolant, guardV: least * 1.000001 }).possible).toBe(false);
  });
  it('refuses nonsense', () => {
    const input = { ...coolant, openLeastOhm: 1e6, lowLimitV: 0.1, highLimitV: 4.8 };
    refusesNonsense(faultBands, input, {
      required: [
        ...(['supplyV', 'pullOhm', 'pullToleranceFraction', 'lowestSensorOhm', 'highestSensorOhm'] as const),
        ...(['shortMostOhm', 'openLeastOhm', 'guardV', 'lowLimitV', 'highLimitV'] as const),
      ],
    });
    expectInputError(() => faultBands({ ...input, side: 'up' as never }), 'side', 'oneOf');
    expectInputError(() => faultBands({ ...input, pullToleranceFraction: 1 }), 'pullToleranceFraction', 'below');
    expectInputError(() => faultBands({ ...input, highestSensorOhm: 89 }), 'highestSensorOhm', 'above');
    expectInputError(() => faultBands({ ...input, highLimitV: 0.1 }), 'highLimitV', 'above');
    expectInputError(() => faultBands({ ...input, highLimitV: 5 }), 'highLimitV', 'below');
    expectInputError(() => faultBands({ ...input, shortMostOhm: -1 }), 'shortMostOhm', 'atLeast');
    expect(() => faultBands({ ...input, curve: {} as never })).toThrow('curve');
  });
});
