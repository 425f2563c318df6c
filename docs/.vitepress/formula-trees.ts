import type { Tree } from '@loomwright/worked/work';

/** A module of a card: its steps hold formulas. */
const CARD = /\/packages\/worked\/src\/card\/(?!nomenclature\/).+\.ts$/;

/** A formula as a card writes it: a plain text in quotes. */
const FORMULA = /\bformula:\s*'((?:[^'\\]|\\.)*)'/g;

/** The text of a card with the tree of each formula beside it: `formula: 'a * b', tree: { … }`. */
export function withTrees(text: string, parse: (formula: string) => Tree): string {
  return text.replace(FORMULA, (given, formula: string) => `${given}, tree: ${JSON.stringify(parse(formula))}`);
}

/**
 * Puts the tree of each formula into its card when the site is built. A page needs no parser of formulas then, and
 * gets the trees of its own cards only.
 */
export function formulaTrees() {
  return {
    name: 'loomwright:formula-trees',
    enforce: 'pre' as const,
    async transform(code: string, id: string) {
      if (!CARD.test(id) || !code.includes('formula:')) return null;
      const { parseFormula } = await import('@loomwright/worked/work');
      return { code: withTrees(code, parseFormula), map: null };
    },
  };
}
