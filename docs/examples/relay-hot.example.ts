import { exampleValues, relayMapCard } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem: 'A relay is sure to pull in with 16 V at 25 °C. Which volts does it need with its coil at 100 °C?',
  source: 'automotive-relay-notes',
  place: 'pick-up voltage of a coil at other temperatures',
  status: 'published',
  card: relayMapCard,
  values: {
    ...exampleValues(relayMapCard),
    driverDropV: 0,
    wireResistanceOhm: 0,
    ratedPickUpV: 16,
    ratedTempC: 25,
    coilTempsC: '25; 100',
  },
  prints: { leastSupplyV: '20.6' },
});
