import { exampleValues, ledResistorCard } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem: 'An LED of 1.6 V is to have 20 mA from 6 V. Which resistor, and how warm?',
  source: 'lessons-electric-circuits',
  place: 'volume III, chapter 3',
  status: 'published',
  card: ledResistorCard,
  values: {
    ...exampleValues(ledResistorCard),
    lowestSupplyV: 6,
    highestSupplyV: 6,
    ledV: 1.6,
    wantedA: 0.02,
    mostA: 0.025,
    leakageA: null,
    darkV: null,
  },
  prints: { exactOhm: '220', resistorOhm: '220', resistorW: '0.088' },
});
