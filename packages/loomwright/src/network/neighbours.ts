/** Edges at each node, in one list: where each node's begin, one more than there are nodes, and the edges. */
export interface Neighbours {
  readonly start: Int32Array;
  readonly edge: Int32Array;
}

/** The edges at each node, in the order of their ends; one with both ends on a node stands there once. */
export function neighboursOf(
  count: number,
  edges: readonly { readonly from: number; readonly to: number }[],
): Neighbours {
  const start = new Int32Array(count + 1);
  const next = new Int32Array(count + 1);
  const each = (visit: (node: number, edge: number) => void): void => {
    edges.forEach(({ from, to }, e) => {
      visit(from, e);
      if (to !== from) visit(to, e);
    });
  };
  each((node) => {
    start[node + 1] = (start[node + 1] as number) + 1;
  });
  for (let v = 0; v < count; v++) start[v + 1] = (start[v + 1] as number) + (start[v] as number);
  next.set(start);
  const edge = new Int32Array(start[count] as number);
  each((node, e) => {
    const at = next[node] as number;
    next[node] = at + 1;
    edge[at] = e;
  });
  return { start, edge };
}
