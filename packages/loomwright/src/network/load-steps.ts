import { ConvergenceError } from '../error/index.js';
import type { SolvedNodes } from '../number/solve-nodes.js';
import type { NetworkLoad } from './element.js';
import { lineAt, type LoadLine, natureOf } from './load-line.js';
import type { Circuit } from './settled.js';
import { acrossV, apartV, type Wiring } from './wiring.js';

/** The node equations in one state of the diodes, as loads are put into them. The last three are worked on. */
export interface Equations {
  readonly fn: string;
  readonly loads: readonly NetworkLoad[];
  readonly wiring: Wiring;
  readonly circuit: Circuit;
  /** Scale of all volts. */
  readonly topV: number;
  readonly perOhm: Float64Array;
  readonly drivenA: Float64Array;
  /** Volts across each load: those of its line, and those that the last step asked for. */
  readonly loadV: Float64Array;
  readonly wantedV: Float64Array;
}

// A load has settled when its volts would move by less than this share of all volts. Steps are Newton's: what is left
// is about the square of that.
const SETTLED = 1e-10;
const MOST_STEPS = 100;
/** So many steps in a row may leave electronics without volts before they count as not fed. */
const PATIENCE = 12;

export function solveLines({ circuit, perOhm, drivenA }: Equations): SolvedNodes | null {
  return circuit.solve(perOhm, drivenA);
}

/** Volts across a load in a solution. */
export function loadVolts({ wiring }: Equations, { nodeV }: SolvedNodes, load: number): number {
  return acrossV(wiring, nodeV, wiring.branchOf.loads[load] as number);
}

/** Puts the line of a load at its volts into the equations. */
function putLine({ loads, wiring, perOhm, drivenA, loadV }: Equations, load: number): void {
  const k = wiring.branchOf.loads[load] as number;
  const atV = loadV[load] as number;
  const { currentA, slopePerOhm } = lineAt((loads[load] as NetworkLoad).load, atV);
  perOhm[k] = slopePerOhm;
  drivenA[k] = currentA + slopePerOhm * (apartV(wiring, k) - atV);
}

/**
 * Settles loads, from a solution without them: Newton's steps, shortened where electronics lose more than half of their
 * volts at once, or where a step goes too far. Lamps and motors alone make a convex function of the volts, whose slope
 * along a step only rises: a step that ends where it rises steeply is halved until it does not, and so the steps cannot
 * go to and fro. Null where the equations have no stable answer, or electronics stay without volts.
 */
export function settleBySteps(
  equations: Equations,
  which: readonly number[],
  start: SolvedNodes,
): { readonly solved: SolvedNodes | null; readonly stepCount: number } {
  const { fn, loads, topV, loadV, wantedV } = equations;
  const electronics = which.filter((i) => natureOf((loads[i] as NetworkLoad).load) === 'active');
  const nodeV = start.nodeV.slice();
  for (const i of which) loadV[i] = loadVolts(equations, start, i);
  let without = 0;
  if (which.length === 0) return { solved: start, stepCount: 0 };
  for (let step = 1; ; step++) {
    for (const i of which) putLine(equations, i);
    const solved = solveLines(equations);
    if (solved === null) return { solved: null, stepCount: step };
    let moved = 0;
    for (const i of which) {
      wantedV[i] = loadVolts(equations, solved, i);
      moved = Math.max(moved, Math.abs(wantedV[i] - (loadV[i] as number)));
    }
    if (moved <= SETTLED * topV) return { solved, stepCount: step };
    without = electronics.some((i) => !((wantedV[i] as number) > 0)) ? without + 1 : 0;
    if (without > PATIENCE) return { solved: null, stepCount: step };
    if (step === MOST_STEPS) throw new ConvergenceError(fn, step, topV, moved, worstOf(equations, which));
    let share = 1;
    for (const i of electronics) {
      const had = loadV[i] as number;
      const loss = had - (wantedV[i] as number);
      if (share * loss > 0.5 * had) share = (0.5 * had) / loss;
    }
    share = shortened(equations, which, nodeV, solved, share);
    for (let v = 0; v < nodeV.length; v++) {
      nodeV[v] = (nodeV[v] as number) + share * ((solved.nodeV[v] as number) - (nodeV[v] as number));
    }
    for (const i of which) {
      loadV[i] = (loadV[i] as number) + share * ((wantedV[i] as number) - (loadV[i] as number));
    }
  }
}

/** The share of a step at whose end the function does not yet rise half as steeply as it falls at the beginning. */
function shortened(
  { loads, wiring, perOhm, loadV, wantedV }: Equations,
  which: readonly number[],
  nodeV: Float64Array,
  solved: SolvedNodes,
  most: number,
): number {
  const { joinedFrom, joinedTo } = wiring;
  const step = (node: number): number => (solved.nodeV[node] as number) - (nodeV[node] as number);
  let fall = 0;
  for (let k = 0; k < perOhm.length; k++) {
    const across = step(joinedFrom[k] as number) - step(joinedTo[k] as number);
    fall += (perOhm[k] as number) * across * across;
  }
  const lines = which.map((i) => lineAt((loads[i] as NetworkLoad).load, loadV[i] as number));
  const rise = (share: number): number =>
    which.reduce((sum, i, n) => {
      const { currentA, slopePerOhm } = lines[n] as LoadLine;
      const whole = (wantedV[i] as number) - (loadV[i] as number);
      const v = (loadV[i] as number) + share * whole;
      return (
        sum + (lineAt((loads[i] as NetworkLoad).load, v).currentA - currentA - slopePerOhm * share * whole) * whole
      );
    }, 0);
  let share = most;
  for (let halves = 0; halves < 40 && rise(share) - (1 - share) * fall > 0.5 * fall; halves++) share /= 2;
  return share;
}

/** The load whose volts are furthest from rest, by name. */
function worstOf({ loads, loadV, wantedV }: Equations, which: readonly number[]): string {
  const off = (i: number): number => Math.abs((wantedV[i] as number) - (loadV[i] as number));
  const worst = which.reduce((a, b) => (off(b) > off(a) ? b : a));
  return `the volts of load '${loads[worst]?.name ?? ''}'`;
}
