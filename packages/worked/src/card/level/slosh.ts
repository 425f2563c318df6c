import { sloshFilter, type SloshFilterInput, type SloshKind } from 'loomwright';
import { defineCard } from '../type.js';

const KINDS: readonly (readonly [flag: string, kind: SloshKind])[] = [
  ['firstOrder', 'first-order'],
  ['movingAverage', 'moving-average'],
  ['movingMedian', 'moving-median'],
];

export const sloshFilterCard = defineCard({
  name: 'sloshFilter',
  area: 'level',
  question: 'How much may a gauge be smoothed?',
  page: 'a-gauge-that-sways',
  fields: [
    { kind: 'number', name: 'sloshL', above: 0, example: 6, help: 'As the unfiltered gauge shows it on a rough road.' },
    { kind: 'number', name: 'shortPeriodS', above: 0, example: 1 },
    {
      kind: 'number',
      name: 'longPeriodS',
      above: 0,
      example: 2.6,
      help: 'Count the sways of a half-full tank along and across. The longest is the hardest to hold.',
    },
    { kind: 'number', name: 'sampleS', min: 0.001, example: 0.1 },
    { kind: 'number', name: 'mostRippleL', above: 0, example: 0.5 },
    { kind: 'number', name: 'fuelUseLPerH', min: 0, example: 25 },
    { kind: 'number', name: 'mostLagL', above: 0, example: 0.25 },
    { kind: 'number', name: 'refuelL', min: 0, example: 20 },
    { kind: 'number', name: 'mostSettleS', above: 0, example: 60 },
    { kind: 'flag', name: 'firstOrder', example: true },
    { kind: 'flag', name: 'movingAverage', example: false },
    { kind: 'flag', name: 'movingMedian', example: false },
  ],
  results: [
    { name: 'smoothS', round: 'nearest', digits: 3, primary: true },
    { name: 'newFraction', round: 'nearest', digits: 3 },
    { name: 'sampleCount', round: 'nearest', digits: 4, trim: true },
    { name: 'rippleL', round: 'up', digits: 3 },
    { name: 'lagS', round: 'up', digits: 3 },
    { name: 'lagL', round: 'up', digits: 3 },
    { name: 'settleS', label: 'A filling is shown after', symbol: 't_f', round: 'up', digits: 3 },
    { name: 'hysteresisL', round: 'up', digits: 3 },
    { name: 'bareHysteresisL', round: 'up', digits: 3 },
  ],
  steps: [
    {
      result: 'firstRippleL',
      text: 'What a share of each new reading leaves of the longest sway',
      formula:
        'sloshL * firstNewFraction / sqrt(firstNewFraction^2 + 4 * (1 - firstNewFraction) * sin(pi * sampleS / longPeriodS)^2)',
      source: 'circuit-theory',
      when: (values) => values['firstOrder'] === true,
    },
    {
      result: 'lagL',
      text: 'Behind while fuel is used',
      formula: 'fuelUseLPerH * lagS',
      source: 'circuit-theory',
    },
    {
      result: 'hysteresisL',
      text: 'How far the gauge goes back up as it falls: a lamp needs more between on and off',
      how: 'the rise between a low and the next high of a level that falls and sways at once, in closed form',
      source: 'circuit-theory',
    },
  ],
  sources: ['circuit-theory'],
  cautions: ['fuel', 'local-code'],
  run: sloshFilter,
  input: (uses): SloshFilterInput => ({
    ...(Object.fromEntries(
      Object.entries(uses).filter(([name]) => KINDS.every(([flag]) => flag !== name)),
    ) as unknown as SloshFilterInput),
    kinds: KINDS.filter(([flag]) => uses[flag] === true).map(([, kind]) => kind),
  }),
  scope: (values, output) => {
    if (!output.possible) return { smoothS: null, firstNewFraction: null, firstRippleL: null };
    const first = output.ways.find(({ kind }) => kind === 'first-order');
    const windowS = (output.sampleCount ?? 0) * Number(values['sampleS']);
    return {
      smoothS: output.timeConstantS ?? windowS,
      firstNewFraction: first?.newFraction ?? null,
      firstRippleL: first?.rippleL ?? null,
    };
  },
});
