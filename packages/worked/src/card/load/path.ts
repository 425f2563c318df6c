import {
  filamentLamp,
  type Load,
  loadCurrents,
  type LoadCurrentsInput,
  solvePath,
  type SolvePathInput,
} from 'loomwright';
import { type Choice, defineCard, type Uses } from '../type.js';

/** Kinds of load that a power and a voltage describe. */
const kinds: readonly Choice[] = [
  { value: 'lamp', label: 'Filament lamp' },
  { value: 'heater', label: 'Heater' },
  { value: 'constant-current', label: 'Takes the same current at any voltage' },
  { value: 'constant-power', label: 'Converter or LED driver: the same power at any voltage' },
];

/** A load of so many watts at so many volts, by its kind. */
function loadOf(uses: Uses): Exclude<Load, { kind: 'pwm' } | { kind: 'h-bridge-motor' }> {
  const n = (name: string): number => uses[name] as number;
  const [ratedPowerW, ratedV] = [n('ratedPowerW'), n('ratedV')];
  const ratio = uses['hotOverColdRatio'] as number | undefined;
  const resistanceOhm = (ratedV * ratedV) / ratedPowerW;
  switch (uses['kind']) {
    case 'lamp': {
      const lamp = { kind: 'lamp', ratedPowerW, ratedV, law: filamentLamp } as const;
      return ratio === undefined ? lamp : { ...lamp, hotOverColdRatio: ratio };
    }
    case 'heater':
      return { kind: 'heater', resistanceOhm, coldResistanceOhm: resistanceOhm / (ratio ?? 1) };
    case 'constant-power':
      return { kind: 'constant-power', powerW: ratedPowerW };
    default:
      return { kind: 'constant-current', currentA: ratedPowerW / ratedV };
  }
}

export const loadCurrentsCard = defineCard({
  name: 'loadCurrents',
  area: 'load',
  question: 'What does this load draw, running and in its first moment?',
  page: 'what-a-load-draws',
  fields: [
    { kind: 'number', name: 'supplyV', above: 0, example: 13.8 },
    {
      kind: 'number',
      name: 'pathResistanceOhm',
      min: 0,
      example: 0.06,
      unit: 'mΩ',
      label: 'Path, out and back',
      help: 'Wire, fuse, contacts, terminals, and the battery itself.',
    },
    { kind: 'choice', name: 'kind', label: 'Kind of load', choices: kinds, example: 'lamp' },
    { kind: 'number', name: 'ratedPowerW', above: 0, example: 110 },
    { kind: 'number', name: 'ratedV', above: 0, example: 12 },
    {
      kind: 'number',
      name: 'hotOverColdRatio',
      above: 1,
      example: 12,
      help: 'Filaments 10 to 18, by whom you ask; heaters 1 to 2.5.',
    },
    {
      kind: 'number',
      name: 'dutyFraction',
      above: 0,
      max: 1,
      example: 0.6,
      unit: '%',
      help: '100 % where it is not switched fast.',
    },
  ],
  results: [
    { name: 'rmsA', round: 'up', primary: true, digits: 4 },
    { name: 'peakA', round: 'up', digits: 4 },
    { name: 'meanA', round: 'up', digits: 4 },
    { name: 'inrushA', round: 'up' },
    { name: 'inrushRatio', round: 'up' },
    { name: 'loadV', round: 'down', digits: 4, label: 'Volts at the load while it is on' },
  ],
  steps: [
    {
      result: 'peakA',
      text: 'Current while it is on',
      how: 'the load against the path, by its kind',
      source: 'circuit-theory',
    },
    {
      result: 'loadV',
      text: 'Volts that reach it',
      formula: 'supplyV - peakA * pathResistanceOhm',
      source: 'circuit-theory',
    },
    { result: 'rmsA', text: 'For wire and fuse', formula: 'peakA * sqrt(dutyFraction)', source: 'circuit-theory' },
    { result: 'meanA', text: 'For the battery', formula: 'peakA * dutyFraction', source: 'circuit-theory' },
    {
      result: 'inrushA',
      text: 'First current, through the cold resistance',
      formula: 'supplyV / (pathResistanceOhm + ratedV ^ 2 / (ratedPowerW * hotOverColdRatio))',
      source: 'circuit-theory',
      when: ({ kind }) => kind === 'lamp' || kind === 'heater',
    },
  ],
  sources: ['circuit-theory', 'lamp-rerating', 'switch-maker-guides', 'relay-module-manual', 'mil-r-5757'],
  cautions: ['local-code'],
  run: loadCurrents,
  input: (uses): LoadCurrentsInput => ({
    supplyV: uses['supplyV'] as number,
    pathResistanceOhm: uses['pathResistanceOhm'] as number,
    load: { kind: 'pwm', load: loadOf(uses), dutyFraction: uses['dutyFraction'] as number },
  }),
});

export const solvePathCard = defineCard({
  name: 'solvePath',
  area: 'load',
  question: 'What reaches a load at the end of this path?',
  page: 'what-a-load-draws',
  fields: [
    { kind: 'number', name: 'supplyV', above: 0, example: 13.8 },
    { kind: 'number', name: 'outResistanceOhm', min: 0, example: 0.045, unit: 'mΩ' },
    { kind: 'number', name: 'returnResistanceOhm', min: 0, example: 0.015, unit: 'mΩ' },
    { kind: 'choice', name: 'kind', label: 'Kind of load', choices: kinds, example: 'lamp' },
    { kind: 'number', name: 'ratedPowerW', above: 0, example: 110 },
    { kind: 'number', name: 'ratedV', above: 0, example: 12 },
  ],
  results: [
    { name: 'loadV', round: 'down', digits: 4, primary: true },
    { name: 'currentA', round: 'up', digits: 4 },
    { name: 'dropV', round: 'up', label: 'Voltage lost out and back' },
    { name: 'dropFraction', round: 'up' },
    { name: 'lossW', round: 'up', label: 'Heat in the path' },
    { name: 'loadPowerW', round: 'down' },
  ],
  steps: [
    {
      result: 'pathResistanceOhm',
      text: 'The whole path',
      formula: 'outResistanceOhm + returnResistanceOhm',
      source: 'circuit-theory',
    },
    {
      result: 'currentA',
      text: 'Current that load and path agree on',
      how: 'a constant power: the smaller root of a quadratic; a lamp: by its law',
      source: 'circuit-theory',
    },
    { result: 'dropV', text: 'Volts lost', formula: 'currentA * pathResistanceOhm', source: 'circuit-theory' },
    { result: 'loadV', text: 'Volts left', formula: 'supplyV - dropV', source: 'circuit-theory' },
    { result: 'lossW', text: 'Heat in the path', formula: 'dropV * currentA', source: 'circuit-theory' },
    { result: 'loadPowerW', text: 'Power of the load', formula: 'loadV * currentA', source: 'circuit-theory' },
  ],
  sources: ['circuit-theory', 'lamp-rerating'],
  cautions: ['local-code'],
  run: solvePath,
  input: (uses): SolvePathInput => ({
    supplyV: uses['supplyV'] as number,
    outParts: [{ name: 'out', resistanceOhm: uses['outResistanceOhm'] as number }],
    returnParts: [{ name: 'back', resistanceOhm: uses['returnResistanceOhm'] as number }],
    load: loadOf(uses),
  }),
});
