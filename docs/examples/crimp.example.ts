import { ul486aPullOut } from 'loomwright';
import { crimpPullOutCard } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem: 'A crimp on 10 AWG is pulled at an inch a minute and held for a minute. What must it bear?',
  source: 'ul-486a',
  place: 'section 12, pull-out, 80 lbf',
  status: 'published',
  card: crimpPullOutCard,
  values: { table: ul486aPullOut.key, size: '10' },
  prints: { pullOutN: '356.0' },
});
