import type { ContentData } from 'vitepress';

/** What a handbook page says of itself in its front matter. */
export interface HandbookPage {
  readonly title: string;
  readonly url: string;
  readonly question: string;
  readonly chapter: string;
  readonly order: number;
  readonly answers: readonly string[];
}

export interface Chapter {
  readonly chapter: string;
  readonly pages: readonly HandbookPage[];
}

/** Which files the loaders of the handbook scan. */
export const HANDBOOK_GLOB = 'handbook/*.md';

/** Chapters in the order of their first pages, each with its pages in order. A page that lacks a field fails the build. */
export function chaptersOf(raw: readonly ContentData[]): Chapter[] {
  const pages = raw
    .filter(({ url }) => !url.endsWith('/handbook/'))
    .map(toPage)
    .sort((a, b) => a.order - b.order || a.url.localeCompare(b.url));
  const names = [...new Set(pages.map((page) => page.chapter))];
  return names.map((chapter) => ({ chapter, pages: pages.filter((page) => page.chapter === chapter) }));
}

function toPage({ url, frontmatter }: ContentData): HandbookPage {
  const { title, question, chapter, order, answers } = frontmatter;
  for (const [field, value] of Object.entries({ title, question, chapter })) {
    if (typeof value !== 'string' || value === '') throw new Error(`${url}: front matter needs ${field}, a text`);
  }
  if (typeof order !== 'number') throw new Error(`${url}: front matter needs order, a number`);
  if (!Array.isArray(answers)) throw new Error(`${url}: front matter needs answers, a list of function names`);
  return { title, url, question, chapter, order, answers };
}
