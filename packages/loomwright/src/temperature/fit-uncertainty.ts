import { InputError } from '../error/index.js';
import { needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needInput, needObject } from '../error/guard.js';
import { ZERO_C_IN_K } from '../unit/index.js';
import type { FitSteinhartHartResult } from './fit-steinhart-hart.js';

export interface FitUncertaintyInput {
  /** A fit that has a covariance: more than three points, or points with their uncertainty. */
  readonly fit: Pick<FitSteinhartHartResult, 'curve' | 'covariance'>;
  /** Resistance of the reading in Ω, above 0. */
  readonly resistanceOhm: number;
  /** Standard uncertainty of that resistance as a fraction of it, at least 0. */
  readonly resistanceUncertaintyFraction: number;
  /** How many standard uncertainties the band is wide, such as Student's t of the fit's degrees of freedom. */
  readonly coverageFactor: number;
}

export interface FitUncertaintyResult {
  /** Temperature in °C by the fitted curve. */
  readonly tempC: number;
  /** Standard uncertainty from the curve alone, in K. */
  readonly curveK: number;
  /** Standard uncertainty from the reading alone, in K. */
  readonly readingK: number;
  /** Both together, in K. */
  readonly standardUncertaintyK: number;
  /** Half-width of the band: coverage factor times that, in K. */
  readonly bandK: number;
}

/**
 * How well a fitted thermistor curve knows a temperature. Between its points well; beyond them soon not at all.
 *
 * $$u_T = T^2 \sqrt{g^\mathsf{T} V g}, \qquad g = (1,\; \ln R,\; (\ln R)^3)$$
 *
 * with $V$ the covariance of a, b and c. It counts what varies from reading to reading; a thermometer that is 1 K
 * off throughout is not in it.
 *
 * @param input fit, resistance with its uncertainty, coverage factor
 * @returns °C with standard uncertainties and the half-width of the band, in K
 * @throws InputError when a field is missing or out of range, or the fit has no covariance
 * @source jcgm-100, 5.2 and example H.3
 * @example fitUncertainty({
 *   fit: fitSteinhartHart({
 *     points: [
 *       { tempC: 0, resistanceOhm: 5900, uncertaintyK: 0.2 },
 *       { tempC: 50, resistanceOhm: 834, uncertaintyK: 0.2 },
 *       { tempC: 100, resistanceOhm: 186, uncertaintyK: 0.2 },
 *     ],
 *   }),
 *   resistanceOhm: 834,
 *   resistanceUncertaintyFraction: 0.005,
 *   coverageFactor: 2,
 * }).bandK //=> 0.5
 */
export function fitUncertainty(input: FitUncertaintyInput): FitUncertaintyResult {
  needInput('fitUncertainty', input);
  const { fit, resistanceOhm, resistanceUncertaintyFraction, coverageFactor } = input;
  const covariance = fit?.covariance;
  if (covariance === undefined || covariance === null) {
    const must = 'must have a covariance';
    const hint = 'fit more than three points, or give each its uncertaintyK';
    throw new InputError('fitUncertainty', 'fit', fit === undefined ? 'missing' : 'object', fit, must, hint);
  }
  needMoreThan('fitUncertainty', 'resistanceOhm', resistanceOhm);
  needNoLessThan('fitUncertainty', 'resistanceUncertaintyFraction', resistanceUncertaintyFraction);
  needMoreThan('fitUncertainty', 'coverageFactor', coverageFactor);
  needObject('fitUncertainty', 'fit.curve', fit.curve);
  const { a, b, c, zeroCInK = ZERO_C_IN_K } = fit.curve;
  const l = Math.log(resistanceOhm);
  const y = a + l * (b + c * l * l);
  const slope = b + 3 * c * l * l;
  if (!(y > 0 && slope > 0)) {
    const must = 'must lie where the curve falls with temperature';
    throw new InputError('fitUncertainty', 'resistanceOhm', 'range', resistanceOhm, must);
  }
  const g = [1, l, l * l * l];
  let variance = 0;
  g.forEach((gi, i) => g.forEach((gj, j) => (variance += gi * gj * (covariance[i]?.[j] as number))));
  const curveK = Math.sqrt(Math.max(variance, 0)) / (y * y);
  const readingK = (slope * resistanceUncertaintyFraction) / (y * y);
  const standardUncertaintyK = Math.hypot(curveK, readingK);
  return {
    tempC: 1 / y - zeroCInK,
    curveK,
    readingK,
    standardUncertaintyK,
    bandK: coverageFactor * standardUncertaintyK,
  };
}
