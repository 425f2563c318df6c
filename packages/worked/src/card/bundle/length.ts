import {
  aircraftTwist,
  cutLength,
  type CutLengthInput,
  type CutLengthResult,
  InputError,
  twistPitch,
  type TwistPitchInput,
  type TwistPitchResult,
} from 'loomwright';
import { type Constant, defineCard } from '../type.js';

const pi: Constant = { name: 'pi', symbol: '\\pi', value: 3.14159265359, unit: '', source: 'statics' };

export const cutLengthCard = defineCard<CutLengthInput, CutLengthResult>({
  name: 'cutLength',
  area: 'bundle',
  question: 'How long is this wire to be cut?',
  page: 'how-long-to-cut',
  fields: [
    { kind: 'number', name: 'routeLengthM', min: 0, example: 3.2, help: 'From terminal to terminal, with a string.' },
    { kind: 'number', name: 'slackFraction', min: 0, max: 1, example: 0.05, help: 'For bends and for dressing.' },
    { kind: 'number', name: 'stripMm', min: 0, example: 12 },
    { kind: 'number', name: 'repairLoopM', min: 0, example: 0.15, unit: 'mm' },
    { kind: 'number', name: 'pitchMm', above: 0, optional: true, example: 30.48, help: 'Empty for a straight wire.' },
    {
      kind: 'number',
      name: 'helixDiameterMm',
      above: 0,
      optional: true,
      example: 1.9,
      help: 'Of a pair: the diameter of one wire over its insulation.',
    },
    { kind: 'number', name: 'cutStepMm', above: 0, optional: true, example: 10 },
  ],
  results: [
    { name: 'cutLengthM', round: 'up', digits: 4, primary: true },
    { name: 'exactLengthM', round: 'up', digits: 5 },
    { name: 'slackMm', round: 'nearest' },
    { name: 'twistMm', round: 'nearest' },
    { name: 'twistFactor', round: 'up', digits: 4 },
  ],
  steps: [
    { result: 'slackM', text: 'Slack', formula: 'routeLengthM * slackFraction', source: 'statics' },
    {
      result: 'twistFactor',
      text: 'Length of a helix over that of its axis',
      formula: 'sqrt(1 + (pi * helixDiameterMm / pitchMm)^2)',
      constants: [pi],
      source: 'statics',
      when: (values) => typeof values['pitchMm'] === 'number',
    },
    {
      result: 'exactLengthM',
      text: 'Everything that is laid, longer by the twist, and the copper that goes into the terminals',
      formula: '(routeLengthM + slackM + repairLoopM) * twistFactor + stripMm',
      source: 'statics',
    },
    {
      result: 'cutLengthM',
      text: 'Rounded up to the step',
      how: 'never down: a short wire is scrap',
      source: 'statics',
    },
  ],
  sources: ['statics', 'ac-43-13-1b-dressing'],
  cautions: ['local-code'],
  run: cutLength,
  scope: (_, output) => ({ slackMm: output.slackM * 1000, twistMm: output.twistM * 1000 }),
  input: ({ pitchMm, helixDiameterMm, ...straight }) => {
    const input = straight as unknown as CutLengthInput;
    if (pitchMm === undefined && helixDiameterMm === undefined) return input;
    const missing = pitchMm === undefined ? 'pitchMm' : helixDiameterMm === undefined ? 'helixDiameterMm' : null;
    if (missing !== null) throw new InputError('cutLength', missing, 'missing', undefined, 'is needed for a twist');
    return { ...input, twist: { pitchMm: pitchMm as number, helixDiameterMm: helixDiameterMm as number } };
  },
});

export const twistPitchCard = defineCard<TwistPitchInput, TwistPitchResult>({
  name: 'twistPitch',
  area: 'bundle',
  question: 'How tightly are these wires twisted?',
  page: 'how-long-to-cut',
  fields: [
    {
      kind: 'choice',
      name: 'table',
      label: 'Table of twists',
      choices: [
        {
          value: aircraftTwist.key,
          label: 'AC 43.13-1B, twists a foot (from memory)',
          use: aircraftTwist,
          identifier: 'aircraftTwist',
        },
      ],
      example: aircraftTwist.key,
    },
    {
      kind: 'choice',
      name: 'awg',
      choices: aircraftTwist.rows.map(([awg]) => ({ value: awg, label: `AWG ${awg}` })),
      example: '20',
    },
    { kind: 'number', name: 'wireCount', label: 'Wires twisted together', min: 2, max: 3, example: 2 },
    { kind: 'number', name: 'outerDiameterMm', above: 0, example: 1.9 },
  ],
  results: [
    { name: 'pitchMm', round: 'nearest', primary: true },
    { name: 'helixDiameterMm', round: 'nearest' },
    { name: 'twistFactor', round: 'up', digits: 4 },
  ],
  steps: [
    {
      result: 'pitchMm',
      text: 'One turn',
      how: 'a foot divided by the twists that the table gives',
      source: 'ac-43-13-1b-dressing',
    },
    {
      result: 'helixDiameterMm',
      text: 'Circle of the middles of wires that touch',
      how: 'one diameter for a pair, 2/√3 of one for a triple',
      source: 'statics',
    },
    {
      result: 'twistFactor',
      text: 'Length of the wire over that of the cable',
      formula: 'sqrt(1 + (pi * helixDiameterMm / pitchMm)^2)',
      constants: [pi],
      source: 'statics',
    },
  ],
  sources: ['ac-43-13-1b-dressing', 'statics'],
  cautions: ['local-code'],
  run: twistPitch,
});
