import { InputError } from '../error/index.js';
import { leastSquares } from '../number/index.js';
import { ZERO_C_IN_K } from '../unit/index.js';

/** A point of a fit with what the fitted curve says there. */
export interface FittedPoint {
  readonly tempC: number;
  readonly resistanceOhm: number;
  /** Temperature in °C that the curve gives for the point's resistance. */
  readonly fittedTempC: number;
  /** The curve's temperature less the point's, in K. */
  readonly residualK: number;
}

/** A point whose units have been settled. */
export interface Reading {
  readonly tempC: number;
  readonly resistanceOhm: number;
  readonly uncertaintyK: number | undefined;
}

/** Coefficients with what a fit knows of them. */
export interface Letters {
  readonly letters: { readonly a: number; readonly b: number; readonly c: number };
  readonly standardDeviationK: number | null;
  readonly leverages: readonly number[] | null;
  /** Residuals of the straight fit in kelvins, T² times those of 1/T: to these, not to kelvins, leverages belong. */
  readonly straightK: readonly number[];
  readonly weights: readonly number[];
  readonly covariance: readonly (readonly number[])[] | null;
}

/** Exactly through three points. */
export function throughThree(fn: string, points: readonly Reading[]): Letters {
  const [l1, l2, l3] = points.map(({ resistanceOhm }) => Math.log(resistanceOhm)) as [number, number, number];
  const [y1, y2, y3] = points.map(({ tempC }) => 1 / (tempC + ZERO_C_IN_K)) as [number, number, number];
  const g2 = (y2 - y1) / (l2 - l1);
  const g3 = (y3 - y1) / (l3 - l1);
  const c = (g3 - g2) / ((l3 - l2) * (l1 + l2 + l3));
  const b = g2 - c * (l1 * l1 + l1 * l2 + l2 * l2);
  const a = y1 - (b + c * l1 * l1) * l1;
  if (!Number.isFinite(a + b + c)) {
    throw new InputError(fn, 'points', 'order', points, 'must have three different resistances');
  }
  const uncertain = points.every(({ uncertaintyK }) => uncertaintyK !== undefined);
  return {
    letters: { a, b, c },
    standardDeviationK: null,
    leverages: null,
    straightK: [0, 0, 0],
    weights: [1, 1, 1],
    covariance: uncertain ? solve(fn, points).inverseNormal : null,
  };
}

/** By least squares through four points or more. */
export function throughMany(fn: string, points: readonly Reading[]): Letters {
  const fit = solve(fn, points);
  const [a, b, c] = fit.coefficients as [number, number, number];
  const uncertain = points.every(({ uncertaintyK }) => uncertaintyK !== undefined);
  const s = fit.standardDeviation as number;
  const weights = points.map(({ uncertaintyK }) => 1 / (uncertaintyK ?? 1));
  // With uncertainties given, the scatter is in units of them: it is brought back to kelvins by their mean square.
  const meanWeight = Math.sqrt(weights.reduce((sum, w) => sum + w * w, 0) / weights.length);
  return {
    letters: { a, b, c },
    standardDeviationK: s / meanWeight,
    leverages: fit.leverages,
    straightK: points.map(({ tempC }, i) => (tempC + ZERO_C_IN_K) ** 2 * (fit.residuals[i] as number)),
    weights,
    covariance: uncertain ? fit.inverseNormal : fit.inverseNormal.map((row) => row.map((x) => x * s * s)),
  };
}

/** Least squares in kelvins: a small step of Y is a step of −T² as many kelvins. */
function solve(fn: string, points: readonly Reading[]): ReturnType<typeof leastSquares> {
  return leastSquares({
    fn,
    rows: points.map(({ resistanceOhm }) => {
      const l = Math.log(resistanceOhm);
      return [1, l, l * l * l];
    }),
    values: points.map(({ tempC }) => 1 / (tempC + ZERO_C_IN_K)),
    weights: points.map(({ tempC, uncertaintyK }) => (tempC + ZERO_C_IN_K) ** 2 / (uncertaintyK ?? 1)),
  });
}

/** What the letters give at each point, or null where they do not fall with temperature at all of them. */
export function fittedPoints({ letters: { a, b, c } }: Letters, points: readonly Reading[]): FittedPoint[] | null {
  const fitted: FittedPoint[] = [];
  for (const { tempC, resistanceOhm } of points) {
    const l = Math.log(resistanceOhm);
    const y = a + l * (b + c * l * l);
    if (!(y > 0 && b + 3 * c * l * l > 0)) return null;
    const fittedTempC = 1 / y - ZERO_C_IN_K;
    const off = fittedTempC - tempC;
    // A curve that goes exactly through a point is a rounding away from it.
    fitted.push({ tempC, resistanceOhm, fittedTempC, residualK: Math.abs(off) < 1e-9 ? 0 : off });
  }
  return fitted;
}

/** The point without which the others lie best on a curve that falls: where a digit slipped. */
export function slippedPoint(fn: string, points: readonly Reading[]): Reading | null {
  if (points.length < 5) return null;
  let best: Reading | null = null;
  let least = Infinity;
  points.forEach((point, i) => {
    const others = points.filter((_, j) => j !== i);
    const fitted = fittedPoints(throughMany(fn, others), others);
    const sum = fitted === null ? Infinity : fitted.reduce((total, { residualK }) => total + residualK * residualK, 0);
    if (sum < least) {
      least = sum;
      best = point;
    }
  });
  return best;
}
