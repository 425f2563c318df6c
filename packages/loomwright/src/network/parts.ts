import type { Wiring } from './wiring.js';

/** Which parts of a network hang together, so that current can go round. */
export interface Parts {
  /** The part of each joined node; part 0 holds the reference. */
  readonly partOf: Int32Array;
  readonly count: number;
  /** The joined node of each part that volts are counted from: the reference, elsewhere the first. */
  readonly held: Int32Array;
}

/** Parts tied together by the branches that have a number other than 0: a conductance. */
export function partsOf({ joinedCount, joinedFrom, joinedTo }: Wiring, tie: Float64Array): Parts {
  const parent = new Int32Array(joinedCount);
  for (let i = 0; i < joinedCount; i++) parent[i] = i;
  const find = (node: number): number => {
    let at = node;
    for (let up = parent[at] as number; up !== at; up = parent[at] as number) {
      parent[at] = parent[up] as number;
      at = parent[at] as number;
    }
    return at;
  };
  for (let k = 0; k < tie.length; k++) {
    if (tie[k] === 0) continue;
    const a = find(joinedFrom[k] as number);
    const b = find(joinedTo[k] as number);
    // The lowest number stands for a part: the reference, 0, for its own.
    if (a < b) parent[b] = a;
    else parent[a] = b;
  }
  const partOf = new Int32Array(joinedCount).fill(-1);
  const held: number[] = [];
  for (let i = 0; i < joinedCount; i++) {
    const root = find(i);
    if (root === i) partOf[i] = held.push(i) - 1;
    else partOf[i] = partOf[root] as number;
  }
  return { partOf, count: held.length, held: Int32Array.from(held) };
}
