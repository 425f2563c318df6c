import { resistivity, type ResistivityInput, type ResistivityResult } from 'loomwright';
import { defineCard } from '../type.js';
import { isAluminium, metalField, zeroTempC } from './metal.js';

const twenty = { name: 'baseTempC', symbol: 'T_{20}', value: 20, unit: 'K', source: 'nbs-hb-100' } as const;

export const resistivityCard = defineCard<ResistivityInput, ResistivityResult>({
  name: 'resistivity',
  area: 'conductor',
  question: 'What does heat do to the resistance of a metal?',
  page: 'resistance-and-heat',
  fields: [
    { kind: 'number', name: 'conductorTempC', min: -100, max: 400, example: 85 },
    metalField,
    {
      kind: 'number',
      name: 'strandDiameterMm',
      min: 0.0762,
      max: 11.684,
      optional: true,
      example: null,
      help: 'Asked for with tinned copper alone, whose coat weighs more on a thin strand.',
    },
    {
      kind: 'choice',
      name: 'form',
      choices: [
        { value: 'inferred-zero', label: 'Straight line through the inferred zero' },
        { value: 'linear', label: 'Coefficient at 20 °C' },
        { value: 'simplified-0.004', label: '0.004 a kelvin (IEC 60228)' },
      ],
      example: 'inferred-zero',
    },
  ],
  results: [
    { name: 'resistivityOhmMm2PerM', round: 'up', digits: 4, primary: true },
    { name: 'resistivity20OhmMm2PerM', round: 'up', digits: 4 },
    { name: 'temperatureFactor', round: 'up', digits: 4 },
  ],
  steps: [
    {
      result: 'resistivity20OhmMm2PerM',
      text: 'Resistivity of the metal at 20 °C',
      how: 'the annealed copper standard, over the least conductivity of tinned strands, or that of electrical aluminium',
      source: 'nbs-hb-100',
      sourceOf: (output: ResistivityResult) => output.source,
    },
    {
      result: 'temperatureFactor',
      text: 'Against 20 °C, by the straight line through the inferred zero',
      formula: '(zeroTempC + conductorTempC) / (zeroTempC + baseTempC)',
      constants: [twenty],
      source: 'nbs-hb-100',
      when: (values) => (values['form'] ?? 'inferred-zero') === 'inferred-zero',
    },
    {
      result: 'temperatureFactor',
      text: 'Against 20 °C, by the coefficient at 20 °C',
      formula: '1 + temperatureCoefficientPerK * (conductorTempC - baseTempC)',
      constants: [twenty],
      source: 'nbs-hb-100',
      when: (values) => (values['form'] ?? 'inferred-zero') !== 'inferred-zero',
    },
    {
      result: 'resistivityOhmMm2PerM',
      text: 'Resistivity at the temperature',
      formula: 'resistivity20OhmMm2PerM * temperatureFactor',
      source: 'nbs-hb-100',
    },
  ],
  sources: ['nbs-hb-100', 'iec-60889', 'astm-b33', 'iec-60228'],
  cautions: ['stored-heat'],
  run: resistivity,
  scope: (values) => ({
    zeroTempC: zeroTempC(isAluminium(values)),
    temperatureCoefficientPerK: values['form'] === 'simplified-0.004' ? 0.004 : isAluminium(values) ? 0.00403 : 0.00393,
  }),
});
