import type { NotPossible } from '../check/index.js';
import { InputError } from '../error/index.js';
import { needEarthly, needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needBetween, needFunction, needInput, needInteger, needObject } from '../error/guard.js';
import { type CalibrationCell, clamped, needCells } from '../number/cells.js';
import { heldCells } from '../number/held-cells.js';
import { fewestPoints, leastError } from '../number/least-error.js';
import { short } from '../number/short.js';

/** A curve as a function, and where and how finely to take points of it. */
export interface CalibrationCurve {
  /** The function: what must be shown for what comes in. */
  readonly valueAt: (inValue: number) => number;
  readonly lowInValue: number;
  /** Above `lowInValue`. */
  readonly highInValue: number;
  /** Points taken, evenly spaced: 2 to 5000. */
  readonly sampleCount: number;
}

export interface CalibrationTableInput {
  /** Measured points, rising in what comes in: 2 to 5000. Either these or `curve`. */
  readonly points?: readonly CalibrationCell[];
  readonly curve?: CalibrationCurve;
  /** Cells that the controller has, 2 or more. */
  readonly cellCount: number;
  /** Step in which the controller holds what comes in, above 0; null where it holds any number. */
  readonly inStepValue: number | null;
  /** Step in which it holds what is shown, above 0; null likewise. */
  readonly outStepValue: number | null;
  /** Worst error that is allowed, at least 0; none unless given. */
  readonly wantedErrorValue?: number;
}

/** One point against the table. */
export interface CalibrationResidual extends CalibrationCell {
  /** What the table shows for it, and by how much that is too high. */
  readonly shownValue: number;
  readonly errorValue: number;
}

export interface CalibrationTable {
  readonly possible: true;
  /** The table as the controller holds it, rising in what comes in. Fewer than asked for where more gain nothing. */
  readonly cells: readonly CalibrationCell[];
  /** Worst error of the table as held, over all points, and where it is. */
  readonly worstErrorValue: number;
  readonly worstInValue: number;
  /** Worst error before cells were rounded: the least that any choice of so many of the points has. */
  readonly leastErrorValue: number;
  /** What rounding costs: the first less the second. Below 0 by luck. */
  readonly roundingLossValue: number;
  /** Worst error found between the points taken of a function, eight places a gap; null for measured points. */
  readonly betweenErrorValue: number | null;
  readonly residuals: readonly CalibrationResidual[];
}

export type CalibrationTableResult = CalibrationTable | NotPossible<CalibrationTable>;

const MOST_POINTS = 5000;

/**
 * The table of so many cells that shows a curve with the least worst error.
 *
 * Cells are points of the curve, and between them the controller draws straight lines. No other choice of so many
 * points, first and last among them, has a smaller worst error: that is proven, not found by trying. Cells that lie
 * beside the curve could do better, by half at the most; they would show something else than what was measured. Evenly
 * spaced cells are often several times worse.
 *
 * $$\min_{0 = i_1 < \dots < i_K = n}\ \max_k \left| y_k - \ell(x_k) \right|$$
 *
 * with $\ell$ the straight lines through the points $i_1 \dots i_K$. Cells are then rounded to what the controller
 * holds: the ends outwards, the others to the nearest step, each with the value that the points have there.
 *
 * @param input points or a function, number of cells, steps that the controller holds, error allowed
 * @returns cells, worst error as held and before rounding, error of each point; or not possible, because, with the
 * nearest table
 * @throws InputError when a field is missing or out of range, points do not rise, or the function gives no number
 * @source imai-iri-1988 (lines within a tolerance as a shortest path); bisection on the error to 1e−12 of its span
 * @example calibrationTable({ points: [{ inValue: 0, outValue: 0 }, { inValue: 1, outValue: 1 }, { inValue: 2, outValue: 4 }, { inValue: 3, outValue: 9 }, { inValue: 4, outValue: 16 }], cellCount: 3, inStepValue: null, outStepValue: null }).worstErrorValue //=> 1
 */
export function calibrationTable(input: CalibrationTableInput): CalibrationTableResult {
  const fn = 'calibrationTable';
  needInput(fn, input);
  const { cellCount, inStepValue, outStepValue, wantedErrorValue } = input;
  needInteger(fn, 'cellCount', cellCount, 2);
  needBetween(fn, 'cellCount', cellCount, 2, MOST_POINTS);
  if (inStepValue !== null) needMoreThan(fn, 'inStepValue', inStepValue);
  if (outStepValue !== null) needMoreThan(fn, 'outStepValue', outStepValue);
  if (wantedErrorValue !== undefined) needNoLessThan(fn, 'wantedErrorValue', wantedErrorValue);
  const points = pointsOf(fn, input);
  const x = points.map(({ inValue }) => inValue);
  const y = points.map(({ outValue }) => outValue);

  const { kept, worst } = leastError(x, y, cellCount);
  const cells = heldCells(points, kept, inStepValue, outStepValue);
  if (cells.length < 2) {
    const because = `a step of ${inStepValue} leaves one cell: the whole curve lies within it`;
    return { possible: false, code: 'step-too-coarse', because, nearest: null };
  }
  const residuals = points.map(({ inValue, outValue }): CalibrationResidual => {
    const shownValue = clamped(cells, inValue);
    return { inValue, outValue, shownValue, errorValue: shownValue - outValue };
  });
  let at = residuals[0] as CalibrationResidual;
  for (const one of residuals) if (Math.abs(one.errorValue) > Math.abs(at.errorValue)) at = one;
  const exact = inStepValue === null && outStepValue === null;
  const worstErrorValue = exact ? worst : Math.abs(at.errorValue);
  const table: CalibrationTable = {
    possible: true,
    cells,
    worstErrorValue,
    worstInValue: at.inValue,
    leastErrorValue: worst,
    roundingLossValue: worstErrorValue - worst,
    betweenErrorValue: input.curve === undefined ? null : betweenSamples(fn, input.curve, points, cells),
    residuals,
  };
  if (wantedErrorValue === undefined || worstErrorValue <= wantedErrorValue) return table;
  const enough = fewestPoints(x, y, wantedErrorValue, points.length) as readonly number[];
  const because =
    worst <= wantedErrorValue
      ? `${cellCount} cells would do, but what the controller rounds takes ${short(worstErrorValue - worst)}`
      : `${cellCount} cells leave ${short(worstErrorValue)}; ${enough.length} would do${exact ? '' : ' before rounding'}`;
  return { possible: false, code: worst <= wantedErrorValue ? 'rounding' : 'too-few-cells', because, nearest: table };
}

function pointsOf(fn: string, { points, curve }: CalibrationTableInput): readonly CalibrationCell[] {
  if ((points === undefined) === (curve === undefined)) {
    throw new InputError(fn, 'points', 'oneOfFields', points, 'or curve must be given, one only');
  }
  if (points !== undefined) {
    needCells(fn, 'points', points);
    needBetween(fn, 'points.length', points.length, 2, MOST_POINTS);
    return points;
  }
  needObject(fn, 'curve', curve);
  const { valueAt, lowInValue, highInValue, sampleCount } = curve as CalibrationCurve;
  needFunction(fn, 'curve.valueAt', valueAt, 'what shows a value for what comes in');
  needEarthly(fn, 'curve.lowInValue', lowInValue);
  needEarthly(fn, 'curve.highInValue', highInValue);
  if (!(highInValue > lowInValue)) {
    throw new InputError(fn, 'curve.highInValue', 'above', highInValue, `must be above ${lowInValue}`);
  }
  needInteger(fn, 'curve.sampleCount', sampleCount, 2);
  needBetween(fn, 'curve.sampleCount', sampleCount, 2, MOST_POINTS);
  const taken = Array.from({ length: sampleCount }, (_, i): CalibrationCell => {
    const share = i / (sampleCount - 1);
    const inValue = i === sampleCount - 1 ? highInValue : lowInValue + (highInValue - lowInValue) * share;
    return { inValue, outValue: valueOf(fn, valueAt, inValue) };
  });
  needCells(fn, 'curve', taken);
  return taken;
}

function valueOf(fn: string, valueAt: (inValue: number) => number, inValue: number): number {
  const value = valueAt(inValue);
  if (typeof value !== 'number' || !(Math.abs(value) <= 1e12)) {
    throw new InputError(fn, 'curve.valueAt', 'finite', value, `must give a number at ${inValue}`);
  }
  return value;
}

function betweenSamples(
  fn: string,
  { valueAt }: CalibrationCurve,
  points: readonly CalibrationCell[],
  cells: readonly CalibrationCell[],
): number {
  let worst = 0;
  for (let i = 1; i < points.length; i++) {
    const from = (points[i - 1] as CalibrationCell).inValue;
    const step = (points[i] as CalibrationCell).inValue - from;
    for (let k = 1; k < 9; k++) {
      const inValue = from + (step * k) / 9;
      worst = Math.max(worst, Math.abs(clamped(cells, inValue) - valueOf(fn, valueAt, inValue)));
    }
  }
  return worst;
}
