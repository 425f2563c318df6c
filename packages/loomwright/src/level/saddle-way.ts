import type { LevelPoint } from './strapping.js';

/** Left and right float. */
export type Place = readonly [number, number];

/** Points of each stretch of a way. */
const STEPS = 12;

/** The two sides as far as their emptying goes. */
interface Sides {
  readonly left: { readonly saddleFraction: number };
  readonly right: { readonly saddleFraction: number };
  readonly pumpSide: 'left' | 'right';
}

/** The tables of both sides. */
interface Tables {
  readonly left: { readonly strapping: readonly LevelPoint[] };
  readonly right: { readonly strapping: readonly LevelPoint[] };
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

/** Where along 0 to `end` a quantity that only rises or only falls passes a value; an end where it does not. */
export function crossing(of: (u: number) => number, value: number, end: number): number {
  let low = 0;
  let high = end;
  const rises = of(end) > of(0);
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (of(middle) < value === rises) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Places between which litres are straight along a way, and no further apart than its points: rows of the tables. */
export function cutsOf(way: (u: number) => Place, stretches: number, { left, right }: Tables): readonly number[] {
  const even = Array.from({ length: STEPS * stretches + 1 }, (_, i) => i / STEPS);
  const rows = [left, right].flatMap(({ strapping }, side) =>
    strapping.map(({ levelFraction }) => crossing((u) => way(u)[side] as number, levelFraction, stretches)),
  );
  return [...even, ...rows];
}

/**
 * The most of a quantity along a way. It is taken at every cut; and between two where one of them is the most so far,
 * or where the middle of a hump could lie higher: there by thirds. So it is exact for what is straight between cuts,
 * or bends one way there.
 */
export function mostAlong(cuts: readonly number[], f: (u: number) => number): number {
  const at = [...cuts].sort((a, b) => a - b);
  const y = at.map(f);
  const top = Math.max(...y);
  let best = top;
  for (let i = 1; i < at.length; i++) {
    let [low, high] = [at[i - 1] as number, at[i] as number];
    const [a, b] = [y[i - 1] as number, y[i] as number];
    if (high - low < 1e-9) continue;
    const middle = f((low + high) / 2);
    if (a === b && middle === a) continue;
    if (a < top && b < top && 2 * middle - Math.min(a, b) <= best) continue;
    for (let k = 0; k < 60; k++) {
      const p = low + (high - low) / 3;
      const q = high - (high - low) / 3;
      const [l, r] = [f(p), f(q)];
      best = Math.max(best, l, r);
      if (l > r) high = q;
      else low = p;
    }
  }
  return best;
}
