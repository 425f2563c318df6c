import { bundleFactorCard, exampleValues } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem:
    'Eight wires lie in a bundle of which 60 % of the capacity is in use. What is left of the current of a single wire?',
  source: 'ac-43-13-1b',
  place: 'wire-size example 2, figure 11-6, page 11-27',
  status: 'published',
  card: bundleFactorCard,
  values: { ...exampleValues(bundleFactorCard), wireCount: 8, loadedFraction: 0.6, rule: 'mil-w-5088' },
  prints: { factor: '0.6' },
});
