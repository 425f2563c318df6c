import { theveninCard } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem: '28 V behind 4 Ω and 7 V behind 1 Ω feed one node, with a load of 2 Ω. What does the node see?',
  source: 'lessons-electric-circuits',
  place: 'volume I, chapter 10',
  status: 'published',
  card: theveninCard,
  values: { branches: '28 V / 4; 7 V / 1', injectedA: 0, loadOhm: 2 },
  prints: { emfV: '11.2', sourceOhm: '0.8', nodeV: '8', loadA: '4', shortA: '14' },
});
