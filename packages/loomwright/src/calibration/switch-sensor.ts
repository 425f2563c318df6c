import { InputError } from '../error/index.js';
import { needEarthly, needMoreThan } from '../error/bounded.js';
import { needFunction, needObject, needOneOf } from '../error/guard.js';
import { between, type CalibrationCell, needCells, pieceOf } from '../number/cells.js';
import type { ThermistorCurve } from '../table/index.js';
import type { SensorSide, thermistorInput } from '../temperature/index.js';

/** Whether a sensor gives a share of its supply, or volts whatever the supply. */
export type SensorOutput = 'ratiometric' | 'absolute';

/** A sensor that a load is switched by. */
export type SwitchSensor =
  | {
      readonly kind: 'thermistor';
      /** `thermistorInput`: handed in, so that whoever has no thermistor does not carry it. */
      readonly by: typeof thermistorInput;
      readonly curve: ThermistorCurve;
      readonly side: SensorSide;
      /** Pull resistor in Ω, above 0. */
      readonly pullOhm: number;
    }
  | {
      /** Volts and what is measured there, rising in volts; two points are a straight line. */
      readonly kind: 'points';
      readonly cells: readonly CalibrationCell[];
      readonly output: SensorOutput;
    }
  | {
      /** Volts at one place, what is measured there, and how much more one volt more means, not 0. */
      readonly kind: 'slope';
      readonly inputV: number;
      readonly atValue: number;
      readonly valuePerV: number;
      readonly output: SensorOutput;
    };

/** What a load does to the reading while it runs, besides what it is meant to do. */
export interface TalkBack {
  /** By how much the sensor's ground stands above the controller's, in V: up to half the supply either way. */
  readonly groundShiftV: number;
  /** By how much the sensor's supply moves, in V: below 0 where it sags; up to half the supply either way. */
  readonly supplyShiftV: number;
  /** By how much the sensor is moved directly, in its unit: a load's own heat, the pull of a pump beside it. */
  readonly directShiftValue: number;
}

/** A sensor, its supply, and what the converter compares with: the same supply where `referenceV` is null. */
export interface SensorEnd {
  readonly sensor: SwitchSensor;
  readonly supplyV: number;
  readonly referenceV: number | null;
}

export function needSwitchSensor(fn: string, sensor: SwitchSensor): void {
  needObject(fn, 'sensor', sensor);
  needOneOf(fn, 'sensor.kind', sensor.kind, ['thermistor', 'points', 'slope']);
  if (sensor.kind === 'thermistor') {
    needOneOf(fn, 'sensor.side', sensor.side, ['sensor-to-ground', 'sensor-to-supply']);
    needMoreThan(fn, 'sensor.pullOhm', sensor.pullOhm);
    needObject(fn, 'sensor.curve', sensor.curve);
    needFunction(fn, 'sensor.by', sensor.by, 'thermistorInput');
    return;
  }
  needOneOf(fn, 'sensor.output', sensor.output, ['ratiometric', 'absolute']);
  if (sensor.kind === 'slope') {
    needEarthly(fn, 'sensor.inputV', sensor.inputV);
    needEarthly(fn, 'sensor.atValue', sensor.atValue);
    needEarthly(fn, 'sensor.valuePerV', sensor.valuePerV);
    needMoreThan(fn, 'sensor.valuePerV', Math.abs(sensor.valuePerV));
    return;
  }
  needCells(fn, 'sensor.cells', sensor.cells);
  const [first, second] = sensor.cells as readonly [CalibrationCell, CalibrationCell];
  const way = Math.sign(second.outValue - first.outValue);
  sensor.cells.forEach(({ outValue }, i) => {
    const before = sensor.cells[i - 1];
    if (before !== undefined && !(way * (outValue - before.outValue) > 0)) {
      const must = 'must go the same way as the ones before: a sensor that turns back tells nothing';
      throw new InputError(fn, `sensor.cells[${i}].outValue`, 'order', outValue, must);
    }
  });
}

/** Volts of the sensor undisturbed, or null where its curve or its points do not reach. */
export function voltsOf({ sensor, supplyV }: SensorEnd, value: number): number | null {
  if (sensor.kind === 'slope') return sensor.inputV + (value - sensor.atValue) / sensor.valuePerV;
  if (sensor.kind === 'thermistor') {
    if (!(value > -273 && value < 2000)) return null;
    const { by, curve, side, pullOhm } = sensor;
    const found = by({ curve, side, supplyV, pullOhm, tempC: value, extrapolate: true });
    return found.extrapolated ? null : found.inputV;
  }
  const cells = turned(sensor.cells);
  return within(cells, value);
}

/** What the sensor measures at its undisturbed volts; null likewise. */
export function valueOf({ sensor, supplyV }: SensorEnd, inputV: number): number | null {
  if (sensor.kind === 'slope') return sensor.atValue + (inputV - sensor.inputV) * sensor.valuePerV;
  if (sensor.kind === 'points') return within(sensor.cells, inputV);
  if (!(inputV > 0 && inputV < supplyV)) return null;
  const { by, curve, side, pullOhm } = sensor;
  const found = by({ curve, side, supplyV, pullOhm, inputV, extrapolate: true });
  return found.extrapolated ? null : found.tempC;
}

/** The points by what is measured, rising. */
function turned(cells: readonly CalibrationCell[]): readonly CalibrationCell[] {
  const swapped = cells.map(({ inValue, outValue }): CalibrationCell => ({ inValue: outValue, outValue: inValue }));
  const [first, second] = swapped as [CalibrationCell, CalibrationCell];
  return first.inValue < second.inValue ? swapped : swapped.reverse();
}

function within(cells: readonly CalibrationCell[], place: number): number | null {
  const first = cells[0] as CalibrationCell;
  const last = cells[cells.length - 1] as CalibrationCell;
  if (!(place >= first.inValue && place <= last.inValue)) return null;
  const piece = pieceOf(cells, place);
  return between(cells[piece] as CalibrationCell, cells[piece + 1] as CalibrationCell, place);
}

/**
 * Volts that the controller takes for the sensor's while a load runs. A share of a raised ground adds only what is left
 * above the share; a converter on the sensor's own supply does not see that sag.
 */
export function readV(end: SensorEnd, value: number, by: TalkBack): number | null {
  const own = voltsOf(end, value + by.directShiftValue);
  if (own === null) return null;
  const there = end.supplyV + by.supplyShiftV;
  const pinV = isShare(end) ? own * (there / end.supplyV) + ground(end, by) * (1 - own / end.supplyV) : own + ground(end, by); // prettier-ignore
  return end.referenceV === null ? (pinV * end.supplyV) / there : pinV;
}

/** What is really there when the controller reads these volts while a load runs: `readV` turned round. */
export function trueOf(end: SensorEnd, shownV: number, by: TalkBack): number | null {
  const there = end.supplyV + by.supplyShiftV;
  const pinV = end.referenceV === null ? (shownV * there) / end.supplyV : shownV;
  const g = ground(end, by);
  const own = isShare(end) ? ((pinV - g) * end.supplyV) / (there - g) : pinV - g;
  const value = valueOf(end, own);
  return value === null ? null : value - by.directShiftValue;
}

function isShare({ sensor }: SensorEnd): boolean {
  return sensor.kind === 'thermistor' || sensor.output === 'ratiometric';
}

/** A thermistor to the supply has its pull-down on the controller's own ground. */
function ground({ sensor }: SensorEnd, { groundShiftV }: TalkBack): number {
  return sensor.kind === 'thermistor' && sensor.side === 'sensor-to-supply' ? 0 : groundShiftV;
}
