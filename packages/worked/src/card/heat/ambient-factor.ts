import { ambientFactor } from 'loomwright';
import { defineCard } from '../type.js';

export const ambientFactorCard = defineCard({
  name: 'ambientFactor',
  area: 'heat',
  question: 'What does warmer air take from a printed current?',
  page: 'how-hot-does-it-get',
  fields: [
    { kind: 'number', name: 'insulationTempC', min: -273.15, max: 2000, example: 105 },
    { kind: 'number', name: 'ambientTempC', min: -273.15, max: 2000, example: 60, label: 'Air around the wire' },
    {
      kind: 'number',
      name: 'baseTempC',
      min: -273.15,
      max: 2000,
      example: 30,
      help: 'Of the table that is corrected, and of no other.',
    },
  ],
  results: [{ name: 'ambientFactor', round: 'down', primary: true }],
  steps: [
    {
      result: 'ambientFactor',
      text: 'Root of the room that is left to the room that the table had',
      formula: 'sqrt((insulationTempC - ambientTempC) / (insulationTempC - baseTempC))',
      source: 'us-33-cfr-183',
    },
  ],
  sources: ['us-33-cfr-183', 'nec-310-15'],
  cautions: ['local-code'],
  run: ambientFactor,
});
