import { exampleValues, saddleTankCard } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem:
    'Each side of a saddle tank holds 30 L and has a sender of 90 Ω empty and 10 Ω full, both in parallel on 180 Ω to 5 V. What does the input read with the tank full, and what stays behind when the transfer dies?',
  source: 'circuit-theory',
  place: 'worked by hand',
  status: 'derived',
  card: saddleTankCard,
  values: exampleValues(saddleTankCard),
  prints: { fullV: '0.1351', trappedL: '15.00', totalL: '60' },
});
