import { e12, e192, e24, e3, e48, e6, e96, type PreferredSeries } from 'loomwright';
import type { Choice, ChoiceField } from '../type.js';

const choice = (series: PreferredSeries, identifier: string, label: string): Choice => ({
  value: series.key,
  label: `${series.key}, ${label}`,
  use: series,
  identifier,
});

/** Series of preferred values as choices of a card. */
export const seriesChoices: readonly Choice[] = [
  choice(e3, 'e3', '3 values a decade'),
  choice(e6, 'e6', 'usually 20 %'),
  choice(e12, 'e12', 'usually 10 %'),
  choice(e24, 'e24', 'usually 5 %'),
  choice(e48, 'e48', 'usually 2 %'),
  choice(e96, 'e96', 'usually 1 %'),
  choice(e192, 'e192', 'usually 0.5 %'),
];

/** The drawer that values are taken from. */
export function seriesField(example: string): ChoiceField {
  return { kind: 'choice', name: 'series', choices: seriesChoices, example };
}
