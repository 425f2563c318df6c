// Row 11: importing the whole library and starting the command, against an empty module.
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const at = (path) => fileURLToPath(new URL(path, import.meta.url));
const example = at('../packages/cli/examples/lift-pump.yaml');

/** Runs Node once and returns its processor time in ns. */
function processorNs(args) {
  const { status, stderr } = spawnSync(
    'node',
    [
      '--input-type=module',
      '-e',
      `${args}; import { writeSync } from 'node:fs'; const { user, system } = process.cpuUsage(); writeSync(2, String(user + system));`,
    ],
    { encoding: 'utf8' },
  );
  if (status !== 0) throw new Error(stderr);
  return Number(stderr) * 1000;
}

export default {
  question: 'What does importing everything, and starting the command, cost?',
  how: { targetMs: 1, rounds: 11 },
  ratios: [
    { name: 'importing the core, against an empty module', of: 'import loomwright', to: 'empty module', goal: 2 },
    {
      name: 'the command on a file, against an empty module',
      of: 'command',
      to: 'empty module',
      goal: 12,
    },
  ],
  prepare() {
    const core = JSON.stringify(import.meta.resolve('loomwright'));
    const empty = processorNs('');
    const whole = processorNs(`await import(${core})`);
    const wall = (...args) => {
      const { status, stderr } = spawnSync('node', args, { encoding: 'utf8' });
      if (status !== 0) throw new Error(stderr);
      return 0;
    };
    return {
      count: 1,
      note: `one reading of processor time: empty ${(empty / 1e6).toFixed(1)} ms, with the core ${(whole / 1e6).toFixed(1)} ms (goal: at most 15 ms more); the times above are wall`,
      ways: {
        'empty module': () => wall('--input-type=module', '-e', ''),
        'import loomwright': () => wall('--input-type=module', '-e', `await import(${core})`),
        command: () => wall(at('../packages/cli/dist/main.js'), 'feed', example),
      },
    };
  },
};
