import type { SplitLink, SplitState } from 'loomwright';
import { drawing, element, ink, label } from './svg.js';
import { symbol } from './symbol.js';

export interface SplitCircuitInput {
  /** What moment it is, as a heading. */
  readonly title: string;
  readonly state: SplitState;
  readonly kind: SplitLink['kind'];
  /** What is drawn at each battery in A. */
  readonly starterLoadA: number;
  readonly serviceLoadA: number;
  /** Width in px: 320 or more. */
  readonly width: number;
  readonly formatV: (volts: number) => string;
  readonly formatA: (amps: number) => string;
}

const MOST_WIDTH = 560;
const BUS = 66;

const line = (x1: number, y1: number, x2: number, y2: number, c: string): string =>
  element('line', { x1, y1, x2, y2, stroke: c, 'stroke-width': 1.5, 'stroke-linecap': 'round' });
const ground = (x: number, y: number): string[] => [
  line(x, y - 10, x, y, ink.text),
  line(x - 9, y, x + 9, y, ink.text),
  line(x - 5.5, y + 4, x + 5.5, y + 4, ink.text),
  line(x - 2, y + 8, x + 2, y + 8, ink.text),
];
const middle = { 'text-anchor': 'middle' } as const;

interface Column {
  readonly name: string;
  readonly x: number;
  readonly volts: number;
  readonly battery: boolean;
  /** Current into it, for an alternator out of it; and into the loads beside it. */
  readonly amps: number;
  readonly loadA: number;
}

/** Alternator, two batteries and what joins them: volts at each, current in each way; what flows stands in copper. */
export function splitCircuit(input: SplitCircuitInput): string {
  const { title, state, kind, width, formatV, formatA } = input;
  const wide = Math.min(Math.max(width, 320), MOST_WIDTH);
  const star = kind === 'isolator-diodes';
  const [left, centre, right] = [wide * 0.13, wide * 0.5, wide * 0.87];
  const alternator: Column = {
    name: 'alternator',
    x: star ? centre : left,
    volts: state.alternatorV,
    battery: false,
    amps: state.alternatorA,
    loadA: 0,
  };
  const starter: Column = {
    name: 'starter battery',
    x: star ? left : centre,
    volts: state.starterV,
    battery: true,
    amps: state.starterA,
    loadA: input.starterLoadA,
  };
  const service: Column = {
    name: 'service battery',
    x: right,
    volts: state.serviceV,
    battery: true,
    amps: state.serviceA,
    loadA: input.serviceLoadA,
  };
  const mainA = star ? state.alternatorA - state.linkA : state.alternatorA;
  const columns = [alternator, starter, service];
  const said = columns.map(({ name, volts, amps }) => `${name} ${formatV(volts)}, ${formatA(amps)}`).join('; ');
  return drawing(
    wide,
    248,
    title,
    `${said}; ${formatA(state.linkA)} in the service cable`,
    label(0, 14, title, { 'font-weight': 600 }),
    ...way(alternator.x, starter.x, mainA, star ? 'diode' : 'wire', formatA),
    ...way(star ? alternator.x : starter.x, service.x, state.linkA, star ? 'diode' : kind, formatA),
    ...columns.flatMap((column) => columnShapes(column, formatV, formatA)),
  );
}

function way(
  from: number,
  to: number,
  amps: number,
  part: 'wire' | SplitLink['kind'],
  format: (a: number) => string,
): string[] {
  const c = Math.abs(amps) > 1e-9 ? ink.copper : ink.soft;
  const at = (from + to) / 2;
  const sign = Math.sign(to - from);
  const half = part === 'wire' ? 0 : part === 'converter' ? 16 : 20;
  return [
    line(from, BUS, at - sign * half, BUS, c),
    line(at + sign * half, BUS, to, BUS, c),
    ...linkShapes(part, at, sign, c),
    ...arrow(at, amps * sign, c),
    label(at, BUS - 18, amps === 0 ? 'nothing' : format(Math.abs(amps)), { ...middle, fill: c, 'font-weight': 600 }),
  ];
}

/** The way that the current goes, below the part. */
function arrow(x: number, amps: number, c: string): string[] {
  if (Math.abs(amps) < 1e-9) return [];
  const s = Math.sign(amps);
  const y = BUS + 28;
  return [
    line(x - 12 * s, y, x + 8 * s, y, c),
    element('path', { d: `M ${x + 13 * s} ${y} l ${-7 * s} -4 v 8 Z`, fill: c }),
  ];
}

function linkShapes(part: 'wire' | SplitLink['kind'], x: number, sign: number, c: string): string[] {
  if (part === 'wire') return [];
  if (part === 'relay') {
    // Closed, with its coil below.
    return [
      line(x - 20, BUS, x + 20, BUS, c),
      ...[-12, 12].map((dx) => element('circle', { cx: x + dx, cy: BUS, r: 2.5, fill: c })),
      element('line', { x1: x, y1: BUS, x2: x, y2: BUS + 8, stroke: c, 'stroke-width': 1, 'stroke-dasharray': '2 2' }),
      element('rect', { x: x - 9, y: BUS + 8, width: 18, height: 9, fill: ink.ground, stroke: c, 'stroke-width': 1 }),
    ];
  }
  if (part === 'converter') {
    return [
      element('rect', {
        x: x - 16,
        y: BUS - 12,
        width: 32,
        height: 24,
        fill: ink.ground,
        stroke: c,
        'stroke-width': 1.5,
      }),
      line(x - 16, BUS + 12, x + 16, BUS - 12, c),
    ];
  }
  const s = sign;
  return [
    line(x - 20 * s, BUS, x + 20 * s, BUS, c),
    element('path', {
      d: `M ${x - 8 * s} ${BUS - 8} V ${BUS + 8} L ${x + 7 * s} ${BUS} Z`,
      fill: ink.ground,
      stroke: c,
      'stroke-width': 1.5,
    }),
    line(x + 7 * s, BUS - 8, x + 7 * s, BUS + 8, c),
  ];
}

function columnShapes(
  { name, x, volts, battery, amps, loadA }: Column,
  formatV: (v: number) => string,
  formatA: (a: number) => string,
): string[] {
  const c = Math.abs(amps) > 1e-9 ? ink.copper : ink.soft;
  const does = battery ? (amps > 1e-9 ? 'takes' : amps < -1e-9 ? 'gives' : 'takes nothing') : 'gives';
  const current = battery && Math.abs(amps) <= 1e-9 ? does : `${does} ${formatA(Math.abs(amps))}`;
  const body = battery
    ? [symbol('battery', x, 110, -90, c)]
    : [
        line(x, 90, x, 97, c),
        element('circle', { cx: x, cy: 110, r: 13, fill: ink.ground, stroke: c, 'stroke-width': 1.5 }),
        label(x, 115, 'G', { ...middle, fill: c }),
        line(x, 123, x, 130, c),
      ];
  return [
    line(x, BUS, x, 90, c),
    element('circle', { cx: x, cy: BUS, r: 3.5, fill: c }),
    label(x, BUS - 18, formatV(volts), { ...middle, 'font-weight': 600 }),
    ...body,
    ...ground(x, 140),
    label(x, 172, name.split(' ')[0] as string, { ...middle, fill: ink.soft }),
    ...(battery ? [label(x, 188, 'battery', { ...middle, fill: ink.soft })] : []),
    label(x, 208, current, { ...middle, fill: c, 'font-weight': 600 }),
    ...(loadA > 0 ? [label(x, 225, `loads ${formatA(loadA)}`, { ...middle, fill: ink.copper })] : []),
  ];
}
