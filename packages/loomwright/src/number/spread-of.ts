/** What a list of simulated outcomes says of a quantity. */
export interface SpreadResult {
  readonly meanValue: number;
  readonly deviationValue: number;
  /** Ends of the interval that leaves the same share of outcomes out on either side. */
  readonly lowValue: number;
  readonly highValue: number;
  /** Ends of the shortest interval that holds the share. */
  readonly shortestLowValue: number;
  readonly shortestHighValue: number;
  /** The least and the greatest outcome seen. */
  readonly leastValue: number;
  readonly greatestValue: number;
}

/**
 * Mean, standard deviation and coverage intervals of simulated outcomes.
 *
 * @source jcgm-101, 7.6 and 7.7: q = pM outcomes lie between the ends
 */
export function spreadOf(outcomes: Float64Array, coverageFraction: number): SpreadResult {
  const sorted = outcomes.slice().sort();
  const runs = sorted.length;
  const at = (i: number): number => sorted[i] as number;
  let sum = 0;
  for (const y of sorted) sum += y - at(0);
  const meanValue = at(0) + sum / runs;
  let squares = 0;
  for (const y of sorted) squares += (y - meanValue) ** 2;
  const held = Math.min(runs - 1, Math.round(coverageFraction * runs));
  const left = Math.floor((runs - held) / 2);
  const first = Math.min(left, runs - 1 - held);
  let shortest = first;
  for (let i = 0; i + held < runs; i++) {
    if (at(i + held) - at(i) < at(shortest + held) - at(shortest)) shortest = i;
  }
  return {
    meanValue,
    deviationValue: Math.sqrt(squares / (runs - 1)),
    lowValue: at(first),
    highValue: at(first + held),
    shortestLowValue: at(shortest),
    shortestHighValue: at(shortest + held),
    leastValue: at(0),
    greatestValue: at(runs - 1),
  };
}
