// What a run of the whole check comes to. Pure functions, so that a gate can feed them bad samples.
import { relative, sep } from 'node:path';

const KINDS = ['computed', 'transcribed'];

/** Passed, failed and skipped tests of one vitest JSON report; a file that could not be loaded is a failure. */
export function sumVitest(report) {
  let passed = 0;
  let failed = 0;
  let skipped = 0;
  for (const file of report?.testResults ?? []) {
    const before = failed;
    for (const { status } of file.assertionResults ?? []) {
      if (status === 'passed') passed++;
      else if (status === 'failed') failed++;
      else skipped++;
    }
    if (file.status === 'failed' && failed === before) failed++;
  }
  return { passed, failed, skipped };
}

/** How many passed tests the titles call computed and transcribed, by the folder of the test file. */
export function countSources(report, testFolder) {
  const areas = {};
  for (const file of report?.testResults ?? []) {
    const [area] = relative(testFolder, file.name).split(sep);
    for (const { status, title } of file.assertionResults ?? []) {
      const kind = KINDS.find((word) => title.startsWith(`${word} · `));
      if (kind === undefined || status !== 'passed') continue;
      areas[area] ??= { computed: 0, transcribed: 0 };
      areas[area][kind]++;
    }
  }
  return areas;
}

/**
 * The whole run. A step is `ok`, `failed`, `not run` (what it needs failed) or `skipped`; steps with a vitest report
 * count their tests, others count one. A run without a test, or a step of tests without a test, is a failure.
 */
export function conclude(steps) {
  let passed = 0;
  let failed = 0;
  let skipped = 0;
  let tests = 0;
  for (const { state, tests: sum } of steps) {
    if (state === 'skipped') skipped++;
    else if (state === 'not run') failed++;
    else if (sum === undefined) {
      if (state === 'ok') passed++;
      else failed++;
    } else {
      const ran = sum.passed + sum.failed;
      tests += ran;
      passed += sum.passed;
      skipped += sum.skipped;
      failed += sum.failed > 0 ? sum.failed : Number(state !== 'ok' || ran === 0);
    }
  }
  if (tests === 0 && failed === 0) failed++;
  const line = `${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`;
  return { passed, failed, skipped, tests, line, exitCode: failed > 0 || tests === 0 ? 1 : 0 };
}

/** The counts of `countSources` as lines: a total, then a line an area. */
export function sourceLines(reports) {
  const areas = {};
  for (const counts of reports) {
    for (const [area, count] of Object.entries(counts)) {
      areas[area] ??= { computed: 0, transcribed: 0 };
      for (const kind of KINDS) areas[area][kind] += count[kind];
    }
  }
  const names = Object.keys(areas).sort();
  const total = (kind) => names.reduce((sum, name) => sum + areas[name][kind], 0);
  const line = (name, computed, transcribed) =>
    `  ${name.padEnd(14)}${String(computed).padStart(6)} computed${String(transcribed).padStart(6)} transcribed`;
  return [
    'Checks against published sources:',
    ...names.map((name) => line(name, areas[name].computed, areas[name].transcribed)),
    line('in all', total('computed'), total('transcribed')),
  ];
}

/** Test files that took longer than so many seconds, the slowest first, as lines. */
export function slowFiles(report, testFolder, seconds) {
  return (report?.testResults ?? [])
    .map(({ name, startTime, endTime }) => ({ name, took: (endTime - startTime) / 1000 }))
    .filter(({ took }) => took > seconds)
    .sort((a, b) => b.took - a.took)
    .map(({ name, took }) => `${relative(testFolder, name)} took ${took.toFixed(0)} s`);
}

/** What a step comes to that has no browser to run in: a failure in CI, and elsewhere skipped and said so. */
export function withoutBrowser(inCi) {
  const output = 'No Chromium on this machine: the browser tests were not run.\n';
  return { state: inCi ? 'failed' : 'skipped', output };
}
