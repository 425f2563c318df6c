import {
  groundFaults,
  type GroundFaultsInput,
  type GroundFaultsResult,
  prepareGroundFaults,
  settleNetwork,
  solveNetwork,
} from 'loomwright';
import { defineCard } from '../type.js';
import { networkField, referenceField } from './fields.js';
import { limitedText, namesText, networkText, watchedText } from './lists.js';

/** The answer, and its worst in words and figures. */
export interface GroundFaultsShown extends GroundFaultsResult {
  readonly worstLost: string;
}

const NETWORK = [
  'battery: source post > plus, 12.6 V, 6 mΩ',
  'starter: load plus > engine, 45 mΩ',
  'fan: load plus > body, 0.6 Ω',
  'engine strap: wire engine > post, 0.5 mΩ',
  'body strap: wire body > post, 1 mΩ',
  'dash strap: wire dash > body, 2 mΩ',
  'throttle cable: wire engine > body, 20 mΩ',
  'sensor shield: wire engine > dash, 60 mΩ',
].join('; ');

const largest = (values: readonly (number | null)[]): number | null =>
  values.reduce<number | null>((most, value) => (value === null ? most : Math.max(most ?? 0, Math.abs(value))), null);

export const groundFaultsCard = defineCard({
  name: 'groundFaults',
  area: 'network',
  question: 'Which ground may not be lost, and what happens where it is?',
  page: 'how-many-grounds',
  fields: [
    networkField(NETWORK),
    referenceField,
    {
      kind: 'text',
      name: 'grounds',
      example: 'engine strap; body strap; dash strap',
      help: 'Wires that are taken away in turn.',
    },
    { kind: 'flag', name: 'pairs', example: false },
    {
      kind: 'text',
      name: 'watched',
      example: 'coolant sensor: engine > dash, 20 mV; fan speed: body > dash, 20 mV',
      help: 'Name: its node > the ground that it is read against, and the shift that it bears.',
    },
    {
      kind: 'text',
      name: 'limited',
      example: 'throttle cable: 1 A; sensor shield: 0.5 A',
      help: 'Wires that were not laid for current, and what they bear.',
    },
  ],
  results: [
    { name: 'worstLost', round: 'nearest', primary: true },
    { name: 'worstShiftMv', round: 'up' },
    { name: 'worstLimitedA', round: 'up' },
    { name: 'cutOffCount', round: 'up', trim: true },
  ],
  steps: [
    {
      result: 'worstShiftMv',
      text: 'Most shift of a watched point, of all cases',
      how: 'the node equations are factored once; each ground is taken away by letting in the current that would undo it',
      source: 'sherman-morrison-1950',
    },
    {
      result: 'worstLimitedA',
      text: 'Most current in a wire that was not laid for it',
      how: 'the volts at its two ends over its resistance, in every case',
      source: 'circuit-theory',
    },
    {
      result: 'cutOffCount',
      text: 'Most nodes that no metal ties to the reference',
      how: 'one search through wires, closed switches and sources finds every one that is the only tie',
      source: 'tarjan-1972',
    },
  ],
  sources: ['circuit-theory', 'sherman-morrison-1950', 'tarjan-1972', 'given-by-caller'],
  cautions: ['battery', 'stored-heat', 'restraint', 'prove-slowly', 'local-code'],
  identifiers: { prepareGroundFaults, settleNetwork, solveNetwork },
  run: (input: GroundFaultsInput): GroundFaultsShown => {
    const answer = groundFaults(input);
    const [worst] = answer.cases;
    return { ...answer, worstLost: worst === undefined ? 'none' : worst.lost.join(' and ') };
  },
  input: (uses): GroundFaultsInput => {
    const fn = 'groundFaults';
    const text = (name: string): string => uses[name] as string;
    return {
      network: networkText(fn, 'network', text('network'), text('reference').trim()),
      grounds: namesText(text('grounds')),
      pairs: uses['pairs'] === true,
      watched: watchedText(fn, 'watched', text('watched')),
      limited: limitedText(fn, 'limited', text('limited')),
      detail: 'every-node',
      exact: true,
      prepare: prepareGroundFaults,
      by: solveNetwork,
    };
  },
  scope: (_, { intact, cases }) => {
    const all = [intact, ...cases];
    return {
      worstShiftMv: largest(all.flatMap(({ watched }) => watched.map(({ shiftMv }) => shiftMv))),
      worstLimitedA: largest(all.flatMap(({ limited }) => limited.map(({ currentA }) => currentA))),
      cutOffCount: Math.max(...all.map(({ cutOff }) => cutOff.length)),
    };
  },
});
