import type { TableHeader } from './type.js';

/** How much of its melting I²t a fuse may see in each of so many pulses. */
export interface FusePulseTable extends TableHeader {
  /** Least time between pulses in s for which the shares hold. */
  readonly restS: number;
  /** Pulses in the fuse's life, and the share of the melting I²t that each may have. */
  readonly rows: readonly (readonly [count: number, share: number])[];
}

/** Pulse shares of a maker's guide: 48 % for 100 pulses down to 22 % for 100 000. */
export const fusePulses: FusePulseTable = {
  key: 'fuse-pulses',
  source: 'fuse-selection-guides',
  status: 'published',
  place: 'guide of 2017, chart 2; 10 s between pulses',
  restS: 10,
  rows: [
    [100, 0.48],
    [1000, 0.38],
    [10000, 0.29],
    [100000, 0.22],
  ],
};
