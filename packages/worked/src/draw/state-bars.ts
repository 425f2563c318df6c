import type { SolvedBudgetState } from 'loomwright';
import { drawing, element, ink, label } from './svg.js';

export interface StateBarsInput {
  readonly states: readonly SolvedBudgetState[];
  /** Width in px: 360 on a phone, 640 or more on a desk. */
  readonly width: number;
  /** Writes a current: what is taken is rounded up, what is given or left over down. */
  readonly format: (amps: number, round: 'up' | 'down') => string;
}

const line = (x1: number, y1: number, x2: number, y2: number, colour: string, width: number, dash = ''): string =>
  element('line', { x1, y1, x2, y2, stroke: colour, 'stroke-width': width, 'stroke-dasharray': dash || undefined });

/**
 * A bar a state: the loads by their mean current one after the other, with a mark where the alternator ends. What has
 * to be shed is outlined; a thin line goes on to what all loads take at once.
 */
export function stateBars(input: StateBarsInput): string {
  const { states, width, format } = input;
  const right = width - 12;
  const span = Math.max(...states.flatMap((s) => [s.outputA, s.meanA, s.mostA]), 1e-9);
  const x = (amps: number): number => (right * amps) / span;
  const rowHeight = 84;
  const shapes: string[] = [];
  states.forEach((state, i) => {
    const top = 8 + i * rowHeight;
    const barY = top + 26;
    const over = state.balanceA >= 0;
    const verdict = over ? `✓ ${format(state.balanceA, 'down')} left over` : `✕ ${format(-state.balanceA, 'up')} short`;
    shapes.push(
      label(0, top + 12, state.name, { 'font-weight': 600 }),
      label(right, top + 12, verdict, { 'text-anchor': 'end', fill: over ? ink.verdigris : ink.red }),
      line(x(state.meanA), barY + 12, x(state.mostA), barY + 12, ink.soft, 1),
    );
    if (state.mostA > state.meanA) shapes.push(line(x(state.mostA), barY + 7, x(state.mostA), barY + 17, ink.soft, 1));
    let from = 0;
    // What stays stands first, so that the mark of the alternator parts it from what does not fit.
    for (const load of [...state.loads.filter((l) => l.kept), ...state.loads.filter((l) => !l.kept)]) {
      if (load.meanA === 0) continue;
      const x1 = x(from);
      const wide = Math.max(x(from + load.meanA) - x1 - 1.5, 0.75);
      const mark = x(state.outputA) - x1;
      const half = load.name.length * 3.3 + 4;
      // A name that the mark would cross is left out, as one that is too long: the table has them all.
      const fits = 2 * half <= wide && Math.abs(mark - wide / 2) > half;
      shapes.push(
        element('rect', {
          x: x1 + 0.75,
          y: barY,
          width: wide,
          height: 24,
          fill: load.kept ? ink.copper : ink.ground,
          stroke: load.kept ? undefined : ink.red,
          'stroke-dasharray': load.kept ? undefined : '4 3',
        }),
      );
      if (fits)
        shapes.push(
          label(x1 + wide / 2 + 0.75, barY + 16.5, load.name, {
            'text-anchor': 'middle',
            'font-size': 13,
            fill: load.kept ? ink.ground : ink.red,
          }),
        );
      from += load.meanA;
    }
    const end = x(state.outputA);
    const gives =
      state.outputA === 0 ? 'the alternator gives nothing' : `the alternator gives ${format(state.outputA, 'down')}`;
    // The text stands beside the foot of the mark, as far to the right as it has room.
    const textX = Math.max(Math.min(end + 6, right - gives.length * 6.2), 0);
    shapes.push(
      line(end, barY - 5, end, barY + 29, ink.verdigris, 2.5),
      label(textX, barY + 43, gives, { fill: ink.verdigris, 'font-size': 13 }),
    );
  });
  const said = states.map(
    (s) =>
      `${s.name}: ${format(s.outputA, 'down')} given, ${format(s.meanA, 'up')} taken${s.shed.length > 0 ? `, shed ${s.shed.join(', ')}` : ''}`,
  );
  return drawing(width, 8 + states.length * rowHeight, 'Loads against the alternator', said.join('; '), ...shapes);
}
