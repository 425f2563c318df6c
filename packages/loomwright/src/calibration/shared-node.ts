import { InputError } from '../error/index.js';
import { needEarthly, needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needBetween, needObject, needOneOf, needText } from '../error/guard.js';
import { type CalibrationCell, needCells } from '../number/cells.js';

/** A sensor as the wire sees it, fed, and what its supply leaves of it when that is gone. */
export type SharedSensorKind =
  /** A resistance to ground: thermistor, level sender. */
  | { readonly kind: 'resistor'; readonly resistanceOhm: number }
  /**
   * A potentiometer across a supply: its whole resistance, and where the wiper stands, 0 at ground. `deadSupplyOhm` is
   * what lies from its supply wire to ground while the supply is off, at least 0: 0 for a rail that sits at ground,
   * which joins both halves of the track there; null for one that is open, which leaves the lower half.
   */
  | {
      readonly kind: 'potentiometer';
      readonly supplyV: number;
      readonly resistanceOhm: number;
      readonly wiperFraction: number;
      readonly deadSupplyOhm: number | null;
    }
  /**
   * An output that drives volts through its own resistance, above 0. Without its supply it is open up to
   * `deadClampDropV`, above 0, where its protection conducts through the same resistance; null where none does.
   */
  | {
      readonly kind: 'active';
      readonly outV: number;
      readonly sourceOhm: number;
      readonly deadClampDropV: number | null;
    }
  /** A transistor to ground: on, its volts and resistance; off, what leaks through it. Without supply an on one opens. */
  | { readonly kind: 'open-collector-on'; readonly onV: number; readonly onOhm: number }
  | { readonly kind: 'open-collector-off'; readonly leakA: number }
  /** A two-wire sensor that drives a current, as long as the wire stays below `mostV`. Without supply it is open. */
  | { readonly kind: 'current'; readonly currentA: number; readonly mostV: number };

/** One device that listens to the sensor. */
export interface SharedDevice {
  readonly name: string;
  /** Resistance between wire and pin in Ω, at least 0; above 0 where there is a protection diode. */
  readonly seriesOhm: number;
  /** Pull-up from the pin to the device's rail in Ω, above 0; null for none. */
  readonly pullUpOhm: number | null;
  /** Resistance from the pin to ground in Ω, above 0; null for none. */
  readonly pullDownOhm: number | null;
  /** The device's rail in V while it is powered, above 0. Without power the rail is taken as ground. */
  readonly railV: number;
  /** Drop of the protection diode from the pin to the rail in V, above 0; null where there is none. */
  readonly clampDropV: number | null;
  /** What the device shows for the volts at its pin; its readings are then told in its own unit too. */
  readonly cells?: readonly CalibrationCell[];
}

/** The sensor as a current and a conductance. */
interface Norton {
  readonly currentA: number;
  readonly conductanceS: number;
}

/** What one device does at a moment. */
export interface NodeDevice {
  readonly pinV: number;
  /** Current from the wire into the device, and into its protection alone. */
  readonly intoA: number;
  readonly clampA: number;
}

const KINDS = ['resistor', 'potentiometer', 'active', 'open-collector-on', 'open-collector-off', 'current'];

/** Checks a sensor. */
export function needSensor(fn: string, sensor: SharedSensorKind): void {
  needObject(fn, 'sensor', sensor);
  needOneOf(fn, 'sensor.kind', sensor.kind, KINDS);
  switch (sensor.kind) {
    case 'resistor':
      needMoreThan(fn, 'sensor.resistanceOhm', sensor.resistanceOhm);
      return;
    case 'potentiometer':
      needMoreThan(fn, 'sensor.supplyV', sensor.supplyV);
      needMoreThan(fn, 'sensor.resistanceOhm', sensor.resistanceOhm);
      needBetween(fn, 'sensor.wiperFraction', sensor.wiperFraction, 0, 1);
      if (sensor.deadSupplyOhm !== null) needNoLessThan(fn, 'sensor.deadSupplyOhm', sensor.deadSupplyOhm);
      return;
    case 'active':
      needEarthly(fn, 'sensor.outV', sensor.outV);
      needMoreThan(fn, 'sensor.sourceOhm', sensor.sourceOhm);
      if (sensor.deadClampDropV !== null) needMoreThan(fn, 'sensor.deadClampDropV', sensor.deadClampDropV);
      return;
    case 'open-collector-on':
      needNoLessThan(fn, 'sensor.onV', sensor.onV);
      needMoreThan(fn, 'sensor.onOhm', sensor.onOhm);
      return;
    case 'open-collector-off':
      needNoLessThan(fn, 'sensor.leakA', sensor.leakA);
      return;
    case 'current':
      needNoLessThan(fn, 'sensor.currentA', sensor.currentA);
      needMoreThan(fn, 'sensor.mostV', sensor.mostV);
      return;
  }
}

/** Checks a device. */
export function needDevice(fn: string, field: string, device: SharedDevice): void {
  needObject(fn, field, device);
  const { seriesOhm, pullUpOhm, pullDownOhm, railV, clampDropV, cells } = device;
  needText(fn, `${field}.name`, device.name);
  needNoLessThan(fn, `${field}.seriesOhm`, seriesOhm);
  if (pullUpOhm !== null) needMoreThan(fn, `${field}.pullUpOhm`, pullUpOhm);
  if (pullDownOhm !== null) needMoreThan(fn, `${field}.pullDownOhm`, pullDownOhm);
  needMoreThan(fn, `${field}.railV`, railV);
  if (clampDropV !== null) {
    needMoreThan(fn, `${field}.clampDropV`, clampDropV);
    if (seriesOhm < 1e-3) {
      throw new InputError(fn, `${field}.seriesOhm`, 'atLeast', seriesOhm, 'must be at least 0.001 before a diode');
    }
  }
  if (cells !== undefined) needCells(fn, `${field}.cells`, cells);
}

/** The least resistance that a wiper at its end is given: a contact. */
const CONTACT_OHM = 1e-3;

function nortonOf(sensor: SharedSensorKind): Norton {
  const driven = (emfV: number, ohm: number): Norton => ({ currentA: emfV / ohm, conductanceS: 1 / ohm });
  switch (sensor.kind) {
    case 'resistor':
      return driven(0, sensor.resistanceOhm);
    case 'potentiometer': {
      const { supplyV, resistanceOhm, wiperFraction } = sensor;
      const ohm = resistanceOhm * wiperFraction * (1 - wiperFraction);
      return driven(supplyV * wiperFraction, Math.max(ohm, CONTACT_OHM));
    }
    case 'active':
      return driven(sensor.outV, sensor.sourceOhm);
    case 'open-collector-on':
      return driven(sensor.onV, sensor.onOhm);
    case 'open-collector-off':
      return { currentA: -sensor.leakA, conductanceS: 0 };
    case 'current':
      return { currentA: sensor.currentA, conductanceS: 0 };
  }
}

/** The sensor without its supply: what it still joins to ground, and a diode to its dead rail as a pin of its own. */
function deadOf(sensor: SharedSensorKind): readonly [Norton, SharedDevice | null] {
  const open = { currentA: 0, conductanceS: 0 };
  switch (sensor.kind) {
    case 'resistor':
    case 'open-collector-off':
      return [nortonOf(sensor), null];
    case 'potentiometer': {
      const { resistanceOhm, wiperFraction, deadSupplyOhm } = sensor;
      const low = 1 / Math.max(resistanceOhm * wiperFraction, CONTACT_OHM);
      if (deadSupplyOhm === null) return [{ ...open, conductanceS: low }, null];
      const high = 1 / Math.max(resistanceOhm * (1 - wiperFraction) + deadSupplyOhm, CONTACT_OHM);
      return [{ ...open, conductanceS: low + high }, null];
    }
    case 'active': {
      const { sourceOhm, deadClampDropV } = sensor;
      if (deadClampDropV === null) return [open, null];
      const seriesOhm = Math.max(sourceOhm, CONTACT_OHM);
      const bare = { name: '', pullUpOhm: null, pullDownOhm: null, railV: 0 };
      return [open, { ...bare, seriesOhm, clampDropV: deadClampDropV }];
    }
    default:
      return [open, null];
  }
}

/** A device's pin as volts behind a conductance, and where its protection holds it. */
function pinOf(device: SharedDevice, powered: boolean): { s: number; a: number; clampV: number } {
  const railV = powered ? device.railV : 0;
  const up = device.pullUpOhm === null ? 0 : 1 / device.pullUpOhm;
  const down = device.pullDownOhm === null ? 0 : 1 / device.pullDownOhm;
  return { s: up + down, a: up * railV, clampV: device.clampDropV === null ? Infinity : railV + device.clampDropV };
}

export interface NodeState {
  /** Volts of the wire, or null where nothing holds it. */
  readonly nodeV: number | null;
  readonly devices: readonly NodeDevice[];
}

/**
 * Volts of the wire with these devices on it, the sensor fed or not. Each protection diode either conducts or does not; the one choice that
 * agrees with itself is the answer, since every branch draws more as the wire rises.
 */
export function solveNode(
  sensor: SharedSensorKind,
  devices: readonly SharedDevice[],
  powered: readonly boolean[],
  fed: boolean,
): NodeState {
  const [norton, diode] = fed ? [nortonOf(sensor), null] : deadOf(sensor);
  const free = solveWith(norton, diode === null ? devices : [...devices, diode], powered);
  if (sensor.kind === 'open-collector-off' && free.nodeV !== null && free.nodeV < 0) {
    // What leaks goes to ground, and draws nothing below it.
    return solveWith({ currentA: 0, conductanceS: 1 / CONTACT_OHM }, devices, powered);
  }
  if (!fed || sensor.kind !== 'current' || (free.nodeV !== null && free.nodeV <= sensor.mostV)) return free;
  // The sensor has run out of volts: the wire stands where it can still drive it.
  const held: Norton = { currentA: sensor.mostV / CONTACT_OHM, conductanceS: 1 / CONTACT_OHM };
  return solveWith(held, devices, powered);
}

function solveWith(sensor: Norton, devices: readonly SharedDevice[], powered: readonly boolean[]): NodeState {
  const pins = devices.map((device, d) => pinOf(device, powered[d] ?? false));
  let nearest: { readonly state: NodeState; readonly wrong: number } | null = null;
  for (let choice = 0; choice < 1 << devices.length; choice++) {
    let s = sensor.conductanceS;
    let a = sensor.currentA;
    const held = pins.map((pin, d) => ((choice >> d) & 1) === 1 && pin.clampV < Infinity);
    if (held.some((is, d) => !is && ((choice >> d) & 1) === 1)) continue;
    pins.forEach((pin, d) => {
      const series = (devices[d] as SharedDevice).seriesOhm;
      if (held[d] === true) {
        s += 1 / series;
        a += pin.clampV / series;
      } else if (pin.s > 0) {
        const through = 1 / (1 + series * pin.s);
        s += pin.s * through;
        a += pin.a * through;
      }
    });
    if (!(s > 0)) {
      // Nothing holds the wire, and nothing lifts it to a diode.
      if (choice === 0 && a <= 0) break;
      continue;
    }
    const nodeV = a / s;
    let wrong = 0;
    const found = pins.map((pin, d): NodeDevice => {
      const series = (devices[d] as SharedDevice).seriesOhm;
      if (held[d] === true) {
        const intoA = (nodeV - pin.clampV) / series;
        const clampA = intoA + pin.a - pin.s * pin.clampV;
        wrong = Math.max(wrong, -clampA * series);
        return { pinV: pin.clampV, intoA, clampA };
      }
      const pinV = (nodeV + series * pin.a) / (1 + series * pin.s);
      wrong = Math.max(wrong, pinV - pin.clampV);
      return { pinV, intoA: pin.s * pinV - pin.a, clampA: 0 };
    });
    if (nearest === null || wrong < nearest.wrong) nearest = { state: { nodeV, devices: found }, wrong };
  }
  return nearest?.state ?? { nodeV: null, devices: [] };
}
