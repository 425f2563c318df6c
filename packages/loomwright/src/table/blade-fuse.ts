import type { FuseFamily } from './type.js';

/**
 * Blade fuses of the medium size (ISO 8820-3 type C). The limits of 35 and 40 A are printed in component data, those
 * of smaller ratings are from memory, as are most typical figures. Re-rating is that of the large blade: no curve of
 * this size could be read.
 */
export const bladeFuse: FuseFamily = {
  key: 'blade-fuse',
  source: 'iso-8820-3',
  status: 'memory',
  place: 'type C, 32 V; limits as printed in component data for 35 and 40 A, from memory below',
  ratingsA: [1, 2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30, 35, 40],
  ratedV: 32,
  interruptA: 1000,
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
    {
      upToA: 40,
      status: 'published',
      rows: [
        [100, 360000, null],
        [135, 0.75, 600],
        [160, 0.25, 50],
        [200, 0.15, 5],
        [350, 0.08, 0.5],
        [600, null, 0.15],
      ],
    },
  ],
  coldMilliohm: [
    [1, 123],
    [2, 53.5],
    [3, 31.1],
    [4, 22.8],
    [5, 17.9],
    [7.5, 10.9],
    [10, 7.7],
    [15, 4.8],
    [20, 3.38],
    [25, 2.52],
    [30, 1.97],
    [40, 1.44],
  ],
  dropMillivolt: [
    [1, 176],
    [2, 141],
    [3, 137],
    [4, 135],
    [5, 128],
    [7.5, 116],
    [10, 109],
    [15, 102],
    [20, 98],
    [25, 92],
    [30, 84],
    [40, 96],
  ],
  meltingI2t: [
    [1, 0.4],
    [2, 1.4],
    [3, 8],
    [4, 14],
    [5, 26],
    [7.5, 60],
    [10, 115],
    [15, 340],
    [20, 520],
    [25, 1080],
    [30, 1510],
    [40, 3300],
  ],
  ambientFactor: [
    [20, 1],
    [65, 0.85],
    [85, 0.75],
    [110, 0.625],
    [125, 0.55],
  ],
};
