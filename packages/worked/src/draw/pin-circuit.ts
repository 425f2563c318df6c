import { drawing, element, ink, label } from './svg.js';

/** One part of the column, from the top down. */
export interface PinPart {
  readonly kind: 'resistor' | 'led' | 'switch' | 'sensor';
  /** What is written beside it: its name and value. */
  readonly label: string;
}

export interface PinCircuitInput {
  readonly title: string;
  /** What stands at the top: the signal or the supply. */
  readonly topLabel: string;
  readonly parts: readonly PinPart[];
  /** After how many parts the pin is tapped; left out where nothing is. */
  readonly tapAfter?: number;
  readonly tapLabel?: string;
  /** A resistor from the tap to a supply of its own, and what is written at its top. */
  readonly pullUp?: { readonly label: string; readonly topLabel: string };
  /** Width in px. */
  readonly width: number;
}

const line = (x1: number, y1: number, x2: number, y2: number, colour: string): string =>
  element('line', { x1, y1, x2, y2, stroke: colour, 'stroke-width': 1.5, 'stroke-linecap': 'round' });

const dot = (x: number, y: number, colour: string, r = 3): string =>
  element('circle', { cx: x, cy: y, r, fill: colour });

/** A part drawn downwards through (x, y), 24 px to either side of its middle. */
function upright(kind: PinPart['kind'], x: number, y: number, c: string): string[] {
  const box = element('rect', {
    x: x - 7,
    y: y - 15,
    width: 14,
    height: 30,
    fill: ink.ground,
    stroke: c,
    'stroke-width': 1.5,
  });
  const leads = [line(x, y - 26, x, y - 15, c), line(x, y + 15, x, y + 26, c)];
  switch (kind) {
    case 'resistor':
      return [...leads, box];
    case 'sensor':
      return [
        ...leads,
        box,
        element('path', {
          d: `M ${x - 16} ${y + 16} H ${x - 10} L ${x + 12} ${y - 16}`,
          fill: 'none',
          stroke: c,
          'stroke-width': 1.5,
        }),
      ];
    case 'led': {
      const arrow = (dy: number): string =>
        element('path', {
          d: `M ${x + 13} ${y + dy} l 9 -7 m -5 1 l 5 -1 l -1 5`,
          fill: 'none',
          stroke: c,
          'stroke-width': 1.25,
        });
      return [
        line(x, y - 26, x, y - 9, c),
        line(x, y + 9, x, y + 26, c),
        element('path', {
          d: `M ${x - 10} ${y - 9} H ${x + 10} L ${x} ${y + 9} Z`,
          fill: ink.ground,
          stroke: c,
          'stroke-width': 1.5,
        }),
        line(x - 10, y + 9, x + 10, y + 9, c),
        arrow(-4),
        arrow(5),
      ];
    }
    case 'switch':
      return [
        line(x, y - 26, x, y - 12, c),
        line(x, y + 12, x, y + 26, c),
        line(x, y + 12, x - 12, y - 10, c),
        dot(x, y + 12, c, 2),
        dot(x, y - 12, c, 2),
      ];
  }
}

/** A signal or a supply, parts below one another, the pin tapped between them, and ground. */
export function pinCircuit(input: PinCircuitInput): string {
  const { title, topLabel, parts, tapAfter, tapLabel, pullUp, width } = input;
  const x = 46;
  const step = 70;
  const top = 24;
  const at = (i: number): number => top + 10 + step * i + 26;
  const node = tapAfter === undefined ? null : top + 10 + step * tapAfter - 4;
  const end = top + 10 + step * parts.length - 4;
  const live = (i: number): string => (tapAfter === undefined || i < tapAfter ? ink.copper : ink.text);
  const shapes: string[] = [
    dot(x, top, ink.copper),
    line(x, top, x, at(0) - 26, ink.copper),
    label(x + 14, top + 1, topLabel),
  ];
  parts.forEach((part, i) => {
    const y = at(i);
    shapes.push(
      line(x, i === 0 ? top : at(i - 1) + 26, x, y - 26, live(i)),
      ...upright(part.kind, x, y, live(i)),
      label(x + (part.kind === 'led' ? 32 : 22), y + 5, part.label),
    );
  });
  shapes.push(
    line(x, at(parts.length - 1) + 26, x, end + 8, live(parts.length - 1)),
    line(x - 11, end + 8, x + 11, end + 8, ink.text),
    line(x - 7, end + 13, x + 7, end + 13, ink.text),
    line(x - 3, end + 18, x + 3, end + 18, ink.text),
  );
  if (node !== null) {
    // Beside the pin where there is room for it, else below its line.
    const text = tapLabel ?? '';
    const fits = Math.min(width - 120, 300) + 16 + text.length * 7.4 <= width;
    const right = fits ? Math.min(width - 120, 300) : width - 10;
    shapes.push(line(x, node, right, node, ink.copper), dot(x, node, ink.copper));
    if (pullUp !== undefined) {
      const px = Math.min(right - 40, 210);
      shapes.push(
        dot(px, node, ink.copper),
        line(px, node, px, node - 14, ink.blue),
        ...upright('resistor', px, node - 40, ink.blue),
        dot(px, node - 66, ink.blue),
        label(px + 14, node - 35, pullUp.label),
        label(px + 14, node - 62, pullUp.topLabel, { fill: ink.soft }),
      );
    }
    shapes.push(
      element('circle', { cx: right + 4, cy: node, r: 4, fill: ink.ground, stroke: ink.copper, 'stroke-width': 1.5 }),
      fits
        ? label(right + 16, node + 5, text, { 'font-weight': 600 })
        : label(width, node + 21, text, { 'font-weight': 600, 'text-anchor': 'end' }),
    );
  }
  const said = [topLabel, ...parts.map((part) => part.label), 'ground'];
  const pulled = pullUp === undefined ? '' : `, with ${pullUp.label} to ${pullUp.topLabel}`;
  const tapped =
    tapAfter === undefined ? '' : `; ${tapLabel ?? 'tap'} after ${parts[tapAfter - 1]?.label ?? 'the top'}${pulled}`;
  return drawing(width, end + 26, title, `${said.join(', ')}${tapped}`, ...shapes);
}
