import { InputError } from '../error/index.js';
import { needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needAtLeast, needBetween, needInput, needList, needOneOf, needTempC } from '../error/guard.js';
import type { SourceKey, SourceStatus } from '../source/index.js';
import type { ThermistorCurve } from '../table/index.js';
import { atResistance, atTemp, type Law, lawOf, needWithin } from './law.js';
import { needPull, type PullInput, pullOhms, pullVolts } from './pull.js';
import { provenance } from './thermistor-temperature.js';

export interface ThermistorErrorBudgetInput extends PullInput {
  /** The curve that the reading is turned into °C by. */
  readonly curve: ThermistorCurve;
  /** Temperatures in °C at which the errors are wanted, one at least. */
  readonly tempsC: readonly number[];
  /** Tolerance of the fixed resistor as a fraction, 0 to 0.5. */
  readonly pullToleranceFraction: number;
  /** How far the sensor's resistance may lie from its curve, as a fraction, 0 to 0.5. One of the two. */
  readonly sensorToleranceFraction?: number;
  /** How far the sensor may lie from its curve, in K, at least 0. */
  readonly sensorToleranceK?: number;
  /** Steps of the converter over the supply, such as 1024 or 1023. */
  readonly adcSteps: number;
  /** Total error of the converter in counts, at least 0.5 (its rounding alone). */
  readonly adcErrorCounts: number;
  /** `ratiometric`: the converter measures against the divider's own supply. `absolute`: against something else. */
  readonly reference: 'ratiometric' | 'absolute';
  /** Supply against the converter's reference as a fraction, 0 to 0.5; required where the reference is absolute. */
  readonly supplyToleranceFraction?: number;
  /** Heat in mW that warms the sensor by 1 K; self-heating is left out unless given. */
  readonly dissipationMwPerK?: number;
  /** Go on beyond the range that the curve is meant for; false unless given. */
  readonly extrapolate?: boolean;
}

/** The errors at one temperature, each the larger of its two signs, in K. */
export interface ErrorBudgetRow {
  readonly tempC: number;
  readonly inputV: number;
  /** By the fixed resistor alone. */
  readonly pullK: number | null;
  /** By the sensor alone. */
  readonly sensorK: number | null;
  /** By the converter alone. */
  readonly adcK: number | null;
  /** By the supply alone; 0 where the reading is ratiometric. */
  readonly supplyK: number | null;
  /** By self-heating: always too hot; 0 where no dissipation was given. */
  readonly heatK: number | null;
  /** Farthest too hot with everything at its worst. */
  readonly worstHighK: number | null;
  /** Farthest too cold with everything at its worst: below 0. */
  readonly worstLowK: number | null;
  /** Root of the sum of the squares of the four, plus self-heating. */
  readonly rootSumSquareK: number | null;
  /** Why there is no number: the input can reach the end of its range, where nothing is known. */
  readonly code: 'reaches-the-end' | null;
}

export interface ThermistorErrorBudgetResult {
  readonly rows: readonly ErrorBudgetRow[];
  /** Largest error in K with everything at its worst, or null where a row has none. */
  readonly worstK: number | null;
  /** Temperature in °C of that row. */
  readonly worstTempC: number | null;
  /** What counts most there. */
  readonly decidedBy: 'fixed resistor' | 'sensor' | 'converter' | 'supply' | 'self-heating' | null;
  readonly source: SourceKey;
  readonly sourceStatus: SourceStatus;
}

/**
 * How far a thermistor reading may be off, in K, over the range: fixed resistor, sensor, converter, supply,
 * self-heating.
 *
 * Each corner is worked through the divider and back by the curve: nothing is made straight. The errors grow where
 * sensor and fixed resistor differ most, so the fixed resistor belongs near the sensor's value in the middle of
 * what matters.
 *
 * @param input divider, curve, tolerances, converter, temperatures
 * @returns a row of errors a temperature, the worst, what counts most there
 * @throws InputError when a field is missing or out of range
 * @source circuit-theory; the curve's own
 * @example thermistorErrorBudget({ curve: ntc2252, side: 'sensor-to-ground', supplyV: 5, pullOhm: 2252, tempsC: [25], pullToleranceFraction: 0.01, sensorToleranceK: 0.2, adcSteps: 1024, adcErrorCounts: 1, reference: 'ratiometric' }).rows[0].pullK //=> 0.23
 */
export function thermistorErrorBudget(input: ThermistorErrorBudgetInput): ThermistorErrorBudgetResult {
  const fn = 'thermistorErrorBudget';
  needInput(fn, input);
  const { curve, tempsC, extrapolate = false } = input;
  const law = lawOf(fn, curve);
  needPull(fn, input);
  needTolerances(fn, input);
  needList(fn, 'tempsC', tempsC, 1);
  const rows = tempsC.map((tempC, i) => {
    needTempC(fn, `tempsC[${i}]`, tempC);
    needWithin(fn, curve, atTemp(fn, law, tempC), extrapolate, 'tempC', tempC);
    return budgetRow(fn, law, input, tempC);
  });
  const incomplete = rows.some(({ code }) => code !== null);
  const size = ({ worstHighK, worstLowK }: ErrorBudgetRow): number => Math.max(worstHighK ?? 0, -(worstLowK ?? 0));
  const worst = rows.reduce((found, row) => (size(row) > size(found) ? row : found));
  const parts = [
    ['fixed resistor', worst.pullK],
    ['sensor', worst.sensorK],
    ['converter', worst.adcK],
    ['supply', worst.supplyK],
    ['self-heating', worst.heatK],
  ] as const;
  const largest = parts.reduce((found, part) => ((part[1] ?? 0) > (found[1] ?? 0) ? part : found));
  return {
    rows,
    worstK: incomplete ? null : size(worst),
    worstTempC: incomplete ? null : worst.tempC,
    decidedBy: incomplete ? null : largest[0],
    ...provenance(curve),
  };
}

function needTolerances(fn: string, input: ThermistorErrorBudgetInput): void {
  const { sensorToleranceFraction, sensorToleranceK, supplyToleranceFraction } = input;
  needBetween(fn, 'pullToleranceFraction', input.pullToleranceFraction, 0, 0.5, 'a fraction: 1 % is 0.01');
  if ((sensorToleranceFraction === undefined) === (sensorToleranceK === undefined)) {
    const must = 'or sensorToleranceK must be given, one only';
    throw new InputError(fn, 'sensorToleranceFraction', 'oneOfFields', sensorToleranceFraction, must);
  }
  if (sensorToleranceFraction !== undefined) {
    needBetween(fn, 'sensorToleranceFraction', sensorToleranceFraction, 0, 0.5, 'a fraction: 1 % is 0.01');
  }
  if (sensorToleranceK !== undefined) needNoLessThan(fn, 'sensorToleranceK', sensorToleranceK);
  needMoreThan(fn, 'adcSteps', input.adcSteps, 1);
  needAtLeast(fn, 'adcErrorCounts', input.adcErrorCounts, 0.5, 'rounding alone is half a count');
  needOneOf(fn, 'reference', input.reference, ['ratiometric', 'absolute']);
  if (input.reference === 'absolute') {
    needBetween(fn, 'supplyToleranceFraction', supplyToleranceFraction as number, 0, 0.5, 'a fraction: 1 % is 0.01');
  }
  if (input.dissipationMwPerK !== undefined) needMoreThan(fn, 'dissipationMwPerK', input.dissipationMwPerK);
}

/** What is at its limit, as −1, 0 or 1 each; heat as 0 or 1. */
interface Corner {
  readonly pull: number;
  readonly sensor: number;
  readonly adc: number;
  readonly supply: number;
  readonly heat: number;
}

function budgetRow(fn: string, law: Law, input: ThermistorErrorBudgetInput, tempC: number): ErrorBudgetRow {
  const nothing: Corner = { pull: 0, sensor: 0, adc: 0, supply: 0, heat: 0 };
  const error = (corner: Corner): number | null => readingError(fn, law, input, tempC, corner);
  const larger = (part: 'pull' | 'sensor' | 'adc' | 'supply'): number | null => {
    const up = error({ ...nothing, [part]: 1 });
    const down = error({ ...nothing, [part]: -1 });
    return up === null || down === null ? null : Math.max(Math.abs(up), Math.abs(down));
  };
  const pullK = larger('pull');
  const sensorK = larger('sensor');
  const adcK = larger('adc');
  const supplyK = input.reference === 'absolute' ? larger('supply') : 0;
  const heatK = input.dissipationMwPerK === undefined ? 0 : error({ ...nothing, heat: 1 });
  let worstHighK: number | null = 0;
  let worstLowK: number | null = 0;
  for (let bits = 0; bits < 32; bits++) {
    const sign = (bit: number): number => ((bits >> bit) & 1) * 2 - 1;
    const off = error({ pull: sign(0), sensor: sign(1), adc: sign(2), supply: sign(3), heat: (bits >> 4) & 1 });
    worstHighK = off === null || worstHighK === null ? null : Math.max(worstHighK, off);
    worstLowK = off === null || worstLowK === null ? null : Math.min(worstLowK, off);
  }
  const parts = [pullK, sensorK, adcK, supplyK];
  const known = worstHighK !== null && worstLowK !== null && heatK !== null && !parts.includes(null);
  return {
    tempC,
    inputV: pullVolts(input, atTemp(fn, law, tempC).resistanceOhm).inputV,
    pullK,
    sensorK,
    adcK,
    supplyK,
    heatK,
    worstHighK: known ? worstHighK : null,
    worstLowK: known ? worstLowK : null,
    rootSumSquareK: known ? Math.hypot(...(parts as number[])) + heatK : null,
    code: known ? null : 'reaches-the-end',
  };
}

/** What the reading says less what is, in K, or null where the input reaches an end. */
function readingError(
  fn: string,
  law: Law,
  input: ThermistorErrorBudgetInput,
  tempC: number,
  corner: Corner,
): number | null {
  const { sensorToleranceFraction = 0, sensorToleranceK = 0, supplyToleranceFraction = 0 } = input;
  const actual = {
    ...input,
    pullOhm: input.pullOhm * (1 + corner.pull * input.pullToleranceFraction),
    supplyV: input.supplyV * (1 + corner.supply * (input.reference === 'absolute' ? supplyToleranceFraction : 0)),
  };
  let sensorTempC = tempC + corner.sensor * sensorToleranceK;
  const ohmAt = (t: number): number => atTemp(fn, law, t).resistanceOhm * (1 + corner.sensor * sensorToleranceFraction);
  if (corner.heat === 1 && input.dissipationMwPerK !== undefined) {
    // One step is enough here: the rise is small against what the heat depends on.
    sensorTempC += (pullVolts(actual, ohmAt(sensorTempC)).sensorW * 1000) / input.dissipationMwPerK;
  }
  const { inputV } = pullVolts(actual, ohmAt(sensorTempC));
  const against = input.reference === 'absolute' ? input.supplyV : actual.supplyV;
  const fraction = inputV / against + (corner.adc * input.adcErrorCounts) / input.adcSteps;
  if (!(fraction > 0 && fraction < 1)) return null;
  const read = pullOhms(fn, input, fraction * input.supplyV);
  if ('fault' in read) return null;
  try {
    return atResistance(fn, law, read.ohm).tempC - tempC;
  } catch (error) {
    // A corner may leave the part of the curve that falls: then the reading means nothing.
    if ((error as Partial<InputError>).code !== 'LOOMWRIGHT_INPUT') throw error;
    return null;
  }
}
