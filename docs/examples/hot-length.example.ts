import { feetToM } from 'loomwright';
import { hotConductorLengthCard } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem:
    'A chart for cold wire allows 15.5 ft of No. 14 at 20 A. In air of 50 °C the wire, rated 200 °C, would reach its rating at 26 A. How hot is it taken to be?',
  source: 'ac-43-13-1b',
  place: 'wire-size example 2, page 11-27; the circular rounds to 182 °C',
  status: 'memory',
  card: hotConductorLengthCard,
  values: { coldLengthM: feetToM(15.5), currentA: 20, maxCurrentA: 26, ambientTempC: 50, ratedTempC: 200 },
  prints: { conductorTempC: '182' },
});
