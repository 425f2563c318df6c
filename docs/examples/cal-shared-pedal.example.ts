import { exampleValues, sharedSensorCard } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem:
    'A pedal track of 2.0 kΩ on 5.00 V stands at 80 %. Its owner feeds it and has 100 kΩ to ground. A data logger listens: 2.2 kΩ in series, 10 kΩ to ground, a diode of 0.6 V to its own rail.',
  source: 'circuit-theory',
  place: 'Millman’s theorem, worked by hand',
  status: 'derived',
  card: sharedSensorCard,
  values: exampleValues(sharedSensorCard),
  prints: { firstAloneV: '3.9872', bothNodeV: '3.8856', firstNodeV: '3.5583' },
});
