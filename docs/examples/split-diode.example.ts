import { exampleValues, splitChargeCard } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem:
    'A regulator holds 14.4 V at the starter battery. A diode that drops 0.65 V leads on to a service battery which is empty at 11.8 V and wants 14.4 V to be full. How full does it get?',
  source: 'charge-line',
  place: 'by hand: 13.75 V arrive, 1.95 V of the 2.6 V from empty to full, so three quarters',
  status: 'derived',
  card: splitChargeCard,
  values: {
    ...exampleValues(splitChargeCard),
    linkKind: 'diode',
    senseAt: 'starter-battery',
    serviceBattery: '95 Ah, 40 % full, 10 mΩ, filled at 14.4 V',
    serviceLoadA: 0,
    thresholdV: 0.65,
    diodeOhm: 0,
  },
  prints: { sparedV: '-0.65', finalFraction: '0.75' },
});
