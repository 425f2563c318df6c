import {
  fitSteinhartHart,
  type FitSteinhartHartInput,
  type FitSteinhartHartResult,
  fitUncertainty,
  type FitUncertaintyInput,
  thermistorResiduals,
  type ThermistorResidualsInput,
} from 'loomwright';
import { defineCard, type TextField, type Uses } from '../type.js';
import { curveFields, curveOf } from './curve-fields.js';
import { readings } from './points.js';

const points: TextField = {
  kind: 'text',
  name: 'points',
  label: 'Readings',
  example: '0 °C 5900 Ω; 18 2720; 41 1142; 62 560; 83 300; 100 186',
  help: 'Temperature and resistance, parted by semicolons. Three at least; a bad one can be told from five on.',
};

/** Nine invented readings of a kettle that cools, then with ice: the example of the uncertainty. */
const NINE = '3 5180; 12 3520; 24 2160; 38 1262; 52 775; 65 508; 78 342; 89 251; 98 196';

function fitInput(uses: Uses): FitSteinhartHartInput {
  return { points: readings('fitSteinhartHart', uses['points'] as string) };
}

/** Letters and worst residual, whose names carry their unit. */
function lettersOfFit({ curve }: Pick<FitSteinhartHartResult, 'curve'>): Record<string, number | null> {
  return { aPerK: curve.a, bPerK: curve.b, cPerK: curve.c };
}

export const fitSteinhartHartCard = defineCard({
  name: 'fitSteinhartHart',
  area: 'temperature',
  question: 'Which curve goes through my readings?',
  page: 'thermistor-curve',
  fields: [points],
  results: [
    { name: 'worstResidualK', round: 'up', primary: true },
    { name: 'aPerK', round: 'nearest', digits: 7 },
    { name: 'bPerK', round: 'nearest', digits: 7 },
    { name: 'cPerK', round: 'nearest', digits: 6 },
    { name: 'standardDeviationK', round: 'up', label: 'Scatter of one reading' },
    { name: 'suspiciousTempC', round: 'nearest', trim: true, label: 'Reading that the others speak against' },
    { name: 'warningCount', round: 'nearest', trim: true, label: 'Warnings' },
  ],
  steps: [
    {
      result: 'aPerK',
      text: 'The letters a, b and c',
      how: 'exactly through three readings; through more by least squares of kelvins',
      source: 'steinhart-hart-1968',
    },
    {
      result: 'worstResidualK',
      text: 'The largest difference between curve and reading',
      how: 'the curve is read at each resistance',
      source: 'steinhart-hart-1968',
    },
  ],
  sources: ['steinhart-hart-1968', 'nist-strd'],
  cautions: ['scald', 'local-code'],
  run: fitSteinhartHart,
  input: fitInput,
  scope: (_, output) => ({
    ...lettersOfFit(output),
    suspiciousTempC: output.suspicious?.tempC ?? null,
    warningCount: output.warnings.length,
  }),
});

export const fitUncertaintyCard = defineCard({
  name: 'fitUncertainty',
  area: 'temperature',
  question: 'How well does my curve know a temperature?',
  page: 'thermistor-curve',
  fields: [
    { ...points, example: NINE },
    { kind: 'number', name: 'readingUncertaintyK', above: 0, example: 0.5 },
    { kind: 'number', name: 'resistanceOhm', above: 0, max: 1e12, example: 320 },
    { kind: 'number', name: 'resistanceUncertaintyFraction', min: 0, example: 0.005 },
    {
      kind: 'number',
      name: 'coverageFactor',
      above: 0,
      example: 2,
      help: '2 is about 95 % where the uncertainties are known; with few readings take Student’s t.',
    },
  ],
  results: [
    { name: 'bandK', round: 'up', primary: true },
    { name: 'tempC', round: 'nearest', digits: 4 },
    { name: 'curveK', round: 'up' },
    { name: 'readingK', round: 'up' },
    { name: 'standardUncertaintyK', round: 'up' },
  ],
  steps: [
    {
      result: 'curveK',
      text: 'Standard uncertainty of the curve there',
      how: 'the covariance of a, b and c carried to the temperature',
      source: 'jcgm-100',
    },
    {
      result: 'standardUncertaintyK',
      text: 'With that of the resistance',
      formula: 'sqrt(curveK^2 + readingK^2)',
      source: 'jcgm-100',
    },
    {
      result: 'bandK',
      text: 'Half-width of the band',
      formula: 'coverageFactor * standardUncertaintyK',
      source: 'jcgm-100',
    },
  ],
  sources: ['jcgm-100', 'steinhart-hart-1968'],
  cautions: ['scald', 'local-code'],
  run: fitUncertainty,
  input: (uses): FitUncertaintyInput => {
    const uncertaintyK = uses['readingUncertaintyK'] as number;
    const fit = fitSteinhartHart({
      points: readings('fitUncertainty', uses['points'] as string).map((point) => ({ ...point, uncertaintyK })),
    });
    return {
      fit,
      resistanceOhm: uses['resistanceOhm'] as number,
      resistanceUncertaintyFraction: uses['resistanceUncertaintyFraction'] as number,
      coverageFactor: uses['coverageFactor'] as number,
    };
  },
});

export const thermistorResidualsCard = defineCard({
  name: 'thermistorResiduals',
  area: 'temperature',
  question: 'Does this curve belong to my sensor?',
  page: 'thermistor-curve',
  fields: [{ ...points, example: '0 °C 5896 Ω; 50 °C 834 Ω; 100 °C 187 Ω' }, ...curveFields],
  results: [
    { name: 'worstResidualK', round: 'up', primary: true },
    { name: 'worstTempC', round: 'nearest', trim: true },
    { name: 'meanK', round: 'nearest', label: 'Mean difference' },
    { name: 'rootMeanSquareK', round: 'up' },
  ],
  steps: [
    {
      result: 'worstResidualK',
      text: 'The largest difference between curve and reading',
      how: 'the curve is read at each resistance',
      source: 'steinhart-hart-1968',
    },
  ],
  sources: ['steinhart-hart-1968'],
  cautions: ['local-code'],
  run: thermistorResiduals,
  input: (uses): ThermistorResidualsInput => ({
    curve: curveOf(uses),
    points: readings('thermistorResiduals', uses['points'] as string),
  }),
  scope: (_, { worst }) => ({ worstResidualK: Math.abs(worst.residualK), worstTempC: worst.tempC }),
});
