import { exampleValues, solveNetworkCard } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem:
    '24 V feed two arms: 150 Ω and then 300 Ω back, and 50 Ω and then 250 Ω back. 100 Ω join the middles of the arms, so that no rule of series and parallel takes the circuit apart. What is there across the 300 Ω?',
  source: 'lessons-electric-circuits',
  place: 'volume I, chapter 10, unbalanced bridge, listing of the simulator',
  status: 'published',
  card: solveNetworkCard,
  values: {
    ...exampleValues(solveNetworkCard),
    network:
      'supply: source 0 > 1, 24 V, 0 Ω; R1: wire 1 > 2, 150 Ω; R2: wire 1 > 3, 50 Ω; R3: wire 2 > 3, 100 Ω; R4: load 2 > 0, 300 Ω; R5: load 3 > 0, 250 Ω',
    reference: '0',
  },
  prints: { leastLoadV: '17.66' },
});
