import { type FuseFamily, mainFuse, type MainCable, type MainFuseInput } from 'loomwright';
import { defineCard } from '../type.js';
import { boltInChoices, wireFields, wireOf } from './fields.js';

export const mainFuseCard = defineCard({
  name: 'mainFuse',
  area: 'protection',
  question: 'Can a fuse protect this battery cable and outlast the starter?',
  page: 'the-main-fuse',
  fields: [
    {
      kind: 'choice',
      name: 'cable',
      choices: [
        { value: 'starter', label: 'Starter cable' },
        { value: 'charge', label: 'Charge cable, at the battery end' },
        { value: 'feed', label: 'Main feed' },
      ],
      example: 'starter',
    },
    {
      kind: 'choice',
      name: 'family',
      choices: boltInChoices,
      example: 'bolt-in-fuse-sf51',
    },
    {
      kind: 'number',
      name: 'continuousA',
      above: 0,
      example: 60,
      help: 'Of a charge cable: what the alternator gives at most.',
    },
    { kind: 'number', name: 'inrushA', min: 0, label: 'First moment of cranking', example: 620 },
    { kind: 'number', name: 'inrushS', above: 0, example: 0.1, unit: 'ms' },
    { kind: 'number', name: 'crankA', min: 0, example: 190 },
    { kind: 'number', name: 'crankS', above: 0, example: 8 },
    { kind: 'number', name: 'ambientTempC', min: -40, max: 200, example: 60, label: 'Air around the fuse' },
    {
      kind: 'number',
      name: 'ambientFactor',
      min: 0.01,
      max: 1.5,
      example: 0.9,
      label: 'Share of its rating left there',
      help: 'From the data of the fuse: no curve of these families is known.',
    },
    { kind: 'number', name: 'ampacityA', above: 0, example: 300 },
    ...wireFields({ areaMm2: 50, ambientTempC: 60, maxConductorTempC: 125, overloadTempC: 150, shortTempC: 250 }),
    { kind: 'number', name: 'farShortA', above: 0, example: 1300 },
    { kind: 'number', name: 'clearWithinS', above: 0, example: 1 },
    { kind: 'number', name: 'prospectiveA', above: 0, example: 1500 },
    {
      kind: 'number',
      name: 'interruptA',
      above: 0,
      optional: true,
      example: 2000,
      help: 'As printed on the fuse: none is known of these families.',
    },
    { kind: 'number', name: 'unfusedLengthM', min: 0, example: 0.15 },
    { kind: 'flag', name: 'sheathed', example: false },
  ],
  results: [
    { name: 'ratingA', round: 'nearest', primary: true, trim: true },
    { name: 'crankShare', round: 'up' },
    { name: 'mayNeverOpenA', round: 'up' },
    { name: 'mayNeverOpenTempC', round: 'up' },
    { name: 'farShortRatio', round: 'down' },
  ],
  steps: [
    {
      result: 'crankShare',
      text: 'Share of the shortest opening that the cranking uses up',
      how: 'each current’s time over the shortest opening at it, added up, the rating taken down by the heat',
      source: 'iso-8820-5',
    },
    {
      result: 'mayNeverOpenA',
      text: 'Current that may flow for good without opening the fuse',
      formula: 'openingRatio * ratingA',
      source: 'iso-8820-5',
    },
    {
      result: 'farShortRatio',
      text: 'The short at the far end as a multiple of the rating',
      formula: 'farShortA / ratingA',
      source: 'circuit-theory',
    },
  ],
  sources: ['iso-8820-5', 'us-33-cfr-183', 'iec-60949', 'common-practice'],
  cautions: ['local-code', 'battery', 'isolator', 'stored-heat'],
  run: mainFuse,
  input: (uses): MainFuseInput => {
    const n = (name: string): number => uses[name] as number;
    const cable = uses['cable'] as MainCable;
    const crank = [
      { currentA: n('inrushA'), durationS: n('inrushS') },
      { currentA: n('crankA'), durationS: n('crankS') },
    ];
    return {
      cable,
      family: uses['family'] as FuseFamily,
      continuousA: n('continuousA'),
      continuousFraction: 0.75,
      ambientTempC: n('ambientTempC'),
      ambientFactor: n('ambientFactor'),
      ampacityA: n('ampacityA'),
      overloadRule: 'iec-60364-4-43',
      farShortA: n('farShortA'),
      clearWithinS: n('clearWithinS'),
      crankSteps: cable === 'starter' ? crank : [],
      wire: wireOf(uses),
      prospectiveA: n('prospectiveA'),
      ...(uses['interruptA'] === undefined ? {} : { interruptA: n('interruptA') }),
      unfusedLengthM: n('unfusedLengthM'),
      sheathed: uses['sheathed'] as boolean,
    };
  },
  scope: (_values, output) =>
    output.possible ? { ratingA: output.ratingA, openingRatio: output.mayNeverOpenA / output.ratingA } : {},
});
