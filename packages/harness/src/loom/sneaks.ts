import {
  type Network as CoreNetwork,
  type NetworkLoad,
  settleNetwork,
  type SneakCase,
  sneakPaths,
  solveNetwork,
} from 'loomwright';
import type { Draft } from './draft.js';
import { ISOLATOR, liveNet, type LiveNet, type LivePiece } from './live-net.js';
import type { SolvedState } from './network.js';
import type { PlannedAlive, PlannedSneak } from './plan-type.js';
import type { Loom } from './schema.js';
import type { Settled } from './settled.js';

/** Volts above which a point counts as alive. */
export const ALIVE_V = 1;

/** What is alive in each state, and what stays alive with a fuse out, a contact open or a battery off. */
export function aliveOf(settled: Settled): {
  readonly alive: readonly PlannedAlive[];
  readonly sneaks: readonly PlannedSneak[];
} {
  const net = liveNet(settled);
  const { drafts, states } = settled;
  const moments = states.map((state): Moment => {
    const closed = Uint8Array.from(net.pieces, ({ on }) => (on === null || on.has(state.name) ? 1 : 0));
    const live = new Uint8Array(net.nodes.length);
    const posts = net.posts.map(({ node }) => node);
    for (const v of reach(net, closed, posts, null).seen) live[v] = 1;
    return { state, closed, live };
  });
  const alive = [...net.plusOf]
    .map(([draft, plus]): PlannedAlive => {
      const voltsV = moments.map(({ state, live }) =>
        live[plus] === 1 ? voltsOf(settled, net, state, draft, plus) : null,
      );
      return { circuit: (drafts[draft] as Draft).name, voltsV };
    })
    .sort((a, b) => (a.circuit < b.circuit ? -1 : 1));
  const sneaks = faultsOf(net)
    .flatMap((fault) => {
      const found = moments.flatMap((moment) => sneaksOf(settled, net, moment, fault));
      return [...byWire(net, fault, found), ...throughLoads(settled, net, fault, found)];
    })
    .sort((a, b) => (a.fault < b.fault ? -1 : a.fault > b.fault ? 1 : a.by < b.by ? -1 : 1));
  return { alive, sneaks };
}

/** A state with what conducts and what is alive in it. */
interface Moment {
  readonly state: SolvedState;
  readonly closed: Uint8Array;
  readonly live: Uint8Array;
}

interface Fault {
  readonly name: string;
  readonly opened: PlannedSneak['opened'];
  /** What opens, and where it ought to be dead behind: behind an isolator on either side. */
  readonly pieces: readonly number[];
  readonly starts: readonly number[];
  readonly post: number;
}

/** Every fuse and every switch, relay, channel and isolator that the file has; then every battery. */
function faultsOf({ pieces, posts, grounded }: LiveNet): Fault[] {
  const faults = new Map<string, Fault & { readonly pieces: number[]; readonly starts: number[] }>();
  pieces.forEach(({ kind, name, from, to }, k) => {
    if (kind !== 'fuse' && kind !== 'contact') return;
    const key = `${kind} ${name}`;
    const fault = faults.get(key) ?? { name, opened: kind, pieces: [], starts: [], post: -1 };
    faults.set(key, fault);
    fault.pieces.push(k);
    const isolates = name === ISOLATOR;
    // What a contact pulls to ground is behind it on its other side.
    fault.starts.push(...(isolates ? [from, to] : [grounded[to] === 1 ? from : to]));
  });
  return [
    ...faults.values(),
    ...posts.map(({ battery, node }): Fault => {
      return { name: `battery ${battery}`, opened: 'battery', pieces: [], starts: [node], post: node };
    }),
  ];
}

/** What stays alive behind a fault in one state, before any volts are known. */
interface Found {
  readonly moment: Moment;
  /** Where it ought to be dead, and what metal ties to that. */
  readonly start: number;
  readonly behind: ReadonlySet<number>;
  /** The battery that feeds it by another wire, or what feeds it through coils and loads. */
  readonly feeds:
    { readonly battery: string } | { readonly seen: ReadonlySet<number>; readonly passed: ReadonlySet<number> };
}

/** Of a fuse whose two ends have a source both sides stay alive; of a battery, what hangs on its post. */
function byWire(net: LiveNet, fault: Fault, found: readonly Found[]): PlannedSneak[] {
  const list = new Map<string, { readonly batteries: Set<string>; readonly points: Map<string, number> }>();
  for (const { moment, start, behind, feeds } of found) {
    if (!('battery' in feeds)) continue;
    const { name } = moment.state;
    const here = list.get(name) ?? { batteries: new Set(), points: new Map() };
    list.set(name, here);
    here.batteries.add(`battery ${feeds.battery}`);
    for (const v of behind) {
      if (v !== start && net.nodes[v]?.startsWith('box ') !== true) continue;
      // Where it was cut from its own source it has the volts of the one that is left.
      const at = v === start ? (net.posts.find(({ battery }) => battery === feeds.battery)?.node ?? v) : v;
      here.points.set(net.nodes[v] as string, heldV(net, moment.state, at));
    }
  }
  const [first, ...rest] = [...list].map(([state, { batteries, points }]) => {
    const highest = highestFirst([...points].map(([node, voltageV]) => ({ node, voltageV })));
    return { state, fedFrom: [...batteries].sort().join(' and '), points: highest };
  });
  if (first === undefined) return [];
  const top = ({ points }: typeof first): number => points[0]?.voltageV ?? 0;
  const { state, fedFrom, points } = rest.reduce((most, one) => (top(one) > top(most) ? one : most), first);
  const { name, opened } = fault;
  return [{ fault: name, opened, state, states: [...list.keys()], points, by: 'wire', fedFrom, path: [], relays: [] }];
}

/** States in which the same pieces conduct differ in their volts alone: the highest of them is solved. */
function throughLoads(settled: Settled, net: LiveNet, fault: Fault, found: readonly Found[]): PlannedSneak[] {
  const groups = new Map<string, { readonly names: string[]; worst: Found; topV: number }>();
  for (const one of found) {
    const { feeds, moment } = one;
    if ('battery' in feeds) continue;
    const key = [...feeds.passed].sort((a, b) => a - b).join();
    let topV = 0;
    for (const v of feeds.seen) {
      if (fedElsewhere(one, v)) topV = Math.max(topV, heldV(net, moment.state, v));
    }
    const group = groups.get(key);
    if (group === undefined) groups.set(key, { names: [moment.state.name], worst: one, topV });
    else {
      group.names.push(moment.state.name);
      if (topV > group.topV) Object.assign(group, { worst: one, topV });
    }
  }
  const solved = [...groups.values()].flatMap(({ names, worst }) => {
    const one = solvedSneak(settled, net, fault, worst);
    return one === null ? [] : [{ one, names }];
  });
  const top = ({ points }: PlannedSneak): number => points[0]?.voltageV ?? 0;
  const [first, ...rest] = solved;
  if (first === undefined) return [];
  const { one } = rest.reduce((most, each) => (top(each.one) > top(most.one) ? each : most), first);
  return [{ ...one, states: [...new Set(solved.flatMap(({ names }) => names))].sort() }];
}

function fedElsewhere({ moment, behind }: Found, v: number): boolean {
  return moment.live[v] === 1 && !behind.has(v);
}

function highestFirst<T extends { readonly node: string; readonly voltageV: number }>(points: readonly T[]): T[] {
  return [...points].sort((a, b) => b.voltageV - a.voltageV || (a.node < b.node ? -1 : 1));
}

/**
 * What is reached from some nodes by metal, and with `through` by coils and loads that let current through as well. It
 * stops at the grounds, and at what is in `stop`.
 */
function reach(
  { pieces, at, grounded }: LiveNet,
  closed: Uint8Array,
  starts: readonly number[],
  through: { readonly passes: (k: number) => boolean; readonly stop: (v: number) => boolean } | null,
): { readonly seen: Set<number>; readonly passed: Set<number> } {
  const seen = new Set<number>();
  const passed = new Set<number>();
  const stack = [...starts];
  for (let v = stack.pop(); v !== undefined; v = stack.pop()) {
    if (seen.has(v)) continue;
    seen.add(v);
    if (grounded[v] === 1 || through?.stop(v) === true) continue;
    for (const k of at[v] ?? []) {
      if (closed[k] !== 1) continue;
      const { kind, from, to } = pieces[k] as LivePiece;
      if ((kind === 'load' || kind === 'coil') && through?.passes(k) !== true) continue;
      passed.add(k);
      stack.push(from === v ? to : from);
    }
  }
  return { seen, passed };
}

/** What stays alive behind a fault in one state. What was open or dead before is none of its doing. */
function sneaksOf(settled: Settled, net: LiveNet, moment: Moment, { pieces, starts, post }: Fault): Found[] {
  const { closed, live } = moment;
  if (pieces.length > 0 && pieces.every((k) => closed[k] !== 1)) return [];
  const open = closed.slice();
  for (const k of pieces) open[k] = 0;
  return starts.flatMap((start) =>
    live[start] === 1 ? (sneakOf(settled, net, { ...moment, closed: open }, start, post) ?? []) : [],
  );
}

function sneakOf({ drafts }: Settled, net: LiveNet, moment: Moment, start: number, post: number): Found | null {
  const { pieces, posts } = net;
  const { closed, live } = moment;
  const behind = reach(net, closed, [start], null).seen;
  const other = posts.find(({ node }) => node !== post && behind.has(node));
  if (other !== undefined) return { moment, start, behind, feeds: { battery: other.battery } };
  const passes = (k: number): boolean => {
    const { kind, draft } = pieces[k] as LivePiece;
    const load = drafts[draft]?.load?.kind;
    return kind === 'coil' || load === 'resistance' || load === 'motor';
  };
  let reached = false;
  const stop = (v: number): boolean => {
    const elsewhere = live[v] === 1 && !behind.has(v);
    reached ||= elsewhere;
    return elsewhere;
  };
  const feeds = reach(net, closed, [start], { passes, stop });
  return reached ? { moment, start, behind, feeds } : null;
}

/** Solves what is back-fed by itself: what is alive elsewhere stands around it at its volts. */
function solvedSneak({ loom, drafts }: Settled, net: LiveNet, fault: Fault, found: Found): PlannedSneak | null {
  const { nodes, pieces, grounded } = net;
  const { behind, feeds, moment } = found;
  if ('battery' in feeds) return null;
  const { state } = moment;
  const reference = 'the grounds';
  const named = (v: number): string => (grounded[v] === 1 ? reference : (nodes[v] as string));
  const network: { -readonly [K in 'branches' | 'sources']: CoreNetwork[K][number][] } & { loads: NetworkLoad[] } = {
    branches: [],
    sources: [],
    loads: [],
  };
  for (const k of [...feeds.passed].sort((a, b) => a - b)) {
    const { name, kind, from, to, ohm, draft } = pieces[k] as LivePiece;
    const ends = { from: named(from), to: named(to) };
    if (ends.from === ends.to) continue;
    const { load } = drafts[draft] ?? {};
    if (load !== null && load !== undefined && (kind === 'load' || kind === 'coil'))
      network.loads.push({ name, ...ends, load });
    else
      network.branches.push({
        name: network.branches.some((each) => each.name === name) ? `${name}, ${k}` : name,
        ...ends,
        resistanceOhm: ohm,
      });
  }
  for (const v of feeds.seen) {
    if (!fedElsewhere(found, v)) continue;
    const voltageV = Math.max(0, heldV(net, state, v));
    network.sources.push({
      name: `${nodes[v] ?? ''}, alive`,
      from: reference,
      to: named(v),
      voltageV,
      resistanceOhm: 0,
    });
  }
  const within = new Set([...network.branches, ...network.loads].flatMap(({ from, to }) => [from, to]));
  const dead = [...behind].flatMap((v) => (grounded[v] === 1 || !within.has(named(v)) ? [] : [named(v)]));
  const relays = network.loads.flatMap(({ name }) => {
    const { pickUp, dropOut, coilTemperature, ratedAt } = relayTypeOf(loom, name) ?? {};
    if (pickUp === undefined || dropOut === undefined || coilTemperature === undefined || ratedAt === undefined)
      return [];
    const hot = (234.5 + coilTemperature) / (234.5 + ratedAt);
    return [{ coil: name, pickUpV: pickUp * hot, holdV: dropOut * hot }];
  });
  const { unwanted, cases } = sneakPaths({
    network: { reference, ...network, settle: settleNetwork },
    states: [{ name: state.name, relaysBefore: 'energised', deadNodes: dead }],
    faults: [],
    relays,
    aliveV: ALIVE_V,
    by: solveNetwork,
  });
  const [first] = unwanted;
  if (first === undefined) return null;
  const held = (cases[0] as SneakCase).relays.filter(({ coil, position }) => {
    const load = network.loads.find((each) => each.name === coil);
    return position !== 'released' && load !== undefined && dead.includes(load.from);
  });
  return {
    fault: fault.name,
    opened: fault.opened,
    state: state.name,
    states: [state.name],
    points: highestFirst(unwanted.map(({ name, voltageV }) => ({ node: name, voltageV }))),
    by: 'loads',
    fedFrom: first.fedFrom?.replace(/, alive$/, '') ?? null,
    path: first.path.filter((name) => network.loads.some((load) => load.name === name)),
    relays: held.map(({ coil }) => coil.replace(/^coil /, 'relay of ')),
  };
}

/** Volts of a node that is fed, as the plan solved what it hangs on. */
function heldV({ solvedOf }: LiveNet, state: SolvedState, v: number): number {
  const at = solvedOf[v] as number;
  return at < 0 ? 0 : (state.volts[at] as number);
}

/** Volts at the positive end of a load: behind its wires where it is on. */
function voltsOf(settled: Settled, net: LiveNet, state: SolvedState, draft: number, plus: number): number {
  const { outOhm } = settled.ohms[draft] as Settled['ohms'][number];
  return heldV(net, state, plus) - (state.currents[draft] ?? 0) * outOhm;
}

function relayTypeOf(loom: Loom, coil: string): Loom['relayTypes'][string] | undefined {
  const item = loom.items[coil.replace(/^coil /, '')];
  return coil.startsWith('coil ') && item?.kind === 'load' && item.relay !== undefined
    ? loom.relayTypes[item.relay.type]
    : undefined;
}
