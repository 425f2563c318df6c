/** What hangs on each branch alone. */
export interface Bridges {
  /** Nodes in the order in which they were found. */
  readonly nodeOf: Int32Array;
  /** For each branch the first place in `nodeOf` of what hangs on it alone, and the one after the last; both 0: nothing. */
  readonly first: Int32Array;
  readonly last: Int32Array;
}

/**
 * Finds what each branch of a network alone ties to the root: one search, depth first. A branch is the only way to what
 * was found behind it where no other leads from there to what was found before.
 *
 * @source tarjan-1972
 */
export function bridgesOf(count: number, from: Int32Array, to: Int32Array, branches: number, root: number): Bridges {
  const start = new Int32Array(count + 1);
  const more = (node: number): void => void (start[node + 1] = (start[node + 1] as number) + 1);
  for (let k = 0; k < branches; k++) {
    more(from[k] as number);
    more(to[k] as number);
  }
  for (let v = 0; v < count; v++) start[v + 1] = (start[v + 1] as number) + (start[v] as number);
  const ties = new Int32Array(2 * branches);
  const next = start.slice();
  for (let k = 0; k < branches; k++) {
    for (const node of [from[k] as number, to[k] as number]) {
      const at = next[node] as number;
      next[node] = at + 1;
      ties[at] = k;
    }
  }
  next.set(start);
  const turn = new Int32Array(count).fill(-1);
  const low = new Int32Array(count);
  const via = new Int32Array(count).fill(-1);
  const nodeOf = new Int32Array(count);
  const first = new Int32Array(branches);
  const last = new Int32Array(branches);
  const stack = [root];
  turn[root] = 0;
  nodeOf[0] = root;
  let found = 1;
  for (let node = stack.at(-1); node !== undefined; node = stack.at(-1)) {
    const at = next[node] as number;
    if (at < (start[node + 1] as number)) {
      next[node] = at + 1;
      const k = ties[at] as number;
      if (k === via[node]) continue;
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
    const k = via[node] as number;
    if (above === undefined || k < 0) continue;
    if ((low[node] as number) > (turn[above] as number)) {
      first[k] = turn[node] as number;
      last[k] = found;
    }
    low[above] = Math.min(low[above] as number, low[node] as number);
  }
  return { nodeOf, first, last };
}
