import { exampleValues, lampInrushCard } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem:
    'The lamp load of a relay test closes on twelve times the rated current. Which surge does a lamp with a ratio of 12 make where nothing but its filament limits it?',
  source: 'mil-r-5757',
  place: 'lamp load: make 12 times rated',
  status: 'published',
  card: lampInrushCard,
  values: {
    ...exampleValues(lampInrushCard),
    supplyV: 12,
    loopResistanceOhm: 0,
    ratedPowerW: 55,
    ratedV: 12,
    hotOverColdRatio: 12,
    ambientTempC: 20,
    warmUpS: 0.1,
  },
  prints: { inrushRatio: '12' },
});
