import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import * as quantity from '@loomwright/worked/quantity';
import { exportedFunctions } from '../../support/doc-blocks.js';
import { exampleFault, examplesOf } from '../../support/doc-examples.js';

const entry = fileURLToPath(new URL('../../../packages/worked/src/quantity/index.ts', import.meta.url));
const blocks = exportedFunctions(entry);

describe('every public function of quantity', () => {
  it('is found', () => {
    const functions = Object.entries(quantity)
      .filter(([, value]) => typeof value === 'function' && !/^class\b/.test(String(value)))
      .map(([name]) => name);
    expect(blocks.map(({ name }) => name).sort()).toEqual(functions.sort());
  });

  it.each(blocks.map((block) => [block.name, block] as const))('%s: an example that gives what it says', (_, block) => {
    const examples = examplesOf(block);
    expect(examples.length).toBeGreaterThan(0);
    for (const example of examples) {
      expect(exampleFault(example, quantity), `${example.expression} //=> ${example.stated}`).toBeNull();
    }
  });
});
