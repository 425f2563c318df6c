import { searchBridges } from '../number/search-bridges.js';
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
 * its leaves. Those on a loop are those that are not the only way between two nodes.
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
  const beginning = Int32Array.from(ideal, (each) => each.from);
  const ending = Int32Array.from(ideal, (each) => each.to);
  const { nodeOf, via, first, last } = searchBridges(nodes.length, beginning, ending, beginning, -1);
  for (let e = 0; e < ideal.length; e++) if (first[e] === last[e]) inLoop[e] = 1;
  for (let k = nodeOf.length - 1; k >= 0; k--) {
    const v = nodeOf[k] as number;
    const e = via[v] as number;
    if (e === -1) continue;
    const { from: a, to: b } = ideal[e] as Wiring['ideal'][number];
    const up = a === v ? b : a;
    const sum = arrivingA[v] as number;
    currentA[e] = a === v ? sum : -sum;
    add(up, sum);
  }
  return { currentA, inLoop };
}
