import { cellText, headText } from './cell.js';
import { sheetOrder } from './sheets.js';
import type { SheetColumn, SheetRow, SheetSet, SheetTable } from './type.js';

/** A file to be written. */
export interface SheetFile {
  readonly name: string;
  readonly text: string;
}

/**
 * The sheets as CSV files (RFC 4180: commas, quotes where needed, CRLF), one for each kind of table, with the same
 * digits as on paper, a hyphen as minus and no sums. A text that a spreadsheet would take for a formula gets an
 * apostrophe before it.
 *
 * @param set what `sheets` made
 * @returns the files, in the order of the sheets
 * @throws nothing
 */
export function sheetsCsv(set: SheetSet): readonly SheetFile[] {
  const files = new Map<string, SheetTable[]>();
  for (const table of sheetOrder(set).flatMap(({ tables }) => tables)) {
    const tables = files.get(table.file);
    if (tables === undefined) files.set(table.file, [table]);
    else tables.push(table);
  }
  return [...files].map(([name, tables]) => {
    const columns = (tables[0]?.columns ?? []).filter(({ kind }) => kind !== 'tick' && kind !== 'blank');
    const lines = [columns.flatMap(headsOf), ...tables.flatMap(({ rows }) => rows.map((row) => cellsOf(columns, row)))];
    return { name: `${name}.csv`, text: lines.map((line) => `${line.map(quoted).join(',')}\r\n`).join('') };
  });
}

function headsOf(column: SheetColumn): string[] {
  const head = headText(column);
  return column.under === undefined ? [head] : [head, column.underHead ?? column.under];
}

function cellsOf(columns: readonly SheetColumn[], row: SheetRow): string[] {
  const cells: string[] = [];
  for (const column of columns) {
    const cell = row[column.key];
    const text = cellText(column, cell, true);
    cells.push(typeof cell === 'string' ? disarmed(text) : text);
    if (column.under !== undefined) cells.push(disarmed(String(row[column.under] ?? '')));
  }
  return cells;
}

function disarmed(text: string): string {
  return /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
}

function quoted(text: string): string {
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
