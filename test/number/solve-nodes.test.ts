import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  analyseNodes,
  type AnalyseNodesInput,
  type NodeAnalysis,
  solveLinear,
  solveNodes,
  type SolvedNodes,
} from 'loomwright';
import { expectInputError } from '../support/edge.js';
import { computed, expectPrinted } from '../support/published.js';

interface Nodes extends AnalyseNodesInput {
  readonly perOhm: Float64Array;
  readonly drivenA: Float64Array;
}

/** Random numbers from 0 to 1 from a seed. */
function stream(seed: number): () => number {
  let state = (seed * 7919 + 12345) % 2147483647;
  return () => (state = (state * 48271) % 2147483647) / 2147483647;
}

/** A tree with some more branches, held at node 0; conductances over `decades` decades. */
function random(seed: number, nodeCount: number, loops: number, decades = 3): Nodes {
  const next = stream(seed);
  const ends = [
    ...Array.from({ length: nodeCount - 1 }, (_, i) => [i + 1, Math.floor(next() * (i + 1))] as const),
    ...Array.from({ length: loops }, () => [Math.floor(next() * nodeCount), Math.floor(next() * nodeCount)] as const),
  ];
  return {
    nodeCount,
    from: Int32Array.from(ends, ([a]) => a),
    to: Int32Array.from(ends, ([, b]) => b),
    held: Int32Array.of(0),
    perOhm: Float64Array.from(ends, () => 10 ** (decades * next())),
    drivenA: Float64Array.from(ends, () => (next() < 0.3 ? 20 * next() - 10 : 0)),
  };
}

function solved(nodes: Nodes, analysis: NodeAnalysis = analyseNodes(nodes), correctionCount?: number): SolvedNodes {
  const { perOhm, drivenA } = nodes;
  const found = solveNodes({
    analysis,
    perOhm,
    drivenA,
    ...(correctionCount === undefined ? {} : { correctionCount }),
  });
  if (!found.definite) throw new Error(`not definite at ${found.nodeIndex}`);
  return found;
}

/** Volts by a full matrix. */
function dense({ nodeCount, from, to, perOhm, drivenA }: Nodes): Float64Array {
  const n = nodeCount - 1;
  const matrix = new Float64Array(n * n);
  const sides = new Float64Array(n);
  from.forEach((a, k) => {
    const [i, j, g] = [a - 1, to[k]! - 1, perOhm[k]!];
    if (i === j) return;
    if (i >= 0) {
      matrix[i * n + i]! += g;
      sides[i]! -= drivenA[k]!;
    }
    if (j >= 0) {
      matrix[j * n + j]! += g;
      sides[j]! += drivenA[k]!;
    }
    if (i >= 0 && j >= 0) {
      matrix[i * n + j]! -= g;
      matrix[j * n + i]! -= g;
    }
  });
  const found = solveLinear({ matrix, sides: [sides] });
  if (found === null) throw new Error('singular');
  return Float64Array.of(0, ...found[0]!);
}

/** What is left over at each node that is not held, over the largest current there or driven there, or a millionth of that anywhere. */
function leftOver({ nodeCount, from, to, held, drivenA }: Nodes, branchA: Float64Array): number {
  const sum = new Float64Array(nodeCount);
  const size = new Float64Array(nodeCount);
  branchA.forEach((a, k) => {
    sum[from[k]!]! -= a;
    sum[to[k]!]! += a;
    for (const v of [from[k]!, to[k]!]) size[v] = Math.max(size[v]!, Math.abs(a), Math.abs(drivenA[k]!));
  });
  const least = 1e-6 * Math.max(...size);
  return Math.max(...sum.map((a, v) => (held.includes(v) || a === 0 ? 0 : Math.abs(a) / Math.max(size[v]!, least))));
}

describe('published', () => {
  // 1 node 0 (held), 2: R1 150 and R2 50 from the supply, R3 100 between, R4 300 and R5 250 back; the supply is node 1.
  const cite = {
    source: 'lessons-electric-circuits',
    place: 'volume I, chapter 10, unbalanced bridge, listing of the simulator',
    status: 'published',
  } as const;
  const bridge = {
    nodeCount: 4,
    from: Int32Array.of(0, 0, 2, 2, 3),
    to: Int32Array.of(2, 3, 3, 0, 0),
    held: Int32Array.of(0),
    perOhm: Float64Array.of(1 / 150, 1 / 50, 1 / 100, 1 / 300, 1 / 250),
    // The supply of 24 V stands in the two upper arms, as the current that it would drive through each.
    drivenA: Float64Array.of(24 / 150, 24 / 50, 0, 0, 0),
  };
  computed('nodes of a bridge', cite, () => {
    const { nodeV } = solved({ ...bridge, held: Int32Array.of(0, 1) });
    expectPrinted(nodeV[2]!, '17.66');
    expectPrinted(nodeV[3]!, '19.31');
  });
});

describe('independent', () => {
  it('random networks against a full matrix', () => {
    for (let seed = 1; seed <= 200; seed++) {
      const nodes = random(seed, 2 + (seed % 30), seed % 12);
      const { nodeV, branchA } = solved(nodes);
      const wanted = dense(nodes);
      nodeV.forEach((v, i) => {
        expect(Math.abs(v - wanted[i]!), `${seed}: ${i}`).toBeLessThan(1e-9 * (1 + Math.abs(wanted[i]!)));
      });
      nodes.from.forEach((a, k) => {
        const wantedA = nodes.perOhm[k]! * (wanted[a]! - wanted[nodes.to[k]!]!) + nodes.drivenA[k]!;
        expect(Math.abs(branchA[k]! - wantedA)).toBeLessThan(1e-7 * (1 + Math.abs(wantedA)));
      });
    }
  });
});

describe('laws', () => {
  it('currents add up to the last digits, over nine decades of conductance', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), (seed) => {
        const nodes = random(seed, 3 + (seed % 40), seed % 20, 9);
        expect(leftOver(nodes, solved(nodes).branchA)).toBeLessThan(1e-11);
      }),
      { numRuns: 300 },
    );
  });
  it('one correction leaves no more than none does', () => {
    let better = 0;
    for (let seed = 1; seed <= 60; seed++) {
      const nodes = random(seed, 30, 15, 9);
      const analysis = analyseNodes(nodes);
      const [none, one] = [0, 1].map((count) => leftOver(nodes, solved(nodes, analysis, count).branchA));
      if (one! < none!) better++;
      expect(one!).toBeLessThanOrEqual(Math.max(none!, 1e-14));
    }
    expect(better).toBeGreaterThan(10);
  });
  it('twice the currents, twice the volts; twice the conductances, half of them', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), (seed) => {
        const nodes = random(seed, 12, 6);
        const { nodeV } = solved(nodes);
        const more = solved({ ...nodes, drivenA: nodes.drivenA.map((a) => 2 * a) }).nodeV;
        const less = solved({ ...nodes, perOhm: nodes.perOhm.map((g) => 2 * g) }).nodeV;
        nodeV.forEach((v, i) => {
          expect(Math.abs(more[i]! - 2 * v)).toBeLessThan(1e-12 * (1 + Math.abs(v)));
          expect(Math.abs(less[i]! - v / 2)).toBeLessThan(1e-12 * (1 + Math.abs(v)));
        });
      }),
    );
  });
  it('an analysis serves every network with the same branches, also where some are open', () => {
    const one = random(7, 20, 15);
    const analysis = analyseNodes(one);
    for (let seed = 1; seed <= 20; seed++) {
      const next = stream(seed);
      // The tree stays; the rest is open or not.
      const perOhm = one.perOhm.map((g, k) => (k >= 19 && next() < 0.5 ? 0 : g * next() + 0.1));
      const other = { ...one, perOhm };
      const wanted = dense(other);
      solved(other, analysis).nodeV.forEach((v, i) => {
        expect(Math.abs(v - wanted[i]!)).toBeLessThan(1e-9 * (1 + Math.abs(v)));
      });
    }
  });
  it('a node held is at 0, and takes what the others leave', () => {
    const nodes = { ...random(11, 10, 5), held: Int32Array.of(0, 4, 7) };
    const { nodeV } = solved(nodes);
    expect([nodeV[0], nodeV[4], nodeV[7]]).toEqual([0, 0, 0]);
  });
});

describe('edges', () => {
  const pair = {
    nodeCount: 2,
    from: Int32Array.of(0, 1),
    to: Int32Array.of(1, 0),
    held: Int32Array.of(0),
    perOhm: Float64Array.of(10, 1),
    drivenA: Float64Array.of(121, 0),
  };
  const analysis = analyseNodes(pair);
  it('no node, no branch, both ends on one node', () => {
    const none = { nodeCount: 0, from: new Int32Array(0), to: new Int32Array(0), held: new Int32Array(0) };
    const empty = new Float64Array(0);
    expect(solved({ ...none, perOhm: empty, drivenA: empty }).nodeV).toEqual(empty);
    const ring = { ...pair, from: Int32Array.of(1, 0), to: Int32Array.of(1, 1) };
    const { nodeV, branchA } = solved({ ...ring, drivenA: Float64Array.of(5, 2) });
    expect([nodeV[1], branchA[0], branchA[1]]).toEqual([2, 5, 0]);
  });
  it('a part that nothing holds, and conductances below 0 that outweigh the rest, are an answer', () => {
    expect(solveNodes({ analysis, perOhm: Float64Array.of(0, 0), drivenA: pair.drivenA })).toEqual({
      definite: false,
      nodeIndex: 1,
    });
    expect(solveNodes({ analysis, perOhm: Float64Array.of(1, -2), drivenA: pair.drivenA }).definite).toBe(false);
    const held = solved({ ...pair, perOhm: Float64Array.of(3, -1), drivenA: Float64Array.of(8, 0) }, analysis);
    expect(held.nodeV[1]).toBeCloseTo(4, 12);
  });
  it('refuses what is not whole', () => {
    const bad = (over: object, field: string, rule: 'missing' | 'list' | 'range' | 'integer' | 'number'): void => {
      expectInputError(() => analyseNodes({ ...pair, ...over }), field, rule);
    };
    bad({ nodeCount: 1.5 }, 'nodeCount', 'integer');
    bad({ nodeCount: 'two' }, 'nodeCount', 'number');
    bad({ from: undefined }, 'from', 'missing');
    bad({ held: undefined }, 'held', 'missing');
    bad({ to: [1, 0] }, 'to', 'list');
    bad({ to: Int32Array.of(1) }, 'to', 'list');
    bad({ held: [0] }, 'held', 'list');
    bad({ from: Int32Array.of(0, 2) }, 'from[1]', 'range');
    bad({ from: Int32Array.of(-1, 0) }, 'from[0]', 'range');
    bad({ held: Int32Array.of(2) }, 'held[0]', 'range');
    for (const value of [undefined, null, 4, []]) {
      expectInputError(() => analyseNodes(value as never), 'input', 'object');
      expectInputError(() => solveNodes(value as never), 'input', 'object');
    }
    const { perOhm, drivenA } = pair;
    expectInputError(() => solveNodes({ analysis: undefined as never, perOhm, drivenA }), 'analysis', 'missing');
    expectInputError(() => solveNodes({ analysis: 3 as never, perOhm, drivenA }), 'analysis', 'object');
    expectInputError(() => solveNodes({ analysis, perOhm: undefined as never, drivenA }), 'perOhm', 'missing');
    expectInputError(() => solveNodes({ analysis, perOhm: [1, 2] as never, drivenA }), 'perOhm', 'list');
    expectInputError(() => solveNodes({ analysis, perOhm, drivenA: Float64Array.of(1) }), 'drivenA', 'list');
    expectInputError(() => solveNodes({ analysis, perOhm: Float64Array.of(1, NaN), drivenA }), 'perOhm[1]', 'finite');
    expectInputError(
      () => solveNodes({ analysis, perOhm, drivenA, correctionCount: -1 }),
      'correctionCount',
      'atLeast',
    );
  });
});
