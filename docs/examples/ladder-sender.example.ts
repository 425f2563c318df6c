import { exampleValues, ladderSenderCard } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem:
    'A ladder sender has seven contacts at equal steps, 240 to 33 Ω, and a pull-up of 240 Ω to 5 V. What is a step worth, and how far is a gauge off that takes it for a smooth sender?',
  source: 'circuit-theory',
  place: 'worked by hand, parts as marked',
  status: 'derived',
  card: ladderSenderCard,
  values: {
    ...exampleValues(ladderSenderCard),
    pullToleranceFraction: 0,
    toleranceFraction: 0,
    wireOhm: 0,
    overlapFraction: 0,
  },
  prints: {
    emptyV: '2.5000',
    fullV: '0.6044',
    worstUncertaintyFraction: '0.0833',
    straightWorstErrorFraction: '0.1123',
  },
});
