import { drawing, element, ink, label } from './svg.js';

/** One cell of a matrix. */
export interface HeatCell {
  readonly text: string;
  /** Share of what is borne: above 1 it is too much. */
  readonly shareFraction: number;
}

export interface HeatMatrixInput {
  readonly title: string;
  /** Names of the rows; the last one stands apart from the others where `lastApart` is set. */
  readonly rows: readonly string[];
  readonly lastApart?: boolean;
  /** Names of the columns, and the unit of what stands in them. */
  readonly columns: readonly { readonly name: string; readonly unit: string }[];
  /** Row by row. */
  readonly cells: readonly (readonly HeatCell[])[];
  /** What is said of a cell beyond what is borne, for those who listen; 'too much' unless given. */
  readonly over?: string;
  /** Width in px: 360 on a phone, 640 or more on a desk. */
  readonly width: number;
}

const LETTER = 6.7;
const CELL_HEIGHT = 34;

/**
 * What each row does to each column: a field for a pair, the deeper the more of what is borne it takes. What is too
 * much is red and has a mark as well. On a narrow sheet the columns go below one another.
 */
export function heatMatrix(input: HeatMatrixInput): string {
  const { title, rows, columns, cells, width, lastApart = false, over: said = 'too much' } = input;
  const left = Math.min(Math.max(...rows.map((row) => row.length)) * LETTER + 14, width * 0.36);
  const widest = Math.max(
    ...columns.map(({ name, unit }) => Math.max(name.length * LETTER * 0.62, unit.length * LETTER)),
  );
  const least = Math.max(52, Math.min(widest + 8, 88));
  const perBlock = Math.max(1, Math.min(columns.length, Math.floor((width - left) / least)));
  const blocks = Math.ceil(columns.length / perBlock);
  const even = Math.ceil(columns.length / blocks);
  const cellWidth = Math.min((width - left) / even, 120);
  const gap = lastApart ? 8 : 0;
  const head = 56;
  const blockHeight = head + rows.length * CELL_HEIGHT + gap + 18;
  const shapes: string[] = [];
  for (let b = 0; b < blocks; b++) {
    const top = b * blockHeight;
    columns.slice(b * even, (b + 1) * even).forEach(({ name, unit }, k) => {
      const middle = left + (k + 0.5) * cellWidth;
      const lines = twoLines(name, Math.floor(cellWidth / LETTER));
      lines.forEach((line, i) =>
        shapes.push(label(middle, top + 30 - 15 * (lines.length - 1 - i), line, { 'text-anchor': 'middle' })),
      );
      shapes.push(label(middle, top + 47, unit, { 'text-anchor': 'middle', fill: ink.soft, 'font-size': 13 }));
    });
    rows.forEach((row, r) => {
      const apart = lastApart && r === rows.length - 1;
      const y = top + head + r * CELL_HEIGHT + (apart ? gap : 0);
      const weight = apart ? 600 : undefined;
      shapes.push(label(left - 10, y + 22, row, { 'text-anchor': 'end', 'font-weight': weight }));
      (cells[r] ?? []).slice(b * even, (b + 1) * even).forEach(({ text, shareFraction }, k) => {
        const over = shareFraction > 1;
        const depth = over ? 0.2 + 0.25 * Math.min(1, (shareFraction - 1) / 4) : 0.26 * shareFraction;
        const x = left + k * cellWidth;
        shapes.push(
          element('rect', {
            x: x + 1,
            y: y + 1,
            width: cellWidth - 2,
            height: CELL_HEIGHT - 2,
            fill: over ? ink.red : ink.verdigris,
            'fill-opacity': depth,
            stroke: over ? ink.red : ink.rule,
            'stroke-width': 1,
          }),
          label(x + cellWidth / 2, y + 22, over ? `✕ ${text}` : text, {
            'text-anchor': 'middle',
            'font-weight': weight,
          }),
        );
      });
    });
  }
  const words = rows.map((row, r) => {
    const each = columns.map(({ name, unit }, c) => {
      const cell = cells[r]?.[c];
      return `${name} ${cell?.text ?? ''} ${unit}${(cell?.shareFraction ?? 0) > 1 ? `, ${said}` : ''}`;
    });
    return `${row}: ${each.join(', ')}`;
  });
  return drawing(width, blocks * blockHeight, title, words.join('; '), ...shapes);
}

/** A name on one line where it fits, else on two, parted at the space nearest its middle. */
function twoLines(name: string, letters: number): readonly string[] {
  if (name.length <= letters || !name.includes(' ')) return [name];
  const spaces = [...name.matchAll(/ /g)].map(({ index }) => index);
  const at = spaces.reduce((a, b) => (Math.abs(b - name.length / 2) < Math.abs(a - name.length / 2) ? b : a));
  return [name.slice(0, at), name.slice(at + 1)];
}
