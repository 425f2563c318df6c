import { InputError } from '../error/index.js';
import { needMoreThan } from '../error/bounded.js';
import { needBetween, needObject, needOneOf } from '../error/guard.js';
import type { RestVoltsTable } from '../table/index.js';
import { alongRows, needRestVolts } from './battery-rest.js';

/** What is to be left: a charge, or volts at rest by a list. */
export type RestEnd =
  | { readonly kind: 'charge'; readonly chargeFraction: number }
  | { readonly kind: 'volts'; readonly openV: number; readonly list: RestVoltsTable };

/** The charge that is to be left, as a fraction; an error unless it is below that at the start. */
export function endCharge(fn: string, end: RestEnd, startChargeFraction: number, at = ''): number {
  needObject(fn, `${at}end`, end);
  needOneOf(fn, `${at}end.kind`, end.kind, ['charge', 'volts']);
  const field = `${at}end.${end.kind === 'charge' ? 'chargeFraction' : 'openV'}`;
  const left = end.kind === 'charge' ? end.chargeFraction : chargeAt(fn, end.openV, end.list, at);
  needBetween(fn, field, left, 0, 1);
  if (left < startChargeFraction) return left;
  const must = `must leave less than startChargeFraction, ${startChargeFraction}`;
  throw new InputError(fn, field, 'below', left, must);
}

function chargeAt(fn: string, openV: number, list: RestVoltsTable, at: string): number {
  needMoreThan(fn, `${at}end.openV`, openV);
  needRestVolts(fn, `${at}end.list`, list);
  const percent = alongRows(list, 1, openV);
  if (percent !== null) return percent / 100;
  const volts = list.rows.map((row) => row[1]);
  const must = `must lie within the list, ${Math.min(...volts)} to ${Math.max(...volts)} V`;
  throw new InputError(fn, `${at}end.openV`, 'range', openV, must);
}
