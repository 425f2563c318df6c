import type { SourceKey, SourceStatus } from '../source/index.js';
import type { SizeKind, TableHeader } from './type.js';

/** Surface of a contact. */
export type Plating = 'tin' | 'silver' | 'gold' | 'nickel';

/** How the current of a contact falls as its surroundings get hotter. */
export type ContactDerating =
  | {
      /** By points that are printed: ambient temperature in °C and the current in A that is allowed there. */
      readonly kind: 'points';
      readonly points: readonly (readonly [ambientTempC: number, currentA: number])[];
    }
  | {
      /** By the form of IEC 60512-5-2, from one test. */
      readonly kind: 'rise';
      /** Rise in K of the contact above its surroundings at its rated current. */
      readonly ratedRiseK: number;
      /** Largest temperature of the contact in °C. */
      readonly maxTempC: number;
      /** Share of the base curve that may be used: 0.8 by the standard. */
      readonly reductionFraction: number;
    };

/** What a terminal takes and bears. */
export interface Terminal {
  /** As the trade calls it. */
  readonly name: string;
  /** Smallest and largest conductor that the crimp takes, in mm². */
  readonly areaLeastMm2: number;
  readonly areaMostMm2: number;
  /** Smallest and largest diameter over the insulation that its seal or grip takes, in mm. */
  readonly insulationLeastMm?: number;
  readonly insulationMostMm?: number;
  /** Current of one loaded contact by itself, in A, with the largest wire. */
  readonly ratedCurrentA: number;
  /** How that falls with heat; without it no current can be promised in the warm. */
  readonly derating?: ContactDerating;
  /** Resistance of the contact in Ω at the end of its life. */
  readonly contactOhm?: number;
  readonly plating?: Plating;
  /** Where these figures come from; the caller unless given. */
  readonly source?: SourceKey;
  /** How far they can be trusted. */
  readonly status: SourceStatus;
  readonly note?: string;
}

/** Terminals of one family. */
export interface TerminalTable extends TableHeader {
  readonly rows: readonly Terminal[];
}

/** Factors on the current of one contact by wire and by the share of contacts in use. */
export interface LoadingTable extends TableHeader {
  /** Gauges of the columns, thinnest first. */
  readonly gauges: readonly string[];
  /** Factors of a contact alone, a column a gauge. */
  readonly singleFactors: readonly number[];
  /** Per cent of contacts in use, rising, then the factors. */
  readonly rows: readonly (readonly [loadedPercent: number, ...factors: number[]])[];
  /** Cells that we do not trust, with what we use for them. */
  readonly errata: readonly (readonly [loadedPercent: number, gauge: string, factor: number])[];
}

/** Least force that a crimp must hold. Newtons as printed, or null where only pounds-force are. */
export interface PullOutTable extends TableHeader {
  readonly sizes: SizeKind;
  readonly rows: readonly (readonly [
    size: string,
    poundsForce: number | null,
    newtons: number | null,
    status: SourceStatus,
  ])[];
}

/** Smallest bend of a wire or cable, in outer diameters. */
export interface BendRule extends TableHeader {
  /** What it holds for. */
  readonly title: string;
  /** Inside radius over outer diameter. */
  readonly radiusFactor: number;
  /** The same for a bend that stays for good, where the source tells them apart. */
  readonly longTermFactor: number | null;
}

/** Areas of sizes, for sums of conductors. */
export interface AreaTable extends TableHeader {
  readonly sizes: SizeKind;
  readonly prints: 'circular-mils' | 'mm2';
  readonly rows: readonly (readonly [size: string, printed: number])[];
}

/** Twists a foot by gauge, for two and for three wires. */
export interface TwistTable extends TableHeader {
  readonly rows: readonly (readonly [awg: string, two: number, three: number])[];
}
