import { calibrationTable, type CalibrationTableInput } from 'loomwright';
import { defineCard } from '../type.js';
import { curveKind, curveOfSensorFields, curveOrPoints } from './table-curve.js';

export const calibrationTableCard = defineCard({
  name: 'calibrationTable',
  area: 'calibration',
  question: 'Which cells show this sensor with the least error?',
  page: 'table-builder',
  fields: [
    curveKind,
    {
      kind: 'text',
      name: 'points',
      label: 'Measured points',
      example:
        '0.217 120; 0.273 110; 0.349 100; 0.445 90; 0.574 80; 0.745 70; 0.966 60; 1.255 50; 1.603 40; 2.034 30; 2.505 20; 3.018 10; 3.515 0; 3.953 -10; 4.306 -20',
      help: 'What the input reads and what is to be shown, in rising order of the first; parted by semicolons.',
    },
    { kind: 'number', name: 'cellCount', min: 2, max: 5000, example: 6 },
    {
      kind: 'number',
      name: 'inStepValue',
      above: 0,
      example: 0.01,
      optional: true,
      help: 'The controller holds what comes in to this step. Empty where it holds any number.',
    },
    { kind: 'number', name: 'outStepValue', above: 0, example: 1, optional: true },
    { kind: 'number', name: 'wantedErrorValue', min: 0, example: null, optional: true },
    ...curveOfSensorFields,
  ],
  results: [
    { name: 'worstErrorValue', round: 'up', digits: 3, primary: true },
    { name: 'worstInValue', round: 'nearest', digits: 4 },
    { name: 'leastErrorValue', round: 'up', digits: 3 },
    { name: 'roundingLossValue', round: 'up', digits: 3 },
    { name: 'betweenErrorValue', round: 'up', digits: 3 },
    { name: 'heldCount', round: 'nearest', digits: 4, trim: true },
  ],
  steps: [
    {
      result: 'leastErrorValue',
      text: 'Least worst error of so many points',
      how: 'the error is bisected; for each, a sweep from every point finds the lines that miss none by more, and the fewest lines from end to end are counted',
      source: 'imai-iri-1988',
    },
    {
      result: 'worstErrorValue',
      text: 'The same with the cells as the controller holds them',
      how: 'each cell rounded, the ends outwards; then every point compared with the table',
      source: 'imai-iri-1988',
    },
    {
      result: 'roundingLossValue',
      text: 'What rounding costs',
      formula: 'worstErrorValue - leastErrorValue',
      source: 'imai-iri-1988',
    },
  ],
  sources: ['imai-iri-1988'],
  cautions: ['local-code'],
  run: calibrationTable,
  input: (uses): CalibrationTableInput => ({
    ...curveOrPoints(uses),
    cellCount: uses['cellCount'] as number,
    inStepValue: (uses['inStepValue'] as number | undefined) ?? null,
    outStepValue: (uses['outStepValue'] as number | undefined) ?? null,
    ...(uses['wantedErrorValue'] === undefined ? {} : { wantedErrorValue: uses['wantedErrorValue'] as number }),
  }),
  scope: (_, output) => ({ heldCount: output.possible ? output.cells.length : null }),
});
