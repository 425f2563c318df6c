import { fuseOpeningTimeCard } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem: 'A 40 A blade fuse carries twice its rating. By when must it have opened, and what has it let through?',
  source: 'iso-8820-3',
  place: 'type C, 35 and 40 A, 200 %',
  status: 'published',
  card: fuseOpeningTimeCard,
  values: { family: 'blade-fuse', ratingA: '40', currentA: 80 },
  prints: { longestS: '5', longestI2tA2s: '32000' },
});
