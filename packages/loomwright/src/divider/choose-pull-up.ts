import { type Check, makeCheck, type NotPossible, tightestCheck } from '../check/index.js';
import { needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needInput, needInteger } from '../error/guard.js';
import type { PreferredSeries } from '../table/index.js';
import { figure } from './figure.js';
import { needTolerance } from './guard.js';
import { needSeries, preferredBetween } from '../table/preferred-value.js';

export interface ChoosePullUpInput {
  /** Volts that the pull-up goes to, above 0. */
  readonly supplyV: number;
  /** Least and greatest resistance of the sensor in Ω; the least at least 0, the greatest above it. */
  readonly lowestSensorOhm: number;
  readonly highestSensorOhm: number;
  /** Most current that the sensor may carry in A, above 0; null for no limit. */
  readonly sensorMostA: number | null;
  /** Most heat that the sensor may make in W, above 0; null for no limit. */
  readonly sensorMostW: number | null;
  /** Most heat that the pull-up may make in W, above 0: its rating after derating. Judged with the wire shorted. */
  readonly pullUpMostW: number;
  /** Highest volts that a chafed wire could put on the sensor, at least `supplyV`: the battery's. */
  readonly faultV: number;
  /** The series that is in the drawer. */
  readonly series: PreferredSeries;
  /** Tolerance of the pull-up as a fraction, 0 to below 1. */
  readonly toleranceFraction: number;
  /** Greatest count of the converter, such as 1023; full scale is `supplyV`. */
  readonly fullScaleCount: number;
  /** Least span between empty and full in counts, at least 0. */
  readonly wantedSpanCount: number;
}

/** The reading at one point of the sensor's travel, the sensor taken as linear in ohms. */
export interface PullUpPoint {
  /** Travel from the highest resistance (0) to the lowest (1). */
  readonly travelFraction: number;
  readonly sensorOhm: number;
  readonly pinV: number;
  /** What a straight line through both ends would show. */
  readonly straightFraction: number;
}

export interface PullUpChoice {
  readonly possible: true;
  readonly pullUpOhm: number;
  /** The resistance that would give the widest span, without regard to any limit: √(lowest × highest). */
  readonly widestOhm: number;
  /** Volts at the pin with the sensor at its highest and at its lowest resistance. */
  readonly highestPinV: number;
  readonly lowestPinV: number;
  readonly spanV: number;
  readonly spanCount: number;
  /** The same at the worse end of the pull-up's tolerance. */
  readonly leastSpanCount: number;
  /** Most current in the sensor in use, pull-up as marked, in A. */
  readonly sensorA: number;
  /** Most heat in the sensor over its travel, pull-up as marked, in W. */
  readonly sensorW: number;
  /** Most heat in the pull-up in use, and with the sensor's wire shorted to ground, as marked, in W. */
  readonly pullUpW: number;
  readonly pullUpShortW: number;
  /** Current and heat in the sensor when its wire is shorted to `faultV`; null when its lowest resistance is 0. */
  readonly faultA: number | null;
  readonly faultW: number | null;
  /** Heat in the pull-up in that fault, in W. */
  readonly pullUpFaultW: number;
  /** Eleven points of the travel. */
  readonly curve: readonly PullUpPoint[];
  readonly checks: readonly Check[];
  readonly decidedBy: string;
}

export type ChoosePullUpResult = PullUpChoice | NotPossible<PullUpChoice>;

/**
 * The pull-up that gives a resistive sensor the widest span at the pin without overloading it.
 *
 * The span is widest where the pull-up is the geometric mean of the sensor's ends; for a fuel sender that would cook
 * it, so the current limit decides. A pull-up in the controller protects the sensor only from the controller: a
 * sensor wire that chafes through to the battery puts the whole battery on the sensor, and the result shows what
 * that does.
 *
 * $$V = V_s\,\frac{R}{R + R_\mathrm{pull}} \qquad R_\mathrm{widest} = \sqrt{R_\mathrm{low} R_\mathrm{high}}$$
 *
 * @param input supply, sensor, limits, series
 * @returns the pull-up with volts, span, currents, heat, faults, curve and checks; or not possible, because
 * @throws InputError when a field is missing or out of range
 * @source circuit-theory; iec-60063; common-practice (20 mA at most through a sender in a fuel tank)
 * @example choosePullUp({ supplyV: 5, lowestSensorOhm: 10, highestSensorOhm: 350, sensorMostA: 0.02, sensorMostW: null, pullUpMostW: 0.25, faultV: 14.4, series: e12, toleranceFraction: 0.05, fullScaleCount: 1023, wantedSpanCount: 200 }).possible //=> true
 */
export function choosePullUp(input: ChoosePullUpInput): ChoosePullUpResult {
  guard(input);
  const { supplyV, lowestSensorOhm, highestSensorOhm, series } = input;
  const low = Math.max(lowestSensorOhm, highestSensorOhm * 1e-6);
  // Beyond these nothing is gained: the span only falls away from the geometric mean, and heat falls with ohms.
  const leastOhm = Math.sqrt(low * highestSensorOhm) / 100;
  const mostOhm = Math.max(highestSensorOhm * 1e4, (supplyV * supplyV) / input.pullUpMostW) * 10;
  let best: PullUpChoice | null = null;
  let nearest: PullUpChoice | null = null;
  for (const pullUpOhm of preferredBetween(series, leastOhm, mostOhm)) {
    const choice = judge(input, pullUpOhm);
    const safe = choice.checks.every((check) => check.ok || check.name === SPAN);
    if (!safe) continue;
    if (nearest === null || choice.leastSpanCount > nearest.leastSpanCount) nearest = choice;
    if (!choice.checks.every((check) => check.ok)) continue;
    if (best === null || choice.leastSpanCount > best.leastSpanCount) best = choice;
  }
  if (best !== null) return best;
  const span = nearest === null ? '' : `: at most ${figure(nearest.leastSpanCount)} counts`;
  return {
    possible: false,
    code: nearest === null ? 'no-safe-value' : 'span-too-small',
    because:
      nearest === null
        ? 'no value of the series keeps the limits of sensor and pull-up'
        : `no value within the limits gives ${figure(input.wantedSpanCount)} counts between the sensor's ends${span}`,
    nearest,
  };
}

const SPAN = 'span between the ends of the sensor';

function guard(input: ChoosePullUpInput): void {
  const fn = 'choosePullUp';
  needInput(fn, input);
  needMoreThan(fn, 'supplyV', input.supplyV);
  needNoLessThan(fn, 'lowestSensorOhm', input.lowestSensorOhm);
  needMoreThan(fn, 'highestSensorOhm', input.highestSensorOhm, input.lowestSensorOhm);
  if (input.sensorMostA !== null) needMoreThan(fn, 'sensorMostA', input.sensorMostA);
  if (input.sensorMostW !== null) needMoreThan(fn, 'sensorMostW', input.sensorMostW);
  needMoreThan(fn, 'pullUpMostW', input.pullUpMostW);
  needNoLessThan(fn, 'faultV', input.faultV, input.supplyV);
  needSeries(fn, input.series);
  needTolerance(fn, 'toleranceFraction', input.toleranceFraction);
  needInteger(fn, 'fullScaleCount', input.fullScaleCount, 1);
  needNoLessThan(fn, 'wantedSpanCount', input.wantedSpanCount);
}

function judge(input: ChoosePullUpInput, pullUpOhm: number): PullUpChoice {
  const { supplyV, lowestSensorOhm, highestSensorOhm, toleranceFraction, fullScaleCount, faultV } = input;
  const pin = (sensorOhm: number, pull: number): number => (supplyV * sensorOhm) / (sensorOhm + pull);
  const span = (pull: number): number => pin(highestSensorOhm, pull) - pin(lowestSensorOhm, pull);
  const weakest = pullUpOhm * (1 - toleranceFraction);
  const strongest = pullUpOhm * (1 + toleranceFraction);
  const current = (pull: number): number => supplyV / (lowestSensorOhm + pull);
  // The sensor is hottest where it equals the pull-up, or at its end nearest to that.
  const heat = (pull: number): number => {
    const hottest = Math.min(highestSensorOhm, Math.max(lowestSensorOhm, pull));
    return (supplyV / (hottest + pull)) ** 2 * hottest;
  };
  const spanV = span(pullUpOhm);
  const leastSpanCount = (Math.min(span(weakest), span(strongest)) / supplyV) * fullScaleCount;
  // Below this a sensor is a short, and only wire and battery limit the current.
  const faultA = lowestSensorOhm < 1e-12 ? null : faultV / lowestSensorOhm;
  const given = { sense: 'atMost', source: 'given-by-caller', sourceStatus: 'derived' } as const;
  const checks: Check[] = [];
  if (input.sensorMostA !== null) {
    const value = current(weakest);
    checks.push(makeCheck({ ...given, name: 'current in the sensor', value, limit: input.sensorMostA, unit: 'A' }));
  }
  if (input.sensorMostW !== null) {
    const value = Math.max(heat(weakest), heat(strongest));
    checks.push(makeCheck({ ...given, name: 'heat of the sensor', value, limit: input.sensorMostW, unit: 'W' }));
  }
  checks.push(
    makeCheck({
      ...given,
      name: 'heat of the pull-up, wire shorted to ground',
      value: (supplyV * supplyV) / weakest,
      limit: input.pullUpMostW,
      unit: 'W',
    }),
    makeCheck({
      ...given,
      sense: 'atLeast',
      name: SPAN,
      value: leastSpanCount,
      limit: input.wantedSpanCount,
      unit: 'counts',
    }),
  );
  const highestPinV = pin(highestSensorOhm, pullUpOhm);
  return {
    possible: true,
    pullUpOhm,
    widestOhm: Math.sqrt(lowestSensorOhm * highestSensorOhm),
    highestPinV,
    lowestPinV: pin(lowestSensorOhm, pullUpOhm),
    spanV,
    spanCount: (spanV / supplyV) * fullScaleCount,
    leastSpanCount,
    sensorA: current(pullUpOhm),
    sensorW: heat(pullUpOhm),
    pullUpW: current(pullUpOhm) ** 2 * pullUpOhm,
    pullUpShortW: (supplyV * supplyV) / pullUpOhm,
    faultA,
    faultW: faultA === null ? null : faultA * faultV,
    pullUpFaultW: (faultV - supplyV) ** 2 / pullUpOhm,
    curve: Array.from({ length: 11 }, (_, i) => {
      const travelFraction = i / 10;
      const sensorOhm = highestSensorOhm + (lowestSensorOhm - highestSensorOhm) * travelFraction;
      const pinV = pin(sensorOhm, pullUpOhm);
      return {
        travelFraction,
        sensorOhm,
        pinV,
        straightFraction: spanV > 0 ? (highestPinV - pinV) / spanV : travelFraction,
      };
    }),
    checks,
    decidedBy: tightestCheck(checks)?.name ?? '',
  };
}
