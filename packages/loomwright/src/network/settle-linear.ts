import { ConvergenceError } from '../error/index.js';
import type { SettleNetworkInput } from './element.js';
import { loadState } from './network-result.js';
import type { SettledNetwork } from './settled.js';
import { acrossV, drivenByEmf } from './wiring.js';

/** A network without diodes, whose loads are resistances: one solution of its equations. */
export function settleLinear({ fn, network, wiring, circuitOf }: SettleNetworkInput): SettledNetwork {
  const { perOhm, branchOf } = wiring;
  const { parts, solve } = circuitOf(perOhm, null);
  const solved = solve(perOhm, drivenByEmf(wiring, perOhm));
  // Each part is held at a node and tied by resistances: only numbers that are no numbers could lead here.
  if (solved === null) throw new ConvergenceError(fn, 1, 0, 0, 'the node equations');
  const loads = (network.loads ?? []).map(({ name }, i) => {
    const k = branchOf.loads[i] as number;
    return loadState(name, acrossV(wiring, solved.nodeV, k), solved.branchA[k] as number);
  });
  const groupOf = Int32Array.from({ length: parts.count }, (_, p) => p);
  const aboveV = new Float64Array(parts.count);
  return { parts, solved, groupOf, aboveV, loads, conducts: new Uint8Array(0), stateCount: 1, stepCount: 0 };
}
