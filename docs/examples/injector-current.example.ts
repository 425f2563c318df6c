import { exampleValues, injectorFeedCard } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem: 'An injector of 12 Ω is held open long enough on 13.8 V. Which current does it end at?',
  source: 'vehicle-service-data',
  place: 'injectors of high resistance, 11 to 13 Ω',
  status: 'derived',
  card: injectorFeedCard,
  values: {
    ...exampleValues(injectorFeedCard),
    supplyV: 13.8,
    driverDropV: 0,
    feedResistanceOhm: 0,
    injectorResistanceOhm: 12,
    onS: 0.015,
    engineRpm: 900,
  },
  prints: { injectorA: '1.15' },
});
