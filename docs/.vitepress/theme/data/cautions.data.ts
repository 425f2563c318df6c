import { cards, cautions } from '@loomwright/worked/card';
import { defineLoader } from 'vitepress';

export interface ListedCaution {
  readonly key: string;
  readonly title: string;
  readonly text: string;
  /** Functions whose calculator prints it, each with the area of its page. */
  readonly functions: readonly { readonly name: string; readonly area: string }[];
}

declare const data: readonly ListedCaution[];
export { data };

/** Every caution as it is printed, and where. */
export default defineLoader({
  load(): ListedCaution[] {
    return Object.entries(cautions).map(([key, { title, text }]) => ({
      key,
      title,
      text,
      functions: Object.values(cards)
        .filter((card) => (card.cautions as readonly string[]).includes(key))
        .map(({ name, area }) => ({ name, area })),
    }));
  },
});
