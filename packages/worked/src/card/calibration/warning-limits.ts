import { warningLimits, type WarningLimitsInput, type WarningLimitsResult } from 'loomwright';
import { defineCard } from '../type.js';
import { cellList } from './cell-list.js';

const tableOf = (output: WarningLimitsResult) => (output.possible ? output : output.nearest);

/** Places as people write them: numbers parted by spaces, commas or semicolons. */
function placesOf(text: string): number[] {
  return text
    .split(/[\s,;]+/)
    .filter((word) => word !== '')
    .map(Number);
}

export const warningLimitsCard = defineCard({
  name: 'warningLimits',
  area: 'calibration',
  question: 'When should the lamp warn?',
  page: 'fans-and-warnings',
  fields: [
    {
      kind: 'choice',
      name: 'warns',
      label: 'Warn of',
      choices: [
        { value: 'below', label: 'too little: pressure, volts' },
        { value: 'above', label: 'too much: temperature' },
      ],
      example: 'below',
    },
    {
      kind: 'text',
      name: 'healthy',
      label: 'Healthy at worst: other quantity and value',
      example: '700 1.2; 2000 2.6; 3500 3.6; 6500 4.0',
      help: 'Measured hot, and the worst of it; points are parted by semicolons.',
    },
    {
      kind: 'text',
      name: 'limit',
      label: 'Harm begins at',
      example: '700 0.5; 2000 1.0; 3500 1.7; 6500 2.0',
      help: 'From the same place to the same place.',
    },
    {
      kind: 'text',
      name: 'places',
      label: 'Places of the table',
      example: '700 1500 2000 3000 3500 5000 6500',
    },
    {
      kind: 'text',
      name: 'cells',
      label: 'Or a table that is there already',
      example: '',
      help: 'It is judged as it stands, and the places above are not used.',
    },
    { kind: 'number', name: 'errorValue', label: 'Sensor and noise, either side', min: 0, example: 0.15 },
    { kind: 'number', name: 'ratePerS', min: 0, example: 1 },
    { kind: 'number', name: 'filterS', label: 'Filter of the reading', min: 0, example: 0.1, unit: 'ms' },
    { kind: 'number', name: 'debounceS', min: 0, example: 0.1, unit: 'ms' },
    { kind: 'number', name: 'otherErrorValue', min: 0, example: 30 },
    { kind: 'number', name: 'otherRatePerS', min: 0, example: 1500 },
    { kind: 'number', name: 'otherDelayS', min: 0, example: 0.05, unit: 'ms' },
    { kind: 'number', name: 'guardValue', min: 0, example: 0.02 },
    { kind: 'number', name: 'outStepValue', label: 'Step of a limit', above: 0, example: 0.01, optional: true },
    { kind: 'number', name: 'blankS', min: 0, example: 4 },
    { kind: 'number', name: 'buildUpS', min: 0, example: 3 },
    { kind: 'number', name: 'blindMostS', min: 0, example: 6, optional: true },
  ],
  results: [
    { name: 'falseRoomValue', round: 'down', digits: 3, primary: true },
    { name: 'falseAtValue', round: 'nearest', digits: 4, trim: true },
    { name: 'missedRoomValue', round: 'down', digits: 3 },
    { name: 'missedAtValue', round: 'nearest', digits: 4, trim: true },
    { name: 'alarmDelayS', round: 'up', digits: 3 },
    { name: 'alarmMoveValue', round: 'up', digits: 3 },
    { name: 'blindS', round: 'up', digits: 3 },
  ],
  steps: [
    {
      result: 'alarmDelayS',
      text: 'From the limit passed to the alarm',
      formula: 'filterS + debounceS',
      source: 'circuit-theory',
    },
    {
      result: 'alarmMoveValue',
      text: 'A fault moves on meanwhile by',
      formula: 'ratePerS * alarmDelayS',
      source: 'circuit-theory',
    },
    {
      result: 'calmOtherValue',
      text: 'How far off sideways a healthy reading may be looked up',
      formula: 'otherErrorValue + otherRatePerS * abs(filterS - otherDelayS)',
      source: 'circuit-theory',
    },
    {
      result: 'lateOtherValue',
      text: 'And a late alarm',
      formula: 'otherErrorValue + otherRatePerS * (otherDelayS + debounceS)',
      source: 'circuit-theory',
    },
    {
      result: 'falseRoomValue',
      text: 'The limits with the most room to both sides',
      how: 'every pair of neighbouring limits that fits between; the room is halved until any more would not',
      source: 'circuit-theory',
    },
    {
      result: 'blindS',
      text: 'Longest without a warning after the start',
      formula: 'blankS + alarmDelayS',
      source: 'circuit-theory',
    },
  ],
  sources: ['circuit-theory'],
  cautions: ['stop-the-engine', 'local-code'],
  run: warningLimits,
  input: (uses): WarningLimitsInput => {
    const { places, cells, filterS, healthy, limit, outStepValue, blindMostS, ...rest } = uses;
    const list = (name: string, text: unknown) => cellList('warningLimits', name, text as string);
    const given = String(cells ?? '').trim();
    return {
      ...(rest as unknown as WarningLimitsInput),
      delayS: filterS as number,
      healthy: list('healthy', healthy),
      limit: list('limit', limit),
      ...(given === '' ? { placeValues: placesOf(places as string) } : { cells: list('cells', given) }),
      outStepValue: (outStepValue as number | undefined) ?? null,
      blindMostS: (blindMostS as number | undefined) ?? null,
    };
  },
  scope: (values, output) => {
    const { otherErrorValue, otherRatePerS, filterS, otherDelayS, debounceS } = values as Readonly<
      Record<string, number>
    >;
    const [error, rate, filter] = [otherErrorValue as number, otherRatePerS as number, filterS as number];
    const table = tableOf(output);
    return {
      calmOtherValue: error + rate * Math.abs(filter - (otherDelayS as number)),
      lateOtherValue: error + rate * ((otherDelayS as number) + (debounceS as number)),
      falseRoomValue: table?.falseRoomValue ?? null,
      falseAtValue: table?.falseAtValue ?? null,
      missedRoomValue: table?.missedRoomValue ?? null,
      missedAtValue: table?.missedAtValue ?? null,
      alarmDelayS: table?.alarmDelayS ?? null,
      alarmMoveValue: table?.alarmMoveValue ?? null,
      blindS: table?.blindS ?? null,
    };
  },
});
