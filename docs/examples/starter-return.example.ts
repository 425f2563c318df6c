import { exampleValues, groundFaultsCard } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem:
    'A starter of 45 mΩ stands on an engine that is strapped to the battery by 0.5 mΩ. A throttle cable of 20 mΩ also leads from the engine to the body, and the body is on the battery by 1 mΩ. The battery has 12.6 V behind 6 mΩ. What does the cable carry when the strap is lost?',
  source: 'circuit-theory',
  place: 'worked by hand: 12.6 V / (6 + 45 + 20 + 1) mΩ',
  status: 'derived',
  card: groundFaultsCard,
  values: {
    ...exampleValues(groundFaultsCard),
    network:
      'battery: source post > plus, 12.6 V, 6 mΩ; starter: load plus > engine, 45 mΩ; engine strap: wire engine > post, 0.5 mΩ; body strap: wire body > post, 1 mΩ; throttle cable: wire engine > body, 20 mΩ',
    grounds: 'engine strap',
    watched: 'coolant sensor: engine > body, 20 mV',
    limited: 'throttle cable: 1 A',
  },
  prints: { worstLost: 'engine strap', worstLimitedA: '175.00', cutOffCount: '0' },
});
