import { feetToM } from 'loomwright';
import { wireResistanceCard } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem: 'The same 1000 ft of solid No. 12, now at 75 °C, where another table prints 1.93 Ω.',
  source: 'nec-chapter-9-table-8',
  place: 'solid No. 12, uncoated copper, 75 °C',
  status: 'published',
  card: wireResistanceCard,
  values: { resistanceBasis: 'geometric', size: 'AWG 12', lengthM: feetToM(1000), conductorTempC: 75 },
  prints: { resistanceOhm: '1.93' },
});
