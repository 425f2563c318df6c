import type { Load } from '../load/index.js';
import type { CircuitOf, SettledNetwork } from './settled.js';
import type { Wiring } from './wiring.js';

/** A wire, strap, joint or piece of body. Current counts as positive from `from` to `to`. */
export interface NetworkBranch {
  readonly name: string;
  readonly from: string;
  readonly to: string;
  /** Resistance in Ω at the temperature that it has (`wireResistance`), at least 0; 0 makes both ends one node. */
  readonly resistanceOhm: number;
}

/** A battery or an alternator at its set voltage. It gives current out of `to`, its positive end. */
export interface NetworkSource {
  readonly name: string;
  /** Node of the negative end. */
  readonly from: string;
  /** Node of the positive end. */
  readonly to: string;
  /** Open-circuit voltage in V. */
  readonly voltageV: number;
  /** Resistance inside in Ω, at least 0. */
  readonly resistanceOhm: number;
}

/** Something that is fed: current counts as positive from `from` (its positive end) to `to`. */
export interface NetworkLoad {
  readonly name: string;
  readonly from: string;
  readonly to: string;
  readonly load: Load;
}

/** A diode: passes current from `from` (anode) to `to` (cathode) once `forwardV` is there, and none the other way. */
export interface NetworkDiode {
  readonly name: string;
  readonly from: string;
  readonly to: string;
  /** Volts at which it begins to conduct, at least 0. */
  readonly forwardV: number;
  /** Resistance in Ω while it conducts, at least 0. */
  readonly resistanceOhm: number;
}

/** A switch, relay contact, fuse or isolator: there when closed, gone when open. */
export interface NetworkSwitch {
  readonly name: string;
  readonly from: string;
  readonly to: string;
  readonly closed: boolean;
  /** Resistance in Ω while closed, at least 0. */
  readonly resistanceOhm: number;
}

/** What a network is made of. Nodes are named by what stands at their ends. */
export interface Network {
  /** The node that counts as 0 V: as a rule the battery's negative post. */
  readonly reference: string;
  readonly branches: readonly NetworkBranch[];
  readonly sources: readonly NetworkSource[];
  readonly loads?: readonly NetworkLoad[];
  readonly diodes?: readonly NetworkDiode[];
  readonly switches?: readonly NetworkSwitch[];
  /** How diodes and loads settle: `settleNetwork`. Asked for where there are diodes, or loads that are no resistance. */
  readonly settle?: (input: SettleNetworkInput) => SettledNetwork;
}

/** What `solveNetwork` hands to what settles its diodes and loads. */
export interface SettleNetworkInput {
  /** Name for errors. */
  readonly fn: string;
  readonly network: Network;
  readonly wiring: Wiring;
  readonly circuitOf: CircuitOf;
}
