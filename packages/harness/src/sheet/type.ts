import type { CautionKey } from '@loomwright/worked/card';

// Sheets as data. Numbers are unrounded and in the unit of their column; the writers (CSV, Markdown, HTML) round them
// in one place, so that a figure reads the same wherever it is printed.

/** What stands in a cell: a text, a number in the column's unit, or nothing. */
export type SheetCell = string | number | null;

/** A row: cells by the key of their column. */
export type SheetRow = Readonly<Record<string, SheetCell>>;

/** A column of a table. */
export interface SheetColumn {
  /** Key of its cells; a number's key ends in its unit. */
  readonly key: string;
  readonly head: string;
  /** `tick`: a box for a pencil. `blank`: a line on which a measured value is written. */
  readonly kind: 'text' | 'number' | 'tick' | 'blank';
  /** Unit of a number; of what is to be written, for a blank. */
  readonly unit?: string;
  /** Digits after the point. */
  readonly decimals?: number;
  /** Significant digits, with unit and prefix in the cell: for columns whose figures differ by powers of ten. */
  readonly digits?: number;
  /** Towards the side that flatters nothing; `nearest` unless given. */
  readonly round?: 'up' | 'down' | 'nearest';
  /** Key of a second text that stands below the first where there is room. */
  readonly under?: string;
  /** Name of that second text. */
  readonly underHead?: string;
  /** Said elsewhere on the sheet (by the table's title, by a label): left out on paper, kept in CSV and data. */
  readonly dataOnly?: true;
  /** Leaves out noughts at the end of the fraction: ratings and what else somebody chose from a list. */
  readonly trim?: true;
  /** Share of the table's width on paper, so that tables under one another line up; any scale. */
  readonly share?: number;
  /** Kept on one line. */
  readonly short?: true;
}

/** A table with ruled rows. */
export interface SheetTable {
  readonly title: string;
  /** Name of its CSV file without the ending; tables with the same name have the same columns and share it. */
  readonly file: string;
  readonly note: string | null;
  readonly columns: readonly SheetColumn[];
  readonly rows: readonly SheetRow[];
  /** Sums below the rows. */
  readonly foot: readonly SheetRow[];
}

/** One sheet. */
export interface Sheet {
  readonly key: 'findings' | 'wires' | 'fuses' | 'cuts' | 'loads' | 'grounds' | 'alive' | 'readings';
  readonly title: string;
  /** How it is read, in a sentence or two. */
  readonly lead: string;
  /** Lies on its side: many columns. */
  readonly landscape: boolean;
  readonly tables: readonly SheetTable[];
  readonly cautions: readonly CautionKey[];
}

/** How many findings there are of each kind. */
export interface Standing {
  readonly failCount: number;
  readonly warnCount: number;
  readonly noteCount: number;
}

/** All sheets of one plan. */
export interface SheetSet {
  readonly vehicle: string;
  readonly note: string | null;
  readonly standing: Standing;
  readonly findings: Sheet;
  readonly wires: Sheet;
  readonly fuses: Sheet;
  readonly cuts: Sheet;
  readonly loads: Sheet;
  readonly grounds: Sheet;
  readonly alive: Sheet;
  readonly readings: Sheet;
  /** What the plan does not look at. */
  readonly notJudged: readonly string[];
}

/** What a person adds to a printed sheet. */
export interface SheetHeader {
  /** Date in the person's own way of writing; a blank to fill in unless given. */
  readonly date?: string;
}
