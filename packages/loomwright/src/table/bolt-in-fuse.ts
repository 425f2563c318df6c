import type { FuseFamily, FuseLimits } from './type.js';

// The limits of both sizes, remembered with low confidence. At 200 % memory has 15 s and 20 s: the longer stands, as
// the careful one for the wire.
const LIMITS: readonly FuseLimits[] = [
  {
    upToA: 500,
    status: 'memory',
    rows: [
      [75, 14400, null],
      [135, 120, 1800],
      [200, 1, 20],
      [350, 0.3, 5],
      [600, 0.1, 1],
    ],
  },
];

/**
 * Bolt-in fuses of the smaller size (ISO 8820-5 type SF30). Limits and ratings are from memory, with low confidence.
 * No interrupting rating, resistance, melting figure or re-rating is known: take them from the data of the fuse.
 */
export const boltInFuseSf30: FuseFamily = {
  key: 'bolt-in-fuse-sf30',
  source: 'iso-8820-5',
  status: 'memory',
  place: 'type SF30, 32 V; limits and ratings from memory, with low confidence',
  ratingsA: [30, 40, 50, 60, 70, 80, 100, 125, 150],
  ratedV: 32,
  interruptA: null,
  limits: LIMITS,
  coldMilliohm: [],
  dropMillivolt: [],
  meltingI2t: [],
  ambientFactor: [],
};

/**
 * Bolt-in fuses of the larger size (ISO 8820-5 type SF51). Limits and ratings are from memory, with low confidence.
 * No interrupting rating, resistance, melting figure or re-rating is known: take them from the data of the fuse.
 */
export const boltInFuseSf51: FuseFamily = {
  key: 'bolt-in-fuse-sf51',
  source: 'iso-8820-5',
  status: 'memory',
  place: 'type SF51, 32 V; limits and ratings from memory, with low confidence',
  ratingsA: [100, 125, 150, 175, 200, 225, 250, 300, 350, 400, 450, 500],
  ratedV: 32,
  interruptA: null,
  limits: LIMITS,
  coldMilliohm: [],
  dropMillivolt: [],
  meltingI2t: [],
  ambientFactor: [],
};
