import { excitationResistorCard, exampleValues } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem:
    'A rotor of 4 Ω behind a regulator that drops 1 V wants 0.2 A, and the ignition is at 11.8 V. Which resistor of the E12 series, ± 5 %, gives that without a lamp?',
  source: 'circuit-theory',
  place: 'by hand: 10 V are left at 0.2 A, so 50 Ω; of that 47 Ω at the high end of its tolerance',
  status: 'derived',
  card: excitationResistorCard,
  values: {
    ...exampleValues(excitationResistorCard),
    rotorOhm: 4,
    regulatorDropV: 1,
    diodeDropV: null,
    lampPowerW: null,
    ignitionLoadOhm: null,
  },
  prints: { exactOhm: '50', resistorOhm: '47' },
});
