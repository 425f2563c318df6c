// The command `diagnose` as a person starts it: the built bundle in a process of its own.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { diagnose, parseLoom, parseReadings, planLoom } from '@loomwright/harness';

const main = fileURLToPath(new URL('../../packages/cli/dist/main.js', import.meta.url));
const root = fileURLToPath(new URL('../../', import.meta.url));
const vehicle = join(root, 'packages/cli/examples/sandpiper.yaml');
const example = join(root, 'packages/cli/examples/readings.yaml');
const folder = mkdtempSync(join(tmpdir(), 'diagnose-'));

function run(...args: string[]): { out: string; err: string; status: number | null } {
  const { stdout, stderr, status } = spawnSync(process.execPath, [main, 'diagnose', ...args], {
    encoding: 'utf8',
    cwd: root,
  });
  return { out: stdout, err: stderr, status };
}
function file(name: string, content: string): string {
  const path = join(folder, name);
  writeFileSync(path, content);
  return path;
}

const parsed = parseLoom(readFileSync(vehicle, 'utf8'));
const readings = parseReadings(readFileSync(example, 'utf8'));
if (!parsed.ok || !readings.ok) throw new Error('the examples cannot be read');
const found = diagnose(planLoom(parsed.loom), readings.readings);

describe('loomwright diagnose', () => {
  it('says what the library says, in words and as data', () => {
    const words = run(vehicle, example);
    expect([words.err, words.status]).toEqual(['', 2]);
    const flat = words.out.replace(/\s+/g, ' ');
    for (const sentence of found.sentences) expect(flat).toContain(sentence.replace(/\s+/g, ' '));
    expect(found.suspects.map(({ name }) => name)).toEqual(['contact of relay of lift pump']);
    const data = run(vehicle, example, '--json');
    expect(JSON.parse(data.out)).toEqual(JSON.parse(JSON.stringify(found)));
  });
  it('ends with 0 where nothing is found', () => {
    const good = file('good.yaml', "readings:\n  - { name: 'lift pump: ohms, load out', reads: open }\n");
    expect(run(vehicle, good)).toMatchObject({ err: '', status: 0 });
  });
  it.each([
    [
      'a unit that is missing',
      'readings:\n  - { red: lift pump +, black: lift pump −, reads: 12.3 }\n',
      /:2:\d+ readings\[0\]\.reads: .*unit/,
    ],
    [
      'a field that is mistyped',
      'readings:\n  - { rde: lift pump +, black: lift pump −, reads: 12.3 V }\n',
      /:2:\d+ .*Did you mean 'red'/,
    ],
    [
      'a state that does not exist',
      'state: raod\nreadings:\n  - { red: lift pump +, black: lift pump −, reads: 12.3 V }\n',
      /:3 .*'road'/,
    ],
    [
      'a part that does not exist',
      'state: road\nreadings:\n  - { over: fuse dash box 77, reads: 12 mV }\n',
      /:3 .*did you mean/,
    ],
    ['no list', 'state: road\n', /readings/],
  ])('names %s with its line', (_, content, message) => {
    const { err, out, status } = run(vehicle, file('bad.yaml', content));
    expect([out, status]).toEqual(['', 1]);
    expect(err).toMatch(message);
  });
  it('a file that is not there', () => {
    expect(run(vehicle, join(folder, 'none.yaml'))).toMatchObject({ out: '', status: 1 });
  });
});

describe('parseReadings', () => {
  it('reads volts, millivolts, amperes, ohms and open, a state for all', () => {
    const all = parseReadings(
      'state: road\nreadings:\n' +
        ['12.3 V', '180 mV', '7.4 A', '0.6 Ω', '4.7 kΩ', 'open', '0.6 ohm']
          .map((one) => `  - { over: x, reads: ${one} }\n`)
          .join(''),
    );
    expect(all.ok && all.readings).toEqual([
      { state: 'road', over: 'x', readsV: 12.3 },
      { state: 'road', over: 'x', readsV: 0.18 },
      { state: 'road', over: 'x', readsA: 7.4 },
      { over: 'x', readsOhm: 0.6 },
      { over: 'x', readsOhm: 4700 },
      { over: 'x', readsOhm: 'open' },
      { over: 'x', readsOhm: 0.6 },
    ]);
  });
});
