import { canResistanceCard, exampleValues } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem:
    'A line has a terminator of 120 Ω at each end. Its wire is so short that it counts for nothing. What does a driver, or a meter, see?',
  source: 'iso-11898-2',
  place: '120 Ω at each end, 60 Ω seen by a driver',
  status: 'published',
  card: canResistanceCard,
  values: {
    ...exampleValues(canResistanceCard),
    plugs: 'front at 0 m with 120 Ω; back at 5 m with 120 Ω',
    resistanceOhmPerM: 0,
    measureAt: 'front',
  },
  prints: { readingOhm: '60' },
});
