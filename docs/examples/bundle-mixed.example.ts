import { bundleDiameterCard } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem: 'Three wires of 1.19 mm, five of 1.40 mm and one of 1.65 mm lie in one bundle. How thick is it?',
  source: 'bundle-factors',
  place: 'example of mixed sizes',
  status: 'published',
  card: bundleDiameterCard,
  values: { wires: '3 × 1.19; 5 × 1.40; 1 × 1.65', rule: 'multiplication-factor' },
  prints: { ruleDiameterMm: '4.95' },
  slack: { units: 4, why: 'The sheet rounds each square before it adds them; unrounded its rule gives 4.914 mm.' },
});
