import { exampleValues, switchingBandCard } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem:
    'A sensor gives volts of its own, 40 °C to the volt, 100 °C at 2.5 V, into a converter of ten bits on 5 V. The noise is 5 mV to either side. The fan moves the sensor’s ground by −50 mV. How far apart must the thresholds be, and on which counts do they stand?',
  source: 'circuit-theory',
  place: '50 mV + 2 × 5 mV + 5 V ÷ 1024, worked by hand',
  status: 'derived',
  card: switchingBandCard,
  values: {
    ...exampleValues(switchingBandCard),
    sensor: 'absolute',
    cells: '0.5 20; 4.5 180',
    supplyV: 5,
    referenceV: 5,
    converterBits: '10',
    noiseV: 0.005,
    delayS: 0,
    marginFraction: 0,
    onValue: 100,
    groundShiftV: -0.05,
    withoutValue: null,
    withValue: null,
    timeConstantS: null,
    fastOnValue: null,
    leastOnTimeS: null,
  },
  prints: { leastBandV: '0.064883', leastBandValue: '2.5953', onCount: '512', offCount: '498' },
});
