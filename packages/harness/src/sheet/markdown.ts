import { cautions } from '@loomwright/worked/card';
import { cellText, headText } from './cell.js';
import { sheetOrder, standingText } from './sheets.js';
import type { SheetColumn, SheetHeader, SheetRow, SheetSet, SheetTable } from './type.js';

/**
 * The sheets as one Markdown text: a heading a sheet, a table for each of theirs, cautions below.
 *
 * @param set what `sheets` made
 * @param header the date, as a person writes it
 * @returns the text
 * @throws nothing
 */
export function sheetsMarkdown(set: SheetSet, header: SheetHeader = {}): string {
  const date = header.date === undefined ? '' : ` · ${safe(header.date)}`;
  const parts = sheetOrder(set).flatMap((sheet) => [
    `## ${sheet.title}`,
    safe(sheet.lead),
    ...sheet.tables.flatMap(tableText),
    ...sheet.cautions.map((key) => `> **${cautions[key].title}.** ${cautions[key].text}`),
  ]);
  const notJudged =
    set.notJudged.length === 0
      ? []
      : ['## What the plan does not look at', set.notJudged.map((line) => `- ${safe(line)}`).join('\n')];
  return `${[
    `# ${safe(set.vehicle)}${date}`,
    ...(set.note === null ? [] : [safe(set.note)]),
    `**${standingText(set)}.**`,
    ...parts,
    ...notJudged,
  ].join('\n\n')}\n`;
}

function tableText(table: SheetTable): string[] {
  const columns = table.columns.filter(({ dataOnly }) => dataOnly !== true);
  const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
  const rows = [
    line(columns.map((column) => safe(headText(column)))),
    line(columns.map(({ kind }) => (kind === 'number' ? '---:' : '---'))),
    ...table.rows.map((row) => line(columns.map((column) => cell(column, row)))),
    ...table.foot.map((row) => line(columns.map((column) => strong(cell(column, row))))),
  ];
  return [`### ${safe(table.title)}`, ...(table.note === null ? [] : [safe(table.note)]), rows.join('\n')];
}

function cell(column: SheetColumn, row: SheetRow): string {
  if (column.kind === 'tick') return '☐';
  const text = safe(cellText(column, row[column.key]));
  const below = column.under === undefined ? '' : safe(String(row[column.under] ?? ''));
  return below === '' ? text : `${text} (${below})`;
}

function strong(text: string): string {
  return text === '' || text === '☐' ? '' : `**${text}**`;
}

/** Text that Markdown does not take for marks of its own, on one line. */
function safe(text: string): string {
  if (!/[\\`*_[\]<>|#\n]/.test(text)) return text;
  return text.replace(/\s*\n\s*/g, ' ').replace(/[\\`*_[\]<>|#]/g, '\\$&');
}
