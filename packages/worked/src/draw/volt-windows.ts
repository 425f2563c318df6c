import { drawing, element, ink, label } from './svg.js';

/** One thing that an input may read, with its worst cases. */
export interface VoltState {
  readonly name: string;
  readonly lowV: number;
  readonly highV: number;
  /** Volts as marked. */
  readonly pinV: number;
}

export interface VoltWindowsInput {
  readonly title: string;
  /** Volts at the right end of the scale. */
  readonly supplyV: number;
  /** From low volts to high. */
  readonly states: readonly VoltState[];
  /** Where the input decides, between neighbours. */
  readonly thresholdsV: readonly number[];
  /** Width in px: 360 on a phone, 640 or more on a desk. */
  readonly width: number;
  readonly format: (volts: number) => string;
}

/** States of an input below one another on one scale of volts, each as wide as its worst cases; thresholds across. */
export function voltWindows(input: VoltWindowsInput): string {
  const { title, supplyV, states, thresholdsV, width, format } = input;
  const narrow = width < 480;
  const row = narrow ? 42 : 30;
  const left = narrow ? 8 : Math.min(150, width * 0.24);
  const right = width - 64;
  const x = (volts: number): number => left + ((right - left) * volts) / supplyV;
  const top = 12;
  const bottom = top + row * states.length;
  const shapes: string[] = [];
  const step = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50].find((each) => supplyV / each <= 5.5) ?? supplyV;
  for (let tick = 0; tick * step <= supplyV * (1 + 1e-9); tick++) {
    const volts = tick * step;
    shapes.push(
      element('line', { x1: x(volts), x2: x(volts), y1: top, y2: bottom, stroke: ink.rule, 'stroke-width': 1 }),
      label(x(volts), bottom + 17, String(Math.round(volts * 100) / 100), {
        'text-anchor': 'middle',
        fill: ink.soft,
      }),
    );
  }
  shapes.push(label(x(supplyV) + 20, bottom + 17, 'V', { fill: ink.soft }));
  thresholdsV.forEach((volts, i) => {
    const above = states[i + 1];
    const below = states[i];
    const apart = above !== undefined && below !== undefined && above.lowV > below.highV;
    shapes.push(
      element('line', {
        x1: x(volts),
        x2: x(volts),
        y1: top + row * i + 2,
        y2: top + row * (i + 2) - 2,
        stroke: apart ? ink.verdigris : ink.red,
        'stroke-width': 1.5,
        'stroke-dasharray': '4 3',
      }),
    );
  });
  states.forEach((state, i) => {
    const y = top + row * i + (narrow ? 30 : row / 2);
    const before = states[i - 1];
    const after = states[i + 1];
    const meets =
      (before !== undefined && before.highV >= state.lowV) || (after !== undefined && after.lowV <= state.highV);
    const colour = meets ? ink.red : ink.copper;
    shapes.push(
      narrow
        ? label(8, y - 13, meets ? `${state.name} (overlaps)` : state.name, {
            fill: meets ? ink.red : ink.text,
            stroke: ink.ground,
            'stroke-width': 4,
            'paint-order': 'stroke',
          })
        : label(left - 12, y + 5, meets ? `${state.name} ✕` : state.name, {
            'text-anchor': 'end',
            fill: meets ? ink.red : ink.text,
          }),
      element('rect', {
        x: x(state.lowV),
        y: y - 6,
        width: Math.max(x(state.highV) - x(state.lowV), 2),
        height: 12,
        fill: colour,
        'fill-opacity': 0.35,
        stroke: colour,
        'stroke-width': 1,
      }),
      element('line', {
        x1: x(state.pinV),
        x2: x(state.pinV),
        y1: y - 9,
        y2: y + 9,
        stroke: colour,
        'stroke-width': 2,
      }),
      label(width, y + 5, format(state.pinV), { 'text-anchor': 'end', fill: ink.text }),
    );
  });
  const said = states.map((s) => `${s.name} from ${format(s.lowV)} to ${format(s.highV)}`);
  return drawing(width, bottom + 26, title, said.join('; '), ...shapes);
}
