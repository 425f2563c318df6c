import temml from 'temml';
import { cards, nomenclature } from '@loomwright/worked/card';
import { parseFormula, type Tree } from '@loomwright/worked/work';

/** What a page needs to show working without a formula parser or a TeX renderer: made once, when the site is built. */
export interface WorkingData {
  /** Formulas by their text. */
  readonly trees: Readonly<Record<string, Tree>>;
  /** Symbols as MathML, by their TeX. */
  readonly symbols: Readonly<Record<string, string>>;
}

declare const data: WorkingData;
export { data };

export default {
  load(): WorkingData {
    const trees: Record<string, Tree> = {};
    const symbols: Record<string, string> = {};
    const symbol = (tex: string | undefined): void => {
      if (tex === undefined || tex in symbols) return;
      const mathml = temml.renderToString(tex, { throwOnError: true });
      symbols[tex] = mathml.replace(/^<math[^>]*>|<\/math>$/g, '');
    };
    for (const term of Object.values(nomenclature)) symbol(term.symbol);
    for (const card of Object.values(cards)) {
      for (const field of [...card.fields, ...card.results]) if ('symbol' in field) symbol(field.symbol);
      for (const step of card.steps) {
        step.constants?.forEach((constant) => symbol(constant.symbol));
        if (step.formula !== undefined) trees[step.formula] = parseFormula(step.formula);
      }
    }
    return { trees, symbols };
  },
};
