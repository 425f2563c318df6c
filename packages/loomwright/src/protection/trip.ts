import { InputError } from '../error/index.js';
import { needList, needObject, needOneOf } from '../error/guard.js';
import { needMoreThan, needNoLessThan } from '../error/bounded.js';

/** Opens when the current has stayed above a threshold for a while. */
export interface ThresholdTrip {
  readonly kind: 'threshold';
  /** Current in A, above 0. */
  readonly tripA: number;
  /** How long it must stay above, in s, at least 0. */
  readonly delayS: number;
}

/** Opens when the heat above a steady current adds up: an electronic fuse. */
export interface HeatTrip {
  readonly kind: 'i2t';
  /** Current in A that never trips it, above 0. */
  readonly carryA: number;
  /** Surplus of I² over that current's, times time, at which it opens, in A²s, above 0. */
  readonly i2tA2s: number;
}

/** Opens by a curve of current and time, straight between its points on logarithmic scales. */
export interface CurveTrip {
  readonly kind: 'curve';
  /** At least two points of rising current, falling time. Below the first it never opens; above the last at its time. */
  readonly points: readonly (readonly [currentA: number, timeS: number])[];
}

/** How an output decides to open. */
export type TripModel = ThresholdTrip | HeatTrip | CurveTrip;

/** A current for a while. */
export interface SurgeStep {
  /** Current in A, at least 0. */
  readonly currentA: number;
  /** How long in s, above 0. */
  readonly durationS: number;
}

/** Throws unless the trip model is whole. */
export function needTrip(fn: string, trip: TripModel, at: string): void {
  needObject(fn, at, trip, 'must be a trip model with a kind');
  needOneOf(fn, `${at}.kind`, trip.kind, ['threshold', 'i2t', 'curve']);
  if (trip.kind === 'threshold') {
    needMoreThan(fn, `${at}.tripA`, trip.tripA);
    needNoLessThan(fn, `${at}.delayS`, trip.delayS);
  } else if (trip.kind === 'i2t') {
    needMoreThan(fn, `${at}.carryA`, trip.carryA);
    needMoreThan(fn, `${at}.i2tA2s`, trip.i2tA2s);
  } else {
    needList(fn, `${at}.points`, trip.points, 2);
    let before: readonly [number, number] | null = null;
    trip.points.forEach((point, i) => {
      needList(fn, `${at}.points[${i}]`, point, 2);
      needMoreThan(fn, `${at}.points[${i}].currentA`, point[0]);
      needMoreThan(fn, `${at}.points[${i}].timeS`, point[1]);
      if (before !== null && !(point[0] > before[0] && point[1] <= before[1])) {
        const must = 'must have more current and no more time than the one before';
        throw new InputError(fn, `${at}.points[${i}]`, 'order', point[0], must);
      }
      before = point;
    });
  }
}

/** Throws unless every step is a current for a while. */
export function needSteps(fn: string, field: string, steps: readonly SurgeStep[], atLeast = 0): void {
  needList(fn, field, steps, atLeast);
  steps.forEach((step, i) => {
    needObject(fn, `${field}[${i}]`, step, 'must be an object');
    needNoLessThan(fn, `${field}[${i}].currentA`, step.currentA);
    needMoreThan(fn, `${field}[${i}].durationS`, step.durationS);
  });
}

/** When steps of current open the output, in s from their beginning; null where they do not. The last may be endless. */
export function tripsAfterS(trip: TripModel, steps: readonly SurgeStep[]): number | null {
  let used = 0; // seconds above the threshold, A²s of surplus, or share of the curve's time
  let timeS = 0;
  for (const { currentA, durationS } of steps) {
    const rate = rateOf(trip, currentA);
    const full = fullOf(trip);
    if (rate > 0) {
      const needed = Math.max(0, full - used) / rate;
      if (needed <= durationS) return timeS + needed;
    } else if (trip.kind === 'threshold') {
      used = 0;
    }
    used = Math.max(0, used + rate * durationS);
    timeS += durationS;
  }
  return null;
}

/** When a steady current opens the output, in s; null for never. */
export function tripsAtS(trip: TripModel, currentA: number): number | null {
  return tripsAfterS(trip, [{ currentA, durationS: Number.MAX_VALUE }]);
}

function fullOf(trip: TripModel): number {
  return trip.kind === 'threshold' ? trip.delayS : trip.kind === 'i2t' ? trip.i2tA2s : 1;
}

/** How fast a current uses up what the output bears; negative where it recovers. */
function rateOf(trip: TripModel, currentA: number): number {
  switch (trip.kind) {
    case 'threshold':
      return currentA > trip.tripA ? 1 : 0;
    case 'i2t':
      return currentA * currentA - trip.carryA * trip.carryA;
    case 'curve': {
      const { points } = trip;
      const [firstA] = points[0] as readonly [number, number];
      if (currentA < firstA) return 0;
      const i = points.findIndex(([atA]) => atA >= currentA);
      if (i === 0) return 1 / (points[0] as readonly [number, number])[1];
      if (i < 0) return 1 / (points[points.length - 1] as readonly [number, number])[1];
      const [a1, t1] = points[i - 1] as readonly [number, number];
      const [a2, t2] = points[i] as readonly [number, number];
      return 1 / (t1 * (t2 / t1) ** (Math.log(currentA / a1) / Math.log(a2 / a1)));
    }
  }
}
