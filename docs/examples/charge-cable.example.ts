import { exampleValues, senseErrorCard } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem:
    'The regulator holds 14.4 V at the alternator. 2 m of 25 mm², at the maximum of class 5, carry 200 A to the battery. What is lost on the way?',
  source: 'iec-60228',
  place: 'class 5, plain copper, 25 mm²: 0.780 Ω/km; by hand 0.312 V',
  status: 'derived',
  card: senseErrorCard,
  values: {
    ...exampleValues(senseErrorCard),
    regulatorTempC: 25,
    parts: 'charge cable + 1.56 mΩ 200 A',
  },
  prints: { positiveLossV: '0.312', batteryV: '14.088' },
});
