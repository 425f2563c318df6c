/** What hangs on each branch alone. */
export interface Bridges {
  /** The nodes that were found, in that order. */
  readonly nodeOf: Int32Array;
  /** For each node its place in `nodeOf`, −1 where no branch leads to it, and the branch by which it was found, or −1. */
  readonly turn: Int32Array;
  readonly via: Int32Array;
  /** For each branch the first place in `nodeOf` of what hangs on it alone, and the one after the last; both 0: nothing. */
  readonly first: Int32Array;
  readonly last: Int32Array;
}

/** The search of `findBridges`, for numbers that are known to be in order. */
export function searchBridges(
  nodeCount: number,
  from: Int32Array,
  to: Int32Array,
  roots: Int32Array,
  without: number,
): Bridges {
  const { start, branchAt } = branchesAt(nodeCount, from, to);
  const next = start.slice();
  const turn = new Int32Array(nodeCount).fill(-1);
  const low = new Int32Array(nodeCount);
  const via = new Int32Array(nodeCount).fill(-1);
  const nodeOf = new Int32Array(nodeCount);
  const first = new Int32Array(from.length);
  const last = new Int32Array(from.length);
  let found = 0;
  for (const root of roots) {
    if (turn[root] !== -1) continue;
    const stack = [root];
    turn[root] = low[root] = found;
    nodeOf[found++] = root;
    for (let node = stack.at(-1); node !== undefined; node = stack.at(-1)) {
      const at = next[node] as number;
      if (at < (start[node + 1] as number)) {
        next[node] = at + 1;
        const k = branchAt[at] as number;
        if (k === without || k === via[node]) continue;
        const other = from[k] === node ? (to[k] as number) : (from[k] as number);
        if (turn[other] === -1) {
          turn[other] = low[other] = found;
          nodeOf[found++] = other;
          via[other] = k;
          stack.push(other);
        } else low[node] = Math.min(low[node] as number, turn[other] as number);
        continue;
      }
      stack.pop();
      const above = stack.at(-1);
      if (above === undefined) continue;
      const k = via[node] as number;
      if ((low[node] as number) > (turn[above] as number)) {
        first[k] = turn[node] as number;
        last[k] = found;
      }
      low[above] = Math.min(low[above] as number, low[node] as number);
    }
  }
  return { nodeOf: nodeOf.subarray(0, found), turn, via, first, last };
}

/** The branches at each node, in the order of their ends; one with both ends on a node stands there once. */
function branchesAt(
  nodeCount: number,
  from: Int32Array,
  to: Int32Array,
): { readonly start: Int32Array; readonly branchAt: Int32Array } {
  const start = new Int32Array(nodeCount + 1);
  const each = (visit: (node: number, branch: number) => void): void => {
    for (let k = 0; k < from.length; k++) {
      visit(from[k] as number, k);
      if (to[k] !== from[k]) visit(to[k] as number, k);
    }
  };
  each((node) => {
    start[node + 1] = (start[node + 1] as number) + 1;
  });
  for (let v = 0; v < nodeCount; v++) start[v + 1] = (start[v + 1] as number) + (start[v] as number);
  const next = start.slice();
  const branchAt = new Int32Array(start[nodeCount] as number);
  each((node, k) => {
    const at = next[node] as number;
    next[node] = at + 1;
    branchAt[at] = k;
  });
  return { start, branchAt };
}
