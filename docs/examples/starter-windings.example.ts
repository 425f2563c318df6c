import { exampleValues, starterSolenoidCard } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem:
    'A starter’s solenoid has a pull-in winding of 0.20 Ω and a hold-in winding of 0.67 Ω. What does it take at 10 V, pulling in and holding?',
  source: 'vehicle-service-data',
  place: 'hold-in 10 to 20 A, both windings 60 to 85 A at 10 V',
  status: 'derived',
  card: starterSolenoidCard,
  values: {
    ...exampleValues(starterSolenoidCard),
    supplyV: 10,
    crankingV: 10,
    wireResistanceOhm: 0,
    pullInResistanceOhm: 0.2,
    holdInResistanceOhm: 10 / 15,
    motorResistanceOhm: 0,
    coldTempC: 20,
    hotTempC: 20,
  },
  prints: { coldHoldA: '15', coldPullInA: '65' },
});
