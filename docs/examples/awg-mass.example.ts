import { awgToAreaMm2, feetToM } from 'loomwright';
import { wireMassCard } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem: 'What do 1000 ft of solid No. 12 copper weigh, bare?',
  source: 'nbs-circ-31',
  place: 'row of No. 12: 19.77 lb for 1000 ft, which is 8.97 kg',
  status: 'published',
  card: wireMassCard,
  values: { areaMm2: awgToAreaMm2('12'), lengthM: feetToM(1000), metal: 'copper', layFactor: 1 },
  prints: { massKg: '8.97' },
});
