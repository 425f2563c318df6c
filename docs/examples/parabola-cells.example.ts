import { calibrationTableCard } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem:
    'A curve is the square of what comes in, measured at 0, 1, 2 … 12. Four cells are allowed. The chord of a parabola misses it by a quarter of its length squared, so the cells are evenly spaced; and of whole numbers, a chord of four misses by four.',
  source: 'imai-iri-1988',
  place: 'a parabola, worked by hand',
  status: 'derived',
  card: calibrationTableCard,
  values: {
    points: Array.from({ length: 13 }, (_, i) => `${i} ${i * i}`).join('; '),
    cellCount: 4,
    inStepValue: null,
    outStepValue: null,
    wantedErrorValue: null,
  },
  prints: { worstErrorValue: '4', leastErrorValue: '4', roundingLossValue: '0' },
});
