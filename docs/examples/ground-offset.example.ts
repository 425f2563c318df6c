import { groundOffsetErrorCard } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem:
    'An engine hangs on the battery’s post by a strap of 2 mΩ, the dash by 1 and 3 mΩ. A radiator fan of 20 A comes back through the engine. What does it do to an oil pressure sensor in the block that gives 2 of 5 V, and is read from the dash with 10 bits?',
  source: 'circuit-theory',
  place: '20 A · 2 mΩ · (1 − 2/5)',
  status: 'derived',
  card: groundOffsetErrorCard,
  values: {
    groundPieces: 'engine strap: engine > post, 2 mΩ; body strap: body > post, 1 mΩ; dash stud: dash > body, 3 mΩ',
    reference: 'post',
    offsetLoads: 'fan: engine, 20 A',
    offsetSensors: 'oil pressure: engine > dash, body, ratiometric, 2 V, 2.5 bar/V, ground budget',
    supplyV: 5,
    referenceV: 5,
    converterBits: 10,
  },
  prints: { pairShiftMv: '40.0', pairErrorMv: '24.0', pairErrorCount: '4.915' },
});
