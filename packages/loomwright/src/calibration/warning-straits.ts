import { type CalibrationCell, clamped } from '../number/cells.js';
import type { Strait } from './limit-chain.js';

/** What makes a reading late or wrong. */
export interface WarningErrors {
  /** Most that the reading is off to either side, noise included. */
  readonly errorValue: number;
  /** Fastest that what is warned of moves towards its limit, a second. */
  readonly ratePerS: number;
  /** Filter of its reading, and how long it must stay beyond the limit before the alarm comes, in s. */
  readonly delayS: number;
  readonly debounceS: number;
  /** The same of the other quantity, and how fast that moves either way. */
  readonly otherErrorValue: number;
  readonly otherRatePerS: number;
  readonly otherDelayS: number;
}

/**
 * Between what a warning from below must lie, by the reading of the other quantity: above `low` the alarm is in time,
 * below `high` a healthy engine raises none. What is looked up may be off sideways, so each is the worst in a window.
 * The places are all at which either bends, and those asked for: between them a straight line that holds at both ends
 * holds throughout, because the greatest of straight lines only bends up and the least only down.
 */
export function straitsOf(
  healthy: readonly CalibrationCell[],
  limit: readonly CalibrationCell[],
  errors: WarningErrors,
  places: readonly number[],
): readonly Strait[] {
  const { errorValue, ratePerS, delayS, debounceS, otherErrorValue, otherRatePerS, otherDelayS } = errors;
  const calm = otherErrorValue + otherRatePerS * Math.abs(delayS - otherDelayS);
  const late = otherErrorValue + otherRatePerS * (otherDelayS + debounceS);
  const way = errorValue + ratePerS * (delayS + debounceS);
  const first = (healthy[0] as CalibrationCell).inValue;
  const last = (healthy[healthy.length - 1] as CalibrationCell).inValue;
  const bends = [
    ...healthy.flatMap(({ inValue }) => [inValue - calm, inValue, inValue + calm]),
    ...limit.flatMap(({ inValue }) => [inValue - late, inValue, inValue + late]),
    ...places,
  ];
  const inside = [...new Set(bends)].filter((x) => x >= first && x <= last).sort((a, b) => a - b);
  return inside.map((x) => ({
    x,
    low: worst(limit, x, late, Math.max) + way,
    high: worst(healthy, x, calm, Math.min) - errorValue,
  }));
}

function worst(
  curve: readonly CalibrationCell[],
  x: number,
  either: number,
  pick: (...values: number[]) => number,
): number {
  const between = curve.filter(({ inValue }) => Math.abs(inValue - x) <= either).map(({ outValue }) => outValue);
  return pick(clamped(curve, x - either), clamped(curve, x + either), ...between);
}
