import type { FuseLimits } from '../table/index.js';

/**
 * What a time of a band rests on. `published`: a printed point. `interpolated`: a straight line between two printed
 * points on logarithmic scales. `bound`: no point is printed beyond, and a fuse never opens later at more current.
 */
export type BandBasis = 'published' | 'interpolated' | 'bound';

/** Opening times at one multiple of the rating; null where nothing is printed that bounds them. */
export interface Band {
  readonly shortestS: number | null;
  readonly shortestBasis: BandBasis | null;
  readonly longestS: number | null;
  readonly longestBasis: BandBasis | null;
}

type Point = readonly [percent: number, timeS: number];

/** The points of one edge of the band, in rising order of current. */
export function edgeOf(limits: FuseLimits, edge: 'shortest' | 'longest'): Point[] {
  const points: Point[] = [];
  for (const [percent, shortestS, longestS] of limits.rows) {
    const timeS = edge === 'shortest' ? shortestS : longestS;
    if (timeS !== null) points.push([percent, timeS]);
  }
  return points;
}

/** Column of an edge in a printed row. */
type Edge = 1 | 2;

/** Opening times at a multiple of the rating. */
export function bandAt({ rows }: FuseLimits, ratio: number): Band {
  const percent = ratio * 100;
  const [shortestS, shortestBasis] = onEdge(rows, 1, percent);
  const [longestS, longestBasis] = onEdge(rows, 2, percent);
  return { shortestS, shortestBasis, longestS, longestBasis };
}

const NOTHING: readonly [null, null] = [null, null];

/**
 * The time of an edge. Outside its points: below the first the shortest time is at least that one, above the last the
 * longest is at most that one, and nothing else is said.
 */
function onEdge(
  rows: FuseLimits['rows'],
  edge: Edge,
  percent: number,
): readonly [timeS: number | null, basis: BandBasis | null] {
  let before = 0;
  let beforeS = 0;
  for (const row of rows) {
    const timeS = row[edge];
    if (timeS === null) continue;
    const at = row[0];
    if (Math.abs(percent - at) <= 1e-9 * at) return [timeS, 'published'];
    if (percent < at) {
      if (before === 0) return edge === 1 ? [timeS, 'bound'] : NOTHING;
      const share = Math.log(percent / before) / Math.log(at / before);
      return [beforeS * (timeS / beforeS) ** share, 'interpolated'];
    }
    before = at;
    beforeS = timeS;
  }
  return edge === 2 && before > 0 ? [beforeS, 'bound'] : NOTHING;
}
