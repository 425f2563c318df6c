import { ConvergenceError } from '../error/index.js';
import { analyseNodes, type NodeAnalysis } from '../number/analyse-nodes.js';
import type { SolvedNodes } from '../number/solve-nodes.js';
import type { Network, NetworkLoad } from './element.js';
import { leastV, natureOf, restPerOhm } from './load-line.js';
import { acrossV, type Equations, settleBySteps, solveLines } from './load-steps.js';
import { type Parts, partsOf } from './parts.js';
import { apartV, diodePerOhm, type Wiring } from './wiring.js';

/** A network with its loads at rest, in one state of its diodes. */
export interface SettledLoads {
  readonly parts: Parts;
  readonly solved: SolvedNodes;
  readonly equations: Equations;
  /** 1 for each of the electronics that draws nothing, by its place among the loads. */
  readonly unfed: Uint8Array;
  readonly steps: number;
}

/**
 * Volts and currents in one state of the diodes.
 *
 * Lamps and motors settle first, without any electronics, which gives each of these the most volts that it can have.
 * Then they are added, and their volts come down from there: Newton's steps from above reach the higher of the two
 * answers that a constant power has, which is the stable one, or show that there is none. Then the load that has lost
 * most of its volts is taken off, and the rest settles again.
 *
 * @param before what was settled last, for its analysis: it holds as long as the same nodes are held
 */
export function settleLoads(
  fn: string,
  network: Network,
  wiring: Wiring,
  conducts: Uint8Array,
  before: SettledLoads | null,
): SettledLoads {
  const loads = network.loads ?? [];
  const { parts, ...equations } = equationsOf(fn, network, wiring, conducts, before);
  const { perOhm, drivenA, loadV, wantedV, topV } = equations;
  const places = loads.map((_, i) => i);
  const passive = places.filter((i) => natureOf((loads[i] as NetworkLoad).load) === 'passive');
  const rest = solveLines(equations);
  const first = rest === null ? null : settleBySteps(equations, passive, rest);
  if (first === null || first.solved === null) throw new ConvergenceError(fn, 1, topV, topV, 'lamps and motors');
  const bare = first.solved;
  let { steps } = first;
  const unfed = new Uint8Array(loads.length);
  let fed: number[] = [];
  for (const i of places) {
    if (natureOf((loads[i] as NetworkLoad).load) !== 'active') continue;
    const k = wiring.branchOf.loads[i] as number;
    const [a, b] = [wiring.joinedFrom[k] as number, wiring.joinedTo[k] as number];
    if (parts.partOf[a] === parts.partOf[b] && acrossV(equations, bare, i) > 1e-12 * topV) fed.push(i);
    else unfed[i] = 1;
  }
  // Where lamps and motors settled: electronics start from there, and again after one of them was taken off.
  const kept = { perOhm: perOhm.slice(), drivenA: drivenA.slice() };
  const bareV = (i: number): number => acrossV(equations, bare, i);
  const share = (i: number): number => (wantedV[i] as number) / bareV(i);
  while (fed.length > 0) {
    const run = settleBySteps(equations, [...passive, ...fed], bare);
    steps += run.steps;
    const { solved } = run;
    const dark = fed.filter((i) => (wantedV[i] as number) < leastV((loads[i] as NetworkLoad).load));
    if (solved !== null && dark.length === 0) return { parts, solved, equations, unfed, steps };
    const out = (solved === null ? fed : dark).sort((i, j) => share(i) - share(j) || i - j);
    // Few are taken off one by one; of very many a part at a time, so that the number of turns stays small.
    const gone = new Set(out.slice(0, Math.max(1, out.length >> 6)));
    for (const i of gone) unfed[i] = 1;
    fed = fed.filter((i) => !gone.has(i)).sort((i, j) => i - j);
    perOhm.set(kept.perOhm);
    drivenA.set(kept.drivenA);
  }
  for (const i of passive) loadV[i] = bareV(i);
  return { parts, solved: bare, equations, unfed, steps };
}

/** The equations with all electronics left out, and lamps and motors as they are at rest. */
function equationsOf(
  fn: string,
  network: Network,
  wiring: Wiring,
  conducts: Uint8Array,
  before: SettledLoads | null,
): Equations & { readonly parts: Parts } {
  const { loads = [], diodes = [] } = network;
  const { branchOf, joinedFrom, joinedTo, joinedCount } = wiring;
  const perOhm = wiring.perOhm.slice();
  diodes.forEach(({ resistanceOhm }, i) => {
    if (conducts[i] === 1) perOhm[branchOf.diodes[i] as number] = diodePerOhm(resistanceOhm);
  });
  loads.forEach(({ load }, i) => {
    if (natureOf(load) === 'passive') perOhm[branchOf.loads[i] as number] = restPerOhm(load);
  });
  const drivenA = Float64Array.from(perOhm, (g, k) => g * ((wiring.emfV[k] as number) + apartV(wiring, k)));
  const parts = partsOf(wiring, perOhm);
  let analysis: NodeAnalysis | null = null;
  if (before !== null && sameNumbers(before.parts.held, parts.held)) ({ analysis } = before.equations);
  analysis ??= analyseNodes({ nodeCount: joinedCount, from: joinedFrom, to: joinedTo, held: parts.held });
  const loadV = new Float64Array(loads.length);
  const wantedV = new Float64Array(loads.length);
  return { fn, loads, wiring, analysis, topV: topOf(network), perOhm, drivenA, loadV, wantedV, parts };
}

/** The highest volts of a source: the scale of all tolerances. */
export function topOf({ sources, diodes = [] }: Network): number {
  const most = sources.reduce((top, { voltageV }) => Math.max(top, voltageV), 0);
  return diodes.reduce((top, { forwardV }) => Math.max(top, forwardV), Math.max(most, 1e-9));
}

function sameNumbers(a: Int32Array, b: Int32Array): boolean {
  return a.length === b.length && a.every((value, i) => value === b[i]);
}
