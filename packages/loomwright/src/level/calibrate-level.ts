import { type Check, makeCheck, type NotPossible, tightestCheck } from '../check/index.js';
import { InputError } from '../error/index.js';
import { needEarthly, needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needBetween, needInput, needInteger, needList, needObject, needOneOf } from '../error/guard.js';
import { clamped } from '../number/cells.js';
import { short } from '../number/short.js';
import { cellsFor } from './can-cells.js';
import { joinPoints } from './can-curve.js';
import { against, fitCans, type LevelCan } from './can-fit.js';
import { canRows, type CanRow } from './can-rows.js';
import { type LevelWarning, warningsOf } from './can-warnings.js';
import { curveOf, type DeadZone } from './can-zones.js';

export interface CalibrateLevelInput {
  /** Litres put in so far with the reading after each can, from the emptiest on: 2 to 500. */
  readonly cans: readonly LevelCan[];
  /** What the readings are. */
  readonly readingUnit: 'V' | 'Ω' | 'count';
  /** Whether the reading goes up or down as the tank fills. */
  readonly readingGoes: 'up' | 'down';
  /** Standard deviation of one reading, at least 0; null to take it from repeats. */
  readonly noiseValue: number | null;
  /** How far a can may be off what it is taken for, as a fraction, 0 to below 1. */
  readonly canToleranceFraction: number;
  /** One can filled again and again errs the same way each time; different cans, or one filled by eye, do not. */
  readonly canErrors: 'same-can' | 'each-its-own';
  /** How many deviations count as certain: for bands, and to call a reading off or still. 1 to 5. */
  readonly coverageFactor: number;
  /** Litres at which the gauge is to show nought: 0 for all in the tank, what the pump leaves for the usable ones. */
  readonly noughtAtL: number;
  /** Litres that the pump cannot reach, at least 0. */
  readonly unusableL: number;
  /** What is shown where the reading does not move at an end of the tank: the least that may be there, or the most. */
  readonly deadShows: 'least' | 'most';
  /** How the curve goes between cans: a smooth one that never turns back, or straight lines. */
  readonly between: 'smooth' | 'straight';
  /** Widest step between two cans that needs no warning, in L, above 0. */
  readonly mostGapL: number;
  /** Cells that the controller has, 2 or more; null for no limit. */
  readonly cellCount: number | null;
  /** Worst error of the table that is allowed, in L, at least 0: then the fewest cells are taken. Null for the least. */
  readonly wantedErrorL: number | null;
  /** Steps in which the controller holds the reading and the litres, above 0; null where it holds any number. */
  readonly readingStepValue: number | null;
  readonly shownStepL: number | null;
}

/** One cell of the gauge. */
export interface LevelCell {
  readonly readingValue: number;
  readonly shownL: number;
}

export interface LevelCalibration {
  readonly possible: true;
  /** The table as the controller holds it, rising in the reading. */
  readonly cells: readonly LevelCell[];
  /** Most that the table as held misses the curve by, where, and what it would miss it by unrounded. */
  readonly worstErrorL: number;
  readonly worstReadingValue: number;
  readonly leastErrorL: number;
  readonly roundingLossL: number;
  /** Cells that the error wanted needs before rounding; null where none was given. */
  readonly fewestCount: number | null;
  /** Most that the table is off at a can outside dead zones, and the litres of that can. */
  readonly worstCanErrorL: number;
  readonly worstCanL: number;
  /** Standard deviation of one reading, and the degrees of freedom it was taken from; null where it was given. */
  readonly noiseValue: number;
  readonly degreesOfFreedom: number | null;
  /** Most that the noise of one reading is worth anywhere on the curve, times the coverage factor. */
  readonly noiseMostL: number;
  /** Widest band of the litres at any can. */
  readonly widestBandL: number;
  /** Litres between the last that the pump gives and the nought of the gauge; 0 where it shows what cannot be had. */
  readonly reserveL: number;
  readonly zones: readonly DeadZone[];
  readonly cans: readonly CanRow[];
  /** The curve, rising in the reading: litres in the tank. */
  readonly curve: readonly { readonly readingValue: number; readonly volumeL: number }[];
  readonly warnings: readonly LevelWarning[];
  readonly checks: readonly Check[];
  readonly decidedBy: string;
}

export type CalibrateLevelResult = LevelCalibration | NotPossible<LevelCalibration>;

/**
 * The table of a fuel gauge from cans poured into an empty tank, with a reading after each.
 *
 * The readings are made to go one way by least squares, so that noise cannot make litres fall as fuel goes in; a curve
 * that never turns back joins them; and the cells stand where the worst error is least, or are the fewest that keep
 * the error wanted. They are chosen before rounding: with coarse steps another choice may hold better. On a nearly
 * straight sender two cells may be all that is taken, and `roundingLossL` says what the steps then cost. What the
 * sender cannot tell is said: stretches where it does not move, cans that go against the others, stretches without a
 * can. Nothing is left out of the fit: leave out the can yourself once you know why.
 *
 * $$\min_{f_1 \le \dots \le f_n} \sum_i w_i\,(r_i - f_i)^2 \qquad
 * u_V = k\sqrt{u_\mathrm{can}^2 + \left(\frac{\mathrm{d}V}{\mathrm{d}r}\,\frac{\sigma}{\sqrt{w}}\right)^{2}}$$
 *
 * with $u_\mathrm{can}$ the tolerance of a can over $\sqrt 3$, for the litres so far or for each can by itself. In a dead
 * zone $\sigma$'s part gives way to the hidden litres over $\sqrt{12}$.
 *
 * @param input cans, unit and direction, noise, tolerance of the cans, what nought and dead zones show, cells
 * @returns cells, errors, each can against them, dead zones, warnings; or not possible, because, with the nearest
 * @throws InputError when a field is missing or out of range, litres fall along the list, readings go the other way, or
 * the noise is neither given nor to be had from repeats
 * @source ayer-1955 (rising least squares); fritsch-carlson-1980 (curve); imai-iri-1988 (cells); jcgm-100, 4.3.7 and 5.1
 * @example calibrateLevel({ cans: [{ totalL: 0, readingValue: 90 }, { totalL: 20, readingValue: 60 }, { totalL: 40, readingValue: 10 }], readingUnit: 'Ω', readingGoes: 'down', noiseValue: 0.5, canToleranceFraction: 0.01, canErrors: 'same-can', coverageFactor: 2, noughtAtL: 0, unusableL: 0, deadShows: 'least', between: 'straight', mostGapL: 20, cellCount: 2, wantedErrorL: null, readingStepValue: null, shownStepL: null }).worstErrorL //=> 5
 */
export function calibrateLevel(input: CalibrateLevelInput): CalibrateLevelResult {
  const fn = 'calibrateLevel';
  guard(fn, input);
  const { cans, readingGoes, coverageFactor, noughtAtL, unusableL, wantedErrorL, readingStepValue } = input;
  const sign = readingGoes === 'up' ? 1 : -1;
  // Readings are turned so that they rise with the litres, and back; never to a minus nought.
  const turned = (reading: number): number => sign * reading + 0;
  const fit = fitCans(fn, cans, sign, input.noiseValue);
  const [first, last] = [fit.groups[0], fit.groups.at(-1)];
  if (first !== undefined && last !== undefined && last.mean < first.mean) {
    const must = `must be '${readingGoes === 'up' ? 'down' : 'up'}': so the readings go from the first can to the last`;
    throw new InputError(fn, 'readingGoes', 'order', readingGoes, must);
  }
  const found = curveOf(fit, coverageFactor, input.deadShows);
  if (found === null) {
    const because = 'the reading does not move beyond its noise, whatever is put in: look at the sender and its wire';
    return { possible: false, code: 'sender-does-not-move', because, nearest: null };
  }
  const joined = joinPoints(fn, found.points, input.between, noughtAtL);
  const shownAt = (reading: number): number => Math.max(0, joined.volumeAt(reading) - noughtAtL);
  const places = sign === 1 ? joined.places : joined.places.slice().reverse();
  const points = places.map((place) => ({ inValue: turned(place), outValue: shownAt(place) }));
  const { table, fewest } = cellsFor(points, input);
  const { cells, worst, unrounded } = table;
  if (cells.length < 2) {
    const because = `a step of ${readingStepValue} leaves one cell: the whole sender lies within it`;
    return { possible: false, code: 'step-too-coarse', because, nearest: null };
  }
  // What readings that go against one another pool to is no stretch where the sender stands still.
  const crossed = against(fit, coverageFactor);
  const zones = found.zones
    .filter(({ where, fromL, toL }) => where !== 'middle' || !crossed.some((a) => a.fromL >= fromL && a.toL <= toL))
    .map((zone) => ({ ...zone, readingValue: turned(zone.readingValue) }));
  const rows = canRows({ input, fit, joined, zones, sign, shownOf: (reading) => clamped(cells, reading) });
  const moving = rows.filter(({ dead }) => !dead);
  const worstCan = (moving.length > 0 ? moving : rows).reduce((a, b) =>
    Math.abs(b.errorL) > Math.abs(a.errorL) ? b : a,
  );
  const noiseMostL = Math.max(...places.map((place) => coverageFactor * fit.sigma * joined.steepAt(place)));
  const told = { cans, fit, zones, coverageFactor, mostGapL: input.mostGapL, noughtAtL, unusableL, wantedErrorL };
  const checks: Check[] = [];
  if (wantedErrorL !== null) {
    const limit = { limit: wantedErrorL, unit: 'L', sense: 'atMost', source: 'given-by-caller' } as const;
    checks.push(makeCheck({ ...limit, name: 'error of the table', value: worst, sourceStatus: 'derived' }));
  }
  const calibration: LevelCalibration = {
    possible: true,
    cells: cells.map(({ inValue, outValue }) => ({ readingValue: inValue, shownL: outValue })),
    worstErrorL: worst,
    worstReadingValue: table.worstIn,
    leastErrorL: unrounded,
    roundingLossL: worst - unrounded,
    fewestCount: fewest,
    worstCanErrorL: Math.abs(worstCan.errorL),
    worstCanL: worstCan.totalL,
    noiseValue: fit.sigma,
    degreesOfFreedom: fit.degreesOfFreedom,
    noiseMostL,
    widestBandL: Math.max(...rows.map(({ bandL }) => bandL)),
    reserveL: Math.max(0, noughtAtL - unusableL),
    zones,
    cans: rows,
    curve: places.map((place) => ({ readingValue: turned(place), volumeL: joined.volumeAt(place) })),
    warnings: warningsOf({ ...told, against: crossed, noiseMostL, sign }),
    checks,
    decidedBy: tightestCheck(checks)?.name ?? '',
  };
  if (wantedErrorL === null || worst <= wantedErrorL) return calibration;
  const few = fewest !== null && fewest > cells.length && unrounded > wantedErrorL;
  const rounded = readingStepValue === null && input.shownStepL === null ? '' : ' before rounding';
  const because = few
    ? `${input.cellCount} cells leave ${short(worst)} L; ${fewest} would do${rounded}`
    : `what the controller rounds leaves ${short(worst)} L of error in ${cells.length} cells`;
  return { possible: false, code: few ? 'too-few-cells' : 'rounding', because, nearest: calibration };
}

const CHOICES = {
  readingUnit: ['V', 'Ω', 'count'],
  readingGoes: ['up', 'down'],
  canErrors: ['same-can', 'each-its-own'],
  deadShows: ['least', 'most'],
  between: ['smooth', 'straight'],
} as const;

function guard(fn: string, input: CalibrateLevelInput): void {
  needInput(fn, input);
  const { cans, cellCount, wantedErrorL } = input;
  needList(fn, 'cans', cans, 2);
  needBetween(fn, 'cans.length', cans.length, 2, 500);
  const refuseTotal = (i: number, totalL: number, must: string): never => {
    throw new InputError(fn, `cans[${i}].totalL`, 'order', totalL, must, 'all litres so far, not those of each can');
  };
  cans.forEach((can, i) => {
    needObject(fn, `cans[${i}]`, can);
    needNoLessThan(fn, `cans[${i}].totalL`, can.totalL);
    needEarthly(fn, `cans[${i}].readingValue`, can.readingValue);
    if (can.totalL < (cans[i - 1]?.totalL ?? 0)) refuseTotal(i, can.totalL, 'must be no less than in the entry before');
  });
  const lastL = (cans.at(-1) as LevelCan).totalL;
  if (lastL === (cans[0] as LevelCan).totalL)
    refuseTotal(cans.length - 1, lastL, 'must be above that of the first can');
  for (const field of Object.keys(CHOICES) as (keyof typeof CHOICES)[]) {
    needOneOf(fn, field, input[field], CHOICES[field]);
  }
  if (input.noiseValue !== null) needNoLessThan(fn, 'noiseValue', input.noiseValue);
  needBetween(fn, 'canToleranceFraction', input.canToleranceFraction, 0, 0.999);
  needBetween(fn, 'coverageFactor', input.coverageFactor, 1, 5);
  for (const field of ['noughtAtL', 'unusableL'] as const) needNoLessThan(fn, field, input[field]);
  if (!(input.noughtAtL < lastL)) {
    throw new InputError(fn, 'noughtAtL', 'below', input.noughtAtL, `must be below ${lastL}, what was put in`);
  }
  if (cellCount === null && wantedErrorL === null) {
    throw new InputError(fn, 'cellCount', 'oneOfFields', cellCount, 'or wantedErrorL must be given');
  }
  if (cellCount !== null) {
    needInteger(fn, 'cellCount', cellCount, 2);
    needBetween(fn, 'cellCount', cellCount, 2, 5000);
  }
  if (wantedErrorL !== null) needNoLessThan(fn, 'wantedErrorL', wantedErrorL);
  for (const field of ['mostGapL', 'readingStepValue', 'shownStepL'] as const) {
    if (field === 'mostGapL' || input[field] !== null) needMoreThan(fn, field, input[field] as number);
  }
}
