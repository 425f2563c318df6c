// A page gets the formulas of its own cards as trees: the site's build puts each tree beside its formula.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { cards } from '@loomwright/worked/card';
import { parseFormula, type Tree, treeToText } from '@loomwright/worked/work';
import { root } from '../support/root.js';

interface WithGlob {
  glob(pattern: string, options: { eager: true; exhaustive: true }): Record<string, FormulaTrees>;
}
interface FormulaTrees {
  readonly withTrees: (text: string, parse: (formula: string) => Tree) => string;
  readonly formulaTrees: () => { readonly transform: (code: string, id: string) => Promise<{ code: string } | null> };
}
// The site is no part of the tests' own project: it is taken in as it stands.
const [site] = Object.values(
  (import.meta as unknown as WithGlob).glob('../../docs/.vitepress/formula-trees.ts', {
    eager: true,
    exhaustive: true,
  }),
);
if (site === undefined) throw new Error('docs/.vitepress/formula-trees.ts is gone');
const { withTrees, formulaTrees } = site;

const folder = join(root, 'packages/worked/src/card');
const texts = readdirSync(folder, { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.ts'))
  .map((name) => readFileSync(join(folder, name), 'utf8'));

describe('formulas in cards', () => {
  it('get their trees beside them', () => {
    const text = withTrees("{ result: 'a', formula: 'b * (c + 1)', source: 'x' }, { formula:\n  'd' }", parseFormula);
    expect(text).toMatch(/^\{ result: 'a', formula: 'b \* \(c \+ 1\)', tree: \{.*\}, source: 'x' \}, /);
    const [, tree] = /'d', tree: (\{.*?\}) \}/.exec(text) ?? [];
    expect(treeToText(JSON.parse(tree ?? '') as never, (name) => name)).toBe('d');
  });
  it('are all found in the texts of the cards', () => {
    const found = new Set<string>();
    for (const text of texts) {
      withTrees(text, (formula) => {
        found.add(formula);
        return parseFormula(formula);
      });
    }
    const wanted = Object.values(cards).flatMap(({ steps }) => steps.flatMap(({ formula }) => formula ?? []));
    expect(wanted.filter((formula) => !found.has(formula))).toEqual([]);
    expect(found.size).toBeGreaterThan(200);
  });
  it('are left alone elsewhere', async () => {
    const { transform } = formulaTrees();
    expect(await transform("formula: 'a'", '/x/packages/worked/src/card/nomenclature/bus.ts')).toBeNull();
    expect(await transform("formula: 'a'", '/x/packages/worked/src/draw/svg.ts')).toBeNull();
    expect((await transform("formula: 'a'", '/x/packages/worked/src/card/bus/line.ts'))?.code).toContain('tree: {');
  });
});
