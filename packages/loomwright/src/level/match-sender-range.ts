import { InputError } from '../error/index.js';
import { needNoLessThan } from '../error/bounded.js';
import { needInput, needList, needObject } from '../error/guard.js';
import type { SourceStatus } from '../source/index.js';
import type { SenderRange, SenderRangeTable } from '../table/index.js';

export interface MatchSenderRangeInput {
  /** Ω of the sender with its float at empty and at full, measured, at least 0; not the same. */
  readonly emptyOhm: number;
  readonly fullOhm: number;
  /** Ranges to compare with. */
  readonly table: SenderRangeTable;
}

/** One range of the table against the sender. */
export interface SenderMatch {
  readonly name: string;
  readonly rangeEmptyOhm: number;
  readonly rangeFullOhm: number;
  /** How far the worse of both ends is off, and that as a share of the span of the range. */
  readonly offOhm: number;
  readonly offFraction: number;
  /** Whether the sender has these ohms the other way round: then it shows full for empty. */
  readonly turned: boolean;
  /** Whether both ends lie within the printed tolerance; null where none is printed. */
  readonly within: boolean | null;
  /** Ω of a straight sender of this range at empty, a quarter, a half, three quarters and full. */
  readonly quarterOhm: readonly number[];
  readonly status: SourceStatus;
}

export interface MatchSenderRangeResult extends SenderMatch {
  /** Every range, the nearest first. */
  readonly matches: readonly SenderMatch[];
}

/**
 * Which common range a sender on the bench comes nearest to, and what it should read at the quarters if it is straight.
 *
 * Ranges are common practice, not standards, and two senders of one range may differ by ten ohms. Measure the one at
 * hand and calibrate it with cans; a range is for buying a gauge and for knowing that a sender is turned round or worn.
 *
 * $$e = \frac{\max(|R_0 - R_{0,r}|, |R_1 - R_{1,r}|)}{|R_{1,r} - R_{0,r}|} \qquad
 * R(h) = R_{0,r} + (R_{1,r} - R_{0,r})\,h$$
 *
 * with the other figures that are printed for a range tried too, and both ends exchanged.
 *
 * @param input ohms at both ends, table
 * @returns the nearest range, how far off it is, whether turned, quarter points, and all others in order
 * @throws InputError when a field is missing or out of range, or both ends are the same
 * @source sender-range-pages (common practice)
 * @example matchSenderRange({ emptyOhm: 105, fullOhm: 5, table: senderRanges }).rangeEmptyOhm //=> 110
 */
export function matchSenderRange(input: MatchSenderRangeInput): MatchSenderRangeResult {
  const fn = 'matchSenderRange';
  needInput(fn, input);
  const { emptyOhm, fullOhm, table } = input;
  needNoLessThan(fn, 'emptyOhm', emptyOhm);
  needNoLessThan(fn, 'fullOhm', fullOhm);
  if (emptyOhm === fullOhm) throw new InputError(fn, 'fullOhm', 'order', fullOhm, 'must differ from emptyOhm');
  needObject(fn, 'table', table);
  needList(fn, 'table.rows', table.rows, 1);
  const matches = table.rows
    .map((range) => matchOf(range, emptyOhm, fullOhm))
    .sort((a, b) => a.offFraction - b.offFraction);
  return { ...(matches[0] as SenderMatch), matches };
}

function matchOf(range: SenderRange, emptyOhm: number, fullOhm: number): SenderMatch {
  const { name, emptyOhm: e, fullOhm: f, emptyToleranceOhm, fullToleranceOhm, direction, status } = range;
  const span = Math.abs(f - e);
  const off = (empty: number, full: number): number => {
    const least = (measured: number, ...printed: readonly (number | undefined)[]): number =>
      Math.min(...printed.filter((ohm) => ohm !== undefined).map((ohm) => Math.abs(measured - ohm)));
    return Math.max(least(empty, e, range.alsoEmptyOhm), least(full, f, range.alsoFullOhm));
  };
  const straight = off(emptyOhm, fullOhm);
  const round = off(fullOhm, emptyOhm);
  const other = round < straight;
  const [empty, full] = other ? [fullOhm, emptyOhm] : [emptyOhm, fullOhm];
  return {
    name,
    rangeEmptyOhm: e,
    rangeFullOhm: f,
    offOhm: other ? round : straight,
    offFraction: (other ? round : straight) / span,
    turned: other && direction === 'printed',
    within:
      emptyToleranceOhm === null || fullToleranceOhm === null
        ? null
        : Math.abs(empty - e) <= emptyToleranceOhm && Math.abs(full - f) <= fullToleranceOhm,
    quarterOhm: [0, 0.25, 0.5, 0.75, 1].map((level) => e + (f - e) * level),
    status,
  };
}
