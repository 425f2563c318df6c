import type { Network } from './element.js';
import { type Neighbours, neighboursOf } from './neighbours.js';

/** What ties nodes together in metal: branches, closed switches and sources, as pairs of numbers. */
interface Ties extends Neighbours {
  readonly nodes: readonly string[];
  readonly edges: readonly { readonly from: number; readonly to: number }[];
  readonly numberOf: ReadonlyMap<string, number>;
}

/** The nodes that fall off with each tie that is the only one. */
export interface Islands {
  /** Nodes that even the intact network does not tie to the reference. */
  readonly loose: readonly string[];
  /** Nodes that a lost branch cuts off; empty where another tie still holds them. */
  readonly without: (branch: string) => readonly string[];
  /** Nodes that two lost branches cut off. */
  readonly withoutBoth: (first: string, second: string) => readonly string[];
}

/**
 * Finds what each branch alone holds on to the reference. A branch is the only way to what is below it where no other
 * tie leads from there to what was found before it: one depth-first search finds all of them (Tarjan).
 */
export function islandsOf(network: Network): Islands {
  const ties = tiesOf(network);
  const alone = search(ties, -1);
  let last: { readonly gone: number; readonly found: Found } | null = null;
  const cut = ({ nodeOf, subtree }: Found, k: number | undefined): readonly string[] => {
    const top = k === undefined ? undefined : subtree.get(k);
    if (top === undefined) return [];
    return Array.from(nodeOf.subarray(top[0], top[1]), (node) => ties.nodes[node] as string);
  };
  const without = (branch: string): readonly string[] => cut(alone, ties.numberOf.get(branch));
  return {
    loose: ties.nodes.filter((_, node) => alone.turn[node] === -1),
    without,
    withoutBoth: (first, second) => {
      const gone = ties.numberOf.get(first) ?? -1;
      if (last?.gone !== gone) last = { gone, found: search(ties, gone) };
      return [...new Set([...without(first), ...cut(last.found, ties.numberOf.get(second))])];
    },
  };
}

function tiesOf({ reference, branches, sources, loads = [], diodes = [], switches = [] }: Network): Ties {
  const numbers = new Map<string, number>([[reference, 0]]);
  const nodes = [reference];
  const place = (node: string): number => {
    const known = numbers.get(node);
    if (known !== undefined) return known;
    numbers.set(node, nodes.length);
    return nodes.push(node) - 1;
  };
  const list = [...branches, ...switches.filter(({ closed }) => closed), ...sources];
  const edges = list.map(({ from, to }) => ({ from: place(from), to: place(to) }));
  for (const { from, to } of [...loads, ...diodes, ...switches]) {
    place(from);
    place(to);
  }
  const numberOf = new Map(branches.map(({ name }, k) => [name, k]));
  return { nodes, edges, ...neighboursOf(nodes.length, edges), numberOf };
}

/** What a search found: the turn of each node (−1: not found) and what hangs on each tie alone. */
interface Found {
  readonly turn: Int32Array;
  /** The node of each turn. */
  readonly nodeOf: Int32Array;
  /** First turn, and the one after the last, of what hangs on a tie alone. */
  readonly subtree: ReadonlyMap<number, readonly [number, number]>;
}

function search({ nodes, edges, start, edge }: Ties, gone: number): Found {
  const turn = new Int32Array(nodes.length).fill(-1);
  const nodeOf = new Int32Array(nodes.length);
  const low = new Int32Array(nodes.length);
  const via = new Int32Array(nodes.length).fill(-1);
  const next = start.slice();
  const subtree = new Map<number, readonly [number, number]>();
  const stack = [0];
  turn[0] = 0;
  let count = 1;
  for (let node = stack.at(-1); node !== undefined; node = stack.at(-1)) {
    const at = next[node] as number;
    if (at < (start[node + 1] as number)) {
      next[node] = at + 1;
      const k = edge[at] as number;
      if (k === gone || k === via[node]) continue;
      const { from, to } = edges[k] as Ties['edges'][number];
      const other = from === node ? to : from;
      if (turn[other] === -1) {
        turn[other] = low[other] = count;
        nodeOf[count++] = other;
        via[other] = k;
        stack.push(other);
      } else low[node] = Math.min(low[node] as number, turn[other] as number);
      continue;
    }
    stack.pop();
    const k = via[node] as number;
    if (k === -1) continue;
    const above = stack.at(-1) as number;
    if ((low[node] as number) > (turn[above] as number)) subtree.set(k, [turn[node] as number, count]);
    low[above] = Math.min(low[above] as number, low[node] as number);
  }
  return { turn, nodeOf, subtree };
}
