import { exampleValues, loadCurrentsCard } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem:
    'A load takes 24 A while it is on, and is switched fast with a duty of 0.60. What do channel, wire and battery each feel?',
  source: 'circuit-theory',
  place: 'r.m.s. 24 √0.6, mean 24 · 0.6',
  status: 'derived',
  card: loadCurrentsCard,
  values: {
    ...exampleValues(loadCurrentsCard),
    supplyV: 12,
    pathResistanceOhm: 0,
    kind: 'constant-current',
    ratedPowerW: 288,
    ratedV: 12,
    dutyFraction: 0.6,
  },
  prints: { peakA: '24.00', rmsA: '18.59', meanA: '14.40' },
});
