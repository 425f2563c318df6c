import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { rcStep, type RcStepInput, thevenin } from 'loomwright';
import { refusesNonsense } from '../support/edge.js';
import { evenly, swapsMatter } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';

const charge = (timeS: number) => rcStep({ startV: 0, endV: 15, resistanceOhm: 10000, capacitanceF: 100e-6, timeS });

describe('published', () => {
  const lec = (place: string) =>
    ({ source: 'lessons-electric-circuits', place: `volume I, chapter 16, ${place}`, status: 'published' }) as const;
  const table = lec('15 V, 10 kΩ, 100 µF');
  for (const [timeS, volts] of [
    [0.5, '5.902'],
    [1, '9.482'],
    [2, '12.970'],
    [3, '14.253'],
    [4, '14.725'],
    [5, '14.899'],
    [6, '14.963'],
    [7.25, '14.989'],
  ] as const) {
    computed(`volts after ${timeS} s`, table, () => {
      expectPrinted(charge(timeS).outV, volts);
    });
  }
  for (const [timeS, micro] of [
    [0, '1500'],
    [0.5, '909.8'],
    [1, '551.8'],
    [2, '203.0'],
    [3, '74.68'],
    [4, '27.47'],
    [5, '10.11'],
    [6, '3.718'],
    [7.25, '1.065'],
  ] as const) {
    computed(`µA after ${timeS} s`, table, () => {
      expectPrinted(charge(timeS).currentA * 1e6, micro);
    });
  }
  computed('time constant, s', table, () => {
    expectPrinted(charge(0).timeConstantS, '1');
  });
  const complex = lec('20 V through 2 k and 3 k, 500 Ω, 100 µF');
  const { emfV, sourceOhm } = thevenin({
    branches: [
      { emfV: 20, resistanceOhm: 5000 },
      { emfV: 0, resistanceOhm: 500 },
    ],
  });
  const at = rcStep({ startV: 0, endV: emfV, resistanceOhm: sourceOhm, capacitanceF: 100e-6, timeS: 0.06 });
  computed('time constant, ms', complex, () => {
    expectPrinted(at.timeConstantS * 1000, '45.4545');
  });
  computed('volts after 60 ms', complex, () => {
    expectPrinted(at.outV, '1.3325');
  });
});

const volts = evenly(-30, 30);

describe('laws', () => {
  it('meets its threshold at the time that it says', () => {
    fc.assert(
      fc.property(volts, volts, evenly(0.01, 0.99), (startV, endV, share) => {
        fc.pre(Math.abs(endV - startV) > 1e-6);
        const input = { startV, endV, resistanceOhm: 4700, capacitanceF: 1e-8, timeS: 0 };
        const thresholdV = startV + share * (endV - startV);
        const { thresholdS, thresholdCode } = rcStep({ ...input, thresholdV });
        expect(thresholdCode).toBe('crossed');
        expect(Math.abs(rcStep({ ...input, timeS: thresholdS! }).outV - thresholdV)).toBeLessThan(1e-9);
        expectWithin(thresholdS!, -4.7e-5 * Math.log(1 - share), 1e-3);
      }),
    );
  });
  it('does not mistake one input for another', () => {
    swapsMatter(rcStep, { startV: 1, endV: 12, resistanceOhm: 1000, capacitanceF: 1e-6, timeS: 1e-3, thresholdV: 6 });
  });
});

describe('edges', () => {
  const input: RcStepInput = { startV: 0, endV: 5, resistanceOhm: 1000, capacitanceF: 1e-6, timeS: 0 };
  it('says when a threshold is never met', () => {
    expect(rcStep({ ...input, thresholdV: 5 })).toMatchObject({ thresholdS: null, thresholdCode: 'never' });
    expect(rcStep({ ...input, thresholdV: 6 })).toMatchObject({ thresholdS: null, thresholdCode: 'never' });
    expect(rcStep({ ...input, thresholdV: -1 })).toMatchObject({ thresholdS: null, thresholdCode: 'never' });
    expect(rcStep({ ...input, thresholdV: 0 })).toMatchObject({ thresholdS: 0, thresholdCode: 'crossed' });
    expect(rcStep(input)).toMatchObject({ thresholdS: null, thresholdCode: 'not-asked', outV: 0 });
  });
  it('refuses nonsense', () => {
    refusesNonsense(rcStep, input, {
      required: ['startV', 'endV', 'resistanceOhm', 'capacitanceF', 'timeS'],
      optional: ['thresholdV'],
    });
  });
});
