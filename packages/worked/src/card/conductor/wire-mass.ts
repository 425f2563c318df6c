import { wireMass, type WireMassInput, type WireMassResult } from 'loomwright';
import { defineCard } from '../type.js';
import { isAluminium, metalField } from './metal.js';

export const wireMassCard = defineCard<WireMassInput, WireMassResult>({
  name: 'wireMass',
  area: 'conductor',
  question: 'What does the bare conductor weigh?',
  page: 'wire-sizes',
  fields: [
    { kind: 'number', name: 'areaMm2', min: 0.001, max: 1e6, example: 25 },
    { kind: 'number', name: 'lengthM', min: 0, max: 1e6, example: 4 },
    metalField,
    {
      kind: 'number',
      name: 'layFactor',
      min: 1,
      max: 1.1,
      example: 1.02,
      help: '1 for solid wire; 1.02 for most stranded wire (common practice).',
    },
  ],
  results: [
    { name: 'massKg', round: 'up', primary: true },
    { name: 'massKgPerM', round: 'up' },
  ],
  steps: [
    {
      result: 'massKgPerM',
      text: 'Mass of one metre',
      formula: 'densityGPerCm3 * areaMm2 * layFactor',
      source: 'nbs-hb-100',
      sourceOf: (output: WireMassResult) => output.source,
    },
    { result: 'massKg', text: 'Mass of the length', formula: 'massKgPerM * lengthM', source: 'statics' },
  ],
  sources: ['nbs-hb-100', 'iec-60889'],
  cautions: ['local-code'],
  run: wireMass,
  scope: (values) => ({ densityGPerCm3: isAluminium(values) ? 2.703 : 8.89 }),
});
