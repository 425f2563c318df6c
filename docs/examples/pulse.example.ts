import { pulseI2tCard } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem:
    'An inrush is a half sine of 60 A at its peak and 100 ms long. A thousand of them may each have 38 % of the melting I²t: the fuse needs 473.7 A²s of it. What does one bring?',
  source: 'fuse-selection-guides',
  place: 'charts 1 and 2',
  status: 'derived',
  card: pulseI2tCard,
  values: { shape: 'half-sine', peakA: 60, durationS: 0.1 },
  prints: { i2tA2s: '180' },
});
