import { InputError } from '../error/index.js';
import { needAbove, needAtLeast, needBetween, needInput } from '../error/guard.js';
import { integrate } from '../number/integrate.js';
import { solveLinear } from '../number/solve-linear.js';
import { conductorTemperature } from './conductor-temperature.js';
import { HOTTEST_C, type NoTemperature } from './wire-in-air.js';
import { type Lumps, lumpsOf, needWireInTime, ratesOf, type WireInTime } from './wire-in-time.js';

export interface PulsedTemperatureInput extends WireInTime {
  /** Current in A while the load is on, at least `offCurrentA`. */
  readonly onCurrentA: number;
  /** Current in A in between, at least 0. */
  readonly offCurrentA: number;
  /** Time on in s, above 0, below the period. */
  readonly onS: number;
  /** Time from one switching-on to the next, in s. */
  readonly periodS: number;
}

export interface PulsedTemperatureResult {
  /** Highest conductor temperature in °C once the pulses have gone on for long, or null where `reason` says why. */
  readonly conductorTempC: number | null;
  /** `rms`: the pulses are fast against the wire and only their heat counts. `transient`: each one is followed. */
  readonly method: 'rms' | 'transient';
  /** R.m.s. current in A: what the wire feels. */
  readonly rmsCurrentA: number;
  /** Mean current in A: what the battery feels. */
  readonly meanCurrentA: number;
  /** Swing of the conductor's temperature in K: its bound by `rms`, the swing itself by `transient`; or null. */
  readonly rippleK: number | null;
  /** Heat in the wire over heat made, in s, at the steady state of the r.m.s. current; null without a rise. */
  readonly timeConstantS: number | null;
  readonly reason: NoTemperature | null;
}

/** Swing in K below which pulses are fast. */
const FAST_K = 1;

/**
 * Highest temperature of a wire whose current goes on and off for long.
 *
 * Three currents answer three questions and are never exchanged: the peak (what a switch makes and breaks), the
 * r.m.s. (what a wire and a fuse feel) and the mean (what a battery feels). Where one pulse, with all its heat kept in
 * the metal, swings the conductor by less than 1 K, the pulses are fast and the r.m.s. current gives the temperature,
 * to which that swing is added. Otherwise the warming and cooling of each pulse is followed until it repeats.
 *
 * $$I_\mathrm{rms}^2 = \frac{t_\mathrm{on} I_\mathrm{on}^2 + (t - t_\mathrm{on}) I_\mathrm{off}^2}{t},\qquad
 * \Delta T \le \frac{(I_\mathrm{on}^2 - I_\mathrm{rms}^2)\,r(T)\,t_\mathrm{on}}{C_c}$$
 *
 * @param input wire, currents and times
 * @returns highest temperature, method, r.m.s. and mean current, swing, time constant; null with a reason
 * @throws InputError when a field is missing or out of range
 * @source heat-balance; iec-60853-2 (heat of the insulation)
 * @example pulsedTemperature({ onCurrentA: 24, offCurrentA: 0, onS: 0.006, periodS: 0.01, areaMm2: 2.5, insulationHeatJPerCm3K: 1.7, resistanceOhmPerM: 0.0076, ratedTempC: 20, conductorDiameterMm: 2.1, outerDiameterMm: 3, insulationConductivityWPerMK: 0.17, ambientTempC: 40, altitudeM: 0 }).rmsCurrentA //=> 18.5903
 */
export function pulsedTemperature(input: PulsedTemperatureInput): PulsedTemperatureResult {
  const fn = 'pulsedTemperature';
  needInput(fn, input);
  needWireInTime(fn, input);
  const { onCurrentA, offCurrentA, onS, periodS } = input;
  needAtLeast(fn, 'offCurrentA', offCurrentA);
  needAtLeast(fn, 'onCurrentA', onCurrentA, offCurrentA);
  needAbove(fn, 'periodS', periodS);
  needAbove(fn, 'onS', onS);
  if (!(onS < periodS)) throw new InputError(fn, 'onS', 'below', onS, `must be below the period of ${periodS}`);
  needBetween(fn, 'periodS', periodS, 1e-9, 1e7);
  const share = onS / periodS;
  const rms2 = share * onCurrentA * onCurrentA + (1 - share) * offCurrentA * offCurrentA;
  const rmsCurrentA = Math.sqrt(rms2);
  const currents = { rmsCurrentA, meanCurrentA: share * onCurrentA + (1 - share) * offCurrentA };
  const steady = conductorTemperature({ ...input, currentA: rmsCurrentA });
  if (steady.conductorTempC === null) {
    const nothing = { conductorTempC: null, rippleK: null, timeConstantS: null };
    return { ...nothing, method: 'rms', ...currents, reason: steady.reason };
  }
  const lumps = lumpsOf(input);
  const chain = lumps.heats.map(
    (_, i) => (steady.conductorTempC as number) - (steady.lossWPerM as number) * lumps.between * i,
  );
  const lossWPerM = steady.lossWPerM as number;
  const stored = chain.reduce((sum, tempC, i) => sum + (tempC - input.ambientTempC) * (lumps.heats[i] as number), 0);
  const timeConstantS = lossWPerM > 0 ? stored / lossWPerM : null;
  const bound =
    ((onCurrentA * onCurrentA - rms2) * lumps.ohmPerMK * (lumps.zero + steady.conductorTempC) * onS) / lumps.metal;
  if (bound <= FAST_K) {
    const conductorTempC = steady.conductorTempC + bound;
    return { conductorTempC, method: 'rms', ...currents, rippleK: bound, timeConstantS, reason: null };
  }
  const { high, low } = repeat(fn, lumps, chain, input);
  if (!(high <= HOTTEST_C)) {
    const nothing = { conductorTempC: null, rippleK: null };
    return { ...nothing, method: 'transient', ...currents, timeConstantS, reason: 'beyond-air-data' };
  }
  return { conductorTempC: high, method: 'transient', ...currents, rippleK: high - low, timeConstantS, reason: null };
}

/** The state before switching on that comes back after a period (Newton's method), and the conductor's extremes. */
function repeat(
  fn: string,
  lumps: Lumps,
  start: readonly number[],
  { onCurrentA, offCurrentA, onS, periodS }: PulsedTemperatureInput,
): { high: number; low: number } {
  const run = (y: Float64Array, currentA: number, duration: number): Float64Array =>
    integrate({ fn, rates: ratesOf(lumps, currentA), start: y, duration, tolerance: 1e-6 }).state;
  const period = (y: Float64Array): Float64Array => run(run(y, onCurrentA, onS), offCurrentA, periodS - onS);
  const n = start.length;
  let state: Float64Array = Float64Array.from(start);
  for (let round = 0; round < 20; round++) {
    const end = period(state);
    const off = end.map((tempC, i) => tempC - (state[i] as number));
    if (off.every((each) => Math.abs(each) < 1e-4)) break;
    // (1 − J) step = off, with J by differences of 0.1 K.
    const matrix = new Float64Array(n * n);
    for (let j = 0; j < n; j++) {
      const moved = state.slice();
      moved[j] = (moved[j] as number) + 0.1;
      const there = period(moved);
      for (let i = 0; i < n; i++) {
        matrix[i * n + j] = (i === j ? 1 : 0) - ((there[i] as number) - (end[i] as number)) / 0.1;
      }
    }
    const step = solveLinear({ matrix, sides: [off] })?.[0];
    state = step === undefined ? end : state.map((tempC, i) => tempC + (step[i] as number));
  }
  return { high: run(state, onCurrentA, onS)[0] as number, low: state[0] as number };
}
