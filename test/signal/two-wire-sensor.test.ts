import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { twoWireSensor, type TwoWireSensorInput } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenlyWithEnds, swapsMatter } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';

const wheel: TwoWireSensorInput = {
  lowestSupplyV: 9,
  loadOhm: 100,
  loadToleranceFraction: 0,
  lowLeastA: 0.0059,
  lowMostA: 0.0084,
  highLeastA: 0.0118,
  highMostA: 0.0168,
  sensorLeastV: 4.5,
  wireOhm: 0,
  guardV: 0.1,
};

describe('published', () => {
  const manual = {
    source: 'speed-sensor-notes',
    place: 'wheel speed sensor, 7 (5.9–8.4) and 14 (11.8–16.8) mA on 100 Ω',
    status: 'published',
  } as const;
  const r = twoWireSensor(wheel);
  const nominal = twoWireSensor({ ...wheel, lowLeastA: 0.007, lowMostA: 0.007, highLeastA: 0.014, highMostA: 0.014 });
  for (const [name, value, print] of [
    ['low, least', r.lowLeastV, '0.59'],
    ['low, most', r.lowMostV, '0.84'],
    ['high, least', r.highLeastV, '1.18'],
    ['high, most', r.highMostV, '1.68'],
    ['low, as named', nominal.lowMostV, '0.70'],
    ['high, as named', nominal.highMostV, '1.40'],
  ] as const) {
    computed(`${name}, V on 100 Ω`, manual, () => {
      expectPrinted(value, print);
    });
  }
});

describe('laws', () => {
  it('a wider resistor closes the gap, and the threshold lies in its middle', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 20, max: 400, noNaN: true }),
        evenlyWithEnds(0, 0.15),
        (loadOhm, loadToleranceFraction) => {
          const r = twoWireSensor({ ...wheel, loadOhm, loadToleranceFraction });
          const exact = twoWireSensor({ ...wheel, loadOhm });
          expect(r.gapV).toBeLessThanOrEqual(exact.gapV + 1e-12);
          expectWithin(r.thresholdV - r.lowMostV, r.gapV / 2, 1e-9);
          expect(r.openBelowV).toBeLessThan(r.lowLeastV);
          expectWithin(r.sensorV, 9 - 0.0168 * loadOhm * (1 + loadToleranceFraction), 1e-12);
        },
      ),
    );
  });
  it('does not mistake one input for another', () => {
    swapsMatter(twoWireSensor, { ...wheel, loadToleranceFraction: 0.01, wireOhm: 2 });
  });
});

describe('edges', () => {
  it('finds a resistor that starves the sensor, and a gap that is too small', () => {
    const starved = twoWireSensor({ ...wheel, loadOhm: 330 });
    expect(starved.decidedBy).toBe('volts left for the sensor');
    expect(twoWireSensor({ ...wheel, loadOhm: 20 }).decidedBy).toBe('room between low and high');
  });
  it('refuses nonsense', () => {
    refusesNonsense(twoWireSensor, wheel, { required: Object.keys(wheel) as (keyof TwoWireSensorInput)[] });
    expectInputError(() => twoWireSensor({ ...wheel, highLeastA: 0.008 }), 'highLeastA', 'above');
    expectInputError(() => twoWireSensor({ ...wheel, loadToleranceFraction: 1 }), 'loadToleranceFraction', 'below');
  });
});
