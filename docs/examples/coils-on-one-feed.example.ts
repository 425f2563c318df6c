import { coilChargeCard, exampleValues } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem:
    'Six coils of 3.0 mH and 0.60 Ω on one feed, 7.5 A wanted, 0.9 V in the driver, at 8400 rpm of a four-stroke and 10 V.',
  source: 'circuit-theory',
  place: 'closed form of an inductance and a resistance',
  status: 'derived',
  card: coilChargeCard,
  values: {
    ...exampleValues(coilChargeCard),
    supplyV: 10,
    driverDropV: 0.9,
    feedResistanceOhm: 0,
    coilCount: 6,
    coilResistanceOhm: 0.6,
    inductanceH: 0.003,
    engineRpm: 8400,
    firing: 'each-second-turn',
    wantedA: 7.5,
  },
  prints: { overlapCount: '1.433', meanA: '5.979', rmsA: '6.354', peakA: '10.32' },
});
