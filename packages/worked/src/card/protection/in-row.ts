import { boltInFuseSf30, boltInFuseSf51, type FuseFamily, fusesInRow, type FusesInRowInput } from 'loomwright';
import { type Choice, defineCard } from '../type.js';
import { bladeChoices, boltInChoices, ratingChoices } from './fields.js';

const boltInRatings = [...new Set([...boltInFuseSf30.ratingsA, ...boltInFuseSf51.ratingsA])];
const upstreamRatings: readonly Choice[] = [
  ...ratingChoices,
  ...boltInRatings
    .filter((rating) => ratingChoices.every(({ use }) => use !== rating))
    .sort((a, b) => a - b)
    .map((rating) => ({ value: String(rating), label: `${rating} A`, use: rating })),
];

export const fusesInRowCard = defineCard({
  name: 'fusesInRow',
  area: 'protection',
  question: 'Of two fuses in a row, does the one at the fault open alone?',
  page: 'fuses',
  fields: [
    { kind: 'choice', name: 'family', choices: bladeChoices, example: 'blade-fuse', label: 'Nearer to the fault' },
    { kind: 'choice', name: 'ratingA', choices: ratingChoices, example: '10' },
    {
      kind: 'choice',
      name: 'upstreamFamily',
      choices: [...bladeChoices, ...boltInChoices],
      example: 'bolt-in-fuse-sf30',
    },
    { kind: 'choice', name: 'upstreamRatingA', choices: upstreamRatings, example: '60' },
    {
      kind: 'number',
      name: 'upstreamMeltingA2s',
      above: 0,
      optional: true,
      example: 5000,
      help: 'Empty: typical figures for blades, none for bolt-in fuses.',
    },
    { kind: 'number', name: 'prospectiveA', above: 0, example: 620 },
  ],
  results: [
    { name: 'ok', round: 'nearest', label: 'The one at the fault opens alone', primary: true },
    { name: 'verdict', round: 'nearest', label: 'By what is printed' },
    { name: 'apartToA', round: 'down' },
    { name: 'letThroughA2s', round: 'up', label: 'Above the bands it lets through at most' },
    { name: 'bearsA2s', round: 'down' },
  ],
  steps: [
    {
      result: 'apartToA',
      text: 'Up to this current the one has opened before the other may',
      how: 'longest opening of the one against the shortest of the other, straight on logarithmic scales between printed points',
      source: 'iso-8820-3',
    },
    {
      result: 'letThroughA2s',
      text: 'The most that the one lets through above the printed band of the other',
      how: 'current squared times longest opening; above its last printed current it is taken not to grow',
      source: 'iso-8820-3',
    },
    {
      result: 'bearsA2s',
      text: 'What the other bears: its share for a hundred pulses',
      formula: 'sharePulses * upstreamMeltingA2s',
      constants: [{ name: 'sharePulses', symbol: 's', value: 0.48, unit: '', source: 'fuse-selection-guides' }],
      source: 'fuse-selection-guides',
      when: ({ upstreamMeltingA2s }) => typeof upstreamMeltingA2s === 'number',
    },
  ],
  sources: ['iso-8820-3', 'fuse-selection-guides', 'blade-fuse-data'],
  cautions: ['local-code', 'stored-heat'],
  run: fusesInRow,
  input: (uses): FusesInRowInput => ({
    family: uses['family'] as FuseFamily,
    ratingA: uses['ratingA'] as number,
    upstream: {
      name: 'the other',
      family: uses['upstreamFamily'] as FuseFamily,
      ratingA: uses['upstreamRatingA'] as number,
      ...(uses['upstreamMeltingA2s'] === undefined ? {} : { meltingI2tA2s: uses['upstreamMeltingA2s'] as number }),
    },
    prospectiveA: uses['prospectiveA'] as number,
  }),
  scope: (_values, { upToA }) => ({ apartToA: upToA }),
});
