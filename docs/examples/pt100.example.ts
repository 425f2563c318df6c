import { exampleValues, rtdResistanceCard } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem: 'What does a Pt100 measure at −40 °C?',
  source: 'iec-60751',
  place: 'Pt100 table',
  status: 'published',
  card: rtdResistanceCard,
  values: { ...exampleValues(rtdResistanceCard), tempC: -40 },
  prints: { resistanceOhm: '84.27' },
});
