/** Columns of text set under one another, two spaces apart; numbers are right-aligned where `right` says so. */
export function columns(rows: readonly (readonly string[])[], right: readonly number[] = []): string[] {
  const widths: number[] = [];
  for (const row of rows) row.forEach((cell, i) => (widths[i] = Math.max(widths[i] ?? 0, shownWidth(cell))));
  return rows.map((row) =>
    row
      .map((cell, i) => {
        const room = ' '.repeat((widths[i] ?? 0) - shownWidth(cell));
        return right.includes(i) ? room + cell : cell + room;
      })
      .join('  ')
      .trimEnd(),
  );
}

/** Width on a terminal: one column a code point, which holds for all that we print. */
function shownWidth(text: string): number {
  return Array.from(text).length;
}

/** A bar of a share of a width, to an eighth of a column, at least a hairline where the share is above 0. */
export function bar(share: number, width: number): string {
  const eighths = Math.round(share * width * 8);
  if (eighths === 0) return share > 0 ? '▏' : '';
  return '█'.repeat(Math.floor(eighths / 8)) + ' ▏▎▍▌▋▊▉'.charAt(eighths % 8).trim();
}

/** Text broken at a width, each line with an indent. */
export function wrap(text: string, width: number, indent: string): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    if (line !== '' && line.length + word.length + 1 > width - indent.length) {
      lines.push(indent + line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  return line === '' ? lines : [...lines, indent + line];
}
