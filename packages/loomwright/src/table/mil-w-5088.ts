import type { TableHeader } from './type.js';

/** Current of a wire in a bundle over its current alone, by the number of wires and the share of them in use. */
export interface BundleCurves extends TableHeader {
  /** Share of the bundle's total capacity in use, per cent: one column each. */
  readonly sharesPercent: readonly number[];
  /** Number of wires, then the factor for each share; null where the figure was not read. */
  readonly rows: readonly (readonly [wireCount: number, ...factors: (number | null)[]])[];
}

/** MIL-W-5088L bundle derating curves (the family of AC 43.13-1B figure 11-6), read off the figure to about ±0.01. */
export const milW5088Bundle: BundleCurves = {
  key: 'mil-w-5088-bundle',
  source: 'mil-w-5088',
  status: 'published',
  place:
    'MIL-W-5088L bundle derating figure, digitised to about ±0.01; the row of 35 wires is an example of AC 43.13-1B paragraph 11-69, from memory',
  sharesPercent: [20, 40, 60, 80, 100],
  rows: [
    [1, 1, 1, 1, 1, 1],
    [2, 0.9675, 0.92, 0.91, 0.87, 0.825],
    [3, 0.935, 0.855, 0.815, 0.77, 0.725],
    [4, 0.9075, 0.805, 0.75, 0.705, 0.66],
    [5, 0.875, 0.76, 0.695, 0.65, 0.61],
    [6, 0.85, 0.725, 0.655, 0.605, 0.5725],
    [7, 0.82, 0.695, 0.625, 0.57, 0.54],
    [8, 0.795, 0.6675, 0.595, 0.5425, 0.5125],
    [9, 0.775, 0.645, 0.575, 0.52, 0.485],
    [10, 0.755, 0.6225, 0.55, 0.5, 0.465],
    [11, 0.735, 0.6, 0.53, 0.48, 0.445],
    [12, 0.715, 0.585, 0.515, 0.465, 0.43],
    [13, 0.6975, 0.5675, 0.495, 0.4475, 0.415],
    [14, 0.685, 0.5525, 0.48, 0.435, 0.3975],
    [15, 0.67, 0.54, 0.465, 0.42, 0.385],
    [16, 0.6575, 0.5275, 0.455, 0.41, 0.37],
    [17, 0.645, 0.515, 0.4425, 0.3975, 0.36],
    [18, 0.635, 0.505, 0.4325, 0.3875, 0.35],
    [19, 0.625, 0.495, 0.4225, 0.38, 0.3425],
    [20, 0.615, 0.48, null, null, null],
    [35, 0.52, null, null, null, null],
  ],
};
