import { sneakPaths, type SneakPathsInput, type SneakPathsResult, settleNetwork, solveNetwork } from 'loomwright';
import { defineCard } from '../type.js';
import { networkField, referenceField } from './fields.js';
import { changesText, networkText, relaysText, statesText } from './lists.js';

/** The answer, and the worst of it in words. */
export interface SneakPathsShown extends SneakPathsResult {
  readonly worstPath: string;
}

const NETWORK = [
  'battery: source post > plus, 12.6 V, 6 mΩ',
  'alternator: source post > main, 14.2 V, 20 mΩ',
  'exciter end: source post > exciter, 14 V, 0.5 Ω',
  'isolator: switch plus > main, closed, 1 mΩ',
  'key: switch main > key feed, closed, 10 mΩ',
  'main contact: switch main > rail, open, 5 mΩ',
  'main coil: load key feed > post, 80 Ω',
  'charge lamp: load key feed > exciter, 48 Ω',
  'ignition: load rail > post, 4 Ω',
  'dash fuse: switch main > dash feed, closed, 5 mΩ',
  'clock fuse: switch plus > clock feed, closed, 5 mΩ',
  'dash: load dash feed > post, 12 Ω',
  'dash memory: load clock feed > dash feed, 120 Ω',
  'brake switch: switch main > brake feed, open, 10 mΩ',
  'lighting switch: switch main > lamp feed, open, 10 mΩ',
  'brake lamps: load brake feed > tail, 6.86 Ω',
  'tail lamps: load lamp feed > tail, 28.8 Ω',
  'parking lamps: load lamp feed > post, 28.8 Ω',
  'tail strap: wire tail > post, 4 mΩ',
].join('; ');

export const sneakPathsCard = defineCard({
  name: 'sneakPaths',
  area: 'network',
  question: 'What stays alive in each state, by which path, and which relay is held in?',
  page: 'alive-with-the-key-off',
  fields: [
    networkField(NETWORK),
    referenceField,
    {
      kind: 'text',
      name: 'states',
      example:
        'key off, engine turning: open key, relays in, dead rail + ignition; isolator open, engine turning: open isolator, relays in, dead main + rail; parked: open key, away alternator + exciter end, relays in, dead rail; braking by day: closed brake switch, away alternator + exciter end, relays in, dead lamp feed',
      help: 'Name: open, closed, away or lost, names joined by +; relays in or out before; what ought to be dead.',
    },
    {
      kind: 'text',
      name: 'faults',
      example: 'dash fuse out: open dash fuse; tail ground lost: lost tail strap',
      help: 'Each is tried in every state.',
    },
    {
      kind: 'text',
      name: 'relays',
      example: 'main coil: in 9 V, holds 3 V, closes main contact',
      help: 'A load that is a coil; volts to pull in and to hold; the switches that it moves.',
    },
    { kind: 'number', name: 'aliveV', above: 0, example: 0.5 },
  ],
  results: [
    { name: 'unwantedCount', round: 'nearest', primary: true, trim: true },
    { name: 'worstPath', round: 'nearest' },
    { name: 'worstSneakV', round: 'up' },
    { name: 'heldRelayCount', round: 'nearest', trim: true },
  ],
  steps: [
    {
      result: 'coilLeftV',
      text: 'Least volts at a coil that is in',
      how: 'the volts between its two ends in the solved network, the least of all cases',
      source: 'circuit-theory',
    },
    {
      result: 'worstSneakV',
      text: 'Most volts of what ought to be dead',
      how: 'each state, as it is and with each fault, is solved as one network, lamps and coils as the paths that they are',
      source: 'circuit-theory',
    },
    {
      result: 'heldRelayCount',
      text: 'Relays that are held in by less than they need to pull in',
      how: 'relays that were in let go until none is left that cannot hold',
      source: 'circuit-theory',
    },
  ],
  sources: ['circuit-theory', 'given-by-caller'],
  cautions: ['isolator', 'battery', 'restraint', 'prove-slowly', 'local-code'],
  identifiers: { settleNetwork, solveNetwork },
  run: (input: SneakPathsInput): SneakPathsShown => {
    const answer = sneakPaths(input);
    const [worst] = answer.unwanted;
    const worstPath = worst === undefined ? 'none' : [worst.fedFrom ?? '', ...worst.path, worst.name].join(' → ');
    return { ...answer, worstPath };
  },
  input: (uses): SneakPathsInput => {
    const fn = 'sneakPaths';
    const text = (name: string): string => uses[name] as string;
    const network = networkText(fn, 'network', text('network'), text('reference').trim());
    return {
      network,
      states: statesText(fn, 'states', text('states'), network),
      faults: changesText(fn, 'faults', text('faults')),
      relays: relaysText(fn, 'relays', text('relays')),
      aliveV: uses['aliveV'] as number,
      by: solveNetwork,
    };
  },
  scope: (_, { cases, unwanted }) => ({
    unwantedCount: unwanted.length,
    worstSneakV: unwanted.reduce((most, { voltageV }) => Math.max(most, Math.abs(voltageV)), 0),
    coilLeftV: cases
      .flatMap(({ relays }) => relays.filter(({ position }) => position === 'held' || position === 'pulls-in'))
      .reduce<number | null>((least, { coilV }) => Math.min(least ?? coilV, coilV), null),
    heldRelayCount: cases.reduce(
      (sum, { relays }) => sum + relays.filter(({ position }) => position === 'held').length,
      0,
    ),
  }),
});
