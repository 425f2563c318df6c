import { InputError } from '../error/index.js';
import { needNoLessThan } from '../error/bounded.js';
import { needList, needObject, needOwnName } from '../error/guard.js';

/** What a meter shows across one part while cranking. */
export interface CrankingReading {
  /** Name of the part; `battery` for the volts that its posts fall by. */
  readonly name: string;
  /** Volts across it, at least 0. */
  readonly readingV: number;
}

/** A reading against what was to be expected. */
export interface JudgedReading {
  /** Predicted volts; with a measured current the resistance times that. */
  readonly expectedV: number;
  /** A reading above this means a bad joint. */
  readonly badAboveV: number;
  readonly readingV: number | null;
  /** `below`: less than expected by as much; then the current is less, or the resistance was put too high. */
  readonly verdict: 'sound' | 'bad' | 'below' | null;
  /** Resistance too much, in Ω, where it is bad; else null. */
  readonly extraOhm: number | null;
}

/** Throws unless each reading is of a part, and of each at most one. */
export function needReadings(fn: string, readings: readonly CrankingReading[], names: readonly string[]): void {
  needList(fn, 'readings', readings);
  const read = new Set<string>();
  readings.forEach((reading, i) => {
    const at = `readings[${i}]`;
    needObject(fn, at, reading);
    needOwnName(fn, `${at}.name`, reading.name, read);
    if (!names.includes(reading.name)) {
      throw new InputError(fn, `${at}.name`, 'inTable', reading.name, `must be one of ${names.join(', ')}`);
    }
    needNoLessThan(fn, `${at}.readingV`, reading.readingV);
  });
}

/** One part's reading against its resistance times the current. */
export function judgeReading(
  name: string,
  resistanceOhm: number,
  currentA: number,
  deviationV: number,
  readings: readonly CrankingReading[],
): JudgedReading {
  const expectedV = resistanceOhm * currentA;
  const badAboveV = expectedV + deviationV;
  const readingV = readings.find((reading) => reading.name === name)?.readingV ?? null;
  if (readingV === null) return { expectedV, badAboveV, readingV, verdict: null, extraOhm: null };
  const verdict = readingV > badAboveV ? 'bad' : readingV < expectedV - deviationV ? 'below' : 'sound';
  return {
    expectedV,
    badAboveV,
    readingV,
    verdict,
    extraOhm: verdict === 'bad' ? (readingV - expectedV) / currentA : null,
  };
}
