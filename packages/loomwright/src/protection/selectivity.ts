import type { FuseFamily } from '../table/index.js';
import { bandAt, edgeOf } from './fuse-band.js';
import { limitsOf } from './fuse-data.js';

/**
 * Largest current in A up to which the printed bands keep two fuses in series apart: the one downstream must have
 * opened before the one upstream may. Above the upstream fuse's last printed shortest time nothing is said.
 */
export function selectiveUpToA(down: FuseFamily, downA: number, up: FuseFamily, upA: number): number {
  const downLimits = limitsOf(down, downA);
  const upLimits = limitsOf(up, upA);
  const upEdge = edgeOf(upLimits, 'shortest');
  const downEdge = edgeOf(downLimits, 'longest');
  const carriesA = ((upEdge[0] as readonly [number, number])[0] / 100) * upA;
  const lastA = ((upEdge[upEdge.length - 1] as readonly [number, number])[0] / 100) * upA;
  const firstA = ((downEdge[0] as readonly [number, number])[0] / 100) * downA;
  // Below its first printed longest time the fuse downstream may never open: the other must carry that for good.
  if (firstA > carriesA) return carriesA;
  /** ln of upstream's shortest over downstream's longest: above 0 they keep apart. */
  const apart = (currentA: number): number => {
    const { shortestS } = bandAt(upLimits, currentA / upA);
    const { longestS } = bandAt(downLimits, currentA / downA);
    return Math.log((shortestS as number) / (longestS as number));
  };
  const points = [...upEdge.map(([percent]) => (percent / 100) * upA), ...downEdge.map(([p]) => (p / 100) * downA)]
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
