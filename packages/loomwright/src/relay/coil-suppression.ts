import { type Check, makeCheck } from '../check/index.js';
import { needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needAtLeast, needBetween, needInput, needOneOf } from '../error/guard.js';
import { InputError } from '../error/index.js';
import { findRoot } from '../number/find-root.js';

/** What takes the coil's energy as it is switched off. */
export type Suppressor =
  | {
      readonly kind: 'none';
      /** Capacitance at the driver in F, above 0: without it the peak has no number. */
      readonly strayCapacitanceF?: number;
    }
  | {
      readonly kind: 'diode';
      /** Volts of the diode, at least 0. */
      readonly forwardV: number;
    }
  | {
      readonly kind: 'resistor';
      /** Resistor across the coil in Ω, above 0. */
      readonly resistanceOhm: number;
    }
  | {
      readonly kind: 'diode-zener';
      readonly forwardV: number;
      /** Volts of the zener diode in series, at least 0. */
      readonly zenerV: number;
    }
  | {
      readonly kind: 'tvs';
      /** Volts at which it clamps this current, above 0. */
      readonly clampV: number;
      /** Across the coil, or across the driver: there it must stand above the supply. */
      readonly place: 'coil' | 'driver';
    };

export interface CoilSuppressionInput {
  /** Voltage at the coil's feed in V, above 0: the highest that occurs. */
  readonly supplyV: number;
  /** Resistance of the coil in Ω as cold as it may be, above 0. */
  readonly coilResistanceOhm: number;
  /** Inductance of the coil with its armature in, in H, above 0. */
  readonly inductanceH: number;
  /** Current in A at which the armature lets go, above 0 and below that of the coil. */
  readonly releaseA: number;
  /** Time in s from there until the contact is open, at least 0. */
  readonly mechanicalS: number;
  /** Most volts that the driver stands, above 0. */
  readonly driverMostV: number;
  readonly suppressor: Suppressor;
}

export interface CoilSuppressionResult {
  /** Current of the coil in A before, and the energy in it, in J. */
  readonly coilA: number;
  readonly energyJ: number;
  /** Peak across the coil, reversed, and at the driver, in V; null where `reason` says why there is no number. */
  readonly peakCoilV: number | null;
  readonly peakDriverV: number | null;
  /** `only-stray-capacitance-limits-it`: hundreds of volts to over a thousand, until something breaks down. */
  readonly reason: 'only-stray-capacitance-limits-it' | null;
  /** Time in s until the current is down to `releaseA`, and until the contact is open. */
  readonly decayS: number;
  readonly releaseS: number;
  /** Energy that the suppressor takes at each switching off, in J. */
  readonly suppressorJ: number;
  /** Current and heat of a resistor across the coil while it is on, in A and W; 0 for all else. */
  readonly standingA: number;
  readonly standingW: number;
  readonly checks: readonly Check[];
  readonly decidedBy: string;
}

/**
 * A coil as it is switched off: the peak that the driver sees, and how much later the relay lets go.
 *
 * Use it to choose between a diode (lowest peak, slowest), a resistor, a diode with a zener diode, a TVS, or nothing.
 * What holds the voltage down holds the current up: a slow contact burns. Polarity matters for diodes: reversed, they
 * are a short.
 *
 * $$i(t) = \Bigl(I + \frac{V_c}{R}\Bigr) e^{-t R / L} - \frac{V_c}{R} \qquad
 * t = \frac{L}{R} \ln\frac{I R + V_c}{I_r R + V_c} \qquad V_\mathrm{driver} = V + V_c$$
 *
 * for a suppressor that clamps at $V_c$; a resistor $R_s$ gives $V_c = I R_s$ at first and decays with
 * $L / (R + R_s)$. Without any, the energy rings into the stray capacitance.
 *
 * @param input supply, coil, when it lets go, what the driver stands, suppressor
 * @returns peaks, release time, energy, checks
 * @throws InputError when a field is missing or out of range, or a TVS at the driver clamps below the supply
 * The armature's own motion, which disturbs the current, is left out; a release time is good to about a tenth.
 * @source circuit-theory; automotive-relay-notes (kinds of suppression and their effect)
 * @example coilSuppression({ supplyV: 12, coilResistanceOhm: 120, inductanceH: 0.3, releaseA: 0.02, mechanicalS: 0.0015, driverMostV: 60, suppressor: { kind: 'resistor', resistanceOhm: 680 } }).peakDriverV //=> 80
 */
export function coilSuppression(input: CoilSuppressionInput): CoilSuppressionResult {
  const fn = 'coilSuppression';
  needInput(fn, input);
  const { supplyV, coilResistanceOhm, inductanceH, releaseA, mechanicalS, driverMostV, suppressor } = input;
  needMoreThan(fn, 'supplyV', supplyV);
  needMoreThan(fn, 'coilResistanceOhm', coilResistanceOhm);
  needMoreThan(fn, 'inductanceH', inductanceH);
  const coilA = supplyV / coilResistanceOhm;
  needMoreThan(fn, 'releaseA', releaseA);
  needBetween(fn, 'releaseA', releaseA, 0, coilA);
  needNoLessThan(fn, 'mechanicalS', mechanicalS);
  needMoreThan(fn, 'driverMostV', driverMostV);
  needSuppressor(fn, suppressor, supplyV);
  const energyJ = 0.5 * inductanceH * coilA * coilA;
  const off = switchOff(fn, input, coilA);
  const { peakCoilV, decayS } = off;
  const peakDriverV = peakCoilV === null ? null : supplyV + peakCoilV;
  const standingA = suppressor.kind === 'resistor' ? supplyV / suppressor.resistanceOhm : 0;
  const check = makeCheck({
    name: 'volts at the driver',
    value: peakDriverV,
    limit: driverMostV,
    unit: 'V',
    sense: 'atMost',
    source: 'given-by-caller',
    sourceStatus: 'derived',
    okWithoutNumber: false,
    ...(peakDriverV === null ? { because: 'nothing but stray capacitance limits it' } : {}),
  });
  return {
    coilA,
    energyJ,
    peakCoilV,
    peakDriverV,
    reason: peakCoilV === null ? 'only-stray-capacitance-limits-it' : null,
    decayS,
    releaseS: decayS + mechanicalS,
    suppressorJ: off.suppressorJ,
    standingA,
    standingW: standingA * supplyV,
    checks: [check],
    decidedBy: check.name,
  };
}

function needSuppressor(fn: string, suppressor: Suppressor, supplyV: number): void {
  if (typeof suppressor !== 'object' || suppressor === null) {
    const rule = suppressor === undefined ? 'missing' : 'object';
    throw new InputError(fn, 'suppressor', rule, suppressor, 'must be a suppressor with a kind');
  }
  const at = 'suppressor.';
  needOneOf(fn, `${at}kind`, suppressor.kind, ['none', 'diode', 'resistor', 'diode-zener', 'tvs']);
  if (suppressor.kind === 'none') {
    const { strayCapacitanceF } = suppressor;
    if (strayCapacitanceF !== undefined) needMoreThan(fn, `${at}strayCapacitanceF`, strayCapacitanceF);
  } else if (suppressor.kind === 'resistor') needMoreThan(fn, `${at}resistanceOhm`, suppressor.resistanceOhm);
  else if (suppressor.kind === 'tvs') {
    needOneOf(fn, `${at}place`, suppressor.place, ['coil', 'driver']);
    const above = suppressor.place === 'driver' ? supplyV : 0;
    needMoreThan(
      fn,
      `${at}clampV`,
      suppressor.clampV,
      above,
      above > 0 ? 'across the driver it must stand the supply' : '',
    );
  } else {
    needAtLeast(fn, `${at}forwardV`, suppressor.forwardV);
    if (suppressor.kind === 'diode-zener') needAtLeast(fn, `${at}zenerV`, suppressor.zenerV);
  }
}

interface Off {
  readonly peakCoilV: number | null;
  readonly decayS: number;
  readonly suppressorJ: number;
}

function switchOff(fn: string, input: CoilSuppressionInput, coilA: number): Off {
  const { supplyV, coilResistanceOhm: R, inductanceH: L, releaseA, suppressor } = input;
  switch (suppressor.kind) {
    case 'none':
      if (suppressor.strayCapacitanceF === undefined) return { peakCoilV: null, decayS: 0, suppressorJ: 0 };
      return ring(fn, input, coilA, suppressor.strayCapacitanceF);
    case 'resistor': {
      const all = R + suppressor.resistanceOhm;
      return {
        peakCoilV: coilA * suppressor.resistanceOhm,
        decayS: (L / all) * Math.log(coilA / releaseA),
        suppressorJ: (0.5 * L * coilA * coilA * suppressor.resistanceOhm) / all,
      };
    }
    default: {
      const across = suppressor.kind === 'tvs' ? suppressor.clampV : suppressor.forwardV;
      const more = suppressor.kind === 'diode-zener' ? suppressor.zenerV : 0;
      const feeds = suppressor.kind === 'tvs' && suppressor.place === 'driver';
      const clampV = across + more - (feeds ? supplyV : 0);
      // Charge until the current is 0, from ∫ (V_c + R i + L di/dt) dt = 0; V_c = 0 decays for ever and takes nothing.
      const zeroS = clampV > 0 ? (L / R) * Math.log1p((coilA * R) / clampV) : 0;
      const charge = clampV > 0 ? (L * coilA - clampV * zeroS) / R : 0;
      return {
        peakCoilV: clampV,
        decayS: (L / R) * Math.log((coilA * R + clampV) / (releaseA * R + clampV)),
        suppressorJ: (across + more) * charge,
      };
    }
  }
}

/** Coil, resistance and stray capacitance ring: the peak at the driver, and when the current is down. */
function ring(fn: string, input: CoilSuppressionInput, coilA: number, C: number): Off {
  const { supplyV, coilResistanceOhm: R, inductanceH: L, releaseA } = input;
  const alpha = R / (2 * L);
  const square = 1 / (L * C) - alpha * alpha;
  // x = v − V at the driver: x(0) = −V, C x'(0) = I. Damped harder than critically, cos and sin become cosh and sinh.
  const w = Math.sqrt(Math.abs(square));
  const B = square === 0 ? coilA / C - alpha * supplyV : (coilA / C - alpha * supplyV) / w;
  const c = (t: number): number => (square > 0 ? Math.cos(w * t) : square < 0 ? Math.cosh(w * t) : 1);
  const s = (t: number): number => (square > 0 ? Math.sin(w * t) : square < 0 ? Math.sinh(w * t) : t);
  const volts = (t: number): number => Math.exp(-alpha * t) * (-supplyV * c(t) + B * s(t));
  const slope = coilA / C;
  const sines = square > 0 ? w * supplyV - alpha * B : square < 0 ? -w * supplyV - alpha * B : -alpha * B;
  const ampere = (t: number): number => C * Math.exp(-alpha * t) * (slope * c(t) + sines * s(t));
  const topS = square > 0 ? Math.atan2(slope, -sines) / w : 60 / alpha;
  const decayS =
    releaseA >= coilA
      ? 0
      : findRoot({ fn, f: (t) => (ampere(t) - releaseA) / coilA, low: 0, high: topS, tolerance: 1e-12 * topS });
  return { peakCoilV: square > 0 ? volts(topS) : 0, decayS, suppressorJ: 0 };
}
