import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pulseI2t, type PulseI2tInput, type PulseShape } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { swapsMatter } from '../support/law.js';
import { computed, expectWithin, type Citation } from '../support/published.js';

const chart: Citation = { source: 'fuse-selection-guides', place: 'chart 1', status: 'published' };

/** i(t) of each shape, integrated by the trapezoidal rule. */
function integrated({ shape, peakA, durationS, startA = 0 }: PulseI2tInput): number {
  const end = shape === 'exponential' ? 20 * durationS : durationS;
  const i = (t: number): number => {
    const x = t / durationS;
    if (shape === 'square') return peakA;
    if (shape === 'ramp') return startA + (peakA - startA) * x;
    if (shape === 'half-sine') return peakA * Math.sin(Math.PI * x);
    if (shape === 'triangle') return peakA * (1 - Math.abs(2 * x - 1));
    if (shape === 'parabola') return peakA * x * x;
    return peakA * Math.exp(-x);
  };
  const n = 20000;
  let sum = 0;
  for (let k = 0; k < n; k++) sum += (i((k * end) / n) ** 2 + i(((k + 1) * end) / n) ** 2) / 2;
  return (sum * end) / n;
}

const SHAPES: readonly PulseShape[] = ['square', 'ramp', 'half-sine', 'triangle', 'parabola', 'exponential'];
const pulse = (shape: PulseShape, peakA: number, durationS: number, startA = 0): PulseI2tInput => ({
  shape,
  peakA,
  durationS,
  ...(shape === 'ramp' ? { startA } : {}),
});

describe('published', () => {
  const derived = { ...chart, status: 'derived' } as const;
  computed('20 A square for 50 ms: 20 A²s', derived, () =>
    expect(pulseI2t(pulse('square', 20, 0.05)).i2tA2s).toBeCloseTo(20, 12),
  );
  computed('60 A half sine of 100 ms: 180 A²s', derived, () =>
    expect(pulseI2t(pulse('half-sine', 60, 0.1)).i2tA2s).toBeCloseTo(180, 12),
  );
  // The chart's factor of peak² × time for each shape.
  for (const [shape, over] of [
    ['square', 1],
    ['half-sine', 2],
    ['triangle', 3],
    ['parabola', 5],
    ['exponential', 2],
    ['ramp', 3],
  ] as const) {
    computed(`${shape}: a ${over === 1 ? 'whole' : `1/${over}`} of peak² × time`, chart, () =>
      expectWithin(pulseI2t(pulse(shape, 30, 0.2)).i2tA2s, (30 * 30 * 0.2) / over, 1e-12),
    );
  }
  computed('ramp from 10 to 40 A: a third of (1600 + 400 + 100) × time', chart, () =>
    expectWithin(pulseI2t(pulse('ramp', 40, 0.3, 10)).i2tA2s, 0.1 * 2100, 1e-12),
  );
});

describe('independent', () => {
  for (const shape of SHAPES) {
    it(`${shape} agrees with the integral of its current`, () => {
      const input = pulse(shape, 37, 0.08, 12);
      expectWithin(pulseI2t(input).i2tA2s, integrated(input), 1e-5);
    });
  }
});

describe('laws', () => {
  it('goes with the square of the current and with the time, and the r.m.s. brings the same', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...SHAPES),
        fc.double({ min: 0.1, max: 500, noNaN: true }),
        fc.double({ min: 1e-4, max: 10, noNaN: true }),
        (shape, peakA, durationS) => {
          const one = pulseI2t(pulse(shape, peakA, durationS, peakA / 3));
          expectWithin(pulseI2t(pulse(shape, 2 * peakA, durationS, (2 * peakA) / 3)).i2tA2s, 4 * one.i2tA2s, 1e-12);
          expectWithin(pulseI2t(pulse(shape, peakA, 3 * durationS, peakA / 3)).i2tA2s, 3 * one.i2tA2s, 1e-12);
          expectWithin(one.rmsA ** 2 * durationS, one.i2tA2s, 1e-12);
        },
      ),
    );
  });
  it('a ramp from its peak is square', () =>
    expectWithin(pulseI2t(pulse('ramp', 9, 2, 9)).i2tA2s, pulseI2t(pulse('square', 9, 2)).i2tA2s, 1e-12));
  it('swaps are seen', () => swapsMatter(pulseI2t, pulse('ramp', 40, 0.3, 10)));
});

describe('edges', () => {
  it('refuses nonsense', () => {
    refusesNonsense(pulseI2t, pulse('square', 20, 0.05), { required: ['peakA', 'durationS'] });
    refusesNonsense(pulseI2t, pulse('ramp', 20, 0.05, 1), { required: ['peakA', 'durationS', 'startA'] });
    expectInputError(() => pulseI2t({ ...pulse('square', 20, 1), shape: 'round' as never }), 'shape', 'oneOf');
    expectInputError(() => pulseI2t({ ...pulse('square', 20, 1), startA: 3 }), 'startA', 'oneOf');
    expectInputError(() => pulseI2t(pulse('ramp', 20, 1, 20.01)), 'startA', 'atMost');
    expectInputError(() => pulseI2t(pulse('square', 0, 1)), 'peakA', 'above');
  });
});
