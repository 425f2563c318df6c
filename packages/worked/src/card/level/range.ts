import { matchSenderRange, type MatchSenderRangeInput, senderRanges } from 'loomwright';
import { defineCard } from '../type.js';

export const matchSenderRangeCard = defineCard({
  name: 'matchSenderRange',
  area: 'level',
  question: 'Which common range is my sender of?',
  page: 'sender-fits-or-cannot',
  fields: [
    { kind: 'number', name: 'emptyOhm', min: 0, example: 105 },
    { kind: 'number', name: 'fullOhm', min: 0, example: 5 },
  ],
  results: [
    { name: 'name', label: 'Nearest', round: 'nearest', primary: true },
    { name: 'rangeEmptyOhm', round: 'nearest', digits: 4, trim: true },
    { name: 'rangeFullOhm', round: 'nearest', digits: 4, trim: true },
    { name: 'offOhm', round: 'up', digits: 3 },
    { name: 'rangeOffFraction', round: 'up', digits: 3 },
    { name: 'straightOhm', round: 'nearest', digits: 4, trim: true },
  ],
  steps: [
    {
      result: 'rangeOffFraction',
      text: 'How far off the worse end is',
      how: 'both ends against every range, the other figures that are printed for it and both ends exchanged; the least share of the span is the nearest',
      source: 'sender-range-pages',
    },
    {
      result: 'straightOhm',
      text: 'A straight sender of that range, half full',
      formula: 'rangeEmptyOhm + (rangeFullOhm - rangeEmptyOhm) / 2',
      source: 'sender-range-pages',
    },
  ],
  sources: ['sender-range-pages'],
  cautions: ['fuel'],
  run: matchSenderRange,
  input: (uses): MatchSenderRangeInput => ({
    ...(uses as unknown as Omit<MatchSenderRangeInput, 'table'>),
    table: senderRanges,
  }),
  identifiers: { senderRanges },
  scope: (_, output) => ({ rangeOffFraction: output.offFraction, straightOhm: output.quarterOhm[2] ?? null }),
});
