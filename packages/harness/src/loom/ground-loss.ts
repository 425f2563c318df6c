import { type Bridges, findBridges } from 'loomwright';
import { type Draft, node } from './draft.js';
import { lineOf, type PathLine } from './load-line.js';
import { islandOf } from './loss-island.js';
import { type Lost, type Shift, shiftOf, type StateLines } from './loss-shift.js';
import type { LossInState, Overload, PlannedLoss } from './plan-type.js';
import type { SensorGround } from './sensor-ground.js';
import type { Settled } from './settled.js';

/** Shifts below this are not listed, in V. */
const LEAST_SHIFT_V = 1e-3;

/** What a branch of metal bears, with its name. */
interface Bearing {
  readonly branch: number;
  readonly name: string;
  readonly bearsA: number;
  readonly draft: number;
}

/** What is cut off with one way, whatever the state. */
interface CutOff {
  readonly inside: Uint8Array;
  readonly nodes: readonly string[];
  readonly branches: readonly number[];
  readonly within: ReadonlySet<number>;
  readonly across: ReadonlySet<number>;
  /** Loads without a way back, and those of controllers that lost their ground. */
  readonly off: ReadonlySet<number>;
}

/** Everything that all losses share. */
interface Case {
  readonly settled: Settled;
  readonly bridges: Bridges;
  /** Branches of metal and batteries: those before the loads. */
  readonly tied: number;
  readonly lines: readonly StateLines[];
  readonly watched: readonly number[];
  readonly bearing: readonly Bearing[];
  readonly sensors: readonly SensorGround[];
}

/**
 * Each way of the grounds lost in turn, in each state: what moves, what is cut off, which sensors are off, and what
 * carries more than it bears.
 *
 * A way beside which others are left is an update of the solved state. Of a way that is the only one, all that hangs on
 * it is cut off: its loads stop, the rest is solved without them, then what was cut off by itself, for the volts to
 * which its loads lift it.
 */
export function lossesOf(settled: Settled, sensors: readonly SensorGround[]): readonly PlannedLoss[] {
  const { network, drafts, states, sized, metal } = settled;
  const { wiring, analysis } = network;
  const { loads, metalCount, draftOf, wayOf, ways, joined, nodes, numberOf } = wiring;
  const tied = analysis.from.length - loads.length;
  const root = joined[wiring.root] as number;
  const points = new Set<string>(ways.flatMap(({ from, to }) => [from, to]));
  for (const { kind, nodes: ends } of drafts)
    if (kind === 'strap' && ends !== null) points.add(ends.from).add(ends.load);
  const bearing = Array.from({ length: metalCount }, (_, branch): Bearing | null => {
    const draft = draftOf[branch] as number;
    const way = ways[wayOf[branch] as number];
    const bearsA = draft < 0 ? (way?.bearsA ?? null) : (sized[draft]?.ampacityA ?? null);
    const name = draft < 0 ? (way?.name ?? '') : (drafts[draft] as Draft).name;
    return bearsA === null ? null : { branch, name, bearsA, draft };
  }).filter((one) => one !== null);
  const all: Case = {
    settled,
    tied,
    bridges: findBridges({
      nodeCount: analysis.nodeCount,
      from: analysis.from.subarray(0, tied),
      to: analysis.to.subarray(0, tied),
      roots: Int32Array.of(root),
    }),
    lines: states.map((state): StateLines => {
      const on = new Map<number, PathLine>();
      const bent: number[] = [];
      loads.forEach(({ draft, load }, n) => {
        if (!(drafts[draft] as Draft).on.includes(state.name) || state.leftOut.has(draft)) return;
        const line = lineOf(load, state.loadV[n] as number, metal.seriesOhm[n] as number);
        if (line === null) return;
        on.set(n, line);
        if (load.kind !== 'resistance') bent.push(n);
      });
      return { state, on, bent };
    }),
    watched: nodes.flatMap((name, v) => (points.has(name) ? [v] : [])),
    bearing,
    sensors: sensors.filter(({ node: a, against: b }) => numberOf.has(a) && numberOf.has(b)),
  };
  const lost: { name: string; branch: number }[] = [];
  for (let branch = 0; branch < metalCount; branch++) {
    const draft = drafts[draftOf[branch] as number];
    const way = ways[wayOf[branch] as number];
    // A stud comes loose and a strap comes off; a piece of body does not.
    if (draft?.kind === 'strap') lost.push({ name: draft.name, branch });
    else if (way?.kind === 'joint' || (way?.kind === 'body' && way.from === node.ground(way.ground))) {
      lost.push({ name: way.name, branch });
    }
  }
  return lost.sort((a, b) => (a.name < b.name ? -1 : 1)).map(({ name, branch }) => lossOf(all, name, branch));
}

function lossOf(all: Case, name: string, branch: number): PlannedLoss {
  const { settled, bridges, lines } = all;
  const { drafts, network } = settled;
  const cut = bridges.first[branch] === bridges.last[branch] ? null : cutOffOf(all, branch);
  const charging = chargingAfter(all, branch, cut);
  const { loads } = network.wiring;
  const names = [...(cut?.off ?? [])].map((n) => drafts[loads[n]?.draft ?? -1]?.name ?? '');
  return {
    lost: name,
    cutOff: [...(cut?.nodes ?? [])].sort(),
    cutCircuits: names.sort(),
    states: lines.map((of) => stateOf(all, branch, cut, of, charging)),
  };
}

/** What hangs on a branch alone. */
function cutOffOf({ settled, bridges, tied }: Case, branch: number): CutOff {
  const { network, drafts } = settled;
  const { wiring, analysis } = network;
  const { loads, nodes, joined, numberOf } = wiring;
  const inside = new Uint8Array(analysis.nodeCount);
  for (let i = bridges.first[branch] as number; i < (bridges.last[branch] as number); i++) {
    inside[bridges.nodeOf[i] as number] = 1;
  }
  const isIn = (end: number | undefined): boolean => inside[end ?? -1] === 1;
  const branches: number[] = [];
  for (let k = 0; k < tied; k++) if (k !== branch && isIn(analysis.from[k]) && isIn(analysis.to[k])) branches.push(k);
  const within = new Set<number>();
  const across = new Set<number>();
  const off = new Set<number>();
  loads.forEach(({ draft, branch: k }, n) => {
    const [a, b] = [isIn(analysis.from[k]), isIn(analysis.to[k])];
    const { protection } = drafts[draft] as Draft;
    const ground =
      protection.kind === 'channel' ? numberOf.get(node.controllerGround(protection.controller)) : undefined;
    if (ground !== undefined && isIn(joined[ground])) off.add(n);
    else if (a && b) within.add(n);
    else if (a || b) {
      across.add(n);
      off.add(n);
    }
  });
  const cut = nodes.filter((_, v) => isIn(joined[v]));
  return { inside, nodes: cut, branches, within, across, off };
}

function stateOf(
  all: Case,
  branch: number,
  cut: CutOff | null,
  of: StateLines,
  charging: ReadonlyMap<string, Float64Array>,
): LossInState {
  const { settled } = all;
  const { network, drafts, metal } = settled;
  const { wiring, analysis } = network;
  const { joined, loads, nodes } = wiring;
  const { state } = of;
  let lost: Lost =
    cut === null ? { kind: 'beside', branch } : { kind: 'bridge', off: cut.off, stillA: new Map<number, number>() };
  let shift = shiftOf(network, metal, of, lost);
  const after = (v: number): number => (state.volts[v] as number) + (shift.volts[joined[v] as number] as number);
  let voltsAt = (v: number): number | null => after(v);
  if (cut !== null) {
    const solve = () => islandOf(network, metal, { ...cut, lines: of, restV: after });
    let island = solve();
    if (island.stillA.size > 0) {
      // What still flows through loads moves the rest in turn; once more is enough, for it is little.
      lost = { kind: 'bridge', off: cut.off, stillA: island.stillA };
      shift = shiftOf(network, metal, of, lost);
      island = solve();
    }
    const isIn = (v: number): boolean => cut.inside[joined[v] as number] === 1;
    voltsAt = (v) => (isIn(v) ? island.voltsAt(v) : after(v));
  }
  const shifts = all.watched
    .flatMap((v) => {
      const moved = shift.volts[joined[v] as number] as number;
      if (Math.abs(moved) < LEAST_SHIFT_V || cut?.inside[joined[v] as number] === 1) return [];
      return [{ node: nodes[v] as string, shiftMv: moved * 1000 }];
    })
    .sort((a, b) => Math.abs(b.shiftMv) - Math.abs(a.shiftMv) || (a.node < b.node ? -1 : 1));
  const near =
    cut === null ? null : [wiring.from[branch], wiring.to[branch]].find((v) => cut.inside[joined[v ?? -1] ?? -1] === 1);
  const sensors = all.sensors.map(({ circuit, node: a, against: b }) => {
    const [p, q] = [wiring.numberOf.get(a) as number, wiring.numberOf.get(b) as number];
    const [v, w] = [voltsAt(p), voltsAt(q)];
    const gone = cut !== null && (cut.inside[joined[p] as number] ?? 0) !== (cut.inside[joined[q] as number] ?? 0);
    const offsetMv = v === null || w === null || gone ? null : (v - w) * 1000;
    const intactMv = ((state.volts[p] as number) - (state.volts[q] as number)) * 1000;
    return { circuit, offsetMv, shiftMv: offsetMv === null ? null : offsetMv - intactMv };
  });
  return {
    state: state.name,
    shifts,
    islandV: near === null || near === undefined ? null : voltsAt(near),
    sensors,
    overloads: overloadsOf(all, branch, cut, state, shift, charging, analysis),
    starved: [...shift.starved].map((n) => drafts[loads[n]?.draft ?? -1]?.name ?? '').sort(),
  };
}

/** What carries more than it bears, and did not before. */
function overloadsOf(
  { settled, bearing }: Case,
  branch: number,
  cut: CutOff | null,
  state: StateLines['state'],
  { volts }: Shift,
  charging: ReadonlyMap<string, Float64Array>,
  { from, to }: Settled['network']['analysis'],
): Overload[] {
  const { metal, network } = settled;
  const found: Overload[] = [];
  for (const { branch: k, name, bearsA, draft } of bearing) {
    if (k === branch || (cut?.inside[from[k] as number] === 1 && cut.inside[to[k] as number] === 1)) continue;
    const moved = (volts[from[k] as number] as number) - (volts[to[k] as number] as number);
    const before = Math.abs(state.branchA[k] as number) + (draft < 0 ? 0 : (state.extraA[draft] as number));
    let currentA = Math.abs((state.branchA[k] as number) + (metal.perOhm[k] as number) * moved);
    for (const [of, share] of charging) {
      currentA += network.chargingA(state.name, of as 'alternator' | 'isolator') * (share[k] as number);
    }
    const limitA = bearsA * (1 + 1e-6);
    // A stray way is held against what flows with nothing lost by the plan itself.
    if (currentA > limitA && before <= limitA) found.push({ name, currentA, intactA: before, bearsA });
  }
  return found.sort((a, b) => b.currentA / b.bearsA - a.currentA / a.bearsA || (a.name < b.name ? -1 : 1));
}

/** Share of a charging current that each branch of metal carries once one is lost, by where it comes from. */
function chargingAfter({ settled, tied }: Case, branch: number, cut: CutOff | null): ReadonlyMap<string, Float64Array> {
  const { network, metal } = settled;
  const { from, to } = network.analysis;
  const between = (volts: Float64Array, k: number): number =>
    (volts[from[k] as number] as number) - (volts[to[k] as number] as number);
  const own = cut === null ? network.voltsOf(metal.factor, from[branch] as number, to[branch] as number) : null;
  const g = metal.perOhm[branch] as number;
  return new Map(
    metal.charging.map(({ of, into, out, voltsPerA }) => {
      const share = new Float64Array(tied);
      // Where the lost way stands between alternator and battery, nothing is charged.
      if (cut !== null && cut.inside[into] !== cut.inside[out]) return [of, share];
      const gain = own === null ? 0 : (g * between(voltsPerA, branch)) / Math.max(1e-9, 1 - g * between(own, branch));
      for (let k = 0; k < tied; k++) {
        if (k === branch) continue;
        const volts = between(voltsPerA, k) + (own === null ? 0 : gain * between(own, k));
        const part = Math.abs((metal.perOhm[k] as number) * volts);
        share[k] = part < 1e-9 ? 0 : part;
      }
      return [of, share];
    }),
  );
}
