import { exampleValues, sloshFilterCard } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem:
    'Fuel sways with a period of 3 s and by √3 L to either side; the unit reads every half second. The gauge may sway by 1 L. Six readings a period make 2 sin 30° = 1, so that with a third of the power left a + 1/a = 2 + ½ and a = ½: half of each new reading is taken.',
  source: 'circuit-theory',
  place: 'worked by hand',
  status: 'derived',
  card: sloshFilterCard,
  values: {
    ...exampleValues(sloshFilterCard),
    sloshL: Math.sqrt(3),
    shortPeriodS: 3,
    longPeriodS: 3,
    sampleS: 0.5,
    mostRippleL: 1,
    refuelL: 8,
    fuelUseLPerH: 36,
  },
  prints: { newFraction: '0.5000', firstRippleL: '1.0000', lagL: '0.0100', settleS: '1.50' },
});
