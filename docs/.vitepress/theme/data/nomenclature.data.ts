import { cards, nomenclature } from '@loomwright/worked/card';
import { fieldUnit } from '@loomwright/worked/quantity';
import { symbolHtml } from '@loomwright/worked/work';
import { defineLoader } from 'vitepress';

export interface ListedTerm {
  readonly name: string;
  readonly meaning: string;
  /** Unit as pages show it, '' for a word or a pure number. */
  readonly unit: string;
  readonly symbol: string;
  /** Other meanings that a card gives the name. */
  readonly also: readonly string[];
}

declare const data: readonly ListedTerm[];
export { data };

/** Every name of fields and results, in the order of the alphabet. */
export default defineLoader({
  load(): ListedTerm[] {
    const labels = new Map<string, Set<string>>();
    for (const card of Object.values(cards)) {
      for (const { name, label } of [...card.fields, ...card.results]) {
        if (label !== undefined) labels.set(name, (labels.get(name) ?? new Set()).add(label));
      }
    }
    return Object.entries(nomenclature)
      .sort(([a], [b]) => a.localeCompare(b, 'en'))
      .map(([name, { label, symbol }]) => ({
        name,
        meaning: label,
        unit: shownUnit(fieldUnit(name)),
        symbol: symbolHtml(symbol),
        also: [...(labels.get(name) ?? [])].filter((other) => other !== label),
      }));
  },
});

function shownUnit(unit: string | null): string {
  if (unit === null || unit === '1') return '';
  return unit === 'fraction' ? '0 … 1' : unit;
}
