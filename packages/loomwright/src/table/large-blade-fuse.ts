import type { FuseFamily } from './type.js';

/**
 * Blade fuses of the large size (ISO 8820-3 type E): the three ratings whose component data could be read. The
 * standard's own text is remembered with 60 s in place of 50 at 200 %.
 */
export const largeBladeFuse: FuseFamily = {
  key: 'large-blade-fuse',
  source: 'iso-8820-3',
  status: 'published',
  place: 'type E, 32 V; limits, resistance, melting I²t and re-rating as printed in component data',
  ratingsA: [30, 35, 40],
  ratedV: 32,
  interruptA: 1000,
  limits: [
    {
      upToA: 40,
      status: 'published',
      rows: [
        [100, 360000, null],
        [135, 60, 1800],
        [200, 2, 50],
        [350, 0.2, 7],
        [600, 0.04, 1],
      ],
    },
  ],
  coldMilliohm: [
    [30, 1.9],
    [35, 1.7],
    [40, 1.4],
  ],
  dropMillivolt: [[40, 75]],
  meltingI2t: [
    [30, 4100],
    [35, 6000],
    [40, 8500],
  ],
  ambientFactor: [
    [20, 1],
    [65, 0.85],
    [85, 0.75],
    [110, 0.625],
    [125, 0.55],
  ],
};
