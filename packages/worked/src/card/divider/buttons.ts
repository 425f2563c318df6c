import {
  checkSwitchLadder,
  type CheckSwitchLadderInput,
  designSwitchLadder,
  type DesignSwitchLadderInput,
  type SwitchLadderBase,
} from 'loomwright';
import { defineCard, type Field, type Uses } from '../type.js';
import { nameList, ohmList } from './lists.js';
import { seriesField } from './series.js';

const PAGE = 'buttons-on-one-wire';

const first: readonly Field[] = [
  { kind: 'number', name: 'supplyV', above: 0, example: 5, label: 'Reference' },
  { kind: 'number', name: 'pullOhm', label: 'Pull resistor', above: 0, example: 1000, unit: 'kΩ' },
  {
    kind: 'choice',
    name: 'pullTo',
    label: 'The pull resistor goes to',
    choices: [
      { value: 'supply', label: 'the reference' },
      { value: 'ground', label: 'ground' },
    ],
    example: 'supply',
    help: 'The buttons go to the other side.',
  },
  {
    kind: 'choice',
    name: 'form',
    label: 'Ladder',
    choices: [
      { value: 'separate', label: 'a resistor for each button' },
      { value: 'chain', label: 'a chain that the buttons tap' },
    ],
    example: 'separate',
  },
];

const last: readonly Field[] = [
  { kind: 'number', name: 'toleranceFraction', min: 0, example: 0.05, unit: '%' },
  {
    kind: 'number',
    name: 'pullToleranceFraction',
    label: 'Tolerance of the pull resistor',
    symbol: 't_\\mathrm{pull}',
    min: 0,
    example: 0.05,
    unit: '%',
  },
  { kind: 'number', name: 'wireOhm', min: 0, example: 1 },
  { kind: 'number', name: 'contactMostOhm', min: 0, example: 10 },
  {
    kind: 'number',
    name: 'leakOhm',
    above: 0,
    example: null,
    optional: true,
    unit: 'kΩ',
    help: 'Water across the panel. Empty for dry.',
  },
  {
    kind: 'number',
    name: 'idleOhm',
    above: 0,
    example: null,
    optional: true,
    unit: 'kΩ',
    help: 'Fitted at the far end, it tells a broken wire from no button.',
  },
  { kind: 'number', name: 'guardV', min: 0, example: 0.1, unit: 'mV' },
  { kind: 'flag', name: 'tellShort', label: 'A shorted wire must be told', example: true },
  { kind: 'flag', name: 'tellOpen', label: 'A broken wire must be told', example: false },
];

function baseOf(uses: Uses): SwitchLadderBase {
  return {
    ...(uses as unknown as SwitchLadderBase),
    leakOhm: (uses['leakOhm'] as number | undefined) ?? null,
    idleOhm: (uses['idleOhm'] as number | undefined) ?? null,
  };
}

export const checkSwitchLadderCard = defineCard({
  name: 'checkSwitchLadder',
  area: 'divider',
  question: 'Can the input tell these buttons apart?',
  page: PAGE,
  fields: [
    ...first,
    {
      kind: 'text',
      name: 'buttonOhm',
      label: 'Resistors',
      example: '110, 360, 750, 1.3k, 2.7k',
      help: 'In the order of the buttons, from the pin on; in Ω, or 1.3k, 2k7.',
    },
    { kind: 'text', name: 'names', label: 'Buttons', example: 'up, down, set, back, menu' },
    ...last,
  ],
  results: [
    { name: 'smallestGapV', round: 'down', primary: true },
    { name: 'distinctCount', round: 'down', digits: 4, trim: true },
    { name: 'shortGapV', round: 'down' },
    { name: 'openGapV', round: 'down' },
    { name: 'contactA', round: 'up' },
  ],
  steps: [
    {
      result: 'firstV',
      text: 'First button, as marked',
      formula: 'supplyV * firstOhm / (firstOhm + pullOhm)',
      source: 'circuit-theory',
      when: (values) => values['pullTo'] === 'supply' && typeof values['idleOhm'] !== 'number',
    },
    {
      result: 'firstHighV',
      text: 'Its highest: its own resistor high, a dirty contact, a long wire, the pull resistor low',
      formula:
        'supplyV * (firstOhm * (1 + toleranceFraction) + contactMostOhm + wireOhm) / (firstOhm * (1 + toleranceFraction) + contactMostOhm + wireOhm + pullOhm * (1 - pullToleranceFraction))',
      source: 'circuit-theory',
      when: (values) => values['pullTo'] === 'supply' && typeof values['idleOhm'] !== 'number',
    },
    {
      result: 'smallestGapV',
      text: 'Narrowest room between the worst cases of neighbours',
      how: 'highest of the lower state taken from the lowest of the upper one, for every pair',
      source: 'circuit-theory',
    },
  ],
  sources: ['circuit-theory', 'switch-ladder-notes'],
  cautions: ['local-code', 'prove-slowly'],
  run: checkSwitchLadder,
  input: (uses): CheckSwitchLadderInput => {
    const buttonOhm = ohmList('checkSwitchLadder', 'buttonOhm', uses['buttonOhm'] as string);
    const names = nameList(uses['names'] as string);
    return { ...baseOf(uses), buttonOhm, names: buttonOhm.map((_, i) => names[i] ?? `button ${i + 1}`) };
  },
  scope: (values, output) => {
    const state = output.states[values['pullTo'] === 'supply' ? 0 : output.states.length - 1];
    return {
      firstOhm: ohmList('checkSwitchLadder', 'buttonOhm', String(values['buttonOhm']))[0] ?? null,
      firstV: state?.pinV ?? null,
      firstHighV: state?.highV ?? null,
    };
  },
});

export const designSwitchLadderCard = defineCard({
  name: 'designSwitchLadder',
  area: 'divider',
  question: 'Which resistors tell these buttons apart best?',
  page: PAGE,
  fields: [
    ...first,
    { kind: 'number', name: 'buttonCount', min: 1, max: 16, example: 5 },
    seriesField('E24'),
    { kind: 'number', name: 'mostOhm', above: 0, example: 100000, unit: 'kΩ' },
    ...last,
  ],
  results: [
    { name: 'smallestGapV', round: 'down', primary: true },
    { name: 'shortGapV', round: 'down' },
    { name: 'contactA', round: 'up' },
  ],
  steps: [
    {
      result: 'smallestGapV',
      text: 'Widest of the narrowest rooms',
      how: 'the gap is raised until no choice of resistors keeps it: each button takes the smallest resistor that keeps the gap to the one before',
      source: 'circuit-theory',
    },
  ],
  sources: ['circuit-theory', 'iec-60063'],
  cautions: ['local-code', 'prove-slowly'],
  run: designSwitchLadder,
  input: (uses): DesignSwitchLadderInput => ({
    ...(uses as unknown as DesignSwitchLadderInput),
    ...baseOf(uses),
  }),
});
