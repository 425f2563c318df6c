import { InputError } from '../error/index.js';
import { needMoreThan } from '../error/bounded.js';
import { needFinite, needInput } from '../error/guard.js';
import type { SourceKey, SourceStatus } from '../source/index.js';
import type { PlatinumCurve } from '../table/index.js';

export interface RtdResistanceInput {
  /** Which platinum curve: `iec60751`, or `iec751of1983` for old tables. */
  readonly curve: PlatinumCurve;
  /** Resistance at 0 °C in Ω, above 0: 100 for a Pt100, 1000 for a Pt1000. */
  readonly nominalOhm: number;
  /** Temperature in °C, −200 to 850. */
  readonly tempC: number;
}

export interface RtdResistanceResult {
  /** Resistance in Ω. */
  readonly resistanceOhm: number;
  /** How fast it rises there, in Ω/K. */
  readonly slopeOhmPerK: number;
  readonly source: SourceKey;
  readonly sourceStatus: SourceStatus;
}

/**
 * Resistance of a platinum resistor (Pt100, Pt1000) at a temperature.
 *
 * Two curves are in circulation; name the one that your part and your instrument were made for.
 *
 * $$R = R_0\,(1 + A t + B t^2 + C (t - 100) t^3), \qquad C = 0 \text{ above } 0\,°\mathrm{C}$$
 *
 * @param input curve, resistance at 0 °C, temperature
 * @returns Ω and Ω/K
 * @throws InputError when a field is missing or the temperature lies outside the curve, −200 to 850 °C
 * @source iec-60751 (equation and coefficients); iec-751-1983
 * @example rtdResistance({ curve: iec60751, nominalOhm: 100, tempC: 100 }).resistanceOhm //=> 138.5055
 */
export function rtdResistance(input: RtdResistanceInput): RtdResistanceResult {
  const fn = 'rtdResistance';
  needInput(fn, input);
  const { curve, nominalOhm, tempC } = input;
  needPlatinum(fn, curve);
  needMoreThan(fn, 'nominalOhm', nominalOhm);
  needFinite(fn, 'tempC', tempC);
  if (tempC < curve.lowTempC || tempC > curve.highTempC) {
    throw new InputError(fn, 'tempC', 'range', tempC, `must lie from ${curve.lowTempC} to ${curve.highTempC}`);
  }
  const { ratio, slope } = platinum(curve, tempC);
  return {
    resistanceOhm: nominalOhm * ratio,
    slopeOhmPerK: nominalOhm * slope,
    source: curve.source,
    sourceStatus: curve.status,
  };
}

/** A platinum curve must be one of the table room's. */
export function needPlatinum(fn: string, curve: PlatinumCurve): void {
  if (typeof curve !== 'object' || curve === null) {
    const rule = curve === undefined ? 'missing' : 'object';
    throw new InputError(fn, 'curve', rule, curve, 'must be a platinum curve', 'import one, such as iec60751');
  }
  for (const field of ['a', 'b', 'c', 'lowTempC', 'highTempC'] as const) needFinite(fn, `curve.${field}`, curve[field]);
}

/** R/R₀ and its slope a kelvin. */
export function platinum({ a, b, c }: PlatinumCurve, t: number): { ratio: number; slope: number } {
  const cold = t < 0 ? c : 0;
  return {
    ratio: 1 + t * (a + t * (b + cold * (t - 100) * t)),
    slope: a + t * (2 * b + cold * t * (4 * t - 300)),
  };
}
