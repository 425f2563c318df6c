import { L_PER_US_GALLON, tankVolume } from 'loomwright';
import { exampleValues, tankVolumeCard } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem:
    'A lying tank is 40 in across and 100 in long, with 2:1 elliptical ends. It is filled to 16 in. How many US gallons are in it, and how full is it?',
  source: 'tank-fill-table',
  place: 'worked example',
  status: 'published',
  // The source counts in gallons and per cent.
  card: {
    ...tankVolumeCard,
    run: (input) => {
      const result = tankVolume(input);
      return { ...result, gallons: result.volumeL / L_PER_US_GALLON, fillPercent: result.fillFraction * 100 };
    },
  },
  values: exampleValues(tankVolumeCard),
  prints: { gallons: '228.7', fillPercent: '37.1' },
});
