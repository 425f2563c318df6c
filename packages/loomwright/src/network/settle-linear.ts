import type { SettleNetworkInput } from './element.js';
import { loadState } from './network-result.js';
import type { SettledNetwork } from './settled.js';
import { acrossV, drivenByEmf } from './wiring.js';

/** A network without diodes, whose loads are resistances: one solution of its equations. */
export function settleLinear({ network, wiring, circuitOf }: SettleNetworkInput): SettledNetwork {
  const { perOhm, branchOf } = wiring;
  const { parts, solve } = circuitOf(perOhm, null);
  const solved = solve(perOhm, drivenByEmf(wiring, perOhm));
  // Each part is held at a node and tied by resistances alone: the equations always have an answer.
  if (solved === null) throw new Error('node equations without an answer');
  const loads = (network.loads ?? []).map(({ name }, i) => {
    const k = branchOf.loads[i] as number;
    return loadState(name, acrossV(wiring, solved.nodeV, k), solved.branchA[k] as number);
  });
  const groupOf = Int32Array.from({ length: parts.count }, (_, p) => p);
  const aboveV = new Float64Array(parts.count);
  return { parts, solved, groupOf, aboveV, loads, conducts: new Uint8Array(0), stateCount: 1, stepCount: 0 };
}
