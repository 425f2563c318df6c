import type { SolvedPart } from 'loomwright';
import { drawing, element, ink, label } from './svg.js';

export interface VoltLadderInput {
  /** Supply voltage in V. */
  readonly supplyV: number;
  /** Volts at the load. */
  readonly loadV: number;
  /** The parts of a solved path, in order. */
  readonly parts: readonly SolvedPart[];
  /** Most volts that may be lost, drawn as a line; left out where there is none. */
  readonly limitV?: number;
  /** Name of the load. */
  readonly loadName: string;
  /** Width in px: 360 on a phone, 640 or more on a desk. */
  readonly width: number;
  /** Writes a voltage: volts lost are rounded up, volts left down. */
  readonly format: (volts: number, round: 'up' | 'down' | 'nearest') => string;
}

/**
 * The ladder of volts: one rung a part, each bar beginning where the one before ended, so that one sees what is lost
 * where, how much is left to the limit, and where the load stands between way out and way back.
 */
export function voltLadder(input: VoltLadderInput): string {
  const { supplyV, loadV, parts, limitV, loadName, width, format } = input;
  const narrow = width < 480;
  const rung = narrow ? 40 : 26;
  const left = narrow ? 8 : Math.min(200, width * 0.3);
  const right = width - (narrow ? 8 : 74);
  const total = supplyV - loadV;
  const span = Math.max(total, limitV ?? 0, 1e-9) * 1.04;
  const x = (volts: number): number => left + ((right - left) * volts) / span;
  const top = 30;
  const shapes: string[] = [];
  let y = top;
  let lost = 0;
  const row = (name: string, value: string, colour: string): void => {
    if (narrow) {
      shapes.push(label(left, y + 14, name, { fill: colour }));
      shapes.push(label(right, y + 14, value, { 'text-anchor': 'end', fill: colour }));
    } else {
      shapes.push(label(left - 12, y + 17, name, { 'text-anchor': 'end', fill: colour }));
      shapes.push(label(width, y + 17, value, { 'text-anchor': 'end', fill: colour }));
    }
  };
  const bar = (part: SolvedPart): void => {
    const colour = part.side === 'out' ? ink.copper : ink.text;
    row(part.name, format(part.dropV, 'up'), ink.text);
    const from = x(lost);
    const to = Math.max(x(lost + part.dropV), from + 1);
    const barY = y + (narrow ? 21 : 7);
    shapes.push(element('rect', { x: from, y: barY, width: to - from, height: 12, fill: colour }));
    lost += part.dropV;
    shapes.push(
      element('line', {
        x1: x(lost),
        x2: x(lost),
        y1: barY + 12,
        y2: y + rung + (narrow ? 21 : 7),
        stroke: ink.soft,
        'stroke-width': 0.75,
      }),
    );
    y += rung;
  };
  parts.filter((part) => part.side === 'out').forEach(bar);
  shapes.push(
    element('line', {
      x1: narrow ? 0 : left,
      x2: right,
      y1: y + rung / 2,
      y2: y + rung / 2,
      stroke: ink.rule,
      'stroke-dasharray': '2 3',
    }),
    element('rect', {
      x: x(lost) - 5,
      y: y + rung / 2 - 5,
      width: 10,
      height: 10,
      fill: ink.ground,
      stroke: ink.copper,
      'stroke-width': 1.5,
    }),
  );
  if (narrow) {
    const near = x(lost) > width / 2;
    shapes.push(
      label(near ? left : right, y + rung / 2 - 5, `${loadName}, ${format(loadV, 'down')} across it`, {
        'text-anchor': near ? 'start' : 'end',
        'font-weight': 600,
      }),
    );
  } else {
    shapes.push(label(left - 12, y + 18, loadName, { 'text-anchor': 'end', 'font-weight': 600 }));
    shapes.push(label(width, y + 18, format(loadV, 'down'), { 'text-anchor': 'end', 'font-weight': 600 }));
  }
  y += rung;
  parts.filter((part) => part.side === 'return').forEach(bar);
  const bottom = y + 6;
  const axis = [
    element('line', { x1: x(0), x2: x(0), y1: top - 4, y2: bottom, stroke: ink.soft, 'stroke-width': 1 }),
    label(
      x(0),
      top - 12,
      narrow ? `${format(supplyV, 'nearest')} supply` : `${format(supplyV, 'nearest')} at the supply`,
      {
        fill: ink.soft,
      },
    ),
  ];
  if (limitV !== undefined) {
    const met = total <= limitV;
    const colour = met ? ink.verdigris : ink.red;
    axis.push(
      element('line', {
        x1: x(limitV),
        x2: x(limitV),
        y1: top - 4,
        y2: bottom,
        stroke: colour,
        'stroke-width': 1.25,
        'stroke-dasharray': '5 3',
      }),
      label(x(limitV) - 4, bottom + 15, `limit ${format(limitV, 'nearest')}: ${met ? 'met' : 'not met'}`, {
        'text-anchor': 'end',
        fill: colour,
      }),
    );
  }
  axis.push(
    label(left, bottom + (limitV === undefined ? 15 : narrow ? 33 : 15), `lost in all ${format(total, 'up')}`, {
      fill: ink.text,
    }),
  );
  return drawing(
    width,
    bottom + (narrow ? 40 : 24),
    'Ladder of volts',
    `${format(supplyV, 'nearest')} at the supply, ${format(loadV, 'down')} at ${loadName}, ${format(total, 'up')} lost in ${parts.length} parts`,
    ...axis,
    ...shapes,
  );
}
