import { ConvergenceError } from '../error/index.js';
import type { SolvedNodes } from '../number/solve-nodes.js';
import type { Network, NetworkLoad, SettleNetworkInput } from './element.js';
import { leastV, natureOf, restPerOhm } from './load-line.js';
import { type Equations, loadVolts, settleBySteps, solveLines } from './load-steps.js';
import type { Parts } from './parts.js';
import { drivenByEmf, leastDiodeOhm } from './wiring.js';

/** A network with its loads at rest, in one state of its diodes. */
export interface SettledLoads {
  readonly parts: Parts;
  readonly solved: SolvedNodes;
  /** The same with lamps and motors, but without any electronics. */
  readonly bare: SolvedNodes;
  readonly equations: Equations;
  /** 1 for each of the electronics that draws nothing, by its place among the loads. */
  readonly unfed: Uint8Array;
  readonly stepCount: number;
}

/**
 * Volts and currents in one state of the diodes.
 *
 * Lamps and motors settle first, without any electronics, which gives each of these the most volts that it can have.
 * Then they are added, and their volts come down from there: Newton's steps from above reach the higher of the two
 * answers that a constant power has, which is the stable one, or show that there is none. Then the load that has lost
 * most of its volts is taken off, and the rest settles again.
 *
 * @param away 1 for electronics that are to draw nothing
 * @param before what was settled last, for its analysis: it holds as long as the same nodes are held
 */
export function settleLoads(
  input: SettleNetworkInput,
  conducts: Uint8Array,
  away: Uint8Array,
  before: SettledLoads | null,
): SettledLoads {
  const { fn, network, wiring } = input;
  const loads = network.loads ?? [];
  const equations = equationsOf(input, conducts, before);
  const { perOhm, drivenA, loadV, wantedV, topV } = equations;
  const { parts } = equations.circuit;
  const places = loads.map((_, i) => i);
  const passive = places.filter((i) => natureOf((loads[i] as NetworkLoad).load) === 'passive');
  const rest = solveLines(equations);
  const first = rest === null ? null : settleBySteps(equations, passive, rest);
  if (first === null || first.solved === null) throw new ConvergenceError(fn, 1, topV, topV, 'lamps and motors');
  const bare = first.solved;
  let { stepCount } = first;
  const unfed = new Uint8Array(loads.length);
  let fed: number[] = [];
  for (const i of places) {
    if (natureOf((loads[i] as NetworkLoad).load) !== 'active') continue;
    const k = wiring.branchOf.loads[i] as number;
    const [a, b] = [wiring.joinedFrom[k] as number, wiring.joinedTo[k] as number];
    if (away[i] === 0 && parts.partOf[a] === parts.partOf[b] && loadVolts(equations, bare, i) > 1e-12 * topV)
      fed.push(i);
    else unfed[i] = 1;
  }
  // Where lamps and motors settled: electronics start from there, and again after one of them was taken off.
  const kept = { perOhm: perOhm.slice(), drivenA: drivenA.slice() };
  const bareV = (i: number): number => loadVolts(equations, bare, i);
  const share = (i: number): number => (wantedV[i] as number) / bareV(i);
  while (fed.length > 0) {
    const run = settleBySteps(equations, [...passive, ...fed], bare);
    stepCount += run.stepCount;
    const { solved } = run;
    const dark = fed.filter((i) => (wantedV[i] as number) < leastV((loads[i] as NetworkLoad).load));
    if (solved !== null && dark.length === 0) return { parts, solved, bare, equations, unfed, stepCount };
    const out = (solved === null ? fed : dark).sort((i, j) => share(i) - share(j) || i - j);
    // Few are taken off one by one; of very many a part at a time, so that the number of turns stays small.
    const gone = new Set(out.slice(0, Math.max(1, out.length >> 6)));
    for (const i of gone) unfed[i] = 1;
    fed = fed.filter((i) => !gone.has(i)).sort((i, j) => i - j);
    perOhm.set(kept.perOhm);
    drivenA.set(kept.drivenA);
  }
  for (const i of passive) loadV[i] = bareV(i);
  return { parts, solved: bare, bare, equations, unfed, stepCount };
}

/** The equations with all electronics left out, and lamps and motors as they are at rest. */
function equationsOf(
  { fn, network, wiring, circuitOf }: SettleNetworkInput,
  conducts: Uint8Array,
  before: SettledLoads | null,
): Equations {
  const { loads = [], diodes = [] } = network;
  const { branchOf } = wiring;
  const perOhm = wiring.perOhm.slice();
  diodes.forEach(({ resistanceOhm }, i) => {
    if (conducts[i] === 1) perOhm[branchOf.diodes[i] as number] = 1 / leastDiodeOhm(resistanceOhm);
  });
  loads.forEach(({ load }, i) => {
    if (natureOf(load) !== 'active') perOhm[branchOf.loads[i] as number] = restPerOhm(load);
  });
  const drivenA = drivenByEmf(wiring, perOhm);
  const circuit = circuitOf(perOhm, before?.equations.circuit ?? null);
  const loadV = new Float64Array(loads.length);
  const wantedV = new Float64Array(loads.length);
  return { fn, loads, wiring, circuit, topV: topOf(network), perOhm, drivenA, loadV, wantedV };
}

/** The highest volts of a source: the scale of all tolerances. */
export function topOf({ sources, diodes = [] }: Network): number {
  const most = sources.reduce((top, { voltageV }) => Math.max(top, voltageV), 0);
  return diodes.reduce((top, { forwardV }) => Math.max(top, forwardV), Math.max(most, 1e-9));
}
