import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { FLOOR, ROOMS } from '../lint/rooms.mjs';
import { root } from '../support/root.js';
import { docBlocks, docFaults, passedOn } from './doc-block.js';

const GOOD = `/**
 * Volts lost.
 * @param input current and resistance
 * @returns volts
 * @throws InputError
 * @source circuit-theory
 * @example drop({ currentA: 1, resistanceOhm: 2 }).dropV //=> 2
 */`;

describe('the check of a doc block', () => {
  it('finds the block above each function', () => {
    const blocks = docBlocks(
      `/** One. */\nconst x = 1;\n\n/** Two. */\nexport function two() {}\n\nexport function three() {}\n`,
    );
    expect([...blocks]).toEqual([
      ['two', '/** Two. */'],
      ['three', ''],
    ]);
  });

  it('reads what an index passes on', () => {
    expect(passedOn("export type { A } from './a.js';\nexport { b, type C, d } from './b.js';\n")).toEqual(['b', 'd']);
  });

  it.each([
    ['has no doc block', ''],
    ['has no @throws', GOOD.replace('@throws', '')],
    ['has no @source', GOOD.replace('@source', '')],
    ['has an example without its result', GOOD.replace('//=> 2', '')],
    [
      'has its parts out of order',
      GOOD.replace('@param', '@x').replace('@returns', '@param').replace('@x', '@returns'),
    ],
  ])('finds that it %s', (fault, block) => {
    expect(docFaults(block, true)).toEqual([fault]);
    expect(docFaults(GOOD, true)).toEqual([]);
  });
});

describe('the public functions of the core', () => {
  const src = join(root, 'packages/loomwright/src');
  const rooms = Object.keys(ROOMS).filter((room) => existsSync(join(src, room, 'index.ts')));

  const functionsOf = (room: string): Map<string, string> => {
    const names = new Set(passedOn(readFileSync(join(src, room, 'index.ts'), 'utf8')));
    const files = readdirSync(join(src, room)).filter((name) => name.endsWith('.ts'));
    const all = files.flatMap((name) => [...docBlocks(readFileSync(join(src, room, name), 'utf8'))]);
    return new Map(all.filter(([name]) => names.has(name)));
  };

  it('stand in rooms above the floor', () => {
    expect(rooms.length).toBeGreaterThan(4);
    for (const room of rooms) expect(FLOOR).not.toContain(room);
  });

  it.each(rooms)('of %s have a whole doc block', (room) => {
    const functions = functionsOf(room);
    expect(functions.size).toBeGreaterThan(0);
    const faults = [...functions].flatMap(([name, block]) => docFaults(block, true).map((fault) => `${name} ${fault}`));
    expect(faults).toEqual([]);
  });

  it('of unit, which are conversions, have an example', () => {
    const functions = functionsOf('unit');
    expect(functions.size).toBeGreaterThan(10);
    const faults = [...functions].flatMap(([name, block]) =>
      docFaults(block, false).map((fault) => `${name} ${fault}`),
    );
    expect(faults).toEqual([]);
  });

  it.each(rooms)('of %s are called by a test of the room', (room) => {
    const folder = join(root, 'test', room);
    const files = existsSync(folder) ? readdirSync(folder).filter((name) => name.endsWith('.test.ts')) : [];
    const texts = files.map((name) => readFileSync(join(folder, name), 'utf8')).join('\n');
    const untested = [...functionsOf(room).keys()].filter((name) => !new RegExp(`\\b${name}\\b`).test(texts));
    expect(untested).toEqual([]);
  });
});
