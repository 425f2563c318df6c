import type { CalibrationCell, CalibrationTable } from 'loomwright';
import type { ChartSpec } from '@loomwright/worked/plot';

const pair = ({ inValue, outValue }: CalibrationCell): [number, number] => [inValue, outValue];

/** Measured points with the table's straight lines through its cells. */
export function pointsAndCells(table: CalibrationTable): ChartSpec {
  return {
    title: 'What was measured, and the table',
    x: { label: 'The input reads', unit: '' },
    y: { label: 'Shown', unit: '' },
    series: [
      { name: 'table', points: table.cells.map(pair), colour: 'copper', as: 'both', labelAt: 1, labelSide: 'above' },
      { name: '', points: table.residuals.map(pair), colour: 'text', as: 'dots' },
    ],
  };
}

/** By how much the table is off at each point: a bar each. */
export function residualBars(table: CalibrationTable): ChartSpec {
  const most = table.worstErrorValue * 1.15 || 1;
  return {
    title: 'Shown less measured',
    x: { label: 'The input reads', unit: '' },
    y: { label: 'Off by', unit: '', domain: [-most, most] },
    series: table.residuals.map(({ inValue, errorValue }) => ({
      name: '',
      points: [
        [inValue, 0],
        [inValue, errorValue],
      ],
      colour: Math.abs(errorValue) >= table.worstErrorValue * (1 - 1e-9) ? ('copper' as const) : ('text' as const),
      as: 'line' as const,
      dash: '',
    })),
  };
}

/** The cells as text for a spreadsheet or a controller's import. */
export function cellsAsCsv(cells: readonly CalibrationCell[]): string {
  return ['in,out', ...cells.map(({ inValue, outValue }) => `${inValue},${outValue}`)].join('\n');
}
