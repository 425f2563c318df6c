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

/** Where each point lies: from the nose to the tail, and from the right-hand side to the left, as shares. */
const PLACE: Readonly<Record<string, readonly [along: number, across: number]>> = {
  nose: [0.05, 0.3],
  'battery post': [0.2, 0.08],
  engine: [0.24, 0.84],
  'frame front': [0.4, 0.3],
  bulkhead: [0.52, 0.62],
  dash: [0.7, 0.84],
  roof: [0.72, 0.44],
  'frame rear': [0.8, 0.14],
  tail: [0.95, 0.44],
};

/** How the label of a point stands to it. */
type Side = 'above' | 'below';
const SIDE: Readonly<Record<string, Side>> = {
  engine: 'below',
  dash: 'below',
  'battery post': 'above',
  'frame rear': 'above',
  nose: 'above',
  'frame front': 'above',
  bulkhead: 'below',
  roof: 'above',
  tail: 'below',
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
  const at = (node: string): readonly [number, number] => {
    const [along, across] = PLACE[node] as readonly [number, number];
    return narrow
      ? [pad + (1 - across) * (w - 2 * pad), 34 + along * (h - 84)]
      : [pad + along * (w - 2 * pad), 40 + across * (h - 96)];
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
  const points = Object.keys(PLACE).flatMap((node) => {
    const [x, y] = at(node);
    const v = volts(node);
    const shade = groundShade(v, off.has(node));
    const up = SIDE[node] === 'above';
    // Labels of points at the edge lean inwards.
    const anchor = x < pad + 8 ? 'start' : x > w - pad - 8 ? 'end' : 'middle';
    const lx = anchor === 'start' ? Math.min(x, 4) : anchor === 'end' ? Math.max(x, w - 4) : x;
    const attributes = { 'text-anchor': anchor, 'pointer-events': 'none' } as const;
    return [
      ...groundPoint(x, y, shade),
      label(lx, up ? y - 28 : y + 24, node, attributes),
      label(lx, up ? y - 13 : y + 39, groundVolts(v), { ...attributes, fill: shade.colour, 'font-weight': 600 }),
    ];
  });
  const dots = sensors.flatMap(({ node, permittedMv }, i) => {
    const [x, y] = at(node);
    const same = sensors.slice(0, i).filter((other) => other.node === node).length;
    const shift = result.intact.watched[i]?.offsetMv ?? null;
    const bad = shift === null || Math.abs(shift) > permittedMv;
    const cx = x + 19 + 17 * same;
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
  const said = Object.keys(PLACE).map((node) => {
    const v = volts(node);
    return `${node} ${groundVolts(v)}${off.has(node) ? ', cut off' : ''}`;
  });
  return drawing(w, h, 'Map of the grounds', said.join('; '), ...lines, ...texts, ...points, ...dots);
}
