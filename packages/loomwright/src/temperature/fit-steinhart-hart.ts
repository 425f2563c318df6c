import { InputError } from '../error/index.js';
import { needAbove, needInput, needList } from '../error/guard.js';
import { leastSquares } from '../number/index.js';
import type { SteinhartHartCurve } from '../table/index.js';
import { ZERO_C_IN_K } from '../unit/index.js';
import { type CurveWarning, kelvinWarning, type ThermistorPoint, togetherWarnings } from './point.js';
import { type SuspiciousPoint, suspiciousPoint } from './suspicious-point.js';

export interface FitSteinhartHartInput {
  /** Three points or more, in any order. Give an uncertainty with all of them or with none. */
  readonly points: readonly ThermistorPoint[];
}

/** A point of a fit with what the fitted curve says there. */
export interface FittedPoint {
  readonly tempC: number;
  readonly resistanceOhm: number;
  /** Temperature in °C that the curve gives for the point's resistance. */
  readonly fittedTempC: number;
  /** The curve's temperature less the point's, in K. */
  readonly residualK: number;
}

export interface FitSteinhartHartResult {
  /** The curve, with the span of the points as its range. */
  readonly curve: SteinhartHartCurve;
  /** The points from cold to hot. */
  readonly points: readonly FittedPoint[];
  /** The largest residual without its sign, in K. */
  readonly worstResidualK: number;
  /** Scatter of one point about the curve, in K; null for three points, which a curve meets exactly. */
  readonly standardDeviationK: number | null;
  /** Points less three. */
  readonly degreesOfFreedom: number;
  /** The point that the others speak against, or null. It can be told from five points on. */
  readonly suspicious: SuspiciousPoint | null;
  /** What makes the curve doubtful; empty where nothing does. */
  readonly warnings: readonly CurveWarning[];
  /**
   * Covariance of a, b and c: from the given uncertainties, or from the scatter; null where there is neither.
   * `fitUncertainty` turns it into kelvins.
   */
  readonly covariance: readonly (readonly number[])[] | null;
}

/**
 * Steinhart–Hart coefficients from measured points: exactly through three, by least squares through more.
 *
 * Take points over the whole range that matters, well apart: ice water, hot water, boiling water. With more than
 * three the errors of the readings average out and a bad one shows. The squares are of kelvins, not of 1/T.
 *
 * $$\frac{1}{T} = a + b L + c L^3, \qquad L = \ln R$$
 *
 * Three points, with $Y = 1/T$, $g_2 = \frac{Y_2-Y_1}{L_2-L_1}$, $g_3 = \frac{Y_3-Y_1}{L_3-L_1}$:
 * $c = \frac{g_3-g_2}{(L_3-L_2)(L_1+L_2+L_3)}$, $b = g_2 - c\,(L_1^2+L_1L_2+L_2^2)$, $a = Y_1 - (b + c L_1^2)\,L_1$.
 *
 * Warns (`warnings`) of: c below 0, points too close together, kelvins made with 273.2, °C and °F or K that
 * disagree, resistance that does not fall from point to point, a point that the others speak against.
 *
 * @param input points
 * @returns curve, residuals in K, scatter, suspicious point, warnings, covariance
 * @throws InputError when there are fewer than three points, one has no temperature or no resistance above 0, the
 * resistance does not fall from the coldest to the hottest, or two of three points share a resistance
 * @source steinhart-hart-1968 (equation); the three-point solution is algebra, from memory
 * @example fitSteinhartHart({ points: [{ tempC: 0, resistanceOhm: 5900 }, { tempC: 50, resistanceOhm: 834 }, { tempC: 100, resistanceOhm: 186 }] }).curve.c //=> 1.8482e-7
 */
export function fitSteinhartHart(input: FitSteinhartHartInput): FitSteinhartHartResult {
  const fn = 'fitSteinhartHart';
  needInput(fn, input);
  needList(fn, 'points', input.points, 3);
  const warnings: CurveWarning[] = [];
  const read = input.points.map((point, i) => {
    const field = `points[${i}]`;
    if (typeof point !== 'object' || point === null) throw new InputError(fn, field, 'object', point, 'must be a point');
    needAbove(fn, `${field}.resistanceOhm`, point.resistanceOhm);
    if (point.uncertaintyK !== undefined) needAbove(fn, `${field}.uncertaintyK`, point.uncertaintyK);
    const { tempC, warning } = kelvinWarning(fn, field, point);
    if (warning !== null) warnings.push(warning);
    return { tempC, resistanceOhm: point.resistanceOhm, uncertaintyK: point.uncertaintyK };
  });
  const points = read.slice().sort((p, q) => p.tempC - q.tempC);
  const weighted = points.filter(({ uncertaintyK }) => uncertaintyK !== undefined).length;
  if (weighted !== 0 && weighted !== points.length) {
    throw new InputError(fn, 'points', 'missing', input.points, 'must all have an uncertaintyK, or none');
  }
  const first = points[0] as (typeof points)[number];
  const last = points[points.length - 1] as (typeof points)[number];
  if (!(last.resistanceOhm < first.resistanceOhm && last.tempC > first.tempC)) {
    const hint = 'this is the equation of an NTC thermistor';
    throw new InputError(fn, 'points', 'order', input.points, 'must fall in resistance from cold to hot', hint);
  }
  warnings.push(...togetherWarnings(points, input.points));

  const fit = points.length === 3 ? throughThree(fn, points) : throughMany(fn, points);
  const curve: SteinhartHartCurve = {
    kind: 'steinhart-hart',
    ...fit.letters,
    lowTempC: first.tempC,
    highTempC: last.tempC,
  };
  const { a, b, c } = curve;
  if (c < 0) {
    const message = 'c is below 0, which no thermistor has: one of the readings is off, or the points are too few';
    warnings.push({ code: 'c-negative', message });
  }
  const fitted = points.map(({ tempC, resistanceOhm }) => {
    const l = Math.log(resistanceOhm);
    const y = a + l * (b + c * l * l);
    if (!(y > 0 && b + 3 * c * l * l > 0)) {
      const hint = 'check units and decimal points';
      throw new InputError(fn, 'points', 'range', input.points, 'must lie on a curve that falls with temperature', hint);
    }
    const fittedTempC = 1 / y - ZERO_C_IN_K;
    return { tempC, resistanceOhm, fittedTempC, residualK: fittedTempC - tempC };
  });
  const suspicious = fit.leverages === null ? null : suspiciousPoint(fitted, fit.leverages, fit.weights);
  if (suspicious !== null) {
    const { tempC, resistanceOhm, withoutItK } = suspicious;
    const message = `the point ${tempC} °C, ${resistanceOhm} Ω lies ${Math.abs(withoutItK).toPrecision(2)} K from the curve of the others`;
    warnings.push({ code: 'suspicious-point', message });
  }
  return {
    curve,
    points: fitted,
    worstResidualK: fitted.reduce((worst, { residualK }) => Math.max(worst, Math.abs(residualK)), 0),
    standardDeviationK: fit.standardDeviationK,
    degreesOfFreedom: points.length - 3,
    suspicious,
    warnings,
    covariance: fit.covariance,
  };
}

interface Reading {
  readonly tempC: number;
  readonly resistanceOhm: number;
  readonly uncertaintyK: number | undefined;
}

interface Letters {
  readonly letters: { readonly a: number; readonly b: number; readonly c: number };
  readonly standardDeviationK: number | null;
  readonly leverages: readonly number[] | null;
  readonly weights: readonly number[];
  readonly covariance: readonly (readonly number[])[] | null;
}

function throughThree(fn: string, points: readonly Reading[]): Letters {
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
    weights: [1, 1, 1],
    covariance: uncertain ? solve(fn, points).inverseNormal : null,
  };
}

function throughMany(fn: string, points: readonly Reading[]): Letters {
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
