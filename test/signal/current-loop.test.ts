import { describe, expect, it } from 'vitest';
import { currentLoop, type CurrentLoopInput } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { swapsMatter } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';

const loop: CurrentLoopInput = {
  valueFraction: 0.5,
  lowA: 0.004,
  highA: 0.02,
  loadOhm: 250,
  lowestSupplyV: 18,
  wireOhm: 5,
  sensorLeastV: 8,
};

describe('published', () => {
  const lec = {
    source: 'lessons-electric-circuits',
    place: 'volume I, chapter 9, 4–20 mA into 250 Ω',
    status: 'published',
  } as const;
  for (const [percent, milli, volts] of [
    [0, '4.0', '1.0'],
    [10, '5.6', '1.4'],
    [20, '7.2', '1.8'],
    [25, '8.0', '2.0'],
    [30, '8.8', '2.2'],
    [40, '10.4', '2.6'],
    [50, '12.0', '3.0'],
    [60, '13.6', '3.4'],
    [70, '15.2', '3.8'],
    [75, '16.0', '4.0'],
    [80, '16.8', '4.2'],
    [90, '18.4', '4.6'],
    [100, '20.0', '5.0'],
  ] as const) {
    const at = currentLoop({ ...loop, valueFraction: percent / 100 });
    computed(`${percent} %, mA`, lec, () => {
      expectPrinted(at.currentA * 1000, milli);
    });
    computed(`${percent} %, V`, lec, () => {
      expectPrinted(at.outV, volts);
    });
  }
});

describe('laws', () => {
  it('the largest resistor leaves the sensor just what it needs', () => {
    const { mostLoadOhm } = currentLoop(loop);
    const at = currentLoop({ ...loop, loadOhm: mostLoadOhm });
    expectWithin(at.sensorV, 8, 1e-12);
    expect(currentLoop({ ...loop, loadOhm: mostLoadOhm * 1.01 }).checks[0]?.ok).toBe(false);
    expect(currentLoop({ ...loop, loadOhm: mostLoadOhm * 0.99 }).checks[0]?.ok).toBe(true);
  });
  it('does not mistake one input for another', () => {
    swapsMatter(currentLoop, loop);
  });
});

describe('edges', () => {
  it('takes both ends', () => {
    expect(currentLoop({ ...loop, valueFraction: 0 })).toMatchObject({ currentA: 0.004, startV: 1, endV: 5 });
    expect(currentLoop({ ...loop, lowA: 0, valueFraction: 0 }).outV).toBe(0);
  });
  it('refuses nonsense', () => {
    refusesNonsense(currentLoop, loop, { required: Object.keys(loop) as (keyof CurrentLoopInput)[] });
    expectInputError(() => currentLoop({ ...loop, valueFraction: 1.01 }), 'valueFraction', 'atMost');
    expectInputError(() => currentLoop({ ...loop, highA: 0.004 }), 'highA', 'above');
  });
});
