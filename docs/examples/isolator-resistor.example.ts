import { exampleValues, isolatorOpeningCard } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem:
    'An alternator gives 60 A. The engine stops below 6 V at its ignition, 1.2 Ω and 4 Ω hang on the feed. Which resistor to ground would stop it without a second pole, and how hot would it be?',
  source: 'circuit-theory',
  place: 'by hand: 5 A and 1.5 A go into the rest, 53.5 A are left at 6 V',
  status: 'derived',
  card: isolatorOpeningCard,
  values: exampleValues(isolatorOpeningCard),
  prints: { aloneOhm: '0.1121', aloneW: '321' },
});
