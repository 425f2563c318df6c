import { altitudeFactor, type AltitudeRule, type WireAtAltitude } from 'loomwright';
import { defineCard } from '../type.js';
import { wireFields, wireOf } from './wire-fields.js';

export const altitudeFactorCard = defineCard({
  name: 'altitudeFactor',
  area: 'heat',
  question: 'What does thin air take from a current?',
  page: 'how-hot-does-it-get',
  fields: [
    { kind: 'number', name: 'altitudeM', min: -500, max: 20000, example: 3000 },
    {
      kind: 'choice',
      name: 'rule',
      choices: [
        { value: 'heat', label: 'Heat balance of this wire' },
        { value: 'ac-43-13-1b', label: 'Aviation curve, AC 43.13-1B figure 11-5' },
      ],
      example: 'heat',
    },
    { kind: 'number', name: 'maxConductorTempC', min: -100, max: 400, example: 100 },
    ...wireFields.filter(({ name }) => name !== 'altitudeM'),
  ],
  results: [
    { name: 'factor', round: 'down', primary: true },
    { name: 'minFactor', round: 'down' },
    { name: 'maxFactor', round: 'down' },
    { name: 'reason', round: 'nearest' },
  ],
  steps: [
    {
      result: 'factor',
      text: 'Factor of the rule',
      how: 'the current that the wire bears there over that at sea level, or the curve',
      source: 'heat-balance',
      sourceOf: (output: { source: 'heat-balance' }) => output.source,
    },
  ],
  sources: ['ac-43-13-1b', 'us-standard-atmosphere', 'heat-balance'],
  cautions: ['local-code'],
  run: altitudeFactor,
  input: (uses) => ({
    altitudeM: uses['altitudeM'] as number,
    rule: uses['rule'] as AltitudeRule,
    wire: {
      ...wireOf(Object.fromEntries(Object.entries(uses).filter(([name]) => name !== 'altitudeM')), [
        'maxConductorTempC',
      ]),
    } as unknown as WireAtAltitude,
  }),
});
