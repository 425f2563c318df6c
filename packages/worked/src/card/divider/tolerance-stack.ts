import { divider, toleranceStack, type TolerancePart, type ToleranceStackInput } from 'loomwright';
import { defineCard } from '../type.js';

export const toleranceStackCard = defineCard({
  name: 'toleranceStack',
  area: 'divider',
  question: 'How far off may a divider be, and how likely?',
  page: 'twelve-volts-on-five',
  fields: [
    { kind: 'number', name: 'inV', example: 13.8 },
    { kind: 'number', name: 'upperOhm', above: 0, example: 30000, unit: 'kΩ' },
    { kind: 'number', name: 'lowerOhm', above: 0, example: 10000, unit: 'kΩ' },
    { kind: 'number', name: 'toleranceFraction', min: 0, example: 0.01, unit: '%' },
    {
      kind: 'choice',
      name: 'distribution',
      label: 'Parts lie',
      choices: [
        { value: 'rectangular', label: 'anywhere within, all alike' },
        { value: 'triangular', label: 'more often near the middle' },
        { value: 'arcsine', label: 'more often near the ends' },
      ],
      example: 'rectangular',
    },
    { kind: 'number', name: 'seed', label: 'Seed of the simulation', symbol: 's', example: 1 },
    { kind: 'number', name: 'runs', label: 'Simulated units', symbol: 'M', min: 1000, max: 2000000, example: 20000 },
  ],
  results: [
    { name: 'nominalV', round: 'nearest', digits: 5, primary: true },
    { name: 'cornerLowV', round: 'down', digits: 5 },
    { name: 'cornerHighV', round: 'up', digits: 5 },
    { name: 'rssLowV', round: 'down', digits: 5 },
    { name: 'rssHighV', round: 'up', digits: 5 },
    { name: 'simulatedLowV', round: 'down', digits: 5 },
    { name: 'simulatedHighV', round: 'up', digits: 5 },
    { name: 'deviationV', round: 'up' },
  ],
  steps: [
    {
      result: 'nominalV',
      text: 'As marked',
      formula: 'inV * lowerOhm / (upperOhm + lowerOhm)',
      source: 'lessons-electric-circuits',
    },
    {
      result: 'cornerLowV',
      text: 'Lowest corner: the upper one high, the lower one low',
      formula:
        'inV * lowerOhm * (1 - toleranceFraction) / (upperOhm * (1 + toleranceFraction) + lowerOhm * (1 - toleranceFraction))',
      source: 'circuit-theory',
    },
    {
      result: 'cornerHighV',
      text: 'Highest corner: the other way round',
      formula:
        'inV * lowerOhm * (1 + toleranceFraction) / (upperOhm * (1 - toleranceFraction) + lowerOhm * (1 + toleranceFraction))',
      source: 'circuit-theory',
    },
    {
      result: 'rssHighV',
      text: 'Root of the sum of squares, added to the marked value',
      how: 'each tolerance times the slope, squared, added, and the root taken',
      source: 'jcgm-100',
    },
    {
      result: 'simulatedHighV',
      text: 'Upper end of what 95 of 100 simulated units give',
      how: 'each unit with its own two resistors, drawn by chance from the seed',
      source: 'jcgm-101',
    },
  ],
  sources: ['jcgm-100', 'jcgm-101', 'circuit-theory'],
  cautions: ['local-code'],
  run: toleranceStack,
  input: (uses): ToleranceStackInput => {
    const inV = uses['inV'] as number;
    const part = (name: string, field: string): TolerancePart => ({
      name,
      value: uses[field] as number,
      toleranceFraction: uses['toleranceFraction'] as number,
      distribution: uses['distribution'] as NonNullable<TolerancePart['distribution']>,
    });
    return {
      quantity: ([upperOhm, lowerOhm]) =>
        divider({ inV, upperOhm: upperOhm as number, lowerOhm: lowerOhm as number }).outV,
      parts: [part('R1', 'upperOhm'), part('R2', 'lowerOhm')],
      seed: uses['seed'] as number,
      runs: uses['runs'] as number,
    };
  },
  scope: (_, output) => ({
    nominalV: output.nominalValue,
    cornerLowV: output.corners.lowValue,
    cornerHighV: output.corners.highValue,
    rssLowV: output.rootSumSquare.lowValue,
    rssHighV: output.rootSumSquare.highValue,
    simulatedLowV: output.monteCarlo.lowValue,
    simulatedHighV: output.monteCarlo.highValue,
    deviationV: output.deviationValue,
  }),
});
