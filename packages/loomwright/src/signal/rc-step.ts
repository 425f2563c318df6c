import { needEarthly, needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needInput } from '../error/guard.js';

export interface RcStepInput {
  /** Volts before the step, and those that it leads to. */
  readonly startV: number;
  readonly endV: number;
  /** Resistance through which the capacitor fills in Ω, above 0. */
  readonly resistanceOhm: number;
  /** Capacitance in F, above 0. */
  readonly capacitanceF: number;
  /** Time after the step in s, at least 0. */
  readonly timeS: number;
  /** Volts whose crossing is asked for. */
  readonly thresholdV?: number;
}

export interface RcStepResult {
  readonly timeConstantS: number;
  /** Volts of the capacitor at the time. */
  readonly outV: number;
  /** Current into it at the time in A. */
  readonly currentA: number;
  /** When the threshold is crossed, in s; null where it never is, or none was given: see the code. */
  readonly thresholdS: number | null;
  readonly thresholdCode: 'crossed' | 'never' | 'not-asked';
}

/**
 * A capacitor that fills or empties through a resistor: volts and current at a time, and when it crosses a threshold.
 *
 * $$V(t) = V_\mathrm{end} + (V_\mathrm{start} - V_\mathrm{end})\,e^{-t/RC} \qquad
 * t = RC \ln\frac{V_\mathrm{end} - V_\mathrm{start}}{V_\mathrm{end} - V}$$
 *
 * @param input volts before and after, resistance, capacitance, time, threshold
 * @returns volts and current in A at the time, time constant and time of the crossing in s
 * @throws InputError when a field is missing or out of range
 * @source lessons-electric-circuits, volume I, chapter 16 (RC time constants)
 * @example rcStep({ startV: 0, endV: 15, resistanceOhm: 10000, capacitanceF: 0.0001, timeS: 1 }).outV //=> 9.48181
 */
export function rcStep(input: RcStepInput): RcStepResult {
  const fn = 'rcStep';
  needInput(fn, input);
  const { startV, endV, resistanceOhm, capacitanceF, timeS, thresholdV } = input;
  needEarthly(fn, 'startV', startV);
  needEarthly(fn, 'endV', endV);
  needMoreThan(fn, 'resistanceOhm', resistanceOhm);
  needMoreThan(fn, 'capacitanceF', capacitanceF);
  needNoLessThan(fn, 'timeS', timeS);
  if (thresholdV !== undefined) needEarthly(fn, 'thresholdV', thresholdV);
  const timeConstantS = resistanceOhm * capacitanceF;
  const left = Math.exp(-timeS / timeConstantS);
  const thresholdS = thresholdV === undefined ? null : crossing(startV, endV, thresholdV, timeConstantS);
  return {
    timeConstantS,
    outV: endV + (startV - endV) * left,
    currentA: ((endV - startV) * left) / resistanceOhm,
    thresholdS,
    thresholdCode: thresholdV === undefined ? 'not-asked' : thresholdS === null ? 'never' : 'crossed',
  };
}

/** Time from one voltage on the way to another until a third is met; null where it lies off the way. */
export function crossing(startV: number, endV: number, v: number, timeConstantS: number): number | null {
  if (v === startV) return 0;
  const share = (endV - startV) / (endV - v);
  return share > 1 && share < Infinity ? timeConstantS * Math.log(share) : null;
}
