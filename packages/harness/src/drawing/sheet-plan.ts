import { formatQuantity } from '@loomwright/worked/quantity';
import { element, ink, label } from '@loomwright/worked/draw';
import type { LoomPlan } from '../loom/plan-type.js';
import type { Area, Spot } from './placing.js';

/** Sizes of text and of a line of it, in px. */
export const TEXT = 13;
export const LINE = 16;

/** A vehicle from above as laid out on a sheet. */
export interface SheetPlan {
  readonly put: (place: string) => Spot;
  readonly frame: Area;
  readonly thickestPx: number;
  readonly lines: readonly string[];
  /** Where the words `rear axle` stand. */
  readonly words: Area;
}

/** Where the places lie on the sheet, with the lines of the vehicle that the file gives: middle and rear axle. */
export function layOut(plan: LoomPlan, names: readonly string[], width: number): SheetPlan {
  const upright = width < 560;
  const places = names.map((name) => plan.loom.places[name] ?? { x: 0, y: 0 });
  const [xs, ys] = [places.map(({ x }) => x), places.map(({ y }) => y)];
  const [front, rear] = [Math.max(0, ...xs), Math.min(0, ...xs)];
  const [left, right] = [Math.max(0, ...ys), Math.min(0, ...ys)];
  const side = upright ? Math.min(104, width * 0.28) : 78;
  const end = upright ? 34 : 60;
  const longM = Math.max(front - rear, 0.1);
  const broadM = Math.max(left - right, 0.1);
  const pxPerM = upright
    ? Math.min((width - 2 * side) / broadM, 720 / longM)
    : Math.min((width - 2 * side) / longM, 420 / broadM);
  const frame = {
    x: 2,
    y: 24,
    width: width - 4,
    height: (upright ? longM : broadM) * pxPerM + 2 * end,
  };
  // What is left of the width is shared out, so that the drawing stands in the middle.
  const spare = upright ? (width - broadM * pxPerM) / 2 : (width - longM * pxPerM) / 2;
  const spot = (x: number, y: number): Spot =>
    upright
      ? { x: spare + (left - y) * pxPerM, y: frame.y + end + (front - x) * pxPerM }
      : { x: spare + (front - x) * pxPerM, y: frame.y + end + (y - right) * pxPerM };
  const line = (from: Spot, to: Spot): string =>
    element('line', {
      x1: from.x,
      y1: from.y,
      x2: to.x,
      y2: to.y,
      stroke: ink.rule,
      'stroke-width': 1,
      'stroke-dasharray': '7 3 1.5 3',
    });
  const step = niceMetres(longM / 5);
  const bar = { from: { x: width - 12 - step * pxPerM, y: 14 }, to: { x: width - 12, y: 14 } };
  const axle = spot(0, upright ? left : right);
  return {
    frame,
    words: upright
      ? { x: 0, y: axle.y - 17, width: 60, height: 16 }
      : { x: axle.x, y: frame.y - 2, width: 62, height: 16 },
    thickestPx: upright ? 10 : 13,
    put: (name) => {
      const { x, y } = plan.loom.places[name] ?? { x: 0, y: 0 };
      return spot(x, y);
    },
    lines: [
      line(spot(front + 0.2, 0), spot(rear - 0.2, 0)),
      line(spot(0, left + 0.25), spot(0, right - 0.25)),
      label(4, 16, upright ? '↑ front' : '← front', { fill: ink.soft, 'font-size': TEXT }),
      upright
        ? label(4, axle.y - 5, 'rear axle', { fill: ink.soft, 'font-size': 12 })
        : label(axle.x + 5, frame.y + 10, 'rear axle', { fill: ink.soft, 'font-size': 12 }),
      element('path', {
        d: `M${bar.from.x} 10v8M${bar.from.x} 14H${bar.to.x}M${bar.to.x} 10v8`,
        stroke: ink.soft,
        'stroke-width': 1.2,
        fill: 'none',
      }),
      label(bar.from.x - 6, 18, formatQuantity(step, 'm', { trim: true }), {
        'text-anchor': 'end',
        fill: ink.soft,
        'font-size': TEXT,
      }),
    ],
  };
}

/** 1, 2 or 5 times a power of ten, not above the given length. */
function niceMetres(lengthM: number): number {
  const power = 10 ** Math.floor(Math.log10(lengthM));
  return (([5, 2, 1] as const).find((n) => n * power <= lengthM) ?? 1) * power;
}

/** The name of a place, with a fine line to it where it stands apart. */
export function placeLabel(spot: Spot, area: Area, name: string, below: string): string {
  const anchor = { 'font-size': TEXT, stroke: ink.ground, 'stroke-width': 4, 'paint-order': 'stroke' };
  const toLeft = area.x + area.width < spot.x;
  const centred = area.x < spot.x && area.x + area.width > spot.x;
  const x = centred ? area.x + area.width / 2 : toLeft ? area.x + area.width : area.x;
  const set = { ...anchor, 'text-anchor': centred ? 'middle' : toLeft ? 'end' : 'start' };
  const near = {
    x: Math.min(Math.max(spot.x, area.x), area.x + area.width),
    y: Math.min(Math.max(spot.y, area.y), area.y + area.height),
  };
  const away = Math.hypot(near.x - spot.x, near.y - spot.y);
  return [
    away > 15
      ? element('line', { x1: spot.x, y1: spot.y, x2: near.x, y2: near.y, stroke: ink.soft, 'stroke-width': 0.75 })
      : '',
    label(x, area.y + 12, name, { ...set, 'font-weight': 600 }),
    below === '' ? '' : label(x, area.y + 12 + LINE, below, { ...set, fill: ink.soft, 'font-size': 12 }),
  ].join('');
}

/** Room that texts under one another take: the widest sans that may have to stand in. */
export function textWidth(texts: readonly string[]): number {
  return Math.max(...texts.map((text) => [...text].length)) * TEXT * 0.53;
}
