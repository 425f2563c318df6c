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
  /** The areas of the sizes where the publication prints them beside a resistance, in circular mils. */
  readonly circularMils?: readonly (readonly [size: string, circularMils: number])[];
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
  /** The areas of the sizes where the publication prints its own, in circular mils. */
  readonly circularMils?: readonly (readonly [size: string, circularMils: number])[];
  /** The size, then the amperes for each class. */
  readonly rows: readonly (readonly [size: string, ...amperes: number[]])[];
}

/** Opening times of one group of ratings: per cent of rating, shortest and longest time in s; null where unsaid. */
export interface FuseLimits {
  /** The group holds for ratings up to and including this, in A. */
  readonly upToA: number;
  readonly status: SourceStatus;
  readonly rows: readonly (readonly [percent: number, shortestS: number | null, longestS: number | null])[];
}

/** A family of fuses: limits that a standard sets for all makers, and typical figures of components. */
export interface FuseFamily extends TableHeader {
  readonly ratingsA: readonly number[];
  readonly ratedV: number;
  /** Largest current in A that the fuse can interrupt at its rated voltage; null where no figure is known. */
  readonly interruptA: number | null;
  /** Groups in rising order of rating. */
  readonly limits: readonly FuseLimits[];
  /** Typical resistance cold, in mΩ. */
  readonly coldMilliohm: readonly (readonly [ratingA: number, milliohm: number])[];
  /** Typical drop at rated current, hot, in mV. */
  readonly dropMillivolt: readonly (readonly [ratingA: number, millivolt: number])[];
  /** Typical melting I²t in A²s: for nuisance opening only, never to show protection. */
  readonly meltingI2t: readonly (readonly [ratingA: number, i2tA2s: number])[];
  /** Share of the rating that may be used at an ambient temperature. */
  readonly ambientFactor: readonly (readonly [tempC: number, factor: number])[];
}

/** Preferred numbers of one decade, as a standard prints them: whole numbers of two or three digits. */
export interface PreferredSeries extends TableHeader {
  /** The tolerance that parts of the series usually have. A part's own may be tighter. */
  readonly usualToleranceFraction: number;
  readonly values: readonly number[];
}

/** The most volts that a class of circuit may lose, out and back, with the wire hot. */
export interface DropBudget extends TableHeader {
  /** Which circuits it is for. */
  readonly circuits: string;
  readonly dropV: number;
}
