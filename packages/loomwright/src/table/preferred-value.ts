import { InputError } from '../error/index.js';
import type { PreferredSeries } from './type.js';

/** A series must be one of the objects of the table room. */
export function needSeries(fn: string, series: PreferredSeries): void {
  if (typeof series !== 'object' || series === null || !Array.isArray(series.values) || series.values.length === 0) {
    throw new InputError(
      fn,
      'series',
      series === undefined ? 'missing' : 'object',
      series,
      'must be a series of preferred values',
      'import one, such as e24',
    );
  }
}

/** The k-th value of a series, counted on through the decades; k = 0 is the first of the decade that begins at 1. */
export function preferredAt(series: PreferredSeries, k: number): number {
  const { values } = series;
  const decade = Math.floor(k / values.length);
  const printed = values[k - decade * values.length] as number;
  // A number read from its decimal text is the nearest double: 4.7, not 4.700000000000001.
  return Number(`${printed}e${decade - String(values[0]).length + 1}`);
}

/** The greatest k whose value is at or below a wanted one, to one part in 10⁹. */
export function preferredIndex(series: PreferredSeries, value: number): number {
  const n = series.values.length;
  const slack = value * (1 + 1e-9);
  let k = Math.floor(Math.log10(value)) * n;
  while (preferredAt(series, k) > slack) k--;
  while (preferredAt(series, k + 1) <= slack) k++;
  return k;
}

/** All values from one to another, both included. */
export function preferredBetween(series: PreferredSeries, low: number, high: number): readonly number[] {
  const list: number[] = [];
  let k = preferredIndex(series, low);
  if (preferredAt(series, k) < low * (1 - 1e-9)) k++;
  for (; preferredAt(series, k) <= high * (1 + 1e-9); k++) list.push(preferredAt(series, k));
  return list;
}

/** The smallest value at or above a wanted one. */
export function preferredAbove(series: PreferredSeries, value: number): number {
  const k = preferredIndex(series, value);
  const at = preferredAt(series, k);
  return at >= value * (1 - 1e-9) ? at : preferredAt(series, k + 1);
}

/** The greatest value at or below a wanted one. */
export function preferredBelow(series: PreferredSeries, value: number): number {
  return preferredAt(series, preferredIndex(series, value));
}
