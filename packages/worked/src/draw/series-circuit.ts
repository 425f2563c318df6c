import type { SolvedPart } from 'loomwright';
import { drawing, element, ink, label } from './svg.js';
import { symbol, type SymbolKind } from './symbol.js';

export interface SeriesCircuitInput {
  /** Parts of the path in order. */
  readonly parts: readonly Pick<SolvedPart, 'name' | 'kind' | 'side'>[];
  readonly loadName: string;
  /** What the load is drawn as. */
  readonly loadKind: 'motor' | 'lamp' | 'other';
  /** What is written at the supply, such as '13.8 V'. */
  readonly supplyLabel: string;
  /** Width in px; where its parts do not fit side by side it is drawn as one column. */
  readonly width: number;
}

/** A supply, a path out, a load and a path back, in schematic symbols: live in copper, return in ink. */
export function seriesCircuit(input: SeriesCircuitInput): string {
  const { parts, loadName, width } = input;
  const description = `from the supply through ${parts.map((p) => p.name).join(', ')} and ${loadName}`;
  const needed =
    Math.max(...(['out', 'return'] as const).map((side) => parts.filter((p) => p.side === side).length)) * 84 + 170;
  return width < needed ? column(input, description) : loop(input, description);
}

function loop(input: SeriesCircuitInput, description: string): string {
  const { parts, loadName, loadKind, supplyLabel, width } = input;
  const left = 40;
  const right = width - 90;
  const top = 56;
  const bottom = 176;
  const middle = (top + bottom) / 2;
  const wire = (d: string, colour: string): string =>
    element('path', { d, fill: 'none', stroke: colour, 'stroke-width': 1.5 });
  const shapes = [
    wire(`M ${left} ${middle - 20} V ${top} H ${right} V ${middle - 20}`, ink.copper),
    wire(`M ${right} ${middle + 20} V ${bottom} H ${left} V ${middle + 20}`, ink.text),
    symbol('battery', left, middle, -90, ink.text),
    label(left + 20, middle + 5, supplyLabel),
    symbol(loadKind, right, middle, 90, ink.copper),
    label(right + 22, middle + 5, loadName),
  ];
  for (const side of ['out', 'return'] as const) {
    const list = parts.filter((part) => part.side === side);
    const y = side === 'out' ? top : bottom;
    const colour = side === 'out' ? ink.copper : ink.text;
    const step = (right - left) / (list.length + 1);
    list.forEach((part, i) => {
      const x = side === 'out' ? left + step * (i + 1) : right - step * (i + 1);
      shapes.push(
        element('rect', { x: x - 20, y: y - 8, width: 40, height: 16, fill: ink.ground }),
        symbol(drawn(part.kind), x, y, side === 'out' ? 0 : 180, colour),
        label(
          x,
          side === 'out' ? y - 20 - (step < 96 ? (i % 2) * 16 : 0) : y + 28 + (step < 96 ? (i % 2) * 16 : 0),
          part.name,
          {
            'text-anchor': 'middle',
            'font-size': 13,
          },
        ),
      );
    });
  }
  return drawing(width, 226, 'Circuit', description, ...shapes);
}

function column(input: SeriesCircuitInput, description: string): string {
  const { parts, loadName, loadKind, supplyLabel, width } = input;
  const x = 40;
  const step = 46;
  const out = parts.filter((part) => part.side === 'out');
  const back = parts.filter((part) => part.side === 'return');
  const rows: { name: string; kind: SymbolKind; colour: string }[] = [
    ...out.map((part) => ({ name: part.name, kind: drawn(part.kind), colour: ink.copper })),
    { name: loadName, kind: loadKind, colour: ink.copper },
    ...back.map((part) => ({ name: part.name, kind: drawn(part.kind), colour: ink.text })),
  ];
  const shapes = [
    label(x + 22, 18, `${supplyLabel}, positive`, { fill: ink.soft }),
    element('circle', { cx: x, cy: 14, r: 3, fill: ink.copper }),
  ];
  rows.forEach((row, i) => {
    const y = 14 + step * (i + 0.75);
    shapes.push(
      element('line', {
        x1: x,
        x2: x,
        y1: y - step * (i === 0 ? 0.75 : 0.5),
        y2: y + step / 2,
        stroke: i > out.length ? ink.text : row.colour,
        'stroke-width': 1.5,
      }),
      element('rect', { x: x - 8, y: y - 20, width: 16, height: 40, fill: ink.ground }),
      symbol(row.kind, x, y, 90, row.colour),
      label(x + 28, y + 5, row.name, { 'font-weight': i === out.length ? 600 : undefined }),
    );
  });
  const end = 14 + step * (rows.length + 0.25);
  shapes.push(
    element('circle', { cx: x, cy: end, r: 3, fill: ink.text }),
    label(x + 22, end + 5, 'negative', { fill: ink.soft }),
  );
  return drawing(width, end + 14, 'Circuit', description, ...shapes);
}

function drawn(kind: SolvedPart['kind']): SymbolKind {
  return kind === 'source' ? 'battery' : kind;
}
