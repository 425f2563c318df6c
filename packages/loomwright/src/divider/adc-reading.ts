import { InputError } from '../error/index.js';
import { needEarthly, needMoreThan } from '../error/bounded.js';
import { needBetween, needInput, needInteger, needObject, needOneOf, needText } from '../error/guard.js';
import { needTolerance } from './guard.js';

/** How volts at the pin become what the user reads: two points of a straight line. */
export interface AdcScale {
  readonly lowV: number;
  readonly highV: number;
  /** What is shown at `lowV` and at `highV`, in `unit`. */
  readonly lowValue: number;
  readonly highValue: number;
  readonly unit: string;
}

export interface AdcReadingInput {
  /** Volts at the pin; give this or `readCount`. */
  readonly pinV?: number;
  /** A count that was read; give this or `pinV`. */
  readonly readCount?: number;
  /** Reference of the converter in V, above 0: the volts of its full scale. */
  readonly referenceV: number;
  /** Bits of the converter, 1 to 32. */
  readonly bits: number;
  /** What full scale is divided by. Converters divide by 2ⁿ; many textbooks and programs by 2ⁿ − 1. */
  readonly divisor: '2^n' | '2^n-1';
  /** `ratiometric` when the sensor is fed from the same reference, so that its error cancels; else `absolute`. */
  readonly reference: 'ratiometric' | 'absolute';
  /** Tolerance of the reference as a fraction, 0 to below 1; required for an absolute one. */
  readonly referenceToleranceFraction?: number;
  /** Whether a converter counts to the nearest step or down to the last full one; `nearest` unless given. */
  readonly rounding?: 'nearest' | 'down';
  /** Turns volts into the user's unit. */
  readonly scale?: AdcScale;
  /** Step that is wanted in the user's unit, above 0: gives the bits for it. */
  readonly wantedStepValue?: number;
}

export interface AdcReadingResult {
  /** The count, held within 0 and `mostCount`; see `overRange`. */
  readonly count: number;
  /** The count before rounding and limits. */
  readonly exactCount: number;
  /** The greatest count, 2ⁿ − 1. */
  readonly mostCount: number;
  /** Whether the pin is outside what the converter can tell. */
  readonly overRange: 'no' | 'below' | 'above';
  /** Volts of one count. */
  readonly stepV: number;
  /** Volts that the count stands for. */
  readonly readV: number;
  /** Most that rounding can hide: half a step, or a whole one when it rounds down. */
  readonly roundingErrorV: number;
  /** Root mean square of ideal rounding, step ÷ √12. */
  readonly roundingNoiseV: number;
  /** Most that the reference can be wrong by at these volts; 0 when ratiometric. */
  readonly referenceErrorV: number;
  /** Both together. */
  readonly errorV: number;
  /** The same in the user's unit, or null without a scale. */
  readonly value: number | null;
  readonly stepValue: number | null;
  readonly errorValue: number | null;
  readonly unit: string | null;
  /** Bits that make a step no larger than the wanted one, or null where none was given. */
  readonly neededBits: number | null;
}

/**
 * What a converter makes of volts at its pin, and how finely, in the unit that the user reads.
 *
 * $$N = \left[\frac{V}{V_\mathrm{ref}}\,D\right] \qquad D = 2^n \text{ or } 2^n - 1$$
 *
 * @param input pin volts or count, reference, bits, divisor, scale
 * @returns count, volts of a step and of the reading, errors, and all of it in the user's unit
 * @throws InputError when a field is missing or out of range, or neither or both of volts and count are given
 * @source lessons-electric-circuits, volume IV, chapter 13 (divides by 2ⁿ − 1); circuit-theory (step ÷ √12)
 * @example adcReading({ pinV: 2.5, referenceV: 5, bits: 10, divisor: '2^n', reference: 'ratiometric' }).count //=> 512
 */
export function adcReading(input: AdcReadingInput): AdcReadingResult {
  const fn = 'adcReading';
  needInput(fn, input);
  const { referenceV, bits, divisor, reference, rounding = 'nearest', scale, wantedStepValue } = input;
  needMoreThan(fn, 'referenceV', referenceV);
  needInteger(fn, 'bits', bits, 1);
  needBetween(fn, 'bits', bits, 1, 32);
  needOneOf(fn, 'divisor', divisor, ['2^n', '2^n-1']);
  needOneOf(fn, 'reference', reference, ['ratiometric', 'absolute']);
  needOneOf(fn, 'rounding', rounding, ['nearest', 'down']);
  const mostCount = 2 ** bits - 1;
  const stepV = referenceV / (divisor === '2^n' ? mostCount + 1 : mostCount);
  const exactCount = exactCountOf(fn, input, stepV, mostCount);
  // The last bits of a quotient must not turn 3.0 into 2 when rounding down.
  const whole = rounding === 'nearest' ? Math.round(exactCount) : Math.floor(exactCount * (1 + 4 * Number.EPSILON));
  const count = Math.min(mostCount, Math.max(0, whole));
  const pinV = exactCount * stepV;
  const tolerance = reference === 'ratiometric' ? 0 : toleranceOf(fn, input);
  const roundingErrorV = rounding === 'nearest' ? stepV / 2 : stepV;
  const referenceErrorV = (Math.abs(pinV) * tolerance) / (1 - tolerance);
  const errorV = roundingErrorV + referenceErrorV;
  const valuePerV = scale === undefined ? null : slopeOf(fn, scale);
  const readV = count * stepV;
  const stepValue = valuePerV === null ? null : Math.abs(stepV * valuePerV);
  return {
    count,
    exactCount,
    mostCount,
    overRange: pinV < 0 ? 'below' : pinV > referenceV ? 'above' : 'no',
    stepV,
    readV,
    roundingErrorV,
    roundingNoiseV: stepV / Math.sqrt(12),
    referenceErrorV,
    errorV,
    value: scale === undefined || valuePerV === null ? null : scale.lowValue + (readV - scale.lowV) * valuePerV,
    stepValue,
    errorValue: valuePerV === null ? null : Math.abs(errorV * valuePerV),
    unit: scale === undefined ? null : scale.unit,
    neededBits: valuePerV === null ? null : bitsFor(fn, input, Math.abs(referenceV * valuePerV), wantedStepValue),
  };
}

/** The unrounded count, from volts or from a count that was read. */
function exactCountOf(fn: string, input: AdcReadingInput, stepV: number, mostCount: number): number {
  const { pinV, readCount } = input;
  if ((pinV === undefined) === (readCount === undefined)) {
    throw new InputError(fn, 'pinV', 'oneOfFields', pinV, 'or readCount must be given, one only');
  }
  if (pinV !== undefined) {
    needEarthly(fn, 'pinV', pinV);
    return pinV / stepV;
  }
  needInteger(fn, 'readCount', readCount as number);
  needBetween(fn, 'readCount', readCount as number, 0, mostCount);
  return readCount as number;
}

function toleranceOf(fn: string, { referenceToleranceFraction }: AdcReadingInput): number {
  needTolerance(fn, 'referenceToleranceFraction', referenceToleranceFraction as number);
  return referenceToleranceFraction as number;
}

/** User's units in one volt. */
function slopeOf(fn: string, scale: AdcScale): number {
  needObject(fn, 'scale', scale);
  needEarthly(fn, 'scale.lowV', scale.lowV);
  needMoreThan(fn, 'scale.highV', scale.highV, scale.lowV);
  needEarthly(fn, 'scale.lowValue', scale.lowValue);
  needEarthly(fn, 'scale.highValue', scale.highValue);
  needText(fn, 'scale.unit', scale.unit);
  return (scale.highValue - scale.lowValue) / (scale.highV - scale.lowV);
}

/** The fewest bits whose step over the whole reference is no larger than the wanted one. */
function bitsFor(fn: string, input: AdcReadingInput, spanValue: number, wanted: number | undefined): number | null {
  if (wanted === undefined) return null;
  needMoreThan(fn, 'wantedStepValue', wanted);
  const steps = (spanValue / wanted) * (1 - 1e-12);
  for (let n = 1; n <= 64; n++) if ((input.divisor === '2^n' ? 2 ** n : 2 ** n - 1) >= steps) return n;
  return null;
}
