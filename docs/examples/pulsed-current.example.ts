import { exampleValues, pulsedTemperatureCard } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem:
    'A load draws 24 A for 60 % of the time, switched a hundred times a second. What do the switch, the wire and the battery each feel?',
  source: 'circuit-theory',
  place: 'r.m.s. 24 √0.6, mean 24 · 0.6',
  status: 'derived',
  card: pulsedTemperatureCard,
  values: { ...exampleValues(pulsedTemperatureCard), onCurrentA: 24, offCurrentA: 0, onS: 0.006, periodS: 0.01 },
  prints: { rmsCurrentA: '18.59', meanCurrentA: '14.40' },
});
