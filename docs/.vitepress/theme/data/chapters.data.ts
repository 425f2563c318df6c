import { createContentLoader } from 'vitepress';
import { chaptersOf, HANDBOOK_GLOB } from './handbook';

interface ChapterLinks {
  readonly chapter: string;
  readonly pages: readonly { readonly title: string; readonly url: string }[];
}

declare const data: readonly ChapterLinks[];
export { data };

/** Titles and addresses only: this goes with every page. */
export default createContentLoader(HANDBOOK_GLOB, {
  transform: (raw): ChapterLinks[] =>
    chaptersOf(raw).map(({ chapter, pages }) => ({ chapter, pages: pages.map(({ title, url }) => ({ title, url })) })),
});
