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
  'sender-range-pages': {
    title: 'Ohms of fuel senders at empty and full: gauge makers’ pages and questions, service texts',
    publisher: 'instrument makers, service literature of 1998 to 2006',
    status: 'published',
    note: 'Common practice, not a standard. Three rows of the table are from memory and say so. Quarter points as printed are approximate.',
  },
} as const satisfies Record<string, Source>;
