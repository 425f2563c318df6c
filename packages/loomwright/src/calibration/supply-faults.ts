import {
  lawOf,
  shownV,
  shownValue,
  type SupplyDevice,
  type SupplyPin,
  type SupplyRegulator,
  worksFrom,
} from './supply-device.js';
import { bendsOf, type DrawLaw, drawnA, pinVolts, railA, railBends, railVolts, restV } from './supply-law.js';

/** What a fault is worked out with. */
export interface SupplyFaultInput {
  readonly supplyV: number;
  readonly regulator: SupplyRegulator;
  readonly pins: readonly SupplyPin[];
  readonly devices: readonly SupplyDevice[];
  /** What the converter compares with: the sensors' own rail, or a reference of its own. */
  readonly reference: 'rail' | 'own';
  readonly shortOhm: number;
  readonly batteryV: number;
  readonly allowedErrorV: number;
}

/** One device in a fault. */
export interface SupplyFaultDevice {
  readonly name: string;
  readonly pin: string;
  /** Volts of its supply. */
  readonly deviceV: number;
  /**
   * Works as before; reads off by more than is allowed; has too little to work; has more than it stands; or would work,
   * and the controller does not: its own rail is too low or too high to read anything.
   */
  readonly state: 'works' | 'reads-off' | 'dead' | 'over-volts' | 'unread';
  /** What the controller takes its volts for, and shows; null where its electronics are dead, or nothing was said of it. */
  readonly shownV: number | null;
  readonly shownValue: number | null;
  /** By how much that is off what it would be without the fault. */
  readonly errorV: number | null;
  readonly errorValue: number | null;
}

/** One fault of the wiring of one pin: it is the same whichever device's wire has it. */
export interface SupplyFault {
  readonly fault: 'short-to-ground' | 'short-to-battery';
  readonly pin: string;
  /** Volts of that pin and of the rail behind all pins. */
  readonly pinV: number;
  readonly railV: number;
  /** Current through the fault, and what comes through the pin into the rail, in A. */
  readonly faultA: number;
  readonly backA: number;
  readonly pins: readonly { readonly name: string; readonly pinV: number; readonly currentA: number }[];
  readonly devices: readonly SupplyFaultDevice[];
}

/** One pin's wiring to ground and to the battery. Devices take what they are marked with. */
export function supplyFaults(input: SupplyFaultInput): readonly SupplyFault[] {
  return input.pins.flatMap((_, p) => [shortToGround(input, p), shortToBattery(input, p)]);
}

interface Nets {
  readonly nets: readonly { readonly limiter: SupplyPin['limiter']; readonly laws: readonly DrawLaw[] }[];
  readonly own: DrawLaw;
}

function netsOf({ supplyV, regulator, pins, devices }: SupplyFaultInput): Nets {
  const nets = pins.map(({ name, limiter }) => ({
    limiter,
    laws: devices.filter(({ pin }) => pin === name).map((device) => lawOf(device, 'marked')),
  }));
  // The controller takes its current at full volts, and less in proportion below.
  return { nets, own: { bendV: supplyV, lowAPerV: regulator.ownA / supplyV, highAPerV: 0 } };
}

function shortToGround(input: SupplyFaultInput, p: number): SupplyFault {
  const { supplyV, regulator, shortOhm } = input;
  const { nets, own } = netsOf(input);
  const short: DrawLaw = { bendV: 0, lowAPerV: 0, highAPerV: 1 / shortOhm };
  const shorted = nets.map((net, i) => (i === p ? { ...net, laws: [...net.laws, short] } : net));
  const railV = railVolts(shorted, own, regulator.limiter, supplyV);
  const pinsV = shorted.map((net) => pinVolts(net, supplyV, railV));
  const faultA = (pinsV[p] as number) / shortOhm;
  return told(input, p, 'short-to-ground', { railV, pinsV, faultA, backA: 0 });
}

function shortToBattery(input: SupplyFaultInput, p: number): SupplyFault {
  const { supplyV, regulator, pins, shortOhm, batteryV } = input;
  const { nets, own } = netsOf(input);
  const { laws } = nets[p] as Nets['nets'][number];
  const others = nets.filter((_, i) => i !== p);
  const { backDropV } = pins[p] as SupplyPin;
  const backA = (pinV: number): number => {
    if (backDropV === null || pinV - backDropV <= supplyV) return 0;
    return railA(others, own, supplyV, pinV - backDropV);
  };
  const balance = (v: number): number => drawnA(laws, v) + backA(v) - (batteryV - v) / shortOhm;
  const shiftV = backDropV ?? 0;
  const behind = railBends(others, own, supplyV, batteryV).map((v) => v + shiftV);
  // Without the fault the pin stands where its regulator and its limiter leave it: the battery can only raise it.
  const railNowV = railVolts(nets, own, regulator.limiter, supplyV);
  const nowV = pinVolts(nets[p] as Nets['nets'][number], supplyV, railNowV);
  const pinV = Math.max(nowV, restV(balance, batteryV, [...bendsOf(laws), ...behind]));
  const railV = backDropV === null ? railNowV : Math.max(railNowV, pinV - backDropV);
  const pinsV = nets.map((net, i) => (i === p ? pinV : pinVolts(net, supplyV, railV)));
  const faultA = (batteryV - pinV) / shortOhm;
  const given = faultA - drawnA(laws, pinV);
  const feeds = backDropV !== null && pinV - backDropV >= supplyV * (1 - 1e-12) && given > 0;
  return told(input, p, 'short-to-battery', { railV, pinsV, faultA, backA: feeds ? given : 0 });
}

function told(
  input: SupplyFaultInput,
  p: number,
  fault: SupplyFault['fault'],
  found: { readonly railV: number; readonly pinsV: readonly number[]; readonly faultA: number; readonly backA: number },
): SupplyFault {
  const { supplyV, pins, devices, reference, allowedErrorV, regulator } = input;
  const { railV, pinsV, faultA, backA } = found;
  const isUnread = reference === 'rail' && !(railV >= regulator.worksFromV && railV <= (regulator.standsV ?? railV));
  const { nets } = netsOf(input);
  return {
    fault,
    pin: (pins[p] as SupplyPin).name,
    pinV: pinsV[p] as number,
    railV,
    faultA,
    backA,
    pins: pins.map(({ name }, i) => {
      const pinV = pinsV[i] as number;
      return { name, pinV, currentA: drawnA((nets[i] as Nets['nets'][number]).laws, pinV) };
    }),
    devices: devices.map((device) => {
      const deviceV = pinsV[pins.findIndex(({ name }) => name === device.pin)] as number;
      const readV = isUnread ? null : shownV(device, supplyV, deviceV, reference === 'rail' ? railV : supplyV);
      const usualV = shownV(device, supplyV, supplyV, supplyV);
      const errorV = readV === null || usualV === null ? null : readV - usualV;
      const value = shownValue(device, readV);
      const usual = shownValue(device, usualV);
      const { standsV } = device;
      const isDead = deviceV < worksFrom(device) || deviceV === 0;
      const isOff = errorV !== null && Math.abs(errorV) > allowedErrorV;
      return {
        name: device.name,
        pin: device.pin,
        deviceV,
        state: stateOf(standsV !== null && deviceV > standsV, isDead, isUnread && device.draw.kind !== 'led', isOff),
        shownV: readV,
        shownValue: value,
        errorV,
        errorValue: value === null || usual === null ? null : value - usual,
      };
    }),
  };
}

/** The worst first. */
function stateOf(isOver: boolean, isDead: boolean, isUnread: boolean, isOff: boolean): SupplyFaultDevice['state'] {
  if (isOver) return 'over-volts';
  if (isDead) return 'dead';
  if (isUnread) return 'unread';
  return isOff ? 'reads-off' : 'works';
}
