import { analyseSymmetric } from '../number/analyse-symmetric.js';
import { factorSymmetric, type SymmetricFactor } from '../number/factor-symmetric.js';
import { solveSymmetric } from '../number/solve-symmetric.js';
import type { Load } from '../load/index.js';
import type { Network } from './element.js';
import { natureOf, restPerOhm } from './load-line.js';
import { diodePerOhm, type Wiring } from './wiring.js';

/** What a network settles at, as far as it is not linear. */
export interface OperatingPoint {
  /** Volts and current of each load, in the order of the network. */
  readonly loads: readonly { readonly voltageV: number; readonly currentA: number }[];
  /** Whether each diode conducts. */
  readonly conducts: readonly boolean[];
}

/** A network with every load held as a resistance or a current and every diode at its state, solved. */
export interface LinearNet {
  readonly wiring: Wiring;
  /** Conductance of each branch of the wiring in 1/Ω, and the given current of each load in A. */
  readonly perOhm: Float64Array;
  readonly givenA: Float64Array;
  /** Unknown that each node's volts hang on, −1 for the reference and what is joined to it, −2 for no volts. */
  readonly unknown: Int32Array;
  readonly factor: SymmetricFactor;
  /** Volts of the unknowns. */
  readonly unknownV: Float64Array;
}

/** Whether a network has one solution without any iteration. */
export function isLinear({ loads = [], diodes = [] }: Network): boolean {
  return (
    diodes.length === 0 && loads.every(({ load }) => load.kind === 'constant-current' || natureOf(load) === 'linear')
  );
}

/**
 * Conductance in 1/Ω of a load: its own, or that at its volts; at no volts that of a lamp at its rated ones, of a
 * motor's winding, and 0 for electronics, which are taken to pass nothing.
 */
export function heldPerOhm(load: Load, { voltageV, currentA }: OperatingPoint['loads'][number]): number {
  if (natureOf(load) !== 'linear' && currentA !== 0 && voltageV !== 0) return currentA / voltageV;
  return restPerOhm(load);
}

/** Builds the node equations of a network held at an operating point, without some of its branches, and solves them. */
export function linearNet(
  wiring: Wiring,
  { loads = [], diodes = [] }: Network,
  point: OperatingPoint | null,
  lost: readonly number[],
): LinearNet {
  const { nodes, joined, joinedFrom, joinedTo, offsetV, from, to, emfV, branchOf } = wiring;
  const perOhm = wiring.perOhm.slice();
  const givenA = Float64Array.from(loads, ({ load }) => (load.kind === 'constant-current' ? load.currentA : 0));
  const still = { voltageV: 0, currentA: 0 };
  loads.forEach(({ load }, i) => {
    perOhm[branchOf.loads[i] as number] =
      load.kind === 'constant-current' ? 0 : heldPerOhm(load, point?.loads[i] ?? still);
  });
  diodes.forEach(({ resistanceOhm }, i) => {
    perOhm[branchOf.diodes[i] as number] = point?.conducts[i] === true ? diodePerOhm(resistanceOhm) : 0;
  });
  for (const branch of lost) perOhm[branch] = 0;
  const { numberOf, count } = numberUnknowns(wiring, perOhm);
  const rowSums = new Float64Array(count);
  const side = new Float64Array(count);
  const rows: number[] = [];
  const columns: number[] = [];
  const values: number[] = [];
  const add = (list: Float64Array, i: number, value: number): void => {
    if (i >= 0) list[i] = (list[i] as number) + value;
  };
  for (let k = 0; k < perOhm.length; k++) {
    const g = perOhm[k] as number;
    const i = numberOf[joinedFrom[k] as number] as number;
    const j = numberOf[joinedTo[k] as number] as number;
    if (g === 0 || i === -2 || i === j) continue;
    if (i >= 0 && j >= 0) {
      rows.push(i);
      columns.push(j);
      values.push(-g);
    } else add(rowSums, Math.max(i, j), g);
    const above = (offsetV[from[k] as number] as number) - (offsetV[to[k] as number] as number);
    const currentA = g * (above + (emfV[k] as number));
    add(side, i, -currentA);
    add(side, j, currentA);
  }
  for (let n = 0; n < givenA.length; n++) {
    const k = branchOf.loads[n] as number;
    const i = numberOf[joinedFrom[k] as number] as number;
    const j = numberOf[joinedTo[k] as number] as number;
    if (i === -2 || j === -2) continue;
    add(side, i, -(givenA[n] as number));
    add(side, j, givenA[n] as number);
  }
  const analysis = analyseSymmetric({ count, rows: Int32Array.from(rows), columns: Int32Array.from(columns) });
  const factor = factorSymmetric({ analysis, values: Float64Array.from(values), rowSums });
  // Every unknown is tied to the reference by a resistance: the matrix is definite.
  if (!factor.definite) throw new Error(`a node hangs in the air: ${factor.unknownIndex}`);
  const unknown = Int32Array.from(nodes, (_, node) => numberOf[joined[node] as number] as number);
  return { wiring, perOhm, givenA, unknown, factor, unknownV: solveSymmetric({ factor, sides: side }) };
}

/** Numbers what conductances tie to the reference: −1 for what is joined to it, −2 for what nothing ties. */
function numberUnknowns(
  { joined, joinedCount, joinedFrom, joinedTo }: Wiring,
  perOhm: Float64Array,
): { readonly numberOf: Int32Array; readonly count: number } {
  const start = new Int32Array(joinedCount + 1);
  const each = (visit: (node: number, other: number) => void): void => {
    for (let k = 0; k < perOhm.length; k++) {
      if (perOhm[k] === 0) continue;
      visit(joinedFrom[k] as number, joinedTo[k] as number);
      visit(joinedTo[k] as number, joinedFrom[k] as number);
    }
  };
  each((node) => (start[node + 1] = (start[node + 1] as number) + 1));
  for (let i = 0; i < joinedCount; i++) start[i + 1] = (start[i + 1] as number) + (start[i] as number);
  const ends = new Int32Array(start[joinedCount] as number);
  const next = start.slice();
  each((node, other) => {
    const at = next[node] as number;
    next[node] = at + 1;
    ends[at] = other;
  });
  const numberOf = new Int32Array(joinedCount).fill(-2);
  const root = joined[0] as number;
  numberOf[root] = -1;
  let count = 0;
  const stack = [root];
  for (let at = stack.pop(); at !== undefined; at = stack.pop()) {
    for (let p = start[at] as number; p < (start[at + 1] as number); p++) {
      const other = ends[p] as number;
      if (numberOf[other] !== -2) continue;
      numberOf[other] = count++;
      stack.push(other);
    }
  }
  return { numberOf, count };
}

/** Volts of a node by its number, or null where nothing ties it to the reference. */
export function voltsAt({ unknown, unknownV, wiring: { offsetV } }: LinearNet, node: number): number | null {
  const u = unknown[node] as number;
  if (u === -2) return null;
  return (u === -1 ? 0 : (unknownV[u] as number)) + (offsetV[node] as number);
}

/** Current of a load at its volts, as the linear network has it. */
export function loadAt({ perOhm, givenA, wiring: { branchOf } }: LinearNet, load: number, voltageV: number): number {
  return (givenA[load] as number) + (perOhm[branchOf.loads[load] as number] as number) * voltageV;
}

/** Every node that something of a network ends at, the reference first. */
export function endsOf({ reference, branches, sources, loads = [], diodes = [], switches = [] }: Network): Set<string> {
  const nodes = new Set([reference]);
  for (const { from, to } of [...branches, ...sources, ...loads, ...diodes, ...switches]) nodes.add(from).add(to);
  return nodes;
}
