import type { Options } from 'minisearch';

/** What the search knows of one section of a page. */
export interface SearchEntry {
  readonly id: string;
  /** The title of the page, shown but not searched: each of its sections would answer to it. */
  readonly page: string;
  /** The same where the entry is the opening of the page, else empty. */
  readonly title: string;
  readonly section: string;
  readonly names: string;
  readonly text: string;
  readonly lead: string;
}

/** The same options make the index and read it. */
export const searchOptions: Options<SearchEntry> = {
  fields: ['title', 'section', 'names', 'text'],
  storeFields: ['page', 'section', 'lead'],
  searchOptions: {
    prefix: true,
    // A slip of the pen in a long word; in a short one it would make another word of it.
    fuzzy: (term) => (term.length > 5 ? 0.2 : false),
    combineWith: 'AND',
    boost: { title: 5, section: 3, names: 4 },
  },
};
