import { exampleValues, loadDumpCard } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem: 'A 12 V alternator of 100 A turns at 6000 rpm. Which resistance stands behind its load dump?',
  source: 'iso-16750-2',
  place: 'rule for the resistance: 10 · 14 V · 6000 over 0.8 · 100 A · 12 000',
  status: 'derived',
  card: loadDumpCard,
  values: { ...exampleValues(loadDumpCard), alternatorRatedA: 100, rotorRpm: 6000 },
  prints: { dumpSourceOhm: '0.875' },
});
