import { exampleValues, fuseDropCurrentCard } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem: 'A meter shows 1.0 mV across a 10 A blade fuse with everything off. What flows?',
  source: 'fuse-drop-charts',
  place: 'standard blade, 10 A: 130 mA at 1.0 mV',
  status: 'published',
  card: fuseDropCurrentCard,
  values: exampleValues(fuseDropCurrentCard),
  prints: { currentA: '0.130' },
});
