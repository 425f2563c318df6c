import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { findBridges, type FindBridgesInput } from 'loomwright';
import { expectInputError } from '../support/edge.js';

const networkOf = (nodeCount: number, ends: readonly (readonly [number, number])[]): FindBridgesInput => ({
  nodeCount,
  from: Int32Array.from(ends, ([a]) => a),
  to: Int32Array.from(ends, ([, b]) => b),
  roots: Int32Array.of(0),
});

/** The nodes that a plain walk from node 0 reaches, with some branches gone. */
function reached({ nodeCount, from, to }: FindBridgesInput, gone: readonly number[]): ReadonlySet<number> {
  const seen = new Set([0]);
  for (let round = 0; round < nodeCount; round++) {
    for (let k = 0; k < from.length; k++) {
      const [a, b] = [from[k] as number, to[k] as number];
      if (!gone.includes(k) && (seen.has(a) || seen.has(b))) seen.add(a).add(b);
    }
  }
  return seen;
}

/** Networks of a few nodes: loops, branches side by side, branches from a node to itself, parts that hang nowhere. */
const networks = fc.integer({ min: 1, max: 9 }).chain((nodeCount) => {
  const node = fc.integer({ min: 0, max: nodeCount - 1 });
  return fc.array(fc.tuple(node, node), { maxLength: 14 }).map((ends) => networkOf(nodeCount, ends));
});

describe('independent', () => {
  it('what hangs on each branch alone is what a walk without it misses', () => {
    fc.assert(
      fc.property(networks, fc.integer({ min: -1, max: 13 }), (network, without) => {
        const { nodeOf, turn, first, last } = findBridges({ ...network, without });
        const all = reached(network, [without]);
        expect([...nodeOf].sort((a, b) => a - b)).toEqual([...all].sort((a, b) => a - b));
        turn.forEach((place, node) => expect(place).toBe(nodeOf.indexOf(node)));
        network.from.forEach((_, k) => {
          const left = k === without ? all : reached(network, [without, k]);
          const missed = [...all].filter((node) => !left.has(node));
          const told = [...nodeOf.subarray(first[k], last[k])];
          expect(told.sort((a, b) => a - b)).toEqual(missed.sort((a, b) => a - b));
        });
      }),
      { numRuns: 300 },
    );
  });

  it('each node but the roots was found by a branch that leads to one found before it', () => {
    fc.assert(
      fc.property(networks, (network) => {
        const roots = Int32Array.from({ length: network.nodeCount }, (_, v) => v);
        const { nodeOf, turn, via } = findBridges({ ...network, roots });
        expect(nodeOf).toHaveLength(network.nodeCount);
        nodeOf.forEach((node) => {
          const k = via[node] as number;
          if (k === -1) return;
          const ends = [network.from[k] as number, network.to[k] as number];
          expect(ends).toContain(node);
          const other = ends[0] === node ? (ends[1] as number) : (ends[0] as number);
          expect(turn[other] as number).toBeLessThan(turn[node] as number);
        });
      }),
      { numRuns: 100 },
    );
  });
});

describe('edges', () => {
  const chain = networkOf(4, [
    [0, 1],
    [1, 2],
    [2, 3],
  ]);

  it('a chain hangs on each of its branches, a ring on none', () => {
    expect([...findBridges(chain).first]).toEqual([1, 2, 3]);
    expect([...findBridges(chain).last]).toEqual([4, 4, 4]);
    const ring = findBridges({ ...chain, from: Int32Array.of(0, 1, 2, 3), to: Int32Array.of(1, 2, 3, 0) });
    expect([...ring.last]).toEqual([0, 0, 0, 0]);
  });

  it('a chain of 100 000 nodes does not overrun the stack', () => {
    const count = 100_000;
    const from = Int32Array.from({ length: count - 1 }, (_, k) => k);
    const { last } = findBridges({ nodeCount: count, from, to: from.map((k) => k + 1), roots: Int32Array.of(0) });
    expect(last.every((place) => place === count)).toBe(true);
  });

  it('refuses what is no network, by field', () => {
    const bad = (changed: object): unknown => findBridges({ ...chain, ...changed });
    expectInputError(() => bad({ nodeCount: 1.5 }), 'nodeCount');
    expectInputError(() => bad({ from: [0, 1, 2] }), 'from');
    expectInputError(() => bad({ to: Int32Array.of(1) }), 'to');
    expectInputError(() => bad({ to: Int32Array.of(1, 2, 4) }), 'to[2]');
    expectInputError(() => bad({ roots: Int32Array.of(-1) }), 'roots[0]');
  });
});
