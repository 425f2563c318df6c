/** The answer to a design that cannot be met: no exception, but the reason and the nearest that can. */
export interface NotPossible<Nearest> {
  readonly possible: false;
  /** A stable word for the kind of reason. */
  readonly code: string;
  /** The reason in a sentence. */
  readonly because: string;
  /** The nearest design, or null where there is none. */
  readonly nearest: Nearest | null;
}
