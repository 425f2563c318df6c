import { exampleValues, thermistorInputCard } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem:
    'A coolant sensor of 5900, 834 and 186 Ω at 0, 50 and 100 °C hangs on 5 V through 2.49 kΩ. What does the pin read at 100 °C, and how many kelvins is a count of 1024?',
  source: 'circuit-theory',
  place: '5 · 186/(186 + 2490)',
  status: 'derived',
  card: thermistorInputCard,
  values: { ...exampleValues(thermistorInputCard), inputV: null, tempC: 100, pullOhm: 2490, adcSteps: 1024 },
  prints: { inputV: '0.3475', countK: '0.57' },
});
