import { coilCharge, injectorFeed } from 'loomwright';
import { defineCard } from '../type.js';

export const coilChargeCard = defineCard({
  name: 'coilCharge',
  area: 'load',
  question: 'What do the ignition coils take, and is the spark still there at low volts?',
  page: 'coils-and-injectors',
  fields: [
    { kind: 'number', name: 'supplyV', above: 0, example: 14 },
    { kind: 'number', name: 'driverDropV', min: 0, example: 0.9 },
    { kind: 'number', name: 'feedResistanceOhm', min: 0, example: 0, unit: 'mΩ' },
    { kind: 'number', name: 'coilCount', min: 1, max: 24, example: 4 },
    { kind: 'number', name: 'coilResistanceOhm', above: 0, example: 0.6 },
    { kind: 'number', name: 'inductanceH', above: 0, example: 0.003, unit: 'mH' },
    { kind: 'number', name: 'engineRpm', above: 0, example: 6500 },
    {
      kind: 'choice',
      name: 'firing',
      label: 'Each coil fires',
      choices: [
        { value: 'each-second-turn', label: 'Once in two turns: a coil a cylinder' },
        { value: 'each-turn', label: 'Each turn: wasted spark, or two-stroke' },
      ],
      example: 'each-second-turn',
    },
    { kind: 'number', name: 'wantedA', above: 0, example: 7.5, label: 'Current at the spark' },
  ],
  results: [
    { name: 'dwellS', round: 'up', primary: true, unit: 'ms', digits: 4 },
    { name: 'energyJ', round: 'down', unit: 'mJ' },
    { name: 'overlapCount', round: 'up' },
    { name: 'dutyFraction', round: 'up' },
    { name: 'peakA', round: 'up', label: 'Peak in the feed', digits: 4 },
    { name: 'rmsA', round: 'up', label: 'R.m.s. in the feed', digits: 4 },
    { name: 'meanA', round: 'up', label: 'Mean in the feed', digits: 4 },
    { name: 'leastFeedV', round: 'down', digits: 4 },
  ],
  steps: [
    {
      result: 'dwellS',
      text: 'Time to charge one coil',
      formula: '-(inductanceH / coilResistanceOhm) * log(1 - wantedA * coilResistanceOhm / (supplyV - driverDropV))',
      source: 'circuit-theory',
      when: ({ feedResistanceOhm }) => feedResistanceOhm === 0,
    },
    {
      result: 'dwellS',
      text: 'Time to charge one coil',
      how: 'all coils on the shared feed solved together until the pattern repeats',
      source: 'circuit-theory',
      when: ({ feedResistanceOhm }) => feedResistanceOhm !== 0,
    },
    {
      result: 'energyJ',
      text: 'Energy in the coil',
      formula: '0.5 * inductanceH * coilPeakA ^ 2',
      source: 'circuit-theory',
    },
    {
      result: 'overlapCount',
      text: 'Coils charging at once',
      formula: 'dwellS / spacingS',
      source: 'circuit-theory',
    },
    {
      result: 'meanA',
      text: 'Mean current of the feed',
      how: 'charging curves, shifted and added',
      source: 'circuit-theory',
    },
    {
      result: 'leastFeedV',
      text: 'Least volts at the coils',
      formula: 'supplyV - peakA * feedResistanceOhm',
      source: 'circuit-theory',
    },
  ],
  sources: ['circuit-theory', 'common-practice'],
  cautions: ['local-code', 'fuel'],
  run: coilCharge,
});

export const injectorFeedCard = defineCard({
  name: 'injectorFeed',
  area: 'load',
  question: 'What do the injectors take, and how late do they open?',
  page: 'coils-and-injectors',
  fields: [
    { kind: 'number', name: 'supplyV', above: 0, example: 13.8 },
    { kind: 'number', name: 'driverDropV', min: 0, example: 0.4 },
    { kind: 'number', name: 'feedResistanceOhm', min: 0, example: 0.05, unit: 'mΩ' },
    { kind: 'number', name: 'injectorCount', min: 1, max: 24, example: 4 },
    { kind: 'number', name: 'injectorResistanceOhm', above: 0, example: 12 },
    { kind: 'number', name: 'inductanceH', above: 0, example: 0.012, unit: 'mH' },
    { kind: 'number', name: 'onS', above: 0, example: 0.008, unit: 'ms', label: 'Switched on for' },
    { kind: 'number', name: 'engineRpm', above: 0, example: 6000 },
    {
      kind: 'choice',
      name: 'firing',
      label: 'Firing',
      choices: [
        { value: 'sequential', label: 'One after another' },
        { value: 'together-each-second-turn', label: 'All together, once in two turns' },
        { value: 'together-each-turn', label: 'All together, each turn' },
      ],
      example: 'sequential',
    },
    { kind: 'number', name: 'openingA', above: 0, optional: true, example: 0.6 },
  ],
  results: [
    { name: 'openingDelayS', round: 'up', primary: true, unit: 'ms' },
    { name: 'injectorA', round: 'up' },
    { name: 'dutyFraction', round: 'up' },
    { name: 'overlapCount', round: 'up' },
    { name: 'peakA', round: 'up', label: 'Peak in the feed' },
    { name: 'rmsA', round: 'up', label: 'R.m.s. in the feed' },
    { name: 'meanA', round: 'up', label: 'Mean in the feed' },
    { name: 'leastFeedV', round: 'down', digits: 4 },
  ],
  steps: [
    {
      result: 'timeConstantS',
      text: 'Time constant of the rise',
      formula: 'inductanceH / risingOhm',
      source: 'circuit-theory',
    },
    {
      result: 'openingDelayS',
      text: 'Until the needle lifts',
      formula: '-timeConstantS * log(1 - openingA * risingOhm / (supplyV - driverDropV))',
      source: 'circuit-theory',
      when: ({ openingA }) => typeof openingA === 'number',
    },
    {
      result: 'meanA',
      text: 'Mean current of the feed',
      how: 'rising curves, shifted and added',
      source: 'circuit-theory',
    },
    {
      result: 'leastFeedV',
      text: 'Least volts at the injectors',
      formula: 'supplyV - peakA * feedResistanceOhm',
      source: 'circuit-theory',
    },
  ],
  sources: ['circuit-theory', 'vehicle-service-data', 'common-practice'],
  cautions: ['local-code', 'fuel'],
  run: injectorFeed,
  scope: ({ firing, injectorCount, injectorResistanceOhm, feedResistanceOhm }, _) => ({
    risingOhm:
      (injectorResistanceOhm as number) +
      (firing === 'sequential' ? 1 : (injectorCount as number)) * (feedResistanceOhm as number),
  }),
});
