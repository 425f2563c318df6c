import type { TableHeader } from './type.js';

/** The test point of a rating of cranking: so many amperes for so long, and volts not below so many. */
export interface CrankingRating extends TableHeader {
  /** Name of the rating in the trade. */
  readonly title: string;
  /** Temperature of the battery in °C. */
  readonly testTempC: number;
  /** Seconds after which the volts are read. */
  readonly testS: number;
  /** Least volts then, of a battery of six cells. */
  readonly leastV: number;
}

/** Volts of a rested battery of six cells against its charge. */
export interface RestVoltsTable extends TableHeader {
  readonly title: string;
  /** From full to empty: charge in per cent, volts at rest. */
  readonly rows: readonly (readonly [chargePercent: number, openV: number])[];
  /** Relative density of the acid where the list has it: charge in per cent, least and largest density. */
  readonly densities?: readonly (readonly [chargePercent: number, low: number, high: number])[];
}

/** Least volts of a battery under a load test, by its temperature. */
export interface LoadTestTable extends TableHeader {
  readonly title: string;
  /** Load as a share of the cold-cranking rating; null where the list names amperes instead. */
  readonly loadFraction: number | null;
  /** Load in A whatever the battery; null where it is a share of the rating. */
  readonly loadA: number | null;
  /** Seconds after which the volts are read. */
  readonly testS: number;
  /** From warm to cold: temperature in °C, least volts. The first row also holds for all that is warmer. */
  readonly rows: readonly (readonly [tempC: number, leastV: number])[];
}

/** The most volts that may be lost while cranking, by kind of part and by side; null where the set says nothing. */
export interface CrankingBudget extends TableHeader {
  readonly title: string;
  readonly connectionV: number | null;
  readonly cableV: number | null;
  readonly contactV: number | null;
  /** From the positive post to the starter. */
  readonly positiveV: number | null;
  /** From the starter's case to the negative post. */
  readonly negativeV: number | null;
  readonly totalV: number | null;
}
