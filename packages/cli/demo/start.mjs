// What `npm start` runs: the command on Sandpiper's lift pump, or on the arguments after `npm start --`.
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const command = fileURLToPath(new URL('../dist/main.js', import.meta.url));
const given = process.argv.slice(2);
const example = 'packages/cli/examples/lift-pump.yaml';
const { status } = spawnSync(process.execPath, [command, ...(given.length > 0 ? given : ['feed', example])], {
  stdio: 'inherit',
});
if (given.length === 0 && status === 0) {
  console.log(`
Next:
  npm start -- feed ${example} --working   the same with every step shown
  npm start -- feed ${example} --json      the same as data
  npm start -- feed FILE                                            a circuit of your own: copy the example and change it
  npm test                                                          everything, checked`);
}
process.exitCode = status ?? 1;
