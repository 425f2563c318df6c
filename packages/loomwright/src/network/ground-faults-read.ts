import type { Network } from './element.js';
import type { GroundFaultsInput } from './ground-faults.js';
import { caseSolver, type ShiftRow } from './ground-faults-case.js';
import type { CutLoad, GroundFaultCase } from './ground-faults-judge.js';
import { isLinear, linearNet, loadAt, type OperatingPoint, voltsAt } from './ground-faults-net.js';
import { operatingPoint, settledNetwork } from './ground-faults-point.js';
import { prepare } from './ground-faults-prepare.js';
import { wire, type Wiring } from './wiring.js';

/** A case without its verdict. */
type Found = Omit<GroundFaultCase, 'checks' | 'decidedBy'>;

/** Reads what comes of losing grounds, with the nodes that are then cut off. */
export interface CaseReader {
  (lost: readonly string[], cutOff: readonly string[]): Found;
  readonly nodes: readonly string[];
  readonly intactV: readonly (number | null)[];
}

/** One case solved: volts by the number of a node, differences by row, currents of loads at their volts. */
interface Solved {
  readonly at: (node: number) => number | null;
  readonly between: (row: number) => number | null;
  readonly loadA: (load: number, voltageV: number) => number;
  readonly solvedBy: Found['solvedBy'];
}

/** Prepares the intact network once, for all its cases. */
export function caseReader(fn: string, input: GroundFaultsInput): CaseReader {
  const { network, grounds, watched, limited, detail, exact } = input;
  const settles = isLinear(network);
  const point = settles ? null : operatingPoint(network);
  const wiring = wire(fn, network);
  const { nodes, branchOf, from, to } = wiring;
  const placeOf = new Map(network.branches.map(({ name }, i) => [name, branchOf.branches[i] as number]));
  // A ground of 0 Ω joins two nodes: without it the network is wired anew.
  const byUpdate = grounds.filter((name) => placeOf.get(name) !== -1);
  const prepared = prepare(wiring, network, point, byUpdate, watched);
  const { net } = prepared;
  const numberOf = new Map(nodes.map((node, i) => [node, i]));
  const intactV = (node: number): number | null => voltsAt(net, node);
  const ends = rowsOf(network, wiring, input, numberOf);
  const unknownOf = (node: number): number => net.unknown[node] as number;
  const rows = ends.map(([node, against]): ShiftRow => ({ node: unknownOf(node), against: unknownOf(against) }));
  const intactOf = ends.map(([node, against]) => minus(intactV(node), intactV(against)));
  const everyNode = detail === 'every-node';
  const update = caseSolver(prepared, rows, everyNode || input.pairs);
  const holds = holdsOf(network, point, watched.length + limited.length);
  const loadA = (load: number, voltageV: number): number => loadAt(net, load, voltageV);

  const byUpdating = (names: readonly string[]): Solved | null => {
    const places = names.map((name) => byUpdate.indexOf(name));
    const shift = places.includes(-1) ? null : update(places);
    if (shift === null) return null;
    return {
      at: (node) => plus(intactV(node), shift.unknown(unknownOf(node))),
      between: (r) => plus(intactOf[r] ?? null, shift.row(r)),
      loadA,
      solvedBy: 'update',
    };
  };
  const byNodes = (at: Solved['at'], currents: Solved['loadA'], solvedBy: Found['solvedBy']): Solved => ({
    at,
    between: (r) => {
      const [node, against] = ends[r] as readonly [number, number];
      return minus(at(node), at(against));
    },
    loadA: currents,
    solvedBy,
  });
  const anew = (names: readonly string[]): Solved => {
    const lost = names.map((name) => placeOf.get(name) as number);
    if (!lost.includes(-1)) {
      const left = linearNet(wiring, network, point, lost);
      return byNodes((node) => voltsAt(left, node), loadA, 'anew');
    }
    const less = without(network, names);
    const left = linearNet(wire(fn, less), less, point, []);
    const there = new Map(left.wiring.nodes.map((node, i) => [node, i]));
    return byNodes((node) => whereKnown(there.get(nodes[node] as string), (i) => voltsAt(left, i)), loadA, 'anew');
  };
  const settled = (names: readonly string[]): Solved => {
    const found = settledNetwork(without(network, names));
    return byNodes(
      (node) => found.nodeV(nodes[node] as string),
      (load) => found.loadA(load),
      'exact',
    );
  };
  const solve = (names: readonly string[]): Solved => {
    if (exact && !settles) return settled(names);
    const fast = byUpdating(names);
    if (fast !== null && holds(fast)) return fast;
    const slow = fast ?? anew(names);
    return holds(slow) ? slow : settled(names);
  };

  const intact: Solved = { at: intactV, between: (r) => intactOf[r] ?? null, loadA, solvedBy: 'update' };
  const read = (lost: readonly string[], cutOff: readonly string[]): Found => {
    const found = lost.length === 0 ? intact : solve(lost);
    return {
      lost,
      solvedBy: found.solvedBy,
      cutOff,
      cutLoads: cutLoads(network, new Set(cutOff), intact, found, [from, to, branchOf.loads]),
      nodeShiftMv: everyNode ? nodes.map((_, node) => inMv(minus(found.at(node), intactV(node)))) : null,
      watched: watched.map(({ name }, r) => ({
        name,
        offsetMv: inMv(found.between(r)),
        shiftMv: inMv(minus(found.between(r), intactOf[r] ?? null)),
      })),
      limited: limited.map(({ branch }, i) => {
        const r = watched.length + i;
        const perOhm = net.perOhm[placeOf.get(branch) as number] as number;
        const across = lost.includes(branch) ? 0 : found.between(r);
        return { branch, currentA: across === null ? null : across * perOhm, intactA: (intactOf[r] ?? 0) * perOhm };
      }),
    };
  };
  return Object.assign(read, { nodes, intactV: nodes.map((_, node) => intactV(node)) });
}

const inMv = (v: number | null): number | null => (v === null ? null : v * 1000);
const minus = (a: number | null, b: number | null): number | null => (a === null || b === null ? null : a - b);
const plus = (a: number | null, b: number): number | null => (a === null ? null : a + b);
const whereKnown = (i: number | undefined, of: (i: number) => number | null): number | null =>
  i === undefined ? null : of(i);
const without = (network: Network, names: readonly string[]): Network => ({
  ...network,
  branches: network.branches.filter(({ name }) => !names.includes(name)),
});

/** What every case asks for: watched points, limited branches, and what tells whether an update holds. */
function rowsOf(
  { branches, loads = [], diodes = [] }: Network,
  { from, to, branchOf }: Wiring,
  { watched, limited }: GroundFaultsInput,
  numberOf: ReadonlyMap<string, number>,
): (readonly [number, number])[] {
  const ends = (k: number): readonly [number, number] => [from[k] as number, to[k] as number];
  const place = new Map(branches.map(({ name }, i) => [name, branchOf.branches[i] as number]));
  return [
    ...watched.map(({ node, against }) => [numberOf.get(node) as number, numberOf.get(against) as number] as const),
    ...limited.map(({ branch }) => ends(place.get(branch) as number)),
    ...loads.flatMap(({ load }, i) => (load.kind === 'constant-current' ? [ends(branchOf.loads[i] as number)] : [])),
    ...diodes.map((_, i) => ends(branchOf.diodes[i] as number)),
  ];
}

/** Whether a case leaves every given current some volts, and every diode its state. */
function holdsOf(
  { loads = [], diodes = [] }: Network,
  point: OperatingPoint | null,
  first: number,
): (found: Solved) => boolean {
  const given = loads.filter(({ load }) => load.kind === 'constant-current').length;
  return ({ between }) => {
    for (let r = first; r < first + given; r++) {
      const voltageV = between(r);
      if (voltageV !== null && voltageV <= 0) return false;
    }
    return diodes.every(({ forwardV }, i) => {
      const voltageV = between(first + given + i);
      if (voltageV === null) return true;
      return point?.conducts[i] === true ? voltageV >= forwardV : voltageV <= forwardV;
    });
  };
}

/** What the loads on nodes that were cut off have left. */
function cutLoads(
  { loads = [] }: Network,
  off: ReadonlySet<string>,
  intact: Solved,
  found: Solved,
  [starts, ends, branchOf]: readonly [Int32Array, Int32Array, Int32Array],
): CutLoad[] {
  if (off.size === 0) return [];
  return loads.flatMap(({ name, from, to }, i): CutLoad[] => {
    if (!off.has(from) && !off.has(to)) return [];
    const k = branchOf[i] as number;
    const [start, end] = [starts[k] as number, ends[k] as number];
    const intactV = minus(intact.at(start), intact.at(end));
    const voltageV = minus(found.at(start), found.at(end));
    const was = intactV === null ? 0 : Math.abs(intact.loadA(i, intactV));
    const currentA = voltageV === null ? null : found.loadA(i, voltageV);
    return [{ name, intactV, voltageV, currentA, dead: currentA === null || Math.abs(currentA) <= 1e-9 * was }];
  });
}
