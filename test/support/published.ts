// Checks against things outside the project. Two kinds, counted apart by the word that begins their title:
// `computed`: the library computes what a source prints. `transcribed`: a table of ours compared with its print.
import { expect, it } from 'vitest';
import { sources, type SourceKey, type SourceStatus } from 'loomwright';

export interface Citation {
  readonly source: SourceKey;
  /** Clause, table, page or row. */
  readonly place: string;
  readonly status: SourceStatus;
}

/** One value that the library computes and a source prints. */
export function computed(name: string, cite: Citation, run: () => void): void {
  it(`computed · ${name} · ${title(cite)}`, run);
}

/** One row of a table of ours against the print. */
export function transcribed(name: string, cite: Citation, run: () => void): void {
  it(`transcribed · ${name} · ${title(cite)}`, run);
}

function title({ source, place, status }: Citation): string {
  if (!(source in sources)) throw new Error(`no source '${source}'`);
  return `${source}, ${place} (${status})`;
}

/**
 * The value agrees with the print: within half a unit of its last digit, unless the source itself rounds more
 * coarsely (`ulps`, said beside the call).
 */
export function expectPrinted(actual: number, print: string, ulps = 0.5): void {
  const value = Number(print);
  if (!Number.isFinite(value)) throw new Error(`'${print}' is not a number`);
  const [mantissa = '', exponent = '0'] = print.toLowerCase().split('e');
  const decimals = mantissa.includes('.') ? mantissa.length - mantissa.indexOf('.') - 1 : 0;
  const unit = 10 ** (Number(exponent) - decimals);
  const off = Math.abs(actual - value) / unit;
  expect(off, `${actual} against ${print} as printed`).toBeLessThanOrEqual(ulps + 1e-6);
}

/** Relative agreement, for values that an independent method gives. */
export function expectWithin(actual: number, expected: number, relative: number): void {
  const scale = Math.max(Math.abs(expected), Number.MIN_VALUE);
  expect(Math.abs(actual - expected) / scale, `${actual} against ${expected}`).toBeLessThanOrEqual(relative);
}
