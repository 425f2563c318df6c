// The whole check: build, types, the linters, the tests, the site, the browser. It stops late rather than early,
// prints a line a step and the full output of what failed, and ends with one line: N passed, N failed.
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { findChromium } from './support/chromium.mjs';
import { endAll, run, schedule } from './run/schedule.mjs';
import { conclude, countSources, slowFiles, sourceLines, sumVitest, withoutBrowser } from './run/summary.mjs';

const test = fileURLToPath(new URL('.', import.meta.url));
const root = fileURLToPath(new URL('../', import.meta.url));
const cache = join(test, 'node_modules/.cache/run');
const inCi = Boolean(process.env.CI) && process.env.CI !== 'false';
const counts = [];
const slow = [];

/** A tool of the test workspace, started with this Node. */
function tool(name, ...args) {
  const folder = join(test, 'node_modules', name);
  const { bin } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
  return [
    process.execPath,
    join(folder, typeof bin === 'string' ? bin : (bin[name] ?? Object.values(bin)[0])),
    ...args,
  ];
}

function pnpm(...args) {
  const { packageManager } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
  return ['npx', '-y', packageManager.split('+')[0], ...args];
}

function command(line, options = {}) {
  return async () => {
    const { code, output } = await run(line, { cwd: root, ...options });
    return { state: code === 0 ? 'ok' : 'failed', output };
  };
}

function vitest(project) {
  return async () => {
    const file = join(cache, `${project}.json`);
    rmSync(file, { force: true });
    const args = ['run', '--project', project, '--maxWorkers=2', '--reporter=dot', '--reporter=json'];
    const { code, output } = await run(tool('vitest', ...args, `--outputFile.json=${file}`), { cwd: test });
    const report = existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : null;
    const tests = sumVitest(report);
    counts.push(countSources(report, test));
    slow.push(...slowFiles(report, test, 20));
    return { state: code === 0 ? 'ok' : 'failed', output, tests };
  };
}

function hasTests(folder) {
  const path = join(test, folder);
  return existsSync(path) && readdirSync(path, { recursive: true }).some((name) => String(name).endsWith('.test.ts'));
}

const hasSite = ['ts', 'mts', 'js', 'mjs'].some((end) => existsSync(join(root, `docs/.vitepress/config.${end}`)));

const steps = [
  { name: 'build', lanes: 2, do: command(pnpm('-r', '--filter=./packages/*', 'run', 'build')) },
  { name: 'types', after: ['build'], do: command(tool('typescript', '-b', '..'), { cwd: test }) },
  { name: 'format', after: ['build'], do: command(tool('prettier', '--check', '.')) },
  {
    name: 'rooms',
    after: ['build'],
    do: command(
      tool(
        'dependency-cruiser',
        ...['loomwright', 'worked', 'harness', 'cli'].map((name) => `packages/${name}/src`),
        '--config',
        'test/lint/depcruise.config.mjs',
      ),
    ),
  },
  { name: 'unused', after: ['build'], do: command(tool('knip', '--config', 'test/lint/knip.json')) },
  { name: 'lint', after: ['types'], do: command(tool('eslint', '.')) },
  ...(hasSite
    ? [
        {
          name: 'site',
          needs: ['build'],
          after: ['types'],
          do: command(pnpm('--filter', '@loomwright/docs', 'run', 'build')),
        },
      ]
    : []),
  { name: 'unit', lanes: 2, after: ['lint', 'unused', 'site'], do: vitest('unit') },
  { name: 'built', lanes: 2, needs: ['build'], after: ['types', 'unit'], do: vitest('built') },
  ...(hasTests('browser') ? [{ name: 'browser', lanes: 2, needs: ['site'], after: ['built'], do: browser }] : []),
];

async function browser() {
  return findChromium() === null ? withoutBrowser(inCi) : vitest('browser')();
}

for (const signal of ['SIGINT', 'SIGTERM']) {
  process.on(signal, () => {
    endAll();
    process.exit(1);
  });
}

const start = performance.now();
const results = [];
rmSync(join(test, 'node_modules/.cache/size.json'), { force: true });
mkdirSync(cache, { recursive: true });
if (!hasSite) console.log('There is no site yet: docs has no configuration, so nothing is built there.');
if (!hasTests('browser')) console.log('There are no browser tests yet.');

await schedule(steps, (step, { state, output, seconds, tests }) => {
  results.push({ name: step.name, state, tests });
  const found = tests === undefined ? '' : `${tests.passed} passed, ${tests.failed} failed`;
  console.log(`${state.padEnd(8)} ${step.name.padEnd(8)} ${seconds.toFixed(1).padStart(6)} s  ${found}`.trimEnd());
  if (state !== 'ok') console.log(`${output.trimEnd()}\n`);
});

const end = conclude(results);
console.log('');
for (const line of [...slow, ...sourceLines(counts)]) console.log(line);
const sizes = join(test, 'node_modules/.cache/size.json');
if (existsSync(sizes)) {
  const { bytes, gzipBytes } = JSON.parse(readFileSync(sizes, 'utf8')).whole;
  console.log(
    `The whole core: ${(gzipBytes / 1000).toFixed(1)} kB gzipped (${(bytes / 1000).toFixed(1)} kB minified).`,
  );
}
console.log(`${((performance.now() - start) / 60_000).toFixed(1)} minutes`);
if (end.tests === 0) console.log('No test ran: that is a failure.');
console.log(end.line);
process.exitCode = end.exitCode;
