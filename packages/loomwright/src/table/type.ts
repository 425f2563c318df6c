import type { SourceKey, SourceStatus } from '../source/index.js';

/** How a table names its sizes. AWG numbers, SAE gauge numbers and mm² are three different things. */
export type SizeKind = 'mm2' | 'awg' | 'sae';

/** What every published table says about itself. */
export interface TableHeader {
  /** Stable key, used in results. */
  readonly key: string;
  readonly source: SourceKey;
  readonly status: SourceStatus;
  /** Edition, table and page, conditions, errata. */
  readonly place: string;
}

/**
 * Conductor sizes with the resistance or the area that a publication prints, in its own units.
 * A row is the size and the printed value; convert with `wireResistance`.
 */
export interface ConductorTable extends TableHeader {
  readonly kind: 'table';
  readonly sizes: SizeKind;
  readonly metal: 'copper' | 'tinned-copper' | 'aluminium';
  /** Temperature at which the printed resistance holds. */
  readonly ratedTempC: number;
  /** What the second column is. An area is turned into the resistance of annealed copper of that area. */
  readonly prints: 'ohm/km' | 'ohm/kft' | 'circular-mils';
  readonly rows: readonly (readonly [size: string, printed: number])[];
}

/** Resistance from area alone: the ideal that no stranded wire reaches. */
export interface GeometricBasis {
  readonly kind: 'geometric';
  readonly key: 'geometric';
}

/** Which resistance a size is taken to have: a published table, or geometry alone. */
export type ResistanceBasis = GeometricBasis | ConductorTable;

/** Amperes by size and insulation class, as printed, at the table's own base temperature. */
export interface AmpacityTable extends TableHeader {
  readonly sizes: SizeKind;
  /** Ambient temperature of the printed amperes. A correction factor starts from this and no other. */
  readonly baseTempC: number;
  /** Insulation classes, one a column. */
  readonly classesC: readonly number[];
  /** The size, then the amperes for each class. */
  readonly rows: readonly (readonly [size: string, ...amperes: number[]])[];
}
