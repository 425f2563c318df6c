import { exampleValues, runTimeCard } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem: 'A battery of 120 Ah at 20 h with an exponent of 1.4 is asked for 120 A. How long does it last?',
  source: 'peukert-law',
  place: 'worked example: 0.30 h, about 18 minutes',
  status: 'published',
  card: runTimeCard,
  values: {
    ...exampleValues(runTimeCard),
    peukertExponent: 1.4,
    endChargeFraction: 0,
    currentA: 120,
    stages: '',
  },
  prints: { runTimeH: '0.30' },
});
