import { solveNodes } from 'loomwright';
import { type Draft, type DraftLoad, draftsOf } from '../loom/draft.js';
import { isStraight, lineOf, type PathLine } from '../loom/load-line.js';
import { LEAST_OHM, Network } from '../loom/network.js';
import type { LoomPlan, PathElement } from '../loom/plan-type.js';
import { spreadsOf } from '../loom/readings.js';
import { spreadOfWay } from '../loom/spread.js';

/** A part that may be bad: one thing in a path, or a way of the grounds. */
export interface NetPart {
  readonly name: string;
  readonly kind: PathElement['kind'];
  /** Its circuit, or the way itself. */
  readonly circuit: string;
  readonly side: 'out' | 'back';
  /** Its branch in the network. */
  readonly branch: number;
  readonly ohm: number;
  readonly leastOhm: number;
  readonly mostOhm: number;
  /** Cold, where it is a part of a path with a known one. */
  readonly coldOhm: number;
}

/** A point that a probe may touch: a node, or a place in a path that lies some parts behind one. */
export interface NetPoint {
  readonly name: string;
  readonly node: number;
  /** Parts between the node and the point, by number, and the way in which their current runs: −1 away from the node. */
  readonly parts: readonly number[];
  readonly sign: -1 | 1;
}

/** What is otherwise than planned. */
export interface Change {
  /** Resistance in Ω added to a branch. */
  readonly branch?: number;
  readonly extraOhm?: number;
  /** Factor on the current of a load, by its number. */
  readonly load?: number;
  readonly factor?: number;
  /** Volts added to a battery. */
  readonly battery?: string;
  readonly extraV?: number;
}

/** A state solved. */
export interface NetState {
  readonly nodeV: Float64Array;
  readonly branchA: Float64Array;
  readonly loadV: Float64Array;
}

/** A resistance in Ω that stands for an open circuit. */
export const OPEN_OHM = 1e7;
const SETTLED_V = 1e-9;
const MOST_STEPS = 40;

/** The network of a plan with single parts, as built. */
export class MeterNet {
  readonly plan: LoomPlan;
  readonly network: Network;
  readonly drafts: readonly Draft[];
  readonly parts: readonly NetPart[];
  /** Numbers of the parts of each branch. */
  readonly partsOf: ReadonlyMap<number, readonly number[]>;
  /** Resistance of each branch in Ω: path of a load, metal, battery. */
  readonly branchOhm: Float64Array;
  readonly #healthy = new Map<string, NetState>();

  constructor(plan: LoomPlan) {
    this.plan = plan;
    this.drafts = draftsOf(plan.loom);
    this.network = new Network(plan.loom, this.drafts);
    const { wiring } = this.network;
    const spread = spreadsOf(plan).built;
    const parts: NetPart[] = [];
    plan.circuits.forEach(({ name: circuit, nodes, path }, i) => {
      const branch = wiring.branchOf[i] ?? -1;
      if (nodes === null || branch < 0) return;
      for (const one of path) {
        const { name, kind, side, resistanceOhm: ohm } = one;
        parts.push({ name, kind, circuit, side, branch, ohm, ...spread(one), coldOhm: one.coldOhm ?? ohm });
      }
    });
    for (let k = 0; k < wiring.metalCount; k++) {
      const way = wiring.ways[wiring.wayOf[k] as number];
      if (way === undefined || (wiring.draftOf[k] as number) >= 0) continue;
      const kind = way.kind === 'joint' ? 'joint' : 'body';
      const { name, ohm } = way;
      const spreadOf = spreadOfWay({ kind: way.kind, resistanceOhm: ohm });
      parts.push({ name, kind, circuit: name, side: 'out', branch: k, ohm, ...spreadOf, coldOhm: ohm });
    }
    this.parts = parts;
    const partsOf = new Map<number, number[]>();
    this.branchOhm = new Float64Array(wiring.from.length);
    parts.forEach(({ branch, ohm }, p) => {
      const list = partsOf.get(branch);
      if (list === undefined) partsOf.set(branch, [p]);
      else list.push(p);
      this.branchOhm[branch] = (this.branchOhm[branch] as number) + ohm;
    });
    this.partsOf = partsOf;
    for (const { branch, resistanceOhm } of wiring.batteries) if (branch >= 0) this.branchOhm[branch] = resistanceOhm;
  }

  /** A state with everything as planned. */
  healthy(state: string): NetState {
    let found = this.#healthy.get(state);
    if (found === undefined) {
      found = this.#solve(state, {}, null);
      this.#healthy.set(state, found);
    }
    return found;
  }

  /** A state with one thing otherwise. */
  solve(state: string, change: Change): NetState {
    return this.#solve(state, change, this.healthy(state));
  }

  /** Volts of a point, with an extra resistance in one part. */
  voltsAt({ node, parts, sign }: NetPoint, { nodeV, branchA }: NetState, faulty: number, extraOhm: number): number {
    let lost = 0;
    for (const p of parts) {
      const { ohm, branch } = this.parts[p] as NetPart;
      lost += (branchA[branch] as number) * (p === faulty ? ohm + extraOhm : ohm);
    }
    return (nodeV[node] as number) + sign * lost;
  }

  /**
   * Newton steps with the lines of all loads. What cannot be fed any more as the file describes it counts as the
   * resistance that it is in the healthy state, so that a bad joint or an open circuit has an answer.
   */
  #solve(
    state: string,
    { branch, extraOhm = 0, load, factor = 1, battery, extraV = 0 }: Change,
    from: NetState | null,
  ) {
    const { network, drafts } = this;
    const { wiring, analysis } = network;
    const { joined, loads, batteries } = wiring;
    const ohm = (k: number): number => (this.branchOhm[k] as number) + (k === branch ? extraOhm : 0);
    const perOhm = new Float64Array(wiring.from.length);
    for (let k = 0; k < wiring.metalCount; k++) perOhm[k] = 1 / Math.max(ohm(k), LEAST_OHM);
    for (const { branch: own } of batteries) if (own >= 0) perOhm[own] = 1 / Math.max(ohm(own), LEAST_OHM);
    const { offsetV, drivenA, apart, across } = network.sourcesOf(state, perOhm, (name) =>
      name === battery ? extraV : 0,
    );
    const on = loads.flatMap(({ draft }, n) => ((drafts[draft] as Draft).on.includes(state) ? [n] : []));
    const plain = new Set<number>();
    const loadV = from === null ? new Float64Array(loads.length) : from.loadV.slice();
    /** As the resistance that it is where all is healthy. */
    const asResistance = (n: number): PathLine => {
      const { branch: k } = loads[n] as (typeof loads)[number];
      const amps = from === null ? 0 : (from.branchA[k] as number);
      const volts = from === null ? 0 : (from.loadV[n] as number) - amps * (this.branchOhm[k] as number);
      const slopePerOhm = amps > 0 && volts > 0 ? 1 / (volts / amps / (n === load ? factor : 1) + ohm(k)) : 0;
      return { currentA: (loadV[n] as number) * slopePerOhm, slopePerOhm };
    };
    const lineAt = (n: number): PathLine => {
      const { load: what, branch: k } = loads[n] as (typeof loads)[number];
      if (n === load && factor <= 0) return { currentA: 0, slopePerOhm: 0 };
      const line = plain.has(n) ? null : lineOf(n === load ? scaled(what, factor) : what, loadV[n] as number, ohm(k));
      if (line === null) plain.add(n);
      return line ?? asResistance(n);
    };
    if (from === null) {
      const idle = solveNodes({ analysis, perOhm, drivenA });
      if (idle.definite) for (const n of on) loadV[n] = across(n, idle);
    }
    for (let step = 0; ; step++) {
      if (step === MOST_STEPS) for (const n of on) plain.add(n);
      for (const n of on) {
        const { branch: k } = loads[n] as (typeof loads)[number];
        const { currentA, slopePerOhm } = lineAt(n);
        perOhm[k] = slopePerOhm;
        drivenA[k] = currentA + slopePerOhm * (apart(k) - (loadV[n] as number));
      }
      const solved = solveNodes({ analysis, perOhm, drivenA });
      if (!solved.definite) {
        // Loads that draw more at less volts outweigh the metal: there is no answer with them as described.
        if (on.every((n) => plain.has(n))) throw new Error(`nothing holds node ${solved.nodeIndex}`);
        for (const n of on) plain.add(n);
        continue;
      }
      let moved = 0;
      for (const n of on) {
        const volts = across(n, solved);
        const straight =
          plain.has(n) || isStraight((loads[n] as (typeof loads)[number]).load, volts, ohm(loads[n]?.branch ?? 0));
        if (!straight) moved = Math.max(moved, Math.abs(volts - (loadV[n] as number)));
        loadV[n] = volts;
      }
      if (moved <= SETTLED_V || step >= 2 * MOST_STEPS) {
        const nodeV = Float64Array.from(offsetV, (above, v) => (solved.nodeV[joined[v] as number] as number) + above);
        return { nodeV, branchA: solved.branchA, loadV };
      }
    }
  }
}

/** A load that takes a factor of its current. */
function scaled(load: DraftLoad, factor: number): DraftLoad {
  switch (load.kind) {
    case 'constant-current':
      return { ...load, currentA: load.currentA * factor };
    case 'resistance':
      return { ...load, resistanceOhm: load.resistanceOhm / factor };
    case 'constant-power':
      return { ...load, powerW: load.powerW * factor };
    case 'motor':
      // No motor draws more than when it stands still.
      return {
        ...load,
        ratedCurrentA: Math.min(load.ratedCurrentA * factor, (0.99 * load.ratedV) / load.windingResistanceOhm),
      };
  }
}
