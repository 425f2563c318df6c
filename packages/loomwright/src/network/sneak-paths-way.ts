import type { Network } from './element.js';

/** What conducts between two nodes in a solved network. */
export interface WayEdge {
  readonly name: string;
  readonly from: string;
  readonly to: string;
  /** Resistance in Ω that a way through it counts with. */
  readonly resistanceOhm: number;
  /** A diode: from `from` to `to` only. */
  readonly oneWay: boolean;
}

/** The way of least ohms between a source's end and each node. */
export interface Ways {
  /** The source, and the elements from it to the node in order; null where none leads there. */
  readonly to: (node: string) => { readonly source: string; readonly path: readonly string[] } | null;
}

/**
 * Ways of least ohms from the positive ends of the sources, each step towards the same or fewer volts, as current
 * flows; or with `back`, from their negative ends towards the same or more volts, against it.
 */
export function waysOf(
  network: Network,
  edges: readonly WayEdge[],
  volts: ReadonlyMap<string, number>,
  back: boolean,
): Ways {
  const ends = new Map<string, WayEdge[]>();
  for (const edge of edges) {
    for (const node of [edge.from, edge.to]) {
      const list = ends.get(node);
      if (list === undefined) ends.set(node, [edge]);
      else list.push(edge);
    }
  }
  let most = 0;
  for (const v of volts.values()) most = Math.max(most, Math.abs(v));
  const slackV = 1e-9 * most;
  const reached = new Map<string, { ohm: number; via: WayEdge | null; before: string; source: string }>();
  const queue = queueOf();
  const offer = (node: string, ohm: number, via: WayEdge | null, before: string, source: string): void => {
    const known = reached.get(node);
    if (known !== undefined && known.ohm <= ohm) return;
    reached.set(node, { ohm, via, before, source });
    queue.push(ohm, node);
  };
  for (const { name, from, to } of network.sources) {
    const start = back ? from : to;
    if (volts.has(start)) offer(start, 0, null, start, name);
  }
  for (let next = queue.pop(); next !== null; next = queue.pop()) {
    const here = reached.get(next.node);
    const v = volts.get(next.node);
    if (here === undefined || v === undefined || next.key > here.ohm) continue;
    for (const edge of ends.get(next.node) ?? []) {
      const forward = edge.from === next.node;
      if (edge.oneWay && forward === back) continue;
      const other = forward ? edge.to : edge.from;
      const w = volts.get(other);
      if (w === undefined || (back ? v - w : w - v) > slackV) continue;
      offer(other, here.ohm + edge.resistanceOhm, edge, next.node, here.source);
    }
  }
  return {
    to: (node) => {
      const path: string[] = [];
      let here = reached.get(node);
      if (here === undefined) return null;
      const { source } = here;
      while (here !== undefined && here.via !== null) {
        path.push(here.via.name);
        here = reached.get(here.before);
      }
      return { source, path: back ? path : path.reverse() };
    },
  };
}

/** Nodes by their ohms, the least to be taken first: a binary heap. */
interface Queue {
  readonly push: (key: number, node: string) => void;
  readonly pop: () => Entry | null;
}
interface Entry {
  readonly key: number;
  readonly node: string;
}

function queueOf(): Queue {
  const heap: Entry[] = [];
  const keyAt = (i: number): number => heap[i]?.key ?? Infinity;
  return {
    push: (key, node) => {
      let i = heap.length;
      while (i > 0 && keyAt((i - 1) >> 1) > key) {
        heap[i] = heap[(i - 1) >> 1] as Entry;
        i = (i - 1) >> 1;
      }
      heap[i] = { key, node };
    },
    pop: () => {
      const [top] = heap;
      const last = heap.pop();
      if (top === undefined || last === undefined) return null;
      if (heap.length === 0) return top;
      let i = 0;
      for (;;) {
        const left = 2 * i + 1;
        const down = keyAt(left + 1) < keyAt(left) ? left + 1 : left;
        if (keyAt(down) >= last.key) break;
        heap[i] = heap[down] as Entry;
        i = down;
      }
      heap[i] = last;
      return top;
    },
  };
}
