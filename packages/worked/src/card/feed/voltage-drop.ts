import { voltageDrop } from 'loomwright';
import { defineCard } from '../type.js';

export const voltageDropCard = defineCard({
  name: 'voltageDrop',
  area: 'feed',
  question: 'How many volts does this wire lose?',
  page: 'size-a-pump-feed',
  fields: [
    { kind: 'number', name: 'supplyV', above: 0, example: 13.8 },
    { kind: 'number', name: 'currentA', min: 0, example: 15 },
    { kind: 'number', name: 'outLengthM', min: 0, example: 5.5 },
    { kind: 'number', name: 'returnLengthM', min: 0, example: 1 },
    { kind: 'number', name: 'resistanceOhmPerM', above: 0, example: 0.0076, unit: 'mΩ/m' },
    { kind: 'number', name: 'ratedTempC', min: -100, max: 400, example: 20 },
    { kind: 'number', name: 'conductorTempC', min: -100, max: 400, example: 60 },
  ],
  results: [
    { name: 'dropV', round: 'up', primary: true },
    { name: 'dropFraction', round: 'up' },
    { name: 'loadV', round: 'down', digits: 4 },
    { name: 'resistanceOhm', round: 'up', label: 'Resistance out and back, hot' },
    { name: 'lossW', round: 'up' },
  ],
  steps: [
    {
      result: 'resistanceOhm',
      text: 'Resistance of the copper out and back, at its working temperature',
      formula:
        'resistanceOhmPerM * (outLengthM + returnLengthM) * (zeroTempC + conductorTempC) / (zeroTempC + ratedTempC)',
      constants: [{ name: 'zeroTempC', symbol: 'T_0', value: 234.5, unit: 'K', source: 'nbs-hb-100' }],
      source: 'nbs-hb-100',
    },
    { result: 'dropV', text: 'Volts lost', formula: 'currentA * resistanceOhm', source: 'circuit-theory' },
    { result: 'dropFraction', text: 'As a share of the supply', formula: 'dropV / supplyV', source: 'circuit-theory' },
    { result: 'loadV', text: 'Volts left for the load', formula: 'supplyV - dropV', source: 'circuit-theory' },
    { result: 'lossW', text: 'Heat in the wire', formula: 'dropV * currentA', source: 'circuit-theory' },
  ],
  sources: ['ac-43-13-1b', 'nbs-hb-100'],
  cautions: ['local-code'],
  run: voltageDrop,
});
