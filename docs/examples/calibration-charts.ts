import type { CalibrationCell, CalibrationTable } from 'loomwright';
import type { ChartSpec } from '@loomwright/worked/plot';

/** From so many on, points run together: then a line tells more than dots. */
const MANY = 60;

const pair = ({ inValue, outValue }: CalibrationCell): [number, number] => [inValue, outValue];

/** Measured points with the table's straight lines through its cells. */
export function pointsAndCells(table: CalibrationTable): ChartSpec {
  return {
    title: table.residuals.length < MANY ? 'What was measured, and the table' : 'The curve, and the table',
    x: { label: 'The input reads', unit: '' },
    y: { label: 'Shown', unit: '' },
    series: [
      { name: 'table', points: table.cells.map(pair), colour: 'copper', as: 'both', labelAt: 1, labelSide: 'above' },
      {
        name: '',
        points: table.residuals.map(pair),
        colour: 'text',
        as: table.residuals.length < MANY ? 'dots' : 'line',
        dash: '',
      },
    ],
  };
}

/** By how much the table is off at each point: a bar each, and a line where they are many. */
export function residualBars(table: CalibrationTable): ChartSpec {
  const most = table.worstErrorValue * 1.15 || 1;
  const few = table.residuals.length < MANY;
  return {
    title: few ? 'Shown less measured' : 'Shown less true',
    x: { label: 'The input reads', unit: '' },
    y: { label: 'Off by', unit: '', domain: [-most, most] },
    series: [
      {
        name: 'off by',
        points: table.residuals.map(({ inValue, errorValue }): [number, number] => [inValue, errorValue]),
        colour: 'copper',
        as: few ? 'dots' : 'line',
        labelAt: 0,
        ...(few ? {} : { labelled: false as const }),
      },
      {
        // One line along nought, out to each point and back: a bar each, and one column in the table.
        name: 'nought',
        labelled: false,
        points: table.residuals.flatMap(({ inValue, errorValue }): [number, number][] => [
          [inValue, 0],
          [inValue, few ? errorValue : 0],
          [inValue, 0],
        ]),
        colour: 'text',
        as: 'line',
        dash: '',
      },
    ],
  };
}

/** The cells as text for a spreadsheet or a controller's import. */
export function cellsAsCsv(cells: readonly CalibrationCell[]): string {
  return ['in,out', ...cells.map(({ inValue, outValue }) => `${inValue},${outValue}`)].join('\n');
}
