import { InputError } from '../error/index.js';
import { needAbove, needAtLeast, needBetween, needConductorTempC, needObject, needOneOf } from '../error/guard.js';
import type { LampLaw } from '../table/index.js';

/** Draws the same current at any voltage: the usual reading of "a 15 A pump", and a fair first guess for one. */
export interface ConstantCurrentLoad {
  readonly kind: 'constant-current';
  /** Current in A, above 0. */
  readonly currentA: number;
}

/** A plain resistance: a heater once warm. */
export interface ResistanceLoad {
  readonly kind: 'resistance';
  /** Resistance in Ω, above 0. */
  readonly resistanceOhm: number;
}

/** Draws the same power at any voltage, so more current at less voltage: a converter, a radio. */
export interface ConstantPowerLoad {
  readonly kind: 'constant-power';
  /** Power in W, above 0. */
  readonly powerW: number;
}

/** A permanent-magnet motor that runs: winding resistance, back-EMF and what its load asks of it. */
export interface MotorLoad {
  readonly kind: 'motor';
  /** Resistance of winding and brushes in Ω, above 0. */
  readonly windingResistanceOhm: number;
  /** Speed constant in rpm per volt of back-EMF, above 0. */
  readonly speedConstantRpmPerV: number;
  /** Current in A at the rated voltage, above 0 and below that of the stalled motor. */
  readonly ratedCurrentA: number;
  /** Voltage in V at which it draws that current. */
  readonly ratedV: number;
  /** `constant` for a lift or a positive-displacement pump, `speed-squared` for a fan or a centrifugal pump. */
  readonly torque: 'constant' | 'speed-squared';
}

/** A filament lamp once it is hot: its current goes with about the square root of its volts. */
export interface LampLoad {
  readonly kind: 'lamp';
  /** Power in W at the rated voltage, above 0. */
  readonly ratedPowerW: number;
  /** Voltage in V of that power, above 0. */
  readonly ratedV: number;
  /** How current goes with volts: `filamentLamp`, `halogenLamp`. */
  readonly law: LampLaw;
  /** Resistance hot over cold, above 1: 10 to 18. Asked for where the first moment matters. */
  readonly hotOverColdRatio?: number;
}

/** LEDs behind a switching driver: the same power at any voltage, and nothing below a least one. */
export interface LedDriverLoad {
  readonly kind: 'led-driver';
  /** Power of the LEDs in W, above 0. */
  readonly powerW: number;
  /** Power of the LEDs over the power drawn, above 0 and at most 1. */
  readonly efficiency: number;
  /** Least voltage in V at which the driver works, at least 0. */
  readonly leastV: number;
}

/** A heater whose resistance rises as it warms. */
export interface HeaterLoad {
  readonly kind: 'heater';
  /** Resistance in Ω warm, above 0. */
  readonly resistanceOhm: number;
  /** Resistance in Ω cold, above 0. */
  readonly coldResistanceOhm: number;
}

/** Electronics with a capacitor across its supply: a converter, an amplifier, a controller. */
export interface CapacitorInputLoad {
  readonly kind: 'capacitor-input';
  /** Power drawn in W once charged, above 0. */
  readonly powerW: number;
  /** Capacitance in F, above 0. */
  readonly capacitanceF: number;
  /** Resistance of the capacitor and of what limits its charging, in Ω, at least 0. */
  readonly capacitorResistanceOhm: number;
}

/** A solenoid, valve or relay coil. */
export interface SolenoidLoad {
  readonly kind: 'solenoid';
  /** Resistance in Ω at `ratedTempC`, above 0. */
  readonly resistanceOhm: number;
  /** Temperature in °C of that value. */
  readonly ratedTempC: number;
  /** Temperature of the coil in °C. */
  readonly coilTempC: number;
  /** Inductance in H, above 0. */
  readonly inductanceH: number;
}

/** The two windings of a starter's solenoid. */
export interface StarterSolenoidLoad {
  readonly kind: 'starter-solenoid';
  /** Winding that lets go once the contact has closed, in Ω, above 0. */
  readonly pullInResistanceOhm: number;
  /** Winding that stays, in Ω, above 0. */
  readonly holdInResistanceOhm: number;
  /** `pull-in`: both windings side by side. `hold`: the one that stays. */
  readonly stage: 'pull-in' | 'hold';
}

/** A motor behind a bridge that switches fast: its inductance carries the current on between pulses. */
export interface HBridgeMotorLoad {
  readonly kind: 'h-bridge-motor';
  readonly motor: MotorLoad;
  /** Resistance of the two switches in the motor's way, in Ω, at least 0. */
  readonly bridgeResistanceOhm: number;
  /** Share of the time that the motor is on the supply, above 0 and at most 1. */
  readonly dutyFraction: number;
}

/** A load that is switched on and off fast and whole, such as a heater or an LED string. */
export interface PwmLoad {
  readonly kind: 'pwm';
  readonly load: Exclude<Load, PwmLoad | HBridgeMotorLoad>;
  /** Share of the time that it is on, above 0 and at most 1. */
  readonly dutyFraction: number;
}

/** What is at the end of a path. */
export type Load =
  | ConstantCurrentLoad
  | ResistanceLoad
  | ConstantPowerLoad
  | MotorLoad
  | LampLoad
  | LedDriverLoad
  | HeaterLoad
  | CapacitorInputLoad
  | SolenoidLoad
  | StarterSolenoidLoad
  | HBridgeMotorLoad
  | PwmLoad;

const MOTOR = ['windingResistanceOhm', 'speedConstantRpmPerV', 'ratedCurrentA'];

/** Fields of each kind that must be above 0. */
const POSITIVE: Readonly<Record<string, readonly string[]>> = {
  'constant-current': ['currentA'],
  resistance: ['resistanceOhm'],
  'constant-power': ['powerW'],
  motor: MOTOR,
  lamp: ['ratedPowerW', 'ratedV'],
  'led-driver': ['powerW', 'efficiency'],
  heater: ['resistanceOhm', 'coldResistanceOhm'],
  'capacitor-input': ['powerW', 'capacitanceF'],
  solenoid: ['resistanceOhm', 'inductanceH'],
  'starter-solenoid': ['pullInResistanceOhm', 'holdInResistanceOhm'],
  'h-bridge-motor': ['dutyFraction'],
  pwm: ['dutyFraction'],
};

/** Throws unless the load is one of the kinds, whole and in range. */
export function needLoad(fn: string, load: Load, at = 'load'): void {
  const field = (name: string): string => (at === '' ? name : `${at}.${name}`);
  needObject(fn, at, load, 'must be a load with a kind');
  needOneOf(fn, field('kind'), load.kind, Object.keys(POSITIVE));
  for (const name of POSITIVE[load.kind] as readonly string[]) {
    needAbove(fn, field(name), (load as unknown as Record<string, number>)[name] as number);
  }
  if ('dutyFraction' in load) needBetween(fn, field('dutyFraction'), load.dutyFraction, 0, 1);
  if (load.kind === 'motor') needMotor(fn, load, field);
  else if (load.kind === 'lamp') {
    if (load.hotOverColdRatio !== undefined) needAbove(fn, field('hotOverColdRatio'), load.hotOverColdRatio, 1);
    needLampLaw(fn, field('law'), load.law);
  } else if (load.kind === 'led-driver') {
    needBetween(fn, field('efficiency'), load.efficiency, 0, 1);
    needAtLeast(fn, field('leastV'), load.leastV);
  } else if (load.kind === 'capacitor-input') {
    needAtLeast(fn, field('capacitorResistanceOhm'), load.capacitorResistanceOhm);
  } else if (load.kind === 'solenoid') {
    needConductorTempC(fn, field('ratedTempC'), load.ratedTempC);
    needConductorTempC(fn, field('coilTempC'), load.coilTempC);
  } else if (load.kind === 'starter-solenoid') {
    needOneOf(fn, field('stage'), load.stage, ['pull-in', 'hold']);
  } else if (load.kind === 'h-bridge-motor') {
    needAtLeast(fn, field('bridgeResistanceOhm'), load.bridgeResistanceOhm);
    needInner(fn, load.motor, field('motor'), ['motor']);
  } else if (load.kind === 'pwm') {
    const inner = Object.keys(POSITIVE).filter((kind) => kind !== 'pwm' && kind !== 'h-bridge-motor');
    needInner(fn, load.load, field('load'), inner);
  }
}

function needInner(fn: string, load: Load, at: string, kinds: readonly string[]): void {
  if (typeof load === 'object' && load !== null) needOneOf(fn, `${at}.kind`, load.kind, kinds);
  needLoad(fn, load, at);
}

function needMotor(fn: string, load: MotorLoad, field: (name: string) => string): void {
  needAtLeast(fn, field('ratedV'), load.ratedV);
  needOneOf(fn, field('torque'), load.torque, ['constant', 'speed-squared']);
  const stallA = load.ratedV / load.windingResistanceOhm;
  if (load.ratedCurrentA < stallA) return;
  const must = `must be below ratedV / windingResistanceOhm (${stallA} A)`;
  throw new InputError(fn, field('ratedCurrentA'), 'below', load.ratedCurrentA, must);
}

/** Throws unless it is a lamp's law. */
export function needLampLaw(fn: string, field: string, law: LampLaw): void {
  needObject(fn, field, law, "must be a lamp's law");
  needAbove(fn, `${field}.currentExponent`, law.currentExponent);
  needBetween(fn, `${field}.currentExponent`, law.currentExponent, 0, 1);
}

/** Where a load settles behind a resistance. */
export interface LoadPoint {
  /** Current in A while it is on: its peak. */
  readonly currentA: number;
  /** Share of the time that it is on. */
  readonly dutyFraction: number;
  /** The other, unstable current that satisfies a constant power, or null. */
  readonly otherCurrentA: number | null;
  /** Speed of a motor in rpm, or null. */
  readonly speedRpm: number | null;
  readonly stalled: boolean;
}

/** Why a load cannot settle, and the most that the line would bear. */
export interface LoadImpossible {
  readonly code: 'no-volts-left' | 'power-beyond-line' | 'below-least-volts';
  readonly because: string;
  readonly mostA: number;
}

/** The current of a load behind a supply and a series resistance, in closed form. */
export function settle(load: Load, supplyV: number, seriesOhm: number): LoadPoint | LoadImpossible {
  switch (load.kind) {
    case 'constant-current': {
      if (load.currentA * seriesOhm < supplyV) return point(load.currentA);
      return {
        code: 'no-volts-left',
        because: `${load.currentA} A through ${seriesOhm} Ω would take the whole ${supplyV} V`,
        mostA: supplyV / seriesOhm,
      };
    }
    case 'resistance':
    case 'heater':
      return point(supplyV / (seriesOhm + load.resistanceOhm));
    case 'solenoid':
      return point(supplyV / (seriesOhm + hotOhm(load.resistanceOhm, load.ratedTempC, load.coilTempC)));
    case 'starter-solenoid':
      return point(supplyV / (seriesOhm + windingsOhm(load)));
    case 'constant-power':
    case 'capacitor-input':
      return settlePower(load.powerW, supplyV, seriesOhm);
    case 'led-driver': {
      const settled = settlePower(load.powerW / load.efficiency, supplyV, seriesOhm);
      if ('code' in settled || supplyV - settled.currentA * seriesOhm >= load.leastV) return settled;
      return {
        code: 'below-least-volts',
        because: `the driver would get ${supplyV - settled.currentA * seriesOhm} V and needs ${load.leastV} V`,
        mostA: seriesOhm > 0 ? Math.max(0, supplyV - load.leastV) / seriesOhm : 0,
      };
    }
    case 'lamp':
      return point(lampA(load, supplyV, seriesOhm));
    case 'motor':
      return settleMotor(load, supplyV, seriesOhm + load.windingResistanceOhm);
    case 'h-bridge-motor': {
      // Current flows in the path while on alone, in the motor all the time: what the motor's means see of the path
      // is its share of the time.
      const { motor, dutyFraction, bridgeResistanceOhm } = load;
      const loopOhm = dutyFraction * seriesOhm + bridgeResistanceOhm + motor.windingResistanceOhm;
      return { ...settleMotor(motor, dutyFraction * supplyV, loopOhm), dutyFraction };
    }
    case 'pwm': {
      const on = settle(load.load, supplyV, seriesOhm);
      return 'code' in on ? on : { ...on, dutyFraction: load.dutyFraction };
    }
  }
}

function point(currentA: number): LoadPoint {
  return { currentA, dutyFraction: 1, otherCurrentA: null, speedRpm: null, stalled: false };
}

/** Resistance of a copper coil at a temperature from that at another. */
export function hotOhm(resistanceOhm: number, ratedTempC: number, coilTempC: number): number {
  return (resistanceOhm * (234.5 + coilTempC)) / (234.5 + ratedTempC);
}

function windingsOhm({ pullInResistanceOhm: p, holdInResistanceOhm: h, stage }: StarterSolenoidLoad): number {
  return stage === 'hold' ? h : (p * h) / (p + h);
}

function settlePower(powerW: number, supplyV: number, seriesOhm: number): LoadPoint | LoadImpossible {
  // R I² − V I + P = 0. The smaller root is written so that R = 0 and tiny R lose no digits.
  const under = supplyV * supplyV - 4 * seriesOhm * powerW;
  if (under < 0) {
    return {
      code: 'power-beyond-line',
      because: `${powerW} W is more than ${supplyV} V can push through ${seriesOhm} Ω (at most ${(supplyV * supplyV) / (4 * seriesOhm)} W)`,
      mostA: supplyV / (2 * seriesOhm),
    };
  }
  const root = Math.sqrt(under);
  return {
    ...point((2 * powerW) / (supplyV + root)),
    otherCurrentA: seriesOhm > 0 ? (supplyV + root) / (2 * seriesOhm) : null,
  };
}

function settleMotor(load: MotorLoad, supplyV: number, loopOhm: number): LoadPoint {
  const ratedEmfV = load.ratedV - load.ratedCurrentA * load.windingResistanceOhm;
  if (load.torque === 'constant') {
    const emfV = supplyV - load.ratedCurrentA * loopOhm;
    if (emfV <= 0) return { ...point(supplyV / loopOhm), speedRpm: 0, stalled: true };
    return { ...point(load.ratedCurrentA), speedRpm: emfV * load.speedConstantRpmPerV };
  }
  // I = k E²: k R E² + E − V = 0, in the form that loses no digits for small k R.
  const k = load.ratedCurrentA / (ratedEmfV * ratedEmfV);
  const emfV = (2 * supplyV) / (1 + Math.sqrt(1 + 4 * k * loopOhm * supplyV));
  return { ...point(k * emfV * emfV), speedRpm: emfV * load.speedConstantRpmPerV };
}

/**
 * Current of a hot lamp behind a resistance: x + c xᵉ = 1 in its share x of the supply. The left side is concave for
 * e ≤ 1, so Newton's steps from below climb to the root and never pass it.
 */
function lampA({ ratedPowerW, ratedV, law }: LampLoad, supplyV: number, seriesOhm: number): number {
  const e = law.currentExponent;
  const whole = (ratedPowerW / ratedV) * (supplyV / ratedV) ** e;
  const c = (whole * seriesOhm) / supplyV;
  let x = Math.min(0.5, (0.5 / c) ** (1 / e));
  if (c === 0 || x === 0) return c === 0 ? whole : supplyV / seriesOhm;
  for (let step = 0; step < 60; step++) {
    const next = x + (1 - x - c * x ** e) / (1 + c * e * x ** (e - 1));
    if (!(next > x)) break;
    x = next;
  }
  return whole * x ** e;
}
