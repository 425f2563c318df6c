import type { NodeAnalysis } from '../number/analyse-nodes.js';
import type { SolvedNodes } from '../number/solve-nodes.js';
import type { LoadState } from './network-result.js';
import type { Parts } from './parts.js';

/** The node equations of a network, for all currents that may be driven into it. */
export interface Circuit {
  readonly parts: Parts;
  readonly analysis: NodeAnalysis;
  /** Volts and currents; null where the equations have no stable answer. */
  readonly solve: (perOhm: Float64Array, drivenA: Float64Array) => SolvedNodes | null;
  /** Resistance in Ω that a solved network shows between the ends of a branch. */
  readonly throughOhm: (solved: SolvedNodes, branch: number) => number;
}

/** Makes the equations from what ties nodes together; those made before serve again where they fit. */
export type CircuitOf = (perOhm: Float64Array, before: Circuit | null) => Circuit;

/** Which parts ride on which: parts tied by electronics that draw nothing have fixed volts to one another. */
export interface Riding {
  /** The part that each part rides on in the end, and its volts above that. */
  readonly groupOf: Int32Array;
  readonly aboveV: Float64Array;
}

/** A network with its loads and diodes at rest. */
export interface SettledNetwork extends Riding {
  readonly parts: Parts;
  readonly solved: SolvedNodes;
  readonly loads: readonly LoadState[];
  /** 1 for each diode that conducts. */
  readonly conducts: Uint8Array;
  /** How many states of the diodes were solved, and how many steps the loads took in the last. */
  readonly stateCount: number;
  readonly stepCount: number;
}
