import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { analyseSymmetric, factorSymmetric, solveLinear, solveSymmetric, type SymmetricFactor } from 'loomwright';
import { cpuMs } from '../support/cpu.js';
import { expectInputError } from '../support/edge.js';
import { expectWithin } from '../support/published.js';

interface Sparse {
  readonly count: number;
  readonly rows: Int32Array;
  readonly columns: Int32Array;
  readonly values: Float64Array;
  readonly diagonal: Float64Array;
}

/** Random numbers from 0 to 1 from a seed. */
function stream(seed: number): () => number {
  let state = (seed * 7919 + 12345) % 2147483647;
  return () => (state = (state * 48271) % 2147483647) / 2147483647;
}

/** A random symmetric matrix whose diagonal outweighs the rest: positive definite. */
function random(seed: number, count: number, entries: number): Sparse {
  const next = stream(seed);
  const pairs = Array.from({ length: count < 2 ? 0 : entries }, () => {
    const i = Math.floor(next() * count);
    return [i, (i + 1 + Math.floor(next() * (count - 1))) % count] as const;
  });
  const values = Float64Array.from(pairs, () => 2 * next() - 1);
  const diagonal = Float64Array.from({ length: count }, () => 0.1 + next());
  pairs.forEach(([i, j], e) => {
    diagonal[i]! += Math.abs(values[e]!);
    diagonal[j]! += Math.abs(values[e]!);
  });
  const rows = Int32Array.from(pairs, ([i]) => i);
  const columns = Int32Array.from(pairs, ([, j]) => j);
  return { count, rows, columns, values, diagonal };
}

function full({ count: n, rows, columns, values, diagonal }: Sparse): Float64Array {
  const matrix = new Float64Array(n * n);
  diagonal.forEach((value, i) => (matrix[i * n + i] = value));
  values.forEach((value, e) => {
    matrix[rows[e]! * n + columns[e]!]! += value;
    matrix[columns[e]! * n + rows[e]!]! += value;
  });
  return matrix;
}

function factored({ count, rows, columns, values, diagonal }: Sparse): SymmetricFactor {
  const factor = factorSymmetric({ analysis: analyseSymmetric({ count, rows, columns }), values, diagonal });
  if (!factor.definite) throw new Error(`not definite at ${factor.unknownIndex}`);
  return factor;
}

/** Largest |A x − b| over the size of what is added there. */
function residual({ count, rows, columns, values, diagonal }: Sparse, x: Float64Array, b: Float64Array): number {
  const sum = Float64Array.from({ length: count }, (_, i) => diagonal[i]! * x[i]! - b[i]!);
  const size = Float64Array.from({ length: count }, (_, i) => Math.abs(diagonal[i]! * x[i]!) + Math.abs(b[i]!));
  values.forEach((value, e) => {
    sum[rows[e]!]! += value * x[columns[e]!]!;
    sum[columns[e]!]! += value * x[rows[e]!]!;
    size[rows[e]!]! += Math.abs(value * x[columns[e]!]!);
    size[columns[e]!]! += Math.abs(value * x[rows[e]!]!);
  });
  return sum.reduce((worst, value, i) => Math.max(worst, Math.abs(value) / Math.max(size[i]!, 1e-300)), 0);
}

/** A square net of resistances of 1 Ω with one corner held. */
function grid(side: number): Sparse {
  const rows: number[] = [];
  const columns: number[] = [];
  for (let i = 0; i < side; i++) {
    for (let j = 0; j < side; j++) {
      const at = i * side + j;
      for (const other of [j + 1 < side ? at + 1 : -1, i + 1 < side ? at + side : -1]) {
        if (other < 0) continue;
        rows.push(at);
        columns.push(other);
      }
    }
  }
  const diagonal = new Float64Array(side * side);
  diagonal[0] = 1;
  rows.forEach((i, e) => {
    diagonal[i]! += 1;
    diagonal[columns[e]!]! += 1;
  });
  const values = new Float64Array(rows.length).fill(-1);
  return { count: side * side, rows: Int32Array.from(rows), columns: Int32Array.from(columns), values, diagonal };
}

/** Ties of each unknown. */
function neighbours({ count, rows, columns }: Sparse): Set<number>[] {
  const tied = Array.from({ length: count }, () => new Set<number>());
  rows.forEach((i, e) => {
    tied[i]!.add(columns[e]!);
    tied[columns[e]!]!.add(i);
  });
  return tied;
}

/** Eliminates an unknown plainly: all of its neighbours become one another's. Gives them. */
function eliminate(tied: Set<number>[], v: number): number[] {
  const near = [...tied[v]!];
  for (const a of near) {
    tied[a]!.delete(v);
    for (const b of near) if (a !== b) tied[a]!.add(b);
  }
  tied[v]!.clear();
  return near;
}

/** Entries of the factor by exact minimum degree, the lower number first where two have the same. */
function leastDegreeSize(sparse: Sparse): number {
  const tied = neighbours(sparse);
  const left = new Set(tied.keys());
  let size = 0;
  while (left.size > 0) {
    let next = -1;
    for (const v of left) if (next < 0 || tied[v]!.size < tied[next]!.size) next = v;
    left.delete(next);
    size += eliminate(tied, next).length;
  }
  return size;
}

/** Branches that hang on one before them, some loops, and busbars that many hang on. */
function vehicle(seed: number, count: number, hubs: number): Sparse {
  const next = stream(seed);
  const rows: number[] = [];
  const columns: number[] = [];
  for (let k = hubs; k < count; k++) {
    const far = next() < 0.4 ? Math.floor(next() * hubs) : Math.max(0, k - 1 - Math.floor(next() * 6));
    for (const other of next() < 0.4 ? [far, Math.floor(next() * k)] : [far]) {
      rows.push(k);
      columns.push(other);
    }
  }
  const values = new Float64Array(rows.length).fill(-1);
  const diagonal = new Float64Array(count).fill(0.5);
  rows.forEach((i, e) => {
    diagonal[i]! += 1;
    diagonal[columns[e]!]! += 1;
  });
  return { count, rows: Int32Array.from(rows), columns: Int32Array.from(columns), values, diagonal };
}

describe('independent', () => {
  it('the pattern is that of plain elimination in the same order', () => {
    const sparse = [
      ...Array.from({ length: 80 }, (_, n) => random(n + 1, 1 + (n % 60), Math.floor((n % 9) * 0.5 * n))),
      ...Array.from({ length: 20 }, (_, n) => vehicle(n + 1, 150 + 10 * n, 1 + (n % 5))),
      grid(1),
      grid(2),
      grid(17),
    ];
    for (const each of sparse) {
      const { count, order, turn, columnStart, rowIndex, rowStart, columnIndex, place } = analyseSymmetric(each);
      expect(Array.from(order, (v) => turn[v]!)).toEqual(Array.from({ length: count }, (_, k) => k));
      const tied = neighbours(each);
      const byRow = Array.from({ length: count }, (): number[] => []);
      order.forEach((v, k) => {
        const wanted = eliminate(tied, v).map((u) => turn[u]!);
        wanted.sort((a, b) => a - b);
        expect(Array.from(rowIndex.subarray(columnStart[k], columnStart[k + 1]))).toEqual(wanted);
        for (const row of wanted) byRow[row]!.push(k);
      });
      byRow.forEach((wanted, k) => {
        const found = Array.from(columnIndex.subarray(rowStart[k], rowStart[k + 1]));
        expect(found.sort((a, b) => a - b)).toEqual(wanted);
      });
      place.forEach((q, e) => {
        const ends = [turn[each.rows[e]!]!, turn[each.columns[e]!]!];
        const column = Math.min(...ends);
        expect(rowIndex[q]).toBe(Math.max(...ends));
        expect(q >= columnStart[column]! && q < columnStart[column + 1]!).toBe(true);
      });
    }
  });
  it('its order leaves hardly more in the factor than exact minimum degree, done plainly', () => {
    const squares = [12, 20, 28, 36].map((side) => grid(side));
    const vehicles = Array.from({ length: 12 }, (_, n) => vehicle(n + 1, 200 + 50 * n, 2 + (n % 5)));
    const others = Array.from({ length: 12 }, (_, n) => random(n + 1, 60 + 10 * n, 120 + 20 * n));
    const share = (each: Sparse): number => analyseSymmetric(each).rowIndex.length / leastDegreeSize(each);
    for (const each of squares) expect(share(each)).toBeLessThan(1.01);
    for (const each of others) expect(share(each)).toBeLessThan(1.05);
    // Busbars are kept for the end.
    for (const each of vehicles) expect(share(each)).toBeLessThan(1.12);
  });
  it('agrees with elimination of the full matrix, on 300 random ones', () => {
    for (let seed = 1; seed <= 300; seed++) {
      const n = 1 + (seed % 40);
      const sparse = random(seed, n, Math.floor(n * (0.3 + (seed % 7) * 0.6)));
      const next = stream(seed + 1000);
      const sides = Float64Array.from({ length: 3 * n }, () => 20 * next() - 10);
      const x = solveSymmetric({ factor: factored(sparse), sides });
      const split = [0, 1, 2].map((k) => sides.slice(k * n, k * n + n));
      const dense = solveLinear({ matrix: full(sparse), sides: split })!;
      split.forEach((_, k) => {
        const scale = dense[k]!.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
        dense[k]!.forEach((value, i) =>
          expect(Math.abs(x[k * n + i]! - value)).toBeLessThanOrEqual(1e-11 * Math.max(scale, 1)),
        );
      });
    }
  });
  it('row sums say the same as the diagonal, and each pivot of an island without a hold is exactly nothing', () => {
    for (let seed = 1; seed <= 60; seed++) {
      const n = 2 + (seed % 25);
      const { rows, columns, values: any } = random(seed, n, 2 * n);
      const values = any.map((value) => -Math.abs(value) - 1e-6);
      const next = stream(seed);
      const rowSums = Float64Array.from({ length: n }, () => (next() < 0.5 ? 0 : next()));
      rowSums[n - 1] = 1e-9;
      const diagonal = rowSums.slice();
      values.forEach((value, e) => {
        diagonal[rows[e]!]! -= value;
        diagonal[columns[e]!]! -= value;
      });
      const analysis = analyseSymmetric({ count: n, rows, columns });
      const floats = factorSymmetric({ analysis, values, rowSums: new Float64Array(n) });
      expect(floats.definite).toBe(false);
      const bySums = factorSymmetric({ analysis, values, rowSums });
      const byDiagonal = factorSymmetric({ analysis, values, diagonal });
      if (!bySums.definite || !byDiagonal.definite) continue;
      const sides = Float64Array.from({ length: n }, () => next());
      const x = solveSymmetric({ factor: bySums, sides });
      const y = solveSymmetric({ factor: byDiagonal, sides });
      x.forEach((value, i) => expectWithin(y[i]!, value, 1e-3));
    }
  });
  it('keeps all digits between 1 µΩ and 1 MΩ where the diagonal would lose ten of them', () => {
    // 12 V, a wire of 1 µΩ, a load of 1 MΩ: x0 is the drop's far end.
    const analysis = analyseSymmetric({ count: 2, rows: Int32Array.of(0), columns: Int32Array.of(1) });
    const factor = factorSymmetric({ analysis, values: Float64Array.of(-1e6), rowSums: Float64Array.of(1e-6, 0) });
    if (!factor.definite) throw new Error('not definite');
    // A current of 1 A into node 1: 1 MΩ and 1 µΩ in series.
    expectWithin(solveSymmetric({ factor, sides: Float64Array.of(0, 1) })[1]!, 1e6 + 1e-6, 2e-16);
  });
});

describe('laws', () => {
  it('multiplying back gives the side', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), fc.integer({ min: 1, max: 200 }), (seed, n) => {
        const sparse = random(seed, n, 2 * n);
        const sides = Float64Array.from({ length: n }, stream(seed));
        expect(residual(sparse, solveSymmetric({ factor: factored(sparse), sides }), sides)).toBeLessThan(1e-14);
      }),
    );
  });
  it('a tree is not filled in', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), fc.integer({ min: 2, max: 300 }), (seed, n) => {
        const next = stream(seed);
        const rows = Int32Array.from({ length: n - 1 }, (_, i) => i + 1);
        const columns = rows.map((i) => Math.floor(next() * i));
        expect(analyseSymmetric({ count: n, rows, columns }).rowIndex.length).toBe(n - 1);
      }),
    );
  });
  it('renaming the unknowns changes nothing but their names', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), fc.integer({ min: 1, max: 60 }), (seed, n) => {
        const sparse = random(seed, n, 2 * n);
        const sides = Float64Array.from({ length: n }, stream(seed));
        const x = solveSymmetric({ factor: factored(sparse), sides });
        const to = (i: number): number => (i * 61 + 7) % n;
        if (new Set(Array.from({ length: n }, (_, i) => to(i))).size < n) return;
        const diagonal = new Float64Array(n);
        const moved = new Float64Array(n);
        for (let i = 0; i < n; i++) {
          diagonal[to(i)] = sparse.diagonal[i]!;
          moved[to(i)] = sides[i]!;
        }
        const renamed = { ...sparse, diagonal, rows: sparse.rows.map(to), columns: sparse.columns.map(to) };
        const y = solveSymmetric({ factor: factored(renamed), sides: moved });
        for (let i = 0; i < n; i++) expect(Math.abs(y[to(i)]! - x[i]!)).toBeLessThan(1e-12);
      }),
    );
  });
});

describe('edges', () => {
  it('a hub with 50 000 neighbours, two hubs, a full matrix and a net of 90 000 take no long while', () => {
    const n = 50000;
    const ring = Int32Array.from({ length: n }, (_, i) => i);
    // Two hubs, each tied to everything: what a battery and a body are.
    const hubs: Sparse = {
      count: n + 2,
      rows: Int32Array.from([...ring, ...ring]),
      columns: Int32Array.from({ length: 2 * n }, (_, e) => (e < n ? n : n + 1)),
      values: new Float64Array(2 * n).fill(-1),
      diagonal: Float64Array.from({ length: n + 2 }, (_, i) => (i < n ? 2.5 : n + 1)),
    };
    // Three wires from each, and its neighbour: columns of three.
    const wheel: Sparse = {
      ...hubs,
      rows: Int32Array.from([...hubs.rows, ...ring.subarray(1)]),
      columns: Int32Array.from([...hubs.columns, ...ring.subarray(0, n - 1)]),
      values: new Float64Array(3 * n - 1).fill(-1),
      diagonal: Float64Array.from({ length: n + 2 }, (_, i) => (i < n ? 4.5 : n + 1)),
    };
    for (const sparse of [hubs, wheel, grid(300), random(5, 300, 45000)]) {
      const started = cpuMs();
      const factor = factored(sparse);
      const sides = Float64Array.from({ length: sparse.count }, (_, i) => Math.sin(i));
      expect(residual(sparse, solveSymmetric({ factor, sides }), sides)).toBeLessThan(1e-13);
      expect(cpuMs() - started).toBeLessThan(20000);
    }
    expect(analyseSymmetric(hubs).rowIndex.length).toBeLessThan(2 * n + 2);
  });
  it('names the unknown of a singular matrix', () => {
    const analysis = analyseSymmetric({ count: 3, rows: Int32Array.of(1), columns: Int32Array.of(2) });
    const values = Float64Array.of(-1);
    const held = factorSymmetric({ analysis, values, rowSums: Float64Array.of(0, 1, 0) });
    expect(held).toEqual({ definite: false, unknownIndex: 0 });
    const floats = factorSymmetric({ analysis, values, diagonal: Float64Array.of(1, 1, 1) });
    expect(floats.definite).toBe(false);
    expect([1, 2]).toContain((floats as { readonly unknownIndex: number }).unknownIndex);
    const negative = factorSymmetric({ analysis, values, diagonal: Float64Array.of(-1, 2, 2) });
    expect(negative).toEqual({ definite: false, unknownIndex: 0 });
  });
  it('nothing to solve is solved', () => {
    const none = { count: 0, rows: new Int32Array(0), columns: new Int32Array(0) };
    const factor = factorSymmetric({
      analysis: analyseSymmetric(none),
      values: new Float64Array(0),
      diagonal: new Float64Array(0),
    }) as SymmetricFactor;
    expect(solveSymmetric({ factor, sides: new Float64Array(0) }).length).toBe(0);
  });
  it('writes where it is told to, and uses arrays again', () => {
    const sparse = random(3, 20, 40);
    const analysis = analyseSymmetric(sparse);
    const first = factorSymmetric({ analysis, ...sparse }) as SymmetricFactor;
    const again = factorSymmetric({ analysis, ...sparse, into: first }) as SymmetricFactor;
    expect(again.lower).toBe(first.lower);
    const sides = Float64Array.from({ length: 40 }, stream(1));
    const wanted = solveSymmetric({ factor: first, sides });
    const into = sides.slice();
    expect(solveSymmetric({ factor: again, sides: into, into, scratch: new Float64Array(20) })).toBe(into);
    expect(into).toEqual(wanted);
  });
  it('refuses what does not fit', () => {
    const ok = { count: 2, rows: Int32Array.of(0), columns: Int32Array.of(1) };
    expectInputError(() => analyseSymmetric(null as never), 'input', 'object');
    expectInputError(() => analyseSymmetric({ ...ok, count: 1.5 }), 'count', 'integer');
    expectInputError(() => analyseSymmetric({ ...ok, rows: [0] as never }), 'rows', 'list');
    expectInputError(() => analyseSymmetric({ ...ok, columns: Int32Array.of(1, 1) }), 'columns', 'list');
    expectInputError(() => analyseSymmetric({ ...ok, columns: Int32Array.of(2) }), 'columns[0]', 'range');
    expectInputError(() => analyseSymmetric({ ...ok, columns: Int32Array.of(0) }), 'columns[0]', 'range');
    const analysis = analyseSymmetric(ok);
    const values = Float64Array.of(-1);
    const diagonal = Float64Array.of(2, 2);
    expectInputError(() => factorSymmetric({ analysis, values }), 'diagonal', 'oneOfFields');
    expectInputError(() => factorSymmetric({ analysis, values, diagonal, rowSums: diagonal }), 'diagonal');
    expectInputError(
      () => factorSymmetric({ analysis, values: Float64Array.of(NaN), diagonal }),
      'values[0]',
      'finite',
    );
    expectInputError(() => factorSymmetric({ analysis, values, diagonal: values }), 'diagonal', 'list');
    const factor = factorSymmetric({ analysis, values, diagonal }) as SymmetricFactor;
    expectInputError(() => solveSymmetric({ factor, sides: Float64Array.of(1) }), 'sides', 'list');
    expectInputError(() => solveSymmetric({ factor, sides: Float64Array.of(1, Infinity) }), 'sides[1]', 'finite');
    expectInputError(() => solveSymmetric({ factor, sides: diagonal, into: values }), 'into', 'list');
    expectInputError(() => solveSymmetric({ factor, sides: diagonal, scratch: values }), 'scratch', 'list');
    expectInputError(() => solveSymmetric({ factor: { definite: false } as never, sides: diagonal }), 'factor');
  });
});
