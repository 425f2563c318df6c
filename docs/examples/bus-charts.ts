import type { CanResponseTimesResult } from 'loomwright';
import type { ChartSpec } from '@loomwright/worked/plot';

/** Longest response and deadline of each message, by its place in the order. */
export function responses(result: CanResponseTimesResult): ChartSpec {
  const { messages } = (result.possible ? result : result.nearest) ?? { messages: [] };
  const times = messages.flatMap(({ responseS }, i): [number, number][] =>
    responseS === null ? [] : [[i + 1, 1000 * responseS]],
  );
  const deadlines = messages.flatMap(({ deadlineS }, i): [number, number][] =>
    deadlineS === null ? [] : [[i + 1, 1000 * deadlineS]],
  );
  return {
    title: 'Longest response and deadline of each message',
    x: { label: 'Place in the order, 1 goes first', unit: '', domain: [0.5, messages.length + 0.5] },
    y: { label: 'Time', unit: 'ms', log: true },
    series: [
      { name: 'deadline', points: deadlines, colour: 'red', as: 'dots', labelAt: 0, labelSide: 'above' },
      { name: 'response', points: times, colour: 'copper', as: 'both', labelAt: 0, labelSide: 'below' },
    ],
  };
}
