import { areaMm2ToAwg, awgToAreaMm2, awgToDiameterMm } from 'loomwright';
import { defineCard, type Constant, type Field, type Step, type Values } from '../type.js';

interface GaugeInput {
  readonly awg: string;
}

const awgField: Field = {
  kind: 'text',
  name: 'awg',
  help: '4/0 to 1/0 (or 0000 to 0), then 1 to 40.',
  example: '12',
};
const smallest: Constant = {
  name: 'thinDiameterMm',
  symbol: 'd_{36}',
  value: 0.127,
  unit: 'mm',
  source: 'astm-b258',
};
const pi: Constant = { name: 'pi', symbol: '\\pi', value: 3.14159265359, unit: '', source: 'astm-b258' };
const diameterStep: Step = {
  result: 'diameterMm',
  text: 'Diameter: 39 equal ratios from No. 36 to No. 4/0 make a factor of 92',
  formula: 'thinDiameterMm * 92^((36 - gaugeNumber) / 39)',
  constants: [smallest],
  source: 'astm-b258',
};
const areaStep: Step = {
  result: 'areaMm2',
  text: 'Area of the round',
  formula: 'pi / 4 * diameterMm^2',
  constants: [pi],
  source: 'astm-b258',
};

/** The number n of the formula: 0 for 1/0, −3 for 4/0. */
function gaugeNumber(awg: string): number {
  const noughts = /^([1-4])\/0$/.exec(awg)?.[1];
  if (noughts !== undefined) return 1 - Number(noughts);
  return /^0+$/.test(awg) ? 1 - awg.length : Number(awg);
}

const scope = (values: Values): Record<string, number> => {
  const awg = String(values['awg']);
  return { gaugeNumber: gaugeNumber(awg), diameterMm: awgToDiameterMm(awg) };
};

export const awgToAreaMm2Card = defineCard<GaugeInput, { areaMm2: number }>({
  name: 'awgToAreaMm2',
  area: 'conductor',
  question: 'What area is an AWG number?',
  page: 'wire-sizes',
  fields: [awgField],
  results: [
    { name: 'areaMm2', round: 'down', digits: 4, primary: true },
    { name: 'diameterMm', round: 'up', digits: 4 },
  ],
  steps: [diameterStep, areaStep],
  sources: ['astm-b258'],
  cautions: ['local-code'],
  run: ({ awg }) => ({ areaMm2: awgToAreaMm2(awg) }),
  scope,
});

export const awgToDiameterMmCard = defineCard<GaugeInput, { diameterMm: number }>({
  name: 'awgToDiameterMm',
  area: 'conductor',
  question: 'How thick is a solid wire of an AWG number?',
  page: 'wire-sizes',
  fields: [awgField],
  results: [{ name: 'diameterMm', round: 'up', digits: 4, primary: true }],
  steps: [diameterStep],
  sources: ['astm-b258'],
  cautions: ['local-code'],
  run: ({ awg }) => ({ diameterMm: awgToDiameterMm(awg) }),
  scope,
});

export const areaMm2ToAwgCard = defineCard<{ readonly areaMm2: number }, { awg: string; gaugeAreaMm2: number }>({
  name: 'areaMm2ToAwg',
  area: 'conductor',
  question: 'Which AWG number has at least this area?',
  page: 'wire-sizes',
  // 107.2193 mm² is the area of 4/0, the largest.
  fields: [{ kind: 'number', name: 'areaMm2', min: 0.001, max: 107.2193, example: 2.5, label: 'Wanted area' }],
  results: [
    { name: 'awg', round: 'nearest', primary: true },
    { name: 'gaugeAreaMm2', round: 'down', digits: 4 },
  ],
  steps: [
    {
      result: 'gaugeAreaMm2',
      text: 'Thinnest gauge whose area is not below the wanted one',
      how: 'tried from No. 40 upward',
      source: 'astm-b258',
    },
  ],
  sources: ['astm-b258'],
  cautions: ['local-code'],
  run: ({ areaMm2 }) => {
    const awg = areaMm2ToAwg(areaMm2);
    return { awg, gaugeAreaMm2: awgToAreaMm2(awg) };
  },
});
