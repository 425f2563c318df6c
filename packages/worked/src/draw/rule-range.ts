import { drawing, element, ink, label } from './svg.js';

/** What one rule gives. */
export interface RangeRow {
  readonly name: string;
  /** A factor from 0 to 1, or null where the rule has none. */
  readonly factor: number | null;
  /** What stands where it has none. */
  readonly because?: string;
  readonly chosen: boolean;
}

export interface RuleRangeInput {
  readonly title: string;
  readonly rows: readonly RangeRow[];
  /** Width in px: 360 on a phone, 640 or more on a desk. */
  readonly width: number;
  /** Writes a factor, rounded down. */
  readonly format: (factor: number) => string;
}

/** Rules that disagree, one below the other on one scale from 0 to 1, with the range between the least and the most. */
export function ruleRange(input: RuleRangeInput): string {
  const { title, rows, width, format } = input;
  const narrow = width < 480;
  const row = narrow ? 44 : 30;
  const left = narrow ? 8 : Math.min(220, width * 0.36);
  const right = width - 56;
  const x = (factor: number): number => left + (right - left) * factor;
  const top = 10;
  const bottom = top + row * rows.length;
  const factors = rows.flatMap(({ factor }) => (factor === null ? [] : [factor]));
  const shapes: string[] = [];
  if (factors.length > 1) {
    const low = Math.min(...factors);
    const high = Math.max(...factors);
    shapes.push(
      element('rect', {
        x: x(low),
        y: top,
        width: Math.max(x(high) - x(low), 1),
        height: bottom - top,
        fill: ink.verdigris,
        'fill-opacity': 0.1,
      }),
    );
  }
  for (const tick of [0, 0.25, 0.5, 0.75, 1]) {
    shapes.push(
      element('line', { x1: x(tick), x2: x(tick), y1: top, y2: bottom, stroke: ink.rule, 'stroke-width': 1 }),
      label(x(tick), bottom + 17, String(tick), { 'text-anchor': 'middle', fill: ink.soft }),
    );
  }
  rows.forEach(({ name, factor, because, chosen }, i) => {
    const y = top + row * i + (narrow ? 32 : row / 2);
    const weight = chosen ? { 'font-weight': 600 } : {};
    const colour = chosen ? ink.copper : ink.text;
    shapes.push(
      narrow
        ? label(8, y - 14, name, { fill: colour, ...weight })
        : label(left - 12, y + 5, name, { 'text-anchor': 'end', fill: colour, ...weight }),
    );
    if (factor === null) {
      shapes.push(label(left + 4, y + 5, because ?? 'no number', { fill: ink.soft }));
      return;
    }
    shapes.push(
      element('line', { x1: x(0), x2: x(factor), y1: y, y2: y, stroke: colour, 'stroke-width': chosen ? 3 : 1.25 }),
      element('circle', {
        cx: x(factor),
        cy: y,
        r: chosen ? 6 : 4.5,
        fill: chosen ? ink.copper : ink.ground,
        stroke: colour,
        'stroke-width': 1.5,
      }),
      label(width, y + 5, format(factor), { 'text-anchor': 'end', fill: colour, ...weight }),
    );
  });
  const said = rows.map(
    ({ name, factor, because }) => `${name} ${factor === null ? (because ?? 'no number') : format(factor)}`,
  );
  return drawing(width, bottom + 26, title, said.join('; '), ...shapes);
}
