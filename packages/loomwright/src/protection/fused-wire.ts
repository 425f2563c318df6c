import type { Metal } from '../conductor/index.js';
import { ALUMINIUM_ZERO, COPPER_ZERO, METALS } from '../conductor/metal.js';
import { InputError } from '../error/index.js';
import { needBetween, needConductorTempC, needInput, needOneOf } from '../error/guard.js';
import { needMoreThan } from '../error/bounded.js';
import { shortCircuitWithstand, timeToTemperature, type WireInTime } from '../heat/index.js';

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
  /** The same wire for `timeToTemperature`: overloads of more than 5 s are then followed in time. */
  readonly inTime?: WireInTime;
}

/** Longest time in s for which all heat may be taken to stay in the metal, and the short-time limit holds. */
export const ADIABATIC_S = 5;

/** Throws unless the wire is whole. */
export function needFusedWire(fn: string, wire: FusedWire, at = 'wire'): void {
  needInput(fn, wire);
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
  const zero = wire.metal === 'aluminium' ? ALUMINIUM_ZERO : COPPER_ZERO;
  const perA2 = (maxConductorTempC - ambientTempC) / (ampacityA * ampacityA * (zero + maxConductorTempC));
  const gain = perA2 * currentA * currentA;
  if (!(gain < 1)) return null;
  const tempC = ambientTempC + (gain * (zero + ambientTempC)) / (1 - gain);
  return tempC <= 400 ? tempC : null;
}

/** What the wire bears in a short circuit of at most 5 s, in A²s. */
export function withstandA2s(wire: FusedWire, limitTempC = wire.shortTempC): number {
  return shortCircuitWithstand({
    areaMm2: wire.areaMm2,
    startTempC: wire.maxConductorTempC,
    limitTempC,
    metal: wire.metal === 'aluminium' ? 'aluminium' : 'copper',
  }).withstandI2tA2s as number;
}

/** Largest current in A that the wire bears for good by its overload temperature: never below its ampacity. */
export function goodA(wire: FusedWire, ampacityA: number): number {
  const { ambientTempC, maxConductorTempC, overloadTempC } = wire;
  const zero = wire.metal === 'aluminium' ? ALUMINIUM_ZERO : COPPER_ZERO;
  const gain = (overloadTempC - ambientTempC) / (zero + overloadTempC);
  return ampacityA * Math.sqrt((gain * (zero + maxConductorTempC)) / (maxConductorTempC - ambientTempC));
}

/** How long in s a wire at its class bears a current; null for good. */
export function bearsS(wire: FusedWire, ampacityA: number, currentA: number): number | null {
  return currentA <= goodA(wire, ampacityA) ? null : bearsForS(wire, currentA);
}

/** The same for a current that is above what it bears for good; null where it turns out to be borne all the same. */
export function bearsForS(wire: FusedWire, currentA: number): number | null {
  const shortS = Math.min(ADIABATIC_S, withstandA2s(wire) / (currentA * currentA));
  if (wire.overloadTempC <= wire.maxConductorTempC) return shortS;
  if (wire.inTime === undefined) {
    return Math.max(shortS, withstandA2s(wire, wire.overloadTempC) / (currentA * currentA));
  }
  const { timeS } = timeToTemperature({
    ...wire.inTime,
    startTempC: wire.maxConductorTempC,
    limitTempC: wire.overloadTempC,
    currentA,
  });
  return timeS === null ? null : Math.max(shortS, timeS);
}

/** Currents in A at which one of the wire's limits takes over from another. */
export function turnsA(wire: FusedWire): number[] {
  const turns = [Math.sqrt(withstandA2s(wire) / ADIABATIC_S)];
  if (wire.overloadTempC > wire.maxConductorTempC) {
    turns.push(Math.sqrt(withstandA2s(wire, wire.overloadTempC) / ADIABATIC_S));
  }
  return turns;
}
