// The map of Sandpiper's grounds: straps as lines with their current, points with their millivolts, sensors as dots.
import type { GroundFaultsResult } from 'loomwright';
import {
  drawing,
  element,
  groundAmps,
  groundLine,
  groundPoint,
  groundShade,
  groundVolts,
  ink,
  label,
} from '@loomwright/worked/draw';
import { limits, sensors, straps, strays } from '../../../examples/sandpiper-grounds';

/** A point of the map: where it lies as shares of the width and the height, where its label begins, and its sensors. */
interface Place {
  readonly x: number;
  readonly y: number;
  readonly label: readonly [dx: number, dy: number, anchor: 'start' | 'middle' | 'end'];
  /** Sensors stand to the right of it, or to the left where lines leave to the right. */
  readonly left?: true;
}
const place = (x: number, y: number, label: Place['label'], left?: true): Place => ({
  x,
  y,
  label,
  ...(left === undefined ? {} : { left }),
});

/** From the nose on the left to the tail on the right. Labels stand where no line leaves. */
const WIDE: Readonly<Record<string, Place>> = {
  nose: place(0.05, 0.3, [0, -28, 'middle']),
  'battery post': place(0.2, 0.08, [0, -28, 'middle']),
  engine: place(0.24, 0.84, [0, 25, 'middle'], true),
  'frame front': place(0.4, 0.3, [28, 16, 'start']),
  bulkhead: place(0.52, 0.6, [0, 36, 'middle']),
  dash: place(0.7, 0.84, [0, 25, 'middle']),
  roof: place(0.65, 0.42, [0, -28, 'middle']),
  'frame rear': place(0.8, 0.14, [0, -28, 'middle']),
  tail: place(0.95, 0.44, [0, 25, 'middle']),
};
/** The same for a phone: from the nose at the top to the tail at the foot. */
const NARROW: Readonly<Record<string, Place>> = {
  nose: place(0.97, 0.19, [14, -28, 'end']),
  'battery post': place(0.55, 0.03, [15, -2, 'start']),
  engine: place(0.1, 0.21, [-34, -32, 'start'], true),
  'frame front': place(0.55, 0.36, [18, 8, 'start']),
  bulkhead: place(0.32, 0.51, [16, 4, 'start']),
  roof: place(0.44, 0.65, [16, 2, 'start']),
  dash: place(0.08, 0.77, [-12, 26, 'start']),
  'frame rear': place(0.86, 0.75, [-3, 27, 'start']),
  tail: place(0.55, 0.96, [-15, -2, 'end']),
};

export interface GroundMapInput {
  readonly result: GroundFaultsResult;
  /** Names of the straps that are off. */
  readonly lost: readonly string[];
  readonly width: number;
}

/** The map as SVG. Lines carry the name of their strap in `data-strap`, so that a click can be told. */
export function groundMap({ result, lost, width }: GroundMapInput): string {
  const narrow = width < 520;
  const [w, h] = narrow ? [width, 640] : [width, Math.min(470, width * 0.72)];
  const pad = narrow ? 46 : 52;
  const places = narrow ? NARROW : WIDE;
  const at = (node: string): readonly [number, number] => {
    const { x, y } = places[node] as Place;
    return [pad + x * (w - 2 * pad), narrow ? 24 + y * (h - 56) : 40 + y * (h - 96)];
  };
  const volts = (node: string): number | null => result.intactV[result.nodes.indexOf(node)] ?? null;
  const off = new Set(result.looseNodes);
  const bears = new Map(limits.map(({ branch, limitA }) => [branch, limitA]));
  const lines: string[] = [];
  const texts: string[] = [];
  for (const { name, from, to, resistanceOhm } of [...straps, ...strays]) {
    const [x1, y1] = at(from);
    const [x2, y2] = at(to);
    const gone = lost.includes(name);
    const [v, u] = [volts(from), volts(to)];
    const current = gone || v === null || u === null ? 0 : (v - u) / resistanceOhm;
    const limitA = bears.get(name);
    const over = limitA !== undefined && Math.abs(current) > limitA;
    const line = { x1, y1, x2, y2 };
    const kind = limitA === undefined ? 'strap' : 'stray';
    const { svg, colour } = groundLine({ ...line, kind, currentA: current, over, gone });
    lines.push(svg);
    if (limitA === undefined) {
      // A wide line that is not seen takes the click.
      lines.push(
        element('line', {
          ...line,
          stroke: 'transparent',
          'stroke-width': 26,
          'data-strap': name,
          style: 'cursor:pointer',
        }),
      );
    }
    const text = gone ? '✕ off' : `${over ? '! ' : ''}${groundAmps(current)}`;
    const half = text.length * 3.3 + 3;
    const place = limitA === undefined ? 0.5 : 0.42;
    const [x, y] = [x1 + (x2 - x1) * place, y1 + (y2 - y1) * place];
    texts.push(
      element('rect', {
        x: x - half,
        y: y - 9,
        width: 2 * half,
        height: 18,
        fill: ink.ground,
        'pointer-events': 'none',
      }),
      label(x, y + 4.5, text, {
        'text-anchor': 'middle',
        fill: colour,
        'font-size': 13,
        'font-weight': over || gone ? 600 : undefined,
        'pointer-events': 'none',
      }),
    );
  }
  const points = Object.keys(places).flatMap((node) => {
    const [x, y] = at(node);
    const v = volts(node);
    const shade = groundShade(v, off.has(node));
    const [dx, dy, anchor] = (places[node] as Place).label;
    // A rim in the colour of the ground keeps a line off the letters where a narrow map brings one near.
    const attributes = {
      'text-anchor': anchor,
      'pointer-events': 'none',
      stroke: ink.ground,
      'stroke-width': 4,
      'stroke-linejoin': 'round',
      'paint-order': 'stroke',
    } as const;
    return [
      ...groundPoint(x, y, shade),
      label(x + dx, y + dy, node, attributes),
      label(x + dx, y + dy + 15, groundVolts(v), { ...attributes, fill: shade.colour, 'font-weight': 600 }),
    ];
  });
  const dots = sensors.flatMap(({ node, permittedMv }, i) => {
    const [x, y] = at(node);
    const same = sensors.slice(0, i).filter((other) => other.node === node).length;
    const shift = result.intact.watched[i]?.offsetMv ?? null;
    const bad = shift === null || Math.abs(shift) > permittedMv;
    const away = 19 + 17 * same;
    const cx = (places[node] as Place).left === true ? x - away : x + away;
    const colour = bad ? ink.red : ink.verdigris;
    return [
      element('circle', { cx, cy: y, r: 8, fill: colour }),
      label(cx, y + 4.5, 'abcdefgh'.charAt(i), {
        'text-anchor': 'middle',
        fill: ink.ground,
        'font-size': 12,
        'font-weight': 600,
      }),
    ];
  });
  const said = Object.keys(places).map((node) => {
    const v = volts(node);
    return `${node} ${groundVolts(v)}${off.has(node) ? ', cut off' : ''}`;
  });
  return drawing(w, h, 'Map of the grounds', said.join('; '), ...lines, ...texts, ...points, ...dots);
}
