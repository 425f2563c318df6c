import { linearSensor } from 'loomwright';
import { defineCard } from '../type.js';

export const linearSensorCard = defineCard({
  name: 'linearSensor',
  area: 'calibration',
  question: 'What does a sensor of a straight line measure?',
  page: 'fault-bands',
  fields: [
    { kind: 'number', name: 'lowV', label: 'Volts at the first point', example: 0.5 },
    { kind: 'number', name: 'lowValue', label: 'What is measured there', example: 0 },
    { kind: 'number', name: 'highV', label: 'Volts at the second', example: 4.5 },
    { kind: 'number', name: 'highValue', label: 'What is measured there', example: 10 },
    {
      kind: 'choice',
      name: 'output',
      label: 'The output is',
      choices: [
        { value: 'ratiometric', label: 'a share of the supply' },
        { value: 'absolute', label: 'volts, whatever the supply' },
      ],
      example: 'ratiometric',
    },
    { kind: 'number', name: 'ratedSupplyV', above: 0, example: 5 },
    { kind: 'number', name: 'supplyV', label: 'Supply that is there', above: 0, example: 4.8 },
    { kind: 'number', name: 'inputV', example: 2.4 },
    { kind: 'number', name: 'lowFaultV', label: 'Fault below', example: 0.25 },
    { kind: 'number', name: 'highFaultV', label: 'Fault above', example: 4.75 },
  ],
  results: [
    { name: 'value', label: 'Measured', round: 'nearest', digits: 4, primary: true },
    { name: 'fault', label: 'Fault', round: 'nearest' },
    { name: 'supplyErrorValue', round: 'nearest', digits: 3 },
    { name: 'valuePerV', round: 'nearest', digits: 4 },
    { name: 'zeroV', round: 'nearest', digits: 4 },
  ],
  steps: [
    {
      result: 'scaledV',
      text: 'Volts as they would be with the rated supply',
      formula: 'inputV * ratedSupplyV / supplyV',
      source: 'ratiometric-sensor-pages',
      when: (values) => values['output'] === 'ratiometric',
    },
    {
      result: 'value',
      text: 'On the straight line',
      formula: 'lowValue + (highValue - lowValue) * (scaledV - lowV) / (highV - lowV)',
      source: 'ratiometric-sensor-pages',
    },
  ],
  sources: ['ratiometric-sensor-pages'],
  cautions: ['local-code'],
  run: linearSensor,
});
