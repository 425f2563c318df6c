import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { sources, type Source } from 'loomwright';
import { citationsIn, filesUnder, isHandedOn, keysOfTag, strayKeysOfTag } from '../support/citations.js';
import { root } from '../support/root.js';

const room = 'packages/loomwright/src/source';
const all: Readonly<Record<string, Source>> = sources;
const code = ['loomwright', 'worked', 'harness', 'cli']
  .flatMap((name) => filesUnder(`packages/${name}/src`))
  .filter((file) => !file.startsWith(room));
// A gate's bad samples cite nothing that exists, and this file shows what is refused.
const tests = readdirSync(join(root, 'test'), { withFileTypes: true })
  .filter((entry) => entry.isDirectory() && !['node_modules', 'gates', 'source'].includes(entry.name))
  .flatMap(({ name }) => filesUnder(`test/${name}`));
const inCode = citationsIn(code);
const inTests = citationsIn(tests);

/** The keys that each file of the room defines. */
function definedKeys(): readonly string[] {
  const keys: string[] = [];
  for (const file of filesUnder(room)) {
    const tree = ts.createSourceFile(file, readFileSync(join(root, file), 'utf8'), ts.ScriptTarget.ES2022, true);
    const visit = (node: ts.Node): void => {
      if (ts.isSatisfiesExpression(node)) {
        const list = ts.isAsExpression(node.expression) ? node.expression.expression : node.expression;
        if (ts.isObjectLiteralExpression(list)) {
          for (const entry of list.properties)
            if (entry.name !== undefined) keys.push((entry.name as ts.StringLiteral).text);
        }
      }
      ts.forEachChild(node, visit);
    };
    visit(tree);
  }
  return keys;
}

describe('the list of sources', () => {
  it('has each key once: no file of it hides an entry of another', () => {
    const keys = definedKeys();
    const twice = keys.filter((key, i) => keys.indexOf(key) !== i);
    expect(twice, 'defined twice').toEqual([]);
    expect([...keys].sort()).toEqual(Object.keys(all).sort());
  });
  it('says what each is, who publishes it and how far it can be trusted', () => {
    for (const [key, source] of Object.entries(all)) {
      expect(key).toMatch(/^[a-z0-9]+(?:-[a-z0-9]+)*$/);
      expect(source.title.length, key).toBeGreaterThan(10);
      expect(source.publisher, key).not.toBe('');
      expect(['published', 'memory', 'common-practice', 'derived'], key).toContain(source.status);
      if (source.note !== undefined) expect(source.note, key).toMatch(/[.)]$/);
    }
  });
});

describe('keys resolve', () => {
  it('every literal of code and tests is a source', () => {
    const unknown = [...inCode.literals, ...inTests.literals].filter(({ key }) => !(key in all));
    expect(unknown).toEqual([]);
    expect(inCode.literals.length).toBeGreaterThan(50);
    expect(inTests.literals.length).toBeGreaterThan(30);
  });
  it('every @source of the core names a source, or whose it is', () => {
    const core = inCode.tags.filter(({ file }) => file.startsWith('packages/loomwright/'));
    expect(core.length).toBeGreaterThan(20);
    for (const { text, file } of core) {
      const where = `${file}: @source ${text}`;
      expect(strayKeysOfTag(text, all), where).toEqual([]);
      expect(keysOfTag(text, all).length > 0 || isHandedOn(text), where).toBe(true);
    }
  });
});

describe('every source is used', () => {
  const cited = new Set([
    ...inCode.literals.map(({ key }) => key),
    ...inTests.literals.map(({ key }) => key),
    ...inCode.tags.flatMap(({ text }) => keysOfTag(text, all)),
  ]);
  it.each(Object.keys(all))('%s', (key) => {
    expect(cited.has(key) || inCode.texts.has(key)).toBe(true);
  });
});

describe('the test itself', () => {
  const read = (text: string): ReturnType<typeof citationsIn> => citationsIn(['a.ts'], () => text);
  it('finds literals, choices, lists and doc blocks', () => {
    const { literals, tags } = read(`
      /**
       * A function.
       * @source iec-60228 (simplified form); nbs-hb-100, section 1.1
       *   of the handbook
       * @example f() //=> 1
       */
      export const a = { source: x ? 'one-key' : 'other-key', sources: ['third-key'], note: 'source' };
      /** @source the table's own */
    `);
    expect(literals.map(({ key }) => key)).toEqual(['one-key', 'other-key', 'third-key']);
    expect(tags.map(({ text }) => text)).toEqual([
      'iec-60228 (simplified form); nbs-hb-100, section 1.1   of the handbook',
      "the table's own",
    ]);
  });
  it('reads keys off a tag, and tells free text from them', () => {
    const known = { 'iec-60228': 1, 'nbs-hb-100': 1, 'churchill-chu-1975': 1, statics: 1 };
    expect(keysOfTag('iec-60228 (simplified form); nbs-hb-100, section 1.1', known)).toEqual([
      'iec-60228',
      'nbs-hb-100',
    ]);
    expect(keysOfTag('statics (length of a helix)', known)).toEqual(['statics']);
    expect(keysOfTag('no such thing; a well-known rule', known)).toEqual([]);
    expect(strayKeysOfTag('churchill-chu-1975 or morgan-1975 (convection); heat-balance', known)).toEqual([
      'morgan-1975',
      'heat-balance',
    ]);
    expect(strayKeysOfTag('iec-60228 (simplified form); a well-known rule', known)).toEqual([]);
    expect(isHandedOn("the table's own")).toBe(true);
    expect(isHandedOn('Somebody, Some Journal 12 (1997)')).toBe(false);
  });
});
