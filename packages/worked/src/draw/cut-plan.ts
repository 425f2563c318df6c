import type { CutLengthInput, CutLengthResult } from 'loomwright';
import { drawing, element, ink, label } from './svg.js';

export interface CutPlanInput {
  readonly input: CutLengthInput;
  readonly output: CutLengthResult;
  /** Width in px: 360 on a phone, 640 or more on a desk. */
  readonly width: number;
  /** Writes a length in m. */
  readonly format: (lengthM: number, round: 'up' | 'nearest') => string;
}

/** A wire laid straight with what its length is made of; not to scale, for strips are short and routes are long. */
export function cutPlan({ input, output, format, ...page }: CutPlanInput): string {
  const width = Math.max(page.width, 240);
  const { routeLengthM, repairLoopM, stripMm } = input;
  const rounding = output.cutLengthM - output.exactLengthM;
  const parts: readonly (readonly [name: string, lengthM: number, share: number])[] = [
    ['route', routeLengthM, 6],
    ['slack', output.slackM, 2.4],
    ['loops', repairLoopM, 2.4],
    ['twist', output.twistM, 1.6],
    ['strip', stripMm / 1000, 1.6],
    ['rounding', rounding, 1.6],
  ];
  const shown = parts.filter(([, lengthM]) => lengthM > 1e-9);
  const narrow = width < 480;
  const left = 8;
  const right = width - 8;
  const all = shown.reduce((sum, [, , share]) => sum + share, 0);
  const y = 56;
  const shapes = [
    element('path', {
      d: `M ${left} 40 V 22 M ${right} 40 V 22 M ${left} 30 H ${right}`,
      stroke: ink.text,
      'stroke-width': 1,
      fill: 'none',
    }),
    element('rect', { x: width / 2 - 74, y: 16, width: 148, height: 26, fill: ink.ground }),
    label(width / 2, 35, `cut ${format(output.cutLengthM, 'up')}`, {
      'text-anchor': 'middle',
      'font-weight': 600,
      'font-size': 16,
    }),
  ];
  let at = left;
  shown.forEach(([name, lengthM, share], i) => {
    const end = at + ((right - left) * share) / all;
    const bare = name === 'strip';
    shapes.push(
      element('rect', {
        x: at + 1,
        y: bare ? y + 5 : y,
        width: end - at - 2,
        height: bare ? 8 : 18,
        fill: name === 'route' || bare ? ink.copper : ink.ground,
        stroke: ink.copper,
        'stroke-width': 1.5,
        'stroke-dasharray': name === 'rounding' ? '3 2' : undefined,
      }),
    );
    const centre = (at + end) / 2;
    if (narrow) {
      const below = y + 44 + 24 * i;
      const number = { 'text-anchor': 'middle', 'font-size': 12, fill: name === 'route' ? ink.ground : ink.text };
      shapes.push(
        ...(bare ? [] : [label(centre, y + 13.5, String(i + 1), number)]),
        label(left, below, `${i + 1}  ${name}`),
        label(right, below, format(lengthM, 'nearest'), { 'text-anchor': 'end' }),
      );
    } else {
      shapes.push(
        label(centre, y + 40, name, { 'text-anchor': 'middle', fill: ink.soft }),
        label(centre, y + 59, format(lengthM, 'nearest'), { 'text-anchor': 'middle' }),
      );
    }
    at = end;
  });
  const bottom = narrow ? y + 44 + 24 * shown.length : y + 70;
  const list = shown.map(([name, lengthM]) => `${name} ${format(lengthM, 'nearest')}`).join(', ');
  return drawing(width, bottom, 'Cut length, not to scale', `${format(output.cutLengthM, 'up')}: ${list}`, ...shapes);
}
