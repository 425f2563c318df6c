import { crankingCircuitCard, exampleValues } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem:
    'A starter with an equivalent resistance of 0.0500 Ω stands behind a 12.0 V battery with 0.0100 Ω inside. The battery’s connections corrode and add 0.0900 Ω. What is left of 200 A, 10.0 V and 2.00 kW?',
  source: 'college-physics-starter',
  place: 'problem on a starter motor, part (d)',
  status: 'published',
  card: crankingCircuitCard,
  values: {
    ...exampleValues(crankingCircuitCard),
    openV: 12,
    batteryResistanceOhm: 0.01,
    outList: 'corroded connections: joint 90 mΩ',
    returnList: '',
    starterKind: 'resistor',
    lockedV: 10,
    lockedA: 200,
    outAfter: '',
    groundBefore: '',
    budgets: 'sides',
  },
  prints: { currentA: '80', starterV: '4.00', starterPowerW: '320' },
});
