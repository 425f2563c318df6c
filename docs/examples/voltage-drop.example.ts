import { awgStranded, feetToM, wireResistance } from 'loomwright';
import { voltageDropCard } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

const { resistanceOhmPerM } = wireResistance({
  awg: '6',
  resistanceBasis: awgStranded,
  lengthM: 1,
  conductorTempC: 20,
});

export default defineExample({
  problem:
    'A run of 107 ft in all, of No. 6 tinned copper at 0.00044 Ω a foot, carries 20 A. How many volts does it lose?',
  source: 'ac-43-13-1b',
  place: 'table 11-7, row of 1 V, page 11-22',
  status: 'published',
  card: voltageDropCard,
  values: {
    supplyV: 28,
    currentA: 20,
    outLengthM: feetToM(107),
    returnLengthM: 0,
    resistanceOhmPerM,
    ratedTempC: 20,
    conductorTempC: 20,
  },
  prints: { dropV: '0.942' },
});
