import { type Network, type ResistanceBasis, settleNetwork, solveNetwork, type SolveNetworkResult } from 'loomwright';
import { basisField } from '../conductor/basis.js';
import { defineCard } from '../type.js';
import { networkField, referenceField } from './fields.js';
import { networkText } from './lists.js';

/** The answer, and in words which load and which part are the worst off. */
export interface SolveNetworkShown extends SolveNetworkResult {
  readonly leastLoad: string;
  readonly hottestPart: string;
}

const NETWORK = [
  'battery: source post > plus, 12.6 V, 6 mΩ',
  'main feed: wire plus > box, 2.4 m of 16',
  'main fuse: switch box > bus, closed, 1.2 mΩ',
  'pump feed: wire bus > pump +, 5.5 m of 1.5',
  'lift pump: load pump + > pump −, 8 A',
  'pump return: wire pump − > tail stud, 0.6 m of 1.5',
  'lights feed: wire bus > lights +, 3.8 m of 2.5',
  'search lights: load lights + > roof stud, 110 W lamp at 12 V',
  'roof strap: wire roof stud > body, 2 m of 4',
  'fridge feed: wire bus > fridge +, 4.2 m of 2.5',
  'fridge: load fridge + > tail stud, 60 W',
  'tail strap: wire tail stud > body, 2.5 m of 2.5',
  'body strap: wire body > post, 0.5 m of 16',
].join('; ');

interface Power {
  readonly name: string;
  readonly powerW: number;
}

const lostIn = ({ branches, switches, diodes, sources }: SolveNetworkResult): readonly Power[] =>
  [...branches, ...switches, ...diodes, ...sources].map(({ name, lossW }) => ({ name, powerW: lossW }));
const leastOf = ({ loads }: SolveNetworkResult): { readonly name: string; readonly voltageV: number } | null =>
  loads.reduce<{ readonly name: string; readonly voltageV: number } | null>((least, { name, voltageV }) => {
    const size = Math.abs(voltageV ?? 0);
    return least === null || size < least.voltageV ? { name, voltageV: size } : least;
  }, null);

export const solveNetworkCard = defineCard({
  name: 'solveNetwork',
  area: 'network',
  question: 'What are the volts at every point, and where does the power go?',
  page: 'one-network-every-volt',
  fields: [
    networkField(
      NETWORK,
      'what it has: ohms, or for a wire its length and size (5.5 m of 1.5); for a load ohms, amps, watts or a lamp',
    ),
    referenceField,
    basisField,
    { kind: 'number', name: 'conductorTempC', min: -100, max: 400, example: 60 },
  ],
  results: [
    { name: 'leastLoadV', round: 'down', primary: true },
    { name: 'leastLoad', round: 'nearest' },
    { name: 'givenW', round: 'nearest' },
    { name: 'usedW', round: 'nearest' },
    { name: 'lostW', round: 'up' },
    { name: 'hottestPart', round: 'nearest' },
  ],
  steps: [
    {
      result: 'leastLoadV',
      text: 'Least volts at a load',
      how: 'currents add up to nothing at every point: as many equations as there are points, solved together',
      source: 'circuit-theory',
    },
    {
      result: 'givenW',
      text: 'Power of the sources',
      how: 'open-circuit volts times current, of all sources; one that is charged counts as negative',
      source: 'circuit-theory',
    },
    {
      result: 'usedW',
      text: 'Power of the loads',
      how: 'volts times current of all loads, while they are on',
      source: 'circuit-theory',
    },
    {
      result: 'lostW',
      text: 'Lost in wires, contacts and inside the sources',
      formula: 'givenW - usedW',
      source: 'circuit-theory',
    },
  ],
  sources: ['circuit-theory'],
  cautions: ['battery', 'stored-heat', 'local-code'],
  identifiers: { settleNetwork },
  run: (input: Network): SolveNetworkShown => {
    const answer = solveNetwork(input);
    const [hottest] = [...lostIn(answer)].sort((a, b) => b.powerW - a.powerW);
    return {
      ...answer,
      leastLoad: leastOf(answer)?.name ?? 'none',
      hottestPart: hottest !== undefined && hottest.powerW > 0 ? hottest.name : 'none',
    };
  },
  input: (uses): Network => {
    const fn = 'solveNetwork';
    const text = (name: string): string => uses[name] as string;
    return networkText(fn, 'network', text('network'), text('reference').trim(), {
      resistanceBasis: uses['resistanceBasis'] as ResistanceBasis,
      conductorTempC: uses['conductorTempC'] as number,
    });
  },
  scope: (_, answer) => ({ leastLoadV: leastOf(answer)?.voltageV ?? null, ...answer.balance }),
});
