import { InputError } from '../error/index.js';
import { needEarthly } from '../error/bounded.js';
import { needList, needObject } from '../error/guard.js';

/** One cell of a calibration table: what comes in, and what is shown for it. */
export interface CalibrationCell {
  /** What the input reads, in its own unit: volts, ohms, counts. */
  readonly inValue: number;
  /** What is shown for it, in the reader's unit. */
  readonly outValue: number;
}

/** Cells in order: at least two, each at least 1e−12 above the one before. */
export function needCells(fn: string, field: string, cells: readonly CalibrationCell[]): void {
  needList(fn, field, cells, 2);
  let before = -Infinity;
  for (let i = 0; i < cells.length; i++) {
    const cell = cells[i] as CalibrationCell;
    if (typeof cell !== 'object' || cell === null) needObject(fn, `${field}[${i}]`, cell);
    // A name for the error is put together only where there is one: tables may have thousands of points.
    if (!(Math.abs(cell.inValue) <= 1e12 && Math.abs(cell.outValue) <= 1e12) || typeof cell.inValue !== 'number') {
      needEarthly(fn, `${field}[${i}].inValue`, cell.inValue);
      needEarthly(fn, `${field}[${i}].outValue`, cell.outValue);
    }
    if (typeof cell.outValue !== 'number') needEarthly(fn, `${field}[${i}].outValue`, cell.outValue);
    if (!(cell.inValue - before >= 1e-12)) {
      throw new InputError(
        fn,
        `${field}[${i}].inValue`,
        'order',
        cell.inValue,
        'must lie above the one before, by 1e-12 at least',
      );
    }
    before = cell.inValue;
  }
}

/** The piece that a value lies in, by the number of its first cell: the first piece below the table, the last above. */
export function pieceOf(cells: readonly CalibrationCell[], inValue: number): number {
  let low = 0;
  let high = cells.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (inValue < (cells[middle] as CalibrationCell).inValue) high = middle;
    else low = middle;
  }
  return low;
}

/** The straight line through two cells, exact at both. */
export function between(from: CalibrationCell, to: CalibrationCell, inValue: number): number {
  if (inValue === to.inValue) return to.outValue;
  const share = (inValue - from.inValue) / (to.inValue - from.inValue);
  return from.outValue + (to.outValue - from.outValue) * share;
}

/** What a table shows: its end cells' values outside. */
export function clamped(cells: readonly CalibrationCell[], inValue: number): number {
  const first = cells[0] as CalibrationCell;
  const last = cells[cells.length - 1] as CalibrationCell;
  if (inValue <= first.inValue) return first.outValue;
  if (inValue >= last.inValue) return last.outValue;
  const piece = pieceOf(cells, inValue);
  return between(cells[piece] as CalibrationCell, cells[piece + 1] as CalibrationCell, inValue);
}
