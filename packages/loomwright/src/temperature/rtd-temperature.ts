import { InputError } from '../error/index.js';
import { needMoreThan } from '../error/bounded.js';
import { needInput } from '../error/guard.js';
import { findRoot } from '../number/index.js';
import type { SourceKey, SourceStatus } from '../source/index.js';
import type { PlatinumCurve } from '../table/index.js';
import { needPlatinum, platinum } from './rtd-resistance.js';

export interface RtdTemperatureInput {
  /** Which platinum curve: `iec60751`, or `iec751of1983` for old tables. */
  readonly curve: PlatinumCurve;
  /** Resistance at 0 °C in Ω, above 0: 100 for a Pt100, 1000 for a Pt1000. */
  readonly nominalOhm: number;
  /** Measured resistance in Ω, that of the leads taken off. */
  readonly resistanceOhm: number;
}

export interface RtdTemperatureResult {
  /** Temperature in °C. */
  readonly tempC: number;
  /** How fast the resistance rises there, in Ω/K: a lead of 0.1 Ω makes 0.1 over this too hot. */
  readonly slopeOhmPerK: number;
  readonly source: SourceKey;
  readonly sourceStatus: SourceStatus;
}

/**
 * Temperature of a platinum resistor from its resistance.
 *
 * With two wires the leads are in the reading: 0.39 Ω of lead is 1 K on a Pt100, a tenth of that on a Pt1000.
 *
 * $$t = \frac{-A + \sqrt{A^2 - 4B\,(1 - R/R_0)}}{2B} \quad (R \ge R_0)$$
 *
 * Below 0 °C the quartic is solved by bracketing, to 10⁻¹⁰ K.
 *
 * @param input curve, resistance at 0 °C, measured resistance
 * @returns °C and Ω/K
 * @throws InputError when a field is missing or the resistance lies outside the curve, −200 to 850 °C
 * @source iec-60751 (equation; the inverse is algebra); iec-751-1983
 * @example rtdTemperature({ curve: iec60751, nominalOhm: 100, resistanceOhm: 138.51 }).tempC //=> 100.012
 */
export function rtdTemperature(input: RtdTemperatureInput): RtdTemperatureResult {
  const fn = 'rtdTemperature';
  needInput(fn, input);
  const { curve, nominalOhm, resistanceOhm } = input;
  needPlatinum(fn, curve);
  needMoreThan(fn, 'nominalOhm', nominalOhm);
  needMoreThan(fn, 'resistanceOhm', resistanceOhm);
  const { a, b, lowTempC, highTempC } = curve;
  const wanted = resistanceOhm / nominalOhm;
  const lowest = platinum(curve, lowTempC).ratio;
  const highest = platinum(curve, highTempC).ratio;
  if (wanted < lowest * (1 - 1e-12) || wanted > highest * (1 + 1e-12)) {
    const must = `must lie from ${(lowest * nominalOhm).toFixed(2)} to ${(highest * nominalOhm).toFixed(2)} Ω`;
    const hint = wanted > 5 || wanted < 0.15 ? 'is nominalOhm that of another part?' : '';
    throw new InputError(fn, 'resistanceOhm', 'range', resistanceOhm, must, hint);
  }
  const f = (t: number): number => platinum(curve, t).ratio - wanted;
  const tempC =
    wanted >= 1
      ? (2 * (wanted - 1)) / (a + Math.sqrt(a * a + 4 * b * (wanted - 1)))
      : wanted <= lowest
        ? lowTempC
        : findRoot({ fn, f, low: lowTempC, high: 0, tolerance: 1e-11 });
  return {
    tempC,
    slopeOhmPerK: nominalOhm * platinum(curve, tempC).slope,
    source: curve.source,
    sourceStatus: curve.status,
  };
}
