import { type NetworkBranch, type NetworkLoad, type NetworkSource, settleNetwork, solveNetwork } from 'loomwright';
import type { Metal, Network } from './network.js';
import type { StateLines } from './loss-shift.js';

/** What was cut off, solved by itself: the rest stands around it at its volts. */
export interface Island {
  /** Volts of a node of it; null where nothing alive reaches it. */
  readonly voltsAt: (node: number) => number | null;
  /** Current in A of each load between it and the rest, by its place among the loads. */
  readonly stillA: ReadonlyMap<number, number>;
}

/** What a state needs to be known of an island. */
export interface IslandInput {
  readonly lines: StateLines;
  /** 1 for what is cut off, by what nodes are joined to. */
  readonly inside: Uint8Array;
  /** Branches of metal and batteries within. */
  readonly branches: readonly number[];
  /** Loads within, and between it and the rest. */
  readonly within: ReadonlySet<number>;
  readonly across: ReadonlySet<number>;
  /** Volts of each node of the rest. */
  readonly restV: (node: number) => number;
}

/**
 * Volts of what hangs on loads alone. Lamps, motors and coils let current through and lift it to what feeds them;
 * electronics draw nothing there.
 */
export function islandOf(network: Network, metal: Metal, input: IslandInput): Island {
  const { wiring } = network;
  const { from, to, nodes, loads, batteries } = wiring;
  const { lines, inside, within, across, restV } = input;
  const { state, on } = lines;
  const isIn = (node: number): boolean => inside[wiring.joined[node] as number] === 1;
  const hung = [...across].filter((n) => on.has(n));
  // Where coils, lamps and motors tie it to the rest, electronics beside them count as drawing nothing.
  const tying = hung.filter((n) => !isActive(loads[n]?.load.kind));
  const powered = batteries.some(({ negative }) => isIn(negative));
  if (!powered && tying.length === 0 && [...within].every((n) => !on.has(n))) {
    // Nothing but electronics: no current flows, and a meter shows the volts of what feeds them.
    const volts = hung.map((n) => {
      const { from: a, to: b } = loads[n] as (typeof loads)[number];
      return restV(isIn(a) ? b : a);
    });
    const top = volts.reduce<number | null>((most, v) => (Math.abs(v) > Math.abs(most ?? 0) ? v : most), null);
    return { voltsAt: (node) => (isIn(node) ? top : null), stillA: new Map() };
  }
  const sources: NetworkSource[] = [];
  const around = new Set<number>();
  const named = (node: number): string => {
    if (!isIn(node)) around.add(node);
    return nodes[node] as string;
  };
  const branches: NetworkBranch[] = [];
  for (const k of input.branches) {
    const ends = { from: named(from[k] as number), to: named(to[k] as number) };
    const resistanceOhm = 1 / (metal.perOhm[k] as number);
    const battery = batteries.find(({ branch }) => branch === k);
    if (battery === undefined) branches.push({ name: `branch ${k}`, ...ends, resistanceOhm });
    else {
      const voltageV = network.givenV(state.name, battery.name);
      sources.push({ name: `battery ${battery.name}`, ...ends, voltageV, resistanceOhm });
    }
  }
  const list: NetworkLoad[] = [];
  const places: number[] = [];
  const listed = [...within, ...(tying.length > 0 ? tying : hung)].sort((a, b) => a - b);
  for (const n of listed) {
    if (!on.has(n)) continue;
    const { load, branch } = loads[n] as (typeof loads)[number];
    const series = metal.seriesOhm[n] as number;
    const start = series > 0 ? `before load ${n}` : named(from[branch] as number);
    if (series > 0) {
      branches.push({ name: `path ${n}`, from: named(from[branch] as number), to: start, resistanceOhm: series });
    }
    list.push({ name: `load ${n}`, from: start, to: named(to[branch] as number), load });
    places.push(n);
  }
  for (const { name, post, negative, branch } of batteries) {
    if (!isIn(negative) || branch >= 0) continue;
    const voltageV = network.givenV(state.name, name);
    sources.push({
      name: `battery ${name}`,
      from: nodes[negative] as string,
      to: nodes[post] as string,
      voltageV,
      resistanceOhm: 0,
    });
  }
  const reference = 'the rest at 0 V';
  for (const node of around) {
    const volts = restV(node);
    const [a, b] = volts < 0 ? [nodes[node] as string, reference] : [reference, nodes[node] as string];
    sources.push({ name: `rest ${node}`, from: a, to: b, voltageV: Math.abs(volts), resistanceOhm: 0 });
  }
  const solved = solveNetwork({ reference, branches, sources, loads: list, settle: settleNetwork });
  const volts = new Map(solved.nodes.map(({ name, voltageV }) => [name, voltageV]));
  const stillA = new Map<number, number>();
  solved.loads.forEach(({ currentA }, i) => {
    const n = places[i] as number;
    if (across.has(n) && Math.abs(currentA) > 1e-9) stillA.set(n, currentA);
  });
  // A node on no branch and no load is none of that network.
  return { voltsAt: (node) => volts.get(nodes[node] as string) ?? null, stillA };
}

function isActive(kind: string | undefined): boolean {
  return kind === 'constant-current' || kind === 'constant-power';
}
