import { senseError, type SenseErrorInput } from 'loomwright';
import { defineCard } from '../type.js';
import { sensePartList } from './lists.js';

export const senseErrorCard = defineCard({
  name: 'senseError',
  area: 'supply',
  question: 'What does the battery get when the regulator watches somewhere else?',
  page: 'where-the-regulator-looks',
  fields: [
    { kind: 'number', name: 'setV', above: 0, example: 14.4 },
    { kind: 'number', name: 'setTempC', min: -100, max: 400, example: 25 },
    {
      kind: 'number',
      name: 'setVPerK',
      min: -1,
      max: 1,
      example: -0.01,
      help: '−0.010 to −0.030 for 12 V, from memory; 0 for none.',
    },
    { kind: 'number', name: 'regulatorTempC', min: -100, max: 400, example: 70 },
    {
      kind: 'text',
      name: 'parts',
      label: 'Between sense points and battery',
      example: 'charge cable + 3 mΩ 55 A; main fuse + 0.5 mΩ 55 A; engine strap - 1 mΩ 55 A',
      help: 'Name, side (+ or -), resistance, current; “back” where it flows against the charging: ignition feed + 30 mΩ 8 A back. Empty where it watches at the posts.',
    },
    { kind: 'number', name: 'leastV', above: 0, example: 13.8 },
    { kind: 'number', name: 'mostV', above: 0, example: 14.7 },
    { kind: 'number', name: 'limitsTempC', min: -100, max: 400, example: 25 },
    { kind: 'number', name: 'limitsVPerK', min: -1, max: 1, example: -0.02 },
    { kind: 'number', name: 'batteryTempC', min: -100, max: 400, example: 30 },
  ],
  results: [
    { name: 'batteryV', round: 'nearest', digits: 4, primary: true },
    { name: 'verdict', round: 'nearest', label: 'Verdict' },
    { name: 'cure', round: 'nearest', label: 'Cure' },
    { name: 'heldV', round: 'nearest', digits: 4 },
    { name: 'positiveLossV', round: 'up' },
    { name: 'negativeLossV', round: 'up' },
    { name: 'temperatureErrorV', round: 'nearest' },
    { name: 'leastBatteryV', round: 'nearest', digits: 4 },
    { name: 'mostBatteryV', round: 'nearest', digits: 4 },
    { name: 'neededSetV', round: 'nearest', digits: 4 },
  ],
  steps: [
    {
      result: 'heldV',
      text: 'Held where the regulator watches, at its temperature',
      formula: 'setV + setVPerK * (regulatorTempC - setTempC)',
      source: 'regulator-limits',
    },
    {
      result: 'positiveLossV',
      text: 'Lost on from there',
      how: 'each resistance times its current, below 0 where it flows back',
      source: 'circuit-theory',
    },
    {
      result: 'batteryV',
      text: 'At the posts',
      formula: 'heldV - positiveLossV - negativeLossV',
      source: 'circuit-theory',
    },
    {
      result: 'leastBatteryV',
      text: 'What the battery wants at its temperature, from',
      formula: 'leastV + limitsVPerK * (batteryTempC - limitsTempC)',
      source: 'given-by-caller',
    },
    {
      result: 'mostBatteryV',
      text: 'Up to',
      formula: 'mostV + limitsVPerK * (batteryTempC - limitsTempC)',
      source: 'given-by-caller',
    },
    {
      result: 'neededSetV',
      text: 'Set-point for the middle',
      formula: 'setV + wantedV - batteryV',
      source: 'circuit-theory',
    },
  ],
  sources: ['circuit-theory', 'regulator-limits', 'service-drop-limits'],
  cautions: ['battery', 'local-code'],
  run: senseError,
  input: (uses): SenseErrorInput => ({
    ...(uses as unknown as SenseErrorInput),
    parts: sensePartList('senseError', 'parts', uses['parts'] as string),
  }),
});
