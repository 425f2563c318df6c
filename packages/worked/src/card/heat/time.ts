import { pulsedTemperature, timeToTemperature } from 'loomwright';
import { defineCard, type Field } from '../type.js';
import { wireFields, zeroTempC } from './wire-fields.js';

const lumpFields: readonly Field[] = [
  { kind: 'number', name: 'areaMm2', above: 0, example: 2.5, help: 'Of the metal: it must fit into the strands.' },
  ...wireFields,
  {
    kind: 'number',
    name: 'insulationHeatJPerCm3K',
    min: 0.1,
    max: 10,
    example: 1.7,
    help: 'PVC 1.7, cross-linked polyethylene 2.4, silicone 1.8 (from memory).',
  },
];

export const timeToTemperatureCard = defineCard({
  name: 'timeToTemperature',
  area: 'heat',
  question: 'How long before this wire is harmed?',
  page: 'how-long-before-harm',
  fields: [
    { kind: 'number', name: 'currentA', min: 0, example: 60 },
    { kind: 'number', name: 'startTempC', min: -100, max: 400, example: 50 },
    { kind: 'number', name: 'limitTempC', min: -100, max: 400, example: 105 },
    ...lumpFields,
  ],
  results: [
    { name: 'timeS', round: 'down', primary: true },
    { name: 'adiabaticTimeS', round: 'down' },
    { name: 'steadyTempC', round: 'up' },
    { name: 'endTempC', round: 'up' },
    { name: 'reason', round: 'nearest' },
  ],
  steps: [
    {
      result: 'heatJPerMK',
      text: 'Heat that the copper of a metre takes',
      formula: 'areaMm2 * metalHeat',
      constants: [{ name: 'metalHeat', symbol: 'q_c', value: 0.00345, unit: 'J/(K mm^3)', source: 'iec-60949' }],
      source: 'iec-60949',
    },
    {
      result: 'adiabaticTimeS',
      text: 'Time if no heat left it: the safe one for a fault of less than a second',
      formula:
        'heatJPerMK * (zeroTempC + ratedTempC) / (currentA^2 * resistanceOhmPerM) * log((zeroTempC + limitTempC) / (zeroTempC + startTempC))',
      constants: [zeroTempC],
      source: 'iec-60949',
    },
    {
      result: 'steadyTempC',
      text: 'Temperature after a long time',
      how: 'by the balance of heat made and given off',
      source: 'heat-balance',
    },
    {
      result: 'timeS',
      text: 'Time with the insulation and the air taking their share',
      how: 'copper and four shells of insulation, followed step by step',
      source: 'iec-60853-2',
    },
  ],
  sources: ['heat-balance', 'iec-60853-2', 'iec-60949'],
  cautions: ['local-code', 'stored-heat'],
  run: timeToTemperature,
  scope: (values) => ({ heatJPerMK: (values['areaMm2'] as number) * 3.45 }),
});

export const pulsedTemperatureCard = defineCard({
  name: 'pulsedTemperature',
  area: 'heat',
  question: 'How hot does a wire get when its load goes on and off?',
  page: 'how-long-before-harm',
  fields: [
    { kind: 'number', name: 'onCurrentA', min: 0, example: 45 },
    { kind: 'number', name: 'offCurrentA', min: 0, example: 0 },
    { kind: 'number', name: 'onS', above: 0, example: 20 },
    { kind: 'number', name: 'periodS', above: 0, max: 1e7, example: 80 },
    ...lumpFields,
  ],
  results: [
    { name: 'conductorTempC', round: 'up', primary: true, label: 'Hottest that the copper gets' },
    { name: 'method', round: 'nearest' },
    { name: 'rmsCurrentA', round: 'up' },
    { name: 'meanCurrentA', round: 'up' },
    { name: 'rippleK', round: 'up' },
    { name: 'timeConstantS', round: 'nearest' },
    { name: 'reason', round: 'nearest' },
  ],
  steps: [
    {
      result: 'rmsCurrentA',
      text: 'R.m.s. current',
      formula: 'sqrt((onS * onCurrentA^2 + (periodS - onS) * offCurrentA^2) / periodS)',
      source: 'circuit-theory',
    },
    {
      result: 'meanCurrentA',
      text: 'Mean current',
      formula: '(onS * onCurrentA + (periodS - onS) * offCurrentA) / periodS',
      source: 'circuit-theory',
    },
    {
      result: 'conductorTempC',
      text: 'Hottest that the copper gets',
      how: 'by the r.m.s. current where a pulse swings it by less than 1 K, else pulse by pulse until it repeats',
      source: 'heat-balance',
    },
  ],
  sources: ['heat-balance', 'circuit-theory', 'iec-60853-2'],
  cautions: ['local-code', 'stored-heat'],
  run: pulsedTemperature,
});
