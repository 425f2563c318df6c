import { peukertExponent, runTime, type RunTimeInput } from 'loomwright';
import { defineCard, type Values } from '../type.js';
import { stageList } from './lists.js';

const aboveRate = (values: Values): boolean =>
  Number(values['currentA']) * Number(values['ratedTimeH']) >= Number(values['ratedChargeAh']);

export const runTimeCard = defineCard({
  name: 'runTime',
  area: 'supply',
  question: 'How long does the battery last?',
  page: 'how-long-a-battery-lasts',
  fields: [
    { kind: 'number', name: 'ratedChargeAh', above: 0, example: 120 },
    { kind: 'number', name: 'ratedTimeH', above: 0, example: 20, help: '20 h on most labels.' },
    {
      kind: 'number',
      name: 'peukertExponent',
      min: 1,
      max: 2,
      example: 1.2,
      help: '1 for plain ampere-hours. From two run times of the battery, or typical of its kind.',
    },
    { kind: 'number', name: 'startChargeFraction', min: 0, max: 1, example: 1, unit: '%' },
    { kind: 'number', name: 'endChargeFraction', min: 0, max: 1, example: 0.5, unit: '%' },
    { kind: 'number', name: 'currentA', min: 0, example: 12, help: 'From now on, or after the stages.' },
    {
      kind: 'text',
      name: 'stages',
      label: 'Drawn before',
      example: '80 A for 6 min',
      help: 'One after the other: 80 A for 6 min; 8 A for 2 h. May be empty.',
    },
    {
      kind: 'choice',
      name: 'belowRate',
      label: 'Below the rated current',
      choices: [
        { value: 'rated-charge', label: 'no more than the rated charge' },
        { value: 'peukert', label: 'as the law promises' },
      ],
      example: 'rated-charge',
    },
    {
      kind: 'choice',
      name: 'form',
      label: 'Form of the law',
      choices: [
        { value: 'referenced', label: 'counted from the hour rate' },
        { value: 'unreferenced', label: 'C / Iᵏ (is refused)' },
      ],
      example: 'referenced',
    },
  ],
  results: [
    { name: 'runTimeH', round: 'down', primary: true },
    { name: 'drawnAh', round: 'down' },
    { name: 'plainTimeH', round: 'nearest' },
    { name: 'afterStagesFraction', round: 'down' },
    { name: 'effectiveChargeAh', round: 'down' },
    { name: 'ratedCurrentA', label: 'Current of the rated charge', round: 'nearest' },
    { name: 'unreferencedRatio', round: 'nearest' },
  ],
  steps: [
    {
      result: 'ratedCurrentA',
      text: 'Current that the rated charge is for',
      formula: 'ratedChargeAh / ratedTimeH',
      source: 'peukert-law',
    },
    {
      result: 'fullTimeH',
      text: 'From full to empty at this current',
      formula: 'ratedTimeH * (ratedCurrentA / currentA) ^ peukertExponent',
      source: 'peukert-law',
      when: aboveRate,
    },
    {
      result: 'fullTimeH',
      text: 'From full to empty at this current',
      how: 'below the rated current: by the choice made for it',
      source: 'peukert-law',
      when: (values) => !aboveRate(values),
    },
    {
      result: 'afterStagesFraction',
      text: 'Left after the stages',
      how: 'each takes its time over that of a full battery at its current',
      source: 'peukert-law',
    },
    {
      result: 'runTimeH',
      text: 'The part of it that may be used',
      formula: '(afterStagesFraction - endChargeFraction) * fullTimeH',
      source: 'peukert-law',
    },
  ],
  sources: ['peukert-law', 'peukert-unreferenced', 'battery-guides'],
  cautions: ['battery', 'local-code'],
  run: runTime,
  input: (uses): RunTimeInput => ({
    ...(uses as unknown as RunTimeInput),
    stages: stageList('runTime', 'stages', uses['stages'] as string),
  }),
});

export const peukertExponentCard = defineCard({
  name: 'peukertExponent',
  area: 'supply',
  question: 'Which exponent has this battery?',
  page: 'how-long-a-battery-lasts',
  fields: [
    { kind: 'number', name: 'firstA', above: 0, example: 6, help: 'The rated charge over its hours.' },
    { kind: 'number', name: 'firstTimeH', above: 0, example: 20 },
    { kind: 'number', name: 'secondA', above: 0, example: 25, help: 'Reserve capacity: minutes at 25 A.' },
    { kind: 'number', name: 'secondTimeH', above: 0, example: 3.5, unit: 'min' },
  ],
  results: [
    { name: 'peukertExponent', round: 'up', digits: 4, primary: true },
    { name: 'firstChargeAh', round: 'down' },
    { name: 'secondChargeAh', round: 'down' },
  ],
  steps: [
    {
      result: 'peukertExponent',
      text: 'Slope of the run times between the two currents',
      formula: 'log(firstTimeH / secondTimeH) / log(secondA / firstA)',
      source: 'peukert-law',
    },
    { result: 'firstChargeAh', text: 'Charge at the first', formula: 'firstA * firstTimeH', source: 'peukert-law' },
    { result: 'secondChargeAh', text: 'And at the second', formula: 'secondA * secondTimeH', source: 'peukert-law' },
  ],
  sources: ['peukert-law'],
  cautions: ['battery'],
  run: peukertExponent,
});
