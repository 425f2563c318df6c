// Where the power of a network goes: a bar each for what uses it and for what loses it, the largest first.
import type { SolveNetworkResult } from 'loomwright';
import { drawing, element, ink, label } from '@loomwright/worked/draw';
import { formatQuantity } from '@loomwright/worked/quantity';

interface Bar {
  readonly name: string;
  readonly powerW: number;
}

const ROW = 26;
const watts = (value: number, round: 'nearest' | 'up'): string =>
  formatQuantity(value, 'W', { digits: 3, prefix: 'none', round });

/** Parts of less than this share of all power stand in one bar. */
const LEAST = 0.002;

/** The largest first, and what is hardly anything as one. */
function sorted(bars: readonly Bar[], wholeW: number): Bar[] {
  const seen = bars.filter(({ powerW }) => powerW > LEAST * wholeW).sort((a, b) => b.powerW - a.powerW);
  const rest = bars.filter(({ powerW }) => powerW > 0 && powerW <= LEAST * wholeW);
  const restW = rest.reduce((sum, { powerW }) => sum + powerW, 0);
  if (rest.length === 1) return [...seen, ...rest];
  return rest.length === 0 ? seen : [...seen, { name: `${rest.length} more`, powerW: restW }];
}

/** The bars as SVG. */
export function powerBars({ branches, switches, diodes, sources, loads }: SolveNetworkResult, width: number): string {
  const used = loads.map(({ name, powerW }) => ({ name, powerW }));
  const lost = [
    ...[...branches, ...switches, ...diodes].map(({ name, lossW }) => ({ name, powerW: lossW })),
    ...sources.map(({ name, lossW }) => ({ name: `inside ${name}`, powerW: lossW })),
  ];
  const whole = [...used, ...lost].reduce((sum, { powerW }) => sum + powerW, 0);
  const groups = [
    { title: 'Used', bars: sorted(used, whole), colour: ink.verdigris, round: 'nearest' as const },
    { title: 'Lost', bars: sorted(lost, whole), colour: ink.copper, round: 'up' as const },
  ].filter(({ bars }) => bars.length > 0);
  const most = Math.max(...groups.flatMap(({ bars }) => bars.map(({ powerW }) => powerW)), 1e-12);
  const left = Math.min(150, width * 0.4);
  const room = Math.max(40, width - left - 70);
  const shapes: string[] = [];
  let y = 4;
  for (const { title, bars, colour, round } of groups) {
    const sum = bars.reduce((total, { powerW }) => total + powerW, 0);
    shapes.push(label(0, y + 15, `${title}: ${watts(sum, round)}`, { fill: colour, 'font-weight': 600 }));
    y += ROW;
    for (const { name, powerW } of bars) {
      const long = Math.max(1.5, (powerW / most) * room);
      shapes.push(
        label(left - 8, y + 15, name, { 'text-anchor': 'end' }),
        element('rect', { x: left, y: y + 3, width: long, height: 15, fill: colour }),
        label(left + long + 6, y + 15, watts(powerW, round), { fill: ink.soft }),
      );
      y += ROW;
    }
    y += 8;
  }
  const said = groups.flatMap(({ title, bars, round }) =>
    bars.map(({ name, powerW }) => `${title}: ${name} ${watts(powerW, round)}`),
  );
  return drawing(width, y, 'Where the power goes', said.join('; '), ...shapes);
}
