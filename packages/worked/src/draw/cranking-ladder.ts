import type { CrankingPartState, LadderPoint } from 'loomwright';
import { drawing, element, ink, label } from './svg.js';

export interface CrankingLadderInput {
  /** Volts of the rested battery. */
  readonly openV: number;
  /** Volts across the starter. */
  readonly starterV: number;
  /** Points and parts of a solved cranking circuit, the battery's inside being the first part. */
  readonly ladder: readonly LadderPoint[];
  readonly parts: readonly CrankingPartState[];
  /** Width in px: 360 on a phone, 640 or more on a desk. */
  readonly width: number;
  /** Writes volts at a point. */
  readonly format: (volts: number, round: 'up' | 'down' | 'nearest') => string;
  /** Writes volts lost in a part, such as in mV. */
  readonly formatLost: (volts: number, round: 'up' | 'down' | 'nearest') => string;
  /** What stands in an empty box beside a part: the unit of `formatLost`. */
  readonly lostUnit: string;
}

interface Grid {
  readonly narrow: boolean;
  readonly rail: number;
  readonly name: number;
  readonly barX: number;
  readonly barWidth: number;
  readonly value: number;
  readonly boxX: number;
  readonly boxWidth: number;
  readonly note: number;
}

/**
 * The ladder of volts while cranking: the points where a probe can be put, from the positive post down to the negative
 * one, each with its predicted volts and an empty box for what is read, and between them the parts, each with what it
 * loses, its limit as a tick, and above what a reading means a bad joint. Readings that were given stand in their boxes.
 */
export function crankingLadder(input: CrankingLadderInput): string {
  const { openV, starterV, ladder, parts, format, formatLost, lostUnit } = input;
  const width = Math.min(Math.max(input.width, 320), 720);
  const grid = gridOf(width);
  const [inside, ...path] = parts as [CrankingPartState, ...CrankingPartState[]];
  const scale = grid.barWidth / Math.max(...path.map(({ dropV, limitV }) => Math.max(dropV, limitV ?? 0)), 1e-9);
  const shapes: string[] = [
    label(grid.value, 14, 'predicted', { 'text-anchor': 'end', fill: ink.soft }),
    label(grid.boxX, 14, 'read', { fill: ink.soft }),
  ];
  let y = 26;
  const rail = (to: number, colour: string): void => {
    shapes.push(element('line', { x1: grid.rail, x2: grid.rail, y1: y, y2: to, stroke: colour, 'stroke-width': 2 }));
  };
  const partRow = (part: CrankingPartState): void => {
    const height = grid.narrow ? 58 : 40;
    rail(y + height, part.side === 'return' ? ink.text : ink.copper);
    shapes.push(...partShapes(part, grid, y, scale, formatLost, lostUnit));
    y += height;
  };
  const given = new Map(path.map((part) => [part.name, part]));
  const out = path.filter(({ side }) => side === 'out');
  const back = path.filter(({ side }) => side === 'return');
  partRow(inside);
  shapes.unshift(label(grid.name, 14, `battery at rest ${format(openV, 'nearest')}`, { 'font-weight': 600 }));
  const firstBack = ladder.findIndex(({ side }) => side === 'return');
  ladder.forEach((point, i) => {
    if (i === firstBack) y = starterRow(shapes, grid, y, format(starterV, 'down'));
    else if (i > 0) {
      const part = i < firstBack ? out[i - 1] : back[i - firstBack - 1];
      if (part !== undefined && given.has(part.name)) partRow(part);
    }
    shapes.push(...pointShapes(point, grid, y, format));
    if (i < ladder.length - 1) rail(y + 14, point.side === 'out' ? ink.copper : ink.text);
    y += 14;
  });
  const worst = path.filter(({ verdict }) => verdict === 'bad').map(({ name }) => name);
  return drawing(
    width,
    y + 14,
    'Ladder of volts while cranking',
    `${ladder.map(({ name, aboveNegativeV }) => `${name} ${format(aboveNegativeV, 'nearest')}`).join(', ')}; ${format(starterV, 'down')} across the starter${worst.length === 0 ? '' : `; bad: ${worst.join(', ')}`}`,
    ...shapes,
  );
}

function gridOf(width: number): Grid {
  const narrow = width < 520;
  const boxWidth = narrow ? 84 : 92;
  const note = narrow ? width - 2 : width;
  const boxX = narrow ? width - boxWidth - 2 : width - boxWidth - 128;
  const barX = narrow ? 26 : Math.round(width * 0.32);
  const value = boxX - 12;
  return {
    narrow,
    rail: 8,
    name: 24,
    barX,
    barWidth: narrow ? Math.min(150, width * 0.4) : value - barX - 74,
    value,
    boxX,
    boxWidth,
    note,
  };
}

type Format = CrankingLadderInput['format'];

/** An empty box with its unit, or the reading in it. */
function boxShapes(grid: Grid, y: number, unit: string, reading: string | null, colour: string): string[] {
  const { boxX, boxWidth } = grid;
  const frame = { x: boxX, y: y - 16, width: boxWidth, height: 23, fill: 'none', stroke: ink.soft, 'stroke-width': 1 };
  return reading === null
    ? [
        element('rect', frame),
        label(boxX + boxWidth - 6, y, unit, { 'text-anchor': 'end', fill: ink.soft, 'font-size': 12 }),
      ]
    : [
        element('rect', { ...frame, stroke: colour }),
        label(boxX + 6, y, reading, { fill: colour, 'font-weight': 600 }),
      ];
}

function pointShapes(point: LadderPoint, grid: Grid, y: number, format: Format): string[] {
  const colour = point.side === 'out' ? ink.copper : ink.text;
  const shown = shorten(point.name, grid.narrow ? 22 : 40);
  return [
    element('circle', { cx: grid.rail, cy: y, r: 5, fill: ink.ground, stroke: colour, 'stroke-width': 2 }),
    label(grid.name, y + 5, shown, { 'font-weight': 600 }),
    label(grid.value, y + 5, format(point.aboveNegativeV, 'nearest'), { 'text-anchor': 'end', 'font-weight': 600 }),
    ...(point.name === 'negative post'
      ? [label(grid.boxX, y + 5, 'black lead here', { fill: ink.soft, 'font-size': 12 })]
      : boxShapes(grid, y + 5, 'V', null, ink.soft)),
  ];
}

function partShapes(
  part: CrankingPartState,
  grid: Grid,
  top: number,
  scale: number,
  format: Format,
  unit: string,
): string[] {
  const { name, side, dropV, limitV, badAboveV, readingV, verdict } = part;
  const { narrow, barX, value, note } = grid;
  const over = limitV !== null && dropV > limitV;
  const y = top + 18;
  const inside = side === 'battery';
  const colour = over ? ink.red : side === 'return' ? ink.text : ink.copper;
  const tone = verdict === 'bad' ? ink.red : verdict === 'sound' ? ink.verdigris : ink.amber;
  const read = readingV === null ? null : `${format(readingV, 'nearest')} ${verdict === 'bad' ? '✕' : '✓'}`;
  const limit =
    limitV === null ? '' : over ? `✕ limit ${format(limitV, 'nearest')}` : `limit ${format(limitV, 'nearest')}`;
  const bad =
    verdict === null ? `bad above ${format(badAboveV, 'up')}` : verdict === 'below' ? 'less than expected' : verdict;
  const barY = narrow ? y + 12 : y - 9;
  const shapes = [
    label(grid.name, y, shorten(inside ? 'inside the battery' : name, narrow ? 20 : 26), { fill: ink.soft }),
    label(value, y, format(dropV, 'up'), { 'text-anchor': 'end', fill: over ? ink.red : ink.text }),
    ...(inside ? [] : boxShapes(grid, y, unit, read, tone)),
  ];
  if (inside) return shapes;
  shapes.push(
    element('rect', { x: barX, y: barY, width: Math.max(dropV * scale, 1), height: 8, fill: colour }),
    label(note, narrow ? y + 20 : y - 6, bad, {
      'text-anchor': 'end',
      fill: verdict === null ? ink.soft : tone,
      'font-size': 12,
    }),
  );
  if (limitV !== null) {
    const x = barX + limitV * scale;
    shapes.push(
      element('line', {
        x1: x,
        x2: x,
        y1: barY - 4,
        y2: barY + 12,
        stroke: over ? ink.red : ink.verdigris,
        'stroke-width': 1.5,
      }),
      narrow
        ? label(barX + grid.barWidth + 8, y + 20, over ? '✕' : '', { fill: ink.red, 'font-size': 12 })
        : label(note, y + 9, limit, { 'text-anchor': 'end', fill: over ? ink.red : ink.soft, 'font-size': 12 }),
    );
  }
  return shapes;
}

function starterRow(shapes: string[], grid: Grid, y: number, volts: string): number {
  const height = 58;
  const middle = y + height / 2;
  shapes.push(
    element('line', {
      x1: grid.rail,
      x2: grid.rail,
      y1: y,
      y2: y + height,
      stroke: ink.soft,
      'stroke-dasharray': '2 3',
    }),
    element('circle', { cx: grid.rail, cy: middle, r: 8, fill: ink.ground, stroke: ink.copper, 'stroke-width': 2 }),
    label(grid.rail, middle + 4, 'M', { 'text-anchor': 'middle', 'font-size': 11, 'font-weight': 600 }),
    label(grid.name, middle + 5, 'across the starter', { fill: ink.copper, 'font-weight': 600 }),
    label(grid.value, middle + 5, volts, { 'text-anchor': 'end', fill: ink.copper, 'font-weight': 600 }),
    ...boxShapes(grid, middle + 5, 'V', null, ink.soft),
  );
  return y + height;
}

function shorten(text: string, most: number): string {
  return text.length > most ? `${text.slice(0, most - 1)}…` : text;
}
