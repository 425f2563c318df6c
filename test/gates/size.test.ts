import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { leftBehind, measureSizes, overCeiling } from '../size/measure.js';

let folder: string;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'loomwright-gate-'));
});

afterAll(() => {
  rmSync(folder, { recursive: true });
});

function sample(name: string, text: string): string {
  const file = join(folder, name);
  writeFileSync(file, text);
  return file;
}

describe('what a bundle keeps when nothing is imported', () => {
  it.each([
    ['a product', 'export const TURN = 2 * Math.PI * [1].length;'],
    ['a frozen object', 'export const SIZES = Object.freeze({ a: 1 });'],
    ['a mapped list', 'export const LIST = [1, 2].map((x) => x * 2);'],
    ['a call', 'function f() { return 3; } export const three = globalThis.f ?? f();'],
  ])('is found to hold %s', async (_, text) => {
    expect(await leftBehind(sample('leaks.js', text))).not.toBe('');
  });

  it.each([
    ['literals and functions', 'export const A = 1; export const B = { a: [1, 2] }; export function f() { return A; }'],
    ['what is marked pure', 'export const TURN = /* @__PURE__ */ (() => 2 * Math.PI)();'],
    ['an error class', 'export class WireError extends Error {}'],
  ])('is empty for %s', async (_, text) => {
    expect(await leftBehind(sample('clean.js', text))).toBe('');
  });
});

describe('the ceilings', () => {
  const sizes = new Map([
    ['*', { bytes: 90_000, gzipBytes: 30_000 }],
    ['small', { bytes: 900, gzipBytes: 400 }],
    ['large', { bytes: 9000, gzipBytes: 1001 }],
  ]);

  it('find a name over its own ceiling or over that of the rest', () => {
    expect(overCeiling({ '*': 1000 }, sizes)).toEqual(['large: 1001 bytes gzipped, ceiling 1000']);
    expect(overCeiling({ '*': 1000, small: 399, large: 1001 }, sizes)).toEqual([
      'small: 400 bytes gzipped, ceiling 399',
    ]);
    expect(overCeiling({ '*': 1000, large: 1001 }, sizes)).toEqual([]);
    expect(overCeiling({ large: 1001 }, sizes)).toEqual(['small: 400 bytes gzipped, ceiling 0']);
  });

  it('find a ceiling for nothing, and one beyond the goal', () => {
    expect(overCeiling({ '*': 1001, gone: 500 }, sizes)).toEqual(['gone has a ceiling but is not exported']);
    expect(overCeiling({ '*': 8001 }, sizes)).toEqual(['*: a ceiling of 8001 is beyond the goal']);
  });

  it('are held against what a name brings along, and not against the rest of the file', async () => {
    const heavy = `export const heavy = [${Array.from({ length: 500 }, (_, i) => Math.sin(i)).join(',')}];`;
    sample('lib.mjs', `${heavy}\nexport const light = 1;\nexport const both = () => [light, heavy];`);
    const measured = await measureSizes(folder, './lib.mjs', ['light', 'heavy', 'both']);
    const bytes = (name: string): number => measured.get(name)?.bytes ?? NaN;
    expect(bytes('light')).toBeLessThan(60);
    expect(bytes('heavy')).toBeGreaterThan(5000);
    expect(bytes('both')).toBeGreaterThan(bytes('heavy'));
    expect(bytes('*')).toBeGreaterThan(bytes('both'));
  });
});
