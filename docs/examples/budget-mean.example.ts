import { energyBudgetCard, exampleValues } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem:
    'A battery of 100 Ah at 20 h with an exponent of 1.2 stands with the engine off, and 40 A are on half of the time. What does it take, and how is that written against an alternator that stands still?',
  source: 'circuit-theory',
  place: 'mean of a switched current, by hand: 40 A × 0.5',
  status: 'derived',
  card: energyBudgetCard,
  values: {
    ...exampleValues(energyBudgetCard),
    states: 'parked 0 rpm',
    loads: 'winch 40 A #1: parked 50 %',
    ratedChargeAh: 100,
  },
  prints: { loadsMeanA: '20', balanceA: '-20', outputA: '0' },
});
