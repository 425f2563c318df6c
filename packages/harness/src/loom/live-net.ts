import { type Draft, node } from './draft.js';
import type { Loom } from './schema.js';
import type { Settled } from './settled.js';

/** A piece of what is wired, with fuses and contacts told from the wires beside them. */
export interface LivePiece {
  readonly name: string;
  readonly kind: 'wire' | 'fuse' | 'contact' | 'load' | 'coil';
  readonly from: number;
  readonly to: number;
  readonly ohm: number;
  /** The draft of a load or coil; −1 for all else. */
  readonly draft: number;
  /** States in which it conducts; null for always. A contact bears the name of its switch, relay, channel or isolator. */
  readonly on: ReadonlySet<string> | null;
}

/** A vehicle as it is wired: every fuse and contact a piece of its own, so that each can be out. */
export interface LiveNet {
  readonly nodes: readonly string[];
  /** A point of the solved network with the volts of each node as long as it is fed; −1 where there is none. */
  readonly solvedOf: readonly number[];
  readonly pieces: readonly LivePiece[];
  /** Pieces at each node. */
  readonly at: readonly (readonly number[])[];
  readonly posts: readonly { readonly battery: string; readonly node: number }[];
  /** 1 for what the grounds are tied to by metal. */
  readonly grounded: Uint8Array;
  /** The node at the positive end of each load, by its draft. */
  readonly plusOf: ReadonlyMap<number, number>;
}

/** The contact between two batteries. */
export const ISOLATOR = 'isolator';

/** Takes a plan's circuits apart at their fuses and contacts. */
export function liveNet({ loom, drafts, network, ohms }: Settled): LiveNet {
  const numberOf = new Map<string, number>();
  const solvedOf: number[] = [];
  const nodes: string[] = [];
  const place = (name: string, like: string = name): number => {
    const known = numberOf.get(name);
    if (known !== undefined) return known;
    numberOf.set(name, nodes.length);
    solvedOf.push(network.wiring.numberOf.get(like) ?? -1);
    return nodes.push(name) - 1;
  };
  const pieces: LivePiece[] = [];
  const plusOf = new Map<number, number>();
  const put = (
    kind: LivePiece['kind'],
    name: string,
    from: number,
    to: number,
    more: Partial<Pick<LivePiece, 'ohm' | 'draft' | 'on'>> = {},
  ): void => void pieces.push({ kind, name, from, to, ohm: 0, draft: -1, on: null, ...more });
  const statesOf = (names: readonly string[]): ReadonlySet<string> => new Set(names);
  const pulled = pulledBy(loom);
  /** The node behind what protects a circuit. */
  const behind = ({ name, protection, nodes: ends }: Draft, start: string): number => {
    const from = place(start);
    if (protection.kind !== 'position' && protection.kind !== 'in-line') return from;
    const fuse = protection.kind === 'position' ? `${protection.box} ${protection.position}` : protection.name;
    const to = place(`${name} behind its fuse`, ends === null ? name : start);
    put('fuse', fuse, from, to);
    return to;
  };
  for (const { name, from, to, ohm } of network.wiring.ways) put('wire', name, place(from), place(to), { ohm });
  const { isolator } = loom.supply;
  drafts.forEach((draft, i) => {
    const { name, nodes: ends, load, kind, item, protection, on, battery, serves } = draft;
    const { outOhm, backOhm } = ohms[i] as Settled['ohms'][number];
    const ohm = outOhm + backOhm;
    if (kind === 'charge' && serves === 'isolator' && battery !== null) {
      const start = node.post(battery);
      put('wire', name, behind(draft, start), place(`${name} at the isolator`, start), { ohm });
      return;
    }
    if (ends === null) return;
    if (load === null) {
      const from = behind(draft, ends.from);
      if (kind !== 'switch' && protection.kind !== 'channel') {
        put('wire', name, from, place(ends.load), { ohm });
        return;
      }
      const contact = place(`${name} closed`, ends.load);
      const on = kind === 'switch' ? statesOf(pulled.get(serves) ?? []) : null;
      put('contact', channelOf(protection) ?? `switch ${serves}`, from, contact, { on });
      put('wire', name, contact, place(ends.load), { ohm });
      return;
    }
    if (ends.to === null) return;
    if (kind === 'coil') {
      const fed = place(`${serves} behind its fuse`, ends.from);
      const low = place(`${name} −`, ends.from);
      put('coil', name, fed, low, { draft: i });
      const control = relayOf(loom, serves)?.control;
      if (control !== undefined && 'controller' in control) {
        const pin = place(`${name} at its channel`, ends.from);
        put('wire', `wire of ${name}`, low, pin, { ohm });
        put('contact', `channel ${control.controller} ${control.channel}`, pin, place(ends.to), { on: statesOf(on) });
      } else put('wire', `wire of ${name}`, low, place(ends.to), { ohm });
      return;
    }
    let here = behind(draft, ends.from);
    const switched = item !== null && (item.relay !== undefined || item.switch !== undefined);
    const channel = channelOf(protection);
    if (switched || channel !== null) {
      const by = item?.switch === undefined ? `relay of ${name}` : `switch ${item.switch}`;
      const next = place(`${name} behind its contact`, ends.from);
      put('contact', channel ?? by, here, next, { on: statesOf(on) });
      here = next;
    }
    const plus = place(`${name} +`, ends.from);
    put('wire', `wires of ${name}`, here, plus, { ohm });
    plusOf.set(i, plus);
    put('load', name, plus, place(ends.to), { draft: i, on: switched || channel !== null ? null : statesOf(on) });
  });
  if (isolator !== undefined) {
    const closed = Object.keys(loom.states).filter((state) => loom.states[state]?.isolator === 'closed');
    const [a, b] = isolator.between.map((battery) => place(`isolator ${battery} at the isolator`, node.post(battery)));
    put('contact', ISOLATOR, a ?? 0, b ?? 0, { on: statesOf(closed), ohm: isolator.resistance });
  }
  const at: number[][] = nodes.map(() => []);
  pieces.forEach(({ from, to }, k) => {
    at[from]?.push(k);
    if (to !== from) at[to]?.push(k);
  });
  const posts = network.wiring.batteries.map(({ name }) => ({ battery: name, node: place(node.post(name)) }));
  while (at.length < nodes.length) at.push([]);
  const grounded = new Uint8Array(nodes.length);
  const stack = network.wiring.batteries.map(({ name }) => place(node.negative(name)));
  while (at.length < nodes.length) at.push([]);
  stack.push(place(network.nodes[network.wiring.root] as string));
  for (let v = stack.pop(); v !== undefined; v = stack.pop()) {
    if (grounded[v] === 1) continue;
    grounded[v] = 1;
    for (const k of at[v] ?? []) {
      const { kind, from, to } = pieces[k] as LivePiece;
      if (kind === 'wire') stack.push(from === v ? to : from);
    }
  }
  return { nodes, solvedOf, pieces, at, posts, grounded, plusOf };
}

function channelOf(protection: Draft['protection']): string | null {
  return protection.kind === 'channel' ? `channel ${protection.controller} ${protection.channel}` : null;
}

/** States in which a switch that pulls to ground is closed: those of the items whose relays it pulls. */
function pulledBy(loom: Loom): ReadonlyMap<string, readonly string[]> {
  const pulled = new Map<string, string[]>();
  for (const item of Object.values(loom.items)) {
    if (item.kind !== 'load' || item.relay === undefined || !('switch' in item.relay.control)) continue;
    const name = item.relay.control.switch;
    const list = pulled.get(name);
    if (list === undefined) pulled.set(name, [...item.on]);
    else list.push(...item.on);
  }
  return pulled;
}

function relayOf(loom: Loom, name: string) {
  const item = loom.items[name];
  return item?.kind === 'load' ? item.relay : undefined;
}
