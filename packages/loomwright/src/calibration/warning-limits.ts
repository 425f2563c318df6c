import { type Check, makeCheck, type NotPossible, tightestCheck } from '../check/index.js';
import { InputError } from '../error/index.js';
import { needEarthly, needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needBetween, needInput, needList, needOneOf } from '../error/guard.js';
import { type CalibrationCell, clamped, needCells } from '../number/cells.js';
import { short } from '../number/short.js';
import { roomiestChain, type Strait } from './limit-chain.js';
import { straitsOf, type WarningErrors } from './warning-straits.js';

export interface WarningLimitsInput extends WarningErrors {
  /** Whether too little or too much is warned of: oil pressure below, temperature above. */
  readonly warns: 'below' | 'above';
  /** By the other quantity, the worst that a healthy engine really has: 2 to 200 points, rising in `inValue`. */
  readonly healthy: readonly CalibrationCell[];
  /** By the other quantity, where harm begins: from the same place to the same place. */
  readonly limit: readonly CalibrationCell[];
  /** Places of the table, rising, 2 to 50. Either these or `cells`. */
  readonly placeValues?: readonly number[];
  /** A table that is there already, to be judged. */
  readonly cells?: readonly CalibrationCell[];
  /** Room wanted to either side, at least 0. */
  readonly guardValue: number;
  /** Step in which the controller holds a limit, above 0; null where it holds any number. */
  readonly outStepValue: number | null;
  /** After the start no alarm for so long, in s, at least 0. */
  readonly blankS: number;
  /** Longest that a healthy engine takes after the start to be above its healthy curve, in s, at least 0. */
  readonly buildUpS: number;
  /** Longest that it may run unwatched after the start, in s; null where nobody knows: then it is not judged. */
  readonly blindMostS: number | null;
}

/** The warning at one place of the other quantity. */
export interface WarningRow {
  readonly inValue: number;
  /** What a healthy engine really has, where harm begins, and what is warned at. */
  readonly healthyValue: number;
  readonly harmValue: number;
  readonly warnValue: number;
  /** Nearest that a healthy engine's reading comes, and where the alarm must have come to be in time. */
  readonly calmValue: number;
  readonly lateValue: number;
  /** Room from the warning to both: below 0 where it is passed. */
  readonly falseRoomValue: number;
  readonly missedRoomValue: number;
}

export interface WarningLimits {
  readonly possible: true;
  /** The table to type in: the other quantity, and the limit there; straight between, held outside. */
  readonly cells: readonly CalibrationCell[];
  /** Every place where something bends. Between two of them nothing is worse than at both. */
  readonly rows: readonly WarningRow[];
  /** Least room to a false alarm and to a missed one, and where. */
  readonly falseRoomValue: number;
  readonly falseAtValue: number;
  readonly missedRoomValue: number;
  readonly missedAtValue: number;
  /** From the limit passed to the alarm, in s, and what a fault moves by meanwhile. */
  readonly alarmDelayS: number;
  readonly alarmMoveValue: number;
  /** Longest without a warning after the start, in s. */
  readonly blindS: number;
  readonly checks: readonly Check[];
  readonly decidedBy: string;
}

export type WarningLimitsResult = WarningLimits | NotPossible<WarningLimits>;

/**
 * A warning whose limit follows another quantity: oil pressure by speed, with what both sensors miss carried along.
 *
 * The alarm must never come on a healthy engine, and must always come before harm. The first keeps the limit below
 * what a healthy engine reads at its worst; the second keeps it above where harm begins, by the sensor's error and by
 * what is lost while filter and debounce wait. Both look sideways as well, as far as the other quantity may be off. The
 * table has the most room to both that its places allow.
 *
 * $$\max_{|x'-x| \le \Delta_2} d(x') + e + r\,(t_f + t_d) \;\le\; w(x) \;\le\; \min_{|x'-x| \le \Delta_1} h(x') - e$$
 *
 * with $\Delta_1 = e_x + r_x |t_f - t_x|$ and $\Delta_2 = e_x + r_x (t_x + t_d)$; for a warning from above, mirrored.
 *
 * @param input healthy curve, harm, errors, delays, places or a table, blanking after the start
 * @returns table, rows, least room to a false and to a missed alarm, delay, checks; or not possible, because, with the
 * nearest and where
 * @throws InputError when a field is missing or out of range, points do not rise or do not cover the same range, or
 * places lie outside it
 * @source circuit-theory; errors as limits that are never passed, not as chances
 * @example warningLimits({ warns: 'below', healthy: [{ inValue: 0, outValue: 4 }, { inValue: 10, outValue: 4 }], limit: [{ inValue: 0, outValue: 1 }, { inValue: 10, outValue: 1 }], errorValue: 0.2, ratePerS: 1, delayS: 0.1, debounceS: 0.3, otherErrorValue: 0, otherRatePerS: 0, otherDelayS: 0, placeValues: [0, 10], guardValue: 0.5, outStepValue: null, blankS: 3, buildUpS: 2, blindMostS: null }).falseRoomValue //=> 1.1
 */
export function warningLimits(input: WarningLimitsInput): WarningLimitsResult {
  const fn = 'warningLimits';
  needInput(fn, input);
  guard(fn, input);
  const { outStepValue, guardValue } = input;
  // A warning from above is one from below with all signs turned.
  const sign = input.warns === 'below' ? 1 : -1;
  const turn = ({ inValue, outValue }: CalibrationCell): CalibrationCell => ({ inValue, outValue: sign * outValue });
  const healthy = input.healthy.map(turn);
  const limit = input.limit.map(turn);
  const places = input.cells?.map(({ inValue }) => inValue) ?? (input.placeValues as readonly number[]);
  const straits = straitsOf(healthy, limit, input, places);
  const best = input.cells === undefined ? roomiestChain(places, straits) : null;
  const exact =
    input.cells?.map(turn) ?? places.map((inValue, i) => ({ inValue, outValue: clean(best?.values[i] as number) }));
  const cells =
    outStepValue === null || best === null
      ? exact
      : exact.map(({ inValue, outValue }) => ({ inValue, outValue: onStep(outValue, outStepValue) }));
  const rows = straits.map(({ x, low, high }): WarningRow => {
    const warn = clamped(cells, x);
    return {
      inValue: x,
      healthyValue: sign * clamped(healthy, x),
      harmValue: sign * clamped(limit, x),
      warnValue: sign * warn,
      calmValue: sign * high,
      lateValue: sign * low,
      falseRoomValue: clean(high - warn),
      missedRoomValue: clean(warn - low),
    };
  });
  const leastOf = (of: (row: WarningRow) => number): WarningRow => rows.reduce((a, b) => (of(b) < of(a) ? b : a));
  const nearFalse = leastOf((row) => row.falseRoomValue);
  const nearMissed = leastOf((row) => row.missedRoomValue);
  const checks = checksOf(input, nearFalse.falseRoomValue, nearMissed.missedRoomValue, best !== null);
  const alarmDelayS = input.delayS + input.debounceS;
  const table: WarningLimits = {
    possible: true,
    cells: cells.map(turn),
    rows,
    falseRoomValue: nearFalse.falseRoomValue,
    falseAtValue: nearFalse.inValue,
    missedRoomValue: nearMissed.missedRoomValue,
    missedAtValue: nearMissed.inValue,
    alarmDelayS,
    alarmMoveValue: input.ratePerS * alarmDelayS,
    blindS: input.blankS + alarmDelayS,
    checks,
    decidedBy: tightestCheck(checks)?.name ?? '',
  };
  const failed = checks.filter(({ ok }) => !ok);
  const [worst] = failed;
  if (worst === undefined) return table;
  const tight = straits.reduce((a, b) => (b.high - b.low < a.high - a.low ? b : a));
  if (worst.unit === '') {
    const { code, because } = whyNot(sign, tight, best?.room ?? null, guardValue);
    return { possible: false, code, because, nearest: table };
  }
  const code = worst.name === 'blanking' ? 'blanking-too-short' : 'blind-too-long';
  const because = failed.map((c) => `${c.name}: ${short(c.value as number)} s, limit ${short(c.limit as number)} s`);
  return { possible: false, code, because: because.join('; '), nearest: table };
}

/** Room is judged up to the dust that finding the most room leaves. */
const DUST = 1e-9;

function whyNot(
  sign: number,
  tight: Strait,
  room: number | null,
  guardValue: number,
): { code: string; because: string } {
  const widest = (tight.high - tight.low) / 2;
  const [calm, late] = [short(sign * tight.high), short(sign * tight.low)];
  const where = `at ${short(tight.x)} a healthy engine may read ${calm}, and the alarm must have come at ${late}`;
  if (widest < guardValue - DUST * Math.max(1, guardValue)) {
    const crossed = widest < 0 ? 'the bands cross' : 'the bands leave too little room';
    return { code: widest < 0 ? 'bands-cross' : 'too-little-room', because: `${crossed}: ${where}` };
  }
  if (room === null) return { code: 'table-misses', because: `the table comes too near; ${where}` };
  if (room >= guardValue - DUST * Math.max(1, guardValue)) {
    return { code: 'rounding', because: 'what the controller rounds takes the room: a finer step would do' };
  }
  return { code: 'too-few-places', because: 'straight lines between these places do not fit: put more where it bends' };
}

/** Twelve digits: without the dust that finding the most room, and taking differences, leaves. */
const clean = (value: number): number => Number(value.toPrecision(12));

function onStep(value: number, step: number): number {
  return Number((Math.round(value / step) * step).toPrecision(14));
}

function checksOf(
  { guardValue, blankS, buildUpS, blindMostS, delayS, debounceS }: WarningLimitsInput,
  falseRoom: number,
  missedRoom: number,
  found: boolean,
): readonly Check[] {
  const given = { source: 'given-by-caller', sourceStatus: 'derived' } as const;
  const limitFor = (room: number): number =>
    found && room < guardValue && room >= guardValue - DUST * Math.max(1, guardValue) ? room : guardValue;
  const room = (name: string, value: number): Check =>
    makeCheck({ ...given, name, value, limit: limitFor(value), unit: '', sense: 'atLeast' });
  const checks = [
    room('room to a false alarm', falseRoom),
    room('room to a missed alarm', missedRoom),
    makeCheck({ ...given, name: 'blanking', value: blankS, limit: buildUpS + delayS, unit: 's', sense: 'atLeast' }),
  ];
  if (blindMostS === null) return checks;
  const value = blankS + delayS + debounceS;
  const blind = { ...given, name: 'time without a warning', value, limit: blindMostS, unit: 's' };
  return [...checks, makeCheck({ ...blind, sense: 'atMost' })];
}

const ERRORS = ['errorValue', 'ratePerS', 'delayS', 'debounceS', 'otherErrorValue', 'otherRatePerS'] as const;

function guard(fn: string, input: WarningLimitsInput): void {
  const { healthy, limit, placeValues, cells, outStepValue, blindMostS } = input;
  needOneOf(fn, 'warns', input.warns, ['below', 'above']);
  needCells(fn, 'healthy', healthy);
  needBetween(fn, 'healthy.length', healthy.length, 2, 200);
  needCells(fn, 'limit', limit);
  needBetween(fn, 'limit.length', limit.length, 2, 200);
  const first = (healthy[0] as CalibrationCell).inValue;
  const last = (healthy[healthy.length - 1] as CalibrationCell).inValue;
  const ends = [(limit[0] as CalibrationCell).inValue, (limit[limit.length - 1] as CalibrationCell).inValue];
  if (ends[0] !== first || ends[1] !== last) {
    throw new InputError(fn, 'limit', 'range', ends.join(' to '), `must go from ${first} to ${last}, as healthy does`);
  }
  for (const field of [...ERRORS, 'otherDelayS', 'guardValue', 'blankS', 'buildUpS'] as const) {
    needNoLessThan(fn, field, input[field]);
  }
  if (outStepValue !== null) needMoreThan(fn, 'outStepValue', outStepValue);
  if (blindMostS !== null) needNoLessThan(fn, 'blindMostS', blindMostS);
  if ((placeValues === undefined) === (cells === undefined)) {
    throw new InputError(fn, 'placeValues', 'oneOfFields', placeValues, 'or cells must be given, one only');
  }
  if (cells !== undefined) needCells(fn, 'cells', cells);
  else needList(fn, 'placeValues', placeValues as readonly number[], 2);
  const field = cells === undefined ? 'placeValues' : 'cells';
  const places = cells?.map(({ inValue }) => inValue) ?? (placeValues as readonly number[]);
  needBetween(fn, `${field}.length`, places.length, 2, 50);
  places.forEach((place, i) => {
    needEarthly(fn, `${field}[${i}]`, place);
    const before = places[i - 1];
    if (before !== undefined && !(place - before >= 1e-9)) {
      throw new InputError(fn, `${field}[${i}]`, 'order', place, 'must lie above the one before');
    }
    if (place < first || place > last) {
      throw new InputError(fn, `${field}[${i}]`, 'range', place, `must lie from ${first} to ${last}`);
    }
  });
}
