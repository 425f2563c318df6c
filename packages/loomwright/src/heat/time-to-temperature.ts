import { InputError } from '../error/index.js';
import { needAbove, needAtLeast, needBetween, needConductorTempC, needInput, needList } from '../error/guard.js';
import { integrate } from '../number/integrate.js';
import { conductorTemperature } from './conductor-temperature.js';
import { needMaxConductorTempC } from './wire-in-air.js';
import { type Lumps, lumpsOf, needWireInTime, ratesOf, type WireInTime } from './wire-in-time.js';

/** A current for a while. */
export interface CurrentStep {
  /** Current in A, at least 0. */
  readonly currentA: number;
  /** How long in s, above 0; left out in the last step it lasts on. */
  readonly durationS?: number;
}

export interface TimeToTemperatureInput extends WireInTime {
  /** Temperature of the whole wire at the beginning, in °C. */
  readonly startTempC: number;
  /** Conductor temperature to be reached, in °C. */
  readonly limitTempC: number;
  /** Steady current in A from the beginning on: this or `currentSteps`. */
  readonly currentA?: number;
  /** Currents one after another. */
  readonly currentSteps?: readonly CurrentStep[];
}

export interface TimeToTemperatureResult {
  /** Time in s until the conductor reaches the limit, or null where `reason` says why it does not. */
  readonly timeS: number | null;
  /**
   * `never-reached`: the last current's steady temperature stays below. `not-within-steps`: the steps end before.
   * `already-there`: the wire begins at or above the limit, and the time is 0.
   */
  readonly reason: 'never-reached' | 'not-within-steps' | 'already-there' | null;
  /** The same time if no heat left the metal, in s: never longer. Null where the steps end or the current is 0. */
  readonly adiabaticTimeS: number | null;
  /** Conductor temperature in °C at the end of the last finite step, or at the limit. */
  readonly endTempC: number;
  /** Steady conductor temperature of the last current in °C; null beyond what the air data cover. */
  readonly steadyTempC: number | null;
}

/** Error of one step of the integration, in K. */
const STEP_K = 1e-7;

/**
 * How long a wire takes to reach a temperature: how long before it is harmed.
 *
 * Use it for one wire in the open that carries more than it bears all day. In company it takes less time. For a short
 * circuit of a few seconds `shortCircuitWithstand` is simpler and on the safe side.
 *
 * $$C_0\,\dot T_0 = I^2 r(T_0) - \frac{T_0 - T_1}{R},\quad
 * C_j\,\dot T_j = \frac{T_{j-1} - T_j}{R} - \frac{T_j - T_{j+1}}{R},\quad
 * C_n\,\dot T_n = \frac{T_{n-1} - T_n}{R} - Q(T_n)$$
 *
 * $$t_\mathrm{adiabatic} = \frac{C_c (T_0 + T_\mathrm{rated})}{I^2 r}\ln\frac{T_0 + T_\mathrm{limit}}{T_0 + T_\mathrm{start}}$$
 *
 * The insulation is a chain of four such shells. The equations are solved to 10⁻⁵ of the time. Against a cover of many
 * shells the four are good to 0.1 % in minutes and 1 % in seconds; in milliseconds they give up to 10 % too long,
 * and the adiabatic time is the one to take.
 *
 * @param input wire, temperatures, current or steps
 * @returns time in s or null with a reason, the adiabatic time, temperatures
 * @throws InputError when a field is missing or out of range, or not exactly one of current and steps is given
 * @source heat-balance; iec-60853-2 (sharing of the insulation's heat, from memory); iec-60949 (heat of the metals)
 * @example timeToTemperature({ currentA: 60, startTempC: 40, limitTempC: 105, areaMm2: 2.5, insulationHeatJPerCm3K: 1.7, resistanceOhmPerM: 0.0076, ratedTempC: 20, conductorDiameterMm: 2.1, outerDiameterMm: 3, insulationConductivityWPerMK: 0.17, ambientTempC: 40, altitudeM: 0 }).timeS //=> 34.7764
 */
export function timeToTemperature(input: TimeToTemperatureInput): TimeToTemperatureResult {
  const fn = 'timeToTemperature';
  needInput(fn, input);
  needWireInTime(fn, input);
  const { startTempC, limitTempC, ambientTempC } = input;
  needConductorTempC(fn, 'startTempC', startTempC);
  needBetween(fn, 'startTempC', startTempC, -100, 400);
  needConductorTempC(fn, 'limitTempC', limitTempC);
  needMaxConductorTempC(fn, limitTempC, ambientTempC);
  const steps = needSteps(fn, input);
  const lumps = lumpsOf(input);
  const lastA = (steps[steps.length - 1] as CurrentStep).currentA;
  const steady = conductorTemperature({ ...input, currentA: lastA });
  const steadyTempC = steady.conductorTempC;
  const adiabaticTimeS = adiabatic(lumps, steps, startTempC, limitTempC);
  if (startTempC >= limitTempC) {
    return { timeS: 0, reason: 'already-there', adiabaticTimeS: 0, endTempC: startTempC, steadyTempC };
  }
  const last = lumps.heats.length - 1;
  let state: Float64Array = new Float64Array(last + 1).fill(startTempC);
  let timeS = 0;
  for (const { currentA, durationS } of steps) {
    const open = durationS === undefined;
    // A current whose steady state stays below the limit never reaches it from below these temperatures, those of a
    // wire that is held at the limit: along the chain nothing then warms beyond them.
    const made = currentA * currentA * lumps.ohmPerMK * (lumps.zero + limitTempC);
    const held = lumps.heats.map((_, i) => limitTempC - made * lumps.between * i);
    const bounded = open && steadyTempC !== null && steadyTempC <= limitTempC + 1e-6;
    const end = integrate({
      fn,
      rates: ratesOf(lumps, currentA),
      start: state,
      duration: durationS ?? Infinity,
      tolerance: STEP_K,
      event: (y) => (y[0] as number) - limitTempC,
      settled: (y) => bounded && held.every((tempC, i) => (y[i] as number) <= tempC + 1e-6),
    });
    state = end.state;
    timeS += end.time;
    const endTempC = state[0] as number;
    if (end.ended === 'event') return { timeS, reason: null, adiabaticTimeS, endTempC: limitTempC, steadyTempC };
    if (end.ended === 'settled') return { timeS: null, reason: 'never-reached', adiabaticTimeS, endTempC, steadyTempC };
  }
  return { timeS: null, reason: 'not-within-steps', adiabaticTimeS, endTempC: state[0] as number, steadyTempC };
}

/** The steps, whichever way they are given. */
function needSteps(fn: string, input: TimeToTemperatureInput): readonly CurrentStep[] {
  const { currentA, currentSteps } = input;
  if ((currentA === undefined) === (currentSteps === undefined)) {
    const given = currentA === undefined ? undefined : 2;
    throw new InputError(fn, 'currentA', 'oneOfFields', given, 'or currentSteps must be given, one only');
  }
  if (currentSteps === undefined) {
    needAtLeast(fn, 'currentA', currentA as number);
    return [{ currentA: currentA as number }];
  }
  needList(fn, 'currentSteps', currentSteps, 1);
  currentSteps.forEach((step, i) => {
    const at = `currentSteps[${i}]`;
    if (typeof step !== 'object' || step === null) throw new InputError(fn, at, 'object', step, 'must be an object');
    needAtLeast(fn, `${at}.currentA`, step.currentA);
    if (step.durationS !== undefined || i < currentSteps.length - 1) {
      needAbove(fn, `${at}.durationS`, step.durationS as number);
    }
  });
  return currentSteps;
}

/** Time to the limit with all heat kept in the metal: ln of the ratio of (T0 + T) is I² r t / C. */
function adiabatic(lumps: Lumps, steps: readonly CurrentStep[], startTempC: number, limitTempC: number): number | null {
  let left = Math.log((lumps.zero + limitTempC) / (lumps.zero + startTempC));
  let timeS = 0;
  for (const { currentA, durationS } of steps) {
    const rate = (currentA * currentA * lumps.ohmPerMK) / lumps.metal;
    const needed = rate > 0 ? left / rate : Infinity;
    if (needed <= (durationS ?? Infinity)) return needed === Infinity ? null : timeS + needed;
    timeS += durationS as number;
    left -= rate * (durationS as number);
  }
  return null;
}
