import { exampleValues, sensorSupplyBudgetCard } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem:
    'A pin that holds 100 mA feeds a pedal track of 1 kΩ and a boost sensor of 20 mA that works from 4.5 V. It may carry 50 mA. What does it carry, and what has the pin when a wire of it lies on ground through 10 Ω?',
  source: 'circuit-theory',
  place: '5 V/1 kΩ + 20 mA; 0.1 A/(1/10 + 1/1000 + 0.02/4.5)',
  status: 'derived',
  card: sensorSupplyBudgetCard,
  values: {
    ...exampleValues(sensorSupplyBudgetCard),
    supplyPins: 'VREF: 50 mA, holds 100 mA, blocks',
    supplyDevices: 'pedal: VREF, track 1 kΩ, 0 %, gives 50 %; boost: VREF, 20 mA from 4.5 V, 0 %, gives 50 %',
    supplyToleranceFraction: 0,
    shortOhm: 10,
  },
  prints: { tightestSumA: '0.025', tightestHeadroomA: '0.025', shortedV: '0.9484' },
});
