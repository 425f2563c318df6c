import type { SourceKey, SourceStatus } from '../source/index.js';

/** One limit that a result was judged by. */
export interface Check {
  /** Which limit, in a few words of the trade; stable, so that a caller can look for it. */
  readonly name: string;
  /** What was found, or null where there is no number (then `because` says why). */
  readonly value: number | null;
  /** What it was judged by, or null where the rule has no number. */
  readonly limit: number | null;
  /** Unit of both. */
  readonly unit: string;
  /** Whether the value must stay at or below, or at or above, the limit. */
  readonly sense: 'atMost' | 'atLeast';
  /** Room left as a fraction of the limit: 0 or more is met. Null where value or limit is. */
  readonly marginFraction: number | null;
  /** Whether the limit is met. */
  readonly ok: boolean;
  /** Where the limit comes from. */
  readonly source: SourceKey;
  /** How far that can be trusted. */
  readonly sourceStatus: SourceStatus;
  /** Why there is no number, or what a reader should know. */
  readonly because?: string;
}

/** What `makeCheck` needs: a check without its verdict. */
export interface CheckInput {
  readonly name: string;
  readonly value: number | null;
  readonly limit: number | null;
  readonly unit: string;
  readonly sense: 'atMost' | 'atLeast';
  readonly source: SourceKey;
  readonly sourceStatus: SourceStatus;
  readonly because?: string;
  /** The verdict where value or limit is null; ignored otherwise. */
  readonly okWithoutNumber?: boolean;
}

/**
 * A check with its margin and verdict worked out. The comparison is exact: nothing is rounded before it.
 *
 * $$m = \pm\frac{\mathrm{limit} - \mathrm{value}}{|\mathrm{limit}|}$$
 *
 * plus for `atMost`, minus for `atLeast`; against a limit of 0 only its sign.
 *
 * @param input the check without its verdict
 * @returns the check; without a margin where value or limit is null, and then with the verdict that was given
 * @throws nothing: its callers have checked their numbers
 * @source the limit's own
 * @example makeCheck({ name: 'volts at the pump', value: 12.6, limit: 12, unit: 'V', sense: 'atLeast', source: 'given-by-caller', sourceStatus: 'derived' }).marginFraction //=> 0.05
 */
export function makeCheck(input: CheckInput): Check {
  const { name, value, limit, unit, sense, source, sourceStatus, because } = input;
  let ok = input.okWithoutNumber ?? false;
  let marginFraction: number | null = null;
  if (value !== null && limit !== null) {
    ok = sense === 'atMost' ? value <= limit : value >= limit;
    const room = sense === 'atMost' ? limit - value : value - limit;
    const share = room / Math.abs(limit);
    marginFraction = Number.isFinite(share) ? share : Math.sign(room);
  }
  const check = { name, value, limit, unit, sense, marginFraction, ok, source, sourceStatus };
  return because === undefined ? check : { ...check, because };
}

/**
 * The check with the least room: a failed one before a met one; among the failed one without a number comes first,
 * among the met ones last. Of two alike the first stays.
 *
 * @param checks the checks of one answer
 * @returns the one that decided, or null where there are none
 * @throws nothing
 * @source the check's own
 * @example tightestCheck([]) //=> null
 */
export function tightestCheck(checks: readonly Check[]): Check | null {
  let tightest: Check | null = null;
  for (const check of checks) {
    if (tightest === null || isTighter(check, tightest)) tightest = check;
  }
  return tightest;
}

function isTighter(a: Check, b: Check): boolean {
  if (a.ok !== b.ok) return b.ok;
  const none = a.ok ? Infinity : -Infinity;
  return (a.marginFraction ?? none) < (b.marginFraction ?? none);
}
