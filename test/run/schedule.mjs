// Runs steps on two lanes: light ones side by side, heavy ones alone. A step waits for all that it comes after.
import { spawn } from 'node:child_process';

const LANES = 2;
const LONGEST_MS = 15 * 60_000;
const children = new Set();

// Without colours; FORCE_COLOR is left out whatever its value, because some tools take even 0 for a wish.
const plain = { ...process.env, NO_COLOR: '1' };
delete plain.FORCE_COLOR;

/** Ends what is still running, with all that it started. */
export function endAll() {
  for (const child of children) end(child);
}

function end(child) {
  try {
    process.kill(-child.pid, 'SIGKILL');
  } catch {
    child.kill('SIGKILL');
  }
}

/** One command: its exit code and all that it printed. */
export function run([command, ...args], { cwd, env } = {}) {
  return new Promise((resolve) => {
    const chunks = [];
    const child = spawn(command, args, {
      cwd,
      env: { ...plain, ...env },
      stdio: ['ignore', 'pipe', 'pipe'],
      detached: process.platform !== 'win32',
      shell: process.platform === 'win32' && command === 'npx',
    });
    children.add(child);
    const timer = setTimeout(() => {
      chunks.push(Buffer.from(`\nended after ${LONGEST_MS / 60_000} minutes\n`));
      end(child);
    }, LONGEST_MS);
    child.stdout.on('data', (chunk) => chunks.push(chunk));
    child.stderr.on('data', (chunk) => chunks.push(chunk));
    const done = (code, text = '') => {
      clearTimeout(timer);
      children.delete(child);
      resolve({ code, output: Buffer.concat(chunks).toString('utf8') + text });
    };
    child.on('error', (error) => done(1, `${command}: ${error.message}\n`));
    child.on('close', (code) => done(code ?? 1));
  });
}

/**
 * Runs all steps, the first that can go first. `needs` names steps without which a step is pointless: where one of
 * them did not end well, it is not run. `after` only orders. `lanes` is 1 or 2.
 */
export async function schedule(steps, onDone) {
  const waiting = [...steps];
  const states = new Map();
  let running = 0;
  let free = LANES;
  const settle = (step, result) => {
    states.set(step.name, result.state);
    onDone(step, result);
  };
  const ready = ({ needs = [], after = [] }) =>
    [...needs, ...after].every((name) => states.has(name) || !steps.some((step) => step.name === name));
  await new Promise((resolve, reject) => {
    const next = () => {
      for (let i = 0; i < waiting.length;) {
        const step = waiting[i];
        const { needs = [], lanes = 1 } = step;
        if (!ready(step)) {
          i++;
          continue;
        }
        const missing = needs.find((name) => ['failed', 'not run'].includes(states.get(name)));
        if (missing === undefined && lanes > free) break; // nothing overtakes a step that waits for a lane
        waiting.splice(i, 1);
        if (missing !== undefined) {
          settle(step, { state: 'not run', output: `needs ${missing}\n`, seconds: 0 });
          i = 0;
          continue;
        }
        free -= lanes;
        running++;
        const start = performance.now();
        step.do().then((result) => {
          free += lanes;
          running--;
          settle(step, { ...result, seconds: (performance.now() - start) / 1000 });
          next();
        }, reject);
      }
      if (running > 0) return;
      if (waiting.length === 0) resolve();
      else reject(new Error(`steps wait for one another: ${waiting.map(({ name }) => name).join(', ')}`));
    };
    next();
  });
}
