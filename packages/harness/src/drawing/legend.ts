import { formatQuantity } from '@loomwright/worked/quantity';
import { element, ink, label } from '@loomwright/worked/draw';
import type { Scale } from './shade.js';

/** What stands below a drawing of a loom. */
export interface LegendInput {
  readonly title: string;
  readonly shades: Scale['shades'];
  /** Places that have only a number in the drawing. */
  readonly missing: readonly string[];
  readonly thickestMm: number;
  readonly thickestPx: number;
  readonly width: number;
  readonly top: number;
}

const ROW = 20;

/** The legend: the four classes with colour, dash, mark and words, the signs of places, the widths. */
export function legend(input: LegendInput): { readonly shapes: readonly string[]; readonly bottom: number } {
  const { width, top } = input;
  const longest = Math.max(...input.shades.map(({ words }) => words.length));
  const across = ([4, 2] as const).find((n) => n * (58 + longest * 7) <= width) ?? 1;
  const titles = wrapped(input.title, Math.floor((width - 8) / 7.8));
  const shapes = titles.map((text, i) => label(4, top + 14 + i * 17, text, { 'font-size': 13, 'font-weight': 600 }));
  let y = top + titles.length * 17 + 10;
  input.shades.forEach(({ colour, dash, mark, words }, i) => {
    const x = 4 + (i % across) * ((width - 8) / across);
    const row = y + Math.floor(i / across) * ROW;
    shapes.push(
      ...[
        { 'stroke-opacity': dash === null ? 1 : 0.3 },
        { 'stroke-dasharray': dash?.map((part) => (part * 7).toFixed(1)).join(' ') },
      ].map((rest) =>
        element('line', { x1: x, x2: x + 34, y1: row + 8, y2: row + 8, stroke: colour, 'stroke-width': 7, ...rest }),
      ),
      label(x + 40, row + 12.5, `${mark} ${words}`, { 'font-size': 12.5, fill: colour }),
    );
  });
  y += Math.ceil(input.shades.length / across) * ROW + 2;
  const signs = [
    [element('rect', { x: 0, y: -6, width: 12, height: 12, fill: ink.text }), 'battery'],
    [
      element('rect', {
        x: 0.75,
        y: -5.25,
        width: 10.5,
        height: 10.5,
        fill: ink.ground,
        stroke: ink.text,
        'stroke-width': 1.5,
      }),
      'fuse box or controller',
    ],
    [element('circle', { cx: 6, cy: 0, r: 5, fill: ink.ground, stroke: ink.text, 'stroke-width': 1.5 }), 'other place'],
  ] as const;
  let x = 4;
  for (const [sign, words] of signs) {
    const room = 24 + words.length * 6.7;
    if (x > 4 && x + room > width) [x, y] = [4, y + ROW];
    shapes.push(
      element('g', { transform: `translate(${x.toFixed(1)} ${(y + 8).toFixed(1)})` }, sign),
      label(x + 18, y + 12.5, words, { 'font-size': 12.5 }),
    );
    x += room + 12;
  }
  y += ROW;
  const thick = formatQuantity(input.thickestMm, 'mm', { round: 'up' });
  const notes = [
    `Width by thickness of the bundle: the widest is ${thick}. Dotted: nothing judged here.`,
    ...(input.missing.length === 0 ? [] : [`Places: ${input.missing.join(', ')}.`]),
  ];
  for (const line of notes.flatMap((note) => wrapped(note, Math.floor((width - 8) / 6.3)))) {
    shapes.push(label(4, y + 12.5, line, { 'font-size': 12.5, fill: ink.soft }));
    y += 17;
  }
  return { shapes, bottom: y + 6 };
}

/** A text in lines of at most so many characters. */
export function wrapped(text: string, most: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + word.length < most) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}
