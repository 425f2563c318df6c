import { needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needBetween, needObject } from '../error/guard.js';

/** A battery that is charged: volts rise in a straight line with its charge, behind a resistance. */
export interface SplitBattery {
  /** Charge of the full battery in Ah, above 0, and how much of it there is, 0 to 1. */
  readonly chargeAh: number;
  readonly chargeFraction: number;
  /** Resistance inside it in Ω, above 0. */
  readonly resistanceOhm: number;
  /** Volts at rest when empty, above 0, and when full, above that. */
  readonly emptyV: number;
  readonly restFullV: number;
  /** Volts at which it takes its last charge: what its maker asks for. At least those at rest when full. */
  readonly chargeFullV: number;
  /** Volts that it must never have, at least `chargeFullV`. */
  readonly mostV: number;
  /** Charge kept over charge put in, above 0 and at most 1: about 0.85 for lead. */
  readonly chargeEfficiency: number;
  /** Most current that it takes or is allowed in A, above 0; null where its resistance alone decides. */
  readonly acceptanceA: number | null;
}

/** A battery at one charge, as the circuit sees it. */
export interface BatteryPoint {
  /** Volts above which it takes current; null where it takes none. Volts below which it gives some. */
  readonly chargeV: number | null;
  readonly restV: number;
  readonly resistanceOhm: number;
  readonly acceptanceA: number | null;
}

/** What hangs behind volts and a resistance: a battery and its loads. */
export interface BranchPoint {
  /** Current into the branch, and of that into the battery, below 0 where it gives. */
  readonly currentA: number;
  readonly batteryA: number;
  readonly batteryV: number;
}

/** Volts on one of its two straight lines. */
export function lineV(
  { emptyV, restFullV, chargeFullV }: SplitBattery,
  line: 'rest' | 'charge',
  share: number,
): number {
  return emptyV + ((line === 'rest' ? restFullV : chargeFullV) - emptyV) * share;
}

/** The battery at a charge. A full one takes nothing. */
export function batteryAt(battery: SplitBattery, share: number): BatteryPoint {
  const { resistanceOhm, acceptanceA } = battery;
  const chargeV = share >= 1 ? null : lineV(battery, 'charge', share);
  return { chargeV, restV: lineV(battery, 'rest', Math.min(share, 1)), resistanceOhm, acceptanceA };
}

/** Current into a battery with these volts behind a resistance; between its two lines there is none. */
function batteryCurrent(
  { chargeV, restV, resistanceOhm, acceptanceA }: BatteryPoint,
  openV: number,
  ohm: number,
): number {
  if (openV < restV) return (openV - restV) / (ohm + resistanceOhm);
  if (chargeV === null || openV <= chargeV) return 0;
  return Math.min((openV - chargeV) / (ohm + resistanceOhm), acceptanceA ?? Infinity);
}

/** A battery with its loads behind volts and a resistance; behind a diode nothing comes back. */
export function branchBehind(
  feedV: number,
  ohm: number,
  diodeV: number | null,
  battery: BatteryPoint,
  loadA: number,
): BranchPoint {
  const openV = feedV - (diodeV ?? 0) - ohm * loadA;
  const batteryA = batteryCurrent(battery, openV, ohm);
  if (diodeV !== null && batteryA + loadA < 0) return alone(battery, loadA);
  return { currentA: batteryA + loadA, batteryA, batteryV: openV - ohm * batteryA };
}

/** The battery by itself, with its loads. */
export function alone({ restV, resistanceOhm }: BatteryPoint, loadA: number): BranchPoint {
  return { currentA: 0, batteryA: loadA === 0 ? 0 : -loadA, batteryV: restV - resistanceOhm * loadA };
}

/** The battery at a current of its own. */
export function voltsAt({ chargeV, restV, resistanceOhm }: BatteryPoint, batteryA: number): number {
  return (batteryA > 0 ? (chargeV ?? restV) : restV) + resistanceOhm * batteryA;
}

export function needSplitBattery(fn: string, at: string, battery: SplitBattery): void {
  needObject(fn, at, battery);
  needMoreThan(fn, `${at}.chargeAh`, battery.chargeAh);
  needBetween(fn, `${at}.chargeFraction`, battery.chargeFraction, 0, 1, '80 % is 0.8');
  needMoreThan(fn, `${at}.resistanceOhm`, battery.resistanceOhm);
  needMoreThan(fn, `${at}.emptyV`, battery.emptyV);
  needMoreThan(fn, `${at}.restFullV`, battery.restFullV, battery.emptyV);
  needNoLessThan(fn, `${at}.chargeFullV`, battery.chargeFullV, battery.restFullV);
  needNoLessThan(fn, `${at}.mostV`, battery.mostV, battery.chargeFullV);
  needMoreThan(fn, `${at}.chargeEfficiency`, battery.chargeEfficiency);
  needBetween(fn, `${at}.chargeEfficiency`, battery.chargeEfficiency, 0, 1);
  if (battery.acceptanceA !== null) needMoreThan(fn, `${at}.acceptanceA`, battery.acceptanceA);
}
