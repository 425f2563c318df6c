import { needMoreThan } from '../error/bounded.js';
import { needInput, needList } from '../error/guard.js';
import type { SourceKey, SourceStatus } from '../source/index.js';
import type { RestVoltsTable } from '../table/index.js';
import { alongRows, needRestVolts } from './battery-rest.js';

export interface StateOfChargeInput {
  /** Volts at the posts of a rested battery of six cells, above 0. */
  readonly openV: number;
  /** The lists to be asked, at least one. */
  readonly lists: readonly RestVoltsTable[];
}

/** What one list says. */
export interface ChargeByList {
  /** Key of the list, and what it is. */
  readonly list: string;
  readonly title: string;
  /** Charge as a fraction; null where `reason` says why there is none. */
  readonly chargeFraction: number | null;
  /** `above-list`: more than full, as after charging or in another kind of cell. `below-list`: flatter than it goes. */
  readonly reason: 'above-list' | 'below-list' | null;
  readonly source: SourceKey;
  readonly sourceStatus: SourceStatus;
}

export interface StateOfChargeResult {
  readonly byList: readonly ChargeByList[];
  /** Least and most of the lists that have a number; null where none has. */
  readonly lowestFraction: number | null;
  readonly highestFraction: number | null;
}

/**
 * How full a rested 12 V lead battery is by its volts, by each of several lists.
 *
 * Use it with volts read hours after charging or use, nothing connected. The lists differ by up to a third of the
 * charge at one reading, so the answer is a range. A list is not read beyond its rows: there its charge is null.
 *
 * $$s = s_i + (s_{i+1} - s_i)\,\frac{V - V_i}{V_{i+1} - V_i}$$
 *
 * @param input volts at rest, lists
 * @returns charge by each list, the least and the most
 * @throws InputError when a field is missing or out of range
 * @source the lists' own; straight lines between their rows
 * @example stateOfCharge({ openV: 12.3, lists: [restVoltsTrade, restVoltsWithDensity] }).highestFraction //=> 0.571429
 */
export function stateOfCharge(input: StateOfChargeInput): StateOfChargeResult {
  const fn = 'stateOfCharge';
  needInput(fn, input);
  const { openV, lists } = input;
  needMoreThan(fn, 'openV', openV);
  needList(fn, 'lists', lists, 1);
  const byList = lists.map((list, i): ChargeByList => {
    needRestVolts(fn, `lists[${i}]`, list);
    const percent = alongRows(list, 1, openV);
    const full = (list.rows[0] as readonly [number, number])[1];
    return {
      list: list.key,
      title: list.title,
      chargeFraction: percent === null ? null : percent / 100,
      reason: percent !== null ? null : openV > full ? 'above-list' : 'below-list',
      source: list.source,
      sourceStatus: list.status,
    };
  });
  const found = byList.flatMap(({ chargeFraction }) => (chargeFraction === null ? [] : [chargeFraction]));
  return {
    byList,
    lowestFraction: found.length === 0 ? null : Math.min(...found),
    highestFraction: found.length === 0 ? null : Math.max(...found),
  };
}
