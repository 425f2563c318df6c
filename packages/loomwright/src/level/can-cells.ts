import { type CalibrationCell, clamped } from '../number/cells.js';
import { heldCells } from '../number/held-cells.js';
import { fewestPoints, leastError } from '../number/least-error.js';

/** A table as held, by how much it misses the curve, and by how much it would unrounded. */
export interface CellTable {
  readonly cells: readonly CalibrationCell[];
  readonly worst: number;
  readonly worstIn: number;
  readonly unrounded: number;
}

interface Wanted {
  readonly cellCount: number | null;
  readonly wantedErrorL: number | null;
  readonly readingStepValue: number | null;
  readonly shownStepL: number | null;
}

/**
 * The table of least worst error for so many cells; or, with an error wanted, the one of fewest cells that keeps it,
 * the least error of all with so many. `fewest` is how many cells the error needs before rounding.
 */
export function cellsFor(
  points: readonly CalibrationCell[],
  { cellCount, wantedErrorL, readingStepValue, shownStepL }: Wanted,
): { readonly table: CellTable; readonly fewest: number | null } {
  const x = points.map(({ inValue }) => inValue);
  const y = points.map(({ outValue }) => outValue);
  const most = Math.max(...y);
  const held = (count: number): CellTable => {
    const { kept, worst: unrounded } = leastError(x, y, count);
    const cells = heldCells(points, kept, readingStepValue, shownStepL).map(({ inValue, outValue }) => ({
      // The ends are rounded outwards along the curve drawn on: below nothing and above all there is no fuel.
      inValue,
      outValue: Math.min(Math.max(0, outValue), shownStepL === null ? most : Math.ceil(most / shownStepL) * shownStepL),
    }));
    let [worst, worstIn] = [0, x[0] as number];
    if (cells.length < 2) return { cells, worst: most, worstIn, unrounded };
    points.forEach(({ inValue, outValue }) => {
      const off = Math.abs(clamped(cells, inValue) - outValue);
      if (off > worst) [worst, worstIn] = [off, inValue];
    });
    return { cells, worst, worstIn, unrounded };
  };
  if (wantedErrorL === null) return { table: held(cellCount as number), fewest: null };
  const fewest = (fewestPoints(x, y, wantedErrorL, points.length) as readonly number[]).length;
  const limit = Math.min(cellCount ?? Infinity, points.length);
  if (fewest > limit) return { table: held(limit), fewest };
  // Rounding may take more than what was left: a few cells more may give it back.
  let best = held(fewest);
  for (let count = fewest + 1; count <= Math.min(limit, fewest + 8) && best.worst > wantedErrorL; count++) {
    const next = held(count);
    if (next.worst < best.worst) best = next;
  }
  return { table: best, fewest };
}
