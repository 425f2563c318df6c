import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { rcFilter, type RcFilterInput, rcStep } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { swapsMatter } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';

const filter = (resistanceOhm: number, capacitanceF: number, over: Partial<RcFilterInput> = {}) =>
  rcFilter({ resistanceOhm, sourceOhm: 0, capacitanceF, loadOhm: null, ...over });

describe('published', () => {
  const lec = {
    source: 'lessons-electric-circuits',
    place: 'volume II, chapter 8, 500 Ω and 7 µF',
    status: 'published',
  } as const;
  computed('500 Ω, 7 µF, Hz', lec, () => {
    expectPrinted(filter(500, 7e-6).cornerHz, '45.473');
  });
  const derived = (place: string) => ({ source: 'circuit-theory', place, status: 'derived' }) as const;
  computed('the same with a 1 kΩ load, Hz', derived('source in parallel with the load'), () => {
    expectPrinted(filter(500, 7e-6, { loadOhm: 1000 }).cornerHz, '68.209');
  });
  const course = (place: string) => ({ source: 'circuit-tutorials', place, status: 'published' }) as const;
  const ac = filter(10000, 0.03e-6, { frequencyHz: 400, inV: 120 });
  computed('10 kΩ, 0.03 µF, Hz', course('figure 10.10'), () => {
    expectPrinted(ac.cornerHz, '530.52');
  });
  computed('120 V at 400 Hz, V', course('figure 10.10'), () => {
    expectPrinted(ac.outV!, '96');
  });
  computed('4.7 kΩ, 47 nF, Hz', course('solution of a low-pass exercise'), () => {
    expectPrinted(filter(4700, 47e-9).cornerHz, '720');
  });
  const textbook = { source: 'circuit-tutorials', place: '10 V on 4.7 kΩ and 47 nF', status: 'memory' } as const;
  for (const [frequencyHz, print] of [
    [100, '9.9'],
    [10000, '0.718'],
  ] as const) {
    computed(`10 V at ${frequencyHz} Hz, V`, textbook, () => {
      // Both are cut off after their digits: 9.9050 and 0.71862.
      expectPrinted(filter(4700, 47e-9, { frequencyHz, inV: 10 }).outV!, print, 0.7);
    });
  }
  computed('1 kΩ, 1 µF, Hz', course('low-pass filter page'), () => {
    expectPrinted(filter(1000, 1e-6).cornerHz, '159.15', 0.6);
  });
  // The page prints 6.04; the exact value is 6.0469, cut off.
  computed('5.6 kΩ, 4.7 µF, Hz', course('calculator page'), () => {
    expectPrinted(filter(5600, 4.7e-6).cornerHz, '6.04', 0.7);
  });
});

describe('independent', () => {
  it('the corner leaves 0.7071, −3.01 dB and 45°', () => {
    const { cornerHz } = filter(3300, 22e-9);
    const at = filter(3300, 22e-9, { frequencyHz: cornerHz });
    expectWithin(at.outFraction!, Math.SQRT1_2, 1e-12);
    expectPrinted(at.outDb!, '-3.0103');
    expectWithin(at.lagDeg!, 45, 1e-12);
  });
  it('rise and settling are those of the step', () => {
    const f = filter(10000, 1e-7);
    const cross = (thresholdV: number): number =>
      rcStep({ startV: 0, endV: 1, resistanceOhm: 10000, capacitanceF: 1e-7, timeS: 0, thresholdV }).thresholdS!;
    expectWithin(f.riseS, cross(0.9) - cross(0.1), 1e-9);
    expectWithin(f.settleS, cross(0.99), 1e-9);
    // The delay of a slow ramp: once settled it lags by one time constant.
    let v = 0;
    const dt = 1e-6;
    for (let i = 0; i < 20000; i++) v += ((i * dt - v) * dt) / f.timeConstantS;
    expectWithin(20000 * dt - v, f.delayS, 0.002);
  });
});

const ohm = fc.double({ min: 1, max: 1e6, noNaN: true });
const farad = fc.double({ min: 1e-12, max: 1e-3, noNaN: true });

describe('laws', () => {
  it('a source before it lowers the corner, a load behind it raises it', () => {
    fc.assert(
      fc.property(ohm, farad, ohm, (resistanceOhm, capacitanceF, otherOhm) => {
        const { cornerHz } = filter(resistanceOhm, capacitanceF);
        expect(filter(resistanceOhm, capacitanceF, { sourceOhm: otherOhm }).cornerHz).toBeLessThanOrEqual(cornerHz);
        const loaded = filter(resistanceOhm, capacitanceF, { loadOhm: otherOhm, frequencyHz: 0 });
        expect(loaded.cornerHz).toBeGreaterThanOrEqual(cornerHz);
        expectWithin(loaded.outFraction!, loaded.steadyFraction, 1e-12);
        expectWithin(loaded.cornerHz * loaded.timeConstantS * 2 * Math.PI, 1, 1e-12);
      }),
    );
  });
  it('does not mistake one input for another', () => {
    swapsMatter(
      rcFilter,
      { resistanceOhm: 1000, sourceOhm: 220, capacitanceF: 1e-7, loadOhm: 47000, frequencyHz: 500, inV: 5 },
      [['resistanceOhm', 'sourceOhm']],
    );
  });
});

describe('edges', () => {
  it('gives no share without a frequency, nor volts without volts', () => {
    expect(filter(1000, 1e-6)).toMatchObject({ outFraction: null, outDb: null, lagDeg: null, outV: null });
    expect(filter(1000, 1e-6, { frequencyHz: 0 })).toMatchObject({ outFraction: 1, outDb: 0, lagDeg: 0, outV: null });
  });
  it('refuses nonsense', () => {
    refusesNonsense<RcFilterInput>(
      rcFilter,
      { resistanceOhm: 1000, sourceOhm: 0, capacitanceF: 1e-6, loadOhm: null },
      {
        required: ['resistanceOhm', 'sourceOhm', 'capacitanceF'],
        optional: ['loadOhm', 'frequencyHz', 'inV'],
      },
    );
    expectInputError(() => filter(0, 1e-6), 'resistanceOhm', 'above');
    expectInputError(() => filter(100, 0), 'capacitanceF', 'above');
  });
});
