import { checkRelayCard, exampleValues } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem: 'Lamps of 5 A hang on a switch of a 12 V system. Which rating must the switch have?',
  source: 'ac-43-13-1b',
  place: 'table 11-4, page 11-17: lamp, 12 V d.c., factor 5',
  status: 'published',
  card: checkRelayCard,
  values: { ...exampleValues(checkRelayCard), load: 'lamp', currentA: 5, supplyV: 12 },
  prints: { neededRatingA: '25' },
});
