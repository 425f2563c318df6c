// Equal wires: what is proved, what is best known, and what a data sheet says.

/**
 * Diameter of the smallest known circle around n equal circles over theirs, for n = 1 to 20. Three decimals are
 * published; the others come from numerical packing and, where there is one, from the closed form.
 */
const RATIOS: readonly number[] = [
  1, 2, 2.154700538, 2.414213562, 2.701301617, 3, 3, 3.304764871, 3.61312593, 3.813025631, 3.9238044, 4.02960193,
  4.236067977, 4.328428555, 4.521356965, 4.615425595, 4.792033748, 4.863703305, 4.863703305, 5.122320737,
];

/** Whether the ratio of n equal circles is proved to be the smallest. */
function isProved(n: number): boolean {
  return n <= 14 || n === 19;
}

/** Ratio of n equal circles, or null beyond 20. */
export function equalRatio(n: number): { readonly ratio: number; readonly proved: boolean } | null {
  const ratio = RATIOS[n - 1];
  return ratio === undefined ? null : { ratio, proved: isProved(n) };
}

/**
 * A ratio that no packing of n equal circles can be below: the proved one, or by Oler's inequality, which bounds the
 * number of points at least 1 apart in a disc of radius ρ by 2πρ²/√3 + πρ + 1.
 */
export function leastRatio(n: number): number {
  const known = equalRatio(n);
  // The ratios are rounded to nine decimals: a hair less is surely not too much.
  if (known?.proved === true) return known.ratio * (1 - 1e-9);
  const a = (2 * Math.PI) / Math.sqrt(3);
  const oler = 1 + (Math.sqrt(Math.PI * Math.PI + 4 * a * (n - 1)) - Math.PI) / a;
  return n > 19 ? Math.max(oler, RATIOS[18] as number) : Math.max(oler, RATIOS[13] as number);
}

/** Factors of the data sheet: up to so many wires, this many diameters. */
const FACTORS: readonly (readonly [upToCount: number, factor: number])[] = [
  [1, 1],
  [2, 2],
  [3, 2.16],
  [4, 2.41],
  [5, 2.7],
  [7, 3],
  [8, 3.6],
  [12, 4],
  [14, 4.41],
  [16, 4.7],
  [19, 5],
  [21, 5.31],
  [24, 5.61],
  [27, 6],
  [30, 6.41],
  [33, 6.7],
  [37, 7],
  [40, 7.31],
  [44, 7.61],
  [48, 8],
  [52, 8.41],
  [56, 8.7],
  [61, 9],
];

/** Factor of the data sheet for n equal wires, or null beyond 61. */
export function sheetFactor(n: number): number | null {
  return FACTORS.find(([upTo]) => n <= upTo)?.[1] ?? null;
}
