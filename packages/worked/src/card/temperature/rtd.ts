import {
  iec60751,
  iec751of1983,
  platinumClassA,
  platinumClassAA,
  platinumClassB,
  platinumClassC,
  type PlatinumClass,
  rtdResistance,
  rtdTemperature,
  rtdTolerance,
} from 'loomwright';
import { type Choice, type Constant, defineCard, type Field, type Values } from '../type.js';

const curve: Field = {
  kind: 'choice',
  name: 'curve',
  label: 'Platinum curve',
  choices: [
    { value: 'iec-60751', label: 'IEC 60751, in force: 138.51 Ω at 100 °C', use: iec60751, identifier: 'iec60751' },
    {
      value: 'iec-751-1983',
      label: 'IEC 751 of 1983: 138.50 Ω at 100 °C',
      use: iec751of1983,
      identifier: 'iec751of1983',
    },
  ],
  example: 'iec-60751',
};
const nominal: Field = {
  kind: 'number',
  name: 'nominalOhm',
  above: 0,
  max: 1e12,
  example: 100,
  help: '100 for a Pt100, 1000 for a Pt1000.',
};
const tempC: Field = { kind: 'number', name: 'tempC', min: -200, max: 850, example: 100 };

const letters: readonly Constant[] = [
  { name: 'linearA', symbol: 'A', value: iec60751.a, unit: 'K^-1', source: 'iec-60751' },
  { name: 'squareB', symbol: 'B', value: iec60751.b, unit: 'K^-2', source: 'iec-60751' },
];
const cold: readonly Constant[] = [
  ...letters,
  { name: 'fourthC', symbol: 'C', value: iec60751.c, unit: 'K^-4', source: 'iec-60751' },
  { name: 'hundredC', symbol: 't_{100}', value: 100, unit: 'K', source: 'iec-60751' },
];
const inForce = (values: Values): boolean => values['curve'] === 'iec-60751';
const atOrAboveZero = (values: Values): boolean => (values['tempC'] as number) >= 0;

export const rtdResistanceCard = defineCard({
  name: 'rtdResistance',
  area: 'temperature',
  question: 'What should this Pt100 measure?',
  page: 'rtd-and-thermocouple',
  fields: [tempC, nominal, curve],
  results: [
    { name: 'resistanceOhm', round: 'nearest', digits: 6, label: 'Resistance', primary: true },
    { name: 'slopeOhmPerK', round: 'nearest' },
  ],
  steps: [
    {
      result: 'resistanceOhm',
      text: 'Resistance at or above 0 °C',
      formula: 'nominalOhm * (1 + linearA * tempC + squareB * tempC^2)',
      constants: letters,
      source: 'iec-60751',
      when: (values) => inForce(values) && atOrAboveZero(values),
    },
    {
      result: 'resistanceOhm',
      text: 'Resistance below 0 °C',
      formula: 'nominalOhm * (1 + linearA * tempC + squareB * tempC^2 + fourthC * (tempC - hundredC) * tempC^3)',
      constants: cold,
      source: 'iec-60751',
      when: (values) => inForce(values) && !atOrAboveZero(values),
    },
    {
      result: 'resistanceOhm',
      text: 'Resistance',
      how: 'the same equation with the letters of 1983',
      source: 'iec-751-1983',
      when: (values) => !inForce(values),
    },
  ],
  sources: ['iec-60751', 'iec-751-1983'],
  cautions: ['local-code'],
  run: rtdResistance,
});

export const rtdTemperatureCard = defineCard({
  name: 'rtdTemperature',
  area: 'temperature',
  question: 'Which temperature is this platinum resistor at?',
  page: 'rtd-and-thermocouple',
  fields: [
    {
      kind: 'number',
      name: 'resistanceOhm',
      above: 0,
      example: 119.4,
      help: 'With that of the leads taken off.',
    },
    nominal,
    curve,
  ],
  results: [
    { name: 'tempC', round: 'nearest', digits: 4, primary: true },
    { name: 'slopeOhmPerK', round: 'nearest' },
    { name: 'tenthOhmK', round: 'up' },
  ],
  steps: [
    {
      result: 'tempC',
      text: 'Temperature at or above 0 °C',
      formula: '(-linearA + sqrt(linearA^2 - 4 * squareB * (1 - resistanceOhm / nominalOhm))) / (2 * squareB)',
      constants: letters,
      source: 'iec-60751',
      when: (values) => inForce(values) && (values['resistanceOhm'] as number) >= (values['nominalOhm'] as number),
    },
    {
      result: 'tempC',
      text: 'Temperature',
      how: 'the equation solved by bracketing to 10⁻¹⁰ K',
      source: 'iec-60751',
      sourceOf: ({ source }: ReturnType<typeof rtdTemperature>) => source,
      when: (values) => !inForce(values) || (values['resistanceOhm'] as number) < (values['nominalOhm'] as number),
    },
  ],
  sources: ['iec-60751', 'iec-751-1983'],
  cautions: ['local-code'],
  run: rtdTemperature,
  scope: (_, { slopeOhmPerK }) => ({ tenthOhmK: 0.1 / slopeOhmPerK }),
});

const classChoices: readonly Choice[] = (
  [
    ['AA', platinumClassAA, 'platinumClassAA'],
    ['A', platinumClassA, 'platinumClassA'],
    ['B', platinumClassB, 'platinumClassB'],
    ['C', platinumClassC, 'platinumClassC'],
  ] as const
).map(([value, use, identifier]) => ({
  value,
  label: `${value}: ±(${use.fixedK} + ${use.shareFraction} |t|) K`,
  use,
  identifier,
}));

export const rtdToleranceCard = defineCard({
  name: 'rtdTolerance',
  area: 'temperature',
  question: 'How far may a Pt100 of this class be off?',
  page: 'rtd-and-thermocouple',
  fields: [
    tempC,
    { kind: 'choice', name: 'toleranceClass', label: 'Class', choices: classChoices, example: 'B' },
    {
      kind: 'choice',
      name: 'element',
      label: 'Made as',
      choices: [
        { value: 'film', label: 'a film on ceramic' },
        { value: 'wire-wound', label: 'a wound wire' },
      ],
      example: 'film',
    },
    nominal,
    curve,
  ],
  results: [
    { name: 'toleranceK', round: 'up', primary: true },
    { name: 'toleranceOhm', round: 'up' },
    { name: 'lowestOhm', round: 'down', digits: 5, label: 'At least' },
    { name: 'highestOhm', round: 'up', digits: 5, label: 'At most' },
  ],
  steps: [
    {
      result: 'toleranceK',
      text: 'Tolerance of the class',
      formula: 'fixedK + shareFraction * tempC',
      source: 'iec-60751',
      when: atOrAboveZero,
    },
    {
      result: 'toleranceK',
      text: 'Tolerance of the class',
      formula: 'fixedK - shareFraction * tempC',
      source: 'iec-60751',
      when: (values) => !atOrAboveZero(values),
    },
    { result: 'toleranceOhm', text: 'In ohms', formula: 'toleranceK * slopeOhmPerK', source: 'iec-60751' },
  ],
  sources: ['iec-60751'],
  cautions: ['local-code'],
  run: rtdTolerance,
  scope: (values, { toleranceOhm, toleranceK }) => {
    const found = classChoices.find(({ value }) => value === values['toleranceClass'])?.use as PlatinumClass;
    return { fixedK: found.fixedK, shareFraction: found.shareFraction, slopeOhmPerK: toleranceOhm / toleranceK };
  },
});
