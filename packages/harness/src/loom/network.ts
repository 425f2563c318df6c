import { solvePath } from 'loomwright';
import { type Draft, type DraftLoad, node } from './draft.js';
import type { Loom } from './schema.js';

/** Resistance of a circuit's path, wires hot, in Ω. */
export interface PathOhm {
  readonly outOhm: number;
  readonly backOhm: number;
}

/** One state of the network, solved. */
export interface SolvedState {
  readonly name: string;
  /** Volts of every node against the root of the grounds, by the network's numbers of nodes. */
  readonly volts: Float64Array;
  /** Current of every draft by its number: of loads, feeders, straps and ground wires. */
  readonly currents: Float64Array;
  /** Current of the ground points whose way on is the body, by their number among the ground points. */
  readonly bodies: ReadonlyMap<string, number>;
  readonly batteries: ReadonlyMap<string, number>;
  readonly starved: ReadonlySet<number>;
}

interface Edge {
  readonly child: number;
  readonly parent: number;
  /** Number of the draft, or −1 for a body. */
  readonly draft: number;
  /** 1 where the draft leads from child to parent, −1 the other way. */
  readonly sign: number;
  /** Ohms of a body; of drafts they come with each solve. */
  readonly ohm: number;
  readonly ground: string | null;
}

interface Hung {
  readonly draft: number;
  readonly from: number;
  readonly to: number;
  readonly load: DraftLoad;
  readonly battery: string;
}

const MOST_ROUNDS = 300;
const SETTLED_V = 1e-12;

/**
 * The network of a loom: supply cables branch like a tree from the batteries, grounds run together like a tree. So
 * shared feeders and shared ways back are added up exactly, in one pass up and one down; only loads whose current
 * depends on their volts ask for more rounds.
 */
export class Network {
  /** Names of the nodes. */
  readonly nodes: readonly string[];
  readonly #index: ReadonlyMap<string, number>;
  readonly #loom: Loom;
  readonly #supply: readonly Edge[];
  readonly #grounds: readonly Edge[];
  readonly #loads: readonly Hung[];
  readonly #parents: Int32Array;
  readonly #edgeOf: readonly (Edge | undefined)[];

  constructor(loom: Loom, drafts: readonly Draft[]) {
    this.#loom = loom;
    const index = new Map<string, number>();
    const at = (name: string): number => {
      const known = index.get(name);
      if (known !== undefined) return known;
      index.set(name, index.size);
      return index.size - 1;
    };
    const supply: Edge[] = [];
    const grounds: Edge[] = [];
    const loads: Hung[] = [];
    for (const name of Object.keys(loom.supply.batteries).sort()) {
      at(node.post(name));
      at(node.negative(name));
    }
    for (const name of Object.keys(loom.grounds).sort()) {
      const { to, body, joint } = loom.grounds[name] as Loom['grounds'][string];
      const child = at(node.ground(name));
      if (to === undefined || body === undefined) continue;
      grounds.push({ child, parent: at(node.ground(to)), draft: -1, sign: 1, ohm: joint + body, ground: name });
    }
    drafts.forEach((draft, i) => {
      const { nodes, kind } = draft;
      if (nodes === null) return;
      if (kind === 'feeder') {
        const edge = { child: at(nodes.load), parent: at(nodes.from), draft: i, sign: -1, ohm: 0, ground: null };
        supply.push(edge);
      } else if (draft.load === null) {
        // A battery's cable leads from the ground point to its post: there the post is the child.
        const turned = draft.name === `negative ${draft.serves}`;
        const [child, parent] = turned ? [at(nodes.load), at(nodes.from)] : [at(nodes.from), at(nodes.load)];
        grounds.push({ child, parent, draft: i, sign: turned ? -1 : 1, ohm: 0, ground: null });
      } else if (nodes.to !== null && draft.battery !== null) {
        loads.push({ draft: i, from: at(nodes.from), to: at(nodes.to), load: draft.load, battery: draft.battery });
      }
    });
    this.nodes = [...index.keys()];
    this.#index = index;
    this.#supply = leavesFirst(supply, index.size);
    this.#grounds = leavesFirst(grounds, index.size);
    this.#loads = loads;
    this.#parents = new Int32Array(index.size).fill(-1);
    const edgeOf: (Edge | undefined)[] = Array.from({ length: index.size });
    for (const edge of [...supply, ...grounds]) {
      this.#parents[edge.child] = edge.parent;
      edgeOf[edge.child] = edge;
    }
    this.#edgeOf = edgeOf;
  }

  /** Ohms from a node to its root along supply cables or grounds. */
  ohmToRoot(name: string, ohms: readonly PathOhm[]): number {
    let sum = 0;
    for (let here = this.#index.get(name) ?? -1; here >= 0; here = this.#parents[here] as number) {
      const edge = this.#edgeOf[here];
      if (edge !== undefined) sum += ohmOf(edge, ohms);
    }
    return sum;
  }

  /** Ohms from the ground point that lies farthest to the root. */
  farthestOhm(ohms: readonly PathOhm[]): number {
    const sums = new Float64Array(this.nodes.length);
    let most = 0;
    for (let i = this.#grounds.length - 1; i >= 0; i--) {
      const edge = this.#grounds[i] as Edge;
      sums[edge.child] = (sums[edge.parent] as number) + ohmOf(edge, ohms);
      if (this.nodes[edge.child]?.startsWith('ground ') === true) most = Math.max(most, sums[edge.child] as number);
    }
    return most;
  }

  /** Ohms between two points of the grounds. */
  ohmBetween(a: string, b: string, ohms: readonly PathOhm[]): number {
    const up = new Set<number>();
    for (let here = this.#index.get(a) ?? -1; here >= 0; here = this.#parents[here] as number) up.add(here);
    let sum = 0;
    let here = this.#index.get(b) ?? -1;
    for (; here >= 0 && !up.has(here); here = this.#parents[here] as number) {
      const edge = this.#edgeOf[here];
      if (edge !== undefined) sum += ohmOf(edge, ohms);
    }
    const meet = here;
    for (here = this.#index.get(a) ?? -1; here >= 0 && here !== meet; here = this.#parents[here] as number) {
      const edge = this.#edgeOf[here];
      if (edge !== undefined) sum += ohmOf(edge, ohms);
    }
    return sum;
  }

  /** Solves one state. */
  solve(state: string, drafts: readonly Draft[], ohms: readonly PathOhm[]): SolvedState {
    const count = this.nodes.length;
    const given = (this.#loom.states[state] as Loom['states'][string]).volts;
    const on = this.#loads.filter(({ draft }) => (drafts[draft] as Draft).on.includes(state));
    const currents = new Float64Array(drafts.length);
    const starved = new Set<number>();
    const batteries = new Map<string, number>();
    const posts = Object.keys(this.#loom.supply.batteries)
      .sort()
      .map((name) => ({
        name,
        post: this.#index.get(node.post(name)) as number,
        negative: this.#index.get(node.negative(name)) as number,
        supplyV: given[name] as number,
      }));
    let volts = new Float64Array(count);
    for (const { post, supplyV } of posts) volts[post] = supplyV;
    for (const edge of [...this.#supply].reverse()) volts[edge.child] = volts[edge.parent] as number;
    const flow = new Float64Array(count);
    for (let round = 0; round < MOST_ROUNDS; round++) {
      flow.fill(0);
      for (const { name } of posts) batteries.set(name, 0);
      for (const { draft, from, to, load, battery } of on) {
        const { outOhm, backOhm } = ohms[draft] as PathOhm;
        const supplyV = (volts[from] as number) - (volts[to] as number);
        const currentA = starved.has(draft) ? null : settled(load, supplyV, outOhm + backOhm);
        if (currentA === null) starved.add(draft);
        currents[draft] = currentA ?? 0;
        flow[from] = (flow[from] as number) + (currentA ?? 0);
        flow[to] = (flow[to] as number) + (currentA ?? 0);
        batteries.set(battery, (batteries.get(battery) ?? 0) + (currentA ?? 0));
      }
      for (const { name, negative } of posts) flow[negative] = (flow[negative] as number) - (batteries.get(name) ?? 0);
      for (const edges of [this.#supply, this.#grounds]) {
        for (const { child, parent, draft, sign } of edges) {
          const currentA = flow[child] as number;
          flow[parent] = (flow[parent] as number) + currentA;
          // Supply cables lead from parent to child, and the current with them.
          if (draft >= 0) currents[draft] = edges === this.#supply ? currentA : sign * currentA;
        }
      }
      const next = new Float64Array(count);
      for (let i = this.#grounds.length - 1; i >= 0; i--) {
        const edge = this.#grounds[i] as Edge;
        next[edge.child] = (next[edge.parent] as number) + (flow[edge.child] as number) * ohmOf(edge, ohms);
      }
      for (const { post, negative, supplyV } of posts) next[post] = (next[negative] as number) + supplyV;
      for (let i = this.#supply.length - 1; i >= 0; i--) {
        const edge = this.#supply[i] as Edge;
        next[edge.child] = (next[edge.parent] as number) - (flow[edge.child] as number) * ohmOf(edge, ohms);
      }
      let moved = 0;
      for (let i = 0; i < count; i++) moved = Math.max(moved, Math.abs((next[i] as number) - (volts[i] as number)));
      volts = next;
      if (moved <= SETTLED_V) break;
    }
    const bodies = new Map<string, number>();
    for (const { child, ground } of this.#grounds) if (ground !== null) bodies.set(ground, flow[child] as number);
    return { name: state, volts, currents, bodies, batteries, starved };
  }

  /** Volts between where a load's path begins and where it ends, in a solved state. */
  sourceV(draft: Draft, solved: SolvedState): number {
    const { nodes } = draft;
    if (nodes === null) return NaN;
    const from = solved.volts[this.#index.get(nodes.from) as number] as number;
    const to = nodes.to === null ? 0 : (solved.volts[this.#index.get(nodes.to) as number] as number);
    return from - to;
  }

  voltsAt(name: string, solved: SolvedState): number {
    return solved.volts[this.#index.get(name) as number] as number;
  }
}

function ohmOf(edge: Edge, ohms: readonly PathOhm[]): number {
  if (edge.draft < 0) return edge.ohm;
  const { outOhm, backOhm } = ohms[edge.draft] as PathOhm;
  return outOhm + backOhm;
}

/** Current of a load behind a resistance, or null where it cannot be fed. */
function settled(load: DraftLoad, supplyV: number, seriesOhm: number): number | null {
  if (!(supplyV > 0)) return null;
  if (load.kind === 'constant-current') return load.currentA * seriesOhm < supplyV ? load.currentA : null;
  const out = [{ name: 'path', resistanceOhm: seriesOhm }];
  const solved = solvePath({ supplyV, outParts: out, returnParts: [], load });
  return solved.possible ? solved.currentA : null;
}

/** Edges in an order in which each comes after all below it. */
function leavesFirst(edges: readonly Edge[], count: number): readonly Edge[] {
  const below = new Int32Array(count);
  const up: (Edge | undefined)[] = Array.from({ length: count });
  for (const edge of edges) {
    below[edge.parent] = (below[edge.parent] as number) + 1;
    up[edge.child] = edge;
  }
  const order: Edge[] = [];
  const ready = edges.filter(({ child }) => below[child] === 0);
  for (let i = 0; i < ready.length; i++) {
    const edge = ready[i] as Edge;
    order.push(edge);
    const left = (below[edge.parent] as number) - 1;
    below[edge.parent] = left;
    const next = up[edge.parent];
    if (left === 0 && next !== undefined) ready.push(next);
  }
  return order;
}
