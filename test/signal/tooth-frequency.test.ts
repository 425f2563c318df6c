import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { toothFrequency, type ToothFrequencyInput } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { swapsMatter } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';

describe('published', () => {
  const notes = (place: string) => ({ source: 'speed-sensor-notes', place, status: 'published' }) as const;
  computed('30 teeth at 4000 rpm, Hz', notes('handbook, p. 8'), () => {
    expectPrinted(toothFrequency({ teeth: 30, turnRatio: 1, speedRpm: 4000 }).frequencyHz, '2000');
  });
  computed('rpm from the period of n pulses a turn: 60 ÷ (t n)', notes('square wave period'), () => {
    const { speedRpm, periodS } = toothFrequency({ teeth: 24, turnRatio: 1, frequencyHz: 730 });
    expectWithin(speedRpm, 60 / (periodS * 24), 1e-12);
  });
  computed('1 Hz on a wheel ring of 44 teeth, rpm', notes('wheel sensor, 1 to 2000 Hz'), () => {
    const { leastRpm, mostRpm } = toothFrequency({
      teeth: 44,
      turnRatio: 1,
      speedRpm: 100,
      inputLeastHz: 1,
      inputMostHz: 2000,
    });
    expectPrinted(leastRpm!, '1.3636');
    expectPrinted(mostRpm!, '2727.27');
  });
  const derived = (place: string) => ({ source: 'circuit-theory', place, status: 'derived' }) as const;
  computed('44 teeth, 1.95 m, 100 km/h, Hz', derived('f = v z ÷ (3.6 U)'), () => {
    expectPrinted(
      toothFrequency({ teeth: 44, turnRatio: 1, speedKmh: 100, circumferenceM: 1.95 }).frequencyHz,
      '626.781',
    );
  });
  for (const rpm of ['250', '3000', '7200']) {
    computed(`60 teeth at ${rpm} rpm: as many Hz`, derived('worked case: 60-tooth wheel'), () => {
      expectPrinted(toothFrequency({ teeth: 60, turnRatio: 1, speedRpm: Number(rpm) }).frequencyHz, rpm);
    });
  }
});

describe('independent', () => {
  it('counts the teeth of one turn by hand, missing ones and all', () => {
    // One turn at 1200 rpm lasts 50 ms: 60 places, the last two empty.
    const r = toothFrequency({ teeth: 60, missingTeeth: 2, turnRatio: 1, speedRpm: 1200, toothFraction: 0.4 });
    const at = Array.from({ length: 58 }, (_, i) => (i * 0.05) / 60);
    const steps = [...at, 0.05].map((t, i, all) => (i === 0 ? 0 : t - all[i - 1]!)).slice(1);
    expectWithin(r.periodS, Math.min(...steps), 1e-9);
    expectWithin(r.longestPeriodS, Math.max(...steps), 1e-9);
    expectWithin(r.meanHz, 58 / 0.05, 1e-12);
    expect(r.turnPulses).toBe(58);
    expectWithin(r.toothS! + r.slotS!, r.periodS, 1e-12);
  });
  it('a cam wheel turns half, so its pitch is twice as many degrees of the crank', () => {
    const cam = toothFrequency({ teeth: 4, turnRatio: 0.5, speedRpm: 6000 });
    expect(cam).toMatchObject({ frequencyHz: 200, wheelPitchDeg: 90, shaftPitchDeg: 180 });
  });
  it('a turbine sensor that divides by eight', () => {
    const turbine = toothFrequency({ teeth: 11, turnRatio: 1, speedRpm: 160000, teethPerPulseCount: 8 });
    expectWithin(turbine.frequencyHz, (160000 / 60) * (11 / 8), 1e-12);
    expectWithin(turbine.turnPulses, 11 / 8, 1e-12);
  });
});

describe('laws', () => {
  it('speed and frequency lead to one another', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 200 }),
        fc.double({ min: 0.1, max: 5, noNaN: true }),
        fc.double({ min: 1, max: 2e5, noNaN: true }),
        fc.double({ min: 0.3, max: 4, noNaN: true }),
        (teeth, turnRatio, speedRpm, circumferenceM) => {
          const there = toothFrequency({ teeth, turnRatio, speedRpm, circumferenceM });
          const back = toothFrequency({ teeth, turnRatio, frequencyHz: there.frequencyHz });
          const road = toothFrequency({ teeth, turnRatio, speedKmh: there.speedKmh!, circumferenceM });
          expectWithin(back.speedRpm, speedRpm, 1e-12);
          expectWithin(road.frequencyHz, there.frequencyHz, 1e-12);
          expectWithin(there.meanHz, there.frequencyHz, 1e-12);
        },
      ),
    );
  });
  it('does not mistake one input for another', () => {
    swapsMatter(toothFrequency, {
      teeth: 36,
      missingTeeth: 1,
      turnRatio: 1,
      speedKmh: 90,
      circumferenceM: 1.9,
      inputMostHz: 5000,
      inputLeastHz: 10,
    });
  });
});

describe('edges', () => {
  const input: ToothFrequencyInput = { teeth: 36, missingTeeth: 1, turnRatio: 1, speedRpm: 6000 };
  it('judges the input by the fastest tooth and by the gap', () => {
    const fast = toothFrequency({ ...input, inputMostHz: 3600, inputLeastHz: 5 });
    expect(fast.checks.map((check) => check.ok)).toEqual([true, true]);
    expect(fast.decidedBy).toBe('frequency that the input can follow');
    expect(toothFrequency({ ...input, inputMostHz: 3599 }).checks[0]?.ok).toBe(false);
    // 17 rpm: 10.2 Hz between teeth, but 5.1 Hz across the gap.
    const slow = toothFrequency({ ...input, speedRpm: 17, inputLeastHz: 6 });
    expect(slow.checks[0]).toMatchObject({ ok: false });
    expectWithin(slow.leastRpm!, 20, 1e-12);
    expect(toothFrequency(input)).toMatchObject({
      checks: [],
      decidedBy: null,
      mostRpm: null,
      leastRpm: null,
      toothS: null,
      speedKmh: null,
    });
  });
  it('refuses nonsense', () => {
    refusesNonsense(toothFrequency, input, {
      required: ['teeth', 'turnRatio'],
      optional: [
        'missingTeeth',
        'speedRpm',
        'circumferenceM',
        'teethPerPulseCount',
        'toothFraction',
        'inputMostHz',
        'inputLeastHz',
      ],
    });
    expectInputError(() => toothFrequency({ teeth: 36, turnRatio: 1 }), 'speedRpm', 'oneOfFields');
    expectInputError(() => toothFrequency({ ...input, frequencyHz: 1 }), 'speedRpm', 'oneOfFields');
    expectInputError(() => toothFrequency({ teeth: 36, turnRatio: 1, speedKmh: 50 }), 'circumferenceM', 'missing');
    expectInputError(() => toothFrequency({ ...input, missingTeeth: 36 }), 'missingTeeth', 'below');
    expectInputError(() => toothFrequency({ ...input, teethPerPulseCount: 2 }), 'teethPerPulseCount', 'range');
    expectInputError(() => toothFrequency({ ...input, teeth: 3.5 }), 'teeth', 'integer');
    expectInputError(() => toothFrequency({ ...input, toothFraction: 1 }), 'toothFraction', 'atMost');
  });
});
