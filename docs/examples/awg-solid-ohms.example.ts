import { feetToM } from 'loomwright';
import { wireResistanceCard } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem: 'A table prints 1.588 Ω for 1000 ft of solid annealed No. 12 copper at 20 °C. Does the arithmetic give it?',
  source: 'nbs-circ-31',
  place: 'row of No. 12, 20 °C',
  status: 'published',
  card: wireResistanceCard,
  values: { resistanceBasis: 'geometric', size: 'AWG 12', lengthM: feetToM(1000), conductorTempC: 20 },
  prints: { resistanceOhm: '1.588' },
});
