import { lookUp, type LookUpInput } from 'loomwright';
import { defineCard, type Values } from '../type.js';
import { cellList } from './cell-list.js';

/** Whether the reading lies inside the table: only there is a line to be shown. */
function isInside(values: Values): boolean {
  const cells = cellList('lookUp', 'cells', String(values['cells']));
  const x = Number(values['inValue']);
  return x >= (cells[0]?.inValue ?? Infinity) && x < (cells[cells.length - 1]?.inValue ?? -Infinity);
}

export const lookUpCard = defineCard({
  name: 'lookUp',
  area: 'calibration',
  question: 'What does this table show for a reading?',
  page: 'table-builder',
  fields: [
    {
      kind: 'text',
      name: 'cells',
      label: 'Cells',
      example: '0.5 0; 2.5 50; 4.5 100',
      help: 'What comes in and what is shown, in rising order of the first; parted by semicolons.',
    },
    { kind: 'number', name: 'inValue', example: 1.5 },
    {
      kind: 'choice',
      name: 'outside',
      label: 'Outside the table',
      choices: [
        { value: 'fault', label: 'no number: a fault' },
        { value: 'clamp', label: 'the end cell is held' },
        { value: 'throw', label: 'refuse' },
      ],
      example: 'fault',
    },
  ],
  results: [
    { name: 'outValue', round: 'nearest', digits: 5, trim: true, primary: true },
    { name: 'side', label: 'The reading lies', round: 'nearest' },
    { name: 'fault', label: 'Fault', round: 'nearest' },
    { name: 'slope', label: 'Shown more for one more', round: 'nearest', digits: 4, trim: true },
  ],
  steps: [
    {
      result: 'outValue',
      text: 'On the straight line between the two cells around it',
      formula: 'fromOutValue + slope * (inValue - fromInValue)',
      source: 'lessons-electric-circuits',
      when: isInside,
    },
  ],
  sources: ['lessons-electric-circuits'],
  cautions: ['local-code'],
  run: lookUp,
  input: (uses): LookUpInput => ({
    ...(uses as unknown as LookUpInput),
    cells: cellList('lookUp', 'cells', uses['cells'] as string),
  }),
  scope: (values, { cellIndex }) => {
    const from = cellList('lookUp', 'cells', String(values['cells']))[cellIndex];
    return { fromInValue: from?.inValue ?? null, fromOutValue: from?.outValue ?? null };
  },
});
