import { neighboursOf } from './neighbours.js';
import type { Wiring } from './wiring.js';

/** Currents of elements of 0 Ω. */
export interface IdealCurrents {
  /** Current of each from its beginning to its end: one that adds up at every node. */
  readonly currentA: Float64Array;
  /** 1 for those on a loop of nothing but 0 Ω: their share of the current cannot be told. */
  readonly inLoop: Uint8Array;
}

/**
 * What flows through elements of 0 Ω follows from what arrives at their nodes by all others: along a spanning tree, from
 * its leaves. A depth-first walk tells which of them are the only way between two nodes.
 */
export function idealCurrents(wiring: Wiring, branchA: Float64Array): IdealCurrents {
  const { ideal, from, to, nodes } = wiring;
  const currentA = new Float64Array(ideal.length);
  const inLoop = new Uint8Array(ideal.length);
  if (ideal.length === 0) return { currentA, inLoop };
  const arrivingA = new Float64Array(nodes.length);
  const add = (node: number, a: number): void => {
    arrivingA[node] = (arrivingA[node] as number) + a;
  };
  branchA.forEach((a, k) => {
    add(from[k] as number, -a);
    add(to[k] as number, a);
  });
  const { start, edge } = neighboursOf(nodes.length, ideal);
  const place = new Int32Array(nodes.length).fill(-1);
  const low = new Int32Array(nodes.length);
  const upEdge = new Int32Array(nodes.length).fill(-1);
  const next = start.slice();
  const walk: number[] = [];
  ideal.forEach((root) => {
    if (place[root.from] !== -1) return;
    const stack = [root.from];
    place[root.from] = low[root.from] = walk.push(root.from) - 1;
    for (let v = stack.at(-1); v !== undefined; v = stack.at(-1)) {
      const p = next[v] as number;
      if (p === start[v + 1]) {
        stack.pop();
        continue;
      }
      next[v] = p + 1;
      const e = edge[p] as number;
      if (e === upEdge[v]) continue;
      const { from: a, to: b } = ideal[e] as Wiring['ideal'][number];
      const w = a === v ? b : a;
      if (place[w] === -1) {
        upEdge[w] = e;
        place[w] = low[w] = walk.push(w) - 1;
        stack.push(w);
      } else {
        low[v] = Math.min(low[v] as number, place[w] as number);
        inLoop[e] = 1;
      }
    }
  });
  for (let k = walk.length - 1; k >= 0; k--) {
    const v = walk[k] as number;
    const e = upEdge[v] as number;
    if (e === -1) continue;
    const { from: a, to: b } = ideal[e] as Wiring['ideal'][number];
    const up = a === v ? b : a;
    const sum = arrivingA[v] as number;
    currentA[e] = a === v ? sum : -sum;
    add(up, sum);
    if ((low[v] as number) < k) inLoop[e] = 1;
    low[up] = Math.min(low[up] as number, low[v] as number);
  }
  return { currentA, inLoop };
}
