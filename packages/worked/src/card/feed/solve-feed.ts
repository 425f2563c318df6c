import {
  InputError,
  type Load,
  type NotPossible,
  type PathLimit,
  type ResistanceBasis,
  solveFeed,
  type SolveFeedInput,
  type SolveFeedResult,
} from 'loomwright';
import { basisField, sizeField, sizeOf } from '../conductor/basis.js';
import { ratedOf } from '../conductor/wire-resistance.js';
import { defineCard, type Uses } from '../type.js';

function loadOf(uses: Uses): Load {
  const currentA = uses['ratedCurrentA'] as number;
  const ratedV = uses['ratedV'] as number;
  // A load of constant current has no use for it, and would let a wrong one pass.
  if (!(ratedV > 0)) throw new InputError('solveFeed', 'ratedV', 'above', ratedV, 'must be above 0');
  if (uses['loadKind'] === 'resistance') return { kind: 'resistance', resistanceOhm: ratedV / currentA };
  if (uses['loadKind'] === 'constant-power') return { kind: 'constant-power', powerW: ratedV * currentA };
  return { kind: 'constant-current', currentA };
}

function inputFrom(uses: Uses): SolveFeedInput {
  const n = (name: string): number => uses[name] as number;
  const resistanceBasis = uses['resistanceBasis'] as ResistanceBasis;
  return {
    supplyV: n('supplyV'),
    outParts: [
      { name: 'fuse', kind: 'fuse', resistanceOhm: n('fuseResistanceOhm') },
      { name: 'relay contact', kind: 'relay', resistanceOhm: n('relayResistanceOhm') },
      { name: 'terminals', kind: 'terminal', resistanceOhm: n('jointCount') * n('jointResistanceOhm') },
      { name: 'wire out', lengthM: n('outLengthM') },
    ],
    returnParts: [
      { name: 'wire back', lengthM: n('returnLengthM') },
      { name: 'stud and body', kind: 'body', resistanceOhm: n('bodyResistanceOhm') },
    ],
    ...sizeOf('solveFeed', uses['size'], resistanceBasis),
    resistanceBasis,
    conductorTempC: n('conductorTempC'),
    load: loadOf(uses),
  };
}

export const solveFeedCard = defineCard<SolveFeedInput, SolveFeedResult | NotPossible<PathLimit>>({
  name: 'solveFeed',
  area: 'feed',
  question: 'What reaches the load, and where does the rest go?',
  page: 'what-a-feed-loses',
  fields: [
    { kind: 'number', name: 'supplyV', above: 0, example: 13.8 },
    {
      kind: 'choice',
      name: 'loadKind',
      choices: [
        { value: 'constant-current', label: 'same current: a lifting pump' },
        { value: 'resistance', label: 'plain resistance: a heater' },
        { value: 'constant-power', label: 'same power: a converter' },
      ],
      example: 'constant-current',
    },
    { kind: 'number', name: 'ratedCurrentA', above: 0, example: 7.5, label: 'Current of the load, as rated' },
    { kind: 'number', name: 'ratedV', above: 0, example: 13.5, label: 'At these volts' },
    { ...basisField, label: 'Wire that you have' },
    { ...sizeField, example: '1.5' },
    { kind: 'number', name: 'outLengthM', min: 0, example: 5.1816, unit: 'ft' },
    { kind: 'number', name: 'returnLengthM', min: 0, example: 0.6 },
    { kind: 'number', name: 'conductorTempC', min: -100, max: 400, example: 60 },
    { kind: 'number', name: 'fuseResistanceOhm', min: 0, example: 0.0078, unit: 'mΩ' },
    { kind: 'number', name: 'relayResistanceOhm', min: 0, example: 0.005, unit: 'mΩ' },
    { kind: 'number', name: 'jointCount', min: 0, example: 4 },
    { kind: 'number', name: 'jointResistanceOhm', min: 0, example: 0.002, unit: 'mΩ' },
    { kind: 'number', name: 'bodyResistanceOhm', min: 0, example: 0.002, unit: 'mΩ' },
  ],
  results: [
    { name: 'loadV', round: 'down', digits: 4, primary: true },
    { name: 'dropV', round: 'up', label: 'Voltage lost out and back' },
    { name: 'dropFraction', round: 'up' },
    { name: 'wireDropV', round: 'up' },
    { name: 'fixedDropV', round: 'up' },
    { name: 'currentA', round: 'up' },
    { name: 'loadPowerW', round: 'down' },
    { name: 'lossW', round: 'up', label: 'Heat in the path' },
  ],
  steps: [
    {
      result: 'ratedOhmPerM',
      text: 'Resistance of one metre at the temperature of its table',
      how: 'looked up, or that of copper of the area',
      source: 'iec-60228',
      sourceOf: (output: SolveFeedResult) => output.source,
    },
    {
      result: 'wireResistanceOhm',
      text: 'Wire out and back, at its working temperature',
      formula: 'ratedOhmPerM * wireLengthM * (zeroTempC + conductorTempC) / (zeroTempC + ratedTempC)',
      source: 'nbs-hb-100',
    },
    {
      result: 'pathResistanceOhm',
      text: 'With all that is not wire',
      formula:
        'wireResistanceOhm + fuseResistanceOhm + relayResistanceOhm + jointCount * jointResistanceOhm + bodyResistanceOhm',
      source: 'circuit-theory',
    },
    {
      result: 'currentA',
      text: 'Current of a plain resistance',
      formula: 'supplyV / (pathResistanceOhm + loadResistanceOhm)',
      source: 'circuit-theory',
      when: (values) => values['loadKind'] === 'resistance',
    },
    {
      result: 'currentA',
      text: 'Current of a constant power: the smaller of two',
      how: 'the root of R I² − V I + P = 0 at which a real load stays',
      source: 'circuit-theory',
      when: (values) => values['loadKind'] === 'constant-power',
    },
    { result: 'dropV', text: 'Volts lost', formula: 'currentA * pathResistanceOhm', source: 'circuit-theory' },
    { result: 'loadV', text: 'Volts left for the load', formula: 'supplyV - dropV', source: 'circuit-theory' },
    { result: 'lossW', text: 'Heat in the path', formula: 'dropV * currentA', source: 'circuit-theory' },
  ],
  sources: ['circuit-theory', 'iso-19642', 'iec-60228', 'nbs-hb-100'],
  cautions: ['local-code', 'fuel', 'battery'],
  run: solveFeed,
  input: inputFrom,
  scope: (values, output) => {
    if (!output.possible) return {};
    const { use } = basisField.choices.find((choice) => choice.value === values['resistanceBasis']) ?? {};
    const input = inputFrom({ ...values, resistanceBasis: use });
    const { load, ...size } = input;
    return {
      ...ratedOf({ ...size, lengthM: 1 }),
      wireResistanceOhm: output.parts.reduce((sum, part) => (part.kind === 'wire' ? sum + part.resistanceOhm : sum), 0),
      loadResistanceOhm: load.kind === 'resistance' ? load.resistanceOhm : null,
    };
  },
});
