import { formatQuantity } from '../quantity/index.js';
import { element, ink, label } from './svg.js';

/** What the volts of a ground point mean: colour, mark and words say the same, so that any two may be lost. */
export interface GroundShade {
  readonly colour: string;
  readonly mark: '' | '~' | '!' | '✕';
  readonly words: string;
}

/** The classes of a ground point, by its millivolts either way. */
export const groundShades: readonly [GroundShade, GroundShade, GroundShade, GroundShade] = [
  { colour: ink.verdigris, mark: '', words: 'up to 20 mV' },
  { colour: ink.amber, mark: '~', words: 'up to 100 mV' },
  { colour: ink.red, mark: '!', words: 'over 100 mV' },
  { colour: ink.red, mark: '✕', words: 'cut off' },
];

/** The class of a point by its volts; `null` where it has none. */
export function groundShade(voltageV: number | null, cutOff: boolean): GroundShade {
  if (cutOff || voltageV === null) return groundShades[3];
  const size = Math.abs(voltageV);
  return groundShades[size > 0.1 ? 2 : size > 0.02 ? 1 : 0];
}

/** Volts of a point as they stand beside it: millivolts, and volts from 1 V on. */
export function groundVolts(voltageV: number | null): string {
  if (voltageV === null) return 'afloat';
  const size = Math.abs(voltageV);
  if (size >= 1) return formatQuantity(voltageV, 'V', { digits: 3, prefix: 'none' });
  return formatQuantity(voltageV, 'V', { prefix: 'm', decimals: size < 0.01 ? 1 : 0 });
}

/** Current in a strap as it stands beside it. */
export function groundAmps(currentA: number): string {
  const size = Math.abs(currentA);
  return formatQuantity(size, 'A', { prefix: 'none', decimals: size < 10 ? 1 : 0 });
}

/** A ground point: a ring in the colour of its class, with the mark of the class in it. */
export function groundPoint(x: number, y: number, { colour, mark }: GroundShade): readonly string[] {
  return [
    element('circle', { cx: x, cy: y, r: 8, fill: ink.ground, stroke: colour, 'stroke-width': 3 }),
    label(x, y + 4.5, mark, { 'text-anchor': 'middle', fill: colour, 'font-size': 12, 'font-weight': 600 }),
  ];
}

/** A way between two ground points. */
export interface GroundLineInput {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
  /** `strap`: copper. `body`: metal of the vehicle. `stray`: not laid for current. */
  readonly kind: 'strap' | 'body' | 'stray';
  readonly currentA: number;
  /** Whether it carries more than it bears. */
  readonly over: boolean;
  readonly gone: boolean;
}

/** The line of a way: colour and dash by its kind, red where it is gone or carries too much, wider with its current. */
export function groundLine({ kind, currentA, over, gone, ...ends }: GroundLineInput): {
  readonly svg: string;
  readonly colour: string;
  readonly widthPx: number;
} {
  const own = { strap: ink.copper, body: ink.soft, stray: ink.blue }[kind];
  const colour = gone || over ? ink.red : own;
  const widthPx = gone ? 1.5 : Math.min(9, (kind === 'stray' ? 1.5 : 2.5) + Math.sqrt(Math.abs(currentA)) / 3);
  const dash = gone ? '2 7' : { strap: undefined, body: '1 5', stray: '7 4' }[kind];
  return {
    colour,
    widthPx,
    svg: element('line', {
      ...ends,
      stroke: colour,
      'stroke-width': widthPx,
      'stroke-linecap': 'round',
      'stroke-dasharray': dash === '1 5' ? `1 ${(widthPx * 1.6).toFixed(1)}` : dash,
    }),
  };
}
