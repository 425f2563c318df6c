// The benches still run, their results agree, and the comparison flags what is worse.
import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { worse } from '../../bench/worse.mjs';

const folder = fileURLToPath(new URL('../../bench/', import.meta.url));
const names = readdirSync(folder).flatMap((file) =>
  file.endsWith('.bench.mjs') ? [file.replace('.bench.mjs', '')] : [],
);

describe('benches', () => {
  it.each(names)('%s runs once, quickly, and its ways agree', (name) => {
    const { status, stdout, stderr } = spawnSync(process.execPath, [`${folder}run.mjs`, name, '--quick'], {
      encoding: 'utf8',
    });
    expect(status, stderr).toBe(0);
    expect(stdout).toContain(`${name}: `);
  });
  it.each(names)('%s has stored results of its ratios', (name) => {
    const stored = JSON.parse(readFileSync(`${folder}results/${name}.json`, 'utf8')) as {
      commit: string;
      node: string;
      ratios: unknown[];
      times: object;
    };
    expect(stored.commit).toMatch(/^[0-9a-f]{7,}$/);
    expect(stored.node).toMatch(/^v\d+/);
    expect(stored.ratios.length).toBeGreaterThan(0);
    expect(Object.keys(stored.times).length).toBeGreaterThan(1);
  });
});

describe('the comparison', () => {
  const stored = [
    { name: 'small is good', ratio: 2, atMost: true },
    { name: 'large is good', ratio: 100, atMost: false },
  ];
  it('flags a ratio worse than 1.3 times the stored one, in either sense, and one that is missing', () => {
    expect(
      worse(stored, [
        { name: 'small is good', ratio: 2.59 },
        { name: 'large is good', ratio: 77.1 },
      ]),
    ).toEqual([]);
    expect(
      worse(stored, [
        { name: 'small is good', ratio: 2.61 },
        { name: 'large is good', ratio: 76 },
      ]),
    ).toHaveLength(2);
    expect(worse(stored, [{ name: 'small is good', ratio: 2 }])).toEqual(["'large is good' was not measured"]);
  });
});
