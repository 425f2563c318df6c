import { exampleValues, thermistorTemperatureCard } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem: 'A probe with a 10 kΩ thermistor of published letters measures 55 303.9 Ω. How cold is it?',
  source: 'ntc-10k3mcd1-manual',
  place: 'table C-1',
  status: 'published',
  card: thermistorTemperatureCard,
  values: { ...exampleValues(thermistorTemperatureCard), curve: 'ntc-10k3mcd1', resistanceOhm: 55303.9 },
  prints: { tempC: '-10.00' },
});
