import { type Check, tightestCheck } from '../check/index.js';
import { InputError } from '../error/index.js';
import { needMoreThan } from '../error/bounded.js';
import { needFlag, needFunction, needInput, needList, needObject, needOneOf } from '../error/guard.js';
import type { Network } from './element.js';
import { caseReader } from './ground-faults-read.js';
import { islandsOf } from './ground-faults-islands.js';
import {
  type GroundFaultCase,
  judge,
  type LimitedBranch,
  tightestOf,
  type WatchedGround,
  worstFirst,
} from './ground-faults-judge.js';
import { needGrounds, needWatched, type prepareGroundFaults } from './ground-faults-prepare.js';
import { needWholeNetwork } from './network-guard.js';
import type { solveNetwork } from './solve-network.js';

export interface GroundFaultsInput {
  /** The network as it is when nothing is lost. */
  readonly network: Network;
  /** Names of the branches that are taken away in turn: straps, ground wires, body paths. */
  readonly grounds: readonly string[];
  /** Whether every two of them are taken away as well. */
  readonly pairs: boolean;
  readonly watched: readonly WatchedGround[];
  readonly limited: readonly LimitedBranch[];
  /** Shifts of every node, or of the watched points only: the latter is faster. */
  readonly detail: 'every-node' | 'watched';
  /**
   * Whether loads that are neither a resistance nor a given current settle again in every case. Otherwise they are held
   * at the resistance that they have in the intact network. Without any such load and without diodes it is one and the
   * same.
   */
  readonly exact: boolean;
  /** Factors the intact network: `prepareGroundFaults`. */
  readonly prepare: typeof prepareGroundFaults;
  /** Solves what an update cannot tell: `solveNetwork`. */
  readonly by: typeof solveNetwork;
}

export interface GroundFaultsResult {
  /** Names of all nodes, the reference first. */
  readonly nodes: readonly string[];
  /** Volts of each in the intact network, null where nothing ties it to the reference. */
  readonly intactV: readonly (number | null)[];
  /** Nodes that even the intact network ties to the reference by no metal and no source. */
  readonly looseNodes: readonly string[];
  /** With nothing lost: offsets of the watched points and currents of the limited branches. */
  readonly intact: GroundFaultCase;
  /** Each ground, and each pair where asked for, the worst first. */
  readonly cases: readonly GroundFaultCase[];
  /** The tightest check of the intact network and of each case. */
  readonly checks: readonly Check[];
  readonly decidedBy: string;
}

/**
 * Every ground lost in turn: what each node and sensor sees, what is pushed through wires that were not laid for it,
 * and what is cut off.
 *
 * Use it to find out how many grounds are enough. It takes away branches, not joints that have merely grown worse: for
 * those raise the resistance and call again. What a load does while it switches, and currents in the metal of the body
 * between its studs, are not in it.
 *
 * $$\Delta v = \frac{I}{1 - g\,u^\mathsf{T} G^{-1} u}\; G^{-1} u \qquad
 * \Delta v = G^{-1} U (1 - D\,U^\mathsf{T} G^{-1} U)^{-1} I$$
 *
 * for one ground and for two, with G the matrix of the intact network, factored once. Where less than 1e-5 of a way is
 * left beside a ground, the case is factored anew. Where a diode would change its state, or a given current find no
 * volts, loads and diodes settle again.
 *
 * @param input network, grounds, watched points with what they bear, branches with their limits, what prepares and solves
 * @returns shifts in mV, currents in A, nodes cut off, the worst case first
 * @throws InputError when the network is not whole, a name is unknown, or a limited branch has 0 Ω; ConvergenceError
 * when loads do not settle
 * @source sherman-morrison-1950, tarjan-1972 (nodes cut off)
 * @example groundFaults({ network: { reference: 'post', branches: [{ name: 'strap', from: 'engine', to: 'post', resistanceOhm: 0.001 }, { name: 'cable', from: 'engine', to: 'post', resistanceOhm: 0.019 }], sources: [{ name: 'battery', from: 'post', to: 'plus', voltageV: 12, resistanceOhm: 0.01 }], loads: [{ name: 'starter', from: 'plus', to: 'engine', load: { kind: 'resistance', resistanceOhm: 0.031 } }] }, grounds: ['strap'], pairs: false, watched: [], limited: [{ branch: 'cable', limitA: 5 }], detail: 'watched', exact: false, prepare: prepareGroundFaults, by: solveNetwork }).cases[0].limited[0].currentA //=> 200
 */
export function groundFaults(input: GroundFaultsInput): GroundFaultsResult {
  const fn = 'groundFaults';
  guard(fn, input);
  const { network, grounds, pairs } = input;
  const islands = islandsOf(network);
  const read = caseReader(input);
  const intact = judge(read([], []), input);
  const cases = grounds.map((name) => judge(read([name], islands.without(name)), input));
  if (pairs) {
    grounds.forEach((first, i) => {
      for (const second of grounds.slice(i + 1)) {
        cases.push(judge(read([first, second], islands.withoutBoth(first, second)), input));
      }
    });
  }
  const sorted = worstFirst(cases);
  const own = tightestCheck(intact.checks);
  const checks = [...(own === null ? [] : [{ ...own, name: `nothing lost: ${own.name}` }]), ...tightestOf(sorted)];
  return {
    nodes: read.nodes,
    intactV: read.intactV,
    looseNodes: islands.loose,
    intact,
    cases: sorted,
    checks,
    decidedBy: tightestCheck(checks)?.name ?? '',
  };
}

function guard(fn: string, input: GroundFaultsInput): void {
  needInput(fn, input);
  const { network, grounds, watched, limited } = input;
  needObject(fn, 'network', network);
  needWholeNetwork(fn, network);
  needGrounds(fn, network, grounds);
  needWatched(fn, network, watched);
  watched.forEach(({ permittedMv }, i) => {
    needMoreThan(fn, `watched[${i}].permittedMv`, permittedMv);
  });
  needList(fn, 'limited', limited);
  const branchOf = new Map(network.branches.map((each) => [each.name, each]));
  limited.forEach((each, i) => {
    needObject(fn, `limited[${i}]`, each);
    const branch = branchOf.get(each.branch);
    if (branch === undefined) needOneOf(fn, `limited[${i}].branch`, each.branch, [...branchOf.keys()]);
    if (branch?.resistanceOhm === 0) {
      const must = 'must be a branch of above 0 Ω';
      throw new InputError(fn, `limited[${i}].branch`, 'above', each.branch, must, 'its current is not to be told');
    }
    needMoreThan(fn, `limited[${i}].limitA`, each.limitA);
  });
  needOneOf(fn, 'detail', input.detail, ['every-node', 'watched']);
  for (const field of ['pairs', 'exact'] as const) {
    needFlag(fn, field, input[field]);
  }
  needFunction(fn, 'prepare', input.prepare, 'prepareGroundFaults');
  needFunction(fn, 'by', input.by, 'solveNetwork');
}
