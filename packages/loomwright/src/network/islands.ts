import type { Network } from './element.js';
import type { NetworkIsland, NodeState } from './network-result.js';
import type { SettledNetwork } from './settled.js';
import type { Wiring } from './wiring.js';

/** Nodes with their volts, and the islands that they form. */
export interface NodesAndIslands {
  readonly nodes: readonly NodeState[];
  readonly islands: readonly NetworkIsland[];
  /** Volts of each node above its island's own zero. */
  readonly localV: Float64Array;
  readonly islandOf: Int32Array;
}

export function nodesAndIslands(
  network: Network,
  wiring: Wiring,
  { parts, solved, groupOf, aboveV }: SettledNetwork,
): NodesAndIslands {
  const { nodes: names, joined, offsetV } = wiring;
  const count = names.length;
  const localV = new Float64Array(count);
  const islandOf = new Int32Array(count);
  const numberOf = new Map<number, number>();
  const members: string[][] = [];
  for (let v = 0; v < count; v++) {
    const at = joined[v] as number;
    const part = parts.partOf[at] as number;
    const group = groupOf[part] as number;
    let island = numberOf.get(group);
    if (island === undefined) {
      island = members.push([]) - 1;
      numberOf.set(group, island);
    }
    (members[island] as string[]).push(names[v] as string);
    islandOf[v] = island;
    localV[v] = (solved.nodeV[at] as number) + (offsetV[v] as number) + (aboveV[part] as number);
  }
  const sources: string[][] = members.map(() => []);
  const indexOf = new Map(names.map((name, v) => [name, v]));
  for (const { name, to } of network.sources) {
    sources[islandOf[indexOf.get(to) as number] as number]?.push(name);
  }
  // The reference is node 0: its volts are 0, with what ideal sources between it and its joined node would add.
  const zeroV = localV[0] as number;
  const nodes = names.map((name, v): NodeState => {
    const islandIndex = islandOf[v] as number;
    const part = parts.partOf[joined[v] as number] as number;
    const reason = islandIndex === 0 ? null : sources[islandIndex]?.length === 0 ? 'no-source' : 'no-reference';
    const voltageV = reason === null ? (localV[v] as number) - zeroV : null;
    return { name, voltageV, reason, hangs: reason === null && part !== 0, islandIndex };
  });
  const islands = members.map((list, i) => ({ nodes: list, hasReference: i === 0, sources: sources[i] as string[] }));
  return { nodes, islands, localV, islandOf };
}
