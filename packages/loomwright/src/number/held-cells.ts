import { between, type CalibrationCell, pieceOf } from './cells.js';

/**
 * The points kept, as a controller holds them: what comes in on its step, the ends outwards, the others to the nearest;
 * each with the value that the points have there, on its step too. Two that fall on one step become one.
 */
export function heldCells(
  points: readonly CalibrationCell[],
  kept: readonly number[],
  inStep: number | null,
  outStep: number | null,
): readonly CalibrationCell[] {
  const cells: CalibrationCell[] = [];
  kept.forEach((k, i) => {
    const point = points[k] as CalibrationCell;
    const end = i === 0 ? 'floor' : i === kept.length - 1 ? 'ceil' : 'round';
    const inValue = inStep === null ? point.inValue : onStep(point.inValue, inStep, end);
    const before = cells[cells.length - 1];
    if (before !== undefined && !(inValue > before.inValue)) return;
    const outValue = inValue === point.inValue ? point.outValue : along(points, inValue);
    cells.push({ inValue, outValue: outStep === null ? outValue : onStep(outValue, outStep, 'round') });
  });
  return cells;
}

/** The nearest multiple of a step, the next one down or the next one up; without the dust of binary fractions. */
function onStep(value: number, step: number, way: 'floor' | 'ceil' | 'round'): number {
  const steps = value / step;
  const whole = Math.round(steps);
  const near = Math.abs(steps - whole) < 1e-9 * Math.max(1, Math.abs(steps));
  return Number(((near ? whole : Math[way](steps)) * step).toPrecision(14));
}

/** The value of the points at a place between them, or on the first and the last line drawn on. */
function along(points: readonly CalibrationCell[], inValue: number): number {
  const piece = pieceOf(points, inValue);
  return between(points[piece] as CalibrationCell, points[piece + 1] as CalibrationCell, inValue);
}
