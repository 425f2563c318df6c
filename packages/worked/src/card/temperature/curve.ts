import {
  betaFromPoints,
  thermistorResistance,
  type ThermistorResistanceInput,
  thermistorTemperature,
  type ThermistorTemperatureInput,
} from 'loomwright';
import { defineCard, type Field, type ResultField } from '../type.js';
import { curveFields, hasLetters, lettersOf, oneOhm, withCurve, zeroC } from './curve-fields.js';

const extrapolate: Field = { kind: 'flag', name: 'extrapolate', example: true };
const more: readonly ResultField[] = [
  { name: 'slopeOhmPerK', round: 'nearest', label: 'Ohms a kelvin there' },
  { name: 'localBetaK', round: 'nearest', digits: 4 },
  { name: 'extrapolated', round: 'nearest' },
];

export const thermistorTemperatureCard = defineCard({
  name: 'thermistorTemperature',
  area: 'temperature',
  question: 'Which temperature is this resistance?',
  page: 'thermistor-curve',
  fields: [{ kind: 'number', name: 'resistanceOhm', above: 0, max: 1e12, example: 320 }, ...curveFields, extrapolate],
  results: [{ name: 'tempC', round: 'nearest', digits: 4, primary: true }, ...more],
  steps: [
    {
      result: 'lnR',
      text: 'Logarithm of the resistance',
      formula: 'log(resistanceOhm / oneOhm)',
      constants: [oneOhm],
      source: 'steinhart-hart-1968',
      when: hasLetters,
    },
    {
      result: 'tempC',
      text: 'Temperature',
      formula: '1 / (aPerK + bPerK * lnR + cPerK * lnR^3) - zeroC',
      constants: [zeroC],
      source: 'steinhart-hart-1968',
      when: hasLetters,
    },
    {
      result: 'tempC',
      text: 'Temperature',
      how: 'by the equation of the part, or between its printed points by a monotone cubic of 1/T over ln R',
      source: 'steinhart-hart-1968',
      sourceOf: ({ source }: ReturnType<typeof thermistorTemperature>) => source,
      when: (values) => !hasLetters(values),
    },
  ],
  sources: ['steinhart-hart-1968'],
  cautions: ['local-code'],
  run: thermistorTemperature,
  input: withCurve<ThermistorTemperatureInput>,
  scope: (values) => ({ ...lettersOf(values), lnR: Math.log(values['resistanceOhm'] as number) }),
});

export const thermistorResistanceCard = defineCard({
  name: 'thermistorResistance',
  area: 'temperature',
  question: 'What should the sensor measure at this temperature?',
  page: 'thermistor-curve',
  fields: [{ kind: 'number', name: 'tempC', min: -273.15, max: 2000, example: 20 }, ...curveFields, extrapolate],
  results: [{ name: 'resistanceOhm', round: 'nearest', digits: 4, label: 'Resistance', primary: true }, ...more],
  steps: [
    {
      result: 'resistanceOhm',
      text: 'Resistance',
      how: 'the equation turned round in closed form; between printed points by bracketing',
      source: 'steinhart-hart-1968',
      sourceOf: ({ source }: ReturnType<typeof thermistorResistance>) =>
        source === 'given-by-caller' ? 'steinhart-hart-1968' : source,
    },
    {
      result: 'slopeOhmPerK',
      text: 'How fast it falls there',
      formula: '-resistanceOhm * localBetaK / (tempC + zeroC)^2',
      constants: [zeroC],
      source: 'ntc-beta-equation',
    },
  ],
  sources: ['steinhart-hart-1968'],
  cautions: ['local-code'],
  run: thermistorResistance,
  input: withCurve<ThermistorResistanceInput>,
});

export const betaFromPointsCard = defineCard({
  name: 'betaFromPoints',
  area: 'temperature',
  question: 'Which Beta do two readings give?',
  page: 'thermistor-curve',
  fields: [
    { kind: 'number', name: 'coldTempC', min: -273.15, example: 0, label: 'Cooler temperature' },
    { kind: 'number', name: 'coldOhm', above: 0, example: 5900, label: 'Resistance there', symbol: 'R_1' },
    { kind: 'number', name: 'hotTempC', max: 2000, example: 100, label: 'Warmer temperature' },
    { kind: 'number', name: 'hotOhm', above: 0, example: 186, label: 'Resistance there', symbol: 'R_2' },
  ],
  results: [{ name: 'betaK', round: 'nearest', digits: 5, primary: true }],
  steps: [
    {
      result: 'betaK',
      text: 'Beta between the two',
      formula: 'log(coldOhm / hotOhm) / (1 / (coldTempC + zeroC) - 1 / (hotTempC + zeroC))',
      constants: [zeroC],
      source: 'ntc-beta-equation',
    },
  ],
  sources: ['ntc-beta-equation'],
  cautions: ['local-code'],
  run: betaFromPoints,
});
