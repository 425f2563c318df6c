import type { Network } from './element.js';
import type { OperatingPoint } from './ground-faults-net.js';
import { solveNetwork } from './solve-network.js';

/** A network with loads and diodes settled. */
export interface Settled {
  /** Volts of a node, null where nothing ties it to the reference. */
  readonly nodeV: (node: string) => number | null;
  /** Current of a load by its place in the network, in A. */
  readonly loadA: (load: number) => number;
}

/** What the intact network settles at. */
export function operatingPoint(network: Network): OperatingPoint {
  const { loads, diodes } = solveNetwork(network);
  return {
    loads: loads.map(({ voltageV, currentA }) => ({ voltageV: voltageV ?? 0, currentA })),
    conducts: diodes.map(({ conducts }) => conducts),
  };
}

/** The whole network settled. */
export function settledNetwork(network: Network): Settled {
  const { nodes, loads } = solveNetwork(network);
  const volts = new Map(nodes.map(({ name, voltageV }) => [name, voltageV]));
  return {
    nodeV: (node) => volts.get(node) ?? null,
    loadA: (load) => loads[load]?.currentA ?? 0,
  };
}
