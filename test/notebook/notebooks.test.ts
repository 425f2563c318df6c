// Every notebook runs from start to end, and gives what it shows.
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { codeOf, runCells } from './kernel.mjs';

const docs = fileURLToPath(new URL('../../docs/', import.meta.url));
const files = readdirSync(`${docs}notebooks`).filter((file) => file.endsWith('.ipynb'));

interface Output {
  readonly output_type: string;
  readonly data?: Readonly<Record<string, unknown>>;
  readonly text?: string;
}
interface Notebook {
  readonly cells: readonly { readonly cell_type: string; readonly outputs?: readonly Output[] }[];
}

describe.each(files)('%s', (file) => {
  const notebook = JSON.parse(readFileSync(`${docs}notebooks/${file}`, 'utf8')) as Notebook;
  it('runs, and its outputs are those that it shows', async () => {
    const results = await runCells(codeOf(notebook), docs);
    for (const { error } of results) expect(error).toBeNull();
    const shown = notebook.cells.filter((cell) => cell.cell_type === 'code').map((cell) => cell.outputs ?? []);
    expect(results.length).toBe(shown.length);
    expect(shown.flat().length).toBeGreaterThan(0);
    results.forEach(({ outputs }, i) => {
      expect(outputs, `code cell ${i + 1}: refresh it with test/notebook/refresh.mjs and read the difference`).toEqual(
        shown[i],
      );
    });
  });
});

describe('pump-feed.ipynb', () => {
  // What the example comes to, worked out apart from the library: 4.71 mΩ/m, 5.7816 m, 22.3 mΩ and a 15 A fuse of
  // 102 mV at its rating; the copper somewhere between the air's 50 °C and 54 °C, which the print does not resolve.
  it('states the result of the arithmetic', () => {
    const text = readFileSync(`${docs}notebooks/pump-feed.ipynb`, 'utf8');
    const volts = (copperC: number): string => {
      const wireOhm = (0.00471 * (17 * 0.3048 + 0.6) * (234.5 + copperC)) / 254.5;
      return (Math.floor((13.8 - 7.5 * (wireOhm + 0.0223 + 0.102 / 15)) * 100) / 100).toFixed(2);
    };
    expect(volts(50)).toBe(volts(54));
    expect(text).toContain(`4 mm², 15 A fuse, ${volts(52)}\u202fV at the pump`);
  });
});
