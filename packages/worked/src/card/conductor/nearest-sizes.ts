import { nearestSizes, type NearestSizesInput, type SourceKey } from 'loomwright';
import { defineCard } from '../type.js';
import { tableChoices } from './basis.js';

interface Neighbours {
  readonly atLeastSize: string | null;
  readonly atLeastAreaMm2: number | null;
  readonly belowSize: string | null;
  readonly belowAreaMm2: number | null;
  readonly source: SourceKey;
}

function neighbours(input: NearestSizesInput): Neighbours {
  const { atLeast, below } = nearestSizes(input);
  return {
    atLeastSize: atLeast?.label ?? null,
    atLeastAreaMm2: atLeast?.areaMm2 ?? null,
    belowSize: below?.label ?? null,
    belowAreaMm2: below?.areaMm2 ?? null,
    source: input.table.source,
  };
}

export const nearestSizesCard = defineCard<NearestSizesInput, Neighbours>({
  name: 'nearestSizes',
  area: 'conductor',
  question: 'Which sizes that can be bought lie on either side of an area?',
  page: 'wire-sizes',
  fields: [
    { kind: 'number', name: 'areaMm2', min: 0.001, max: 1e6, example: 3.36, label: 'Wanted area' },
    { kind: 'choice', name: 'table', label: 'Table of sizes', choices: tableChoices, example: 'iso-19642' },
  ],
  results: [
    { name: 'atLeastSize', label: 'Take', round: 'nearest', primary: true },
    { name: 'atLeastAreaMm2', round: 'down', trim: true },
    { name: 'belowSize', label: 'Too small', round: 'nearest' },
    { name: 'belowAreaMm2', round: 'down', trim: true },
  ],
  steps: [
    {
      result: 'atLeastAreaMm2',
      text: 'Smallest size of at least the wanted area',
      how: 'looked up in the table',
      source: 'iec-60228',
      sourceOf: (output: Neighbours) => output.source,
    },
  ],
  sources: ['iso-19642', 'iec-60228', 'ac-43-13-1b', 'sae-j1128', 'nec-chapter-9-table-8'],
  cautions: ['local-code'],
  run: neighbours,
});
