import { needEarthly, needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needInput } from '../error/guard.js';

export interface RcFilterInput {
  /** Series resistance of the filter in Ω, at least 0, and what lies before it. Together above 0. */
  readonly resistanceOhm: number;
  readonly sourceOhm: number;
  /** Capacitance from the output to ground in F, above 0. */
  readonly capacitanceF: number;
  /** Resistance of the input behind it in Ω, above 0; null when it draws nothing worth counting. */
  readonly loadOhm: number | null;
  /** A frequency in Hz, at least 0, and the volts that come in at it. */
  readonly frequencyHz?: number;
  readonly inV?: number;
}

export interface RcFilterResult {
  /** Frequency at which 0.707 of the low-frequency volts are left, in Hz. */
  readonly cornerHz: number;
  readonly timeConstantS: number;
  /** How much later a slow signal arrives, in s: one time constant. */
  readonly delayS: number;
  /** From 10 to 90 % of a step, in s. */
  readonly riseS: number;
  /** Time after which a step is within 1 % of its end, in s. */
  readonly settleS: number;
  /** Share of a steady voltage that is left: below 1 where the load drags. */
  readonly steadyFraction: number;
  /** Share left at `frequencyHz`, in decibels too, and its lag in degrees; null without a frequency. */
  readonly outFraction: number | null;
  readonly outDb: number | null;
  readonly lagDeg: number | null;
  /** Volts left at `frequencyHz`; null without volts or frequency. */
  readonly outV: number | null;
}

/**
 * Corner and delay of a resistor and a capacitor before an input.
 *
 * A filter that keeps ripple out of a level reading also delays it; on a toothed wheel it eats the fast teeth first.
 *
 * $$f_c = \frac{1}{2\pi R C} \qquad \left|\frac{V_\mathrm{out}}{V_\mathrm{in}}\right| = \frac{k}{\sqrt{1 + (f/f_c)^2}}$$
 *
 * with $R$ the series resistance in parallel with the load and $k$ the share of the divider that both make.
 *
 * @param input resistances, capacitance, a frequency and its volts
 * @returns corner in Hz, times in s, share, lag and volts at the frequency
 * @throws InputError when a field is missing or out of range
 * @source lessons-electric-circuits, volume II, chapter 8 (low-pass filters)
 * @example rcFilter({ resistanceOhm: 500, sourceOhm: 0, capacitanceF: 7e-6, loadOhm: null }).cornerHz //=> 45.473
 */
export function rcFilter(input: RcFilterInput): RcFilterResult {
  const fn = 'rcFilter';
  needInput(fn, input);
  const { resistanceOhm, sourceOhm, capacitanceF, loadOhm, frequencyHz, inV } = input;
  needNoLessThan(fn, 'resistanceOhm', resistanceOhm);
  needNoLessThan(fn, 'sourceOhm', sourceOhm);
  needMoreThan(fn, 'capacitanceF', capacitanceF);
  if (loadOhm !== null) needMoreThan(fn, 'loadOhm', loadOhm);
  if (frequencyHz !== undefined) needNoLessThan(fn, 'frequencyHz', frequencyHz);
  if (inV !== undefined) needEarthly(fn, 'inV', inV);
  const seriesOhm = resistanceOhm + sourceOhm;
  needMoreThan(fn, 'resistanceOhm', seriesOhm, 0, 'else no filter');
  const steadyFraction = loadOhm === null ? 1 : loadOhm / (seriesOhm + loadOhm);
  const timeConstantS = seriesOhm * steadyFraction * capacitanceF;
  const cornerHz = 1 / (2 * Math.PI * timeConstantS);
  const outFraction = frequencyHz === undefined ? null : steadyFraction / Math.hypot(1, frequencyHz / cornerHz);
  return {
    cornerHz,
    timeConstantS,
    delayS: timeConstantS,
    riseS: timeConstantS * Math.log(9),
    settleS: timeConstantS * Math.log(100),
    steadyFraction,
    outFraction,
    outDb: outFraction === null ? null : 20 * Math.log10(outFraction),
    lagDeg: frequencyHz === undefined ? null : (Math.atan(frequencyHz / cornerHz) * 180) / Math.PI,
    outV: outFraction === null || inV === undefined ? null : inV * outFraction,
  };
}
