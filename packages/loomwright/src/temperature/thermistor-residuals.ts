import { InputError } from '../error/index.js';
import { needMoreThan } from '../error/bounded.js';
import { needInput, needList } from '../error/guard.js';
import type { ThermistorCurve } from '../table/index.js';
import { atResistance, lawOf } from './law.js';
import type { FittedPoint } from './letters.js';
import { type CurveWarning, kelvinWarning, type ThermistorPoint } from './point.js';

export interface ThermistorResidualsInput {
  /** The curve to be judged. */
  readonly curve: ThermistorCurve;
  /** What was measured or printed. */
  readonly points: readonly ThermistorPoint[];
}

export interface ThermistorResidualsResult {
  /** The points as given, each with the curve's temperature and the difference. */
  readonly points: readonly FittedPoint[];
  /** The point with the largest difference. */
  readonly worst: FittedPoint;
  /** Mean difference in K: what a wrong zero or a thermometer off throughout would do. */
  readonly meanK: number;
  /** Root of the mean squared difference, in K. */
  readonly rootMeanSquareK: number;
  /** Points whose units disagree, and the mark of coefficients made with 273.2. */
  readonly warnings: readonly CurveWarning[];
}

/**
 * How far a thermistor curve lies from points: coefficients found in a manual or a forum against the sensor at hand.
 *
 * $$e_i = T(R_i) - T_i$$
 *
 * A mean of 0.05 K with little else is the mark of 273.2 taken for 273.15. No range is enforced: judging a curve
 * beyond its range is what this is for.
 *
 * @param input curve and points
 * @returns difference at each point in K, the worst, mean and root mean square, warnings
 * @throws InputError when a field is missing, the curve is not one, or a point lies where the curve does not fall
 * @source steinhart-hart-1968; the curve's own for its coefficients
 * @example thermistorResiduals({ curve: ntc10k3mcd1, points: [{ tempC: 0, resistanceOhm: 32650.9 }] }).meanK //=> -0.0006
 */
export function thermistorResiduals(input: ThermistorResidualsInput): ThermistorResidualsResult {
  const fn = 'thermistorResiduals';
  needInput(fn, input);
  const law = lawOf(fn, input.curve);
  needList(fn, 'points', input.points, 1);
  const warnings: CurveWarning[] = [];
  const points = input.points.map((point, i): FittedPoint => {
    const field = `points[${i}]`;
    if (typeof point !== 'object' || point === null)
      throw new InputError(fn, field, 'object', point, 'must be a point');
    needMoreThan(fn, `${field}.resistanceOhm`, point.resistanceOhm);
    const { tempC, warning } = kelvinWarning(fn, field, point);
    if (warning !== null) warnings.push(warning);
    const { resistanceOhm } = point;
    const fittedTempC = atResistance(fn, law, resistanceOhm).tempC;
    return { tempC, resistanceOhm, fittedTempC, residualK: fittedTempC - tempC };
  });
  const meanK = points.reduce((sum, { residualK }) => sum + residualK, 0) / points.length;
  const scatterK = Math.sqrt(points.reduce((sum, { residualK }) => sum + (residualK - meanK) ** 2, 0) / points.length);
  if (points.length >= 3 && Math.abs(Math.abs(meanK) - 0.05) < 0.01 && scatterK < 0.015) {
    const message = 'every temperature is 0.05 K off, as when 273.2 is taken for 273.15';
    warnings.push({ code: 'kelvin-offset', message });
  }
  return {
    points,
    worst: points.reduce((worst, point) => (Math.abs(point.residualK) > Math.abs(worst.residualK) ? point : worst)),
    meanK,
    rootMeanSquareK: Math.hypot(meanK, scatterK),
    warnings,
  };
}
