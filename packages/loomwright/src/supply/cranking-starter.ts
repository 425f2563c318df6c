import { InputError } from '../error/index.js';
import { needMoreThan } from '../error/bounded.js';
import { needOneOf } from '../error/guard.js';
import { type Load, type LoadImpossible, settle } from '../load/load.js';

/** A starter taken as a plain resistance, locked or at one speed. */
export interface ResistorStarter {
  readonly kind: 'resistor';
  /** Resistance in Ω, above 0. */
  readonly resistanceOhm: number;
}

/** A starter known by the current that a clamp meter shows while it cranks. */
export interface MeasuredStarter {
  readonly kind: 'measured-current';
  /** Current in A, above 0. */
  readonly currentA: number;
}

/** A starter by its bench test: held fast, and running free. */
export interface MotorStarter {
  /** `permanent-magnet`: torque goes with the current. `series`: with its square, iron not saturated. */
  readonly kind: 'permanent-magnet' | 'series';
  /** Held fast: volts at the starter, and current in A. */
  readonly lockedV: number;
  readonly lockedA: number;
  /** Running free: volts at the starter, current in A, speed in rpm. */
  readonly freeV: number;
  readonly freeA: number;
  readonly freeRpm: number;
  /** Current in A with which it gives the torque that the engine asks for; at least `freeA`. */
  readonly crankingA: number;
  /** Turns of the starter for one of the engine, above 0; left out where the engine's speed is not wanted. */
  readonly gearRatio?: number;
}

export type CrankingStarter = ResistorStarter | MeasuredStarter | MotorStarter;

/** A starter behind a supply and a resistance. */
export interface StarterPoint {
  readonly currentA: number;
  /** Speed in rpm; null where the starter is known by less than a bench test. */
  readonly speedRpm: number | null;
  readonly stalled: boolean;
}

export const isMotor = (starter: CrankingStarter): starter is MotorStarter =>
  starter.kind === 'permanent-magnet' || starter.kind === 'series';

/** Resistance of winding and brushes: all that a rotor held fast leaves. */
export const lockedOhm = ({ lockedV, lockedA }: MotorStarter): number => lockedV / lockedA;

/** Throws unless it is one of the starters, whole and in range. */
export function needStarter(fn: string, starter: CrankingStarter): void {
  if (typeof starter !== 'object' || starter === null) {
    const rule = starter === undefined ? 'missing' : 'object';
    throw new InputError(fn, 'starter', rule, starter, 'must be a starter with a kind');
  }
  needOneOf(fn, 'starter.kind', starter.kind, ['resistor', 'measured-current', 'permanent-magnet', 'series']);
  if (starter.kind === 'resistor') {
    needMoreThan(fn, 'starter.resistanceOhm', starter.resistanceOhm);
    return;
  }
  if (starter.kind === 'measured-current') {
    needMoreThan(fn, 'starter.currentA', starter.currentA);
    return;
  }
  for (const field of ['lockedV', 'lockedA', 'freeV', 'freeA', 'freeRpm', 'crankingA'] as const) {
    needMoreThan(fn, `starter.${field}`, starter[field]);
  }
  if (starter.gearRatio !== undefined) needMoreThan(fn, 'starter.gearRatio', starter.gearRatio);
  const { lockedA, freeV, freeA, crankingA } = starter;
  if (freeA >= lockedA) throw new InputError(fn, 'starter.freeA', 'below', freeA, `must be below lockedA, ${lockedA}`);
  if (crankingA < freeA) {
    throw new InputError(fn, 'starter.crankingA', 'atLeast', crankingA, `must be at least freeA, ${freeA}`);
  }
  const lostV = freeA * lockedOhm(starter);
  if (freeV <= lostV) {
    throw new InputError(
      fn,
      'starter.freeV',
      'above',
      freeV,
      `must be above freeA times the locked resistance, ${lostV}`,
    );
  }
}

/** Speed at a current with so many volts at the starter, not below 0. */
export function speedAt(starter: MotorStarter, starterV: number, currentA: number): number {
  const { kind, freeV, freeA, freeRpm } = starter;
  const ohm = lockedOhm(starter);
  const share = (starterV - currentA * ohm) / (freeV - freeA * ohm);
  return Math.max(0, freeRpm * share * (kind === 'series' ? freeA / currentA : 1));
}

/** Torque at a current over the torque held fast at `lockedA`. */
export function torqueAt({ kind, lockedA, freeA }: MotorStarter, currentA: number): number {
  const n = kind === 'series' ? 2 : 1;
  return (currentA ** n - freeA ** n) / (lockedA ** n - freeA ** n);
}

/** Where the starter settles: the load of the same kind, with the speed of its own law. */
export function settleStarter(
  starter: CrankingStarter,
  openV: number,
  seriesOhm: number,
): StarterPoint | LoadImpossible {
  const point = settle(loadOf(starter), openV, seriesOhm);
  if ('code' in point) return point;
  const { currentA, stalled } = point;
  const speedRpm = !isMotor(starter) ? null : stalled ? 0 : speedAt(starter, openV - currentA * seriesOhm, currentA);
  return { currentA, stalled, speedRpm };
}

function loadOf(starter: CrankingStarter): Load {
  if (starter.kind === 'resistor') return { kind: 'resistance', resistanceOhm: starter.resistanceOhm };
  if (starter.kind === 'measured-current') return { kind: 'constant-current', currentA: starter.currentA };
  // An engine asks for a torque whatever the speed, and torque is current.
  const { freeV, freeRpm, crankingA } = starter;
  return {
    kind: 'motor',
    windingResistanceOhm: lockedOhm(starter),
    speedConstantRpmPerV: freeRpm / freeV,
    ratedCurrentA: crankingA,
    ratedV: freeV,
    torque: 'constant',
  };
}
