import { InputError } from '../error/index.js';
import { needInput, needInteger } from '../error/guard.js';
import { needPlaces, type SymmetricAnalysis } from './analyse-symmetric.js';
import { cutter } from './cut-arrays.js';
import { analysisOf } from './elimination-pattern.js';

/** What `analyseNodes` needs: which nodes the branches of a network join. */
export interface AnalyseNodesInput {
  /** Number of nodes. */
  readonly nodeCount: number;
  /** Node at the beginning of each branch, 0 to `nodeCount` − 1, and at its end. Not changed. */
  readonly from: Int32Array;
  readonly to: Int32Array;
  /** Nodes held at 0: at least one in each part that nothing ties to the rest. */
  readonly held: Int32Array;
}

/** The node equations of all networks with the same branches between the same nodes: plain arrays, kept between them. */
export interface NodeAnalysis {
  readonly nodeCount: number;
  readonly from: Int32Array;
  readonly to: Int32Array;
  /** Number of each node's unknown, −1 for those held. */
  readonly unknown: Int32Array;
  /** The node of each unknown. */
  readonly nodeOf: Int32Array;
  readonly symmetric: SymmetricAnalysis;
  /** The branch of each entry of the matrix. */
  readonly entryBranch: Int32Array;
}

/**
 * Prepares the node equations of a network of conductances: numbers its unknowns, orders and analyses their matrix.
 *
 * Do it once for networks that differ in their conductances and currents alone; `solveNodes` does the rest. Names,
 * ideal sources, loads and diodes are for `solveNetwork`.
 *
 * @param input nodes, branches, nodes held at 0
 * @returns the analysis, as data
 * @throws InputError when an array is missing, has another length or names a node that does not exist
 * @source circuit-theory (node equations)
 * @example analyseNodes({ nodeCount: 3, from: Int32Array.of(0, 1), to: Int32Array.of(1, 2), held: Int32Array.of(0) }).nodeOf.length //=> 2
 */
export function analyseNodes(input: AnalyseNodesInput): NodeAnalysis {
  const fn = 'analyseNodes';
  needInput(fn, input);
  const { nodeCount, from, to, held } = input;
  needInteger(fn, 'nodeCount', nodeCount);
  if (!(held instanceof Int32Array)) {
    throw new InputError(fn, 'held', held === undefined ? 'missing' : 'list', held, 'must be an Int32Array');
  }
  needPlaces(fn, 'held', held, nodeCount, held);
  needPlaces(fn, 'from', from, nodeCount, from);
  needPlaces(fn, 'to', to, nodeCount, from);
  const branchCount = from.length;
  const cut = cutter(Int32Array, 2 * nodeCount + 3 * branchCount);
  const unknown = cut(nodeCount);
  for (let i = 0; i < held.length; i++) unknown[held[i] as number] = -1;
  let count = 0;
  for (let v = 0; v < nodeCount; v++) if (unknown[v] === 0) unknown[v] = count++;
  const nodeOf = cut(count);
  for (let v = 0; v < nodeCount; v++) if ((unknown[v] as number) >= 0) nodeOf[unknown[v] as number] = v;
  const rows = cut(branchCount);
  const columns = cut(branchCount);
  const entryBranch = cut(branchCount);
  let entries = 0;
  for (let k = 0; k < from.length; k++) {
    const i = unknown[from[k] as number] as number;
    const j = unknown[to[k] as number] as number;
    if (i < 0 || j < 0 || i === j) continue;
    rows[entries] = i;
    columns[entries] = j;
    entryBranch[entries++] = k;
  }
  return {
    nodeCount,
    from,
    to,
    unknown,
    nodeOf,
    symmetric: analysisOf(count, rows.subarray(0, entries), columns.subarray(0, entries)),
    entryBranch: entryBranch.subarray(0, entries),
  };
}
