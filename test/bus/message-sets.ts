// Published sets of messages, from the highest priority to the lowest.
import type { CanMessage, TimedMessage } from 'loomwright';

const BENCHMARK_ROWS = [
  [1, 50],
  [2, 5],
  [1, 5],
  [2, 5],
  [1, 5],
  [2, 5],
  [6, 10],
  [1, 10],
  [2, 10],
  [2, 10],
  [1, 100],
  [4, 100],
  [1, 100],
  [1, 100],
  [3, 1000],
  [1, 1000],
  [1, 1000],
] as const;

const named = (rows: readonly (readonly [bytes: number, periodMs: number])[]): readonly CanMessage[] =>
  rows.map(([dataByteCount, ms], i) => ({ name: `${i + 1}`, idBits: 11, dataByteCount, periodS: ms / 1000 }));

/** The benchmark of 17 messages (Tindell and Burns 1994): bytes and ms. */
export const BENCHMARK = named(BENCHMARK_ROWS);

/** The set of Broster and others (2002). */
export const BROSTER = named([
  [8, 10],
  [3, 14],
  [3, 20],
  [2, 15],
  [5, 20],
  [5, 40],
  [4, 15],
  [5, 50],
  [4, 20],
  [7, 100],
  [5, 50],
  [1, 100],
]);

/** Messages of which nothing is asked, and which are never late. */
export const untimed = (messages: readonly CanMessage[]): readonly TimedMessage[] =>
  messages.map((message) => ({ ...message, deadlineS: null, jitterS: 0 }));
