import type { WarningState } from 'loomwright';
import { drawing, element, ink, label } from './svg.js';
import { symbol } from './symbol.js';

export interface WarningCircuitInput {
  readonly states: readonly WarningState[];
  /** What is fitted, and the resistor's value as written. */
  readonly hasLamp: boolean;
  readonly hasLed: boolean;
  readonly resistorLabel: string | null;
  readonly hasDiode: boolean;
  /** What stands behind the terminal. */
  readonly behind: 'rotor' | 'switch';
  /** Width in px. */
  readonly width: number;
  readonly format: (amps: number) => string;
}

const TITLES: Readonly<Record<WarningState['state'], string>> = {
  'key-on': 'key on, engine off',
  charging: 'running, charging',
  'belt-off': 'running, belt off',
  'wire-open': 'wire broken',
  'wire-grounded': 'wire on ground',
  'rotor-open': 'rotor broken',
};

const line = (x1: number, y1: number, x2: number, y2: number, c: string): string =>
  element('line', { x1, y1, x2, y2, stroke: c, 'stroke-width': 1.5, 'stroke-linecap': 'round' });
const ground = (x: number, y: number, c: string): string[] => [
  line(x - 9, y, x + 9, y, c),
  line(x - 5.5, y + 4, x + 5.5, y + 4, c),
  line(x - 2, y + 8, x + 2, y + 8, c),
];
const cross = (x: number, y: number): string[] => [
  line(x - 6, y - 6, x + 6, y + 6, ink.red),
  line(x - 6, y + 6, x + 6, y - 6, ink.red),
];

/** The charge warning in six states: what is live stands in copper, with its current and how the lamp looks. */
export function warningCircuit(input: WarningCircuitInput): string {
  const { states, width } = input;
  const columns = width < 560 ? 2 : 3;
  const wide = width / columns;
  const high = 250;
  const shapes = states.flatMap((state, i) =>
    panel(input, state, (i % columns) * wide, Math.floor(i / columns) * high, wide),
  );
  const said = states.map((s) => `${TITLES[s.state]}: ${shown(s)}, ${input.format(Math.abs(s.currentA))}`);
  const rows = Math.ceil(states.length / columns);
  return drawing(width, rows * high, 'The charge warning in every state', said.join('; '), ...shapes);
}

function shown(state: WarningState): string {
  const parts = [state.lamp === null ? '' : `lamp ${state.lamp}`, state.led === null ? '' : `LED ${state.led}`];
  return parts.filter((part) => part !== '').join(', ') || 'no lamp';
}

function panel(input: WarningCircuitInput, state: WarningState, left: number, top: number, wide: number): string[] {
  const { hasLamp, hasLed, resistorLabel, hasDiode, behind, format } = input;
  const live = Math.abs(state.currentA) > 1e-9;
  const c = live ? ink.copper : ink.soft;
  const x = left + wide / 2 - 14;
  const y = (dy: number): number => top + dy;
  const parts = [hasLamp ? 'lamp' : '', hasLed ? 'led' : '', resistorLabel === null ? '' : 'resistor'].filter(
    (p) => p !== '',
  );
  const step = 40;
  const at = (i: number): number => x + (i - (parts.length - 1) / 2) * step;
  const out: string[] = [
    label(left + 2, y(14), TITLES[state.state], { 'font-weight': 600 }),
    label(left + 2, y(31), shown(state), { fill: ink.soft, 'font-size': 13 }),
    element('circle', { cx: x, cy: y(46), r: 3, fill: ink.copper }),
    label(x + 8, y(50), 'ignition', { 'font-size': 12, fill: ink.soft }),
    line(x, y(46), x, y(60), c),
    line(at(0), y(60), at(parts.length - 1), y(60), c),
    line(at(0), y(128), at(parts.length - 1), y(128), c),
  ];
  parts.forEach((part, i) => {
    const px = at(i);
    out.push(line(px, y(60), px, y(76), c), line(px, y(112), px, y(128), c));
    if (part === 'lamp') {
      const light = state.lampLightFraction ?? 0;
      if (light >= 0.001)
        out.push(
          element('circle', {
            cx: px,
            cy: y(94),
            r: 18,
            fill: ink.amber,
            'fill-opacity': Math.min(0.12 + light * 0.4, 0.5),
          }),
        );
      out.push(symbol('lamp', px, y(94), 90, c));
    } else if (part === 'resistor') out.push(symbol('other', px, y(94), 90, c));
    else {
      out.push(
        line(px, y(76), px, y(112), c),
        element('path', {
          d: `M ${px - 9} ${y(86)} H ${px + 9} L ${px} ${y(102)} Z`,
          fill: ink.ground,
          stroke: c,
          'stroke-width': 1.5,
        }),
        line(px - 9, y(102), px + 9, y(102), c),
      );
    }
  });
  if (resistorLabel !== null)
    out.push(label(at(parts.length - 1) + 11, y(98), resistorLabel, { 'font-size': 12, fill: ink.soft }));
  const grounded = state.state === 'wire-grounded';
  const below = grounded || state.state === 'wire-open' ? ink.soft : c;
  out.push(line(x, y(128), x, y(hasDiode ? 134 : 158), c));
  if (hasDiode)
    out.push(
      element('path', {
        d: `M ${x - 7} ${y(134)} H ${x + 7} L ${x} ${y(146)} Z`,
        fill: ink.ground,
        stroke: c,
        'stroke-width': 1.5,
      }),
      line(x - 7, y(146), x + 7, y(146), c),
      line(x, y(146), x, y(158), c),
    );
  out.push(
    label(x + 14, y(150), live ? format(Math.abs(state.currentA)) : 'nothing flows', {
      fill: c,
      'font-weight': live ? 600 : undefined,
    }),
  );
  if (state.state === 'wire-open') out.push(...cross(x, y(165)));
  else out.push(line(x, y(158), x, y(174), grounded ? below : c));
  if (grounded)
    out.push(
      line(x, y(160), x - 28, y(160), ink.red),
      line(x - 28, y(160), x - 28, y(168), ink.red),
      ...ground(x - 28, y(168), ink.red),
    );
  out.push(
    element('circle', { cx: x, cy: y(178), r: 4, fill: ink.ground, stroke: below, 'stroke-width': 1.5 }),
    label(x + 10, y(182), behind === 'rotor' ? 'D+' : 'L', { 'font-size': 12, fill: ink.soft }),
  );
  const charging = state.state === 'charging';
  const last = charging ? ink.soft : below;
  out.push(
    symbol(behind === 'rotor' ? 'other' : 'switch', x, y(204), 90, last),
    label(x + 16, y(209), charging ? 'gives its own' : behind === 'rotor' ? 'rotor' : 'switch', {
      'font-size': 12,
      fill: ink.soft,
    }),
    line(x, y(224), x, y(228), last),
    ...ground(x, y(228), last),
  );
  if (state.state === 'rotor-open') out.push(...cross(x, behind === 'rotor' ? y(204) : y(238)));
  return out;
}
