// What `npm start` runs: Sandpiper planned and its sheets written, or the command on the arguments after `npm start --`.
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const command = fileURLToPath(new URL('../dist/main.js', import.meta.url));
const given = process.argv.slice(2);
const vehicle = 'packages/cli/examples/sandpiper.yaml';
// In a folder that git leaves out; older sheets of the same demonstration are replaced.
const folder = 'packages/cli/dist/sandpiper-sheets';
const demo = ['sheets', vehicle, '--out', folder, '--force'];
const { status } = spawnSync(process.execPath, [command, ...(given.length > 0 ? given : demo)], { stdio: 'inherit' });
if (given.length === 0 && status !== 1) {
  const next = [
    [`open ${folder}/sheets.html`, 'print it, A4 or Letter'],
    [`npm start -- plan ${vehicle}`, 'every finding, every wire with what decided it'],
    ['npm start -- sheets FILE --out DIR', 'a vehicle of your own: copy the file and change it'],
    ['npm start -- feed packages/cli/examples/lift-pump.yaml', 'one circuit alone; --working shows every step'],
    ['npm test', 'everything, checked'],
  ];
  const width = Math.max(...next.map(([line]) => line.length));
  console.log(`\nNext:\n${next.map(([line, why]) => `  ${line.padEnd(width)}  ${why}`).join('\n')}`);
}
process.exitCode = status ?? 1;
