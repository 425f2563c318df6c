import {
  findPullUp,
  thermistorErrorBudget,
  type ThermistorErrorBudgetInput,
  thermistorInput,
  type ThermistorInputInput,
  thermistorSelfHeating,
  type ThermistorSelfHeatingInput,
} from 'loomwright';
import { defineCard, type Field, type Uses, type Values } from '../type.js';
import { curveFields, withCurve } from './curve-fields.js';

const side: Field = {
  kind: 'choice',
  name: 'side',
  label: 'The sensor goes',
  choices: [
    { value: 'sensor-to-ground', label: 'to ground, with a pull-up' },
    { value: 'sensor-to-supply', label: 'to the supply, with a pull-down' },
  ],
  example: 'sensor-to-ground',
};
const toGround = (values: Values): boolean => values['side'] === 'sensor-to-ground';
const toSupply = (values: Values): boolean => !toGround(values);
const pull: readonly Field[] = [
  side,
  { kind: 'number', name: 'supplyV', above: 0, max: 1e12, example: 5 },
  { kind: 'number', name: 'pullOhm', above: 0, max: 1e12, example: 2490, unit: 'kΩ' },
];
const extrapolate: Field = { kind: 'flag', name: 'extrapolate', example: true };
const dissipation = (example: number | null): Field => ({
  kind: 'number',
  name: 'dissipationMwPerK',
  above: 0,
  ...(example === null ? { optional: true } : {}),
  example,
  help: 'Still air about 1 for a bead; a sensor in stirred coolant 5 to 10 (common practice).',
});

export const thermistorInputCard = defineCard({
  name: 'thermistorInput',
  area: 'temperature',
  question: 'Which temperature do these volts mean?',
  page: 'thermistor-at-a-pin',
  fields: [
    { kind: 'number', name: 'inputV', min: 0, optional: true, example: 0.3475 },
    {
      kind: 'number',
      name: 'tempC',
      optional: true,
      example: null,
      help: 'Instead of the volts: leave the other one empty.',
    },
    ...pull,
    ...curveFields,
    {
      kind: 'number',
      name: 'adcSteps',
      above: 1,
      optional: true,
      example: 1024,
      help: '1024 or 1023 for 10 bits: both are in use.',
    },
    dissipation(2),
    extrapolate,
  ],
  results: [
    { name: 'tempC', round: 'nearest', digits: 4, primary: true },
    { name: 'inputV', round: 'nearest', digits: 4 },
    { name: 'resistanceOhm', round: 'nearest', digits: 4, label: 'Resistance of the sensor' },
    { name: 'fault', round: 'nearest', label: 'Fault' },
    { name: 'slopeVPerK', round: 'nearest' },
    { name: 'countK', round: 'up' },
    { name: 'selfHeatingRiseK', round: 'up' },
    { name: 'extrapolated', round: 'nearest' },
  ],
  steps: [
    {
      result: 'resistanceOhm',
      text: 'Resistance of the sensor',
      formula: 'pullOhm * inputV / (supplyV - inputV)',
      source: 'circuit-theory',
      when: toGround,
    },
    {
      result: 'resistanceOhm',
      text: 'Resistance of the sensor',
      formula: 'pullOhm * (supplyV - inputV) / inputV',
      source: 'circuit-theory',
      when: toSupply,
    },
    {
      result: 'tempC',
      text: 'Temperature',
      how: 'by the curve of the sensor',
      source: 'steinhart-hart-1968',
      sourceOf: ({ source }: ReturnType<typeof thermistorInput>) =>
        source === 'given-by-caller' ? 'steinhart-hart-1968' : source,
    },
    {
      result: 'sensorMw',
      text: 'Heat in the sensor',
      formula: '(supplyV - inputV) * inputV / pullOhm',
      source: 'circuit-theory',
    },
    {
      result: 'selfHeatingRiseK',
      text: 'How far it reads too hot',
      formula: 'sensorMw / dissipationMwPerK',
      source: 'circuit-theory',
    },
  ],
  sources: ['steinhart-hart-1968', 'circuit-theory'],
  cautions: ['local-code'],
  run: thermistorInput,
  input: withCurve<ThermistorInputInput>,
});

export const thermistorSelfHeatingCard = defineCard({
  name: 'thermistorSelfHeating',
  area: 'temperature',
  question: 'Does the current that reads the sensor warm it?',
  page: 'thermistor-at-a-pin',
  fields: [
    { kind: 'number', name: 'ambientTempC', min: -273.15, max: 2000, example: 20, label: 'What the sensor sits in' },
    ...pull,
    ...curveFields,
    dissipation(1),
    extrapolate,
  ],
  results: [
    { name: 'riseK', round: 'up', primary: true },
    { name: 'sensorTempC', round: 'nearest', digits: 4 },
    { name: 'sensorMw', round: 'up' },
    { name: 'inputV', round: 'nearest', digits: 4 },
  ],
  steps: [
    {
      result: 'sensorTempC',
      text: 'Temperature at which heat in and heat out balance',
      how: 'the first balance that a sensor comes to from cold, by bracketing',
      source: 'circuit-theory',
    },
    {
      result: 'sensorMw',
      text: 'Heat in the sensor',
      formula: '(supplyV - inputV) * inputV / pullOhm',
      source: 'circuit-theory',
    },
    { result: 'riseK', text: 'Rise', formula: 'sensorMw / dissipationMwPerK', source: 'circuit-theory' },
  ],
  sources: ['circuit-theory', 'steinhart-hart-1968'],
  cautions: ['local-code'],
  run: thermistorSelfHeating,
  input: withCurve<ThermistorSelfHeatingInput>,
});

/** Temperatures from one to another in eight steps. */
export function tempsBetween(lowTempC: number, highTempC: number, count = 9): number[] {
  return Array.from({ length: count }, (_, i) => lowTempC + ((highTempC - lowTempC) * i) / (count - 1));
}

export const thermistorErrorBudgetCard = defineCard({
  name: 'thermistorErrorBudget',
  area: 'temperature',
  question: 'How many kelvins may the reading be off?',
  page: 'thermistor-at-a-pin',
  fields: [
    { kind: 'number', name: 'lowTempC', min: -273.15, max: 2000, example: -20 },
    { kind: 'number', name: 'highTempC', min: -273.15, max: 2000, example: 120 },
    ...pull,
    { kind: 'number', name: 'pullToleranceFraction', min: 0, max: 0.5, example: 0.01 },
    ...curveFields,
    { kind: 'number', name: 'sensorToleranceK', min: 0, example: 0.5 },
    { kind: 'number', name: 'adcSteps', above: 1, example: 1024 },
    { kind: 'number', name: 'adcErrorCounts', min: 0.5, example: 2 },
    {
      kind: 'choice',
      name: 'reference',
      label: 'The converter measures',
      choices: [
        { value: 'ratiometric', label: 'against the supply of the divider' },
        { value: 'absolute', label: 'against a reference of its own' },
      ],
      example: 'ratiometric',
    },
    { kind: 'number', name: 'supplyToleranceFraction', optional: true, example: null },
    dissipation(null),
    extrapolate,
  ],
  results: [
    { name: 'worstK', round: 'up', primary: true },
    { name: 'worstTempC', round: 'nearest', trim: true, label: 'At' },
    { name: 'middleRssK', round: 'up' },
  ],
  steps: [
    {
      result: 'worstK',
      text: 'Everything at its worst',
      how: 'each corner of the tolerances is worked through the divider and back by the curve',
      source: 'circuit-theory',
    },
  ],
  sources: ['circuit-theory', 'steinhart-hart-1968'],
  cautions: ['local-code'],
  run: thermistorErrorBudget,
  input: (uses: Uses): ThermistorErrorBudgetInput => {
    const { lowTempC, highTempC, ...rest } = uses;
    return withCurve<ThermistorErrorBudgetInput>({
      ...rest,
      tempsC: tempsBetween(lowTempC as number, highTempC as number),
    });
  },
  scope: (_, { rows }) => ({ middleRssK: rows[rows.length >> 1]?.rootSumSquareK ?? null }),
});

export const findPullUpCard = defineCard({
  name: 'findPullUp',
  area: 'temperature',
  question: 'Which pull-up is inside the controller?',
  page: 'thermistor-at-a-pin',
  fields: [
    side,
    { kind: 'number', name: 'supplyV', above: 0, max: 1e12, example: 5, label: 'Volts with the sensor unplugged' },
    { kind: 'number', name: 'knownOhm', above: 0, max: 1e12, example: 2200, unit: 'kΩ' },
    { kind: 'number', name: 'inputV', above: 0, example: 2.345, label: 'Volts with the known resistor' },
    { kind: 'number', name: 'meterToleranceV', min: 0, example: 0.01 },
  ],
  results: [
    { name: 'pullOhm', round: 'nearest', digits: 4, primary: true },
    { name: 'lowestOhm', round: 'down', label: 'At least' },
    { name: 'highestOhm', round: 'up', label: 'At most' },
  ],
  steps: [
    {
      result: 'pullOhm',
      text: 'The fixed resistor',
      formula: 'knownOhm * (supplyV - inputV) / inputV',
      source: 'circuit-theory',
      when: toGround,
    },
    {
      result: 'pullOhm',
      text: 'The fixed resistor',
      formula: 'knownOhm * inputV / (supplyV - inputV)',
      source: 'circuit-theory',
      when: toSupply,
    },
  ],
  sources: ['circuit-theory'],
  cautions: ['local-code'],
  run: findPullUp,
});
