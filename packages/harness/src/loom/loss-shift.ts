import { solveSymmetric } from 'loomwright';
import { isStraight, lineOf, type PathLine } from './load-line.js';
import type { Metal, Network, SolvedState } from './network.js';

/** The loads of a state as its equations have them. */
export interface StateLines {
  readonly state: SolvedState;
  /** Lines of the loads that are on and fed, by their place among the loads. */
  readonly on: ReadonlyMap<number, PathLine>;
  /** Those of them that are no resistance. */
  readonly bent: readonly number[];
}

/** What a loss moves. */
export interface Shift {
  /** Volts by what nodes are joined to. */
  readonly volts: Float64Array;
  /** Loads that can no longer be fed. */
  readonly starved: ReadonlySet<number>;
}

/** A branch that is lost beside others, or the loads that a lost bridge leaves without a way back. */
export type Lost =
  | { readonly kind: 'beside'; readonly branch: number }
  | {
      readonly kind: 'bridge';
      readonly off: ReadonlySet<number>;
      /** Current in A that still flows through some of them, from what is cut off to the rest or back. */
      readonly stillA: ReadonlyMap<number, number>;
    };

// Below this share of a way left beside a branch the update would lose too many digits. A bridge has none at all.
const LEAST_SHARE = 1e-9;
const SETTLED_V = 1e-9;
// Volts that moved by less leave a load on its tangent: what that gets wrong goes with their square.
const NEAR_V = 1e-5;
const MOST_STEPS = 40;

/**
 * What a loss does to the volts of a solved state, by the factor of its equations: nothing is factored anew. The lost
 * branch is an update of rank one; loads that are no straight line move on along their own, and what their tangents got
 * wrong is solved for until nothing moves.
 *
 * $$\Delta v = M^{-1}\Bigl(\sum_l \bigl(I_l - I_l(v + \Delta v) + s_l\,\Delta v_l\bigr)\,u_l + I_e u_e\Bigr) \qquad
 * M^{-1} = G^{-1} + \frac{g\,x\,x^\mathsf{T}}{1 - g\,u_e^\mathsf{T}x} \qquad G\,x = u_e$$
 *
 * @source sherman-morrison-1950; circuit-theory
 */
export function shiftOf(network: Network, metal: Metal, { state, on, bent }: StateLines, lost: Lost): Shift {
  const { analysis, wiring } = network;
  const { unknown, nodeOf, nodeCount, from, to } = analysis;
  const { loads } = wiring;
  const { factor } = state;
  const count = nodeOf.length;
  const scratch = new Float64Array(count);
  const solve = (sides: Float64Array): Float64Array => solveSymmetric({ factor, sides, into: sides, scratch });
  const put = (sides: Float64Array, branch: number, amps: number): void => {
    const i = unknown[from[branch] as number] as number;
    const j = unknown[to[branch] as number] as number;
    if (i >= 0) sides[i] = (sides[i] as number) + amps;
    if (j >= 0) sides[j] = (sides[j] as number) - amps;
  };
  const between = (list: Float64Array, branch: number): number => {
    const i = unknown[from[branch] as number] as number;
    const j = unknown[to[branch] as number] as number;
    return (i < 0 ? 0 : (list[i] as number)) - (j < 0 ? 0 : (list[j] as number));
  };
  const own = lost.kind === 'beside' ? new Float64Array(count) : null;
  let gain = 0;
  if (lost.kind === 'beside' && own !== null) {
    put(own, lost.branch, 1);
    solve(own);
    const g = metal.perOhm[lost.branch] as number;
    gain = g / Math.max(LEAST_SHARE, 1 - g * between(own, lost.branch));
  }
  const starved = new Set<number>();
  let x = new Float64Array(count);
  let sides = new Float64Array(count);
  for (let step = 0; ; step++) {
    sides.fill(0);
    let worst = { load: -1, wrongA: 0 };
    if (lost.kind === 'beside') put(sides, lost.branch, state.branchA[lost.branch] as number);
    /** Lets a load draw another current than its tangent says. */
    const draws = (n: number, currentA: number, shiftV: number): number => {
      const line = on.get(n);
      if (line === undefined) return 0;
      const wrongA = line.currentA + line.slopePerOhm * shiftV - currentA;
      put(sides, (loads[n] as (typeof loads)[number]).branch, wrongA);
      return Math.abs(wrongA);
    };
    const shiftAt = (n: number): number => (step === 0 ? 0 : between(x, (loads[n] as (typeof loads)[number]).branch));
    if (lost.kind === 'bridge') for (const n of lost.off) draws(n, lost.stillA.get(n) ?? 0, shiftAt(n));
    if (step > 0) {
      for (const n of bent) {
        if (lost.kind === 'bridge' && lost.off.has(n)) continue;
        const { load } = loads[n] as (typeof loads)[number];
        const shiftV = shiftAt(n);
        const volts = (state.loadV[n] as number) + shiftV;
        if (!starved.has(n)) {
          if (Math.abs(shiftV) < NEAR_V || isStraight(load, volts, metal.seriesOhm[n] as number)) continue;
          const after = lineOf(load, volts, metal.seriesOhm[n] as number);
          if (after !== null) {
            const wrongA = draws(n, after.currentA, shiftV);
            if (wrongA > worst.wrongA) worst = { load: n, wrongA };
            continue;
          }
          starved.add(n);
        }
        draws(n, 0, shiftV);
      }
    }
    // Nothing flowed there: nothing moves.
    if (step === 0 && sides.every((amps) => amps === 0)) break;
    solve(sides);
    if (own !== null && lost.kind === 'beside') {
      const more = gain * between(sides, lost.branch);
      for (let u = 0; u < count; u++) sides[u] = (sides[u] as number) + more * (own[u] as number);
    }
    let moved = 0;
    for (let u = 0; u < count; u++) moved = Math.max(moved, Math.abs((sides[u] as number) - (x[u] as number)));
    [x, sides] = [sides, x];
    if (moved <= SETTLED_V && step > 0) break;
    // What does not come to rest is taken off: it would chatter.
    if (step % MOST_STEPS === MOST_STEPS - 1 && worst.load >= 0) starved.add(worst.load);
    if (step > MOST_STEPS * (bent.length + 1)) break;
  }
  const volts = new Float64Array(nodeCount);
  for (let u = 0; u < count; u++) volts[nodeOf[u] as number] = x[u] as number;
  return { volts, starved };
}
