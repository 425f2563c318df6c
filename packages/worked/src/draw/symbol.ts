import { element, ink } from './svg.js';

// Schematic symbols in the manner of IEC 60617, on a grid of 8 px. Each is drawn along the x axis through (0, 0),
// 40 px long from −20 to 20, and turned by its user. The colour is that of the wire.

export type SymbolKind =
  | 'wire'
  | 'fuse'
  | 'relay'
  | 'switch'
  | 'terminal'
  | 'connector'
  | 'body'
  | 'source'
  | 'other'
  | 'motor'
  | 'lamp'
  | 'battery';

const line = (x1: number, y1: number, x2: number, y2: number, colour: string, width = 1.5): string =>
  element('line', { x1, y1, x2, y2, stroke: colour, 'stroke-width': width, 'stroke-linecap': 'round' });

/** One symbol at a place, turned by `angleDeg` (0: current flows to the right, 90: down). */
export function symbol(kind: SymbolKind, x: number, y: number, angleDeg: number, colour: string): string {
  return element(
    'g',
    { transform: `translate(${x} ${y})${angleDeg === 0 ? '' : ` rotate(${angleDeg})`}` },
    ...shape(kind, colour, angleDeg),
  );
}

function shape(kind: SymbolKind, c: string, angleDeg: number): string[] {
  const box = { x: -14, y: -6, width: 28, height: 12, fill: ink.ground, stroke: c, 'stroke-width': 1.5 };
  switch (kind) {
    case 'wire':
      return [line(-20, 0, 20, 0, c, 2.5)];
    case 'fuse':
      return [line(-20, 0, -14, 0, c), line(14, 0, 20, 0, c), element('rect', box), line(-14, 0, 14, 0, c)];
    case 'relay':
    case 'switch':
      return [
        line(-20, 0, -12, 0, c),
        line(12, 0, 20, 0, c),
        line(-12, 0, 11, -9, c),
        element('circle', { cx: -12, cy: 0, r: 2, fill: c }),
        ...(kind === 'relay'
          ? [
              element('rect', { x: -8, y: 5, width: 16, height: 8, fill: ink.ground, stroke: c, 'stroke-width': 1 }),
              element('line', { x1: 0, y1: -4, x2: 0, y2: 5, stroke: c, 'stroke-width': 1, 'stroke-dasharray': '2 2' }),
            ]
          : []),
      ];
    case 'terminal':
      return [
        line(-20, 0, -4, 0, c),
        line(4, 0, 20, 0, c),
        element('circle', { cx: 0, cy: 0, r: 4, fill: ink.ground, stroke: c, 'stroke-width': 1.5 }),
      ];
    case 'connector':
      return [
        line(-20, 0, -3, 0, c),
        line(3, 0, 20, 0, c),
        element('path', { d: 'M 1 -7 A 7 7 0 0 0 1 7', fill: 'none', stroke: c, 'stroke-width': 1.5 }),
        line(-3, 0, 3, 0, c, 4),
      ];
    case 'body':
      return [line(-20, 0, 20, 0, c), line(-9, 5, 9, 5, c, 1), ...[-7, -1, 5].map((x) => line(x, 5, x - 4, 11, c, 1))];
    case 'motor':
    case 'lamp': {
      const turn = angleDeg === 0 ? {} : { transform: `rotate(${-angleDeg})` };
      const inside =
        kind === 'motor'
          ? [element('text', { y: 5, 'text-anchor': 'middle', fill: c, 'font-size': 14, ...turn }, 'M')]
          : [line(-9, -9, 9, 9, c), line(-9, 9, 9, -9, c)];
      return [
        line(-20, 0, -13, 0, c),
        line(13, 0, 20, 0, c),
        element('circle', { cx: 0, cy: 0, r: 13, fill: ink.ground, stroke: c, 'stroke-width': 1.5 }),
        ...inside,
      ];
    }
    case 'battery':
    case 'source':
      return [line(-20, 0, -4, 0, c), line(4, 0, 20, 0, c), line(-4, -6, -4, 6, c, 3), line(4, -12, 4, 12, c)];
    case 'other':
      return [line(-20, 0, -14, 0, c), line(14, 0, 20, 0, c), element('rect', box)];
  }
}
