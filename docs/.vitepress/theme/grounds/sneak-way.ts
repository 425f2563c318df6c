// The way by which something is fed that ought to be dead: from the source down, one box an element, volts between.
import { drawing, element, ink, label } from '@loomwright/worked/draw';

export interface SneakWayInput {
  readonly title: string;
  readonly fedFrom: string;
  readonly path: readonly string[];
  /** Volts after the source and after each element. */
  readonly volts: readonly (number | null)[];
  /** What is reached at the end. */
  readonly end: string;
  readonly width: number;
}

const volt = (value: number | null): string =>
  value === null ? '' : `${(Math.round(value * 100) / 100).toFixed(2).replace('-', '−')}\u202fV`;

/** The way as SVG. */
export function sneakWay({ title, fedFrom, path, volts, end, width }: SneakWayInput): string {
  const x = 16;
  const step = 46;
  const shapes: string[] = [];
  const wire = (y1: number, y2: number): string =>
    element('line', { x1: x, x2: x, y1, y2, stroke: ink.copper, 'stroke-width': 2 });
  // The two plates of a battery.
  shapes.push(
    element('line', { x1: x - 11, x2: x + 11, y1: 12, y2: 12, stroke: ink.copper, 'stroke-width': 2 }),
    element('line', { x1: x - 6, x2: x + 6, y1: 19, y2: 19, stroke: ink.copper, 'stroke-width': 3 }),
    label(x + 22, 20, fedFrom),
    label(width, 20, volt(volts[0] ?? null), { 'text-anchor': 'end', fill: ink.soft }),
    wire(19, 36),
  );
  let y = 36;
  path.forEach((name, i) => {
    shapes.push(
      element('rect', {
        x: x - 7,
        y,
        width: 14,
        height: 26,
        fill: ink.ground,
        stroke: ink.copper,
        'stroke-width': 1.75,
      }),
      label(x + 22, y + 18, name),
      label(width, y + 18, volt(volts[i + 1] ?? null), { 'text-anchor': 'end', fill: ink.soft }),
      wire(y + 26, y + step),
    );
    y += step;
  });
  shapes.push(
    element('circle', { cx: x, cy: y + 6, r: 6, fill: ink.ground, stroke: ink.red, 'stroke-width': 2.5 }),
    label(x + 22, y + 11, end, { 'font-weight': 600, fill: ink.red }),
  );
  const said = [fedFrom, ...path, end].map((name, i) => `${name} ${volt(volts[i] ?? null)}`.trim());
  return drawing(width, y + 22, title, said.join(', then '), ...shapes);
}
