import { needBetween, needInput } from '../error/guard.js';
import type { SourceKey, SourceStatus } from '../source/index.js';
import type { RestVoltsTable } from '../table/index.js';
import { alongRows, needRestVolts } from './battery-rest.js';

export interface OpenCircuitVoltageInput {
  /** The list to go by: `restVoltsTrade`, `restVoltsTenSteps`, `restVoltsWithDensity`, `restVoltsThumb`. */
  readonly list: RestVoltsTable;
  /** Charge as a fraction, from the least of the list to 1. */
  readonly chargeFraction: number;
}

export interface OpenCircuitVoltageResult {
  /** Volts at the posts of a rested battery of six cells. */
  readonly openV: number;
  /** Key of the list. */
  readonly list: string;
  readonly source: SourceKey;
  readonly sourceStatus: SourceStatus;
}

/**
 * Volts of a rested 12 V lead battery at a charge, by a list that is named.
 *
 * Use it to start a calculation of cranking or of run time from a charge. Rested is hours after charging or use,
 * nothing connected. For the charge at a reading use `stateOfCharge`, which asks several lists at once: they differ.
 *
 * $$V = V_i + (V_{i+1} - V_i)\,\frac{s - s_i}{s_{i+1} - s_i}$$
 *
 * @param input list, charge
 * @returns volts at rest, and where they come from
 * @throws InputError when a field is missing, or the charge is not within the list
 * @source the list's own; straight lines between its rows
 * @example openCircuitVoltage({ list: restVoltsTrade, chargeFraction: 0.8 }).openV //=> 12.49
 */
export function openCircuitVoltage(input: OpenCircuitVoltageInput): OpenCircuitVoltageResult {
  const fn = 'openCircuitVoltage';
  needInput(fn, input);
  const { list, chargeFraction } = input;
  needRestVolts(fn, 'list', list);
  const [least] = list.rows.at(-1) as readonly [number, number];
  const [most] = list.rows[0] as readonly [number, number];
  needBetween(fn, 'chargeFraction', chargeFraction, least / 100, most / 100, 'a list is not read beyond its rows');
  // The limits are the ends of the rows but for the last digit of the division by a hundred.
  const percent = Math.min(most, Math.max(least, chargeFraction * 100));
  const openV = alongRows(list, 0, percent) as number;
  return { openV, list: list.key, source: list.source, sourceStatus: list.status };
}
