import type { SourceStatus } from '../source/index.js';
import type { TableHeader } from './type.js';

/** What volts do to a filament lamp: everything goes with a power of V over the rated volts. */
export interface LampLaw extends TableHeader {
  readonly currentExponent: number;
  /** Light: the least and the largest exponent in use. */
  readonly lightExponents: readonly [low: number, high: number];
  /** Life: exponents of (rated volts over V), smaller first; null where no law holds. */
  readonly lifeExponents: readonly [low: number, high: number] | null;
  /** Colour temperature; null where none is given. */
  readonly colourExponent: number | null;
}

/** One filament of a lamp of a category. */
export interface LampRow {
  readonly category: string;
  /** Which filament of two, or `single`. */
  readonly filament: 'single' | 'main' | 'dipped' | 'stop' | 'tail';
  readonly nominalW: number;
  /** Voltage at which the largest power and the light hold. */
  readonly testV: number;
  /** Largest power allowed at the test voltage. */
  readonly mostW: number;
  readonly lightLumen: number;
  readonly status: SourceStatus;
}

/** Categories of lamps, as a regulation prints them. */
export interface LampTable extends TableHeader {
  readonly ratedV: number;
  readonly rows: readonly LampRow[];
}

/** What hangs on a contact, as far as closing and opening it goes. */
export type ContactLoad =
  | 'resistive'
  | 'lamp'
  | 'motor'
  | 'inductive'
  | 'solenoid'
  | 'capacitor'
  | 'transformer'
  | 'mercury-lamp'
  | 'sodium-lamp';

/**
 * How much more of a contact a kind of load asks for. `rating`: the resistive rating wanted over the running current.
 * `inrush`: the first current over the running one.
 */
export interface ContactRatioTable extends TableHeader {
  readonly use: 'rating' | 'inrush';
  /** Kind, then least and largest ratio; equal where one number is printed. */
  readonly rows: readonly (readonly [load: ContactLoad, low: number, high: number])[];
}

/** What a thing on a vehicle usually draws. */
export interface VehicleLoadRow {
  readonly name: string;
  /** Running current at 12 V in A: least and largest. */
  readonly runningA: readonly [low: number, high: number];
  /** First current over the running one, and how long it lasts in s; null where nothing is said. */
  readonly inrushRatio: readonly [low: number, high: number] | null;
  readonly inrushS: number | null;
}

/** Usual currents of things on a vehicle: a first guess until the thing itself has been measured. */
export interface VehicleLoadTable extends TableHeader {
  readonly rows: readonly VehicleLoadRow[];
}

/** Powers and currents of a textbook's list. */
export interface PowerListTable extends TableHeader {
  readonly ratedV: number;
  readonly rows: readonly (readonly [name: string, powerW: number, currentA: number])[];
}
