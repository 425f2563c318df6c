import { exampleValues, faultBandsCard } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem:
    'A coolant sensor of 5900, 834 and 186 Ω at 0, 50 and 100 °C hangs on 5 V behind 2.49 kΩ. The unit calls everything above 4.8 V and below 0.10 V a fault. What would the sensor have to be?',
  source: 'circuit-theory',
  place: 'Ohm’s law and the three-point curve, worked by hand',
  status: 'derived',
  card: faultBandsCard,
  values: exampleValues(faultBandsCard),
  prints: { highLimitOhm: '59760', highLimitTempC: '-44.8', lowLimitOhm: '50.8', lowLimitTempC: '155.7' },
});
