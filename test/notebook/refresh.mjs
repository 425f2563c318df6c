// Runs the notebooks named (all where none is) and writes their outputs into them: `node test/notebook/refresh.mjs`.
// The tests run them again and compare.
import { readdir, readFile, writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { codeOf, runCells } from './kernel.mjs';

const docs = fileURLToPath(new URL('../../docs/', import.meta.url));
const named = process.argv.slice(2);
const files = (await readdir(`${docs}notebooks`)).filter(
  (file) => file.endsWith('.ipynb') && (named.length === 0 || named.includes(file)),
);
for (const file of files) {
  const path = `${docs}notebooks/${file}`;
  const notebook = JSON.parse(await readFile(path, 'utf8'));
  const results = await runCells(codeOf(notebook), docs);
  const failed = results.find(({ error }) => error !== null);
  if (failed !== undefined) throw new Error(`${file}: ${failed.error}`);
  let next = 0;
  for (const cell of notebook.cells) {
    if (cell.cell_type !== 'code') continue;
    cell.outputs = results[next++].outputs;
    cell.execution_count = null;
  }
  await writeFile(path, `${JSON.stringify(notebook, null, 1)}\n`);
  console.log(`${file}: ${next} cells`);
}
