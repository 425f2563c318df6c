import type { ResolvedSize } from '../conductor/index.js';
import type { SourceKey, SourceStatus } from '../source/index.js';
import type { BalanceHeating } from './heating-by-balance.js';
import type { TableHeating } from './heating-by-table.js';

/** What a wire bears and how hot a current makes it, by one way of judging. */
export interface Heated {
  /** Current in A that brings the conductor to its class; 0 where it bears none, and `because` says why. */
  readonly ampacityA: number;
  /** Conductor temperature in °C at a current in A; null beyond what can be said (above 400 °C). */
  readonly tempC: (currentA: number) => number | null;
  /** Why the wire bears nothing by this rule, or null. */
  readonly because: string | null;
  readonly source: SourceKey;
  readonly status: SourceStatus;
}

/**
 * How a wire's heating is judged. The rule is handed in as a function (`by`), so that nobody pays for the rules that
 * they do not use: `heatingByTable` or `heatingByBalance`.
 */
export type Heating = TableHeating | BalanceHeating;

/** Judges the heating of one size by the rule that it names. */
export function heat(heating: Heating, size: ResolvedSize): Heated {
  return (heating.by as (input: Heating & { readonly size: ResolvedSize }) => Heated)({ ...heating, size });
}
