import { InputError } from '../error/index.js';
import { needFunction } from '../error/guard.js';
import { circuitOf } from './circuit.js';
import type { Network } from './element.js';
import { idealCurrents } from './ideal-currents.js';
import { type NodesAndIslands, nodesAndIslands } from './islands.js';
import { needWholeNetwork } from './network-guard.js';
import type { SolvedBranch, DiodeState, SolveNetworkResult, SourceState, SwitchState } from './network-result.js';
import { settleLinear } from './settle-linear.js';
import type { SettledNetwork } from './settled.js';
import { wire } from './wire.js';
import type { Wiring } from './wiring.js';

/**
 * Solves a direct-current network of wires, grounds, sources, loads, diodes and switches: volts everywhere, current and
 * power of each element, and what hangs in the air.
 *
 * Use it where circuits share wires or grounds, or feed one another. A single feed is told faster and with its parts by
 * `solvePath`. It is the state once all has settled: nothing starts, nothing switches, no coil or capacitor charges.
 *
 * $$\sum_k g_k\,(v_i - v_k + E_k) + \sum_l I_l(v_i - v_l) = 0 \quad\text{at each node } i$$
 *
 * **Signs.** Current is positive from `from` to `to`: in a load from its positive end, in a diode from the anode, in a
 * source out of its positive end `to`. A battery that is charged has a negative current and power. Volts are above the
 * reference; the drop of a branch is `from` above `to`.
 *
 * **0 Ω** makes one node of two, and an ideal source of two nodes with known volts between. Their currents follow from
 * the rest, and are null on a loop of nothing but 0 Ω. A diode of 0 Ω counts as 1 µΩ while it conducts.
 *
 * Loads that are resistances need nothing more. For diodes and loads of every other kind hand in `settle: settleNetwork`,
 * which says how these come to rest.
 *
 * @param input reference node, branches, sources, and where there are any loads, diodes and switches
 * @returns state of each node, branch, source, load, diode and switch, islands, power balance
 * @throws InputError when a field is missing or out of range, a name stands twice, sources without resistance drive a
 * loop of 0 Ω, or `settle` is missing; ConvergenceError when the states of diodes go round (it names them) or loads do
 * not settle
 * @source circuit-theory (node equations; elimination)
 * @example solveNetwork({ reference: 'post', branches: [{ name: 'strap', from: 'engine', to: 'post', resistanceOhm: 0.01 }], sources: [{ name: 'battery', from: 'post', to: 'plus', voltageV: 12, resistanceOhm: 0.02 }], loads: [{ name: 'starter', from: 'plus', to: 'engine', load: { kind: 'resistance', resistanceOhm: 0.03 } }] }).nodes[2].voltageV //=> 8
 */
export function solveNetwork(input: Network): SolveNetworkResult {
  const fn = 'solveNetwork';
  needWholeNetwork(fn, input);
  if (input.settle !== undefined) needFunction(fn, 'settle', input.settle, 'settleNetwork');
  const wiring = wire(fn, input);
  const settle = input.settle ?? onlyResistances(fn, input);
  const settled = settle({ fn, network: input, wiring, circuitOf: (g, before) => circuitOf(wiring, g, before) });
  const places = nodesAndIslands(input, wiring, settled);
  const read = reader(wiring, settled, places);
  const branches = input.branches.map(({ name, ...ends }, i): SolvedBranch => {
    const { currentA, lossA } = read.current('branches', i);
    return { name, currentA, dropV: read.drop(ends, lossA) ?? 0, lossW: lossA * lossA * ends.resistanceOhm };
  });
  const sources = input.sources.map((source, i): SourceState & { readonly givenW: number } => {
    const { currentA, lossA } = read.current('sources', i);
    const voltageV = source.voltageV - lossA * source.resistanceOhm;
    const powerW = currentA === null ? null : voltageV * currentA;
    const lossW = lossA * lossA * source.resistanceOhm;
    return { name: source.name, currentA, voltageV, powerW, lossW, givenW: source.voltageV * lossA };
  });
  const { loads } = settled;
  const diodes = (input.diodes ?? []).map(({ name, ...ends }, i): DiodeState => {
    const conducts = settled.conducts[i] === 1;
    const lossA = conducts ? read.current('diodes', i).lossA : 0;
    const dropV = read.drop({ ...ends, resistanceOhm: 0 }, 0);
    return { name, conducts, currentA: lossA, dropV, lossW: lossA * (dropV ?? 0) };
  });
  const switches = (input.switches ?? []).map(({ name, closed, ...ends }, i): SwitchState => {
    const { currentA, lossA } = closed ? read.current('switches', i) : { currentA: 0, lossA: 0 };
    const dropV = closed ? read.drop(ends, lossA) : read.drop({ ...ends, resistanceOhm: 0 }, 0);
    return { name, closed, currentA, dropV, lossW: lossA * lossA * (closed ? ends.resistanceOhm : 0) };
  });
  const sum = (list: readonly number[]): number => list.reduce((a, b) => a + b, 0);
  const givenW = sum(sources.map((each) => each.givenW));
  const lostW = sum([...branches, ...sources, ...diodes, ...switches].map(({ lossW }) => lossW));
  const usedW = sum(loads.map(({ powerW }) => powerW));
  return {
    nodes: places.nodes,
    islands: places.islands,
    branches,
    sources: sources.map(({ givenW: _, ...source }) => source),
    loads,
    diodes,
    switches,
    balance: { givenW, lostW, usedW, differenceW: givenW - lostW - usedW },
    stateCount: settled.stateCount,
    stepCount: settled.stepCount,
  };
}

/** Throws where there is more than resistances to settle. */
function onlyResistances(fn: string, { loads = [], diodes = [] }: Network): typeof settleLinear {
  const other = [...loads.filter(({ load }) => load.kind !== 'resistance'), ...diodes][0];
  if (other === undefined) return settleLinear;
  const must = `is required: '${other.name}' is no resistance`;
  throw new InputError(fn, 'settle', 'missing', undefined, must, 'hand in settleNetwork');
}

interface Ends {
  readonly from: string;
  readonly to: string;
  readonly resistanceOhm: number;
}

interface Reader {
  /** Current of an element, null where it cannot be told, and one that suits the balance all the same. */
  readonly current: (
    list: 'branches' | 'sources' | 'diodes' | 'switches',
    index: number,
  ) => { readonly currentA: number | null; readonly lossA: number };
  /** Volts of `from` above `to`: current times resistance, which keeps more digits, or the difference of the nodes. */
  readonly drop: (ends: Ends, currentA: number) => number | null;
}

function reader(wiring: Wiring, settled: SettledNetwork, { localV, islandOf }: NodesAndIslands): Reader {
  const { solved } = settled;
  const ideal = idealCurrents(wiring, solved.branchA);
  const idealOf = new Map(wiring.ideal.map(({ list, index }, e) => [`${list} ${index}`, e]));
  const indexOf = new Map(wiring.nodes.map((name, v) => [name, v]));
  return {
    current: (list, index) => {
      const k = wiring.branchOf[list][index] as number;
      if (k >= 0) return { currentA: solved.branchA[k] as number, lossA: solved.branchA[k] as number };
      const e = idealOf.get(`${list} ${index}`) as number;
      const lossA = ideal.currentA[e] as number;
      return { currentA: ideal.inLoop[e] === 1 ? null : lossA, lossA };
    },
    drop: ({ from, to, resistanceOhm }, currentA) => {
      if (resistanceOhm > 0) return currentA * resistanceOhm;
      const [a, b] = [indexOf.get(from) as number, indexOf.get(to) as number];
      return islandOf[a] === islandOf[b] ? (localV[a] as number) - (localV[b] as number) : null;
    },
  };
}
