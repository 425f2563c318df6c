import type { NotPossible } from '../check/index.js';
import { needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needInput } from '../error/guard.js';
import { hotOhm, type Load, needLoad, settle } from './load.js';
import type { PathLimit } from './solve-path.js';

export interface LoadCurrentsInput {
  /** Voltage at the start of the path in V, above 0. */
  readonly supplyV: number;
  /** Resistance of the path in Ω, out and back, at least 0. */
  readonly pathResistanceOhm: number;
  readonly load: Load;
}

export interface LoadCurrentsResult {
  readonly possible: true;
  /** Running current: its peak (channel), r.m.s. (wire and fuse) and mean (battery), in A. */
  readonly peakA: number;
  readonly rmsA: number;
  readonly meanA: number;
  /** Volts at the load while it is on. */
  readonly loadV: number;
  /** First current in A; null where `inrushReason` says why there is no number. */
  readonly inrushA: number | null;
  /** First current over the running peak. */
  readonly inrushRatio: number | null;
  /** I²t of charging a capacitor, in A²s; null for other loads. */
  readonly inrushI2tA2s: number | null;
  /** Time constant of the first moment in s: of charging, or of a coil's rise; null for other loads. */
  readonly timeConstantS: number | null;
  /**
   * `rises-from-zero`: a coil, no inrush. `ratio-not-given`: a lamp without `hotOverColdRatio`. `nothing-limits-it`: a
   * capacitor behind no resistance. `not-known`: such a load does not tell.
   */
  readonly inrushReason: 'rises-from-zero' | 'ratio-not-given' | 'nothing-limits-it' | 'not-known' | null;
}

/**
 * The three running currents of a load at the end of a path, and the first current as it is switched on.
 *
 * Use it to hand the right current to each part: a channel is judged by the peak, wire and fuse by the r.m.s., a
 * battery by the mean. For the whole course of a start use `motorStart` and `lampInrush`.
 *
 * $$I_\mathrm{rms} = I\sqrt{d} \qquad \bar I = I\,d \qquad
 * I_0 = \frac{V}{R_\mathrm{path} + R_\mathrm{cold}} \qquad
 * \int i^2\,dt = \frac{C V^2}{2 (R_\mathrm{path} + R_C)}$$
 *
 * @param input supply, path, load
 * @returns running currents, volts at the load, first current; or `possible: false` as `solvePath` gives it
 * @throws InputError when a field is missing or out of range
 * @source circuit-theory
 * @example loadCurrents({ supplyV: 12, pathResistanceOhm: 0, load: { kind: 'pwm', load: { kind: 'constant-current', currentA: 24 }, dutyFraction: 0.6 } }).rmsA //=> 18.59
 */
export function loadCurrents(input: LoadCurrentsInput): LoadCurrentsResult | NotPossible<PathLimit> {
  const fn = 'loadCurrents';
  needInput(fn, input);
  const { supplyV, pathResistanceOhm, load } = input;
  needMoreThan(fn, 'supplyV', supplyV);
  needNoLessThan(fn, 'pathResistanceOhm', pathResistanceOhm);
  needLoad(fn, load);
  const point = settle(load, supplyV, pathResistanceOhm);
  if ('code' in point) {
    return { possible: false, code: point.code, because: point.because, nearest: { currentA: point.mostA } };
  }
  const { currentA, dutyFraction } = point;
  const first = firstMoment(load, supplyV, pathResistanceOhm);
  return {
    possible: true,
    peakA: currentA,
    rmsA: currentA * Math.sqrt(dutyFraction),
    meanA: currentA * dutyFraction,
    loadV: supplyV - currentA * pathResistanceOhm,
    inrushA: first.inrushA,
    inrushRatio: first.inrushA === null ? null : first.inrushA / currentA,
    inrushI2tA2s: first.i2tA2s ?? null,
    timeConstantS: first.timeConstantS ?? null,
    inrushReason: first.reason ?? null,
  };
}

interface FirstMoment {
  readonly inrushA: number | null;
  readonly i2tA2s?: number;
  readonly timeConstantS?: number;
  readonly reason?: LoadCurrentsResult['inrushReason'];
}

function firstMoment(load: Load, supplyV: number, pathOhm: number): FirstMoment {
  const through = (ohm: number): FirstMoment => ({ inrushA: supplyV / (pathOhm + ohm) });
  switch (load.kind) {
    case 'resistance':
      return through(load.resistanceOhm);
    case 'heater':
      return through(load.coldResistanceOhm);
    case 'motor':
      return through(load.windingResistanceOhm);
    case 'lamp': {
      if (load.hotOverColdRatio === undefined) return { inrushA: null, reason: 'ratio-not-given' };
      return through((load.ratedV * load.ratedV) / load.ratedPowerW / load.hotOverColdRatio);
    }
    case 'capacitor-input': {
      const ohm = pathOhm + load.capacitorResistanceOhm;
      if (ohm === 0) return { inrushA: null, reason: 'nothing-limits-it' };
      return {
        inrushA: supplyV / ohm,
        i2tA2s: (load.capacitanceF * supplyV * supplyV) / (2 * ohm),
        timeConstantS: load.capacitanceF * ohm,
      };
    }
    case 'solenoid': {
      const hot = hotOhm(load.resistanceOhm, load.ratedTempC, load.coilTempC);
      return { inrushA: null, timeConstantS: load.inductanceH / (pathOhm + hot), reason: 'rises-from-zero' };
    }
    case 'starter-solenoid': {
      const { pullInResistanceOhm: pull, holdInResistanceOhm: hold } = load;
      return through((pull * hold) / (pull + hold));
    }
    case 'h-bridge-motor': {
      // At standstill the bridge still gives its share of the time.
      const { motor, dutyFraction, bridgeResistanceOhm } = load;
      const ohm = dutyFraction * pathOhm + bridgeResistanceOhm + motor.windingResistanceOhm;
      return { inrushA: (dutyFraction * supplyV) / ohm };
    }
    case 'pwm':
      return firstMoment(load.load, supplyV, pathOhm);
    default:
      return { inrushA: null, reason: 'not-known' };
  }
}
