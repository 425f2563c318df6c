import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { cruise as cruiseFolder, type ICruiseResult } from 'dependency-cruiser';
import { describe, expect, it } from 'vitest';
import { allowedRooms, cruise, FLOOR, PACKAGES, ROOMS } from '../lint/rooms.mjs';
import { root } from '../support/root.js';

/** Every violation as 'file: rule'. */
async function violations(baseDir: string): Promise<string[]> {
  const options = { ...cruise.options, baseDir, ruleSet: cruise, validate: true };
  const { output } = await cruiseFolder(['packages'], options, cruise.options.enhancedResolveOptions);
  const { summary } = output as ICruiseResult;
  return [...new Set(summary.violations.map(({ from, rule }) => `${from}: ${rule.name}`))].sort();
}

describe('the rules bite', () => {
  it('finds every forbidden arrow of the bad samples, and no other', async () => {
    const core = 'packages/loomwright/src';
    expect(await violations(join(root, 'test/gates/bad/rooms'))).toEqual(
      [
        `${core}/conductor/uses-heat.ts: room-conductor`,
        `${core}/error/uses-table.ts: room-error`,
        `${core}/relay/uses-type-of-feed.ts: room-relay`,
        `${core}/divider/uses-root.ts: room-divider`,
        `${core}/bus/circle-a.ts: no-cycle`,
        `${core}/signal/leads-nowhere.ts: resolves`,
        `${core}/signal/leads-nowhere.ts: package-loomwright`,
        `${core}/number/uses-node.ts: package-loomwright`,
        `${core}/number/uses-worked.ts: package-loomwright`,
        `${core}/number/uses-mathjs.ts: package-loomwright`,
        'packages/worked/src/quantity/uses-mathjs.ts: only-there-mathjs',
        'packages/worked/src/draw/uses-yaml.ts: package-worked',
        'packages/worked/src/draw/uses-harness.ts: package-worked',
        'packages/harness/src/uses-cli.ts: package-harness',
        'packages/harness/src/uses-docs.ts: package-harness',
        'packages/harness/src/uses-node.ts: package-harness',
      ].sort(),
    );
  });

  it('gives a room of the floor those before it, and one above it the floor and its brackets', () => {
    expect(allowedRooms('check')).toEqual(['error', 'unit', 'source', 'check']);
    expect(allowedRooms('relay')).toEqual([...FLOOR, 'conductor', 'load', 'relay']);
    expect(() => allowedRooms('attic')).toThrow("no room 'attic'");
  });

  it('lists each room after those that it may import, so that no circle can be allowed', () => {
    const order = Object.keys(ROOMS);
    for (const [room, imports] of Object.entries(ROOMS)) {
      for (const name of imports)
        expect(order.indexOf(name), `${room} imports ${name}`).toBeLessThan(order.indexOf(room));
    }
  });
});

describe('the table and the folders agree', () => {
  const src = join(root, 'packages/loomwright/src');
  const rooms = readdirSync(src, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map(({ name }) => name);

  it('has every folder of the core as a room, each room a subpath and its names at the root', () => {
    const { exports } = JSON.parse(readFileSync(join(src, '../package.json'), 'utf8')) as { exports: object };
    const index = readFileSync(join(src, 'index.ts'), 'utf8');
    const withIndex = rooms.filter((room) => existsSync(join(src, room, 'index.ts')));
    expect([...FLOOR, ...Object.keys(ROOMS)]).toEqual(expect.arrayContaining(rooms));
    expect(withIndex.sort()).toEqual(rooms.sort());
    expect(Object.keys(exports).sort()).toEqual(['.', './package.json', ...rooms.map((room) => `./${room}`)].sort());
    for (const room of rooms) expect(index).toContain(`export * from './${room}/index.js';`);
  });

  it('is the one that DEVELOPERS.md shows', () => {
    const text = readFileSync(join(root, 'DEVELOPERS.md'), 'utf8');
    const shown = [...text.matchAll(/^\| `(\w+)` +\| (.+?) +\|$/gm)].map(
      ([, room = '', imports = '']) => [room, [...imports.matchAll(/`(\w+)`/g)].map(([, name]) => name)] as const,
    );
    expect(Object.fromEntries(shown)).toEqual(ROOMS);
  });

  it('has every package', () => {
    const folders = readdirSync(join(root, 'packages'), { withFileTypes: true })
      .filter((entry) => entry.isDirectory())
      .map(({ name }) => name);
    expect(folders.sort()).toEqual(Object.keys(PACKAGES).sort());
  });
});
