import { checkChannelCard, exampleValues } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem:
    'Two outputs of 1 mΩ are joined at a load of 60 A; their wires have 1 and 5 mΩ. What does the one with the shorter wire carry?',
  source: 'circuit-theory',
  place: 'current divider: 2 and 6 mΩ side by side',
  status: 'derived',
  card: checkChannelCard,
  values: {
    ...exampleValues(checkChannelCard),
    runA: 60,
    onResistanceOhm: 0.001,
    firstOhm: 0.001,
    secondOhm: 0.005,
  },
  prints: { shareA: '45' },
});
