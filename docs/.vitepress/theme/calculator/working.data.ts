import { cards } from '@loomwright/worked/card';
import { parseFormula, type Tree } from '@loomwright/worked/work';

/** Every formula of the cards as a tree, made once when the site is built: a page needs no parser of formulas. */
export type WorkingData = Readonly<Record<string, Tree>>;

declare const data: WorkingData;
export { data };

export default {
  load(): WorkingData {
    const trees: Record<string, Tree> = {};
    for (const card of Object.values(cards)) {
      for (const { formula } of card.steps) if (formula !== undefined) trees[formula] = parseFormula(formula);
    }
    return trees;
  },
};
