import { batteryResistanceCard, exampleValues } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem:
    'A battery of 10 V at rest gives 8.333 V with 1 Ω across it, that is 8.333 A. What resistance does it have inside, and what would a dead short draw?',
  source: 'lessons-electric-circuits',
  place: 'volume I, batteries: 10 V behind 0.2 Ω',
  status: 'published',
  card: batteryResistanceCard,
  values: {
    ...exampleValues(batteryResistanceCard),
    from: 'two-loads',
    lesserA: 0,
    lesserV: 10,
    greaterA: 25 / 3,
    greaterV: 25 / 3,
  },
  prints: { insideOhm: '0.2', shortCircuitA: '50' },
});
