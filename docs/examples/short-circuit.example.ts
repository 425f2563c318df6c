import { shortCircuitWithstandCard } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem:
    'A fault of 12 000 A is cleared in 0.02 s. Which area must a cross-linked cable have that runs at 90 °C and bears 250 °C for seconds?',
  source: 'iec-60364-4-43',
  place: 'worked example with k = 143, in a secondary text',
  status: 'published',
  card: shortCircuitWithstandCard,
  values: { startTempC: 90, limitTempC: 250, metal: 'copper', currentA: 12000, durationS: 0.02 },
  prints: { oneSecondAPerMm2: '143', leastAreaMm2: '11.9' },
});
