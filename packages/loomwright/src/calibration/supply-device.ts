import { InputError } from '../error/index.js';
import { needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needBetween, needList, needObject, needOneOf, needOwnName, needText } from '../error/guard.js';
import { type CalibrationCell, clamped, needCells } from '../number/cells.js';
import type { DrawLaw, SupplyLimiter } from './supply-law.js';

/** What a device takes from its five volts. */
export type SupplyDraw =
  /** A sensor with electronics in it: its current down to the volts that it works from, and less in proportion below. */
  | { readonly kind: 'current'; readonly currentA: number; readonly worksFromV: number }
  /** A potentiometer: its whole track. */
  | { readonly kind: 'resistance'; readonly resistanceOhm: number }
  /** A pull-up, and the least resistance to ground of what it pulls up: 0 for a switch. */
  | { readonly kind: 'pull-up'; readonly pullOhm: number; readonly leastSensorOhm: number }
  /** A light-emitting diode and its resistor. */
  | { readonly kind: 'led'; readonly resistanceOhm: number; readonly forwardV: number };

/** What a device gives back: a share of its supply, or volts of its own. */
export type SupplyOutput =
  { readonly kind: 'share'; readonly outFraction: number } | { readonly kind: 'volts'; readonly outV: number };

/** One thing that hangs on a pin. */
export interface SupplyDevice {
  readonly name: string;
  readonly pin: string;
  readonly draw: SupplyDraw;
  /** Tolerance of its current or of its resistances as a fraction, 0 to below 1. */
  readonly toleranceFraction: number;
  /** Its current on the coldest and on the hottest day over that of the marking, above 0; 1 unless given. */
  readonly coldFactor?: number;
  readonly hotFactor?: number;
  /** What it is one of several tracks of: those stand on pins of their own. */
  readonly trackOf?: string;
  /** Whether its wire cannot be led to another pin; it can unless given. */
  readonly fixed?: boolean;
  /** What it gives back now, for the faults; nothing is told of its reading unless given. */
  readonly output?: SupplyOutput;
  /** What the controller shows for the volts that it reads; its end cells outside. */
  readonly cells?: readonly CalibrationCell[];
  /** Most supply that it stands, in V; null where nobody knows. */
  readonly standsV: number | null;
}

/** One pin that gives five volts. */
export interface SupplyPin {
  readonly name: string;
  /** What it may carry all the time, in A, above 0. */
  readonly limitA: number;
  /** What it does beyond; null where it is the rail itself, with no limiter of its own. */
  readonly limiter: SupplyLimiter | null;
  /**
   * Drop in V, at least 0, behind which volts from outside get into the rail; null where the pin blocks them, which one
   * without a limiter of its own cannot.
   */
  readonly backDropV: number | null;
}

/** The regulator behind all pins. */
export interface SupplyRegulator {
  /** What it may carry all the time, the controller's own current in it, in A, above 0. */
  readonly limitA: number;
  readonly limiter: SupplyLimiter;
  /** What the controller itself takes from it, in A, at least 0. */
  readonly ownA: number;
  /** Volts that the controller's own reading works from, at least 0, and the most that it stands; null for unknown. */
  readonly worksFromV: number;
  readonly standsV: number | null;
}

/** What a device takes: as marked, or at the worst corner of its tolerance. */
export function lawOf({ draw, toleranceFraction }: SupplyDevice, corner: 'marked' | 'worst'): DrawLaw {
  const off = corner === 'marked' ? 0 : toleranceFraction;
  if (draw.kind === 'current') {
    return { bendV: draw.worksFromV, lowAPerV: (draw.currentA * (1 + off)) / draw.worksFromV, highAPerV: 0 };
  }
  const ohm = draw.kind === 'pull-up' ? draw.pullOhm + draw.leastSensorOhm : draw.resistanceOhm;
  const bendV = draw.kind === 'led' ? draw.forwardV : 0;
  return { bendV, lowAPerV: 0, highAPerV: 1 / (ohm * (1 - off)) };
}

/** Least volts that a device works from: where a diode begins to light; 0 for what has no electronics in it. */
export function worksFrom({ draw }: SupplyDevice): number {
  if (draw.kind === 'led') return draw.forwardV;
  return draw.kind === 'current' ? draw.worksFromV : 0;
}

/** What the controller takes a device's volts for, with its own reference where that is: null without an output. */
export function shownV(device: SupplyDevice, supplyV: number, deviceV: number, referenceV: number): number | null {
  const { output } = device;
  if (output === undefined || deviceV < worksFrom(device) || !(referenceV > 0)) return null;
  const outV = output.kind === 'share' ? output.outFraction * deviceV : output.outV;
  return Math.min((outV / referenceV) * supplyV, supplyV);
}

export function shownValue({ cells }: SupplyDevice, readV: number | null): number | null {
  return cells === undefined || readV === null ? null : clamped(cells, readV);
}

export function needLimiter(fn: string, field: string, limiter: SupplyLimiter): void {
  needObject(fn, field, limiter);
  needOneOf(fn, `${field}.kind`, limiter.kind, ['constant', 'foldback', 'off']);
  if (limiter.kind === 'constant') needMoreThan(fn, `${field}.mostA`, limiter.mostA);
  else if (limiter.kind === 'off') needMoreThan(fn, `${field}.tripA`, limiter.tripA);
  else {
    needMoreThan(fn, `${field}.kneeA`, limiter.kneeA);
    needBetween(fn, `${field}.shortA`, limiter.shortA, 0, limiter.kneeA);
  }
}

const MOST_PINS = 8;
const MOST_DEVICES = 24;

export function needPins(fn: string, pins: readonly SupplyPin[]): void {
  needList(fn, 'pins', pins, 1);
  if (pins.length > MOST_PINS) throw new InputError(fn, 'pins', 'list', pins, `must have at most ${MOST_PINS} entries`);
  const names = new Set<string>();
  pins.forEach((pin, p) => {
    needObject(fn, `pins[${p}]`, pin);
    needOwnName(fn, `pins[${p}].name`, pin.name, names);
    needMoreThan(fn, `pins[${p}].limitA`, pin.limitA);
    if (pin.limiter !== null) needLimiter(fn, `pins[${p}].limiter`, pin.limiter);
    if (pin.backDropV !== null) needNoLessThan(fn, `pins[${p}].backDropV`, pin.backDropV);
    else if (pin.limiter === null) {
      const must = 'must be a number where the pin is the rail itself, which blocks nothing';
      throw new InputError(fn, `pins[${p}].backDropV`, 'range', pin.backDropV, must, '0 where nothing lies between');
    }
  });
}

export function needDevices(fn: string, devices: readonly SupplyDevice[], pins: readonly SupplyPin[]): void {
  needList(fn, 'devices', devices, 1);
  if (devices.length > MOST_DEVICES) {
    throw new InputError(fn, 'devices', 'list', devices, `must have at most ${MOST_DEVICES} entries`);
  }
  const names = new Set<string>();
  devices.forEach((device, d) => {
    const at = `devices[${d}]`;
    needObject(fn, at, device);
    const { name, pin, toleranceFraction, coldFactor, hotFactor, trackOf, output, cells, standsV } = device;
    needOwnName(fn, `${at}.name`, name, names);
    if (!pins.some((each) => each.name === pin)) {
      throw new InputError(fn, `${at}.pin`, 'inTable', pin, 'must be the name of a pin');
    }
    needDraw(fn, `${at}.draw`, device.draw);
    needNoLessThan(fn, `${at}.toleranceFraction`, toleranceFraction);
    if (toleranceFraction >= 1) {
      const hint = '5 % is 0.05';
      throw new InputError(fn, `${at}.toleranceFraction`, 'below', toleranceFraction, 'must be below 1', hint);
    }
    if (coldFactor !== undefined) needMoreThan(fn, `${at}.coldFactor`, coldFactor);
    if (hotFactor !== undefined) needMoreThan(fn, `${at}.hotFactor`, hotFactor);
    if (trackOf !== undefined) needText(fn, `${at}.trackOf`, trackOf);
    if (output !== undefined) {
      needObject(fn, `${at}.output`, output);
      needOneOf(fn, `${at}.output.kind`, output.kind, ['share', 'volts']);
      if (output.kind === 'share') needBetween(fn, `${at}.output.outFraction`, output.outFraction, 0, 1);
      else needNoLessThan(fn, `${at}.output.outV`, output.outV);
    }
    if (cells !== undefined) needCells(fn, `${at}.cells`, cells);
    if (standsV !== null) needMoreThan(fn, `${at}.standsV`, standsV);
  });
}

function needDraw(fn: string, at: string, draw: SupplyDraw): void {
  needObject(fn, at, draw);
  needOneOf(fn, `${at}.kind`, draw.kind, ['current', 'resistance', 'pull-up', 'led']);
  switch (draw.kind) {
    case 'current':
      needMoreThan(fn, `${at}.currentA`, draw.currentA);
      needMoreThan(fn, `${at}.worksFromV`, draw.worksFromV);
      return;
    case 'resistance':
      needMoreThan(fn, `${at}.resistanceOhm`, draw.resistanceOhm);
      return;
    case 'pull-up':
      needMoreThan(fn, `${at}.pullOhm`, draw.pullOhm);
      needNoLessThan(fn, `${at}.leastSensorOhm`, draw.leastSensorOhm);
      return;
    case 'led':
      needMoreThan(fn, `${at}.resistanceOhm`, draw.resistanceOhm);
      needNoLessThan(fn, `${at}.forwardV`, draw.forwardV);
      return;
  }
}
