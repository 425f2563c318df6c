import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { solveLinear } from 'loomwright';
import { evenly } from '../support/law.js';

describe('independent', () => {
  it('solves a system solved by hand, and needs no pivot in place', () => {
    // 2y + z = 7 or 1; x + y = 3 or 0; 4x − z = 1 or 0.
    const x = solveLinear({
      matrix: Float64Array.of(0, 2, 1, 1, 1, 0, 4, 0, -1),
      sides: [Float64Array.of(7, 3, 1), Float64Array.of(1, 0, 0)],
    })!;
    expect(Array.from(x[0]!)).toEqual([1, 2, 3]);
    expect(Array.from(x[1]!)).toEqual([0.5, -0.5, 2]);
  });
});

describe('laws', () => {
  it('multiplying back gives the side', () => {
    fc.assert(
      fc.property(
        fc
          .integer({ min: 1, max: 8 })
          .chain((n) =>
            fc.tuple(
              fc.constant(n),
              fc.array(evenly(-1, 1), { minLength: n * n, maxLength: n * n }),
              fc.array(evenly(-10, 10), { minLength: n, maxLength: n }),
            ),
          ),
        ([n, a, b]) => {
          const matrix = Float64Array.from(a);
          for (let i = 0; i < n; i++) matrix[i * n + i] = matrix[i * n + i]! + 2 * n;
          const x = solveLinear({ matrix, sides: [Float64Array.from(b)] })![0]!;
          for (let i = 0; i < n; i++) {
            let sum = 0;
            for (let j = 0; j < n; j++) sum += matrix[i * n + j]! * x[j]!;
            expect(Math.abs(sum - b[i]!)).toBeLessThan(1e-11);
          }
        },
      ),
    );
  });
});

describe('edges', () => {
  it('refuses a side of another length', () => {
    expect(() => solveLinear({ matrix: Float64Array.of(1, 0, 0, 1), sides: [Float64Array.of(1)] })).toThrow(
      /solveLinear: sides/,
    );
    expect(() => solveLinear({ matrix: Float64Array.of(1, 0), sides: [] })).toThrow(/solveLinear: sides/);
  });
  it('says null for a singular matrix and changes nothing that it is given', () => {
    expect(solveLinear({ matrix: Float64Array.of(1, 2, 2, 4), sides: [Float64Array.of(1, 2)] })).toBe(null);
    const matrix = Float64Array.of(2, 0, 0, 2);
    const side = Float64Array.of(1, 1);
    solveLinear({ matrix, sides: [side] });
    expect(Array.from(matrix)).toEqual([2, 0, 0, 2]);
    expect(Array.from(side)).toEqual([1, 1]);
  });
});
