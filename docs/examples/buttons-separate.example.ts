import { checkSwitchLadderCard, exampleValues } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem:
    'Five buttons have 110, 360, 750, 1300 and 2700 Ω to ground, on 1 kΩ to 5 V, all parts of 5 %. How near do neighbours come?',
  source: 'circuit-theory',
  place: 'corners worked by hand',
  status: 'derived',
  card: checkSwitchLadderCard,
  values: { ...exampleValues(checkSwitchLadderCard), wireOhm: 0, contactMostOhm: 0 },
  prints: { smallestGapV: '0.436' },
});
