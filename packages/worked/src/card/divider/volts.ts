import {
  adcReading,
  type AdcReadingInput,
  designDivider,
  divider,
  loadedDivider,
  type LoadedDividerInput,
  nearestPreferred,
  thevenin,
  type TheveninInput,
} from 'loomwright';
import { defineCard, type Uses } from '../type.js';
import { branchList } from './lists.js';
import { seriesField } from './series.js';

const PAGE = 'twelve-volts-on-five';

/** A field that may be empty, as the core wants it: null. */
const orNull = (uses: Uses, name: string): number | null => (uses[name] as number | undefined) ?? null;

export const dividerCard = defineCard({
  name: 'divider',
  area: 'divider',
  question: 'How many volts come out of two resistors?',
  page: PAGE,
  fields: [
    { kind: 'number', name: 'inV', example: 13.8 },
    { kind: 'number', name: 'upperOhm', min: 0, example: 18000, unit: 'kΩ' },
    { kind: 'number', name: 'lowerOhm', above: 0, example: 10000, unit: 'kΩ' },
  ],
  results: [
    { name: 'outV', round: 'nearest', digits: 4, primary: true },
    { name: 'outFraction', round: 'nearest' },
    { name: 'currentA', round: 'up' },
    { name: 'sourceOhm', round: 'nearest' },
    { name: 'upperW', round: 'up' },
    { name: 'lowerW', round: 'up' },
  ],
  steps: [
    {
      result: 'outFraction',
      text: 'Share of the volts',
      formula: 'lowerOhm / (upperOhm + lowerOhm)',
      source: 'lessons-electric-circuits',
    },
    { result: 'outV', text: 'Volts at the tap', formula: 'inV * outFraction', source: 'lessons-electric-circuits' },
    {
      result: 'currentA',
      text: 'Current through both',
      formula: 'inV / (upperOhm + lowerOhm)',
      source: 'circuit-theory',
    },
    {
      result: 'sourceOhm',
      text: 'Resistance that the pin sees: both in parallel',
      formula: 'upperOhm * lowerOhm / (upperOhm + lowerOhm)',
      source: 'circuit-theory',
    },
    { result: 'upperW', text: 'Heat of the upper one', formula: 'currentA^2 * upperOhm', source: 'circuit-theory' },
  ],
  sources: ['lessons-electric-circuits'],
  cautions: ['local-code'],
  run: divider,
});

export const loadedDividerCard = defineCard({
  name: 'loadedDivider',
  area: 'divider',
  question: 'What does the pin see with everything connected?',
  page: PAGE,
  fields: [
    { kind: 'number', name: 'inV', example: 13.8 },
    { kind: 'number', name: 'sourceOhm', label: 'Source and wire', symbol: 'R_s', min: 0, example: 0 },
    { kind: 'number', name: 'upperOhm', min: 0, example: 18000, unit: 'kΩ' },
    {
      kind: 'number',
      name: 'lowerOhm',
      above: 0,
      example: 10000,
      unit: 'kΩ',
      optional: true,
      help: 'Empty where there is none.',
    },
    {
      kind: 'number',
      name: 'inputOhm',
      above: 0,
      example: null,
      optional: true,
      unit: 'kΩ',
      help: 'The input itself to ground. Empty where it draws nothing worth counting.',
    },
    {
      kind: 'number',
      name: 'pullUpOhm',
      above: 0,
      example: 1000,
      optional: true,
      unit: 'kΩ',
      help: 'Many inputs have one inside. Look for it before you add a divider.',
    },
    { kind: 'number', name: 'pullUpV', example: 5, optional: true },
    { kind: 'number', name: 'pullDownOhm', above: 0, example: null, optional: true, unit: 'kΩ' },
    { kind: 'number', name: 'fullScaleV', above: 0, example: 5, optional: true },
    { kind: 'number', name: 'clampV', above: 0, example: 5.6, optional: true },
    { kind: 'number', name: 'allowedErrorV', above: 0, example: null, optional: true, unit: 'mV' },
  ],
  results: [
    { name: 'outV', label: 'Volts at the pin', round: 'nearest', digits: 4, primary: true },
    { name: 'idealV', round: 'nearest', digits: 4 },
    { name: 'shiftV', round: 'nearest' },
    { name: 'pullShiftV', round: 'nearest' },
    { name: 'nodeOhm', round: 'nearest' },
    { name: 'openWireV', round: 'nearest' },
    { name: 'groundLostV', round: 'up' },
    { name: 'clampA', round: 'up' },
    { name: 'groundLostClampA', round: 'up' },
  ],
  steps: [
    {
      result: 'idealV',
      text: 'What the two resistors alone would give',
      formula: 'inV * lowerOhm / (upperOhm + lowerOhm)',
      source: 'lessons-electric-circuits',
      when: (values) => typeof values['lowerOhm'] === 'number',
    },
    {
      result: 'nodeOhm',
      text: 'Everything that meets at the pin, in parallel',
      how: 'one over the sum of one over each',
      source: 'circuit-theory',
    },
    {
      result: 'outV',
      text: 'Volts at the pin: what each path pushes in, times that resistance',
      formula: 'nodeOhm * (inV / (sourceOhm + upperOhm) + pullUpV / pullUpOhm)',
      source: 'circuit-theory',
      when: (values) => typeof values['pullUpOhm'] === 'number',
    },
    {
      result: 'outV',
      text: 'Volts at the pin: what the signal pushes in, times that resistance',
      formula: 'nodeOhm * inV / (sourceOhm + upperOhm)',
      source: 'circuit-theory',
      when: (values) => typeof values['pullUpOhm'] !== 'number',
    },
    { result: 'shiftV', text: 'Off by', formula: 'outV - idealV', source: 'circuit-theory' },
  ],
  sources: ['circuit-theory', 'common-practice'],
  cautions: ['local-code'],
  run: loadedDivider,
  input: (uses): LoadedDividerInput => ({
    ...(uses as unknown as LoadedDividerInput),
    lowerOhm: orNull(uses, 'lowerOhm'),
    inputOhm: orNull(uses, 'inputOhm'),
  }),
});

export const theveninCard = defineCard({
  name: 'thevenin',
  area: 'divider',
  question: 'What do several sources and resistors make of one node?',
  page: PAGE,
  fields: [
    {
      kind: 'text',
      name: 'branches',
      example: '28 V / 4; 7 V / 1',
      help: 'Open volts / resistance in Ω of each path. A resistor to ground is 0 V / 4k7.',
    },
    { kind: 'number', name: 'injectedA', example: 0, unit: 'mA', help: 'Leakage into the node; below 0 out of it.' },
    { kind: 'number', name: 'loadOhm', min: 0, example: 2, optional: true },
  ],
  results: [
    { name: 'nodeV', round: 'nearest', digits: 4, primary: true },
    { name: 'emfV', round: 'nearest', digits: 4 },
    { name: 'sourceOhm', label: 'Resistance behind them', round: 'nearest' },
    { name: 'loadA', round: 'nearest' },
    { name: 'loadW', round: 'up' },
    { name: 'shortA', round: 'up' },
    { name: 'mostLoadW', round: 'up' },
  ],
  steps: [
    {
      result: 'sourceOhm',
      text: 'All paths in parallel',
      how: 'one over the sum of one over each resistance',
      source: 'lessons-electric-circuits',
    },
    {
      result: 'shortA',
      text: 'What they all push into a short',
      how: 'volts over ohms of each path, added, and the leakage',
      source: 'lessons-electric-circuits',
    },
    { result: 'emfV', text: 'Open volts', formula: 'shortA * sourceOhm', source: 'lessons-electric-circuits' },
    {
      result: 'nodeV',
      text: 'Volts with the load',
      formula: 'emfV * loadOhm / (loadOhm + sourceOhm)',
      source: 'lessons-electric-circuits',
      when: (values) => typeof values['loadOhm'] === 'number',
    },
  ],
  sources: ['lessons-electric-circuits', 'circuit-tutorials'],
  cautions: ['local-code'],
  run: thevenin,
  input: (uses): TheveninInput => ({
    ...(uses as unknown as TheveninInput),
    branches: branchList('thevenin', 'branches', uses['branches'] as string),
  }),
});

export const nearestPreferredCard = defineCard({
  name: 'nearestPreferred',
  area: 'divider',
  question: 'Which value can be bought?',
  page: PAGE,
  fields: [
    { kind: 'number', name: 'value', label: 'Wanted value', symbol: 'R', min: 1e-15, max: 1e15, example: 826.7 },
    seriesField('E24'),
  ],
  results: [
    { name: 'nearestValue', round: 'nearest', digits: 4, trim: true, primary: true },
    { name: 'belowValue', round: 'nearest', digits: 4, trim: true },
    { name: 'aboveValue', round: 'nearest', digits: 4, trim: true },
    { name: 'nearestErrorFraction', round: 'nearest' },
  ],
  steps: [
    {
      result: 'nearestErrorFraction',
      text: 'Error of the nearest',
      formula: 'nearestValue / value - 1',
      source: 'iec-60063',
    },
  ],
  sources: ['iec-60063'],
  cautions: ['local-code'],
  run: nearestPreferred,
});

export const designDividerCard = defineCard({
  name: 'designDivider',
  area: 'divider',
  question: 'Which two resistors bring this signal down to the pin?',
  page: PAGE,
  fields: [
    { kind: 'number', name: 'lowestInV', min: 0, example: 8 },
    { kind: 'number', name: 'highestInV', above: 0, example: 16 },
    {
      kind: 'number',
      name: 'surgeV',
      above: 0,
      example: 30,
      help: 'The most that may ever arrive: a jump start, a lost battery. It need not be read, only survived.',
    },
    { kind: 'number', name: 'fullScaleV', above: 0, example: 5 },
    { kind: 'number', name: 'inputOhm', above: 0, example: null, optional: true, unit: 'kΩ' },
    { kind: 'number', name: 'leastSourceOhm', above: 0, example: 1000, unit: 'kΩ' },
    {
      kind: 'number',
      name: 'mostSourceOhm',
      above: 0,
      example: 10000,
      unit: 'kΩ',
      help: 'Converters name the most that they bear; 10 kΩ is common.',
    },
    { kind: 'number', name: 'resistorMostW', above: 0, example: 0.125, unit: 'mW', help: 'Half its rating is common.' },
    { kind: 'number', name: 'clampV', above: 0, example: 5.6 },
    { kind: 'number', name: 'clampMostA', above: 0, example: 0.002, unit: 'mA' },
    { kind: 'number', name: 'mostUnusedFraction', above: 0, example: 0.3, unit: '%' },
    seriesField('E24'),
    { kind: 'number', name: 'toleranceFraction', min: 0, example: 0.01, unit: '%' },
  ],
  results: [
    { name: 'upperOhm', round: 'nearest', digits: 4, trim: true, primary: true },
    { name: 'lowerOhm', round: 'nearest', digits: 4, trim: true },
    { name: 'sourceOhm', round: 'nearest' },
    { name: 'outAtHighestV', round: 'nearest', digits: 4 },
    { name: 'outAtLowestV', round: 'nearest', digits: 4 },
    { name: 'unusedFraction', round: 'up' },
    { name: 'readErrorFraction', round: 'up' },
    { name: 'surgeOutV', round: 'up' },
    { name: 'clampA', label: 'Into the protection in a surge', round: 'up' },
    { name: 'groundLostClampA', round: 'up' },
    { name: 'upperW', round: 'up' },
    { name: 'lowerW', round: 'up' },
  ],
  steps: [
    {
      result: 'upperOhm',
      text: 'Upper resistor',
      how: 'for every lower one, the first upper one that never drives the pin over full scale and keeps the limits; of all these pairs the one that leaves least of the scale unused',
      source: 'iec-60063',
    },
    {
      result: 'outFraction',
      text: 'Share that reaches the pin, as marked',
      formula: 'lowerOhm / (upperOhm + lowerOhm)',
      source: 'lessons-electric-circuits',
      when: (values) => typeof values['inputOhm'] !== 'number',
    },
    {
      result: 'highOutFraction',
      text: 'The most that tolerance makes of it',
      formula:
        'lowerOhm * (1 + toleranceFraction) / (upperOhm * (1 - toleranceFraction) + lowerOhm * (1 + toleranceFraction))',
      source: 'circuit-theory',
    },
    {
      result: 'sourceOhm',
      text: 'Resistance that the pin sees',
      formula: 'upperOhm * lowerOhm / (upperOhm + lowerOhm)',
      source: 'circuit-theory',
    },
    {
      result: 'groundLostClampA',
      text: 'Into the protection with the ground lost, in a surge, upper resistor at its least',
      formula: '(surgeV - clampV) / (upperOhm * (1 - toleranceFraction))',
      source: 'circuit-theory',
    },
  ],
  sources: ['iec-60063', 'circuit-theory'],
  cautions: ['local-code'],
  run: designDivider,
  input: (uses) => ({
    ...(uses as unknown as Parameters<typeof designDivider>[0]),
    inputOhm: orNull(uses, 'inputOhm'),
  }),
});

export const adcReadingCard = defineCard({
  name: 'adcReading',
  area: 'divider',
  question: 'What does the converter make of it, and how finely?',
  page: PAGE,
  fields: [
    { kind: 'number', name: 'pinV', label: 'Volts at the pin', example: 2.5 },
    { kind: 'number', name: 'referenceV', above: 0, example: 5 },
    { kind: 'number', name: 'bits', min: 1, max: 32, example: 10 },
    {
      kind: 'choice',
      name: 'divisor',
      label: 'Full scale is divided by',
      choices: [
        { value: '2^n', label: '2ⁿ, as converters do' },
        { value: '2^n-1', label: '2ⁿ − 1, as many programs do' },
      ],
      example: '2^n',
    },
    {
      kind: 'choice',
      name: 'reference',
      label: 'Reference',
      choices: [
        { value: 'ratiometric', label: 'Ratiometric: it feeds the sensor too' },
        { value: 'absolute', label: 'Absolute: its error counts' },
      ],
      example: 'absolute',
    },
    { kind: 'number', name: 'referenceToleranceFraction', min: 0, example: 0.01, unit: '%' },
    { kind: 'number', name: 'lowV', label: 'Volts at the low end', example: 0 },
    { kind: 'number', name: 'highV', label: 'Volts at the high end', example: 5 },
    { kind: 'number', name: 'lowValue', label: 'Shown at the low end', symbol: 'y_1', example: 0 },
    { kind: 'number', name: 'highValue', label: 'Shown at the high end', symbol: 'y_2', example: 20 },
    { kind: 'text', name: 'unit', label: 'Unit shown', example: 'V' },
  ],
  results: [
    { name: 'count', label: 'Count', round: 'nearest', digits: 10, trim: true, primary: true },
    { name: 'value', label: 'Shown', round: 'nearest', digits: 4 },
    { name: 'stepValue', round: 'up' },
    { name: 'errorValue', label: 'Off by at most, in the unit shown', round: 'up' },
    { name: 'stepV', round: 'up' },
    { name: 'roundingErrorV', round: 'up' },
    { name: 'referenceErrorV', round: 'up' },
    { name: 'overRange', label: 'Beyond its range', round: 'nearest' },
  ],
  steps: [
    {
      result: 'stepV',
      text: 'One count',
      formula: 'referenceV / 2^bits',
      source: 'lessons-electric-circuits',
      when: (values) => values['divisor'] === '2^n',
    },
    {
      result: 'stepV',
      text: 'One count',
      formula: 'referenceV / (2^bits - 1)',
      source: 'lessons-electric-circuits',
      when: (values) => values['divisor'] === '2^n-1',
    },
    { result: 'exactCount', text: 'Counts before rounding', formula: 'pinV / stepV', source: 'circuit-theory' },
    {
      result: 'referenceErrorV',
      text: 'Most that the reference can be wrong by here',
      formula: 'pinV * referenceToleranceFraction / (1 - referenceToleranceFraction)',
      source: 'circuit-theory',
      when: (values) => values['reference'] === 'absolute',
    },
    {
      result: 'stepValue',
      text: 'One count in the unit shown',
      formula: 'stepV * (highValue - lowValue) / (highV - lowV)',
      source: 'circuit-theory',
      when: (values) => Number(values['highValue']) >= Number(values['lowValue']),
    },
  ],
  sources: ['lessons-electric-circuits', 'circuit-theory'],
  cautions: ['local-code'],
  run: adcReading,
  input: (uses): AdcReadingInput => {
    const { lowV, highV, lowValue, highValue, unit, ...rest } = uses;
    return {
      ...(rest as unknown as AdcReadingInput),
      scale: {
        lowV: lowV as number,
        highV: highV as number,
        lowValue: lowValue as number,
        highValue: highValue as number,
        unit: unit as string,
      },
    };
  },
});
