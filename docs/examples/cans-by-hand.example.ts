import { calibrateLevelCard, exampleValues } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem:
    'A sender reads 90 Ω in the empty tank, 60 Ω after 20 L and 10 Ω after 40 L, put in with one can that is good to 1 %. The gauge has two cells. A straight line from 90 to 10 Ω has 15 L at 60 Ω.',
  source: 'imai-iri-1988',
  place: 'worked by hand',
  status: 'derived',
  card: calibrateLevelCard,
  values: {
    ...exampleValues(calibrateLevelCard),
    cans: '0 90; 20 60; 40 10',
    readingUnit: 'Ω',
    noiseValue: 0.5,
    noughtAtL: 0,
    unusableL: 0,
    between: 'straight',
    mostGapL: 20,
    cellCount: 2,
    readingStepValue: null,
    shownStepL: null,
  },
  prints: { worstErrorL: '5.0', roundingLossL: '0', fullCanL: '0.2309' },
});
