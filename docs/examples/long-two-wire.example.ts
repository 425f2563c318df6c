import { feetToM } from 'loomwright';
import { exampleValues, solveFeedCard } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem:
    'Two wires of No. 16, 100 ft each way, feed 4 A from 24 V. A table gives the wire 4.99 Ω for 1000 ft at 75 °C. How many volts are lost?',
  source: 'nec-chapter-9-table-8',
  place: 'worked example in a text that quotes the table: 2 · 100 · 4.99 / 1000 · 4',
  status: 'published',
  card: solveFeedCard,
  values: {
    ...exampleValues(solveFeedCard),
    supplyV: 24,
    ratedCurrentA: 4,
    ratedV: 24,
    resistanceBasis: 'nec-chapter-9-table-8-uncoated',
    size: '16',
    outLengthM: feetToM(100),
    returnLengthM: feetToM(100),
    conductorTempC: 75,
    fuseResistanceOhm: 0,
    relayResistanceOhm: 0,
    jointCount: 0,
    jointResistanceOhm: 0,
    bodyResistanceOhm: 0,
  },
  prints: { dropV: '3.99' },
});
