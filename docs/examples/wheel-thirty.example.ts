import { exampleValues, toothFrequencyCard } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem: 'A wheel of 30 teeth turns at 4000 rpm. Which frequency?',
  source: 'speed-sensor-notes',
  place: 'page 8',
  status: 'published',
  card: toothFrequencyCard,
  values: { ...exampleValues(toothFrequencyCard), teeth: 30, missingTeeth: 0, speedRpm: 4000 },
  prints: { frequencyHz: '2000' },
});
