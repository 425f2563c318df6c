import {
  pulsesPerDistance,
  type PulsesPerDistanceInput,
  reluctorAmplitude,
  toothFrequency,
  type ToothFrequencyInput,
} from 'loomwright';
import { defineCard } from '../type.js';
import { pi } from './pi.js';

const PAGE = 'toothed-wheels';

export const toothFrequencyCard = defineCard({
  name: 'toothFrequency',
  area: 'signal',
  question: 'Which frequency does this wheel give?',
  page: PAGE,
  fields: [
    { kind: 'number', name: 'teeth', min: 1, example: 60, help: 'Places around the wheel, missing teeth counted too.' },
    { kind: 'number', name: 'missingTeeth', min: 0, example: 2 },
    {
      kind: 'number',
      name: 'turnRatio',
      label: 'Turns of the wheel for one of the shaft',
      above: 0,
      example: 1,
      help: '1 on the crank or at the hub, 0.5 on a cam.',
    },
    {
      kind: 'choice',
      name: 'given',
      label: 'Known is',
      choices: [
        { value: 'rpm', label: 'the speed of the shaft' },
        { value: 'road', label: 'the road speed and the tyre' },
        { value: 'frequency', label: 'the frequency' },
      ],
      example: 'rpm',
    },
    { kind: 'number', name: 'speedRpm', above: 0, example: 6000 },
    { kind: 'number', name: 'speedKmh', example: 100, help: 'Used where the road speed is known.' },
    { kind: 'number', name: 'circumferenceM', above: 0, example: 1.95 },
    { kind: 'number', name: 'frequencyHz', example: 6000, help: 'Used where the frequency is known.' },
    {
      kind: 'number',
      name: 'teethPerPulseCount',
      min: 1,
      example: 1,
      help: 'Above 1 for a sensor that divides, such as one on a turbine.',
    },
    { kind: 'number', name: 'toothFraction', min: 0.001, max: 0.999, example: 0.5, unit: '%', optional: true },
    { kind: 'number', name: 'inputMostHz', above: 0, example: 10000, optional: true, unit: 'kHz' },
    { kind: 'number', name: 'inputLeastHz', above: 0, example: 5, optional: true },
  ],
  results: [
    { name: 'frequencyHz', label: 'Frequency', round: 'up', digits: 4, primary: true },
    { name: 'speedRpm', round: 'nearest', digits: 4 },
    { name: 'meanHz', round: 'nearest', digits: 4 },
    { name: 'periodS', label: 'From tooth to tooth', round: 'down' },
    { name: 'longestPeriodS', round: 'up' },
    { name: 'toothS', round: 'down' },
    { name: 'turnPulses', round: 'nearest', digits: 4, trim: true },
    { name: 'shaftPitchDeg', round: 'nearest', trim: true },
    { name: 'mostRpm', round: 'down', digits: 4 },
    { name: 'leastRpm', round: 'up', digits: 4 },
  ],
  steps: [
    {
      result: 'speedRpm',
      text: 'Speed of the shaft from the road',
      formula: 'speedKmh / circumferenceM',
      source: 'circuit-theory',
      when: (values) => values['given'] === 'road',
    },
    {
      result: 'speedRpm',
      text: 'Speed of the shaft from the frequency',
      formula: 'frequencyHz * teethPerPulseCount / (teeth * turnRatio)',
      source: 'speed-sensor-notes',
      when: (values) => values['given'] === 'frequency',
    },
    {
      result: 'frequencyHz',
      text: 'Teeth that pass in a second, as fast as where none is missing',
      formula: 'speedRpm * teeth * turnRatio / teethPerPulseCount',
      source: 'speed-sensor-notes',
      when: (values) => values['given'] !== 'frequency',
    },
    {
      result: 'longestPeriodS',
      text: 'Longest interval, across the missing teeth',
      formula: '(missingTeeth + 1) / frequencyHz',
      source: 'circuit-theory',
    },
  ],
  sources: ['speed-sensor-notes', 'circuit-theory'],
  cautions: ['local-code', 'prove-slowly'],
  run: toothFrequency,
  input: (uses): ToothFrequencyInput => {
    const { given, speedRpm, speedKmh, circumferenceM, frequencyHz, ...rest } = uses;
    return {
      ...(rest as unknown as ToothFrequencyInput),
      circumferenceM: circumferenceM as number,
      ...(given === 'road'
        ? { speedKmh: speedKmh as number }
        : given === 'frequency'
          ? { frequencyHz: frequencyHz as number }
          : { speedRpm: speedRpm as number }),
    };
  },
});

export const pulsesPerDistanceCard = defineCard({
  name: 'pulsesPerDistance',
  area: 'signal',
  question: 'How many pulses does a kilometre have?',
  page: PAGE,
  fields: [
    {
      kind: 'choice',
      name: 'given',
      label: 'Known is',
      choices: [
        { value: 'tyre', label: 'the size on the sidewall' },
        { value: 'measured', label: 'the rolled circumference' },
      ],
      example: 'tyre',
    },
    { kind: 'text', name: 'tyreSize', example: '205/55R16', help: 'Metric, or inches such as 31x10.5R15.' },
    {
      kind: 'number',
      name: 'rollingFactor',
      min: 0.9,
      max: 1,
      example: 0.97,
      help: 'About 0.97 for a radial tyre, 0.95 for a diagonal one.',
    },
    {
      kind: 'number',
      name: 'circumferenceM',
      example: 1.95,
      help: 'Used where it was measured: one turn of the wheel, laden.',
    },
    { kind: 'number', name: 'turnPulses', above: 0, example: 48 },
    {
      kind: 'number',
      name: 'turnRatio',
      label: 'Turns of that part for one of the wheel',
      above: 0,
      example: 1,
      help: '1 at the hub, the axle ratio on the propeller shaft.',
    },
    { kind: 'number', name: 'setPulsesPerKm', above: 0, example: 24000, optional: true },
  ],
  results: [
    { name: 'pulsesPerKm', round: 'nearest', digits: 5, primary: true },
    { name: 'pulsesPerMile', round: 'nearest', digits: 5 },
    { name: 'rolledM', round: 'nearest', digits: 4 },
    { name: 'wheelTurnsPerKm', label: 'Turns of the wheel in a kilometre', round: 'nearest', digits: 4 },
    { name: 'frequencyHzPerKmh', round: 'nearest' },
    { name: 'displayErrorFraction', round: 'nearest' },
  ],
  steps: [
    {
      result: 'diameterMm',
      text: 'Diameter of the free tyre',
      how: 'rim, and the sidewall twice: the width times the second figure of the size in per cent',
      source: 'tyre-standards',
      when: (values) => values['given'] === 'tyre',
    },
    {
      result: 'rolledM',
      text: 'Circumference that it rolls on',
      formula: 'pi * diameterMm * rollingFactor',
      constants: [pi],
      source: 'tyre-standards',
      when: (values) => values['given'] === 'tyre',
    },
    {
      result: 'pulsesPerKm',
      text: 'Pulses in a kilometre',
      formula: 'turnPulses * turnRatio / rolledM',
      source: 'circuit-theory',
    },
    {
      result: 'displayErrorFraction',
      text: 'What the display shows too much',
      formula: 'pulsesPerKm / setPulsesPerKm - 1',
      source: 'circuit-theory',
      when: (values) => typeof values['setPulsesPerKm'] === 'number',
    },
  ],
  sources: ['tyre-standards', 'common-practice'],
  cautions: ['local-code'],
  run: pulsesPerDistance,
  input: (uses): PulsesPerDistanceInput => {
    const { given, tyreSize, rollingFactor, circumferenceM, ...rest } = uses;
    return {
      ...(rest as unknown as PulsesPerDistanceInput),
      ...(given === 'measured'
        ? { circumferenceM: circumferenceM as number }
        : { tyreSize: tyreSize as string, rollingFactor: rollingFactor as number }),
    };
  },
  scope: (_, output) => ({ rolledM: output.circumferenceM }),
});

export const reluctorAmplitudeCard = defineCard({
  name: 'reluctorAmplitude',
  area: 'signal',
  question: 'Are the volts of a magnetic pick-up enough, and not too many?',
  page: PAGE,
  fields: [
    { kind: 'number', name: 'measuredV', above: 0, example: 2, help: 'Peak volts of the open coil, measured once.' },
    { kind: 'number', name: 'measuredRpm', above: 0, example: 200 },
    { kind: 'number', name: 'measuredGapMm', min: 0, example: 0.8 },
    { kind: 'number', name: 'gapMm', min: 0, example: 1 },
    { kind: 'number', name: 'teeth', min: 1, example: 36 },
    { kind: 'number', name: 'wheelDiameterMm', above: 0, example: 160 },
    { kind: 'number', name: 'lowestRpm', above: 0, example: 150 },
    { kind: 'number', name: 'highestRpm', above: 0, example: 7000 },
    { kind: 'number', name: 'coilOhm', min: 0, example: 900 },
    { kind: 'number', name: 'coilH', min: 0, example: 0.4, unit: 'mH' },
    { kind: 'number', name: 'inputOhm', above: 0, example: 10000, unit: 'kΩ' },
    { kind: 'number', name: 'inputLeastV', above: 0, example: 0.4, unit: 'mV' },
    { kind: 'number', name: 'inputMostV', above: 0, example: 120 },
  ],
  results: [
    { name: 'lowestSpeedV', round: 'down', primary: true },
    { name: 'highestSpeedV', round: 'up' },
    { name: 'openHighestSpeedV', round: 'up' },
    { name: 'readableRpm', round: 'up' },
    { name: 'gapFactor', round: 'down' },
    { name: 'lossPerTenthMmFraction', round: 'up' },
    { name: 'highestHz', round: 'up' },
  ],
  steps: [
    {
      result: 'toothPitchMm',
      text: 'From tooth to tooth',
      formula: 'pi * wheelDiameterMm / teeth',
      constants: [pi],
      source: 'circuit-theory',
    },
    {
      result: 'gapFactor',
      text: 'What the gap leaves',
      formula: 'exp(-2 * pi * (gapMm - measuredGapMm) / toothPitchMm)',
      constants: [pi],
      source: 'common-practice',
    },
    {
      result: 'openLowestV',
      text: 'Open coil at the lowest speed',
      formula: 'measuredV * lowestRpm / measuredRpm * gapFactor',
      source: 'common-practice',
    },
    {
      result: 'lowestSpeedV',
      text: 'At the input, loaded',
      formula: 'openLowestV * inputOhm / sqrt((inputOhm + coilOhm)^2 + (2 * pi * teeth * lowestRpm * coilH)^2)',
      constants: [pi],
      source: 'circuit-theory',
    },
  ],
  sources: ['common-practice', 'circuit-theory'],
  cautions: ['local-code', 'prove-slowly'],
  run: reluctorAmplitude,
  scope: (values, output) => ({
    toothPitchMm: output.pitchMm,
    openLowestV:
      (Number(values['measuredV']) * Number(values['lowestRpm']) * output.gapFactor) / Number(values['measuredRpm']),
  }),
});
