import type { Network } from './element.js';
import { heldPerOhm } from './held-network.js';
import { endsOf } from './network-guard.js';
import type { SolveNetworkResult } from './network-result.js';
import type { SneakChange } from './sneak-paths-change.js';
import { settleRelays } from './sneak-paths-relay.js';
import type { SneakPathsInput, SneakState } from './sneak-paths.js';
import { type WayEdge, type Ways, waysOf } from './sneak-paths-way.js';

/** A node in one case. */
export interface SneakNode {
  readonly node: string;
  /** Volts against the reference; null where nothing ties it to the reference. */
  readonly voltageV: number | null;
  readonly alive: boolean;
  /** The source that it is fed from and the elements on the way, for what is alive. */
  readonly fedFrom: string | null;
  readonly path: readonly string[];
}

/** A load in one case. */
export interface SneakLoad {
  readonly name: string;
  /** Volts across it, negative where they are turned; null where it has none. */
  readonly voltageV: number | null;
  readonly currentA: number;
  readonly alive: boolean;
  readonly fedFrom: string | null;
  /** The elements from the source to it, and from it back to a source. */
  readonly path: readonly string[];
  readonly backPath: readonly string[];
}

/** A relay in one case. */
export interface SneakRelayState {
  readonly coil: string;
  readonly coilV: number;
  /**
   * `pulls-in`: in, with volts enough to pull in. `held`: in, and kept there by less. `released`: out. `buzzes`: its own
   * contacts change its volts so that it rests neither in nor out.
   */
  readonly position: 'pulls-in' | 'held' | 'released' | 'buzzes';
  /** What feeds a coil that is in. */
  readonly fedFrom: string | null;
  readonly path: readonly string[];
}

/** One state, as it is or with a fault. */
export interface SneakCase {
  readonly state: string;
  readonly fault: string | null;
  readonly nodes: readonly SneakNode[];
  readonly loads: readonly SneakLoad[];
  readonly relays: readonly SneakRelayState[];
}

/** A case settled: volts of a node, null where nothing ties it to the reference, and the current of a load by its place. */
interface Settled {
  readonly nodeV: (node: string) => number | null;
  readonly loadA: (load: number) => number;
}

function settledOf({ nodes, loads }: SolveNetworkResult): Settled {
  const volts = new Map(nodes.map(({ name, voltageV }) => [name, voltageV]));
  return { nodeV: (node) => volts.get(node) ?? null, loadA: (load) => loads[load]?.currentA ?? 0 };
}

/** Solves one case and finds its paths. */
export function sneakCase(
  { network, relays, aliveV, by }: SneakPathsInput,
  state: SneakState,
  fault: SneakChange | null,
): SneakCase {
  const changes = fault === null ? [state] : [state, fault];
  const acrossIn = (after: Network, solved: Settled) => {
    const ends = new Map((after.loads ?? []).map((each) => [each.name, each]));
    return (name: string): number | null => {
      const { from, to } = ends.get(name) as { from: string; to: string };
      const [v, w] = [solved.nodeV(from), solved.nodeV(to)];
      return v === null || w === null ? null : v - w;
    };
  };
  const rest = settleRelays(network, relays, changes, state.relaysBefore, (after) => {
    const solved = settledOf(by(after));
    const across = acrossIn(after, solved);
    return { solved, voltsAt: (coil) => Math.abs(across(coil) ?? 0) };
  });
  const { solved } = rest;
  const across = acrossIn(rest.network, solved);
  const volts = new Map<string, number>();
  const all = [...endsOf(network)];
  for (const node of all) {
    const v = solved.nodeV(node);
    if (v !== null) volts.set(node, v);
  }
  const edges = edgesOf(rest.network, solved, across);
  const out = waysOf(rest.network, edges, volts, false);
  const back = waysOf(rest.network, edges, volts, true);
  const loads = (network.loads ?? []).map((load, i) => {
    const voltageV = across(load.name);
    return sneakLoad(load, voltageV, voltageV === null ? 0 : solved.loadA(i), aliveV, out, back);
  });
  return {
    state: state.name,
    fault: fault?.name ?? null,
    nodes: all.map((node): SneakNode => {
      const voltageV = volts.get(node) ?? null;
      const alive = voltageV !== null && Math.abs(voltageV) > aliveV;
      // A node below the reference is fed from a source's negative end.
      const way = alive ? (voltageV > 0 ? out : back).to(node) : null;
      return { node, voltageV, alive, fedFrom: way?.source ?? null, path: way?.path ?? [] };
    }),
    loads,
    relays: relays.map(({ coil, pickUpV }, i): SneakRelayState => {
      const coilV = Math.abs(across(coil) ?? 0);
      const load = loads.find(({ name }) => name === coil) as SneakLoad;
      const position =
        rest.buzzes[i] === true
          ? 'buzzes'
          : rest.energised[i] !== true
            ? 'released'
            : coilV >= pickUpV
              ? 'pulls-in'
              : 'held';
      const fed = position === 'released' ? null : load;
      return { coil, coilV, position, fedFrom: fed?.fedFrom ?? null, path: fed?.path ?? [] };
    }),
  };
}

function sneakLoad(
  { name, from, to }: { readonly name: string; readonly from: string; readonly to: string },
  voltageV: number | null,
  currentA: number,
  aliveV: number,
  out: Ways,
  back: Ways,
): SneakLoad {
  const [high, low] = (voltageV ?? 0) >= 0 ? [from, to] : [to, from];
  const alive = voltageV !== null && Math.abs(voltageV) > aliveV;
  const fed = voltageV === null || voltageV === 0 ? null : out.to(high);
  const returned = fed === null ? null : back.to(low);
  return {
    name,
    voltageV,
    currentA,
    alive,
    fedFrom: fed?.source ?? null,
    path: fed?.path ?? [],
    backPath: returned?.path ?? [],
  };
}

/** What conducts in a solved network. */
function edgesOf(network: Network, solved: Settled, across: (load: string) => number | null): WayEdge[] {
  const { branches, sources, loads = [], diodes = [], switches = [] } = network;
  /** A battery that is charged passes current on, from its positive end to its negative one. */
  const charged = ({ from, to, voltageV }: Network['sources'][number]): boolean => {
    const [v, w] = [solved.nodeV(to), solved.nodeV(from)];
    return v !== null && w !== null && v - w > voltageV;
  };
  const two = ({ name, from, to, resistanceOhm }: Omit<WayEdge, 'oneWay'>): WayEdge => ({
    name,
    from,
    to,
    resistanceOhm,
    oneWay: false,
  });
  return [
    ...branches.map(two),
    ...switches.filter(({ closed }) => closed).map(two),
    ...sources.filter(charged).map((each) => ({ ...two(each), from: each.to, to: each.from, oneWay: true })),
    ...diodes.map((each) => ({ ...two(each), oneWay: true })),
    ...loads.flatMap(({ name, from, to, load }, i) => {
      const perOhm = heldPerOhm(load, across(name), solved.loadA(i));
      return perOhm > 0 ? [two({ name, from, to, resistanceOhm: 1 / perOhm })] : [];
    }),
  ];
}
