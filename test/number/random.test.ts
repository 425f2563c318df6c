import { describe, expect, it } from 'vitest';
import { randomDraw } from '../../packages/loomwright/src/number/random.js';

/** The generator as a plain big-integer recurrence: multiply and take the remainder. */
function* recurrence(states: readonly bigint[]): Generator<number> {
  const a = [11600n, 47003n, 23000n, 33000n];
  const m = [2147483579n, 2147483543n, 2147483423n, 2147483123n];
  let s = [...states];
  for (;;) {
    s = s.map((x, i) => (a[i]! * x) % m[i]!);
    const w = s.reduce((sum, x, i) => sum + Number(x) / Number(m[i]!), 0);
    yield w - Math.floor(w);
  }
}

describe('independent', () => {
  it('is the plain recurrence of the four remainders', () => {
    // The start is found by stepping back one draw: each multiplier has an inverse.
    const a = [11600n, 47003n, 23000n, 33000n];
    const m = [2147483579n, 2147483543n, 2147483423n, 2147483123n];
    const power = (b: bigint, e: bigint, n: bigint): bigint => {
      let result = 1n;
      for (let base = b % n, k = e; k > 0n; k >>= 1n, base = (base * base) % n)
        if (k & 1n) result = (result * base) % n;
      return result;
    };
    // All four moduli are prime, so a^(m−1) = 1: the recurrence never dies.
    m.forEach((modulus, i) => {
      expect(power(a[i]!, modulus - 1n, modulus)).toBe(1n);
    });
    const scrambled = (seed: number, salt: number): number => {
      let z = (seed + Math.imul(salt, 0x9e3779b9)) | 0;
      z = Math.imul(z ^ (z >>> 16), 0x85ebca6b);
      z = Math.imul(z ^ (z >>> 13), 0xc2b2ae35);
      return ((z ^ (z >>> 16)) >>> 1) + 1;
    };
    for (const seed of [0, 1, 42, -7]) {
      const expected = recurrence(m.map((modulus, i) => BigInt(scrambled(seed, i + 1)) % modulus || 1n));
      const { uniform } = randomDraw(seed);
      for (let i = 0; i < 500; i++) expect(uniform()).toBeCloseTo(expected.next().value as number, 12);
    }
  });
});

describe('laws', () => {
  it('has the moments of a uniform number, and no echo', () => {
    const { uniform } = randomDraw(2024);
    const n = 200_000;
    let [sum, squares, echo, before] = [0, 0, 0, 0.5];
    for (let i = 0; i < n; i++) {
      const u = uniform();
      expect(u > 0 && u < 1).toBe(true);
      sum += u;
      squares += (u - 0.5) ** 2;
      echo += (u - 0.5) * (before - 0.5);
      before = u;
    }
    // Four standard errors each.
    expect(Math.abs(sum / n - 0.5)).toBeLessThan((4 * Math.sqrt(1 / 12)) / Math.sqrt(n));
    expect(Math.abs(squares / n - 1 / 12)).toBeLessThan((4 * Math.sqrt(1 / 180)) / Math.sqrt(n));
    expect(Math.abs(echo / n)).toBeLessThan(4 / 12 / Math.sqrt(n));
  });
  it('has the moments of a normal number', () => {
    const { normal } = randomDraw(7);
    const n = 200_000;
    let [sum, squares, fourth, within] = [0, 0, 0, 0];
    for (let i = 0; i < n; i++) {
      const z = normal();
      sum += z;
      squares += z * z;
      fourth += z ** 4;
      if (Math.abs(z) < 1.959964) within++;
    }
    expect(Math.abs(sum / n)).toBeLessThan(4 / Math.sqrt(n));
    expect(Math.abs(squares / n - 1)).toBeLessThan((4 * Math.SQRT2) / Math.sqrt(n));
    expect(Math.abs(fourth / n - 3)).toBeLessThan((4 * Math.sqrt(96)) / Math.sqrt(n));
    expect(Math.abs(within / n - 0.95)).toBeLessThan((4 * Math.sqrt(0.05 * 0.95)) / Math.sqrt(n));
  });
  it('gives the same numbers for the same seed and others for the next', () => {
    const draws = (seed: number): number[] => {
      const { uniform } = randomDraw(seed);
      return Array.from({ length: 5 }, uniform);
    };
    expect(draws(5)).toEqual(draws(5));
    const firsts = Array.from({ length: 200 }, (_, seed) => draws(seed)[0]!);
    expect(new Set(firsts).size).toBe(200);
    // Neighbouring seeds are no more alike than strangers.
    const steps = firsts.slice(1).map((u, i) => Math.abs(u - firsts[i]!));
    expect(steps.reduce((a, b) => a + b, 0) / steps.length).toBeGreaterThan(0.2);
  });
});
