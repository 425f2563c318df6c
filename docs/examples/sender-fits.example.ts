import { adaptSender } from 'loomwright';
import { adaptSenderCard, exampleValues } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem:
    'A sender of 0 to 280 Ω hangs on a gauge for 0 to 90 Ω. A resistor of 130 Ω across the sender brings the ends nearly together. What does the dial show at half and at full?',
  source: 'circuit-theory',
  place: 'worked by hand',
  status: 'derived',
  card: {
    ...adaptSenderCard,
    run: (input) =>
      adaptSender({ ...input, network: { senderSideOhm: 0, acrossOhm: 130, gaugeSideOhm: 0 }, toleranceFraction: 0 }),
  },
  values: { ...exampleValues(adaptSenderCard), mostErrorFraction: 0.3 },
  prints: { halfShownFraction: '0.749', fullShownFraction: '0.986' },
});
