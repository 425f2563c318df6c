import { exampleValues, lampAtVoltageCard } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem: 'A lamp made for 13.5 V gets 14.2 V. What becomes of its light and its life?',
  source: 'lamp-rerating',
  place: 'light with the power 3.4, life with the power −16 at worst',
  status: 'derived',
  card: lampAtVoltageCard,
  values: { ...exampleValues(lampAtVoltageCard), ratedPowerW: 21, ratedV: 13.5, lampV: 14.2 },
  prints: { lightFraction: '1.188' },
});
