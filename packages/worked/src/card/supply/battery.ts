import {
  acidVoltage,
  batteryLoadTest,
  batteryResistance,
  type BatteryResistanceInput,
  crankingBci,
  crankingDin43539,
  crankingEn50342,
  crankingIec60095,
  type CrankingRating,
  crankingSaeJ537,
  loadTest190A,
  loadTestToMinus12,
  loadTestToMinus18,
  openCircuitVoltage,
  restVoltsTenSteps,
  restVoltsThumb,
  restVoltsTrade,
  restVoltsWithDensity,
  stateOfCharge,
  type StateOfChargeInput,
} from 'loomwright';
import { type Choice, defineCard, type Values } from '../type.js';

const page = 'battery-at-rest';
const lists: readonly Choice[] = [
  { value: 'trade', label: "trade council's list, from memory", use: restVoltsTrade, identifier: 'restVoltsTrade' },
  { value: 'ten', label: 'steps of ten per cent', use: restVoltsTenSteps, identifier: 'restVoltsTenSteps' },
  { value: 'density', label: 'quarters, with the acid', use: restVoltsWithDensity, identifier: 'restVoltsWithDensity' },
  { value: 'thumb', label: 'rule of thumb, wet cells', use: restVoltsThumb, identifier: 'restVoltsThumb' },
];
const byRating = ({ from }: Values): boolean => from === 'cranking-rating';

export const batteryResistanceCard = defineCard({
  name: 'batteryResistance',
  area: 'supply',
  question: 'What resistance does the battery have inside?',
  page,
  fields: [
    {
      kind: 'choice',
      name: 'from',
      label: 'Known from',
      choices: [
        { value: 'cranking-rating', label: 'its cranking rating' },
        { value: 'two-loads', label: 'volts at two loads, one after the other' },
        { value: 'load-test', label: 'volts at rest and at the end of a load test' },
      ],
      example: 'cranking-rating',
    },
    {
      kind: 'choice',
      name: 'rule',
      label: 'Rating by',
      choices: [
        { value: 'sae', label: 'SAE J537: −18 °C, 30 s, 7.2 V', use: crankingSaeJ537, identifier: 'crankingSaeJ537' },
        { value: 'en', label: 'EN 50342-1: −18 °C, 10 s, 7.5 V', use: crankingEn50342, identifier: 'crankingEn50342' },
        {
          value: 'iec',
          label: 'IEC 60095-1: −18 °C, 60 s, 8.4 V',
          use: crankingIec60095,
          identifier: 'crankingIec60095',
        },
        {
          value: 'din',
          label: 'DIN 43539-2: −18 °C, 30 s, 9.0 V',
          use: crankingDin43539,
          identifier: 'crankingDin43539',
        },
        { value: 'bci', label: 'cranking amperes: 0 °C, 30 s, 7.2 V', use: crankingBci, identifier: 'crankingBci' },
      ],
      example: 'sae',
    },
    { kind: 'number', name: 'ratedA', above: 0, example: 600, label: 'Rating' },
    { kind: 'number', name: 'openV', above: 0, example: 12.6, label: 'Battery at rest, full' },
    { kind: 'number', name: 'batteryCellCount', min: 1, example: 6 },
    { kind: 'number', name: 'lesserA', label: 'Lesser of two loads', example: 0, help: '0 with nothing on.' },
    { kind: 'number', name: 'lesserV', label: 'Volts with it', example: 12.6 },
    { kind: 'number', name: 'greaterA', label: 'Greater load, or that of the test', example: 200 },
    { kind: 'number', name: 'greaterV', label: 'Volts with it', example: 11.1 },
    { kind: 'number', name: 'batteryTempC', example: 20, help: 'As it was under these loads.' },
    { kind: 'number', name: 'parallelCount', min: 1, example: 1 },
    {
      kind: 'number',
      name: 'otherTempC',
      min: -40,
      max: 80,
      optional: true,
      example: null,
      help: 'With the factor that you measured; none is published.',
    },
    { kind: 'number', name: 'otherFactor', above: 0, optional: true, example: null },
  ],
  results: [
    { name: 'insideOhm', round: 'up', primary: true, digits: 3 },
    { name: 'testTempC', round: 'nearest' },
    { name: 'insideThereOhm', round: 'up', digits: 3 },
    { name: 'noLoadV', round: 'nearest', digits: 4 },
    { name: 'shortCircuitA', round: 'nearest' },
  ],
  steps: [
    {
      result: 'ratedLeastV',
      text: 'Least volts of the test',
      how: 'those of six cells, in proportion to the cells',
      source: 'sae-j537',
      sourceOf: ({ source }) => source,
      when: byRating,
    },
    {
      result: 'insideOhm',
      text: 'A battery that meets the rating has at most',
      formula: '(openV - ratedLeastV) / (ratedA * parallelCount)',
      source: 'circuit-theory',
      when: byRating,
    },
    {
      result: 'insideOhm',
      text: 'Volts lost over amperes gained',
      formula: '(lesserV - greaterV) / ((greaterA - lesserA) * parallelCount)',
      source: 'circuit-theory',
      when: ({ from }) => from === 'two-loads',
    },
    {
      result: 'insideOhm',
      text: 'Volts lost over the load of the test',
      formula: '(openV - greaterV) / (greaterA * parallelCount)',
      source: 'circuit-theory',
      when: ({ from }) => from === 'load-test',
    },
    {
      result: 'insideThereOhm',
      text: 'At the other temperature',
      formula: 'insideOhm * otherFactor',
      source: 'given-by-caller',
      when: ({ otherFactor }) => typeof otherFactor === 'number',
    },
    {
      result: 'shortCircuitA',
      text: 'Into a dead short at the posts',
      formula: 'noLoadV / insideOhm',
      source: 'circuit-theory',
    },
  ],
  sources: ['sae-j537', 'en-50342-1', 'iec-60095-1', 'din-43539-2', 'bci-cranking', 'circuit-theory'],
  cautions: ['local-code', 'battery'],
  run: batteryResistance,
  input: (uses): BatteryResistanceInput => {
    const n = (name: string): number => uses[name] as number;
    const other = {
      ...(uses['otherTempC'] === undefined ? {} : { otherTempC: n('otherTempC') }),
      ...(uses['otherFactor'] === undefined ? {} : { otherFactor: n('otherFactor') }),
    };
    const all = { parallelCount: n('parallelCount'), ...other };
    const [openV, highA, highV, batteryTempC] = [n('openV'), n('greaterA'), n('greaterV'), n('batteryTempC')];
    if (uses['from'] === 'two-loads') {
      const [lowA, lowV] = [n('lesserA'), n('lesserV')];
      return { from: { kind: 'two-loads', lowA, lowV, highA, highV, batteryTempC }, ...all };
    }
    if (uses['from'] === 'load-test') {
      return { from: { kind: 'load-test', openV, testA: highA, testV: highV, batteryTempC }, ...all };
    }
    const [ratedA, cellCount] = [n('ratedA'), n('batteryCellCount')];
    const rule = uses['rule'] as CrankingRating;
    return { from: { kind: 'cranking-rating', rule, ratedA, openV, cellCount }, ...all };
  },
  scope: (_values, { resistanceOhm, otherOhm, openV, testV, shortA }) => ({
    insideOhm: resistanceOhm,
    insideThereOhm: otherOhm,
    ratedLeastV: testV,
    noLoadV: openV,
    shortCircuitA: shortA,
  }),
});

export const openCircuitVoltageCard = defineCard({
  name: 'openCircuitVoltage',
  area: 'supply',
  question: 'What volts does a rested battery have at a charge?',
  page,
  fields: [
    { kind: 'choice', name: 'list', label: 'By', choices: lists, example: 'trade' },
    { kind: 'number', name: 'chargeFraction', min: 0, max: 1, example: 0.8, unit: '%' },
  ],
  results: [{ name: 'restV', round: 'nearest', digits: 4, primary: true }],
  steps: [
    {
      result: 'restV',
      text: 'Volts at rest',
      how: 'the straight line between two rows of the list',
      source: 'battery-rest-lists',
    },
  ],
  sources: ['battery-rest-lists'],
  cautions: ['local-code', 'battery'],
  run: openCircuitVoltage,
  scope: (_values, { openV }) => ({ restV: openV }),
});

export const stateOfChargeCard = defineCard({
  name: 'stateOfCharge',
  area: 'supply',
  question: 'How full is a rested battery?',
  page,
  fields: [{ kind: 'number', name: 'openV', above: 0, example: 12.3, label: 'Battery at rest' }],
  results: [
    { name: 'lowestFraction', round: 'down', digits: 2, unit: '%', primary: true },
    { name: 'highestFraction', round: 'nearest', digits: 2, unit: '%' },
    { name: 'tenStepsFraction', round: 'nearest', digits: 2, unit: '%' },
    { name: 'densityListFraction', round: 'nearest', digits: 2, unit: '%' },
    { name: 'thumbFraction', round: 'nearest', digits: 2, unit: '%' },
    { name: 'tradeFraction', round: 'nearest', digits: 2, unit: '%' },
  ],
  steps: [
    {
      result: 'lowestFraction',
      text: 'The least that a list says',
      how: 'each list by the straight line between two of its rows, none beyond its rows',
      source: 'battery-rest-lists',
    },
  ],
  sources: ['battery-rest-lists'],
  cautions: ['local-code', 'battery'],
  run: stateOfCharge,
  identifiers: { restVoltsTenSteps, restVoltsWithDensity, restVoltsThumb, restVoltsTrade },
  input: ({ openV }): StateOfChargeInput => ({
    openV: openV as number,
    lists: [restVoltsTenSteps, restVoltsWithDensity, restVoltsThumb, restVoltsTrade],
  }),
  scope: (_values, { byList }) => {
    const [ten, density, thumb, trade] = byList.map(({ chargeFraction }) => chargeFraction);
    return {
      tenStepsFraction: ten ?? null,
      densityListFraction: density ?? null,
      thumbFraction: thumb ?? null,
      tradeFraction: trade ?? null,
    };
  },
});

export const acidVoltageCard = defineCard({
  name: 'acidVoltage',
  area: 'supply',
  question: 'What volts belong to this density of the acid?',
  page,
  fields: [
    { kind: 'number', name: 'densityRatio', min: 1, max: 1.4, example: 1.265 },
    { kind: 'number', name: 'acidTempC', min: -40, max: 60, example: 10 },
    { kind: 'number', name: 'batteryCellCount', min: 1, example: 6 },
  ],
  results: [
    { name: 'restV', round: 'nearest', digits: 4, primary: true },
    { name: 'cellV', round: 'nearest', digits: 4 },
    { name: 'correctedDensityRatio', round: 'nearest', digits: 4 },
  ],
  steps: [
    {
      result: 'correctedDensityRatio',
      text: 'Reading at 26.7 °C',
      formula: 'densityRatio + densityPerK * (acidTempC - densityTempC)',
      constants: [
        { name: 'densityPerK', symbol: 'k', value: 0.00072, unit: 'K^-1', source: 'acid-density-correction' },
        { name: 'densityTempC', symbol: 'T_{80}', value: 80 / 3, unit: 'K', source: 'acid-density-correction' },
      ],
      source: 'acid-density-correction',
    },
    {
      result: 'cellV',
      text: 'One cell at rest',
      formula: '(correctedDensityRatio + offsetRatio) * oneV',
      constants: [
        { name: 'offsetRatio', symbol: 'd_0', value: 0.845, unit: '', source: 'lead-cell-volts' },
        { name: 'oneV', symbol: 'V_1', value: 1, unit: 'V', source: 'lead-cell-volts' },
      ],
      source: 'lead-cell-volts',
    },
    { result: 'restV', text: 'All cells', formula: 'cellV * batteryCellCount', source: 'circuit-theory' },
  ],
  sources: ['acid-density-correction', 'lead-cell-volts'],
  cautions: ['local-code', 'battery'],
  run: acidVoltage,
  input: (uses) => ({
    densityRatio: uses['densityRatio'] as number,
    acidTempC: uses['acidTempC'] as number,
    cellCount: uses['batteryCellCount'] as number,
  }),
  scope: (_values, { openV }) => ({ restV: openV }),
});

export const batteryLoadTestCard = defineCard({
  name: 'batteryLoadTest',
  area: 'supply',
  question: 'Which load, and what volts must be left at its end?',
  page,
  fields: [
    {
      kind: 'choice',
      name: 'rule',
      label: 'By',
      choices: [
        {
          value: 'to-18',
          label: 'half the rating, to −18 °C',
          use: loadTestToMinus18,
          identifier: 'loadTestToMinus18',
        },
        {
          value: 'to-12',
          label: 'half the rating, to −12 °C',
          use: loadTestToMinus12,
          identifier: 'loadTestToMinus12',
        },
        { value: '190', label: '190 A, to −18 °C', use: loadTest190A, identifier: 'loadTest190A' },
      ],
      example: 'to-18',
    },
    { kind: 'number', name: 'ratedA', above: 0, example: 600, label: 'Cold-cranking rating' },
    { kind: 'number', name: 'batteryTempC', min: -18, max: 80, example: 7 },
    { kind: 'number', name: 'loadTestV', min: 0, optional: true, example: 9.7 },
  ],
  results: [
    { name: 'leastTestV', round: 'up', digits: 2, primary: true },
    { name: 'loadTestA', round: 'nearest', digits: 3 },
    { name: 'loadTestS', round: 'nearest', digits: 2 },
    { name: 'rowTempC', round: 'nearest', digits: 2 },
  ],
  steps: [
    {
      result: 'loadTestA',
      text: 'Load to be set',
      formula: 'ratedA * shareFraction',
      constants: [{ name: 'shareFraction', symbol: 'f', value: 0.5, unit: '', source: 'battery-load-test' }],
      source: 'battery-load-test',
      when: ({ rule }) => rule !== '190',
    },
    {
      result: 'leastTestV',
      text: 'Least volts at the end',
      how: 'the row that is not colder than the battery; the warmest holds above',
      source: 'battery-load-test',
    },
  ],
  sources: ['battery-load-test'],
  cautions: ['local-code', 'battery'],
  run: batteryLoadTest,
  input: (uses) => ({
    rule: uses['rule'] as typeof loadTestToMinus18,
    ratedA: uses['ratedA'] as number,
    batteryTempC: uses['batteryTempC'] as number,
    ...(uses['loadTestV'] === undefined ? {} : { readingV: uses['loadTestV'] as number }),
  }),
  scope: (_values, { testA, testS, leastV }) => ({ loadTestA: testA, loadTestS: testS, leastTestV: leastV }),
});
