import { InputError } from '../error/index.js';
import { needFunction, needInput, needList, needObject, needOneOf, needOwnName, needText } from '../error/guard.js';
import type { Network } from './element.js';
import type { SymmetricFactor } from '../number/factor-symmetric.js';
import { circuitOf } from './circuit.js';
import { heldNetwork, isLinear } from './held-network.js';
import { endsOf, needWholeNetwork } from './network-guard.js';
import type { solveNetwork } from './solve-network.js';
import { wire } from './wire.js';
import { drivenByEmf } from './wiring.js';

/** Two nodes whose difference matters: a sensor's ground and its controller's, a lamp's ends. */
export interface WatchedPoint {
  readonly name: string;
  /** The node that is watched. */
  readonly node: string;
  /** The node that its volts are counted from: the reference, or a controller's ground. */
  readonly against: string;
}

export interface PrepareGroundFaultsInput {
  /** The network as it is when nothing is lost. */
  readonly network: Network;
  /** Names of the branches that are taken away: each of above 0 Ω. */
  readonly grounds: readonly string[];
  readonly watched: readonly WatchedPoint[];
  /** Settles what is no resistance: `solveNetwork`. */
  readonly by: typeof solveNetwork;
}

/** A network factored once, and where its grounds and watched points lie in it: data for `groundFaultsEach`. */
export interface PreparedGroundFaults {
  /** The network as it is held: resistances and given currents alone. */
  readonly network: Network;
  /** Names of all nodes, the reference first, in the order of the results. */
  readonly nodes: readonly string[];
  /** Unknown that the volts of each node hang on (−1: those of the reference, −2: it has none). */
  readonly unknown: Int32Array;
  readonly factor: SymmetricFactor;
  /** Volts of each node with nothing lost; 0 where `loose` says that it has none. */
  readonly intactV: Float64Array;
  /** 1 for nodes that nothing at all ties to the reference. */
  readonly loose: Uint8Array;
  readonly grounds: readonly string[];
  /** Unknowns at the ends of each ground (−1: the reference), its conductance in 1/Ω, and its current in A. */
  readonly groundFrom: Int32Array;
  readonly groundTo: Int32Array;
  readonly groundPerOhm: Float64Array;
  readonly groundA: Float64Array;
  /** Unknowns of the watched points (−1: the reference, −2: no volts). */
  readonly watchedNode: Int32Array;
  readonly watchedAgainst: Int32Array;
}

/**
 * Solves a network once and factors its equations, so that `groundFaultsEach` can take away its grounds one by one.
 *
 * Use it where the same network is asked again and again, or is large. For an answer with limits and names take
 * `groundFaults`.
 *
 * $$G v = i \qquad G = L D L^\mathsf{T}$$
 *
 * Loads that are neither a resistance nor a given current are held at the resistance that they have in the intact
 * network, diodes at their state.
 *
 * @param input network, names of the grounds, watched points, what settles loads
 * @returns the factored network and the places of grounds and watched points in it, as data
 * @throws InputError when the network is not whole, a name is unknown or a ground has 0 Ω
 * @source circuit-theory
 * @example prepareGroundFaults({ network: { reference: 'post', branches: [{ name: 'strap', from: 'engine', to: 'post', resistanceOhm: 0.001 }, { name: 'cable', from: 'engine', to: 'post', resistanceOhm: 0.019 }], sources: [{ name: 'battery', from: 'post', to: 'plus', voltageV: 12, resistanceOhm: 0.01 }], loads: [{ name: 'starter', from: 'plus', to: 'engine', load: { kind: 'constant-current', currentA: 200 } }], settle: settleNetwork }, grounds: ['strap'], watched: [], by: solveNetwork }).groundA[0] //=> 190
 */
export function prepareGroundFaults(input: PrepareGroundFaultsInput): PreparedGroundFaults {
  const fn = 'prepareGroundFaults';
  needInput(fn, input);
  const { network, grounds, watched, by } = input;
  needObject(fn, 'network', network);
  needWholeNetwork(fn, network);
  needGrounds(fn, network, grounds);
  needWatched(fn, network, watched);
  grounds.forEach((name, i) => {
    if (network.branches.find((each) => each.name === name)?.resistanceOhm !== 0) return;
    throw new InputError(fn, `grounds[${i}]`, 'above', name, 'must be a branch of above 0 Ω');
  });
  needFunction(fn, 'by', by, 'solveNetwork');
  const held = isLinear(network) ? network : heldNetwork(network, by(network));
  return prepare(fn, held, grounds, watched);
}

function prepare(
  fn: string,
  network: Network,
  grounds: readonly string[],
  watched: readonly WatchedPoint[],
): PreparedGroundFaults {
  const wiring = wire(fn, network);
  const { nodes, joined, joinedFrom, joinedTo, offsetV, perOhm, branchOf } = wiring;
  const drivenA = drivenByEmf(wiring, perOhm);
  network.loads?.forEach(({ load }, i) => {
    if (load.kind === 'constant-current') drivenA[branchOf.loads[i] as number] = load.currentA;
  });
  const { parts, analysis, solve } = circuitOf(wiring, perOhm, null);
  const solved = solve(perOhm, drivenA);
  // Each part is held at a node and tied by resistances alone: the equations always have an answer.
  if (solved === null) throw new Error('node equations without an answer');
  const unknownAt = (at: number): number => (parts.partOf[at] === 0 ? (analysis.unknown[at] as number) : -2);
  const unknown = joined.map(unknownAt);
  const numberOf = new Map(nodes.map((node, i) => [node, i]));
  const unknownOf = (node: string): number => unknown[numberOf.get(node) as number] as number;
  const place = new Map(network.branches.map(({ name }, i) => [name, branchOf.branches[i] as number]));
  const lost = Int32Array.from(grounds, (name) => place.get(name) as number);
  return {
    network,
    nodes,
    unknown,
    factor: solved.factor,
    intactV: Float64Array.from(nodes, (_, v) =>
      unknown[v] === -2 ? 0 : (solved.nodeV[joined[v] as number] as number) + (offsetV[v] as number),
    ),
    loose: Uint8Array.from(unknown, (u) => (u === -2 ? 1 : 0)),
    grounds,
    groundFrom: lost.map((k) => unknownAt(joinedFrom[k] as number)),
    groundTo: lost.map((k) => unknownAt(joinedTo[k] as number)),
    groundPerOhm: Float64Array.from(lost, (k) => perOhm[k] as number),
    groundA: Float64Array.from(lost, (k) => solved.branchA[k] as number),
    watchedNode: Int32Array.from(watched, ({ node }) => unknownOf(node)),
    watchedAgainst: Int32Array.from(watched, ({ against }) => unknownOf(against)),
  };
}

/** Throws unless each is the name of a branch, and none stands twice. */
export function needGrounds(fn: string, network: Network, grounds: readonly string[]): void {
  needList(fn, 'grounds', grounds);
  const known = new Set(network.branches.map(({ name }) => name));
  const names = new Set<string>();
  grounds.forEach((name, i) => {
    if (!known.has(name)) needOneOf(fn, `grounds[${i}]`, name, [...known]);
    needOwnName(fn, `grounds[${i}]`, name, names);
  });
}

/** Throws unless each watched point is whole and names nodes of the network. */
export function needWatched(fn: string, network: Network, watched: readonly WatchedPoint[]): void {
  needList(fn, 'watched', watched);
  const nodes = endsOf(network);
  watched.forEach((each, i) => {
    needObject(fn, `watched[${i}]`, each);
    needText(fn, `watched[${i}].name`, each.name);
    for (const field of ['node', 'against'] as const) {
      if (!nodes.has(each[field])) needOneOf(fn, `watched[${i}].${field}`, each[field], [...nodes]);
    }
  });
}
