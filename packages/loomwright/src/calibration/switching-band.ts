import { type Check, makeCheck, type NotPossible, tightestCheck } from '../check/index.js';
import { InputError } from '../error/index.js';
import { needEarthly, needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needBetween, needInput, needInteger, needObject, needOneOf } from '../error/guard.js';
import { needProcess } from './switch-process.js';
import { needSwitchSensor, type SensorEnd, type SwitchSensor, voltsOf } from './switch-sensor.js';
import { stageOf, type SwitchStage, type SwitchStageResult } from './switch-stage.js';

export interface SwitchingBandInput {
  readonly sensor: SwitchSensor;
  /** Supply of the sensor in V, above 0. */
  readonly supplyV: number;
  /** What the converter compares with, in V, above 0; null where that is the sensor's own supply. */
  readonly referenceV: number | null;
  /** Bits of the converter, 4 to 24; a count is the reference over 2 to that power. */
  readonly converterBits: number;
  /** Whether the load brings down what is measured, as a fan does, or up, as a heater or a pump does. */
  readonly acts: 'lowers' | 'raises';
  /** Noise at the input: most that a reading is off to either side, in V, at least 0. */
  readonly noiseV: number;
  /** Filter and debounce: from what happens to what the controller knows, in s, at least 0. */
  readonly delayS: number;
  /** Room wanted over the least band, as a fraction of it, at least 0. */
  readonly marginFraction: number;
  /** The load, or the slow speed of it. */
  readonly first: SwitchStage;
  /** The fast speed, which goes on beyond the slow one; what it does to the sensor is told with both running. */
  readonly second?: SwitchStage;
  /** What must not really be passed; not judged unless given. */
  readonly highestValue?: number;
  readonly lowestValue?: number;
  /** Least time on and off in s, and most starts an hour; not judged unless given. */
  readonly leastOnTimeS?: number;
  readonly leastOffTimeS?: number;
  readonly mostCyclesPerH?: number;
}

export interface SwitchingBand {
  readonly possible: true;
  readonly first: SwitchStageResult;
  /** The fast speed; null where there is none. */
  readonly second: SwitchStageResult | null;
  /** Between where the slow one goes on and the fast one off: volts and reading; null with one speed. */
  readonly gapV: number | null;
  readonly gapValue: number | null;
  readonly checks: readonly Check[];
  readonly decidedBy: string;
}

export type SwitchingBandResult = SwitchingBand | NotPossible<SwitchingBand>;

/**
 * How far apart a load must be switched on and off, so that it does not switch itself.
 *
 * A fan that goes on moves the ground of the very sensor that it is switched by. The reading falls, the fan goes off,
 * the reading rises, the fan goes on. The band between the two must be wider than that jump, noise, a count of the
 * converter and what is measured moves by while the controller still filters. A jump that goes the other way is no
 * help: it may not be there tomorrow.
 *
 * $$\Delta V \ge \Delta V_\mathrm{jump} + \Delta V_\mathrm{process} + 2V_n + \frac{V_\mathrm{ref}}{2^n}$$
 *
 * $$\Delta V_\mathrm{jump} = V_g\left(1 - \frac{V}{V_s}\right)\ \text{(a share of the supply)}, \qquad
 * \Delta V_\mathrm{jump} = V_g\ \text{(volts of its own)}$$
 *
 * It is judged at both moments, just after on and just after off, by the sensor's own curve. The load goes on at the
 * earlier count; the other threshold goes to the further one.
 *
 * @param input sensor, converter, noise, delay, one or two stages, limits
 * @returns thresholds in reading, volts and counts, the least band and its parts, times and starts an hour, checks; or
 * not possible, because, with the nearest
 * @throws InputError when a field is missing or out of range, `onValue` is off the sensor, thresholds are in no order,
 * or a shift is more than half the supply
 * @source circuit-theory; energy balance of first order for the times
 * @example switchingBand({ sensor: { kind: 'slope', inputV: 2.5, atValue: 95, valuePerV: 40, output: 'absolute' }, supplyV: 5, referenceV: 5, converterBits: 10, acts: 'lowers', noiseV: 0.005, delayS: 0, marginFraction: 0, first: { onValue: 95, groundShiftV: -0.05, supplyShiftV: 0, directShiftValue: 0, process: null } }).first.leastBandV //=> 0.064883
 */
export function switchingBand(input: SwitchingBandInput): SwitchingBandResult {
  const fn = 'switchingBand';
  needInput(fn, input);
  guard(fn, input);
  const { supplyV, referenceV, converterBits, noiseV, first, second } = input;
  const countMost = 2 ** converterBits - 1;
  const stepV = (referenceV ?? supplyV) / 2 ** converterBits;
  const common = { ...input, stepV, countMost };
  const still = { groundShiftV: 0, supplyShiftV: 0, directShiftValue: 0 };
  const one = stageOf(common, first, still);
  const two = second === undefined ? null : stageOf(common, second, first);
  if (one === null || (second !== undefined && two === null)) {
    const which = one === null ? 'band' : 'fast band';
    const because = `the ${which} would lie where the sensor or the converter does not reach`;
    return { possible: false, code: 'off-sensor', because, nearest: null };
  }
  const dir = Math.sign(one.valuePerV) * (input.acts === 'lowers' ? 1 : -1);
  const gapV = two === null ? null : dir * (two.offV - one.onV);
  const gapValue = two === null ? null : (input.acts === 'lowers' ? 1 : -1) * (two.offValue - one.onValue);
  const checks = [
    ...checksOf(input, one, two === null ? '' : 'slow '),
    ...(two === null ? [] : checksOf(input, two, 'fast ')),
    ...(gapV === null
      ? []
      : [
          judged({
            name: 'room between the bands',
            value: gapV,
            limit: 2 * noiseV + stepV,
            unit: 'V',
            sense: 'atLeast',
          }),
        ]),
  ];
  const band: SwitchingBand = {
    possible: true,
    first: one,
    second: two,
    gapV,
    gapValue,
    checks,
    decidedBy: tightestCheck(checks)?.name ?? '',
  };
  const failed = checks.filter(({ ok }) => !ok);
  const [worst] = failed;
  if (worst === undefined) return band;
  return { possible: false, code: codeOf(worst.name), because: failed.map(saying).join('; '), nearest: band };
}

function codeOf(name: string): string {
  if (name.endsWith('band')) return 'band-too-narrow';
  if (name.endsWith('between the bands')) return 'bands-overlap';
  return name.includes('reached') ? 'beyond-limits' : 'switches-too-often';
}

function saying({ name, value, limit, unit, sense, because }: Check): string {
  const short = (number: number | null): string => String(Number((number ?? 0).toPrecision(4)));
  if (value === null) return `${name}: ${because ?? ''}`;
  return `${name}: ${short(value)} ${unit}, wanted at ${sense === 'atMost' ? 'most' : 'least'} ${short(limit)} ${unit}`;
}

function judged(check: {
  readonly name: string;
  readonly value: number | null;
  readonly limit: number;
  readonly unit: string;
  readonly sense: 'atMost' | 'atLeast';
  readonly because?: string;
  readonly okWithoutNumber?: boolean;
}): Check {
  return makeCheck({ ...check, source: 'given-by-caller', sourceStatus: 'derived' });
}

const NO_CYCLE = {
  'no-process': 'nothing is known of how it moves',
  'never-on': 'it never comes so far that the load goes on',
  'never-off': 'it never comes back so far that the load goes off',
  'no-band': 'the band does not hold',
} as const;

function checksOf(input: SwitchingBandInput, stage: SwitchStageResult, speed: string): readonly Check[] {
  const { marginFraction, highestValue, lowestValue, leastOnTimeS, leastOffTimeS, mostCyclesPerH } = input;
  // Whole counts meet a limit that is one itself up to the dust of binary fractions.
  const wanted = stage.leastBandV * (1 + marginFraction);
  const limit = wanted <= stage.bandV * (1 + 1e-9) ? Math.min(wanted, stage.bandV) : wanted;
  const checks = [judged({ name: `${speed}band`, value: stage.bandV, limit, unit: 'V', sense: 'atLeast' })];
  const { noCycle } = stage;
  const because = noCycle === null ? 'off the sensor' : NO_CYCLE[noCycle];
  const okWithoutNumber = noCycle === 'never-on' || noCycle === 'never-off';
  const add = (name: string, value: number | null, most: number | undefined, unit: string, sense: Check['sense']) => {
    if (most === undefined) return;
    const reached = name.endsWith('reached');
    const why = value === null ? { because, okWithoutNumber: okWithoutNumber && !reached } : {};
    checks.push(judged({ name: `${speed}${name}`, value, limit: most, unit, sense, ...why }));
  };
  add('highest reached', stage.highestValue, highestValue, '', 'atMost');
  add('lowest reached', stage.lowestValue, lowestValue, '', 'atLeast');
  add('time on', stage.onTimeS, leastOnTimeS, 's', 'atLeast');
  add('time off', stage.offTimeS, leastOffTimeS, 's', 'atLeast');
  add('starts', stage.cyclesPerH, mostCyclesPerH, '1/h', 'atMost');
  return checks;
}

function guard(fn: string, input: SwitchingBandInput): void {
  const { sensor, supplyV, referenceV, acts, first, second, highestValue, lowestValue } = input;
  needSwitchSensor(fn, sensor);
  needMoreThan(fn, 'supplyV', supplyV);
  if (referenceV !== null) needMoreThan(fn, 'referenceV', referenceV);
  needInteger(fn, 'converterBits', input.converterBits, 4);
  needBetween(fn, 'converterBits', input.converterBits, 4, 24);
  needOneOf(fn, 'acts', acts, ['lowers', 'raises']);
  needNoLessThan(fn, 'noiseV', input.noiseV);
  needNoLessThan(fn, 'delayS', input.delayS);
  needNoLessThan(fn, 'marginFraction', input.marginFraction);
  if (highestValue !== undefined) needEarthly(fn, 'highestValue', highestValue);
  if (lowestValue !== undefined) needEarthly(fn, 'lowestValue', lowestValue);
  for (const field of ['leastOnTimeS', 'leastOffTimeS', 'mostCyclesPerH'] as const) {
    const value = input[field];
    if (value !== undefined) needMoreThan(fn, field, value);
  }
  needStage(fn, 'first', input, input, first);
  if (second === undefined) return;
  needStage(fn, 'second', input, input, second);
  const way = acts === 'lowers' ? 1 : -1;
  if (!(way * (second.onValue - first.onValue) > 0)) {
    const must = `must lie beyond that of the first, ${first.onValue}`;
    throw new InputError(fn, 'second.onValue', 'order', second.onValue, must);
  }
}

function needStage(
  fn: string,
  field: 'first' | 'second',
  { acts, supplyV }: Pick<SwitchingBandInput, 'acts' | 'supplyV'>,
  end: SensorEnd,
  stage: SwitchStage,
): void {
  needObject(fn, field, stage);
  const { onValue, offValue, groundShiftV, supplyShiftV, directShiftValue, process } = stage;
  needEarthly(fn, `${field}.onValue`, onValue);
  needBetween(fn, `${field}.groundShiftV`, groundShiftV, -supplyV / 2, supplyV / 2);
  needBetween(fn, `${field}.supplyShiftV`, supplyShiftV, -supplyV / 2, supplyV / 2);
  if (!(supplyV + supplyShiftV - groundShiftV > supplyV / 4)) {
    const must = 'together with supplyShiftV must leave the sensor a quarter of its supply';
    throw new InputError(fn, `${field}.groundShiftV`, 'range', groundShiftV, must);
  }
  needEarthly(fn, `${field}.directShiftValue`, directShiftValue);
  if (process !== null) needProcess(fn, `${field}.process`, process);
  if (voltsOf(end, onValue) === null) {
    throw new InputError(fn, `${field}.onValue`, 'range', onValue, 'must lie where the sensor measures');
  }
  if (offValue === undefined) return;
  needEarthly(fn, `${field}.offValue`, offValue);
  if (!((acts === 'lowers' ? 1 : -1) * (onValue - offValue) > 0)) {
    const must = `must lie ${acts === 'lowers' ? 'below' : 'above'} onValue, ${onValue}, where the load ${acts}`;
    throw new InputError(fn, `${field}.offValue`, 'order', offValue, must);
  }
  if (voltsOf(end, offValue) === null) {
    throw new InputError(fn, `${field}.offValue`, 'range', offValue, 'must lie where the sensor measures');
  }
}
