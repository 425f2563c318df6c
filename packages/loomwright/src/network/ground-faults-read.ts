import type { Network } from './element.js';
import type { GroundFaultsInput } from './ground-faults.js';
import { caseSolver, type ShiftRow } from './ground-faults-case.js';
import type { CutLoad, GroundFaultCase } from './ground-faults-judge.js';
import { isHeldAlready } from './held-network.js';

/** A case without its verdict. */
type Found = Omit<GroundFaultCase, 'checks' | 'decidedBy'>;

/** Reads what comes of losing grounds, with the nodes that are then cut off. */
export interface CaseReader {
  (lost: readonly string[], cutOff: readonly string[]): Found;
  readonly nodes: readonly string[];
  readonly intactV: readonly (number | null)[];
}

/** One case solved: volts of a node, differences by row, currents of loads at their volts. */
interface Solved {
  readonly at: (node: string) => number | null;
  readonly between: (row: number) => number | null;
  readonly loadA: (load: number, voltageV: number) => number;
  readonly solvedBy: Found['solvedBy'];
}

/** What every case asks for: watched points, ends of limited branches, and what tells whether an update holds. */
interface Row {
  readonly name: string;
  readonly node: string;
  readonly against: string;
}

/** Prepares the intact network once, for all its cases. */
export function caseReader(input: GroundFaultsInput): CaseReader {
  const { network, grounds, watched, limited, detail, exact, prepare, by } = input;
  const ohmOf = new Map(network.branches.map((each) => [each.name, each.resistanceOhm]));
  const rows = rowsOf(input);
  // A ground of 0 Ω joins two nodes: without it the network is solved anew.
  const byUpdate = grounds.filter((name) => ohmOf.get(name) !== 0);
  const prepared = prepare({ network, grounds: byUpdate, watched: rows, by });
  const { network: held, nodes, unknown, watchedNode, watchedAgainst, loose } = prepared;
  const numberOf = new Map(nodes.map((node, i) => [node, i]));
  const intactV = (node: string): number | null => {
    const v = numberOf.get(node) as number;
    return loose[v] === 1 ? null : (prepared.intactV[v] as number);
  };
  const shifts = rows.map((_, r): ShiftRow => ({
    node: watchedNode[r] as number,
    against: watchedAgainst[r] as number,
  }));
  const intactOf = rows.map(({ node, against }) => minus(intactV(node), intactV(against)));
  const everyNode = detail === 'every-node';
  const update = caseSolver(prepared, shifts, everyNode || input.pairs);
  const { loads = [] } = network;
  const heldLoad = new Map(held.loads?.map(({ name, load }) => [name, load]));
  const heldA = (i: number, voltageV: number): number => {
    const load = heldLoad.get(loads[i]?.name ?? '');
    if (load?.kind === 'constant-current') return load.currentA;
    return load?.kind === 'resistance' ? voltageV / load.resistanceOhm : 0;
  };
  const intact: Solved = { at: intactV, between: (r) => intactOf[r] ?? null, loadA: heldA, solvedBy: 'update' };
  const on = new Set(held.sources.map(({ name }) => name));
  const holds = holdsOf(network, on, watched.length + limited.length);

  const byUpdating = (names: readonly string[]): Solved | null => {
    const places = names.map((name) => byUpdate.indexOf(name));
    const shift = places.includes(-1) ? null : update(places);
    if (shift === null) return null;
    return {
      at: (node) => plus(intactV(node), shift.unknown(unknown[numberOf.get(node) as number] as number)),
      between: (r) => plus(intactOf[r] ?? null, shift.row(r)),
      loadA: heldA,
      solvedBy: 'update',
    };
  };
  const anew = (whole: Network, names: readonly string[], solvedBy: Found['solvedBy']): Solved => {
    const result = by({ ...whole, branches: whole.branches.filter(({ name }) => !names.includes(name)) });
    const volts = new Map(result.nodes.map(({ name, voltageV }) => [name, voltageV]));
    const at = (node: string): number | null => volts.get(node) ?? null;
    return {
      at,
      between: (r) => minus(at((rows[r] as Row).node), at((rows[r] as Row).against)),
      loadA: solvedBy === 'exact' ? (i) => result.loads[i]?.currentA ?? 0 : heldA,
      solvedBy,
    };
  };
  const settles = exact && !isHeldAlready(network);
  const solve = (names: readonly string[]): Solved => {
    const found = settles ? null : (byUpdating(names) ?? anew(held, names, 'anew'));
    return found !== null && holds(found) ? found : anew(network, names, 'exact');
  };

  const read = (lost: readonly string[], cutOff: readonly string[]): Found => {
    const found = lost.length === 0 ? intact : solve(lost);
    return {
      lost,
      solvedBy: found.solvedBy,
      cutOff,
      cutLoads: cutLoads(network, new Set(cutOff), intact, found),
      nodeShiftMv: everyNode ? nodes.map((node) => inMv(minus(found.at(node), intactV(node)))) : null,
      watched: watched.map(({ name }, r) => ({
        name,
        offsetMv: inMv(found.between(r)),
        shiftMv: inMv(minus(found.between(r), intactOf[r] ?? null)),
      })),
      limited: limited.map(({ branch }, i) => {
        const r = watched.length + i;
        const ohm = ohmOf.get(branch) as number;
        const across = lost.includes(branch) ? 0 : found.between(r);
        return { branch, currentA: across === null ? null : across / ohm, intactA: (intactOf[r] ?? 0) / ohm };
      }),
    };
  };
  return Object.assign(read, { nodes, intactV: nodes.map(intactV) });
}

const inMv = (v: number | null): number | null => (v === null ? null : v * 1000);
const minus = (a: number | null, b: number | null): number | null => (a === null || b === null ? null : a - b);
const plus = (a: number | null, b: number): number | null => (a === null ? null : a + b);

type Ends = { readonly name: string; readonly from: string; readonly to: string };
const rowOf = ({ name, from, to }: Ends): Row => ({ name, node: from, against: to });

function rowsOf({ network: { branches, loads = [], diodes = [] }, watched, limited }: GroundFaultsInput): Row[] {
  const branchOf = new Map(branches.map((each) => [each.name, each]));
  return [
    ...watched,
    ...limited.map(({ branch }) => rowOf(branchOf.get(branch) as Ends)),
    ...loads.filter(({ load }) => load.kind === 'constant-current').map(rowOf),
    ...diodes.map(rowOf),
  ];
}

// A diode that a loss leaves with nothing to conduct stands at its forward volts to the last digit, on either side of
// them: by less than this it counts as one that changes its state.
const CLOSE_V = 1e-9;

/** Whether a case leaves every given current some volts, and every diode its state: those that conduct are `on`. */
function holdsOf(
  { loads = [], diodes = [] }: Network,
  on: ReadonlySet<string>,
  first: number,
): (found: Solved) => boolean {
  const given = loads.filter(({ load }) => load.kind === 'constant-current').length;
  return ({ between }) => {
    for (let r = first; r < first + given; r++) {
      const voltageV = between(r);
      if (voltageV !== null && voltageV <= 0) return false;
    }
    return diodes.every(({ name, forwardV }, i) => {
      const voltageV = between(first + given + i);
      if (voltageV === null) return true;
      return on.has(name) ? voltageV > forwardV + CLOSE_V : voltageV <= forwardV;
    });
  };
}

/** What the loads on nodes that were cut off have left. */
function cutLoads({ loads = [] }: Network, off: ReadonlySet<string>, intact: Solved, found: Solved): CutLoad[] {
  if (off.size === 0) return [];
  return loads.flatMap(({ name, from, to }, i): CutLoad[] => {
    if (!off.has(from) && !off.has(to)) return [];
    const intactV = minus(intact.at(from), intact.at(to));
    const voltageV = minus(found.at(from), found.at(to));
    const was = intactV === null ? 0 : Math.abs(intact.loadA(i, intactV));
    const currentA = voltageV === null ? null : found.loadA(i, voltageV);
    return [{ name, intactV, voltageV, currentA, dead: currentA === null || Math.abs(currentA) <= 1e-9 * was }];
  });
}
