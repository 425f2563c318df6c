import type { Metal } from '../conductor/index.js';
import { ALUMINIUM_ZERO, COPPER_ZERO, METALS } from '../conductor/metal.js';
import { InputError } from '../error/index.js';
import { needBetween, needConductorTempC, needFunction, needObject, needOneOf } from '../error/guard.js';
import { needMoreThan } from '../error/bounded.js';
import { shortCircuitWithstand, type timeToTemperature, type WireInTime } from '../heat/index.js';

/** What a wire bears for a while, beside the current that it bears for good. */
export interface FusedWire {
  /** Area of the metal in mm², above 0. */
  readonly areaMm2: number;
  /** Metal; annealed copper unless given. */
  readonly metal?: Metal;
  /** Air around the wire in °C: the ampacity holds there. */
  readonly ambientTempC: number;
  /** Temperature class of the insulation in °C, above the air: the wire is as hot when a fault begins. */
  readonly maxConductorTempC: number;
  /** What the insulation bears for minutes now and then, in °C, at least the class; the class where nothing is known. */
  readonly overloadTempC: number;
  /** What it bears in a short circuit of at most 5 s, in °C, above the class: for PVC 160, for cross-linked 250. */
  readonly shortTempC: number;
  /** The same wire as its cover warms too: overloads of more than 5 s are then followed in time. */
  readonly inTime?: FollowedWire;
}

/** A wire to be followed in time. */
export interface FollowedWire extends WireInTime {
  /** What follows it, `timeToTemperature`: handed in, so that nobody pays for it who does not use it. */
  readonly by: typeof timeToTemperature;
}

/** Longest time in s for which all heat may be taken to stay in the metal, and the short-time limit holds. */
export const ADIABATIC_S = 5;

/** Throws unless the wire is whole. */
export function needFusedWire(fn: string, wire: FusedWire, at = 'wire'): void {
  needObject(fn, at, wire);
  const { areaMm2, metal, ambientTempC, maxConductorTempC, overloadTempC, shortTempC } = wire;
  needMoreThan(fn, `${at}.areaMm2`, areaMm2);
  if (metal !== undefined) needOneOf(fn, `${at}.metal`, metal, METALS);
  needBetween(fn, `${at}.ambientTempC`, ambientTempC, -60, 200);
  needConductorTempC(fn, `${at}.maxConductorTempC`, maxConductorTempC);
  if (!(maxConductorTempC > ambientTempC)) {
    const must = `must be above the air of ${ambientTempC}`;
    throw new InputError(fn, `${at}.maxConductorTempC`, 'order', maxConductorTempC, must);
  }
  needConductorTempC(fn, `${at}.overloadTempC`, overloadTempC);
  needConductorTempC(fn, `${at}.shortTempC`, shortTempC);
  if (!(overloadTempC >= maxConductorTempC)) {
    throw new InputError(fn, `${at}.overloadTempC`, 'order', overloadTempC, 'must be at least the class');
  }
  if (wire.inTime !== undefined) needFunction(fn, `${at}.inTime.by`, wire.inTime.by, 'timeToTemperature');
  if (!(shortTempC > maxConductorTempC && shortTempC >= overloadTempC)) {
    const must = 'must be above the class and at least overloadTempC';
    throw new InputError(fn, `${at}.shortTempC`, 'order', shortTempC, must);
  }
}

/**
 * Steady temperature in °C at a current, from the current that brings the wire to its class: heat given off grows with
 * the rise, and resistance with the temperature. Null where no balance is left below 400 °C.
 */
export function steadyTempC(wire: FusedWire, ampacityA: number, currentA: number): number | null {
  const { ambientTempC, maxConductorTempC } = wire;
  const zero = zeroOf(wire);
  const perA2 = (maxConductorTempC - ambientTempC) / (ampacityA * ampacityA * (zero + maxConductorTempC));
  const gain = perA2 * currentA * currentA;
  if (!(gain < 1)) return null;
  const tempC = ambientTempC + (gain * (zero + ambientTempC)) / (1 - gain);
  return tempC <= 400 ? tempC : null;
}

function zeroOf(wire: FusedWire): number {
  return wire.metal === 'aluminium' ? ALUMINIUM_ZERO : COPPER_ZERO;
}

/** What the wire bears in a short circuit of at most 5 s, in A²s. */
export function withstandA2s(wire: FusedWire): number {
  return shortCircuitWithstand({
    areaMm2: wire.areaMm2,
    startTempC: wire.maxConductorTempC,
    limitTempC: wire.shortTempC,
    metal: wire.metal === 'aluminium' ? 'aluminium' : 'copper',
  }).withstandI2tA2s as number;
}

/** The line of a wire in a time-current picture. */
export interface WireLine {
  /** Largest current in A that it bears for good by its overload temperature: never below its ampacity. */
  readonly goodA: number;
  /** What it bears in a short circuit of at most 5 s, in A²s. */
  readonly withstandI2tA2s: number;
  /** Current in A above which that, and not the 5 s, ends what it bears. */
  readonly turnA: number;
  /** How long in s it bears a current above `goodA`; null where it turns out to be borne for good all the same. */
  readonly bearsForS: (currentA: number) => number | null;
}

/**
 * How long a wire at its class bears a current.
 *
 * Up to 5 s all heat stays in the metal, to the short-time limit. For longer, to the overload temperature: the metal
 * alone is warmed, and gives off heat in proportion to its rise, as much as the ampacity says. The cover's own heat
 * and the steeper loss of a hotter surface would only give it longer.
 */
export function wireLine(wire: FusedWire, ampacityA: number): WireLine {
  const { ambientTempC, maxConductorTempC, overloadTempC, shortTempC } = wire;
  const zero = zeroOf(wire);
  const withstandI2tA2s = withstandA2s(wire);
  // dT/dt = h (T0 + T) − g (T − Ta), with h = I² / (K S)² and g such that the ampacity balances at the class.
  const ks2 = withstandI2tA2s / Math.log((zero + shortTempC) / (zero + maxConductorTempC));
  const g = (ampacityA * ampacityA * (zero + maxConductorTempC)) / (ks2 * (maxConductorTempC - ambientTempC));
  const slow = overloadTempC > maxConductorTempC;
  const overloadS = (currentA: number): number | null => {
    const h = (currentA * currentA) / ks2;
    const first = h * (zero + maxConductorTempC) - g * (maxConductorTempC - ambientTempC);
    const last = h * (zero + overloadTempC) - g * (overloadTempC - ambientTempC);
    if (!(first > 0 && last > 0)) return null;
    // ln(1 + x) / x, so that h near g gives the plain quotient.
    const x = (last - first) / first;
    const share = Math.abs(x) < 1e-9 ? 1 : Math.log1p(x) / x;
    const timeS = ((overloadTempC - maxConductorTempC) / first) * share;
    return timeS < 1e9 ? timeS : null;
  };
  const gain = (overloadTempC - ambientTempC) / (zero + overloadTempC);
  return {
    goodA: ampacityA * Math.sqrt((gain * (zero + maxConductorTempC)) / (maxConductorTempC - ambientTempC)),
    withstandI2tA2s,
    turnA: Math.sqrt(withstandI2tA2s / ADIABATIC_S),
    bearsForS: (currentA) => {
      const shortS = Math.min(ADIABATIC_S, withstandI2tA2s / (currentA * currentA));
      if (!slow) return shortS;
      const slowS = wire.inTime === undefined ? overloadS(currentA) : followedS(wire, wire.inTime, currentA);
      return slowS === null ? null : Math.max(shortS, slowS);
    },
  };
}

/** How long in s a wire at its class bears a current; null for good. */
export function bearsS(wire: FusedWire, ampacityA: number, currentA: number): number | null {
  const line = wireLine(wire, ampacityA);
  return currentA <= line.goodA ? null : line.bearsForS(currentA);
}

function followedS(wire: FusedWire, { by, ...inTime }: FollowedWire, currentA: number): number | null {
  const { maxConductorTempC: startTempC, overloadTempC: limitTempC } = wire;
  return by({ ...inTime, startTempC, limitTempC, currentA }).timeS;
}
