import { InputError } from '../error/index.js';
import { needInput, needOneOf } from '../error/guard.js';
import { needMoreThan, needNoLessThan } from '../error/bounded.js';

/**
 * Shape of a pulse of current. `square`; `ramp` from `startA` to the peak; `half-sine`; `triangle` up and down again;
 * `parabola`, i = k t²; `exponential` decay, whose duration is its time constant.
 */
export type PulseShape = 'square' | 'ramp' | 'half-sine' | 'triangle' | 'parabola' | 'exponential';

/** The words of `PulseShape`, for guards. */
const PULSE_SHAPES: readonly PulseShape[] = ['square', 'ramp', 'half-sine', 'triangle', 'parabola', 'exponential'];

export interface PulseI2tInput {
  readonly shape: PulseShape;
  /** Highest current in A, above 0. */
  readonly peakA: number;
  /** Length of the pulse in s, above 0; of an exponential decay its time constant. */
  readonly durationS: number;
  /** Current in A at the other end of a ramp, 0 to the peak; with `ramp` only. */
  readonly startA?: number;
}

export interface PulseI2tResult {
  /** Integral of the squared current in A²s. */
  readonly i2tA2s: number;
  /** Steady current in A that brings as much in the same time. */
  readonly rmsA: number;
}

/** Peak² × duration over I²t of each shape but the ramp: whole numbers, which a bundler need not work out. */
const PARTS = { square: 1, 'half-sine': 2, triangle: 3, parabola: 5, exponential: 2 } as const;

/**
 * I²t of one pulse by its shape: the heat that an inrush brings to a fuse.
 *
 * Use it for pulses so short that no heat leaves the fuse element; longer ones then come out on the careful side. For
 * an exponential decay the integral runs to the end of the decay.
 *
 * $$I^2t = i_p^2 t\ (\text{square}),\quad \tfrac13(i_p^2 + i_p i_b + i_b^2)t\ (\text{ramp}),\quad
 * \tfrac12 i_p^2 t\ (\text{half sine, decay}),\quad \tfrac13 i_p^2 t\ (\text{triangle}),\quad
 * \tfrac15 i_p^2 t\ (i = kt^2)$$
 *
 * @param input shape, peak, duration
 * @returns I²t in A²s and the r.m.s. current over the duration in A
 * @throws InputError when a field is missing or out of range, or `startA` is given without a ramp
 * @source fuse-selection-guides, chart 1
 * @example pulseI2t({ shape: 'half-sine', peakA: 60, durationS: 0.1 }).i2tA2s //=> 180
 */
export function pulseI2t(input: PulseI2tInput): PulseI2tResult {
  needInput('pulseI2t', input);
  return pulseOf('pulseI2t', input, '');
}

/** The same for a pulse inside a larger input; `at` is the path to it. */
export function pulseOf(fn: string, pulse: PulseI2tInput, at: string): PulseI2tResult {
  const { shape, peakA, durationS, startA } = pulse;
  needOneOf(fn, `${at}shape`, shape, PULSE_SHAPES);
  needMoreThan(fn, `${at}peakA`, peakA);
  needMoreThan(fn, `${at}durationS`, durationS);
  let share: number;
  if (shape === 'ramp') {
    needNoLessThan(fn, `${at}startA`, startA as number);
    if ((startA as number) > peakA) {
      throw new InputError(fn, `${at}startA`, 'atMost', startA, `must be at most the peak of ${peakA}`);
    }
    const part = (startA as number) / peakA;
    share = (1 + part + part * part) / 3;
  } else {
    if (startA !== undefined) {
      throw new InputError(fn, `${at}startA`, 'oneOf', startA, 'must be left out: only a ramp has one');
    }
    share = 1 / PARTS[shape];
  }
  return { i2tA2s: share * peakA * peakA * durationS, rmsA: peakA * Math.sqrt(share) };
}
