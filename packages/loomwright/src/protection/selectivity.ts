import { type Check, makeCheck } from '../check/index.js';
import { type FuseFamily, fusePulses } from '../table/index.js';
import { figure } from './figure.js';
import { bandAt, edgeOf } from './fuse-band.js';
import { needMoreThan } from '../error/bounded.js';
import { needObject, needText } from '../error/guard.js';
import { limitsOf, meltingI2tOf, needFamily, needRating } from './fuse-data.js';

/** A fuse nearer to the battery, which must not open first. */
export interface UpstreamFuse {
  /** What it is called in the answer: 'main'. */
  readonly name: string;
  readonly family: FuseFamily;
  /** Rating in A, one of the family's. */
  readonly ratingA: number;
  /** Its typical melting I²t in A²s, from its own data; the family's figure where left out. Above 0. */
  readonly meltingI2tA2s?: number;
}

/**
 * Which of two fuses in a row opens first. `kept`: the one downstream, at every current that can flow. `not-kept`: at
 * some current the one upstream may open with it or before it. `not-printed`: above some current nothing tells.
 */
export type SelectivityVerdict = 'kept' | 'not-kept' | 'not-printed';

/** Two fuses in a row, judged up to a current. */
export interface Selectivity {
  readonly verdict: SelectivityVerdict;
  /** Largest current in A up to which their bands keep them apart. */
  readonly upToA: number;
  /** Most that the one downstream lets through in A²s above the bands, and what the one upstream bears; null unknown. */
  readonly letA2s: number;
  readonly bearsA2s: number | null;
  readonly check: Check;
}

/** Throws unless the fuse nearer to the battery is whole. */
export function needUpstream(fn: string, up: UpstreamFuse): void {
  needObject(fn, 'upstream', up, 'must be a fuse: name, family, rating');
  needText(fn, 'upstream.name', up.name);
  needFamily(fn, up.family, 'upstream.family');
  needRating(fn, up.family, up.ratingA, 'upstream.ratingA');
  if (up.meltingI2tA2s !== undefined) needMoreThan(fn, 'upstream.meltingI2tA2s', up.meltingI2tA2s);
}

/**
 * Two fuses in a row: the one downstream must have opened before the one upstream may. Up to the last printed current
 * of the one upstream the bands tell. Above it, what the one downstream lets through is held against the share of the
 * other's melting I²t that a fuse may see a few times in its life. Above the last printed current of the one
 * downstream its let-through is taken not to grow (common practice).
 */
export function selectivityOf(family: FuseFamily, ratingA: number, up: UpstreamFuse, mostA: number): Selectivity {
  const downLimits = limitsOf(family, ratingA);
  const upLimits = limitsOf(up.family, up.ratingA);
  const amps = ([percent, timeS]: readonly [number, number], of: number) => [(percent / 100) * of, timeS] as const;
  const upEdge = edgeOf(upLimits, 'shortest').map((point) => amps(point, up.ratingA));
  const downEdge = edgeOf(downLimits, 'longest').map((point) => amps(point, ratingA));
  const lastA = (upEdge[upEdge.length - 1] as readonly [number, number])[0];
  const [endA, endS] = downEdge[downEdge.length - 1] as readonly [number, number];
  const letS = (currentA: number): number =>
    currentA > endA ? endS * (endA / currentA) ** 2 : (bandAt(downLimits, currentA / ratingA).longestS as number);
  const upToA = apartUpToA(upEdge, downEdge, letS, (currentA) => bandAt(upLimits, currentA / up.ratingA).shortestS);
  // The most that is let through at any current above those that the bands tell of.
  const letA2s = Math.max(
    ...[lastA, endA, ...downEdge.map(([currentA]) => currentA)]
      .filter((currentA) => currentA >= lastA || currentA === endA)
      .map((currentA) => currentA * currentA * letS(currentA)),
  );
  const melting = up.meltingI2tA2s ?? meltingI2tOf(up.family, up.ratingA);
  const firstA = (downEdge[0] as readonly [number, number])[0];
  const byBands = mostA <= upToA || upToA < lastA || firstA > lastA;
  const share = (fusePulses.rows[0] as readonly [number, number])[1];
  const bearsA2s = melting === null ? null : share * melting;
  const check = makeCheck({
    name: `opens before ${up.name}`,
    source: family.source,
    sourceStatus: downLimits.status === 'published' ? 'common-practice' : downLimits.status,
    ...(byBands || bearsA2s === null
      ? {
          value: upToA,
          limit: mostA,
          unit: 'A',
          sense: 'atLeast',
          because: byBands
            ? 'by the printed bands; above that current the one nearer to the battery may open with it'
            : 'no band is printed above that current, and no melting I²t of the one nearer to the battery is known',
        }
      : {
          value: letA2s,
          limit: bearsA2s,
          unit: 'A²s',
          sense: 'atMost',
          because: `above ${figure(lastA)} A, where the printed band of ${up.name} ends: what is let through against ${100 * share} % of its melting I²t`,
        }),
  });
  const verdict = check.ok ? 'kept' : byBands || bearsA2s !== null ? 'not-kept' : 'not-printed';
  return { verdict, upToA, letA2s, bearsA2s, check };
}

/** Largest current up to which one edge stays below the other; at most the last printed one of the fuse upstream. */
function apartUpToA(
  upEdge: readonly (readonly [currentA: number, timeS: number])[],
  downEdge: readonly (readonly [currentA: number, timeS: number])[],
  letS: (currentA: number) => number,
  shortestS: (currentA: number) => number | null,
): number {
  const carriesA = (upEdge[0] as readonly [number, number])[0];
  const lastA = (upEdge[upEdge.length - 1] as readonly [number, number])[0];
  const firstA = (downEdge[0] as readonly [number, number])[0];
  // Below its first printed longest time the fuse downstream may never open: the other must carry that for good.
  if (firstA > carriesA) return carriesA;
  /** ln of upstream's shortest over downstream's longest: above 0 they keep apart. */
  const apart = (currentA: number): number => Math.log((shortestS(currentA) as number) / letS(currentA));
  const points = [...upEdge, ...downEdge]
    .map(([currentA]) => currentA)
    .filter((currentA) => currentA >= firstA && currentA <= lastA)
    .sort((a, b) => a - b);
  let before = firstA;
  let gap = apart(firstA);
  if (gap <= 0) return firstA;
  for (const currentA of points) {
    const next = apart(currentA);
    // Both edges are straight on logarithmic scales between two points, so the crossing is too.
    if (next <= 0) return before * (currentA / before) ** (gap / (gap - next));
    before = currentA;
    gap = next;
  }
  return before;
}
