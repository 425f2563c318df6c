import type { PathElement } from '../loom/plan-type.js';

/**
 * One reading that was taken: by the `name` of an expected reading; or `over` a part, with `circuit` where several have
 * one of the name; or between the points `red` and `black`. Exactly one of `readsV`, `readsA` and `readsOhm` is given.
 */
export interface MeterReading {
  /** Name of an expected reading of the plan or its tests. */
  readonly name?: string;
  /** The state in which it was taken; not for ohms. */
  readonly state?: string;
  /** A part: the red probe before it, the black one behind it, as the current runs in the healthy state. */
  readonly over?: string;
  /** Points: nodes of the plan (`box dash box`, `lift pump +`, `ground nose stud`), or `before` and `behind` a part. */
  readonly red?: string;
  readonly black?: string;
  /** The circuit of a part or point whose name stands in several. */
  readonly circuit?: string;
  /** What the meter showed, in V (millivolts too), −1e4 to 1e4. */
  readonly readsV?: number;
  /** The same in A, in the place of a fuse; 0 to 1e5. */
  readonly readsA?: number;
  /** The same in Ω on a dead circuit, 0 to 1e9, or `open`. */
  readonly readsOhm?: number | 'open';
}

/** What was read, beside what the plan expects and what the answer explains. */
export interface ExplainedReading {
  /** Its place in the list that was given, from 0. */
  readonly index: number;
  readonly name: string;
  readonly unit: 'V' | 'A' | 'Ω';
  /** As read, its sign turned where the probes were found changed over. Null for an open circuit. */
  readonly value: number | null;
  readonly expectedValue: number;
  /** With what was found; the same where nothing was. */
  readonly explainedValue: number;
  /** How far it is from the healthy plan and from what was found, in its own sigmas. */
  readonly offSigma: number;
  readonly leftSigma: number;
}

/** A cause that would explain the readings. */
export interface Suspect {
  /** `part`: more resistance in one part. `load`: another current of a load. */
  readonly kind: 'part' | 'load';
  readonly name: string;
  readonly of: PathElement['kind'] | 'load';
  readonly circuit: string;
  /** Resistance beyond the plan's, in Ω, and its range within two sigmas; null for a load, and where it is open. */
  readonly extraOhm: number | null;
  readonly lowOhm: number | null;
  /** Null where it may be open. */
  readonly highOhm: number | null;
  /** Whether no current passes, or too little to tell from none. */
  readonly open: boolean;
  /** Of a load: its current in A by the readings, and by the plan. */
  readonly currentA: number;
  readonly plannedA: number;
  /** Heat in W in the whole of it, in the state read with most current; null where it is open, and for a load. */
  readonly powerW: number | null;
  readonly state: string | null;
  /** How much worse than the best cause it fits, in sigmas. */
  readonly behindSigma: number;
}

/** The reading that parts what cannot be told apart. */
export interface FurtherReading {
  readonly state: string;
  readonly red: string;
  readonly black: string;
  readonly circuit: string | null;
  /** What it would show in V with each of the suspects, in their order. */
  readonly predictedV: readonly number[];
  /** Pairs of suspects that it parts by three sigmas or more, of all pairs. */
  readonly partedCount: number;
  readonly pairCount: number;
}

/** A battery whose volts differ from the plan's. */
export interface SupplyOff {
  readonly battery: string;
  readonly state: string;
  readonly plannedV: number;
  readonly foundV: number;
  readonly sigmaV: number;
  /** Whether its posts were read; else it follows from the other readings. */
  readonly read: boolean;
}

/** What readings tell of a planned vehicle. */
export interface Diagnosis {
  /**
   * `nothing found`: within what a healthy vehicle shows. `supply`: other volts of a battery explain all. `short`: ohms
   * where there should be none. `part`: one part explains them, or one of several that cannot be told apart. `reading`:
   * one reading is against all others. `not one cause`: nothing alone explains them.
   */
  readonly verdict: 'nothing found' | 'supply' | 'short' | 'part' | 'reading' | 'not one cause';
  /** In sentences, with its numbers. */
  readonly sentences: readonly string[];
  /** How far the readings are from a healthy vehicle, in sigmas of one cause, and in words. */
  readonly awaySigma: number;
  readonly confidence: 'none' | 'weak' | 'fair' | 'strong';
  /** Best first: all that fit within two sigmas of the best. Empty where nothing was found. */
  readonly suspects: readonly Suspect[];
  /** The next ones that do not, at most five. */
  readonly others: readonly Suspect[];
  readonly further: FurtherReading | null;
  readonly supply: readonly SupplyOff[];
  readonly readings: readonly ExplainedReading[];
  /** Readings whose probes seem to have been changed over, and those that the rest contradicts, by their place. */
  readonly changedOver: readonly number[];
  readonly contradicting: readonly number[];
  /** Misfit of the answer, and how many readings are left to tell of it. */
  readonly misfitFactor: number;
  /** Parts in which 50 mΩ more would have shown, of all parts. */
  readonly seenCount: number;
  readonly partCount: number;
  /** What its sigmas rest on. */
  readonly basis: readonly string[];
}
