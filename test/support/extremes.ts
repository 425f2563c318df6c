import { expect } from 'vitest';
import fc from 'fast-check';

/** Every number of a result, with the way to it. */
function numbersOf(value: unknown, at: string): readonly (readonly [string, number])[] {
  if (typeof value === 'number') return [[at, value]];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => numbersOf(inner, `${at}.${key}`));
}

/**
 * Puts very small and very large numbers into the fields of an input, several at a time: the call must either refuse
 * them with an InputError or give a result without NaN and Infinity.
 */
export function neverRunsOut<I extends object>(fn: (input: I) => unknown, input: I, numRuns = 150): void {
  const fields = Object.entries(input).flatMap(([key, value]) => (typeof value === 'number' ? [key] : []));
  const size = fc.constantFrom(0, 1e-300, 1e-12, 1e-6, 1, 1e6, 1e12, 1e300, -1, -1e12);
  fc.assert(
    fc.property(fc.array(fc.tuple(fc.constantFrom(...fields), size), { maxLength: 5, minLength: 1 }), (changes) => {
      let result: unknown;
      try {
        result = fn({ ...input, ...Object.fromEntries(changes) });
      } catch (error) {
        expect(error).toMatchObject({ code: 'LOOMWRIGHT_INPUT' });
        return;
      }
      for (const [at, value] of numbersOf(result, '')) expect(Number.isFinite(value), `${at} is ${value}`).toBe(true);
    }),
    { numRuns },
  );
}
