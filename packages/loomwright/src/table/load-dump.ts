import type { TableHeader } from './type.js';

/** Pulses with which a standard tests for a battery that is lost while it is charged. */
export interface LoadDumpTable extends TableHeader {
  readonly title: string;
  /** Nominal volts of the vehicle, and those of the supply before the pulse. */
  readonly nominalV: number;
  readonly supplyV: number;
  /** Without suppression in the alternator: peak with nothing connected in V, resistance behind it in Ω, length in ms. */
  readonly openPeaksV: readonly [low: number, high: number];
  readonly sourcesOhm: readonly [low: number, high: number];
  readonly durationsMs: readonly [low: number, high: number];
  /** Pulses of a test, one a minute. */
  readonly pulseCount: number;
  /** With suppression in the alternator: the peak in V, and the pulses of that test. */
  readonly suppressedV: number;
  readonly suppressedPulseCount: number;
}

/** Load dump of 12 V vehicles by ISO 16750-2, tests A and B. */
export const loadDump12V: LoadDumpTable = {
  key: 'load-dump-12-v',
  title: '12 V vehicle, ISO 16750-2',
  source: 'iso-16750-2',
  status: 'published',
  place: 'load dump, tests A and B, 12 V; rise 10 (0, −5) ms; high volts go with high resistance',
  nominalV: 12,
  supplyV: 14,
  openPeaksV: [79, 101],
  sourcesOhm: [0.5, 4],
  durationsMs: [40, 400],
  pulseCount: 10,
  suppressedV: 35,
  suppressedPulseCount: 5,
};

/** Load dump of 24 V vehicles by ISO 16750-2, tests A and B. */
export const loadDump24V: LoadDumpTable = {
  key: 'load-dump-24-v',
  title: '24 V vehicle, ISO 16750-2',
  source: 'iso-16750-2',
  status: 'published',
  place: 'load dump, tests A and B, 24 V; the suppressed peak is what is typical',
  nominalV: 24,
  supplyV: 28,
  openPeaksV: [151, 202],
  sourcesOhm: [1, 8],
  durationsMs: [100, 350],
  pulseCount: 10,
  suppressedV: 58,
  suppressedPulseCount: 5,
};
