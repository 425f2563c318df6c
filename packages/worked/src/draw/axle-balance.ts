import type { MassChange, VehicleLoads, VehiclePlace } from 'loomwright';
import { drawing, element, ink, label } from './svg.js';

export interface AxleBalanceInput {
  readonly wheelbaseM: number;
  readonly changes: readonly MassChange[];
  readonly before: VehicleLoads;
  readonly after: VehicleLoads;
  /** Width in px: 360 on a phone, 640 or more on a desk. */
  readonly width: number;
  /** Writes a mass. */
  readonly format: (massKg: number) => string;
}

/** Where a change begins and ends. */
function ends(change: MassChange): { from: VehiclePlace | null; to: VehiclePlace | null } {
  return { from: change.kind === 'added' ? null : change.from, to: change.kind === 'removed' ? null : change.to };
}

/**
 * A vehicle from its side, front to the left: a row for each thing that was moved, removed or added, at its true place
 * along the wheelbase, the centre of gravity before and after, and what each axle carried and carries.
 */
export function axleBalance(input: AxleBalanceInput): string {
  const { wheelbaseM, changes, before, after, format } = input;
  const width = Math.max(input.width, 240);
  const places = changes.flatMap((change) => {
    const { from, to } = ends(change);
    return [from, to].flatMap((place) => (place === null ? [] : [place.behindFrontAxleM]));
  });
  const least = Math.min(-0.25 * wheelbaseM, ...places);
  const most = Math.max(1.25 * wheelbaseM, ...places);
  const x = (alongM: number): number => 14 + ((width - 28) * (alongM - least)) / (most - least);
  const top = 34;
  const ground = top + changes.length * 34 + 58;
  const shapes = [
    label(4, 14, '← front', { fill: ink.soft }),
    ...changes.flatMap((change, i) => row(change, x, top + 34 * i, width, format)),
    line(8, width - 8, ground, ink.text),
    line(x(0) - 26, x(wheelbaseM) + 26, ground - 34, ink.text, 3),
  ];
  const axles = [
    [0, 'front', before.frontAxleKg, after.frontAxleKg],
    [wheelbaseM, 'rear', before.rearAxleKg, after.rearAxleKg],
  ] as const;
  for (const [alongM, name, was, is] of axles) {
    const at = x(alongM);
    const anchor =
      at < 96
        ? { x: 8, 'text-anchor': 'start' }
        : at > width - 96
          ? { x: width - 8, 'text-anchor': 'end' }
          : { x: at, 'text-anchor': 'middle' };
    shapes.push(
      element('circle', { cx: at, cy: ground - 17, r: 16, fill: ink.ground, stroke: ink.text, 'stroke-width': 2 }),
      element('circle', { cx: at, cy: ground - 17, r: 3, fill: ink.text }),
      label(anchor.x, ground + 22, `${name} ${format(was)}`, { 'text-anchor': anchor['text-anchor'], fill: ink.soft }),
      label(anchor.x, ground + 42, `→ ${format(is)}`, { 'text-anchor': anchor['text-anchor'], 'font-weight': 600 }),
    );
  }
  shapes.push(
    mark(x(before.behindFrontAxleM), ground - 34, ink.soft, false),
    mark(x(after.behindFrontAxleM), ground - 34, ink.copper, true),
    label(width / 2, ground + 68, 'centre of gravity: ring before, dot after', {
      'text-anchor': 'middle',
      fill: ink.soft,
      'font-size': 13,
    }),
  );
  return drawing(
    width,
    ground + 78,
    'Axle loads',
    `front axle from ${format(before.frontAxleKg)} to ${format(after.frontAxleKg)}, rear axle from ${format(before.rearAxleKg)} to ${format(after.rearAxleKg)}, after ${changes.map(({ kind, name }) => `${name} ${kind}`).join(', ')}`,
    ...shapes,
  );
}

function row(
  change: MassChange,
  x: (alongM: number) => number,
  y: number,
  width: number,
  format: AxleBalanceInput['format'],
): string[] {
  const { from, to } = ends(change);
  const a = from === null ? null : x(from.behindFrontAxleM);
  const b = to === null ? null : x(to.behindFrontAxleM);
  const left = Math.min(a ?? Infinity, b ?? Infinity);
  const text = `${change.name}, ${format(change.massKg)}${change.kind === 'moved' ? '' : ` ${change.kind}`}`;
  const near = left > width * 0.55;
  const shapes = [
    label(near ? Math.max(a ?? 0, b ?? 0) + 8 : left - 8, y, text, {
      'text-anchor': near ? 'end' : 'start',
      'font-size': 13,
    }),
  ];
  if (a !== null)
    shapes.push(
      element('rect', {
        x: a - 6,
        y: y + 6,
        width: 12,
        height: 12,
        fill: ink.ground,
        stroke: ink.soft,
        'stroke-width': 1.25,
      }),
    );
  if (a !== null && b === null) {
    shapes.push(
      element('path', { d: `M ${a - 6} ${y + 6} l 12 12 m 0 -12 l -12 12`, stroke: ink.soft, 'stroke-width': 1.25 }),
    );
  }
  if (b !== null) shapes.push(element('rect', { x: b - 6, y: y + 6, width: 12, height: 12, fill: ink.copper }));
  if (a !== null && b !== null && Math.abs(a - b) > 22) {
    const way = Math.sign(b - a);
    const tip = b - way * 9;
    shapes.push(
      line(a + way * 8, tip, y + 12, ink.copper),
      element('path', { d: `M ${tip} ${y + 12} l ${-way * 7} -4 v 8 z`, fill: ink.copper }),
    );
  }
  return shapes;
}

function line(x1: number, x2: number, y: number, colour: string, weight = 1.5): string {
  return element('line', { x1, x2, y1: y, y2: y, stroke: colour, 'stroke-width': weight });
}

function mark(x: number, y: number, colour: string, filled: boolean): string {
  return element('circle', {
    cx: x,
    cy: y,
    r: 5.5,
    fill: filled ? colour : ink.ground,
    stroke: colour,
    'stroke-width': 2,
  });
}
