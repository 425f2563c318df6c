/** An element of 0 Ω. */
export interface IdealElement {
  readonly list: 'branches' | 'sources' | 'switches';
  readonly index: number;
  readonly from: number;
  readonly to: number;
  /** Volts of its end above its beginning. */
  readonly emfV: number;
}

/**
 * A network by numbers. Nodes joined by 0 Ω are one, with known volts between them; each other element is a branch
 * that carries `perOhm` · (volts across + `emfV`) from its beginning to its end. Diodes, and loads that
 * are no resistance, are open.
 */
export interface Wiring {
  readonly nodes: readonly string[];
  readonly joined: Int32Array;
  readonly joinedCount: number;
  /** Volts of each node above what it is joined to. */
  readonly offsetV: Float64Array;
  /** Ends of each branch: nodes, and what these are joined to. */
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly joinedFrom: Int32Array;
  readonly joinedTo: Int32Array;
  readonly perOhm: Float64Array;
  readonly emfV: Float64Array;
  /** The branch of each element by list, −1 where it has none: ideal or open. */
  readonly branchOf: Readonly<Record<'branches' | 'sources' | 'loads' | 'diodes' | 'switches', Int32Array>>;
  readonly ideal: readonly IdealElement[];
}

// A diode without resistance still has a little: 1 µΩ. Otherwise two of them in a loop would not be told apart.
const LEAST_DIODE_OHM = 1e-6;

/** Volts between the ends of a branch that come from what these are joined to. */
export function apartV({ offsetV, from, to }: Wiring, branch: number): number {
  return (offsetV[from[branch] as number] as number) - (offsetV[to[branch] as number] as number);
}

/** Volts across a branch from those of the joined nodes. */
export function acrossV(wiring: Wiring, nodeV: Float64Array, branch: number): number {
  const { joinedFrom, joinedTo } = wiring;
  const ends = (nodeV[joinedFrom[branch] as number] as number) - (nodeV[joinedTo[branch] as number] as number);
  return ends + apartV(wiring, branch);
}

/** What conductances and electromotive forces drive through the branches before any node has volts. */
export function drivenByEmf(wiring: Wiring, perOhm: Float64Array): Float64Array {
  return perOhm.map((g, k) => g * ((wiring.emfV[k] as number) + apartV(wiring, k)));
}

/** Resistance of a diode that conducts. */
export function leastDiodeOhm(resistanceOhm: number): number {
  return Math.max(resistanceOhm, LEAST_DIODE_OHM);
}
