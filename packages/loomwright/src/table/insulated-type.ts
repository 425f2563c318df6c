import type { SourceStatus } from '../source/index.js';
import type { ConductorTable, SizeKind, TableHeader } from './type.js';

/**
 * One size of insulated wire as printed, lengths and masses in the units of the table. A null is not printed.
 * The last word tells what to know of the row.
 */
export type InsulatedWireRow = readonly [
  size: string,
  conductorDiameter: number | null,
  wall: number | null,
  outerDiameter: number,
  mass: number | null,
  outerStatus: SourceStatus,
  massStatus: SourceStatus | null,
  note?: string,
];

/** Insulated wires of one type. A row is resolved, in mm and kg/m, by `insulatedWire`. */
export interface InsulatedWireTable extends TableHeader {
  readonly kind: 'insulated-wire';
  /** The type as the trade calls it. */
  readonly title: string;
  readonly sizes: SizeKind;
  /** Insulation in words. */
  readonly insulation: string;
  /** Density of the insulation, for sizes without a printed mass. */
  readonly insulationDensityKgPerM3: number;
  readonly lengthUnit: 'mm' | 'in';
  readonly massUnit: 'kg/km' | 'lb/kft';
  /** Whether the outer diameters are the largest allowed or what is usually found. */
  readonly outerIs: 'maximum' | 'typical';
  /** Temperature class in °C; null where the type comes in several classes (`classes`). */
  readonly maxTempC: number | null;
  readonly maxTempStatus: SourceStatus;
  /** Classes by their letter, in °C, where the type comes in several. */
  readonly classes?: readonly (readonly [letter: string, maxTempC: number])[];
  /** Table of the largest resistance of the same sizes, or null where we have none. */
  readonly resistance: ConductorTable | null;
  readonly rows: readonly InsulatedWireRow[];
  /** Smallest outer diameters, where they are printed beside the largest. */
  readonly leastOuter?: readonly (readonly [size: string, outerDiameter: number])[];
  /** Areas that differ from those of the number: of SAE and stranded AWG sizes. */
  readonly circularMils?: readonly (readonly [size: string, circularMils: number])[];
}
