import {
  thermocoupleJ,
  thermocoupleK,
  thermocoupleN,
  thermocoupleT,
  thermocoupleTemperature,
  thermocoupleTolerance,
  type ThermocoupleType,
  thermocoupleVoltage,
} from 'loomwright';
import { type ChoiceField, defineCard, type Field } from '../type.js';

const thermocouple: ChoiceField = {
  kind: 'choice',
  name: 'thermocouple',
  label: 'Type',
  choices: [
    { value: 'K', label: 'K, −270 to 1372 °C', use: thermocoupleK, identifier: 'thermocoupleK' },
    { value: 'J', label: 'J, −210 to 1200 °C', use: thermocoupleJ, identifier: 'thermocoupleJ' },
    { value: 'T', label: 'T, −270 to 400 °C', use: thermocoupleT, identifier: 'thermocoupleT' },
    { value: 'N', label: 'N, −270 to 1300 °C', use: thermocoupleN, identifier: 'thermocoupleN' },
  ],
  example: 'K',
};
const coldTempC: Field = {
  kind: 'number',
  name: 'coldTempC',
  min: -270,
  max: 1372,
  example: 35,
  label: 'Cold junction',
  help: 'Where the wires of the thermocouple end on copper.',
};

export const thermocoupleTemperatureCard = defineCard({
  name: 'thermocoupleTemperature',
  area: 'temperature',
  question: 'How hot is the measuring junction?',
  page: 'rtd-and-thermocouple',
  fields: [
    { kind: 'number', name: 'emfMv', example: 27.5, label: 'Millivolts at the ends' },
    coldTempC,
    thermocouple,
    {
      kind: 'choice',
      name: 'method',
      label: 'Found by',
      choices: [
        { value: 'exact', label: 'the reference function turned round' },
        { value: 'printed-inverse', label: 'the published approximation' },
      ],
      example: 'exact',
    },
  ],
  results: [
    { name: 'hotTempC', round: 'nearest', digits: 4, primary: true },
    { name: 'hotMv', round: 'nearest', digits: 5 },
    { name: 'slopeMvPerK', round: 'nearest' },
    { name: 'coldJunctionFraction', round: 'up' },
  ],
  steps: [
    {
      result: 'coldMv',
      text: 'What the cold junction would give against 0 °C',
      how: 'by the reference function of the type',
      source: 'nist-monograph-175',
    },
    {
      result: 'hotMv',
      text: 'What the measuring junction gives against 0 °C',
      formula: 'emfMv + coldMv',
      source: 'nist-monograph-175',
    },
    {
      result: 'hotTempC',
      text: 'Temperature of the measuring junction',
      how: 'the reference function turned round, or its printed inverse',
      source: 'nist-monograph-175',
    },
  ],
  sources: ['nist-monograph-175'],
  cautions: ['local-code', 'scald'],
  run: thermocoupleTemperature,
  scope: (values, { hotMv }) => ({ coldMv: hotMv - (values['emfMv'] as number) }),
});

export const thermocoupleVoltageCard = defineCard({
  name: 'thermocoupleVoltage',
  area: 'temperature',
  question: 'How many millivolts will a thermocouple give?',
  page: 'rtd-and-thermocouple',
  fields: [{ kind: 'number', name: 'hotTempC', min: -270, max: 1372, example: 700 }, coldTempC, thermocouple],
  results: [
    { name: 'emfMv', round: 'nearest', digits: 5, primary: true },
    { name: 'hotMv', round: 'nearest', digits: 5 },
    { name: 'coldMv', round: 'nearest', digits: 5 },
    { name: 'slopeMvPerK', round: 'nearest' },
  ],
  steps: [
    {
      result: 'hotMv',
      text: 'What the measuring junction gives against 0 °C',
      how: 'by the reference function of the type',
      source: 'nist-monograph-175',
    },
    {
      result: 'emfMv',
      text: 'What is left at the ends',
      formula: 'hotMv - coldMv',
      source: 'nist-monograph-175',
    },
  ],
  sources: ['nist-monograph-175'],
  cautions: ['local-code'],
  run: thermocoupleVoltage,
});

export const thermocoupleToleranceCard = defineCard({
  name: 'thermocoupleTolerance',
  area: 'temperature',
  question: 'How far may a new thermocouple be off?',
  page: 'rtd-and-thermocouple',
  fields: [
    { kind: 'number', name: 'hotTempC', min: -270, max: 1372, example: 700 },
    thermocouple,
    {
      kind: 'choice',
      name: 'toleranceClass',
      label: 'Class',
      choices: [
        { value: '1', label: '1, the better wire' },
        { value: '2', label: '2' },
      ],
      example: '2',
    },
  ],
  results: [
    { name: 'toleranceK', round: 'up', primary: true },
    { name: 'toleranceMv', round: 'up' },
  ],
  steps: [
    {
      result: 'toleranceK',
      text: 'Tolerance of the class',
      how: 'the larger of a fixed error and a share of the temperature',
      source: 'iec-60584-1',
    },
    { result: 'toleranceMv', text: 'In millivolts', formula: 'toleranceK * slopeMvPerK', source: 'nist-monograph-175' },
  ],
  sources: ['iec-60584-1', 'nist-monograph-175'],
  cautions: ['local-code'],
  run: thermocoupleTolerance,
  scope: (values) => {
    const type = thermocouple.choices.find(({ value }) => value === values['thermocouple'])?.use as ThermocoupleType;
    const hotTempC = values['hotTempC'] as number;
    return { slopeMvPerK: thermocoupleVoltage({ thermocouple: type, hotTempC, coldTempC: 0 }).slopeMvPerK };
  },
});
