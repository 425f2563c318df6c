import { needBetween, needInput } from '../error/guard.js';
import type { PreferredSeries } from '../table/index.js';
import { needSeries, preferredAbove, preferredBelow } from '../table/preferred-value.js';

export interface NearestPreferredInput {
  /** The wanted value in any unit, 1e−15 to 1e15: ohms, farads, henries. */
  readonly value: number;
  /** The series that is in the drawer: `e12`, `e24`, `e96` … */
  readonly series: PreferredSeries;
}

export interface NearestPreferredResult {
  /** The greatest value of the series at or below the wanted one. */
  readonly belowValue: number;
  /** The one with the least error; of two with the same, the lower. */
  readonly nearestValue: number;
  /** The smallest value of the series at or above the wanted one. */
  readonly aboveValue: number;
  /** Error of each against the wanted value, as a fraction of it. */
  readonly belowErrorFraction: number;
  readonly nearestErrorFraction: number;
  readonly aboveErrorFraction: number;
}

/**
 * The preferred values on either side of a wanted one.
 *
 * Take `aboveValue` where a lower value would be unsafe (a current limit), `belowValue` where a higher one would be.
 *
 * @param input wanted value and series
 * @returns the neighbours below and above and the nearer of them, each with its error
 * @throws InputError when the value is out of range or the series is not one
 * @source iec-60063
 * @example nearestPreferred({ value: 826.7, series: e24 }).nearestValue //=> 820
 */
export function nearestPreferred(input: NearestPreferredInput): NearestPreferredResult {
  needInput('nearestPreferred', input);
  const { value, series } = input;
  needBetween('nearestPreferred', 'value', value, 1e-15, 1e15);
  needSeries('nearestPreferred', series);
  const belowValue = preferredBelow(series, value);
  const aboveValue = preferredAbove(series, value);
  const belowErrorFraction = belowValue / value - 1;
  const aboveErrorFraction = aboveValue / value - 1;
  const up = aboveErrorFraction < -belowErrorFraction;
  return {
    belowValue,
    nearestValue: up ? aboveValue : belowValue,
    aboveValue,
    belowErrorFraction,
    nearestErrorFraction: up ? aboveErrorFraction : belowErrorFraction,
    aboveErrorFraction,
  };
}
