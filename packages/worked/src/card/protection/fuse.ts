import { checkFuse, chooseFuse, type CheckFuseInput, fuseOpeningTime, pulseI2t, shortCircuitCurrent } from 'loomwright';
import { defineCard } from '../type.js';
import { bladeChoices, circuitFields, circuitOf, fuseScope, fuseSteps, ratingChoices, shapeChoices } from './fields.js';

export const chooseFuseCard = defineCard({
  name: 'chooseFuse',
  area: 'protection',
  question: 'Which fuse carries this load and still protects its wire?',
  page: 'fuses',
  fields: [{ kind: 'choice', name: 'family', choices: bladeChoices, example: 'blade-fuse' }, ...circuitFields],
  results: [
    { name: 'ratingA', round: 'nearest', primary: true, trim: true },
    { name: 'carriedA', round: 'down' },
    { name: 'mayNeverOpenA', round: 'up' },
    { name: 'mayNeverOpenTempC', round: 'up' },
    { name: 'farShortRatio', round: 'down' },
    { name: 'hotOhm', round: 'nearest', unit: 'mΩ', label: 'Resistance of the fuse, hot' },
  ],
  steps: fuseSteps,
  sources: ['fuse-selection-guides', 'iso-8820-3', 'blade-fuse-data', 'iec-60364-4-43', 'us-33-cfr-183', 'iec-60949'],
  cautions: ['local-code', 'stored-heat', 'battery'],
  run: chooseFuse,
  input: circuitOf,
  scope: (values, output) => (output.possible ? fuseScope(values, output) : {}),
});

export const checkFuseCard = defineCard({
  name: 'checkFuse',
  area: 'protection',
  question: 'Does the fuse that is there suit its circuit?',
  page: 'fuses',
  fields: [
    { kind: 'choice', name: 'family', choices: bladeChoices, example: 'blade-fuse' },
    { kind: 'choice', name: 'ratingA', choices: ratingChoices, example: '20' },
    ...circuitFields,
  ],
  results: [
    { name: 'ok', round: 'nearest', label: 'Every limit is met', primary: true },
    { name: 'carriedA', round: 'down' },
    { name: 'mayNeverOpenA', round: 'up' },
    { name: 'mayNeverOpenTempC', round: 'up' },
    { name: 'letThroughA2s', round: 'up', label: 'Lets through at the worst current' },
    { name: 'withstandI2tA2s', round: 'down' },
    { name: 'farShortRatio', round: 'down' },
  ],
  steps: fuseSteps,
  sources: ['fuse-selection-guides', 'iso-8820-3', 'blade-fuse-data', 'iec-60364-4-43', 'us-33-cfr-183', 'iec-60949'],
  cautions: ['local-code', 'stored-heat', 'battery'],
  run: checkFuse,
  input: (uses): CheckFuseInput => ({ ...circuitOf(uses), ratingA: uses['ratingA'] as number }),
  scope: (values, output) => fuseScope(values, output),
});

export const fuseOpeningTimeCard = defineCard({
  name: 'fuseOpeningTime',
  area: 'protection',
  question: 'How soon may this fuse open, and by when must it have?',
  page: 'fuses',
  fields: [
    { kind: 'choice', name: 'family', choices: bladeChoices, example: 'blade-fuse' },
    { kind: 'choice', name: 'ratingA', choices: ratingChoices, example: '40' },
    { kind: 'number', name: 'currentA', above: 0, example: 80 },
  ],
  results: [
    { name: 'longestS', round: 'up', primary: true },
    { name: 'shortestS', round: 'down' },
    { name: 'mayNeverOpen', round: 'nearest' },
    { name: 'longestI2tA2s', round: 'up' },
    { name: 'ratingRatio', round: 'nearest' },
    { name: 'sureToOpenA', round: 'up' },
  ],
  steps: [
    {
      result: 'longestS',
      text: 'By when it must have opened',
      how: 'between two printed points, straight on logarithmic scales',
      source: 'iso-8820-3',
    },
    {
      result: 'longestI2tA2s',
      text: 'What it lets through until then',
      formula: 'currentA^2 * longestS',
      source: 'circuit-theory',
    },
  ],
  sources: ['iso-8820-3'],
  cautions: ['local-code'],
  run: fuseOpeningTime,
});

export const pulseI2tCard = defineCard({
  name: 'pulseI2t',
  area: 'protection',
  question: 'How much heat does an inrush bring to the fuse?',
  page: 'fuses',
  fields: [
    {
      kind: 'choice',
      name: 'shape',
      choices: [...shapeChoices, { value: 'ramp', label: 'Ramp' }],
      example: 'half-sine',
    },
    { kind: 'number', name: 'peakA', above: 0, example: 60, label: 'Peak', symbol: 'i_p' },
    { kind: 'number', name: 'durationS', above: 0, example: 0.1, unit: 'ms' },
    {
      kind: 'number',
      name: 'startA',
      min: 0,
      optional: true,
      example: null,
      help: 'The other end of a ramp; empty for the rest.',
    },
  ],
  results: [
    { name: 'i2tA2s', round: 'up', label: 'I²t of the pulse', primary: true },
    { name: 'rmsA', round: 'up', label: 'Steady current of the same heat' },
  ],
  steps: [
    {
      result: 'i2tA2s',
      text: 'I²t by the shape of the pulse',
      formula: 'shapeFactor * peakA^2 * durationS',
      source: 'fuse-selection-guides',
    },
    {
      result: 'rmsA',
      text: 'Steady current that brings as much',
      formula: 'sqrt(i2tA2s / durationS)',
      source: 'circuit-theory',
    },
  ],
  sources: ['fuse-selection-guides'],
  cautions: ['local-code'],
  run: pulseI2t,
  scope: (values, output) => {
    const { peakA, durationS } = values;
    return {
      shapeFactor:
        typeof peakA === 'number' && typeof durationS === 'number' ? output.i2tA2s / (peakA * peakA * durationS) : null,
    };
  },
});

export const shortCircuitCurrentCard = defineCard({
  name: 'shortCircuitCurrent',
  area: 'protection',
  question: 'What current flows in a short at the far end?',
  page: 'fuses',
  fields: [
    { kind: 'number', name: 'supplyV', above: 0, example: 12.6 },
    { kind: 'number', name: 'otherOhm', min: 0, example: 0.02, unit: 'mΩ' },
    { kind: 'number', name: 'wireLengthM', min: 0, example: 6 },
    { kind: 'number', name: 'resistanceOhmPerM', above: 0, example: 0.0371, unit: 'mΩ/m' },
    { kind: 'number', name: 'ratedTempC', min: -100, max: 400, example: 20 },
    { kind: 'number', name: 'conductorTempC', min: -100, max: 400, example: 85 },
  ],
  results: [
    { name: 'currentA', round: 'down', label: 'Current of the short', primary: true },
    { name: 'resistanceOhm', round: 'up', label: 'Resistance of the loop' },
    { name: 'wireResistanceOhm', round: 'up' },
  ],
  steps: [
    {
      result: 'wireResistanceOhm',
      text: 'Resistance of the wire, hot',
      formula: 'wireLengthM * resistanceOhmPerM * (zeroTempC + conductorTempC) / (zeroTempC + ratedTempC)',
      constants: [{ name: 'zeroTempC', symbol: 'T_0', value: 234.5, unit: 'K', source: 'nbs-hb-100' }],
      source: 'nbs-hb-100',
    },
    {
      result: 'resistanceOhm',
      text: 'The whole loop',
      formula: 'wireResistanceOhm + otherOhm',
      source: 'circuit-theory',
    },
    { result: 'currentA', text: 'Current of the short', formula: 'supplyV / resistanceOhm', source: 'circuit-theory' },
  ],
  sources: ['circuit-theory', 'nbs-hb-100'],
  cautions: ['local-code', 'stored-heat', 'battery'],
  run: shortCircuitCurrent,
  input: (uses) => {
    const n = (name: string): number => uses[name] as number;
    return {
      supplyV: n('supplyV'),
      parts: [{ name: 'battery, fuse, holder, body', resistanceOhm: n('otherOhm') }],
      wireLengthM: n('wireLengthM'),
      resistanceOhmPerM: n('resistanceOhmPerM'),
      ratedTempC: n('ratedTempC'),
      conductorTempC: n('conductorTempC'),
    };
  },
});
