/**
 * How far a value can be trusted.
 * `published`: read in a published text. `memory`: remembered from a standard that could not be read again.
 * `common-practice`: a rule of thumb of the trade. `derived`: our own arithmetic from one of the others.
 */
export type SourceStatus = 'published' | 'memory' | 'common-practice' | 'derived';

/** One source that results, tables, tests and pages cite by its key. */
export interface Source {
  /** What it is, as a reader would look it up. */
  readonly title: string;
  /** Who publishes it. */
  readonly publisher: string;
  /** Edition or year. */
  readonly edition?: string;
  /** The best status that anything taken from it has; a table or a value may rank lower and then says so itself. */
  readonly status: SourceStatus;
  /** What to know before relying on it. */
  readonly note?: string;
}
