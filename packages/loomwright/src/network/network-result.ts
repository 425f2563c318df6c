/** A node of a solved network. */
export interface NodeState {
  readonly name: string;
  /** Volts above the reference, or null where nothing fixes them. */
  readonly voltageV: number | null;
  /** Why there are none: its island has a source but no tie to the reference, or neither. */
  readonly reason: 'no-reference' | 'no-source' | null;
  /** Whether only electronics that draw nothing tie it to what has volts: a meter sees them, nothing can be fed. */
  readonly hangs: boolean;
  /** Place of its island in `islands`. */
  readonly islandIndex: number;
}

/** Nodes that are tied together: by branches, closed switches, sources, loads, diodes that conduct. */
export interface NetworkIsland {
  readonly nodes: readonly string[];
  readonly hasReference: boolean;
  /** Names of its sources. */
  readonly sources: readonly string[];
}

/** A branch: current positive from `from` to `to`. */
export interface SolvedBranch {
  readonly name: string;
  /** Null on a loop of nothing but 0 Ω, where its share cannot be told. */
  readonly currentA: number | null;
  /** Volts of `from` above `to`. */
  readonly dropV: number;
  readonly lossW: number;
}

/** A source: current positive out of its positive end, `to`; negative while it is charged. */
export interface SourceState {
  readonly name: string;
  readonly currentA: number | null;
  /** Volts at its ends. */
  readonly voltageV: number;
  /** What it gives at its ends, in W; negative while it is charged. */
  readonly powerW: number | null;
  /** Heat in its own resistance. */
  readonly lossW: number;
}

/** A load: current positive from `from` to `to`, while it is on. */
export interface LoadState {
  readonly name: string;
  /** Volts of `from` above `to`; null for electronics whose ends no current can pass between. */
  readonly voltageV: number | null;
  readonly currentA: number;
  readonly powerW: number;
  /** Share of the time that it is on: multiply for the mean. */
  readonly dutyFraction: number;
  /** Speed of a motor, negative when it turns backwards; null for all others. */
  readonly speedRpm: number | null;
  readonly stalled: boolean;
  /** False for electronics that cannot be fed: they then draw nothing. */
  readonly fed: boolean;
  /**
   * Why not: `no-way` (current cannot go round), `no-volts` (none, or the wrong way round), `no-volts-left`,
   * `power-beyond-line`, `below-least-volts` (as for one path), `not-beside-the-others` (it could be fed alone),
   * `against-a-diode` (only through one that passes current backwards).
   */
  readonly code: string | null;
  readonly because: string | null;
}

/** A load that takes its current for all of the time. */
export function loadState(name: string, voltageV: number | null, currentA: number): LoadState {
  const powerW = currentA === 0 ? 0 : (voltageV ?? 0) * currentA;
  const always = { dutyFraction: 1, speedRpm: null, stalled: false, fed: true, code: null, because: null };
  return { name, voltageV, currentA, powerW, ...always };
}

/** A diode: current positive from anode to cathode. */
export interface DiodeState {
  readonly name: string;
  readonly conducts: boolean;
  readonly currentA: number;
  /** Volts of the anode above the cathode; null where these do not share an island. */
  readonly dropV: number | null;
  readonly lossW: number;
}

/** A switch: current positive from `from` to `to`. */
export interface SwitchState {
  readonly name: string;
  readonly closed: boolean;
  readonly currentA: number | null;
  /** Volts of `from` above `to`; null where these do not share an island. */
  readonly dropV: number | null;
  readonly lossW: number;
}

/** Where the power goes, in W, with all loads that are switched fast taken as on. */
export interface PowerBalance {
  /** Open-circuit volts times current, of all sources; what is charged counts as negative. */
  readonly givenW: number;
  /** Heat in branches, switches, diodes and inside sources. */
  readonly lostW: number;
  readonly usedW: number;
  /** Given less lost and used: rounding, and what the loads' iteration left over. */
  readonly differenceW: number;
}

/** What `solveNetwork` gives; every list in the order of the input. */
export interface SolveNetworkResult {
  /** The reference first, then by their first mention. */
  readonly nodes: readonly NodeState[];
  readonly islands: readonly NetworkIsland[];
  readonly branches: readonly SolvedBranch[];
  readonly sources: readonly SourceState[];
  readonly loads: readonly LoadState[];
  readonly diodes: readonly DiodeState[];
  readonly switches: readonly SwitchState[];
  readonly balance: PowerBalance;
  /** States of the diodes that were solved, and steps of the loads in the last one. */
  readonly stateCount: number;
  readonly stepCount: number;
}
