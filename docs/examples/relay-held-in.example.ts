import { exampleValues, sneakPathsCard } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem:
    'The main relay has a coil of 80 Ω, pulls in at 7.5 V and holds down to 3 V. Its contact feeds the ignition rail, and a warning lamp of 60 Ω leads from the rail to the coil. The battery has 12 V, everything else no resistance worth counting. The key is turned off. What is left on the coil?',
  source: 'circuit-theory',
  place: 'worked by hand: 12 V × 80 / (60 + 80) = 6.857 V, between 3 V and 7.5 V: held in; the rail keeps 12 V',
  status: 'derived',
  card: sneakPathsCard,
  values: {
    ...exampleValues(sneakPathsCard),
    network:
      'battery: source post > plus, 12 V, 0 Ω; key: switch plus > coil feed, closed, 0 Ω; main contact: switch plus > rail, open, 0 Ω; main coil: load coil feed > post, 80 Ω; warning lamp: load rail > coil feed, 60 Ω; ignition: load rail > post, 4 Ω',
    states: 'key off: open key, relays in, dead coil feed + rail',
    faults: '',
    relays: 'main coil: in 7.5 V, holds 3 V, closes main contact',
  },
  prints: { heldRelayCount: '1', worstSneakV: '12.000', coilLeftV: '6.857' },
});
