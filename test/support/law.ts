import { expect } from 'vitest';
import fc from 'fast-check';

type Fields = Record<string, unknown>;

/** The unit at the end of a field's name: 'outLengthM' and 'returnLengthM' are of one kind. */
function kindOf(field: string): string | undefined {
  return /(?:Mm2|Mm|Ohm|OhmPerM|TempC|RiseK|Fraction|A2s|Ah|Hz|Nm|Kg|Kpa|Deg|Kmh|Rpm|[A-Z])$/.exec(field)?.[0];
}

/**
 * Swaps every pair of inputs of one kind and demands that the result changes: two swapped arguments must not go
 * unseen. Pairs whose symmetry is physics are declared.
 */
export function swapsMatter<I extends object>(
  fn: (input: I) => unknown,
  input: I,
  symmetric: readonly (readonly [keyof I & string, keyof I & string])[] = [],
): void {
  const fields = Object.entries(input as Fields).filter(([, value]) => typeof value === 'number');
  const before = JSON.stringify(fn(input));
  for (let i = 0; i < fields.length; i++) {
    for (let j = i + 1; j < fields.length; j++) {
      const [a, va] = fields[i]!;
      const [b, vb] = fields[j]!;
      if (kindOf(a) === undefined || kindOf(a) !== kindOf(b) || va === vb) continue;
      const declared = symmetric.some(([x, y]) => (x === a && y === b) || (x === b && y === a));
      let after: string;
      try {
        after = JSON.stringify(fn({ ...input, [a]: vb, [b]: va }));
      } catch {
        continue; // refused: the swap did not go unseen
      }
      if (declared) expect(after, `${a} and ${b} are declared symmetric`).toBe(before);
      else expect(after, `${a} and ${b} swapped`).not.toBe(before);
    }
  }
}

/**
 * Numbers spread evenly over a range. `fc.double` spreads over exponents: nine in ten of what it draws from 0 to 1 lie
 * below a hundredth, and what happens in the middle of a range is hardly tried.
 */
export function evenly(low: number, high: number): fc.Arbitrary<number> {
  return fc.noBias(fc.integer({ min: 0, max: 1e6 })).map((k) => low + ((high - low) * k) / 1e6);
}

/** The same with both ends among them, one draw in ten each: for a range whose zero is worth trying too. */
export function evenlyWithEnds(low: number, high: number): fc.Arbitrary<number> {
  return fc.oneof({ arbitrary: evenly(low, high), weight: 8 }, { arbitrary: fc.constantFrom(low, high), weight: 2 });
}
