// The command as a person starts it: the built bundle in a process of its own.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { parseCircuit, sizeCircuit } from '@loomwright/harness';
import { sizeFeed } from 'loomwright';

const main = fileURLToPath(new URL('../../packages/cli/dist/main.js', import.meta.url));
const example = fileURLToPath(new URL('../../packages/cli/examples/lift-pump.yaml', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'feed-'));
const text = readFileSync(example, 'utf8');

function run(...args: string[]): { out: string; err: string; status: number | null } {
  const { stdout, stderr, status } = spawnSync(process.execPath, [main, ...args], {
    encoding: 'utf8',
    env: { ...process.env, NO_COLOR: '1' },
  });
  return { out: stdout, err: stderr, status };
}
function file(name: string, content: string): string {
  const path = join(folder, name);
  writeFileSync(path, content);
  return path;
}

describe('loomwright feed', () => {
  it('prints the answer, the rule that decided, the ladder and the cautions, and exits with 0', () => {
    const { out, err, status } = run('feed', example);
    expect(err).toBe('');
    expect(status).toBe(0);
    expect(out).toContain('4 mm², 15 A fuse');
    expect(out).toContain('decided by: voltage lost (2.5 mm² fails it)');
    expect(out).toMatch(/wire to the tank\s+█/);
    expect(out).toContain('from memory');
    expect(out).toContain('Codes and practice');
  });
  it('gives as data the same digits as the library does', () => {
    const { out, status } = run('feed', example, '--json');
    expect(status).toBe(0);
    const parsed = parseCircuit(text);
    if (!parsed.ok) throw new Error('not read');
    const { input } = sizeCircuit(parsed.circuit);
    const data = JSON.parse(out) as { feed: unknown };
    expect(data.feed).toEqual(JSON.parse(JSON.stringify(sizeFeed(input))));
  });
  it('shows every step with --working', () => {
    const { out } = run('feed', example, '--working');
    expect(out).toContain('R_wire = r × l × (T_0 + T) / (T_0 + T_20)');
    expect(out).toMatch(/V_load = V − U\n\s+= 13\.80\sV − 0\.4\d{3}\sV = 13\.35\sV/);
  });
  it('exits with 2 where it is not possible, and says why', () => {
    const { out, status } = run(
      'feed',
      file('short.yaml', text.replace('budget: ac-43-13-1b-14-v-continuous', 'drop: 0.2 V')),
    );
    expect(status).toBe(2);
    expect(out).toContain('NOT POSSIBLE');
    expect(out).toContain('no wire is thick enough');
  });
  it('exits with 2 where the relay does not pull in', () => {
    const { out, status } = run('feed', file('relay.yaml', text.replace('supply: 10.5 V', 'supply: 9 V')));
    expect(status).toBe(2);
    expect(out).toContain('does not pull in');
  });
  it.each([
    ['a missing file', () => join(folder, 'nothing.yaml'), /no such file/],
    ['a folder', () => folder, /\S/],
    [
      'a wrong unit',
      () => file('unit.yaml', text.replace('current: 7.5 A', 'current: 7.5 V')),
      /unit\.yaml:11:3 load\.current: .*voltage/,
    ],
    ['a mistyped key', () => file('key.yaml', text.replace('  ambient:', '  ambiant:')), /Did you mean 'ambient'\?/],
    ['noise', () => file('noise.yaml', '\u0000\u0001{[}]'.repeat(1000)), /\S/],
  ])('exits with 1 on %s, with an error and no stack', (_, path, wanted) => {
    const { out, err, status } = run('feed', path());
    expect(status).toBe(1);
    expect(out).toBe('');
    expect(err).toMatch(wanted);
    expect(err).not.toMatch(/\bat \w+ \(|node:internal/);
  });
  it('exits with 1 on a wrong command or option, and helps', () => {
    expect(run('fed', example).status).toBe(1);
    expect(run('feed', example, '--jsn')).toMatchObject({
      status: 1,
      err: expect.stringContaining('--json') as string,
    });
    expect(run('--help')).toMatchObject({ status: 0, out: expect.stringContaining('feed') as string });
  });
  it('starts within a few times of what an empty script takes', () => {
    // Half a second is the goal on a quiet machine, where an empty script takes some 0.13 s; loose modules take ten
    // times an empty script. The ratio holds on a busy machine too.
    const wall = (args: readonly string[]): number => {
      const started = performance.now();
      spawnSync(process.execPath, args, { encoding: 'utf8' });
      return performance.now() - started;
    };
    const rounds = Array.from({ length: 7 }, () => wall([main, 'feed', example]) / wall(['-e', '']));
    expect(rounds.sort((a, b) => a - b)[3]).toBeLessThan(7);
  });
});
