import { cautions } from '@loomwright/worked/card';
import { escapeText } from '@loomwright/worked/draw';
import { cellText, headText } from './cell.js';
import { SHEET_STYLE } from './html-style.js';
import { sheetOrder, standingText } from './sheets.js';
import type { Sheet, SheetColumn, SheetHeader, SheetRow, SheetSet, SheetTable } from './type.js';

/** What the printed sheets may have besides their rows. */
export interface SheetsHtmlOptions extends SheetHeader {
  /** A drawing for the first page, as SVG of our own making: `drawLoom`. */
  readonly drawing?: string;
  /** A drawing for the sheet of the grounds: `drawGrounds`. */
  readonly grounds?: string;
}

/**
 * The sheets as one HTML file to be printed on A4 or Letter, black on white: a first page with how the plan stands,
 * then a sheet a page, with vehicle, sheet name and date at its head, ruled rows, boxes for ticks, lines for what is
 * measured, cautions at its foot. It asks for no other file.
 *
 * @param set what `sheets` made
 * @param options the date, as a person writes it (a blank to fill in unless given), and drawings
 * @returns the file
 * @throws nothing
 */
export function sheetsHtml(set: SheetSet, options: SheetsHtmlOptions = {}): string {
  const title = `${set.vehicle}: sheets`;
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escapeText(title)}</title>
<style>${SHEET_STYLE}</style>
</head>
<body>
${cover(set, options)}
${sheetOrder(set)
  .map((sheet) => page(set, sheet, options))
  .join('\n')}
</body>
</html>
`;
}

function cover(set: SheetSet, { date, drawing }: SheetsHtmlOptions): string {
  const list = sheetOrder(set).map(({ title, lead }) => `<li><b>${title}.</b> ${escapeText(lead)}</li>`);
  const notJudged = set.notJudged.map((line) => `<li>${escapeText(line)}</li>`);
  return `<section class="cover">
<div class="title"><h1>${escapeText(set.vehicle)}</h1>${dateText(date)}</div>
${set.note === null ? '' : `<p>${escapeText(set.note)}</p>`}
<p class="judgement">${capital(escapeText(standingText(set)))}.</p>
${drawing ?? ''}
<h2>Sheets</h2>
<ol>${list.join('')}</ol>
${notJudged.length === 0 ? '' : `<h2>What this plan does not look at</h2><ul class="${notJudged.length > 3 ? 'two' : ''}">${notJudged.join('')}</ul>`}
${foot(['local-code', 'battery', 'fuel', 'restraint'])}
</section>`;
}

function page(set: SheetSet, sheet: Sheet, { date, grounds }: SheetsHtmlOptions): string {
  return `<table class="sheet${sheet.landscape ? ' landscape' : ''}" role="presentation">
<thead><tr><td><div class="running"><b>${escapeText(set.vehicle)}</b><b>${sheet.title}</b><span class="standing">${escapeText(standingText(set))}</span>${dateText(date)}</div></td></tr></thead>
<tfoot><tr><td>${foot(sheet.cautions)}</td></tr></tfoot>
<tbody><tr><td>
<p class="lead">${escapeText(sheet.lead)}</p>
${sheet.key === 'grounds' ? (grounds ?? '') : ''}
${sheet.tables.length === 0 ? '<p>Nothing to list.</p>' : sheet.tables.map(tableHtml).join('\n')}
</td></tr></tbody>
</table>`;
}

function dateText(date: string | undefined): string {
  return `<span class="date">Date ${date === undefined ? '<span class="fill"></span>' : escapeText(date)}</span>`;
}

function foot(keys: Sheet['cautions']): string {
  const lines = keys.map((key) => `<p><b>${cautions[key].title}.</b> ${escapeText(cautions[key].text)}</p>`);
  return `<div class="foot">${lines.join('')}</div>`;
}

function tableHtml(table: SheetTable): string {
  const columns = table.columns.filter(({ dataOnly }) => dataOnly !== true);
  const heads = columns.map((column) => `<th scope="col"${styled(column)}>${escapeText(headText(column))}</th>`);
  const fixed = columns.every(({ share }) => share !== undefined);
  const whole = columns.reduce((sum, { share = 0 }) => sum + share, 0);
  const widths = fixed
    ? `<colgroup>${columns.map(({ share = 0 }) => `<col style="width:${((100 * share) / whole).toFixed(2)}%">`).join('')}</colgroup>`
    : '';
  const row = (cells: SheetRow, name: string): string =>
    `<tr${name}>${columns.map((column) => cellHtml(column, cells, name !== '')).join('')}</tr>`;
  return `<h2>${escapeText(table.title)}</h2>
${table.note === null ? '' : `<p class="note">${escapeText(table.note)}</p>`}
<table class="rows${fixed ? ' fixed' : ''}">${widths}<thead><tr>${heads.join('')}</tr></thead><tbody>
${table.rows.map((cells) => row(cells, '')).join('\n')}
${table.foot.map((cells) => row(cells, ' class="foot-row"')).join('\n')}
</tbody></table>`;
}

function cellHtml(column: SheetColumn, row: SheetRow, inFoot: boolean): string {
  // Words in a column of figures, such as why there is none, may break and stand smaller.
  const words = column.kind === 'number' && typeof row[column.key] === 'string';
  const open = words ? '<td class="number words">' : `<td${styled(column)}>`;
  if (column.kind === 'tick') return `${open}${inFoot ? '' : '<span class="box"></span>'}</td>`;
  if (column.kind === 'blank') {
    return `${open}${inFoot ? '' : `<span class="fill"></span> ${escapeText(column.unit ?? '')}`}</td>`;
  }
  const below = column.under === undefined ? '' : String(row[column.under] ?? '');
  const under = below === '' ? '' : `<span class="under">${escapeText(below)}</span>`;
  return `${open}${escapeText(cellText(column, row[column.key]))}${under}</td>`;
}

function styled({ kind, short }: SheetColumn): string {
  const names = [kind === 'text' ? '' : kind, short === true ? 'short' : ''].filter(Boolean).join(' ');
  return names === '' ? '' : ` class="${names}"`;
}

function capital(text: string): string {
  return text.replace(/^./, (c) => c.toUpperCase());
}
