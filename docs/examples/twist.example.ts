import { aircraftTwist } from 'loomwright';
import { twistPitchCard } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem: 'A pair of 20 AWG is given ten twists a foot. In what length does it turn once?',
  source: 'ac-43-13-1b-dressing',
  place: 'recommended number of wire twists a foot',
  status: 'memory',
  card: twistPitchCard,
  values: { table: aircraftTwist.key, awg: '20', wireCount: 2, outerDiameterMm: 1.9 },
  prints: { pitchMm: '30.48' },
});
