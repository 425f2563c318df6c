import { dividerCard } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem: '45 V stand across 5 kΩ, 10 kΩ and 7.5 kΩ, one after the other. How many volts are across the 5 kΩ?',
  source: 'lessons-electric-circuits',
  place: 'volume I, chapter 6',
  status: 'published',
  card: dividerCard,
  values: { inV: 45, upperOhm: 17500, lowerOhm: 5000 },
  prints: { outV: '10', currentA: '0.002' },
});
