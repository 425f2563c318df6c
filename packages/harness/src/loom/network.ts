import { analyseNodes, type NodeAnalysis, type SolvedNodes, solveNodes, solveSymmetric } from 'loomwright';
import { type Draft, node } from './draft.js';
import { isStraight, lineOf } from './load-line.js';
import type { Loom } from './schema.js';
import { type Wiring, wiringOf } from './wiring.js';

/** Resistance of a circuit's path, wires hot, in Ω. */
export interface PathOhm {
  readonly outOhm: number;
  readonly backOhm: number;
}

/** A charging current: where it leaves the grounds for a battery, and where it comes back, by what these are joined to. */
interface Charging {
  readonly of: 'alternator' | 'isolator';
  readonly into: number;
  readonly out: number;
  /** Volts that 1 A of it makes. */
  readonly voltsPerA: Float64Array;
}

/** The metal of a network with the sizes of one round. */
export interface Metal {
  /** Conductance of each branch; 0 for loads, and for batteries at rest 1 / their resistance. */
  readonly perOhm: Float64Array;
  /** Series resistance of each load's path, by the place of the load. */
  readonly seriesOhm: Float64Array;
  /** The metal alone, all loads off. */
  readonly factor: SolvedNodes['factor'];
  /** Resistances between two points that were asked for already. */
  readonly known: Map<number, number>;
  /** What a charging current of 1 A does between its two points: volts by what nodes are joined to. */
  readonly charging: readonly Charging[];
}

/** Why a load is left out: its own path cannot feed it with all else off, or no stable point is found with what runs. */
export type LeftOut = 'starved' | 'unsettled';

/** One state of the network, solved. */
export interface SolvedState {
  readonly name: string;
  /** Volts of every node against the root of the grounds, by the network's numbers of nodes. */
  readonly volts: Float64Array;
  /** Current of every draft by its number: positive from its first node to its second. */
  readonly currents: Float64Array;
  /** The same of the ways that are no circuits. */
  readonly ways: Float64Array;
  /** Current in A added on the safe side to that of a circuit: charging currents, whichever way they run. */
  readonly extraA: Float64Array;
  readonly batteries: ReadonlyMap<string, { readonly currentA: number; readonly supplyV: number }>;
  /** Loads left out, by draft. */
  readonly leftOut: ReadonlyMap<number, LeftOut>;
  /** Volts before each load's path, and volts between posts and what they are joined to: where the next round begins. */
  readonly loadV: Float64Array;
  readonly offsetV: Float64Array;
  /** Volts by what nodes are joined to, current of each branch, and the equations in their last step. */
  readonly nodeV: Float64Array;
  readonly branchA: Float64Array;
  readonly factor: SolvedNodes['factor'];
}

/** What the batteries of a state put into the equations. */
interface Sources {
  /** Volts of each node above what it is joined to. */
  readonly offsetV: Float64Array;
  readonly drivenA: Float64Array;
  /** Volts of `offsetV` between the ends of a branch. */
  readonly apart: (branch: number) => number;
  /** Volts across a load's branch, by the place of the load. */
  readonly across: (load: number, solved: SolvedNodes) => number;
}

/** Nothing is without resistance here: a joint given as 0 Ω has a nanoohm, which loses half a microvolt at 500 A. */
export const LEAST_OHM = 1e-9;
// Steps are Newton's: when volts moved by less, what is left is about the square of that.
const SETTLED_V = 1e-9;
const MOST_STEPS = 60;

/**
 * The network of a loom: feeders, grounds with all their loops, batteries and loads as one set of node equations. Their
 * order of elimination is found once, for all states and all rounds of sizing.
 */
export class Network {
  readonly wiring: Wiring;
  readonly analysis: NodeAnalysis;
  readonly #loom: Loom;

  constructor(loom: Loom, drafts: readonly Draft[]) {
    const wiring = wiringOf(loom, drafts);
    const { joined, joinedCount, from, to, root } = wiring;
    const join = (node: number): number => joined[node] as number;
    this.#loom = loom;
    this.wiring = wiring;
    this.analysis = analyseNodes({
      nodeCount: joinedCount,
      from: from.map(join),
      to: to.map(join),
      held: Int32Array.of(join(root)),
    });
  }

  /** Names of the nodes. */
  get nodes(): readonly string[] {
    return this.wiring.nodes;
  }

  /** The metal with the sizes of one round. */
  metal(ohms: readonly PathOhm[]): Metal {
    const { from, metalCount, draftOf, wayOf, ways, loads, batteries } = this.wiring;
    const perOhm = new Float64Array(from.length);
    for (let k = 0; k < metalCount; k++) {
      const draft = draftOf[k] as number;
      const ohm = draft < 0 ? (ways[wayOf[k] as number]?.ohm ?? 0) : sum(ohms[draft] as PathOhm);
      perOhm[k] = 1 / Math.max(ohm, LEAST_OHM);
    }
    for (const { branch, resistanceOhm } of batteries) if (branch >= 0) perOhm[branch] = 1 / resistanceOhm;
    const drivenA = new Float64Array(from.length);
    const { factor } = this.#solve(perOhm, drivenA);
    const charging = this.#chargingPoints().map((points) => ({
      ...points,
      voltsPerA: this.voltsOf(factor, points.into, points.out),
    }));
    const seriesOhm = Float64Array.from(loads, ({ draft }) => sum(ohms[draft] as PathOhm));
    return { perOhm, seriesOhm, factor, known: new Map(), charging };
  }

  /** Resistance in Ω between two points of the metal, loads off, batteries as a short or as their own resistance. */
  ohmBetween(a: string, b: string, { factor, known }: Metal): number {
    const [i, j] = [this.#joinedOf(a), this.#joinedOf(b)];
    if (i === j) return 0;
    const key = i * this.wiring.joinedCount + j;
    let ohm = known.get(key);
    if (ohm === undefined) {
      const volts = this.voltsOf(factor, i, j);
      ohm = (volts[i] as number) - (volts[j] as number);
      known.set(key, ohm);
    }
    return ohm;
  }

  /** Resistance in Ω from a point to the root of the grounds. */
  ohmToRoot(name: string, metal: Metal): number {
    return this.ohmBetween(name, this.nodes[this.wiring.root] as string, metal);
  }

  /** The same from the ground point that lies farthest. */
  farthestOhm(metal: Metal): number {
    const names = Object.keys(this.#loom.grounds);
    return names.reduce((most, name) => Math.max(most, this.ohmToRoot(node.ground(name), metal)), 0);
  }

  /** Solves one state; from where it was solved last, where that is given. */
  solve(state: string, drafts: readonly Draft[], metal: Metal, last: SolvedState | null = null): SolvedState {
    const { wiring } = this;
    const { loads, nodes } = wiring;
    const perOhm = metal.perOhm.slice();
    const { offsetV, drivenA, apart, across } = this.sourcesOf(state, perOhm);
    const on = loads.flatMap(({ draft }, n) => ((drafts[draft] as Draft).on.includes(state) ? [n] : []));
    const off = new Map<number, LeftOut>();
    let loadV = new Float64Array(loads.length);
    let solved: SolvedNodes;
    /** Puts the lines of all loads into the equations; gives those that cannot be fed at their volts. */
    const putLines = (): number[] => {
      const dark: number[] = [];
      for (const n of on) {
        const { branch, load } = loads[n] as (typeof loads)[number];
        const volts = loadV[n] as number;
        const line = off.has(n) ? null : lineOf(load, volts, metal.seriesOhm[n] as number);
        if (line === null && !off.has(n)) dark.push(n);
        perOhm[branch] = line?.slopePerOhm ?? 0;
        drivenA[branch] = line === null ? 0 : line.currentA + line.slopePerOhm * (apart(branch) - volts);
      }
      return dark;
    };
    let warm = last !== null && last.leftOut.size === 0;
    if (warm) loadV = (last as SolvedState).loadV.slice();
    for (let step = 0, fresh = !warm; ; step++) {
      // Then every load has the volts that it would have with all loads off.
      const idling = fresh;
      if (fresh) {
        for (const n of on) {
          const { branch } = loads[n] as (typeof loads)[number];
          perOhm[branch] = 0;
          drivenA[branch] = 0;
        }
        const idle = this.#solve(perOhm, drivenA);
        for (const n of on) loadV[n] = across(n, idle);
        fresh = false;
      }
      const dark = putLines();
      const next =
        dark.length > 0 || step > MOST_STEPS ? null : solveNodes({ analysis: this.analysis, perOhm, drivenA });
      if (next === null || !next.definite) {
        // Where it began near by, it begins once more from afar; then the load with the least to live on is left out.
        if (!warm) {
          const worst = leastOf(dark.length > 0 ? dark : on.filter((n) => !off.has(n)), loadV, metal, wiring);
          off.set(worst, idling && dark.length > 0 ? 'starved' : 'unsettled');
        }
        warm = false;
        fresh = true;
        step = 0;
        continue;
      }
      solved = next;
      let moved = 0;
      let bent = false;
      for (const n of on) {
        const volts = across(n, next);
        const shift = Math.abs(volts - (loadV[n] as number));
        loadV[n] = volts;
        const { load } = loads[n] as (typeof loads)[number];
        if (off.has(n) || isStraight(load, volts, metal.seriesOhm[n] as number)) continue;
        bent = true;
        moved = Math.max(moved, shift);
      }
      if (!bent || moved <= SETTLED_V) break;
    }
    return this.#answer(state, drafts, metal, {
      solved,
      offsetV,
      loadV,
      leftOut: new Map([...off].map(([n, why]) => [(loads[n] as (typeof loads)[number]).draft, why])),
      nodes: nodes.length,
    });
  }

  /** Volts between where a load's path begins and where it ends, in a solved state. */
  sourceV({ nodes }: Draft, solved: SolvedState): number {
    if (nodes === null) return NaN;
    return this.voltsAt(nodes.from, solved) - (nodes.to === null ? 0 : this.voltsAt(nodes.to, solved));
  }

  voltsAt(name: string, { volts }: SolvedState): number {
    return volts[this.wiring.numberOf.get(name) as number] as number;
  }

  /** What a node is joined to, by name. */
  #joinedOf(name: string): number {
    const { joined, numberOf } = this.wiring;
    return joined[numberOf.get(name) as number] as number;
  }

  #solve(perOhm: Float64Array, drivenA: Float64Array): SolvedNodes {
    const solved = solveNodes({ analysis: this.analysis, perOhm, drivenA });
    // Metal leads from every node to the root: `parseLoom` sees to it.
    if (!solved.definite) throw new Error(`nothing holds node ${solved.nodeIndex}`);
    return solved;
  }

  /** Volts that 1 A makes that enters at one node and leaves at another, by what nodes are joined to. */
  voltsOf(factor: SolvedNodes['factor'], into: number, out: number): Float64Array {
    const { unknown, nodeOf, nodeCount } = this.analysis;
    const sides = new Float64Array(nodeOf.length);
    const [i, j] = [unknown[into] as number, unknown[out] as number];
    if (i >= 0) sides[i] = 1;
    if (j >= 0) sides[j] = i === j ? 0 : -1;
    const x = solveSymmetric({ factor, sides, into: sides });
    const volts = new Float64Array(nodeCount);
    for (let u = 0; u < nodeOf.length; u++) volts[nodeOf[u] as number] = x[u] as number;
    return volts;
  }

  /** Where charging currents leave the grounds and come back to them. */
  #chargingPoints(): readonly Omit<Charging, 'voltsPerA'>[] {
    const { alternator, isolator } = this.#loom.supply;
    const points: Omit<Charging, 'voltsPerA'>[] = [];
    if (alternator !== undefined) {
      const { battery, ground } = alternator;
      const [into, out] = [this.#joinedOf(node.negative(battery)), this.#joinedOf(node.ground(ground))];
      points.push({ of: 'alternator', into, out });
    }
    if (isolator !== undefined) {
      const [a, b] = isolator.between;
      points.push({ of: 'isolator', into: this.#joinedOf(node.negative(b)), out: this.#joinedOf(node.negative(a)) });
    }
    return points;
  }

  /** The charging current of a state in A, by where it comes from. */
  chargingA(state: string, of: 'alternator' | 'isolator'): number {
    const { alternator, isolator } = this.#loom.supply;
    const given = this.#loom.states[state] as Loom['states'][string];
    if (of === 'isolator') return given.isolator === 'closed' ? (isolator?.current ?? 0) : 0;
    if (alternator === undefined || given.alternator === 'off') return 0;
    return given.alternator === 'full' ? alternator.current : alternator.idleCurrent;
  }

  /** Volts of a battery in a state, as the file gives them: at its posts or at rest. */
  givenV(state: string, battery: string): number {
    const { volts, atRest = {} } = this.#loom.states[state] as Loom['states'][string];
    return atRest[battery] ?? volts[battery] ?? 0;
  }

  /**
   * What the batteries of a state put into the equations: volts of each node above what it is joined to, and the current
   * that these and batteries of their own branch drive. A battery whose posts' volts are given gets its `perOhm`.
   */
  sourcesOf(state: string, perOhm: Float64Array, extraV: (battery: string) => number = () => 0): Sources {
    const { atRest = {} } = this.#loom.states[state] as Loom['states'][string];
    const { batteries, from, to, joined, loads } = this.wiring;
    const offsetV = new Float64Array(this.nodes.length);
    const drivenA = new Float64Array(from.length);
    for (const { name, post, branch } of batteries) {
      const volts = this.givenV(state, name) + extraV(name);
      if (branch < 0) offsetV[post] = volts;
      else {
        if (atRest[name] === undefined) perOhm[branch] = 1 / LEAST_OHM;
        drivenA[branch] = (perOhm[branch] as number) * volts;
      }
    }
    const apart = (k: number): number => (offsetV[from[k] as number] as number) - (offsetV[to[k] as number] as number);
    for (let k = 0; k < from.length; k++) {
      const volts = apart(k);
      if (volts !== 0) drivenA[k] = (drivenA[k] as number) + (perOhm[k] as number) * volts;
    }
    const across = (n: number, { nodeV }: SolvedNodes): number => {
      const { branch } = loads[n] as (typeof loads)[number];
      const a = nodeV[joined[from[branch] as number] as number] as number;
      return a - (nodeV[joined[to[branch] as number] as number] as number) + apart(branch);
    };
    return { offsetV, drivenA, apart, across };
  }

  #answer(
    state: string,
    drafts: readonly Draft[],
    { perOhm, charging }: Metal,
    found: {
      readonly solved: SolvedNodes;
      readonly offsetV: Float64Array;
      readonly loadV: Float64Array;
      readonly leftOut: ReadonlyMap<number, LeftOut>;
      readonly nodes: number;
    },
  ): SolvedState {
    const { joined, draftOf, wayOf, metalCount, loads, batteries, ways, from, to } = this.wiring;
    const { solved, offsetV, loadV, leftOut } = found;
    const { nodeV, factor } = solved;
    // What is left of a current by rounding is none.
    const quietA = 1e-13 * solved.branchA.reduce((most, amps) => Math.max(most, Math.abs(amps)), 0);
    const branchA = solved.branchA.map((amps) => (Math.abs(amps) <= quietA ? 0 : amps));
    const volts = Float64Array.from(offsetV, (above, v) => (nodeV[joined[v] as number] as number) + above);
    const currents = new Float64Array(drafts.length);
    const extraA = new Float64Array(drafts.length);
    const wayA = new Float64Array(ways.length);
    for (let k = 0; k < metalCount; k++) {
      const draft = draftOf[k] as number;
      if (draft < 0) wayA[wayOf[k] as number] = branchA[k] as number;
      else currents[draft] = branchA[k] as number;
    }
    for (const { draft, branch } of loads) currents[draft] = branchA[branch] as number;
    for (const { of, voltsPerA } of charging) {
      const amps = this.chargingA(state, of);
      if (amps === 0) continue;
      for (let k = 0; k < metalCount; k++) {
        const draft = draftOf[k] as number;
        if (draft < 0 || drafts[draft]?.kind !== 'strap') continue;
        const [a, b] = [joined[from[k] as number] as number, joined[to[k] as number] as number];
        const share = Math.abs((perOhm[k] as number) * ((voltsPerA[a] as number) - (voltsPerA[b] as number)));
        if (share > LEAST_SHARE) extraA[draft] = (extraA[draft] as number) + amps * Math.min(1, tidy(share));
      }
    }
    return {
      name: state,
      volts,
      currents,
      ways: wayA,
      extraA,
      batteries: new Map(
        batteries.map(({ name, post, negative, at }) => {
          const currentA = at.reduce((all, { branch, begins }) => {
            const amps = branchA[branch] as number;
            return begins ? all + amps : all - amps;
          }, 0);
          return [name, { currentA, supplyV: (volts[post] as number) - (volts[negative] as number) }];
        }),
      ),
      leftOut,
      loadV,
      offsetV,
      nodeV,
      branchA,
      factor,
    };
  }
}

// A share of a charging current below this is rounding; one within 1e-9 of the whole is the whole.
const LEAST_SHARE = 1e-9;
const tidy = (share: number): number => (Math.abs(share - 1) < 1e-9 ? 1 : share);

const sum = ({ outOhm, backOhm }: PathOhm): number => outOhm + backOhm;

/** The load with the fewest volts for what it asks. */
function leastOf(dark: readonly number[], loadV: Float64Array, { seriesOhm }: Metal, { loads }: Wiring): number {
  const need = (n: number): number => {
    const load = loads[n]?.load;
    const ohm = Math.max(seriesOhm[n] as number, 1e-9);
    if (load?.kind === 'constant-current') return load.currentA * ohm;
    return load?.kind === 'constant-power' ? 2 * Math.sqrt(load.powerW * ohm) : 0;
  };
  const rate = (n: number): number => (loadV[n] as number) / Math.max(need(n), 1e-12);
  return dark.reduce((worst, n) => (rate(n) < rate(worst) ? n : worst), dark[0] as number);
}
