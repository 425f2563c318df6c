import { dualTrackCard, exampleValues } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem:
    'A service manual calls a pedal wrong when the second track, pressed, lies outside 2.31 to 2.69 V at 5 V of the first. That is a band of 0.19 V around half of the first: tracks of 0 to 5 V and 0 to 2.5 V, outputs with nothing that draws on them.',
  source: 'pedal-service-texts',
  place: '2009: V2 outside 2.31 to 2.69 V at V1 5 V',
  status: 'published',
  card: dualTrackCard,
  values: {
    ...exampleValues(dualTrackCard),
    kind: 'active-floats',
    firstReleasedV: 0,
    firstPressedV: 5,
    firstPullDownOhm: null,
    firstLowLimitV: 0,
    firstHighLimitV: 5,
    secondReleasedV: 0,
    secondPressedV: 2.5,
    secondPullDownOhm: null,
    secondLowLimitV: 0,
    secondHighLimitV: 2.75,
    bandV: 0.19,
  },
  prints: { pressedLowestV: '2.31', pressedHighestV: '2.69', fitRatio: '0.50' },
});
