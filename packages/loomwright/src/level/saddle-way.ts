/** Left and right float. */
export type Place = readonly [number, number];

/** Points of each stretch of a way. */
export const STEPS = 12;

/** The two sides as far as their emptying goes. */
interface Sides {
  readonly left: { readonly saddleFraction: number };
  readonly right: { readonly saddleFraction: number };
  readonly pumpSide: 'left' | 'right';
}

/** The way from full to empty: 0 to 1 down to the saddle, to 2 the side that empties next, to 3 the last one. */
export function wayOf({ left, right, pumpSide }: Sides, transfer: boolean): (u: number) => Place {
  const far = transfer ? 1 : Infinity;
  const own = transfer ? 2 : 1;
  return (u) => {
    const fall = (saddle: number, from: number): number =>
      u <= 1 ? 1 - (1 - saddle) * u : saddle * (1 - Math.min(1, Math.max(0, u - from)));
    return [
      fall(left.saddleFraction, pumpSide === 'left' ? own : far),
      fall(right.saddleFraction, pumpSide === 'right' ? own : far),
    ];
  };
}

/** A way as points. */
export function walk(way: (u: number) => Place, stretches: number): readonly Place[] {
  return Array.from({ length: STEPS * stretches + 1 }, (_, i) => way(i / STEPS));
}

/** The most of a quantity along a way: the best of the points, and then between its neighbours. Null counts for none. */
export function mostAlong(stretches: number, f: (u: number) => number | null): number {
  const of = (u: number): number => f(u) ?? -Infinity;
  let best = -Infinity;
  let at = 0;
  for (let i = 0; i <= STEPS * stretches; i++) {
    const y = of(i / STEPS);
    if (y > best) [best, at] = [y, i / STEPS];
  }
  if (best === -Infinity) return 0;
  for (const side of [-1, 1]) {
    let near = at;
    let far = Math.min(stretches, Math.max(0, at + side / STEPS));
    for (let i = 0; i < 60; i++) {
      const p = near + (far - near) / 3;
      const q = far - (far - near) / 3;
      const [y, z] = [of(p), of(q)];
      best = Math.max(best, y, z);
      if (y > z || z === -Infinity) far = q;
      else near = p;
    }
  }
  return best;
}
