import { type Check, makeCheck, type NotPossible, tightestCheck } from '../check/index.js';
import { InputError } from '../error/index.js';
import { needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needInput, needOneOf } from '../error/guard.js';
import { type Interval, shareOf, spread } from '../number/interval.js';
import type { ThermistorCurve } from '../table/index.js';
import { type SensorSide, thermistorTemperature } from '../temperature/index.js';
import { short } from '../number/short.js';

export interface FaultBandsInput {
  /** Whether the sensor goes to ground, with a pull-up, or to the supply, with a pull-down. */
  readonly side: SensorSide;
  /** What sensor and pull hang on, in V, above 0. */
  readonly supplyV: number;
  /** Pull resistor in Ω, above 0, and its tolerance as a fraction, 0 to below 1. */
  readonly pullOhm: number;
  readonly pullToleranceFraction: number;
  /** Least and most resistance of a healthy sensor in Ω, its tolerance and the coldest and hottest day included. */
  readonly lowestSensorOhm: number;
  readonly highestSensorOhm: number;
  /** Most resistance that a shorted wire may have, in Ω, at least 0. */
  readonly shortMostOhm: number;
  /** Least resistance that a broken wire may have, in Ω: damp; null for dry. */
  readonly openLeastOhm: number | null;
  /** Room that each limit must keep on both sides, in V, at least 0. */
  readonly guardV: number;
  /** Limits that are set already, in V: both or neither. Without them each is put into the middle of its room. */
  readonly lowLimitV?: number;
  readonly highLimitV?: number;
  /** The sensor's curve, to say what the limits are in °C. */
  readonly curve?: ThermistorCurve;
}

export interface FaultBands {
  readonly possible: true;
  /** Below this the input calls a fault, and above that. */
  readonly lowLimitV: number;
  readonly highLimitV: number;
  /** The same as a fraction of the supply: what a ratiometric converter compares. */
  readonly lowLimitFraction: number;
  readonly highLimitFraction: number;
  /** What the sensor would have to be to read so, in Ω, the pull as marked. */
  readonly lowLimitOhm: number;
  readonly highLimitOhm: number;
  /** The same in °C, beyond the curve where need be; null without a curve. */
  readonly lowLimitTempC: number | null;
  readonly highLimitTempC: number | null;
  /** Lowest and highest reading of a healthy sensor, at the corners of the pull. */
  readonly healthyLowV: number;
  readonly healthyHighV: number;
  /** Highest reading of the fault below, and lowest of the fault above. */
  readonly lowFaultV: number;
  readonly highFaultV: number;
  /** Which fault lies below; the other one lies above. */
  readonly lowFault: 'short' | 'open';
  readonly checks: readonly Check[];
  readonly decidedBy: string;
}

export type FaultBandsResult = FaultBands | NotPossible<FaultBands>;

/**
 * Limits that tell a broken or shorted wire from a sensor on a cold or a hot day.
 *
 * A limit in volts means another resistance with each pull-up, so it follows from the sensor's range and its pull, and
 * from nothing else. A limit that was right for another pull-up takes a healthy sensor for a broken wire in winter.
 *
 * $$V = V_s\,\frac{R}{R + R_\mathrm{pull}}\ \text{(to ground)} \qquad R_\mathrm{limit} = R_\mathrm{pull}\,\frac{V}{V_s - V}$$
 *
 * @param input divider, range of the sensor, what a short and a broken wire may have, guard, limits where set already
 * @returns limits in V, as a fraction, in Ω and °C, healthy and faulty readings, checks; or not possible, because,
 * with the limits that come nearest
 * @throws InputError when a field is missing or out of range, or one limit is given without the other
 * @source circuit-theory; corners by interval arithmetic, exact because each resistor is named once
 * @example faultBands({ side: 'sensor-to-ground', supplyV: 5, pullOhm: 2490, pullToleranceFraction: 0, lowestSensorOhm: 89, highestSensorOhm: 45313, shortMostOhm: 5, openLeastOhm: null, guardV: 0.05, lowLimitV: 0.1, highLimitV: 4.8 }).highLimitOhm //=> 59760
 */
export function faultBands(input: FaultBandsInput): FaultBandsResult {
  const bands = bandsOf(guard(input));
  const failed = bands.checks.filter((check) => !check.ok);
  const [worst] = failed;
  if (worst === undefined) return bands;
  const because = failed
    .map(({ name, value }) => `${name}: ${short(value as number)} V, wanted ${input.guardV} V`)
    .join('; ');
  return { possible: false, code: CODES[worst.name] as string, because, nearest: bands };
}

const CODES: Readonly<Record<string, string>> = {
  'room above the fault below': 'fault-reads-as-healthy',
  'room below the fault above': 'fault-reads-as-healthy',
  'room below the healthy readings': 'healthy-reads-as-fault',
  'room above the healthy readings': 'healthy-reads-as-fault',
};

function guard(input: FaultBandsInput): FaultBandsInput {
  const fn = 'faultBands';
  needInput(fn, input);
  const { supplyV, pullToleranceFraction, lowLimitV, highLimitV } = input;
  needOneOf(fn, 'side', input.side, ['sensor-to-ground', 'sensor-to-supply']);
  needMoreThan(fn, 'supplyV', supplyV);
  needMoreThan(fn, 'pullOhm', input.pullOhm);
  needNoLessThan(fn, 'pullToleranceFraction', pullToleranceFraction);
  if (pullToleranceFraction >= 1) {
    throw new InputError(fn, 'pullToleranceFraction', 'below', pullToleranceFraction, 'must be below 1', '5 % is 0.05');
  }
  needMoreThan(fn, 'lowestSensorOhm', input.lowestSensorOhm);
  needMoreThan(fn, 'highestSensorOhm', input.highestSensorOhm, input.lowestSensorOhm);
  needNoLessThan(fn, 'shortMostOhm', input.shortMostOhm);
  if (input.openLeastOhm !== null) needMoreThan(fn, 'openLeastOhm', input.openLeastOhm);
  needNoLessThan(fn, 'guardV', input.guardV);
  if (lowLimitV !== undefined) needMoreThan(fn, 'lowLimitV', lowLimitV);
  if (highLimitV !== undefined) needMoreThan(fn, 'highLimitV', highLimitV, lowLimitV ?? 0);
  if ((lowLimitV === undefined) !== (highLimitV === undefined)) {
    const field = lowLimitV === undefined ? 'lowLimitV' : 'highLimitV';
    throw new InputError(fn, field, 'missing', undefined, 'is required: both limits or neither');
  }
  if (highLimitV !== undefined && highLimitV >= supplyV) {
    throw new InputError(fn, 'highLimitV', 'below', highLimitV, `must be below supplyV, ${supplyV}`);
  }
  return input;
}

function bandsOf(input: FaultBandsInput): FaultBands {
  const { side, supplyV, pullOhm, pullToleranceFraction, lowestSensorOhm, highestSensorOhm, guardV, curve } = input;
  const toGround = side === 'sensor-to-ground';
  const pull = spread(pullOhm, pullToleranceFraction);
  const volts = (sensor: Interval): Interval => {
    const { low, high } = toGround ? shareOf(pull, sensor) : shareOf(sensor, pull);
    return { low: supplyV * low, high: supplyV * high };
  };
  const healthy = volts({ low: lowestSensorOhm, high: highestSensorOhm });
  const short = volts({ low: 0, high: input.shortMostOhm });
  const open = volts({ low: input.openLeastOhm ?? Infinity, high: Infinity });
  const [below, above] = toGround ? [short, open] : [open, short];
  const lowLimitV = input.lowLimitV ?? (below.high + healthy.low) / 2;
  const highLimitV = input.highLimitV ?? (healthy.high + above.low) / 2;
  const ohmAt = (v: number): number => (toGround ? (pullOhm * v) / (supplyV - v) : (pullOhm * (supplyV - v)) / v);
  const tempAt = (ohm: number): number | null =>
    curve === undefined ? null : thermistorTemperature({ curve, resistanceOhm: ohm, extrapolate: true }).tempC;
  const limit = {
    limit: guardV,
    unit: 'V',
    sense: 'atLeast',
    source: 'given-by-caller',
    sourceStatus: 'derived',
  } as const;
  const checks = [
    makeCheck({ ...limit, name: 'room below the healthy readings', value: healthy.low - lowLimitV }),
    makeCheck({ ...limit, name: 'room above the healthy readings', value: highLimitV - healthy.high }),
    makeCheck({ ...limit, name: 'room above the fault below', value: lowLimitV - below.high }),
    makeCheck({ ...limit, name: 'room below the fault above', value: above.low - highLimitV }),
  ];
  return {
    possible: true,
    lowLimitV,
    highLimitV,
    lowLimitFraction: lowLimitV / supplyV,
    highLimitFraction: highLimitV / supplyV,
    lowLimitOhm: ohmAt(lowLimitV),
    highLimitOhm: ohmAt(highLimitV),
    lowLimitTempC: tempAt(ohmAt(lowLimitV)),
    highLimitTempC: tempAt(ohmAt(highLimitV)),
    healthyLowV: healthy.low,
    healthyHighV: healthy.high,
    lowFaultV: below.high,
    highFaultV: above.low,
    lowFault: toGround ? 'short' : 'open',
    checks,
    decidedBy: tightestCheck(checks)?.name ?? '',
  };
}
