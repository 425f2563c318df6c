import type { SourceStatus } from 'loomwright';

/** How a figure came to us, in the words of pages, notebooks and the command. */
export const statusWords: Readonly<Record<SourceStatus, string>> = {
  published: 'published',
  memory: 'from memory',
  'common-practice': 'common practice',
  derived: 'worked out',
};
