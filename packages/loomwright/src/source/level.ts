import type { Source } from './type.js';

/** Sources on tanks and level senders. */
export const levelSources = {
  'tank-fill-table': {
    title: 'Horizontal cylinder with 2:1 elliptical heads: formulas, a worked example and a table of fill by depth',
    publisher: 'a page on process tanks',
    status: 'published',
    note: 'Its line for the total volume shows one head; its figures count two.',
  },
  'horizontal-tank-problem': {
    title: 'Liquid in a horizontal cylindrical tank: volume from the depth, with a solved problem',
    publisher: 'question-and-answer pages on mathematics',
    status: 'published',
  },
} as const satisfies Record<string, Source>;
