import { shortCircuitCurrentCard } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem:
    'A battery of 9.0 mΩ at 12.6 V feeds 2 m of 25 mm², 0.780 mΩ a metre, and a fuse of 1.4 mΩ. What flows in a short right behind it? A blade fuse can interrupt 1000 A.',
  source: 'circuit-theory',
  place: 'resistance of 25 mm² by IEC 60228 class 5',
  status: 'derived',
  card: shortCircuitCurrentCard,
  values: {
    supplyV: 12.6,
    otherOhm: 0.0104,
    wireLengthM: 2,
    resistanceOhmPerM: 0.00078,
    ratedTempC: 20,
    conductorTempC: 20,
  },
  prints: { currentA: '1053.5' },
});
