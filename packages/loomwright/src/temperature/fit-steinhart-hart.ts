import { InputError } from '../error/index.js';
import { needMoreThan } from '../error/bounded.js';
import { needInput, needList } from '../error/guard.js';
import type { SteinhartHartCurve } from '../table/index.js';
import { type FittedPoint, fittedPoints, slippedPoint, throughMany, throughThree } from './letters.js';
import { type CurveWarning, kelvinWarning, type ThermistorPoint, togetherWarnings } from './point.js';
import { type SuspiciousPoint, suspiciousPoint } from './suspicious-point.js';

export interface FitSteinhartHartInput {
  /** Three points or more, in any order. Give an uncertainty with all of them or with none. */
  readonly points: readonly ThermistorPoint[];
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
    if (typeof point !== 'object' || point === null)
      throw new InputError(fn, field, 'object', point, 'must be a point');
    needMoreThan(fn, `${field}.resistanceOhm`, point.resistanceOhm);
    if (point.uncertaintyK !== undefined) needMoreThan(fn, `${field}.uncertaintyK`, point.uncertaintyK);
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
  if (curve.c < 0) {
    const message = 'c is below 0, which no thermistor has: one of the readings is off, or the points are too few';
    warnings.push({ code: 'c-negative', message });
  }
  const fitted = fittedPoints(fit, points);
  if (fitted === null) {
    const slipped = slippedPoint(fn, points);
    const hint =
      slipped === null
        ? 'check units and decimal points'
        : `look at the point ${slipped.tempC} °C, ${slipped.resistanceOhm} Ω`;
    throw new InputError(fn, 'points', 'range', input.points, 'must lie on a curve that falls with temperature', hint);
  }
  const suspicious = fit.leverages === null ? null : suspiciousPoint(points, fit.straightK, fit.leverages, fit.weights);
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
