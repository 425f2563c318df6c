import { gaugeNumber } from '../conductor/gauge.js';
import { InputError } from '../error/index.js';
import { needInput, needInteger } from '../error/guard.js';
import type { SourceKey, SourceStatus } from '../source/index.js';
import type { LoadingTable } from '../table/index.js';

export interface LoadingFactorInput {
  readonly table: LoadingTable;
  /** Gauge of the wires, such as '20'. Thicker than the table's thickest counts as that. */
  readonly awg: string;
  /** Contacts of the connector, at least 1. */
  readonly contactCount: number;
  /** Contacts of them that carry current at the same time, 1 to `contactCount`. */
  readonly loadedCount: number;
}

export interface LoadingFactorResult {
  /** Factor on the current of one contact alone with the table's thickest wire. */
  readonly factor: number;
  /** Row that was taken, per cent loaded; null for a contact alone. */
  readonly rowLoadedFraction: number | null;
  /** Gauge of the column that was taken. */
  readonly columnAwg: string;
  readonly source: SourceKey;
  readonly sourceStatus: SourceStatus;
}

/**
 * Share of its current that a contact keeps with a thinner wire and with neighbours that carry current too.
 *
 * Use it on the rating of a single contact at its largest ambient temperature, with the thickest wire. Between two
 * printed shares of loaded contacts the larger one is taken, between two gauges the thinner: both can only lower it.
 *
 * @param input table, gauge, number of contacts, number of those loaded
 * @returns the factor, and the row and column that it was read from
 * @throws InputError when a field is missing or out of range, or the gauge is thinner than the table's thinnest
 * @source connector-loading-factors
 * @example loadingFactor({ table: connectorLoading, awg: '20', contactCount: 12, loadedCount: 6 }).factor //=> 0.341
 */
export function loadingFactor(input: LoadingFactorInput): LoadingFactorResult {
  needInput('loadingFactor', input);
  const { table, awg, contactCount, loadedCount } = input;
  needLoadingTable('loadingFactor', 'table', table);
  needInteger('loadingFactor', 'contactCount', contactCount, 1);
  needInteger('loadingFactor', 'loadedCount', loadedCount, 1);
  if (loadedCount > contactCount) {
    throw new InputError('loadingFactor', 'loadedCount', 'atMost', loadedCount, `must be at most ${contactCount}`);
  }
  const number = gaugeNumber('loadingFactor', 'awg', awg);
  const column = loadingColumn(table, (gauge) => gaugeNumber('loadingFactor', 'table', gauge) >= number);
  if (column < 0) {
    throw new InputError('loadingFactor', 'awg', 'inTable', awg, `must not be thinner than ${table.gauges[0] ?? ''}`);
  }
  return loadingOf(table, column, contactCount, loadedCount);
}

/** A loading table ends with all contacts loaded, so that every share finds its row. */
export function needLoadingTable(fn: string, field: string, table: LoadingTable): void {
  if (typeof table !== 'object' || table === null || !Array.isArray(table.gauges)) {
    const rule = table === undefined || table === null ? 'missing' : 'object';
    throw new InputError(
      fn,
      field,
      rule,
      table,
      'must be a table of loading factors',
      'import one, such as connectorLoading',
    );
  }
}

/** A column of the table: the last that is not thicker than the wire, by a rule that tells which are. */
export function loadingColumn(table: LoadingTable, notThicker: (gauge: string) => boolean): number {
  return table.gauges.reduce((column, gauge, i) => (notThicker(gauge) ? i : column), -1);
}

/** The factor for a share of loaded contacts in a column. */
export function loadingOf(
  table: LoadingTable,
  column: number,
  contactCount: number,
  loadedCount: number,
): LoadingFactorResult {
  const columnAwg = table.gauges[column] as string;
  const percent = (loadedCount / contactCount) * 100;
  const row = loadedCount === 1 ? undefined : table.rows.find(([upTo]) => upTo >= percent - 1e-9);
  const erratum = table.errata.find(([upTo, gauge]) => upTo === row?.[0] && gauge === columnAwg);
  return {
    factor: erratum?.[2] ?? ((row === undefined ? table.singleFactors[column] : row[column + 1]) as number),
    rowLoadedFraction: row === undefined ? null : row[0] / 100,
    columnAwg,
    source: table.source,
    sourceStatus: erratum === undefined ? table.status : 'derived',
  };
}
