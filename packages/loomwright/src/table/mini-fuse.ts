import type { FuseFamily } from './type.js';

/**
 * Blade fuses of the small size (ISO 8820-3 type F). Everything here is from memory, the drops and melting figures
 * with low confidence; the cold resistances of 15 A were confirmed. Where memory gives a range the careful end
 * stands: the shorter of the shortest times, the longer of the longest. No interrupting rating and no re-rating curve
 * of this size could be read; the curve is that of the large blade.
 */
export const miniFuse: FuseFamily = {
  key: 'mini-fuse',
  source: 'iso-8820-3',
  status: 'memory',
  place: 'type F, 32 V; limits and typical figures from memory, re-rating of the large blade',
  ratingsA: [2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30],
  ratedV: 32,
  interruptA: null,
  limits: [
    {
      upToA: 30,
      status: 'memory',
      rows: [
        [110, 360000, null],
        [135, 0.75, 600],
        [160, 0.25, 50],
        [200, 0.15, 5],
        [350, 0.04, 0.5],
        [600, null, 0.1],
      ],
    },
  ],
  coldMilliohm: [
    [2, 58],
    [3, 33],
    [4, 24],
    [5, 17.6],
    [7.5, 11],
    [10, 7.54],
    [15, 4.58],
    [20, 3.21],
    [25, 2.36],
    [30, 1.85],
  ],
  dropMillivolt: [
    [2, 171],
    [3, 153],
    [4, 140],
    [5, 130],
    [7.5, 119],
    [10, 107],
    [15, 101],
    [20, 95],
    [25, 91],
    [30, 87],
  ],
  meltingI2t: [
    [2, 2],
    [3, 5],
    [4, 9],
    [5, 19],
    [7.5, 46],
    [10, 77],
    [15, 180],
    [20, 380],
    [25, 620],
    [30, 970],
  ],
  ambientFactor: [
    [20, 1],
    [65, 0.85],
    [85, 0.75],
    [110, 0.625],
    [125, 0.55],
  ],
};
