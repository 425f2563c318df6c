import { canLoadCard, exampleValues } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem:
    'A message of 8 bytes is sent every 10 ms on a line of 250 kbit/s, with an identifier of 11 bits. Frames count with all stuff bits and without space. Which share of the line does it take?',
  source: 'broster-2002',
  place: 'first message of the set: 0.0528',
  status: 'published',
  card: canLoadCard,
  values: {
    ...exampleValues(canLoadCard),
    messages: 'first: 8 bytes every 10 ms',
    interframe: 'left-out',
  },
  prints: { loadFraction: '0.0528' },
});
