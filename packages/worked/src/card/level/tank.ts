import { tankVolume, type TankVolumeInput } from 'loomwright';
import { defineCard } from '../type.js';

export const tankVolumeCard = defineCard({
  name: 'tankVolume',
  area: 'level',
  question: 'How many litres stand at this level?',
  page: 'litres-by-level',
  fields: [
    {
      kind: 'choice',
      name: 'shape',
      label: 'Tank',
      choices: [
        { value: 'box', label: 'box' },
        { value: 'lying', label: 'cylinder, lying' },
        { value: 'standing', label: 'cylinder, standing' },
      ],
      example: 'lying',
    },
    {
      kind: 'number',
      name: 'lengthMm',
      min: 1,
      max: 1e5,
      example: 2540,
      help: 'Inside, as all sizes.',
    },
    { kind: 'number', name: 'widthMm', min: 1, max: 1e5, example: 1016 },
    {
      kind: 'number',
      name: 'heightMm',
      label: 'Height of a box',
      symbol: 'H',
      min: 1,
      max: 1e5,
      example: null,
      optional: true,
      help: 'Empty for a cylinder.',
    },
    {
      kind: 'number',
      name: 'headDepthMm',
      min: 0,
      example: 254,
      help: 'How far each end bulges. 0 for flat ends and for a box.',
    },
    { kind: 'number', name: 'levelMm', min: 0, example: 406.4 },
    {
      kind: 'number',
      name: 'tiltDeg',
      label: 'Tilted',
      symbol: '\\theta',
      min: 0,
      max: 45,
      example: 0,
      help: 'Along its length; a standing cylinder from plumb.',
    },
    { kind: 'number', name: 'measuredFromLowMm', min: 0, example: 1270, help: 'No matter without tilt.' },
    { kind: 'number', name: 'crossTiltDeg', min: 0, max: 45, example: 0, help: 'For a box. 0 for a cylinder.' },
    { kind: 'number', name: 'measuredFromLowSideMm', min: 0, example: 0, help: 'No matter without tilt across.' },
    { kind: 'number', name: 'rowCount', min: 1, max: 200, example: 20 },
  ],
  results: [
    { name: 'volumeL', round: 'down', digits: 4, primary: true },
    { name: 'totalL', round: 'down', digits: 4 },
    { name: 'fillFraction', label: 'Full by', round: 'down', digits: 3 },
    { name: 'highestLevelMm', round: 'nearest', digits: 4, trim: true },
  ],
  steps: [
    {
      result: 'shellL',
      text: 'Lying cylinder without its ends',
      formula:
        'lengthMm * ((widthMm / 2)^2 * acos((widthMm / 2 - levelMm) / (widthMm / 2)) - (widthMm / 2 - levelMm) * sqrt(widthMm * levelMm - levelMm^2))',
      source: 'horizontal-tank-problem',
      when: (values) => values['shape'] === 'lying' && values['tiltDeg'] === 0,
    },
    {
      result: 'headsL',
      text: 'Its two dished ends',
      formula: 'headDepthMm / (widthMm / 2) * pi * levelMm^2 * (3 * widthMm / 2 - levelMm) / 3',
      source: 'tank-fill-table',
      when: (values) => values['shape'] === 'lying' && values['tiltDeg'] === 0,
    },
    {
      result: 'volumeL',
      text: 'Litres at the level',
      how: 'the section of the tank at every place along it, summed over the length: in closed form, tilted dished ends by quadrature',
      source: 'horizontal-tank-problem',
    },
  ],
  sources: ['horizontal-tank-problem', 'tank-fill-table'],
  cautions: ['fuel'],
  run: tankVolume,
  input: (uses): TankVolumeInput => ({
    ...(uses as unknown as TankVolumeInput),
    heightMm: (uses['heightMm'] as number | undefined) ?? null,
  }),
  scope: (values, output) => {
    const flat = values['shape'] === 'lying' && values['tiltDeg'] === 0;
    const r = Number(values['widthMm']) / 2;
    const h = Number(values['levelMm']);
    const headsL = ((Number(values['headDepthMm']) / r) * ((Math.PI * h * h * (3 * r - h)) / 3)) / 1e6;
    return { shellL: flat ? output.volumeL - headsL : null, headsL: flat ? headsL : null };
  },
});
