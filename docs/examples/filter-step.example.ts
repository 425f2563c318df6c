import { exampleValues, rcStepCard } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem: '15 V charge 100 µF through 10 kΩ. How many volts stand there after one second, and what flows then?',
  source: 'lessons-electric-circuits',
  place: 'volume I, chapter 16',
  status: 'published',
  card: rcStepCard,
  values: exampleValues(rcStepCard),
  prints: { outV: '9.482', currentA: '0.0005518' },
});
