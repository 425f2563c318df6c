import { exampleValues, thermocoupleVoltageCard } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem: 'A type K junction at 900 °C, its ends at 25 °C: what do printed tables give for either?',
  source: 'nist-monograph-175',
  place: 'table of type K',
  status: 'published',
  card: thermocoupleVoltageCard,
  values: { ...exampleValues(thermocoupleVoltageCard), hotTempC: 900, coldTempC: 25 },
  prints: { hotMv: '37.326', coldMv: '1.000' },
});
