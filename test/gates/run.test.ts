import { describe, expect, it } from 'vitest';
import { run, schedule, type Step } from '../run/schedule.mjs';
import { conclude, countSources, slowFiles, sourceLines, sumVitest, withoutBrowser } from '../run/summary.mjs';

const file = (name: string, status: string, ...tests: readonly (readonly [status: string, title: string])[]) => ({
  name: `/house/test/${name}`,
  status,
  assertionResults: tests.map(([state, title]) => ({ status: state, title })),
});

const report = {
  testResults: [
    file(
      'conductor/wire-resistance.test.ts',
      'passed',
      ['passed', 'computed · AWG 12 at 20 °C · nbs-hb-100, table 7 (published)'],
      ['passed', 'computed · AWG 14 at 20 °C · nbs-hb-100, table 7 (published)'],
      ['passed', 'transcribed · 2.5 mm² · iec-60228, table 3 (published)'],
      ['passed', 'says that nothing was computed · or transcribed'],
    ),
    file('feed/size-feed.test.ts', 'failed', ['passed', 'refuses'], ['failed', 'computed · W1'], ['pending', 'later']),
    file('heat/broken.test.ts', 'failed'),
  ],
};

describe('the sum of a run', () => {
  it('counts passed, failed and skipped tests, and a file that could not be loaded as a failure', () => {
    expect(sumVitest(report)).toEqual({ passed: 5, failed: 2, skipped: 1 });
    expect(sumVitest(null)).toEqual({ passed: 0, failed: 0, skipped: 0 });
  });

  it('names the files that take long', () => {
    const times = [
      { name: '/house/test/heat/a.test.ts', startTime: 1000, endTime: 22_000 },
      { name: '/house/test/heat/b.test.ts', startTime: 1000, endTime: 21_000 },
      { name: '/house/test/heat/c.test.ts', startTime: 1000, endTime: 63_000 },
    ];
    expect(slowFiles({ testResults: times }, '/house/test', 20)).toEqual([
      'heat/c.test.ts took 62 s',
      'heat/a.test.ts took 21 s',
    ]);
  });

  it('counts computed and transcribed apart, passed ones only, by area', () => {
    const counts = countSources(report, '/house/test');
    expect(counts).toEqual({ conductor: { computed: 2, transcribed: 1 } });
    expect(
      sourceLines([counts, { conductor: { computed: 1, transcribed: 0 }, feed: { computed: 4, transcribed: 0 } }]),
    ).toEqual([
      'Checks against published sources:',
      '  conductor          3 computed     1 transcribed',
      '  feed               4 computed     0 transcribed',
      '  in all             7 computed     1 transcribed',
    ]);
  });
});

describe('the end of a run', () => {
  const tests = (passed: number, failed = 0, skipped = 0) => ({ passed, failed, skipped });

  it('passes when all steps and all tests do', () => {
    const steps = [{ name: 'types', state: 'ok' } as const, { name: 'unit', state: 'ok', tests: tests(7) } as const];
    expect(conclude(steps)).toMatchObject({ line: '8 passed, 0 failed', exitCode: 0, tests: 7 });
  });

  it.each([
    ['no step at all', []],
    ['steps but no test', [{ name: 'types', state: 'ok' }]],
    ['a step of tests without a test', [{ name: 'unit', state: 'ok', tests: tests(0) }]],
    ['only skipped tests', [{ name: 'unit', state: 'ok', tests: tests(0, 0, 3) }]],
    [
      'one project without a test beside one with many',
      [
        { name: 'unit', state: 'ok', tests: tests(500) },
        { name: 'built', state: 'ok', tests: tests(0) },
      ],
    ],
    ['a failed test', [{ name: 'unit', state: 'failed', tests: tests(6, 1) }]],
    ['an exit code without a failed test', [{ name: 'unit', state: 'failed', tests: tests(6) }]],
    [
      'a failed step',
      [
        { name: 'lint', state: 'failed' },
        { name: 'unit', state: 'ok', tests: tests(7) },
      ],
    ],
    [
      'a step that could not be run',
      [
        { name: 'unit', state: 'ok', tests: tests(7) },
        { name: 'built', state: 'not run' },
      ],
    ],
  ] as const)('fails for %s', (_, steps) => {
    const end = conclude(steps);
    expect(end.exitCode).toBe(1);
    expect(end.line).toMatch(/^\d+ passed, [1-9]\d* failed/);
  });

  it('takes a missing browser for a failure in CI, and elsewhere says so', () => {
    const unit = { name: 'unit', state: 'ok', tests: tests(7) } as const;
    const end = (inCi: boolean) => conclude([unit, { name: 'browser', ...withoutBrowser(inCi) }]);
    expect(end(true)).toMatchObject({ line: '7 passed, 1 failed', exitCode: 1 });
    expect(end(false)).toMatchObject({ line: '7 passed, 0 failed, 1 skipped', exitCode: 0 });
    expect(withoutBrowser(false).output).toContain('not run');
  });

  it('names what was skipped', () => {
    const steps = [
      { name: 'unit', state: 'ok', tests: tests(7, 0, 2) },
      { name: 'browser', state: 'skipped' },
    ] as const;
    expect(conclude(steps)).toMatchObject({ line: '7 passed, 0 failed, 3 skipped', exitCode: 0 });
  });
});

describe('the order of a run', () => {
  const record = async (steps: readonly Omit<Step, 'do'>[], failing: readonly string[] = []): Promise<string[]> => {
    const seen: string[] = [];
    const withWork = steps.map((step) => ({
      ...step,
      do: async () => {
        seen.push(`${step.name} starts`);
        await new Promise((resolve) => setTimeout(resolve, 5));
        return { state: failing.includes(step.name) ? 'failed' : 'ok', output: '' };
      },
    }));
    await schedule(withWork, (step, { state }) => seen.push(`${step.name} ${state}`));
    return seen;
  };

  it('runs light steps side by side and heavy ones alone', async () => {
    expect(await record([{ name: 'a' }, { name: 'b' }, { name: 'c', lanes: 2 }, { name: 'd' }])).toEqual([
      'a starts',
      'b starts',
      'a ok',
      'b ok',
      'c starts',
      'c ok',
      'd starts',
      'd ok',
    ]);
  });

  it('goes on after a failure, but does not run what needs the failed step', async () => {
    const steps = [
      { name: 'build', lanes: 2 },
      { name: 'types', after: ['build'] },
      { name: 'built', needs: ['build'] },
      { name: 'browser', needs: ['built'] },
    ] as const;
    const seen = await record(steps, ['build']);
    expect(seen).toContain('types ok');
    expect(seen).toContain('built not run');
    expect(seen).toContain('browser not run');
  });

  it('says so when steps wait for one another', async () => {
    await expect(
      record([
        { name: 'a', after: ['b'] },
        { name: 'b', after: ['a'] },
      ]),
    ).rejects.toThrow('a, b');
  });

  it('takes a command for failed when it cannot be started or ends badly', async () => {
    expect((await run([process.execPath, '-e', 'process.exit(0)'])).code).toBe(0);
    expect(await run([process.execPath, '-e', 'console.log("out"); console.error("err"); process.exit(3)'])).toEqual({
      code: 3,
      output: expect.stringMatching(/out\n[^]*err\n|err\n[^]*out\n/) as string,
    });
    expect((await run(['no-such-command-anywhere'])).code).not.toBe(0);
  });
});
