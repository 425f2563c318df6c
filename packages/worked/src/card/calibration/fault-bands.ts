import { faultBands, type FaultBandsInput } from 'loomwright';
import { defineCard } from '../type.js';
import { curveFields, withCurve } from '../temperature/curve-fields.js';

export const faultBandsCard = defineCard({
  name: 'faultBands',
  area: 'calibration',
  question: 'Which readings are faults, and not the weather?',
  page: 'fault-bands',
  fields: [
    {
      kind: 'choice',
      name: 'side',
      label: 'The sensor goes to',
      choices: [
        { value: 'sensor-to-ground', label: 'ground, with a pull-up' },
        { value: 'sensor-to-supply', label: 'the supply, with a pull-down' },
      ],
      example: 'sensor-to-ground',
    },
    { kind: 'number', name: 'supplyV', above: 0, example: 5, label: 'Reference' },
    { kind: 'number', name: 'pullOhm', label: 'Pull resistor', above: 0, example: 2490, unit: 'kΩ' },
    { kind: 'number', name: 'pullToleranceFraction', label: 'Its tolerance', min: 0, example: 0.01, unit: '%' },
    { kind: 'number', name: 'lowestSensorOhm', above: 0, example: 89, help: 'On the hottest day, for a thermistor.' },
    { kind: 'number', name: 'highestSensorOhm', above: 0, example: 45313, unit: 'kΩ', help: 'On the coldest.' },
    { kind: 'number', name: 'shortMostOhm', min: 0, example: 5 },
    {
      kind: 'number',
      name: 'openLeastOhm',
      above: 0,
      example: null,
      optional: true,
      unit: 'MΩ',
      help: 'Damp across a broken wire. Empty for dry.',
    },
    { kind: 'number', name: 'guardV', min: 0, example: 0.03, unit: 'mV' },
    {
      kind: 'number',
      name: 'lowLimitV',
      above: 0,
      example: 0.1,
      optional: true,
      help: 'Limits that are set already; leave both empty to have them put into the middle.',
    },
    { kind: 'number', name: 'highLimitV', above: 0, example: 4.8, optional: true },
    ...curveFields,
  ],
  results: [
    { name: 'highLimitOhm', round: 'nearest', digits: 3, primary: true },
    { name: 'highLimitTempC', round: 'nearest', digits: 3 },
    { name: 'lowLimitOhm', round: 'nearest', digits: 3 },
    { name: 'lowLimitTempC', round: 'nearest', digits: 4 },
    { name: 'healthyLowV', round: 'nearest', digits: 4 },
    { name: 'healthyHighV', round: 'nearest', digits: 4 },
    { name: 'lowFaultV', round: 'up' },
    { name: 'highFaultV', round: 'down' },
  ],
  steps: [
    {
      result: 'highLimitOhm',
      text: 'What reads so, with the pull as marked',
      formula: 'pullOhm * highLimitV / (supplyV - highLimitV)',
      source: 'circuit-theory',
      when: (values) => values['side'] === 'sensor-to-ground' && typeof values['highLimitV'] === 'number',
    },
    {
      result: 'lowLimitOhm',
      text: 'And at the lower limit',
      formula: 'pullOhm * lowLimitV / (supplyV - lowLimitV)',
      source: 'circuit-theory',
      when: (values) => values['side'] === 'sensor-to-ground' && typeof values['lowLimitV'] === 'number',
    },
    {
      result: 'healthyHighV',
      text: 'Healthy sensor at its highest, the pull at its strongest',
      formula: 'supplyV * highestSensorOhm / (highestSensorOhm + pullOhm * (1 - pullToleranceFraction))',
      source: 'circuit-theory',
      when: (values) => values['side'] === 'sensor-to-ground',
    },
    {
      result: 'healthyLowV',
      text: 'Healthy sensor at its lowest, the pull at its weakest',
      formula: 'supplyV * lowestSensorOhm / (lowestSensorOhm + pullOhm * (1 + pullToleranceFraction))',
      source: 'circuit-theory',
      when: (values) => values['side'] === 'sensor-to-ground',
    },
  ],
  sources: ['circuit-theory'],
  cautions: ['local-code', 'prove-slowly'],
  run: faultBands,
  input: (uses) => {
    const input = withCurve<FaultBandsInput>(uses);
    return { ...input, openLeastOhm: (uses['openLeastOhm'] as number | undefined) ?? null };
  },
});
