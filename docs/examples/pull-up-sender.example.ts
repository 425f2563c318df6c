import { choosePullUpCard, exampleValues } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem:
    'A fuel sender has 350 Ω empty and 10 Ω full. It may carry 20 mA, the pull-up goes to 5 V, and E12 is in the drawer.',
  source: 'circuit-theory',
  place: 'worked by hand',
  status: 'derived',
  card: choosePullUpCard,
  values: exampleValues(choosePullUpCard),
  prints: { pullUpOhm: '270', highestPinV: '2.8226', lowestPinV: '0.1786', faultA: '1.44', faultW: '20.7' },
});
