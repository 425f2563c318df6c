import { InputError } from '../error/index.js';
import { needEarthly } from '../error/bounded.js';
import { needInput, needOneOf } from '../error/guard.js';
import { between, type CalibrationCell, needCells, pieceOf } from '../number/cells.js';

export interface LookUpInput {
  /** The table, rising in what comes in: at least two cells. */
  readonly cells: readonly CalibrationCell[];
  /** What the input reads. */
  readonly inValue: number;
  /**
   * Outside the table: `clamp` shows the end cell, as most controllers do and as hides a broken wire; `throw` refuses;
   * `fault` gives no number and says on which side it lies.
   */
  readonly outside: 'clamp' | 'throw' | 'fault';
}

export interface LookUpResult {
  /** What is shown, or null for a fault. */
  readonly outValue: number | null;
  /** Where the reading lies. Both end cells belong to the table. */
  readonly side: 'inside' | 'below' | 'above';
  /** Why there is no number: the reading lies below or above the table. Null where there is one. */
  readonly fault: 'below-table' | 'above-table' | null;
  /** Number of the cell at or before the reading, from 0; the nearest end outside the table. */
  readonly cellIndex: number;
  /** What is shown more for one more that comes in; 0 where an end is held, null for a fault. */
  readonly slope: number | null;
}

/**
 * What a table shows for a reading: straight lines between cells, exact at each cell.
 *
 * Outside the table there is no right answer, so the choice is the caller's. A clamped temperature is believable and
 * false: where a wire can break, use `fault`, with limits from `faultBands`.
 *
 * $$y = y_i + (y_{i+1} - y_i)\,\frac{x - x_i}{x_{i+1} - x_i}$$
 *
 * @param input table, reading, what to do outside
 * @returns value, side, fault, cell, slope; null with `fault` outside where that was asked for
 * @throws InputError when a field is missing, cells do not rise, or the reading lies outside and `throw` was chosen
 * @source lessons-electric-circuits (a signal's share of its range as the share of the quantity's)
 * @example lookUp({ cells: [{ inValue: 1, outValue: 0 }, { inValue: 5, outValue: 100 }], inValue: 2.4, outside: 'fault' }).outValue //=> 35
 */
export function lookUp(input: LookUpInput): LookUpResult {
  const fn = 'lookUp';
  needInput(fn, input);
  const { cells, inValue, outside } = input;
  needCells(fn, 'cells', cells);
  needEarthly(fn, 'inValue', inValue);
  needOneOf(fn, 'outside', outside, ['clamp', 'throw', 'fault']);
  const last = cells.length - 1;
  const first = cells[0] as CalibrationCell;
  const end = cells[last] as CalibrationCell;
  const side = inValue < first.inValue ? 'below' : inValue > end.inValue ? 'above' : 'inside';
  if (side === 'inside') {
    const piece = pieceOf(cells, inValue);
    const from = cells[piece] as CalibrationCell;
    const to = cells[piece + 1] as CalibrationCell;
    const slope = (to.outValue - from.outValue) / (to.inValue - from.inValue);
    const cellIndex = inValue === end.inValue ? last : piece;
    return { outValue: between(from, to, inValue), side, fault: null, cellIndex, slope };
  }
  if (outside === 'throw') {
    throw new InputError(fn, 'inValue', 'range', inValue, `must lie from ${first.inValue} to ${end.inValue}`);
  }
  const cellIndex = side === 'below' ? 0 : last;
  if (outside === 'clamp') {
    return { outValue: side === 'below' ? first.outValue : end.outValue, side, fault: null, cellIndex, slope: 0 };
  }
  return { outValue: null, side, fault: `${side}-table`, cellIndex, slope: null };
}
