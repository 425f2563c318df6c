import { ConvergenceError } from '../error/index.js';
import { needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needInput } from '../error/guard.js';
import { integrate } from '../number/integrate.js';
import { type MotorLoad, needLoad, settle } from './load.js';

export interface MotorStartInput {
  /** Voltage at the start of the path in V, above 0. */
  readonly supplyV: number;
  /** Resistance of the path in Ω, out and back with battery, fuse and contacts; at least 0. */
  readonly pathResistanceOhm: number;
  /** Resistance of winding and brushes in Ω, above 0. */
  readonly windingResistanceOhm: number;
  /** Inductance of the winding in H, above 0. */
  readonly inductanceH: number;
  /** Speed constant in rpm per volt of back-EMF, above 0. */
  readonly speedConstantRpmPerV: number;
  /** Moment of inertia of rotor and what it turns, in kg·m², above 0. */
  readonly inertiaKgM2: number;
  /** Current in A that the driven thing asks for at the rated voltage, above 0. */
  readonly ratedCurrentA: number;
  /** That voltage in V. */
  readonly ratedV: number;
  /** `constant` for a lift or a positive-displacement pump, `speed-squared` for a fan or a centrifugal pump. */
  readonly torque: 'constant' | 'speed-squared';
  /** Time in s over which a channel raises its duty from 0 to 1; 0 is switched on hard. */
  readonly rampS: number;
}

export interface MotorStartResult {
  /** Largest current in the path in A, when in s, and its ratio to the steady one: for the channel. */
  readonly peakA: number;
  readonly peakTimeS: number;
  readonly inrushRatio: number;
  /** R.m.s. and mean current in the path over the run-up, in A, and its I²t: for wire, fuse and battery. */
  readonly rmsA: number;
  readonly meanA: number;
  /** A²s of the run-up; null where it never ends. */
  readonly i2tA2s: number | null;
  /** Time in s to 95 % of the steady speed; null where `reason` says why there is none. */
  readonly runUpS: number | null;
  /** `stalls`: what is driven asks for more than the motor gives through this path. */
  readonly reason: 'stalls' | null;
  /** Current in A and speed in rpm once it runs. */
  readonly steadyA: number;
  readonly steadyRpm: number;
  /** Current in A with the rotor held. */
  readonly stallA: number;
  /** Least volts at the motor. */
  readonly leastMotorV: number;
  /** The start over time: moments in s, motor current in A, speed in rpm, duty of the channel. */
  readonly timesS: readonly number[];
  readonly currentsA: readonly number[];
  readonly speedsRpm: readonly number[];
  readonly dutyFractions: readonly number[];
}

/** Error of one step in shares of stall current and supply. */
const STEP = 1e-6;
const SAMPLES = 48;
/** Tops of a ringing current that are looked at: the first is the highest, unless what drives it still rises. */
const RINGS = 12;

/** Components of the state: current over stall current, EMF over supply, duty, ∫ d i, ∫ d i². */
const CURRENT = 0;
const EMF = 1;
const DUTY = 2;

/**
 * A permanent-magnet motor as it starts: switched on hard, or with the duty of its channel raised over a time.
 *
 * Use it for fans, pumps and winches: the peak decides the channel and the relay, I²t the fuse, the run-up time what
 * a soft start gains. Nothing but winding and path limits the current of a rotor that stands still.
 *
 * $$L \frac{di}{dt} = d\,V - (R + d\,R_\mathrm{path})\,i - E \qquad
 * \frac{dE}{dt} = \frac{K^2}{J}\bigl(i - i_\mathrm{load}(E)\bigr) \qquad K = \frac{60}{2\pi k_v}$$
 *
 * with $i_\mathrm{load}$ constant or as the square of the speed. While the duty $d$ is below 1 the path carries $i$ for
 * that share of the time; the channel switches much faster than the winding's time constant. A constant load holds the
 * rotor until the current can move it.
 *
 * @param input supply, path, motor, what it drives, ramp
 * @returns peak, r.m.s. and mean of the run-up, its time, steady state, the curve
 * @throws InputError when a field is missing or out of range; ConvergenceError when the equations are not followed
 * @source circuit-theory; shampine-1982 (the equations in time)
 * @example motorStart({ supplyV: 13.5, pathResistanceOhm: 0.05, windingResistanceOhm: 0.2, inductanceH: 0.0002, speedConstantRpmPerV: 220, inertiaKgM2: 0.002, ratedCurrentA: 15, ratedV: 13, torque: 'speed-squared', rampS: 0 }).peakA //=> 53.217
 */
export function motorStart(input: MotorStartInput): MotorStartResult {
  const fn = 'motorStart';
  needInput(fn, input);
  const { supplyV, pathResistanceOhm, windingResistanceOhm, inductanceH, speedConstantRpmPerV, inertiaKgM2 } = input;
  const { ratedCurrentA, ratedV, torque, rampS } = input;
  needMoreThan(fn, 'supplyV', supplyV);
  needNoLessThan(fn, 'pathResistanceOhm', pathResistanceOhm);
  needMoreThan(fn, 'windingResistanceOhm', windingResistanceOhm);
  needMoreThan(fn, 'inductanceH', inductanceH);
  needMoreThan(fn, 'speedConstantRpmPerV', speedConstantRpmPerV);
  needMoreThan(fn, 'inertiaKgM2', inertiaKgM2);
  needMoreThan(fn, 'ratedCurrentA', ratedCurrentA);
  needMoreThan(fn, 'ratedV', ratedV);
  needNoLessThan(fn, 'rampS', rampS);
  const motor: MotorLoad = {
    kind: 'motor',
    windingResistanceOhm,
    speedConstantRpmPerV,
    ratedCurrentA,
    ratedV,
    torque,
  };
  needLoad(fn, motor, '');
  const steady = settle(motor, supplyV, pathResistanceOhm);
  if ('code' in steady) throw new ConvergenceError(fn, 0, NaN, NaN);
  const steadyRpm = steady.speedRpm as number;
  const stallA = supplyV / (pathResistanceOhm + windingResistanceOhm);
  const constantV = 30 / (Math.PI * speedConstantRpmPerV);

  // In shares of stall current and supply: i' = (d − (r + d p) i − e) / τ with r + p = 1; e' = a (i − load).
  const p = (pathResistanceOhm * stallA) / supplyV;
  const r = 1 - p;
  const tau = (inductanceH * stallA) / supplyV;
  const a = (constantV * constantV * stallA) / (inertiaKgM2 * supplyV);
  const loadShare = ratedCurrentA / stallA;
  const ratedEmfV = ratedV - ratedCurrentA * windingResistanceOhm;
  const square = (ratedCurrentA / stallA) * (supplyV / ratedEmfV) ** 2;
  const target = (0.95 * steadyRpm) / speedConstantRpmPerV / supplyV;

  const slope = (y: Float64Array): number => {
    const d = y[DUTY] as number;
    return (d - (r + d * p) * (y[CURRENT] as number) - (y[EMF] as number)) / tau;
  };
  const isHeld = (y: Float64Array): boolean =>
    torque === 'constant' && (y[EMF] as number) <= 0 && (y[CURRENT] as number) < loadShare * (1 - 1e-9);

  let state: Float64Array = Float64Array.of(0, 0, rampS > 0 ? 0 : 1, 0, 0);
  let time = 0;
  /** On to a moment, or to an event before it. */
  const go = (until: number, event?: (y: Float64Array) => number): boolean => {
    while (time < until) {
      const ramping = time < rampS;
      const held = isHeld(state);
      const stop = ramping ? Math.min(rampS, until) : until;
      const rates = (y: Float64Array, out: Float64Array): void => {
        const i = y[CURRENT] as number;
        const e = y[EMF] as number;
        const d = y[DUTY] as number;
        out[CURRENT] = slope(y);
        out[EMF] = held ? 0 : a * (i - (torque === 'constant' ? loadShare : square * e * Math.abs(e)));
        out[DUTY] = ramping ? 1 / rampS : 0;
        out[3] = d * i;
        out[4] = d * i * i;
      };
      const breaks = (y: Float64Array): number => (y[CURRENT] as number) - loadShare;
      const end = integrate({
        fn,
        rates,
        start: state,
        duration: stop - time,
        tolerance: STEP,
        ...(held ? { event: breaks } : event === undefined ? {} : { event }),
      });
      const y = end.state.slice();
      time = end.ended === 'duration' ? stop : time + end.time;
      if (end.ended === 'duration' && ramping && stop === rampS) y[DUTY] = 1;
      if (held && end.ended === 'event') y[CURRENT] = loadShare;
      state = y;
      if (!held && end.ended === 'event') return true;
    }
    return false;
  };

  let runUpS: number | null = null;
  let charge = 0;
  let squares = 0;
  if (!steady.stalled) {
    go(Infinity, (y) => (y[EMF] as number) - target);
    runUpS = time;
    charge = state[3] as number;
    squares = state[4] as number;
  }

  const endS = runUpS === null ? rampS + 12 * tau : 1.25 * Math.max(runUpS, rampS) + 4 * tau;
  state = Float64Array.of(0, 0, rampS > 0 ? 0 : 1, 0, 0);
  time = 0;
  const moments: { time: number; state: Float64Array }[] = [{ time, state }];
  for (let k = 1; k <= SAMPLES; k++) {
    go(endS * (k / SAMPLES) ** 2);
    moments.push({ time, state });
  }
  const amps = moments.map((moment) => moment.state[CURRENT] as number);
  const top = amps.indexOf(Math.max(...amps));
  let peak = amps[top] as number;
  let peakTimeS = (moments[top] as { time: number }).time;
  /** On to where the current stops rising, and the peak with it. */
  const climb = (until: number): void => {
    go(until, (y) => -slope(y));
    if ((state[CURRENT] as number) <= peak) return;
    peak = state[CURRENT] as number;
    peakTimeS = time;
  };
  // The top lies between the samples on either side.
  if (top > 0 && top < SAMPLES) {
    ({ time, state } = moments[top - 1] as { time: number; state: Float64Array });
    climb((moments[top + 1] as { time: number }).time);
  }
  // A light rotor rings as it breaks away, quicker than the samples lie: its first tops one by one.
  ({ time, state } = moments[0] as { time: number; state: Float64Array });
  for (let k = 0; k < RINGS && time < endS; k++) {
    go(Math.min(endS, time + tau / 100));
    climb(endS);
    go(Math.min(endS, time + tau / 100));
    go(endS, slope);
  }
  const peakA = runUpS === null ? stallA : Math.max(peak * stallA, steady.currentA);
  const through = runUpS ?? 1;
  return {
    peakA,
    peakTimeS,
    inrushRatio: peakA / steady.currentA,
    rmsA: runUpS === null ? stallA : stallA * Math.sqrt(squares / through),
    meanA: runUpS === null ? stallA : (stallA * charge) / through,
    i2tA2s: runUpS === null ? null : stallA * stallA * squares,
    runUpS,
    reason: steady.stalled ? 'stalls' : null,
    steadyA: steady.currentA,
    steadyRpm,
    stallA,
    leastMotorV: supplyV - peakA * pathResistanceOhm,
    timesS: moments.map((moment) => moment.time),
    currentsA: amps.map((i) => i * stallA),
    speedsRpm: moments.map((moment) => (moment.state[EMF] as number) * supplyV * speedConstantRpmPerV),
    dutyFractions: moments.map((moment) => moment.state[DUTY] as number),
  };
}
