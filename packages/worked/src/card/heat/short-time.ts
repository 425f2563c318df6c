import { adiabaticConstant, fusingCurrent, hotConductorLength, shortCircuitWithstand } from 'loomwright';
import { type Constant, defineCard } from '../type.js';

const oneSecond: Constant = {
  name: 'oneSecond',
  symbol: 't_1',
  value: 1,
  unit: 's',
  source: 'iec-60949',
};

/** K and β of the metals, for the working; a test holds them against the function. */
const METALS: Readonly<Record<string, readonly [k: number, beta: number]>> = {
  copper: [226, 234.5],
  aluminium: [148, 228],
  lead: [41, 230],
  steel: [78, 202],
};

export const shortCircuitWithstandCard = defineCard({
  name: 'shortCircuitWithstand',
  area: 'heat',
  question: 'Does this wire bear a short circuit until the fuse opens?',
  page: 'short-circuits',
  fields: [
    { kind: 'number', name: 'startTempC', min: -100, max: 1083, example: 70 },
    {
      kind: 'number',
      name: 'limitTempC',
      min: -100,
      max: 1083,
      example: 160,
      label: 'Bears for seconds at most',
      help: 'PVC 160, rubber 200 to 220, cross-linked polyethylene 250.',
    },
    {
      kind: 'choice',
      name: 'metal',
      choices: [
        { value: 'copper', label: 'Copper' },
        { value: 'aluminium', label: 'Aluminium' },
        { value: 'steel', label: 'Steel' },
        { value: 'lead', label: 'Lead' },
      ],
      example: 'copper',
    },
    { kind: 'number', name: 'areaMm2', above: 0, optional: true, example: 2.5 },
    { kind: 'number', name: 'currentA', above: 0, optional: true, example: 600, label: 'Fault current' },
    { kind: 'number', name: 'durationS', above: 0, optional: true, example: 0.15, label: 'Until it is cleared' },
    {
      kind: 'number',
      name: 'i2tA2s',
      above: 0,
      optional: true,
      example: null,
      help: 'Instead of current and time: the longest that the fuse may let through.',
    },
  ],
  results: [
    { name: 'withstands', round: 'nearest', primary: true },
    { name: 'endTempC', round: 'up', label: 'Temperature that it reaches' },
    { name: 'leastAreaMm2', round: 'up', label: 'Least area' },
    { name: 'longestTimeS', round: 'down' },
    { name: 'mostCurrentA', round: 'down' },
    { name: 'withstandI2tA2s', round: 'down' },
    { name: 'oneSecondAPerMm2', round: 'down', digits: 4 },
  ],
  steps: [
    {
      result: 'oneSecondAPerMm2',
      text: 'k of metal and temperatures',
      formula: 'metalAPerMm2 * sqrt(log((betaC + limitTempC) / (betaC + startTempC)))',
      source: 'iec-60949',
    },
    {
      result: 'withstandI2tA2s',
      text: 'Let-through that the area bears',
      formula: '(oneSecondAPerMm2 * areaMm2)^2 * oneSecond',
      constants: [oneSecond],
      source: 'iec-60949',
      when: (values) => typeof values['areaMm2'] === 'number',
    },
    {
      result: 'letThroughA2s',
      text: 'Let-through of the fault',
      formula: 'currentA^2 * durationS',
      source: 'circuit-theory',
      when: (values) => typeof values['currentA'] === 'number' && typeof values['durationS'] === 'number',
    },
    {
      result: 'leastAreaMm2',
      text: 'Least area',
      formula: 'sqrt(letThroughA2s / oneSecond) / oneSecondAPerMm2',
      constants: [oneSecond],
      source: 'iec-60949',
      when: (values) =>
        typeof values['i2tA2s'] === 'number' ||
        (typeof values['currentA'] === 'number' && typeof values['durationS'] === 'number'),
    },
    {
      result: 'longestTimeS',
      text: 'Longest time',
      formula: 'withstandI2tA2s / currentA^2',
      source: 'iec-60949',
      when: (values) => typeof values['areaMm2'] === 'number' && typeof values['currentA'] === 'number',
    },
    {
      result: 'mostCurrentA',
      text: 'Most current',
      formula: 'sqrt(withstandI2tA2s / durationS)',
      source: 'iec-60949',
      when: (values) => typeof values['areaMm2'] === 'number' && typeof values['durationS'] === 'number',
    },
    {
      result: 'endTempC',
      text: 'Temperature that it reaches',
      formula: '(betaC + startTempC) * exp(letThroughA2s / ((metalAPerMm2 * areaMm2)^2 * oneSecond)) - betaC',
      constants: [oneSecond],
      source: 'iec-60949',
      when: (values) => typeof values['areaMm2'] === 'number',
    },
  ],
  sources: ['iec-60949', 'iec-60364-4-43'],
  cautions: ['local-code', 'stored-heat', 'battery'],
  run: shortCircuitWithstand,
  scope: (values) => {
    const [metalAPerMm2, betaC] = METALS[values['metal'] as string] ?? [NaN, NaN];
    const { i2tA2s, currentA, durationS } = values;
    const letThroughA2s =
      typeof i2tA2s === 'number'
        ? i2tA2s
        : typeof currentA === 'number' && typeof durationS === 'number'
          ? currentA * currentA * durationS
          : null;
    return { metalAPerMm2, betaC, letThroughA2s };
  },
});

export const adiabaticConstantCard = defineCard({
  name: 'adiabaticConstant',
  area: 'heat',
  question: 'Where does the k of a metal come from?',
  page: 'short-circuits',
  fields: [
    { kind: 'number', name: 'volumetricHeatJPerKMm3', above: 0, example: 0.00345 },
    {
      kind: 'number',
      name: 'betaC',
      above: -20,
      example: 234.5,
      help: 'Copper 234.5, aluminium 228, steel 202, lead 230.',
    },
    { kind: 'number', name: 'resistivity20OhmMm2PerM', above: 0, example: 0.017241 },
  ],
  results: [
    { name: 'oneSecondAPerMm2', round: 'down', digits: 4, label: 'K: current of 1 mm² for 1 s', primary: true },
  ],
  steps: [
    {
      result: 'oneSecondAPerMm2',
      text: 'K of the metal',
      formula: 'sqrt(volumetricHeatJPerKMm3 * (betaC + roomTempC) / (resistivity20OhmMm2PerM * oneSecond))',
      constants: [{ name: 'roomTempC', symbol: 'T_{20}', value: 20, unit: 'K', source: 'iec-60949' }, oneSecond],
      source: 'iec-60949',
    },
  ],
  sources: ['iec-60949'],
  cautions: ['local-code'],
  run: adiabaticConstant,
});

export const fusingCurrentCard = defineCard({
  name: 'fusingCurrent',
  area: 'heat',
  question: 'What current melts a bare wire?',
  page: 'short-circuits',
  fields: [
    {
      kind: 'choice',
      name: 'rule',
      choices: [
        { value: 'onderdonk', label: 'Onderdonk: in a given time' },
        { value: 'icea-p-32-382', label: 'ICEA P-32-382: in a given time' },
        { value: 'preece', label: 'Preece: at last, in free air' },
      ],
      example: 'onderdonk',
    },
    { kind: 'number', name: 'areaMm2', above: 0, optional: true, example: 1.3087, help: 'For Onderdonk and ICEA.' },
    { kind: 'number', name: 'durationS', above: 0, max: 10, optional: true, example: 1, label: 'Time to melt' },
    { kind: 'number', name: 'startTempC', min: -60, max: 400, optional: true, example: 25 },
    { kind: 'number', name: 'diameterMm', above: 0, optional: true, example: 1.2908, help: 'For Preece.' },
    {
      kind: 'choice',
      name: 'metal',
      label: 'Metal, for Preece',
      choices: [
        { value: 'copper', label: 'Copper' },
        { value: 'aluminium', label: 'Aluminium (from memory)' },
        { value: 'iron', label: 'Iron (from memory)' },
        { value: 'tin', label: 'Tin (from memory)' },
        { value: 'lead', label: 'Lead (from memory)' },
        { value: 'german-silver', label: 'German silver (from memory)' },
      ],
      example: 'copper',
    },
  ],
  results: [{ name: 'currentA', round: 'nearest', label: 'Current that melts it', primary: true }],
  steps: [
    {
      result: 'currentA',
      text: 'Current that melts the wire',
      how: 'by the form of the rule, in circular mils or inches',
      source: 'onderdonk-1928',
      sourceOf: (output: { source: 'onderdonk-1928' }) => output.source,
    },
  ],
  sources: ['onderdonk-1928', 'icea-p-32-382', 'preece-1888'],
  cautions: ['local-code', 'stored-heat'],
  run: fusingCurrent,
});

export const hotConductorLengthCard = defineCard({
  name: 'hotConductorLength',
  area: 'heat',
  question: 'How much shorter must a run be once the wire is warm?',
  page: 'how-hot-does-it-get',
  fields: [
    { kind: 'number', name: 'coldLengthM', above: 0, example: 4.7244, unit: 'ft' },
    { kind: 'number', name: 'currentA', min: 0, example: 20 },
    { kind: 'number', name: 'maxCurrentA', above: 0, example: 26 },
    { kind: 'number', name: 'ambientTempC', min: -100, max: 400, example: 50, label: 'Air around the wire' },
    { kind: 'number', name: 'ratedTempC', min: -100, max: 400, example: 200, label: 'Rated temperature of the wire' },
  ],
  results: [
    { name: 'hotLengthM', round: 'down', primary: true },
    { name: 'conductorTempC', round: 'up', label: 'Temperature that the form assumes' },
  ],
  steps: [
    {
      result: 'conductorTempC',
      text: 'Temperature that the form assumes: above the true one',
      formula: 'ambientTempC + (ratedTempC - ambientTempC) * sqrt(currentA / maxCurrentA)',
      source: 'ac-43-13-1b',
    },
    {
      result: 'hotLengthM',
      text: 'Length for the same drop',
      formula: 'coldLengthM * (zeroTempC + roomTempC) / (zeroTempC + conductorTempC)',
      constants: [
        { name: 'zeroTempC', symbol: 'T_0', value: 234.5, unit: 'K', source: 'ac-43-13-1b' },
        { name: 'roomTempC', symbol: 'T_{20}', value: 20, unit: 'K', source: 'ac-43-13-1b' },
      ],
      source: 'ac-43-13-1b',
    },
  ],
  sources: ['ac-43-13-1b'],
  cautions: ['local-code'],
  run: hotConductorLength,
});
