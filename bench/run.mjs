// Runs benches and, in full, writes their results with commit, Node version and spread.
import { execFileSync } from 'node:child_process';
import { mkdir, writeFile } from 'node:fs/promises';
import { cpus } from 'node:os';
import { benchNames, folder, report, runBench } from './suite.mjs';

const quick = process.argv.includes('--quick');
const names = await benchNames(process.argv.slice(2).filter((word) => !word.startsWith('--')));
for (const name of names) {
  const result = await runBench(name, quick);
  console.log(`${report(result)}\n`);
  if (quick) continue;
  const commit = execFileSync('git', ['rev-parse', '--short', 'HEAD'], { cwd: folder, encoding: 'utf8' }).trim();
  await mkdir(`${folder}results`, { recursive: true });
  await writeFile(
    `${folder}results/${name}.json`,
    `${JSON.stringify({ commit, node: process.version, processor: `${cpus().length} × ${cpus()[0]?.model.trim() ?? 'unknown'}`, ...result }, null, 2)}\n`,
  );
}
