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

/** Opening times at a multiple of the rating. */
export function bandAt(limits: FuseLimits, ratio: number): Band {
  const percent = ratio * 100;
  const shortest = edgeOf(limits, 'shortest');
  const longest = edgeOf(limits, 'longest');
  const low = onEdge(shortest, percent);
  const high = onEdge(longest, percent);
  const first = shortest[0] as Point;
  const last = longest[longest.length - 1] as Point;
  // Below its first point the shortest time is at least that one; above its last the longest is at most that one.
  const lowBound = low === null && percent < first[0] ? first[1] : null;
  const highBound = high === null && percent > last[0] ? last[1] : null;
  return {
    shortestS: low?.timeS ?? lowBound,
    shortestBasis: low?.basis ?? (lowBound === null ? null : 'bound'),
    longestS: high?.timeS ?? highBound,
    longestBasis: high?.basis ?? (highBound === null ? null : 'bound'),
  };
}

/** The time of an edge between its first and last point, or null outside. */
function onEdge(points: readonly Point[], percent: number): { timeS: number; basis: BandBasis } | null {
  for (let i = 0; i < points.length; i++) {
    const [at, timeS] = points[i] as Point;
    if (Math.abs(percent - at) <= 1e-9 * at) return { timeS, basis: 'published' };
    if (percent < at) {
      if (i === 0) return null;
      const [before, beforeS] = points[i - 1] as Point;
      const share = Math.log(percent / before) / Math.log(at / before);
      return { timeS: beforeS * (timeS / beforeS) ** share, basis: 'interpolated' };
    }
  }
  return null;
}
