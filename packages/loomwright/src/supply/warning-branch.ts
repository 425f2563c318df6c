import { lampAtVoltage } from '../load/index.js';
import { findRoot } from '../number/index.js';
import type { LampLaw } from '../table/index.js';

/** The lamp of the charge warning. */
export interface WarningLamp {
  /** Power in W at the rated volts, both above 0. */
  readonly ratedPowerW: number;
  readonly ratedV: number;
  /** `filamentLamp` or `halogenLamp`. */
  readonly law: LampLaw;
}

/** An LED in its place or beside it, with the resistor in its own lead. */
export interface WarningLed {
  /** Volts across the LED while it conducts, above 0. */
  readonly forwardV: number;
  /** Resistance in series with it in Ω, above 0. */
  readonly seriesOhm: number;
  /** Current in A at which it is as bright as it should be, above 0. */
  readonly fullA: number;
}

/** What lies between the ignition and the alternator's terminal: side by side, behind a diode where there is one. */
export interface WarningBranch {
  readonly lamp: WarningLamp | null;
  readonly led: WarningLed | null;
  readonly resistorOhm: number | null;
  /** Drop in V of a diode that lets current go to the alternator only; null without one. */
  readonly diodeDropV: number | null;
}

/** Brightness in words: at least a fifth of full, at least a twentieth, at least a thousandth, or less. */
export type Brightness = 'bright' | 'dim' | 'glimmer' | 'dark';

/** A branch at some volts. */
export interface BranchState {
  /** Volts from the ignition's end to the alternator's, below 0 where current flows back. */
  readonly branchV: number;
  readonly currentA: number;
  /** Light of each over its full light; null where it is not fitted. */
  readonly lampLightFraction: number | null;
  readonly lamp: Brightness | null;
  readonly ledLightFraction: number | null;
  readonly led: Brightness | null;
  readonly resistorA: number;
  readonly resistorW: number;
}

const lampA = (lamp: WarningLamp | null, volts: number): number =>
  lamp === null || volts === 0
    ? 0
    : Math.sign(volts) * (lamp.ratedPowerW / lamp.ratedV) * (Math.abs(volts) / lamp.ratedV) ** lamp.law.currentExponent;
const ledA = (led: WarningLed | null, volts: number): number =>
  led === null ? 0 : Math.max(volts - led.forwardV, 0) / led.seriesOhm;
const resistorA = (ohm: number | null, volts: number): number => (ohm === null ? 0 : volts / ohm);

/** Current of what lies side by side, at the volts across it. */
export function sideBySideA({ lamp, led, resistorOhm }: WarningBranch, volts: number): number {
  return lampA(lamp, volts) + ledA(led, volts) + resistorA(resistorOhm, volts);
}

/** Volts across what lies side by side, behind volts and a resistance in series. */
function settle(branch: WarningBranch, emfV: number, seriesOhm: number): number {
  const drop = branch.diodeDropV;
  if (drop !== null && emfV <= drop) return 0;
  const openV = emfV - (drop ?? 0);
  if (seriesOhm === 0 || openV === 0) return openV;
  const sign = Math.sign(openV);
  const left = (volts: number): number => sign * (volts + seriesOhm * sideBySideA(branch, volts) - openV);
  const found = findRoot({
    fn: 'excitationResistor',
    f: (size) => left(sign * size),
    low: 0,
    high: Math.abs(openV),
    tolerance: 1e-12,
  });
  return sign * found;
}

/** The branch with volts across it and a resistance behind it. */
export function branchAt(branch: WarningBranch, emfV: number, seriesOhm: number): BranchState {
  const { lamp, led, resistorOhm } = branch;
  const volts = settle(branch, emfV, seriesOhm);
  const currentA = sideBySideA(branch, volts);
  const inResistorA = resistorA(resistorOhm, volts);
  const lampV = Math.abs(volts);
  const lampLightFraction = lamp === null ? null : lampV < 1e-6 ? 0 : lampAtVoltage({ ...lamp, lampV }).lightFraction;
  const ledLightFraction = led === null ? null : ledA(led, volts) / led.fullA;
  return {
    branchV: emfV - seriesOhm * currentA,
    currentA,
    lampLightFraction,
    lamp: lampLightFraction === null ? null : brightness(lampLightFraction),
    ledLightFraction,
    led: ledLightFraction === null ? null : brightness(ledLightFraction),
    resistorA: inResistorA,
    resistorW: inResistorA * volts,
  };
}

function brightness(lightFraction: number): Brightness {
  if (lightFraction >= 0.2) return 'bright';
  if (lightFraction >= 0.05) return 'dim';
  return lightFraction >= 0.001 ? 'glimmer' : 'dark';
}
