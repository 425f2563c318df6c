import { ConvergenceError } from '../error/index.js';
import type { SolvedNodes } from '../number/solve-nodes.js';
import type { NetworkLoad } from './element.js';
import { lineAt, natureOf } from './load-line.js';
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
 * Settles loads, from a solution without them: Newton's steps, shortened where a lamp would turn or electronics lose more
 * than half of their volts at once. Null where the equations have no stable answer, or electronics stay without volts.
 */
export function settleBySteps(
  equations: Equations,
  which: readonly number[],
  start: SolvedNodes,
): { readonly solved: SolvedNodes | null; readonly stepCount: number } {
  const { fn, loads, topV, loadV, wantedV } = equations;
  const active = which.map((i) => natureOf((loads[i] as NetworkLoad).load) === 'active');
  let solved = start;
  let without = 0;
  for (let step = 0; which.length > 0; step++) {
    let moved = 0;
    let lost = false;
    which.forEach((i, n) => {
      const wanted = loadVolts(equations, solved, i);
      const had = loadV[i] as number;
      wantedV[i] = wanted;
      if (active[n] === true && !(wanted > 0)) lost = true;
      const floor = active[n] === true ? 0.5 : 0.1;
      loadV[i] = step === 0 || wanted / had >= floor ? wanted : floor * had;
      moved = Math.max(moved, step === 0 ? topV : Math.abs(wanted - had));
    });
    without = lost ? without + 1 : 0;
    if (moved <= SETTLED * topV) return { solved, stepCount: step };
    if (without > PATIENCE) return { solved: null, stepCount: step };
    if (step === MOST_STEPS) throw new ConvergenceError(fn, step, topV, moved, worstOf(equations, which));
    for (const i of which) putLine(equations, i);
    const next = solveLines(equations);
    if (next === null) return { solved: null, stepCount: step };
    solved = next;
  }
  return { solved, stepCount: 0 };
}

/** The load whose volts are furthest from rest, by name. */
function worstOf({ loads, loadV, wantedV }: Equations, which: readonly number[]): string {
  const off = (i: number): number => Math.abs((wantedV[i] as number) - (loadV[i] as number));
  const worst = which.reduce((a, b) => (off(b) > off(a) ? b : a));
  return `the volts of load '${loads[worst]?.name ?? ''}'`;
}
