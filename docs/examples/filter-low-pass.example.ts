import { exampleValues, rcFilterCard } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem: '500 Ω and 7 µF make a low-pass filter. Where is its corner?',
  source: 'lessons-electric-circuits',
  place: 'volume II, chapter 8',
  status: 'published',
  card: rcFilterCard,
  values: { ...exampleValues(rcFilterCard), resistanceOhm: 500, capacitanceF: 7e-6 },
  prints: { cornerHz: '45.473' },
});
