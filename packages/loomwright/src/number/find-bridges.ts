import { needInput, needInteger } from '../error/guard.js';
import { needPlaces } from './analyse-symmetric.js';
import { type Bridges, searchBridges } from './search-bridges.js';

export type { Bridges } from './search-bridges.js';

/** What `findBridges` needs: which nodes the branches of a network join. */
export interface FindBridgesInput {
  /** Number of nodes. */
  readonly nodeCount: number;
  /** Node at the beginning of each branch, 0 to `nodeCount` − 1, and at its end. Not changed. */
  readonly from: Int32Array;
  readonly to: Int32Array;
  /** Where to begin, one after the other: what hangs on a branch lies on its side away from there. */
  readonly roots: Int32Array;
  /** A branch that counts as gone; none unless given. */
  readonly without?: number;
}

/**
 * Finds the bridges of a network: the branches that alone tie something to the rest, and what that is.
 *
 * One search, depth first. A branch is the only way to what was found behind it where no other leads from there to what
 * was found before.
 *
 * @param input nodes, branches, where to begin, a branch that is gone
 * @returns the nodes in the order of the search, how each was found, and what hangs on each branch alone
 * @throws InputError when an array is missing, has another length or names a node that does not exist
 * @source tarjan-1972
 * @example findBridges({ nodeCount: 3, from: Int32Array.of(0, 1), to: Int32Array.of(1, 2), roots: Int32Array.of(0) }).first[1] //=> 2
 */
export function findBridges(input: FindBridgesInput): Bridges {
  const fn = 'findBridges';
  needInput(fn, input);
  const { nodeCount, from, to, roots, without = -1 } = input;
  needInteger(fn, 'nodeCount', nodeCount);
  needPlaces(fn, 'from', from, nodeCount, from);
  needPlaces(fn, 'to', to, nodeCount, from);
  needPlaces(fn, 'roots', roots, nodeCount, roots);
  return searchBridges(nodeCount, from, to, roots, without);
}
