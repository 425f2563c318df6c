import { type Check, tightestCheck } from '../check/index.js';
import { InputError } from '../error/index.js';
import { needEarthly, needMoreThan } from '../error/bounded.js';
import { needBetween, needInput, needInteger, needList, needObject, needOwnName, needText } from '../error/guard.js';
import { extremes, offsetCures, type OffsetCure, type OffsetLoad, worstOf } from './ground-offset-cures.js';
import {
  offsetChecks,
  type OffsetConverter,
  type OffsetError,
  type OffsetSensor,
  type ReadySensor,
  readySensor,
} from './ground-offset-sensor.js';
import { groundWeb, type GroundPiece } from './ground-web.js';

export interface GroundOffsetErrorInput extends OffsetConverter {
  /** Point where all currents end: the battery's negative post. */
  readonly reference: string;
  /** What the grounds are made of; loops and several ways are allowed. Up to 100 points. */
  readonly pieces: readonly GroundPiece[];
  /** Loads that can be switched on, 1 to 100. */
  readonly loads: readonly OffsetLoad[];
  /** Sensors, 1 to 100. */
  readonly sensors: readonly OffsetSensor[];
  /** Supply of the sensors in V, above 0: what a ratiometric one gives a share of, and what pull-ups hang on. */
  readonly supplyV: number;
  /** Full scale of the controller's converter in V, above 0. */
  readonly referenceV: number;
  /** Bits of the converter, 1 to 32; a count is the reference over 2 to that power. */
  readonly converterBits: number;
}

/** One load and one sensor. */
export interface OffsetPair extends OffsetError {
  readonly load: string;
  /** Share of what the sensor bears in that direction; 0 where it bears anything. Above 1 this load alone is too much. */
  readonly shareFraction: number;
}

/** One sensor, with each load and with all. */
export interface SensorOffset {
  readonly name: string;
  /** Share of a shift of its ground that reaches its reading. */
  readonly passedFraction: number;
  /** What it shows without loads; null without a scale of points or a function. */
  readonly trueValue: number | null;
  /** Each load alone, in their order. */
  readonly pairs: readonly OffsetPair[];
  /** All loads on; only those that raise the sensor's ground; only those that lower it; the worse of these two. */
  readonly all: OffsetError;
  readonly raised: OffsetError;
  readonly lowered: OffsetError;
  readonly worst: OffsetError;
  /** The load that takes the largest share of what it bears; null where none shifts it. */
  readonly worstLoad: string | null;
  /** Largest shift upwards and downwards that meets all its limits, in mV; null where any does. */
  readonly mostRaisedMv: number | null;
  readonly mostLoweredMv: number | null;
  /** Ways to mend it; none where it meets its limits. */
  readonly cures: readonly OffsetCure[];
  readonly checks: readonly Check[];
}

export interface GroundOffsetErrorResult {
  readonly sensors: readonly SensorOffset[];
  /** Of all pairs the one that takes the largest share of what the sensor bears; null where no load shifts any. */
  readonly worstLoad: string | null;
  readonly worstSensor: string | null;
  readonly checks: readonly Check[];
  readonly decidedBy: string;
}

/**
 * By how much each load that switches on moves each sensor: the matrix of loads and sensors, and what would mend it.
 *
 * A load's current comes back through straps that a sensor's ground may hang on. That lifts the sensor's ground above
 * the controller's. **A shift is counted upwards: above 0 where the sensor's ground stands above the controller's.**
 * Sensors with volts of their own take over all of it, shares of the controller's supply what is left above the share,
 * and two wires read as a pair nothing. Each load alone, all together, and the worst of all combinations are told in mV,
 * counts and the sensor's unit, along its own curve and not by its slope.
 *
 * $$e = \sum_l I_l\,(u_S - u_C)^\mathsf{T} G^{-1} u_l \qquad \Delta V = e\left(1 - \frac{V}{S}\right)\ \text{or}\ e\ \text{or}\ 0$$
 *
 * A strap of $r$ between both grounds leaves $e\,r/(r + z)$, with $z$ what is between them without it.
 *
 * @param input grounds, loads, sensors with their limits, supply and converter
 * @returns each sensor with each load, all loads and the worst of them, what it bears, cures; the worst pair; checks
 * @throws InputError when a field is missing or out of range, a name is there twice, a point is not on the grounds, or a
 * sensor reads outside its scale
 * @source circuit-theory (node equations; one branch added as Sherman and Morrison do)
 * @example groundOffsetError({ reference: 'post', pieces: [{ name: 'strap', from: 'engine', to: 'post', resistanceOhm: 0.002 }], loads: [{ name: 'fan', returnsAt: 'engine', currentA: 20 }], sensors: [{ name: 'pressure', groundAt: 'engine', controllerAt: 'post', groundedBy: 'wire', reads: 'ratiometric', inputV: 2, permittedMv: 20 }], supplyV: 5, referenceV: 5, converterBits: 10 }).sensors[0].worst.errorMv //=> 24
 */
export function groundOffsetError(input: GroundOffsetErrorInput): GroundOffsetErrorResult {
  const fn = 'groundOffsetError';
  needInput(fn, input);
  const { reference, pieces, loads } = input;
  const web = groundWeb(fn, reference, pieces);
  const ready = guard(fn, input, web.has);
  const offsets = ready.map((each): SensorOffset => {
    const { sensor, passedFraction, trueValue, errorOf, shareOf, mostRaisedV, mostLoweredV } = each;
    const { groundAt, controllerAt } = sensor;
    const shiftsV = loads.map(
      ({ returnsAt, currentA }) => currentA * web.ohmOf(groundAt, controllerAt, returnsAt, reference),
    );
    const pairs = loads.map(({ name }, l): OffsetPair => {
      const shiftV = shiftsV[l] as number;
      return { load: name, shareFraction: shareOf(...extremes([shiftV])), ...errorOf(shiftV) };
    });
    const [raisedV, loweredV] = extremes(shiftsV);
    const raised = errorOf(raisedV);
    const lowered = errorOf(loweredV);
    const checks = offsetChecks(each, raised, lowered);
    return {
      name: sensor.name,
      passedFraction,
      trueValue,
      pairs,
      all: errorOf(raisedV + loweredV),
      raised,
      lowered,
      worst: worstOf(each, shiftsV),
      worstLoad: heaviest(pairs)?.load ?? null,
      mostRaisedMv: mostRaisedV === null ? null : mostRaisedV * 1000,
      mostLoweredMv: mostLoweredV === null ? null : mostLoweredV * 1000,
      cures: checks.every(({ ok }) => ok) ? [] : offsetCures(web, pieces, loads, each, shiftsV),
      checks,
    };
  });
  const checks = offsets.flatMap((offset) => offset.checks);
  const worst = heaviest(offsets.flatMap(({ name, pairs }) => pairs.map((pair) => ({ ...pair, name }))));
  return {
    sensors: offsets,
    worstLoad: worst?.load ?? null,
    worstSensor: worst?.name ?? null,
    checks,
    decidedBy: tightestCheck(checks)?.name ?? '',
  };
}

/** The pair that takes the largest share of what is borne; among equal ones the larger shift. */
function heaviest<P extends OffsetPair>(pairs: readonly P[]): P | null {
  let most: P | null = null;
  for (const pair of pairs) {
    if (pair.shiftMv === 0) continue;
    const more = pair.shareFraction - (most?.shareFraction ?? -1);
    if (more > 0 || (more === 0 && Math.abs(pair.shiftMv) > Math.abs(most?.shiftMv ?? 0))) most = pair;
  }
  return most;
}

function guard(fn: string, input: GroundOffsetErrorInput, has: (point: string) => boolean): readonly ReadySensor[] {
  const { loads, sensors, converterBits } = input;
  needMoreThan(fn, 'supplyV', input.supplyV);
  needMoreThan(fn, 'referenceV', input.referenceV);
  needInteger(fn, 'converterBits', converterBits, 1);
  needBetween(fn, 'converterBits', converterBits, 1, 32);
  const onWeb = (field: string, point: string): void => {
    if (!has(point)) throw new InputError(fn, field, 'inTable', point, 'must be a point of the grounds');
  };
  needFew(fn, 'loads', loads);
  needFew(fn, 'sensors', sensors);
  const loadNames = new Set<string>();
  loads.forEach((load, l) => {
    needObject(fn, `loads[${l}]`, load);
    needOwnName(fn, `loads[${l}].name`, load.name, loadNames);
    needText(fn, `loads[${l}].returnsAt`, load.returnsAt);
    onWeb(`loads[${l}].returnsAt`, load.returnsAt);
    needEarthly(fn, `loads[${l}].currentA`, load.currentA);
  });
  const sensorNames = new Set<string>();
  return sensors.map((sensor, s) => {
    const found = readySensor(fn, `sensors[${s}]`, sensor, input);
    needOwnName(fn, `sensors[${s}].name`, sensor.name, sensorNames);
    onWeb(`sensors[${s}].groundAt`, sensor.groundAt);
    onWeb(`sensors[${s}].controllerAt`, sensor.controllerAt);
    return found;
  });
}

function needFew(fn: string, field: string, list: readonly unknown[]): void {
  needList(fn, field, list, 1);
  if (list.length > 100) throw new InputError(fn, field, 'list', list, 'must have at most 100 entries');
}
