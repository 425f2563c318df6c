import { massToMoveCard } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem:
    'A centre of gravity at 81.5 must come forward to 80.5; the whole is 7800. How much must move from station 150 to station 30? The handbook counts in pounds and inches; the formula holds in any units, so its figures stand here as kilograms and metres.',
  source: 'faa-h-8083-25',
  place: 'weight shift, aft limit exceeded',
  status: 'published',
  card: massToMoveCard,
  values: { totalMassKg: 7800, shiftM: -1, fromM: 150, toM: 30 },
  prints: { massKg: '65' },
});
