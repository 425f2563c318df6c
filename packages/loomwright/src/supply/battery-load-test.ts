import { type Check, makeCheck, tightestCheck } from '../check/index.js';
import { needMoreThan, needNoLessThan } from '../error/bounded.js';
import { InputError } from '../error/index.js';
import { needBetween, needInput } from '../error/guard.js';
import type { SourceKey, SourceStatus } from '../source/index.js';
import type { LoadTestTable } from '../table/index.js';

export interface BatteryLoadTestInput {
  /** The list to go by: `loadTestToMinus18`, `loadTestToMinus12`, `loadTest190A`. */
  readonly rule: LoadTestTable;
  /** Cold-cranking rating of the battery in A, above 0; needed where the list's load is a share of it. */
  readonly ratedA?: number;
  /** Temperature of the battery in °C, from the coldest row of the list to 80. */
  readonly batteryTempC: number;
  /** Volts read at the end of the test, at least 0; left out before it. */
  readonly readingV?: number;
}

export interface BatteryLoadTestResult {
  /** Load to be set in A, and for how long in s. */
  readonly testA: number;
  readonly testS: number;
  /** Least volts at the posts at the end. */
  readonly leastV: number;
  /** Temperature of the row that holds: the nearest that is not colder than the battery, or the warmest. */
  readonly rowTempC: number;
  /** The reading against the least volts; empty without a reading. */
  readonly checks: readonly Check[];
  readonly decidedBy: string;
  readonly source: SourceKey;
  readonly sourceStatus: SourceStatus;
}

/**
 * Load and least volts of a battery's load test at its temperature, by a list that is named, and the verdict.
 *
 * Use it on a battery that is charged first: a flat one fails and may be sound. Between two rows the warmer one
 * holds, which asks for more volts; above the warmest row that row holds.
 *
 * $$I = f\,I_\mathrm{rated} \qquad V \ge V_i,\quad T_i = \min\{T_k \ge T\}$$
 *
 * @param input list, rating, temperature, reading
 * @returns amperes and seconds to be set, least volts, the check of a reading
 * @throws InputError when a field is missing or out of range, or the battery is colder than the list goes
 * @source battery-load-test; common-practice
 * @example batteryLoadTest({ rule: loadTestToMinus18, ratedA: 600, batteryTempC: 7 }).leastV //=> 9.4
 */
export function batteryLoadTest(input: BatteryLoadTestInput): BatteryLoadTestResult {
  const fn = 'batteryLoadTest';
  needInput(fn, input);
  const { rule, ratedA, batteryTempC, readingV } = input;
  needRule(fn, rule);
  const { loadFraction, loadA, testS, rows, source, status } = rule;
  if (loadA === null) needMoreThan(fn, 'rule.loadFraction', loadFraction as number);
  else needMoreThan(fn, 'rule.loadA', loadA);
  if (ratedA !== undefined || loadA === null) needMoreThan(fn, 'ratedA', ratedA as number);
  const [coldest] = rows.at(-1) as readonly [number, number];
  needBetween(
    fn,
    'batteryTempC',
    batteryTempC,
    coldest,
    80,
    batteryTempC < coldest ? 'the list ends there' : undefined,
  );
  const holding = rows.filter(([tempC], i) => i === 0 || tempC >= batteryTempC);
  const [rowTempC, leastV] = holding.at(-1) as readonly [number, number];
  if (readingV !== undefined) needNoLessThan(fn, 'readingV', readingV);
  const checks =
    readingV === undefined
      ? []
      : [
          makeCheck({
            name: 'volts at the end of the load test',
            value: readingV,
            limit: leastV,
            unit: 'V',
            sense: 'atLeast',
            source,
            sourceStatus: status,
          }),
        ];
  return {
    testA: loadA ?? (loadFraction as number) * (ratedA as number),
    testS,
    leastV,
    rowTempC,
    checks,
    decidedBy: tightestCheck(checks)?.name ?? '',
    source,
    sourceStatus: status,
  };
}

function needRule(fn: string, rule: LoadTestTable): void {
  if (typeof rule !== 'object' || rule === null || !Array.isArray(rule.rows) || rule.rows.length === 0) {
    const kind = rule === undefined || rule === null ? 'missing' : 'object';
    throw new InputError(fn, 'rule', kind, rule, 'must be a list of a load test', 'import one: loadTestToMinus18');
  }
}
