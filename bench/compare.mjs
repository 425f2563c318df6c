// Runs the benches and holds each ratio against the stored one: worse than 1.3 times is flagged, with exit status 1.
import { readFile } from 'node:fs/promises';
import { benchNames, folder, runBench } from './suite.mjs';
import { worse } from './worse.mjs';

let flagged = 0;
for (const name of await benchNames(process.argv.slice(2).filter((word) => !word.startsWith('--')))) {
  const stored = JSON.parse(await readFile(`${folder}results/${name}.json`, 'utf8'));
  const { ratios } = await runBench(name, process.argv.includes('--quick'));
  for (const line of worse(stored.ratios, ratios)) {
    flagged++;
    console.log(`${name}: ${line}`);
  }
}
console.log(flagged === 0 ? 'No ratio is worse than 1.3 times the stored one.' : `${flagged} flagged.`);
process.exitCode = flagged === 0 ? 0 : 1;
