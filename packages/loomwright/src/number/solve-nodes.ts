import { needInput, needInteger, needObject } from '../error/guard.js';
import type { NodeAnalysis } from './analyse-nodes.js';
import { cutter } from './cut-arrays.js';
import { factorColumns, needNumbers, type SymmetricFactor } from './factor-symmetric.js';
import { solveSymmetric } from './solve-symmetric.js';

/** What `solveNodes` needs. */
export interface SolveNodesInput {
  readonly analysis: NodeAnalysis;
  /** Conductance of each branch in 1/Ω; 0 where it is open, below 0 for what draws more at less volts. */
  readonly perOhm: Float64Array;
  /** Current in A that each branch carries from its beginning to its end beside what its conductance does. */
  readonly drivenA: Float64Array;
  /** How often what is left over at the nodes is solved for and added; 1 unless given. */
  readonly correctionCount?: number;
}

/** Volts and currents of a network. */
export interface SolvedNodes {
  readonly definite: true;
  readonly nodeV: Float64Array;
  /** Current of each branch from its beginning to its end. */
  readonly branchA: Float64Array;
  readonly factor: SymmetricFactor;
}

/** The node equations have no single answer. */
export interface UnsolvedNodes {
  readonly definite: false;
  /** A node of the part that nothing holds. */
  readonly nodeIndex: number;
}

/**
 * Solves the node equations of a network that was analysed: volts of all nodes and the current of each branch.
 *
 * $$i_k = g_k\,(v_\mathrm{from} - v_\mathrm{to}) + j_k \qquad \sum_k i_k = 0 \text{ at each node that is not held}$$
 *
 * A current of a good conductor is the small difference of two volts: after the first answer, what is left over at
 * each node is solved for and added, so that currents add up to the last digits.
 *
 * @param input analysis, conductances, driven currents
 * @returns volts, currents and the factor; `definite: false` with a node where a part of the network is not held, or
 * negative conductances outweigh the others
 * @throws InputError when an array is missing, has another length or holds what is no finite number
 * @source circuit-theory (node equations)
 * @example solveNodes({ analysis: analyseNodes({ nodeCount: 2, from: Int32Array.of(0, 1), to: Int32Array.of(1, 0), held: Int32Array.of(0) }), perOhm: Float64Array.of(10, 1), drivenA: Float64Array.of(121, 0) }).nodeV[1] //=> 11
 */
export function solveNodes(input: SolveNodesInput): SolvedNodes | UnsolvedNodes {
  const fn = 'solveNodes';
  needInput(fn, input);
  const { analysis, perOhm, drivenA, correctionCount = 1 } = input;
  needObject(fn, 'analysis', analysis);
  const { from, to, unknown, nodeOf, symmetric, entryBranch, nodeCount } = analysis;
  needNumbers(fn, 'perOhm', perOhm, from.length);
  needNumbers(fn, 'drivenA', drivenA, from.length);
  needInteger(fn, 'correctionCount', correctionCount);
  const { place, rowIndex, turn } = symmetric;
  const count = nodeOf.length;
  const cut = cutter(Float64Array, rowIndex.length + 4 * count + nodeCount + from.length);
  const lower = cut(rowIndex.length);
  for (let e = 0; e < place.length; e++) {
    const q = place[e] as number;
    lower[q] = (lower[q] as number) - (perOhm[entryBranch[e] as number] as number);
  }
  const rowSums = cut(count);
  const left = cut(count);
  for (let k = 0; k < from.length; k++) {
    const i = unknown[from[k] as number] as number;
    const j = unknown[to[k] as number] as number;
    const driven = drivenA[k] as number;
    if (i >= 0) left[i] = (left[i] as number) - driven;
    if (j >= 0) left[j] = (left[j] as number) + driven;
    if (i < 0 === j < 0) continue;
    const at = turn[i < 0 ? j : i] as number;
    rowSums[at] = (rowSums[at] as number) + (perOhm[k] as number);
  }
  const scratch = cut(count);
  const factor = factorColumns(symmetric, lower, cut(count), rowSums, true, scratch);
  if (!factor.definite) return { definite: false, nodeIndex: nodeOf[factor.unknownIndex] as number };
  const nodeV = cut(nodeCount);
  const branchA = cut(from.length);
  branchA.set(drivenA);
  for (let pass = 0; ; pass++) {
    const x = solveSymmetric({ factor, sides: left, into: left, scratch });
    for (let u = 0; u < count; u++) {
      const v = nodeOf[u] as number;
      nodeV[v] = (nodeV[v] as number) + (x[u] as number);
    }
    for (let k = 0; k < from.length; k++) {
      const i = unknown[from[k] as number] as number;
      const j = unknown[to[k] as number] as number;
      const drop = (i < 0 ? 0 : (x[i] as number)) - (j < 0 ? 0 : (x[j] as number));
      branchA[k] = (branchA[k] as number) + (perOhm[k] as number) * drop;
    }
    if (pass === correctionCount) return { definite: true, nodeV, branchA, factor };
    // What flows into each node beyond what flows out of it.
    left.fill(0);
    for (let k = 0; k < from.length; k++) {
      const i = unknown[from[k] as number] as number;
      const j = unknown[to[k] as number] as number;
      const a = branchA[k] as number;
      if (i >= 0) left[i] = (left[i] as number) - a;
      if (j >= 0) left[j] = (left[j] as number) + a;
    }
  }
}
