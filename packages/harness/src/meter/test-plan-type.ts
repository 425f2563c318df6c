import type { CautionKey } from '@loomwright/worked/card';
import type { ExpectedReading } from '../loom/plan-type.js';

/** A stage of testing, in the order in which they are gone through. */
export type TestStageKey = 'dead' | 'first power' | 'standing' | 'cranking' | 'running';

/** One reading to take: where, how, what it should be, what passes, what may be wrong. */
export interface TestStep {
  /** Number on the sheet, from 1 through all stages. */
  readonly number: number;
  /** The name of its expected reading; `diagnose` knows it. */
  readonly name: string;
  readonly kind: ExpectedReading['kind'] | 'lamp';
  readonly state: string | null;
  /** The circuit, battery or ground point that it is about, and the thing in its path, where it is taken over one. */
  readonly circuit: string;
  readonly part: string | null;
  readonly red: string;
  readonly black: string;
  /** What to set the meter to. */
  readonly setting: string;
  readonly unit: 'V' | 'mV' | 'A' | 'Ω';
  /** Current in A while reading, by the plan. */
  readonly currentA: number;
  /** What the plan expects, in the unit; null where it gives no figure, and `because` says why. */
  readonly value: number | null;
  readonly because: string | null;
  /** What a healthy one may have, from the stated spread of its parts. */
  readonly lowValue: number | null;
  readonly highValue: number | null;
  /** Limits to pass: the same with the error of the meter. Null where there is none to that side. */
  readonly lowLimit: number | null;
  readonly highLimit: number | null;
  /** What may be wrong if it fails. */
  readonly ifNot: string;
}

/** One stage. */
export interface TestStage {
  readonly key: TestStageKey;
  readonly title: string;
  /** What to do before and while reading, in order. */
  readonly procedure: readonly string[];
  readonly steps: readonly TestStep[];
  readonly cautions: readonly CautionKey[];
}

/** Staged tests of a planned vehicle. */
export interface TestPlan {
  readonly vehicle: string;
  readonly stages: readonly TestStage[];
  /** What spreads and limits rest on. */
  readonly basis: readonly string[];
}
