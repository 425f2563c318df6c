import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { solveLinear, sweepTree, type SweepTreeInput } from 'loomwright';
import { expectInputError } from '../support/edge.js';
import { evenlyWithEnds } from '../support/law.js';
import { expectWithin } from '../support/published.js';

const tree = fc.integer({ min: 1, max: 30 }).chain((n) => {
  const list = (min: number, max: number) =>
    fc.array(evenlyWithEnds(min, max), { minLength: n, maxLength: n }).map((a) => Float64Array.from(a));
  return fc.record({
    parent: fc
      .array(evenlyWithEnds(0, 0.999), { minLength: n, maxLength: n })
      .map((a) => Int32Array.from(a, (share, k) => Math.floor(share * (k + 1)) - 1)),
    resistanceOhm: list(0.001, 2),
    drawnA: list(-3, 10),
    shuntPerOhm: list(0, 2),
    feedV: evenlyWithEnds(0, 30),
  });
});

describe('independent', () => {
  it('agrees with the node equations, solved as a full matrix', () => {
    fc.assert(
      fc.property(tree, (input) => {
        const n = input.parent.length;
        const matrix = new Float64Array(n * n);
        const side = Float64Array.from(input.drawnA, (a) => -a);
        input.parent.forEach((above, k) => {
          const g = 1 / input.resistanceOhm[k]!;
          matrix[k * n + k]! += g + input.shuntPerOhm[k]!;
          if (above < 0) side[k]! += g * input.feedV;
          else {
            matrix[above * n + above]! += g;
            matrix[k * n + above]! -= g;
            matrix[above * n + k]! -= g;
          }
        });
        const wanted = solveLinear({ matrix, sides: [side] })![0]!;
        const { nodeV, branchA } = sweepTree(input);
        nodeV.forEach((v, k) => {
          expect(Math.abs(v - wanted[k]!)).toBeLessThan(1e-8);
          const above = input.parent[k]!;
          const drop = (above < 0 ? input.feedV : nodeV[above]!) - v;
          expect(Math.abs(branchA[k]! * input.resistanceOhm[k]! - drop)).toBeLessThan(1e-9);
        });
      }),
    );
  });
  it('without conductances it says the same as with conductances of nothing', () => {
    fc.assert(
      fc.property(tree, (input) => {
        const { parent, resistanceOhm, drawnA, feedV } = input;
        const bare = sweepTree({ parent, resistanceOhm, drawnA, feedV });
        const none = sweepTree({ ...input, shuntPerOhm: new Float64Array(parent.length) });
        bare.nodeV.forEach((v, k) => expect(Math.abs(v - none.nodeV[k]!)).toBeLessThan(1e-10));
      }),
    );
  });
});

describe('laws', () => {
  it('currents add up at each node', () => {
    fc.assert(
      fc.property(tree, (input) => {
        const { nodeV, branchA } = sweepTree(input);
        const sum = Float64Array.from(branchA, (a, k) => a - input.drawnA[k]! - input.shuntPerOhm[k]! * nodeV[k]!);
        input.parent.forEach((above, k) => {
          if (above >= 0) sum[above]! -= branchA[k]!;
        });
        sum.forEach((rest) => expect(Math.abs(rest)).toBeLessThan(1e-9));
      }),
    );
  });
  it('twice the volts and twice the currents give twice of everything', () => {
    fc.assert(
      fc.property(tree, (input) => {
        const one = sweepTree(input);
        const two = sweepTree({ ...input, feedV: 2 * input.feedV, drawnA: input.drawnA.map((a) => 2 * a) });
        one.nodeV.forEach((v, k) => expect(Math.abs(two.nodeV[k]! - 2 * v)).toBeLessThanOrEqual(1e-300));
      }),
    );
  });
});

const ok: SweepTreeInput = {
  parent: Int32Array.of(-1, 0, 0),
  resistanceOhm: Float64Array.of(0.1, 0, 0.2),
  drawnA: Float64Array.of(1, 2, 3),
  feedV: 12,
};

describe('edges', () => {
  it('a tree worked by hand, with a joint of 0 Ω', () => {
    const { nodeV, branchA } = sweepTree(ok);
    expect(Array.from(branchA)).toEqual([6, 2, 3]);
    [11.4, 11.4, 10.8].forEach((v, k) => expectWithin(nodeV[k]!, v, 1e-15));
  });
  it('a chain of 100 000 and no node at all', () => {
    const n = 100000;
    const chain = sweepTree({
      parent: Int32Array.from({ length: n }, (_, k) => k - 1),
      resistanceOhm: new Float64Array(n).fill(1e-6),
      drawnA: Float64Array.from({ length: n }, (_, k) => (k === n - 1 ? 10 : 0)),
      feedV: 12,
    });
    expectWithin(chain.nodeV[n - 1]!, 11, 1e-10);
    expect(
      sweepTree({ ...ok, parent: new Int32Array(0), resistanceOhm: new Float64Array(0), drawnA: new Float64Array(0) })
        .nodeV.length,
    ).toBe(0);
  });
  it('writes where it is told to', () => {
    const into = { nodeV: new Float64Array(3), branchA: new Float64Array(3) };
    expect(sweepTree({ ...ok, into }).nodeV).toBe(into.nodeV);
  });
  it('refuses a number that is not finite wherever it stands, also where nothing flows', () => {
    const shunted = { ...ok, shuntPerOhm: Float64Array.of(0, 0, 0) };
    for (const drawnA of [ok.drawnA, new Float64Array(3)]) {
      for (const field of ['resistanceOhm', 'drawnA', 'shuntPerOhm'] as const) {
        for (const whole of field === 'shuntPerOhm' ? [shunted] : [ok, shunted]) {
          for (let k = 0; k < 3; k++) {
            for (const value of [NaN, Infinity, ...(field === 'drawnA' ? [-Infinity] : [])]) {
              const list = Float64Array.from({ ...whole, drawnA }[field] ?? []);
              list[k] = value;
              const input = { ...whole, drawnA, [field]: list };
              expectInputError(() => sweepTree(input), `${field}[${k}]`, 'finite');
            }
          }
        }
      }
    }
  });
  it('refuses currents whose volts are beyond all numbers', () => {
    const huge = Float64Array.of(1, 1e308, 1e308);
    expectInputError(() => sweepTree({ ...ok, drawnA: huge }), 'drawnA', 'range');
    expectInputError(() => sweepTree({ ...ok, drawnA: huge, shuntPerOhm: new Float64Array(3) }), 'drawnA', 'range');
  });
  it('refuses nonsense', () => {
    expectInputError(() => sweepTree(undefined as never), 'input', 'object');
    expectInputError(() => sweepTree({ ...ok, parent: [0] as never }), 'parent', 'list');
    expectInputError(() => sweepTree({ ...ok, parent: Int32Array.of(0, 0, 0) }), 'parent[0]', 'range');
    expectInputError(() => sweepTree({ ...ok, parent: Int32Array.of(-1, -2, 0) }), 'parent[1]', 'range');
    const shuntPerOhm = new Float64Array(3);
    for (const parent of [
      Int32Array.of(-1, 0, 2),
      Int32Array.of(-1, 2147483647, 0),
      Int32Array.of(-1, -2147483648, 0),
    ]) {
      const at = parent[1] === 0 ? 'parent[2]' : 'parent[1]';
      expectInputError(() => sweepTree({ ...ok, parent }), at, 'range');
      expectInputError(() => sweepTree({ ...ok, parent, shuntPerOhm }), at, 'range');
    }
    expectInputError(
      () => sweepTree({ ...ok, shuntPerOhm, resistanceOhm: Float64Array.of(0, 0, -1) }),
      'resistanceOhm[2]',
      'atLeast',
    );
    expectInputError(
      () => sweepTree({ ...ok, resistanceOhm: Float64Array.of(0, -1, 0) }),
      'resistanceOhm[1]',
      'atLeast',
    );
    expectInputError(() => sweepTree({ ...ok, drawnA: Float64Array.of(0, NaN, 0) }), 'drawnA[1]', 'finite');
    expectInputError(() => sweepTree({ ...ok, shuntPerOhm: Float64Array.of(0, 0, -1) }), 'shuntPerOhm[2]', 'atLeast');
    expectInputError(() => sweepTree({ ...ok, shuntPerOhm: Float64Array.of(-1, 2, 2) }), 'shuntPerOhm[0]', 'atLeast');
    expectInputError(() => sweepTree({ ...ok, feedV: NaN }), 'feedV', 'finite');
    expectInputError(() => sweepTree({ ...ok, feedV: undefined as never }), 'feedV', 'missing');
    expectInputError(
      () => sweepTree({ ...ok, into: { nodeV: new Float64Array(1), branchA: new Float64Array(3) } }),
      'into',
    );
  });
});
