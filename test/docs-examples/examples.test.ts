import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import * as core from 'loomwright';
import { exportedFunctions, type DocBlock } from '../support/doc-blocks.js';
import { docFaults, exampleFault, examplesOf, type Example } from '../support/doc-examples.js';

const entry = fileURLToPath(new URL('../../packages/loomwright/src/index.ts', import.meta.url));
const blocks = exportedFunctions(entry);
const scope: Readonly<Record<string, unknown>> = core;

describe('every public function', () => {
  it('is found, and no other', () => {
    const functions = Object.entries(scope)
      .filter(([, value]) => typeof value === 'function' && !/^class\b/.test(String(value)))
      .map(([name]) => name);
    expect(blocks.map(({ name }) => name).sort()).toEqual(functions.sort());
    expect(functions.length).toBeGreaterThan(20);
  });

  it.each(blocks.map((block) => [block.name, block] as const))(
    '%s: summary, @returns, @throws, @source and an example that gives what it says',
    (_, block) => {
      expect(docFaults(block)).toEqual([]);
      for (const example of examplesOf(block)) {
        expect(exampleFault(example, scope), `${example.expression} //=> ${example.stated}`).toBeNull();
      }
    },
  );
});

describe('the test itself', () => {
  const bad = exportedFunctions(fileURLToPath(new URL('../gates/bad/doc-blocks/bad.ts', import.meta.url)));
  const block = (name: string): DocBlock => {
    const found = bad.find((candidate) => candidate.name === name);
    if (found === undefined) throw new Error(`no function ${name}`);
    return found;
  };

  it('finds what a doc block lacks', () => {
    expect(bad.map(({ name }) => name).sort()).toEqual(['arrow', 'bare', 'half', 'twice']);
    expect(docFaults(block('twice'))).toEqual([]);
    expect(docFaults(block('half'))).toEqual(['no @example with //=>']);
    expect(docFaults(block('bare'))).toEqual(['no summary sentence', 'no @returns', 'no @throws', 'no @source']);
    expect(docFaults(block('arrow'))).toHaveLength(5);
  });

  it('finds an example that gives something else', () => {
    const [example] = examplesOf(block('twice'));
    expect(example).toEqual({ expression: 'twice(2)', stated: '5' });
    expect(exampleFault(example as Example, { twice: (x: number) => 2 * x })).toBe('it is 4, not 5');
  });

  it('compares numbers to the digits shown, and all else exactly', () => {
    const fault = (value: unknown, stated: string): string | null =>
      exampleFault({ expression: 'value', stated }, { value });
    for (const [value, stated] of [
      [0.0763822, '0.0764'],
      [0.07635, '0.0764'],
      [-4.4e-9, '-4.4e-9'],
      [12, '12'],
      ['4 mm²', "'4 mm²'"],
      [null, 'null'],
      [true, 'true'],
      [{ a: 1.234, b: ['x', 2] }, "{ a: 1.23, b: ['x', 2] }"],
      [{ i2tA2s: 3 }, '{ i2tA2s: 3 }'],
    ] as const) {
      expect(fault(value, stated), stated).toBeNull();
    }
    for (const [value, stated] of [
      [0.0765, '0.0764'],
      [12.6, '12'],
      [-1, '1'],
      ['4 mm2', "'4 mm²'"],
      ['12', '12'],
      [NaN, '0'],
      [undefined, 'null'],
      [{ a: 1 }, '{ a: 1, b: 2 }'],
      [{ a: 1, b: 2 }, '{ a: 1 }'],
      [[1, 2], '[1]'],
      [1, 'no such name'],
    ] as const) {
      expect(fault(value, stated), `${JSON.stringify(value)} against ${stated}`).not.toBeNull();
    }
  });
});
