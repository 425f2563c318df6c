import { exampleValues, warningLimitsCard } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem:
    'A healthy engine has 4 bar or more at any speed, harm begins at 1 bar. The sensor is good to 0.2 bar. A fault loses 1 bar a second, the filter takes 0.1 s, and the alarm waits for another 0.3 s. What room does the best limit leave?',
  source: 'circuit-theory',
  place: 'between 1 + 0.2 + 0.4 and 4 − 0.2 bar, worked by hand',
  status: 'derived',
  card: warningLimitsCard,
  values: {
    ...exampleValues(warningLimitsCard),
    healthy: '0 4; 6000 4',
    limit: '0 1; 6000 1',
    places: '0 6000',
    errorValue: 0.2,
    ratePerS: 1,
    filterS: 0.1,
    debounceS: 0.3,
    outStepValue: null,
  },
  prints: { falseRoomValue: '1.10', missedRoomValue: '1.10', alarmMoveValue: '0.40', blindS: '4.40' },
});
