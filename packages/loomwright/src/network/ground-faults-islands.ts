import { type Bridges, searchBridges } from '../number/search-bridges.js';
import type { Network } from './element.js';

/** What ties nodes together in metal: branches, closed switches and sources, as pairs of numbers. */
interface Ties {
  readonly nodes: readonly string[];
  readonly from: Int32Array;
  readonly to: Int32Array;
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

/** Finds what each branch alone holds on to the reference. */
export function islandsOf(network: Network): Islands {
  const ties = tiesOf(network);
  const alone = search(ties);
  let last: { readonly gone: number; readonly found: Bridges } | null = null;
  const cut = ({ nodeOf, first, last }: Bridges, k: number | undefined): readonly string[] =>
    k === undefined ? [] : Array.from(nodeOf.subarray(first[k], last[k]), (node) => ties.nodes[node] as string);
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
  const ends = list.map(({ from, to }) => [place(from), place(to)] as const);
  for (const { from, to } of [...loads, ...diodes, ...switches]) {
    place(from);
    place(to);
  }
  const numberOf = new Map(branches.map(({ name }, k) => [name, k]));
  const column = (end: 0 | 1): Int32Array => Int32Array.from(ends, (each) => each[end]);
  return { nodes, from: column(0), to: column(1), numberOf };
}

const search = ({ nodes, from, to }: Ties, without = -1): Bridges =>
  searchBridges(nodes.length, from, to, Int32Array.of(0), without);
