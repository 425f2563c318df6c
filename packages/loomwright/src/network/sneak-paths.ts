import { type Check, makeCheck, tightestCheck } from '../check/index.js';
import { InputError } from '../error/index.js';
import { needMoreThan } from '../error/bounded.js';
import { needFunction, needInput, needList, needObject, needOneOf, needOwnName } from '../error/guard.js';
import type { Network } from './element.js';
import { endsOf, needWholeNetwork } from './network-guard.js';
import type { solveNetwork } from './solve-network.js';
import { namesOf, needChange, needKnown, type SneakChange } from './sneak-paths-change.js';
import { type SneakCase, sneakCase } from './sneak-paths-case.js';
import type { SneakRelay } from './sneak-paths-relay.js';

/** A state of the vehicle, and what ought to be dead in it. */
export interface SneakState extends SneakChange {
  /** Where the relays were before: in, so that they may be held, or out. */
  readonly relaysBefore: 'energised' | 'released';
  /** Nodes and loads that ought to be dead. */
  readonly deadNodes?: readonly string[];
  readonly deadLoads?: readonly string[];
}

export interface SneakPathsInput {
  readonly network: Network;
  readonly states: readonly SneakState[];
  /** Faults, each tried in every state: a fuse out, the isolator open, a ground lost. */
  readonly faults: readonly SneakChange[];
  readonly relays: readonly SneakRelay[];
  /** Volts against the reference, or across a load, above which it counts as alive, in V, above 0. */
  readonly aliveV: number;
  /** Solves each case: `solveNetwork`. */
  readonly by: typeof solveNetwork;
}

/** Something that is alive although it ought to be dead. */
export interface SneakPath {
  readonly state: string;
  /** The fault, or null for the state as it is. */
  readonly fault: string | null;
  readonly kind: 'node' | 'load';
  readonly name: string;
  readonly voltageV: number;
  /** The source that it is fed from, and the elements on the way to it; null where no single way leads there. */
  readonly fedFrom: string | null;
  readonly path: readonly string[];
  /** For a load the elements from it back to a source. */
  readonly backPath: readonly string[];
}

export interface SneakPathsResult {
  /** Every state as it is, then with each fault. */
  readonly cases: readonly SneakCase[];
  /** What is alive although it ought to be dead, the most volts first. */
  readonly unwanted: readonly SneakPath[];
  /** One check a case in which something ought to be dead. */
  readonly checks: readonly Check[];
  readonly decidedBy: string;
}

/**
 * What is alive in each state and after each fault, by which path, and which relays are held in.
 *
 * Use it for the table "what is alive when": key off, isolator open, one fuse out, one ground lost. It finds what feeds
 * back through lamps, coils, motors and diodes, because each case is solved as one network. It does not know of
 * electronics that feed their supply from their inputs, unless those are drawn as diodes.
 *
 * $$\text{alive} \iff |V| > V_\mathrm{alive} \qquad \text{held} \iff |V_\mathrm{coil}| \ge V_\mathrm{hold}$$
 *
 * Relays that were in let go until none is left that cannot hold; relays that were out pull in until none is left that
 * can. A path is the one of least ohms along which the volts only fall.
 *
 * @param input network, states, faults, relays, volts that count as alive, what solves
 * @returns each case with its nodes, loads, relays and paths; what is alive although it ought to be dead
 * @throws InputError when the network is not whole or a name is unknown; ConvergenceError when loads do not settle
 * @source circuit-theory
 * @example sneakPaths({ network: { reference: 'post', branches: [], sources: [{ name: 'battery', from: 'post', to: 'plus', voltageV: 12, resistanceOhm: 0.01 }], switches: [{ name: 'key', from: 'plus', to: 'ignition', closed: true, resistanceOhm: 0.01 }], loads: [{ name: 'coil', from: 'ignition', to: 'post', load: { kind: 'resistance', resistanceOhm: 80 } }, { name: 'lamp', from: 'plus', to: 'ignition', load: { kind: 'resistance', resistanceOhm: 40 } }] }, states: [{ name: 'key off', open: ['key'], relaysBefore: 'energised', deadNodes: ['ignition'] }], faults: [], relays: [{ coil: 'coil', pickUpV: 7, holdV: 2 }], aliveV: 1, by: solveNetwork }).unwanted[0].path //=> ['lamp']
 */
export function sneakPaths(input: SneakPathsInput): SneakPathsResult {
  const fn = 'sneakPaths';
  guard(fn, input);
  const { states, faults, aliveV } = input;
  const cases = states.flatMap((state) => [null, ...faults].map((fault) => sneakCase(input, state, fault)));
  const stateOf = new Map(states.map((state) => [state.name, state]));
  const found = cases.map((each) => unwantedOf(each, stateOf.get(each.state) as SneakState));
  const checks = cases.flatMap(({ state, fault }, i) => {
    const { deadNodes = [], deadLoads = [] } = stateOf.get(state) as SneakState;
    if (deadNodes.length + deadLoads.length === 0) return [];
    const { worst, unwanted } = found[i] as (typeof found)[number];
    return [
      makeCheck({
        name: `${state}${fault === null ? '' : `, ${fault}`}: volts where there ought to be none`,
        value: worst,
        limit: aliveV,
        unit: 'V',
        sense: 'atMost',
        source: 'given-by-caller',
        sourceStatus: 'derived',
        ...(unwanted.length > 0 ? { because: unwanted.map(({ name }) => name).join(', ') } : {}),
      }),
    ];
  });
  return {
    cases,
    unwanted: found.flatMap(({ unwanted }) => unwanted).sort((p, q) => Math.abs(q.voltageV) - Math.abs(p.voltageV)),
    checks,
    decidedBy: tightestCheck(checks)?.name ?? '',
  };
}

/** What of a case ought to be dead and is not, and the most volts of all that ought to be dead. */
function unwantedOf(
  { state, fault, nodes, loads }: SneakCase,
  { deadNodes = [], deadLoads = [] }: SneakState,
): { readonly worst: number; readonly unwanted: readonly SneakPath[] } {
  let worst = 0;
  const unwanted: SneakPath[] = [];
  for (const { node, voltageV, alive, fedFrom, path } of nodes) {
    if (voltageV === null || !deadNodes.includes(node)) continue;
    worst = Math.max(worst, Math.abs(voltageV));
    if (alive) unwanted.push({ state, fault, kind: 'node', name: node, voltageV, fedFrom, path, backPath: [] });
  }
  for (const { name, voltageV, alive, fedFrom, path, backPath } of loads) {
    if (voltageV === null || !deadLoads.includes(name)) continue;
    worst = Math.max(worst, Math.abs(voltageV));
    if (alive) unwanted.push({ state, fault, kind: 'load', name, voltageV, fedFrom, path, backPath });
  }
  return { worst, unwanted };
}

function guard(fn: string, input: SneakPathsInput): void {
  needInput(fn, input);
  const { network, states, faults, relays } = input;
  needMoreThan(fn, 'aliveV', input.aliveV);
  needObject(fn, 'network', network);
  needWholeNetwork(fn, network);
  const names = namesOf(network);
  const loads = new Set((network.loads ?? []).map(({ name }) => name));
  const nodes = endsOf(network);
  needList(fn, 'states', states, 1);
  const stateNames = new Set<string>();
  states.forEach((state, i) => {
    const at = `states[${i}]`;
    needChange(fn, at, state, names);
    needOneOf(fn, `${at}.relaysBefore`, state.relaysBefore, ['energised', 'released']);
    if (state.deadNodes !== undefined) needKnown(fn, `${at}.deadNodes`, state.deadNodes, nodes);
    if (state.deadLoads !== undefined) needKnown(fn, `${at}.deadLoads`, state.deadLoads, loads);
    needOwnName(fn, `${at}.name`, state.name, stateNames);
  });
  needList(fn, 'faults', faults);
  needFunction(fn, 'by', input.by, 'solveNetwork');
  const faultNames = new Set<string>();
  faults.forEach((fault, i) => {
    needChange(fn, `faults[${i}]`, fault, names);
    needOwnName(fn, `faults[${i}].name`, fault.name, faultNames);
  });
  needList(fn, 'relays', relays);
  relays.forEach((relay, i) => {
    const at = `relays[${i}]`;
    needObject(fn, at, relay);
    if (!loads.has(relay.coil)) needOneOf(fn, `${at}.coil`, relay.coil, [...loads]);
    needMoreThan(fn, `${at}.pickUpV`, relay.pickUpV);
    needMoreThan(fn, `${at}.holdV`, relay.holdV);
    if (relay.holdV > relay.pickUpV) {
      throw new InputError(fn, `${at}.holdV`, 'atMost', relay.holdV, `must be at most pickUpV (${relay.pickUpV} V)`);
    }
    if (relay.contacts !== undefined) needList(fn, `${at}.contacts`, relay.contacts);
    relay.contacts?.forEach((contact, k) => {
      needObject(fn, `${at}.contacts[${k}]`, contact);
      if (!names.switches.has(contact.switch)) {
        needOneOf(fn, `${at}.contacts[${k}].switch`, contact.switch, [...names.switches]);
      }
      needOneOf(fn, `${at}.contacts[${k}].closedWhile`, contact.closedWhile, ['energised', 'released']);
    });
  });
}
