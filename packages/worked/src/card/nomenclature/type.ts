/** One name of the nomenclature. */
export interface Term {
  /** What it means, in a few words: the label of a field. */
  readonly label: string;
  /** TeX symbol. */
  readonly symbol: string;
}

/** Terms by the name that code uses; the unit is at the end of the name. */
export type Terms = Readonly<Record<string, Term>>;
