import { bondNames, type Draft, type DraftLoad, node } from './draft.js';
import type { Loom } from './schema.js';

/** A piece of body, a joint or a stray way: what conducts between two points and is no circuit. */
export interface Way {
  readonly name: string;
  readonly from: string;
  readonly to: string;
  readonly ohm: number;
  /** `joint`: of a stud whose metal leads on in several ways. */
  readonly kind: 'body' | 'joint' | 'stray';
  readonly ground: string;
  /** Current above which a stray way is harmed. */
  readonly bearsA: number | null;
}

/** A battery by its numbers. */
export interface WiredBattery {
  readonly name: string;
  readonly post: number;
  readonly negative: number;
  /** The branch of its resistance; −1 where its volts are those at its posts in all states. */
  readonly branch: number;
  readonly resistanceOhm: number;
  /** Branches at its post other than its own, and whether they begin there. */
  readonly at: readonly { readonly branch: number; readonly begins: boolean }[];
}

/** A load by its numbers. */
export interface WiredLoad {
  readonly draft: number;
  readonly load: DraftLoad;
  readonly branch: number;
  readonly from: number;
  readonly to: number;
}

/**
 * A loom by numbers: metal first (circuits without a load, then ways of the grounds), then batteries with a resistance,
 * then loads with their paths. A battery whose volts are given at its posts makes one node of both, with known volts
 * between; all other nodes stand alone.
 */
export interface Wiring {
  readonly nodes: readonly string[];
  readonly numberOf: ReadonlyMap<string, number>;
  /** What each node is joined to, by number. */
  readonly joined: Int32Array;
  readonly joinedCount: number;
  /** Nodes at the ends of each branch. */
  readonly from: Int32Array;
  readonly to: Int32Array;
  /** The draft of each metal branch, or −1 for a way; the ways follow the drafts in order. */
  readonly draftOf: Int32Array;
  readonly wayOf: Int32Array;
  readonly metalCount: number;
  readonly ways: readonly Way[];
  readonly batteries: readonly WiredBattery[];
  readonly loads: readonly WiredLoad[];
  /** The branch of each draft, −1 where it is not solved. */
  readonly branchOf: Int32Array;
  readonly root: number;
}

/** Numbers a loom. Nothing in it depends on sizes or states, so that one order of elimination serves all of them. */
export function wiringOf(loom: Loom, drafts: readonly Draft[]): Wiring {
  const numberOf = new Map<string, number>();
  const at = (name: string): number => {
    const known = numberOf.get(name);
    if (known !== undefined) return known;
    numberOf.set(name, numberOf.size);
    return numberOf.size - 1;
  };
  const names = Object.keys(loom.supply.batteries).sort();
  for (const name of names) {
    at(node.post(name));
    at(node.negative(name));
  }
  const grounds = Object.keys(loom.grounds).sort();
  for (const name of grounds) at(node.ground(name));
  const from: number[] = [];
  const to: number[] = [];
  const draftOf: number[] = [];
  const wayOf: number[] = [];
  const branchOf = new Int32Array(drafts.length).fill(-1);
  const add = (a: string, b: string, draft: number, way: number): number => {
    draftOf.push(draft);
    wayOf.push(way);
    to.push(at(b));
    return from.push(at(a)) - 1;
  };
  const metal = drafts.flatMap(({ nodes, load }, i) => (nodes !== null && load === null ? [i] : []));
  for (const i of metal) {
    const { nodes } = drafts[i] as Draft;
    if (nodes !== null) branchOf[i] = add(nodes.from, nodes.load, i, -1);
  }
  const ways = grounds.flatMap((name) => waysFrom(loom, name));
  ways.forEach((way, w) => add(way.from, way.to, -1, w));
  const metalCount = from.length;
  const resting = new Set(Object.values(loom.states).flatMap(({ atRest = {} }) => Object.keys(atRest)));
  const own = new Map(
    names
      .filter((name) => resting.has(name))
      .map((name) => [name, add(node.negative(name), node.post(name), -1, -1)] as const),
  );
  const loads = drafts.flatMap((draft, i): WiredLoad[] => {
    const { nodes, load } = draft;
    if (nodes === null || load === null || nodes.to === null) return [];
    const branch = add(nodes.from, nodes.to, i, -1);
    branchOf[i] = branch;
    return [{ draft: i, load, branch, from: from[branch] as number, to: to[branch] as number }];
  });
  const batteries = names.map((name): WiredBattery => {
    const post = at(node.post(name));
    const branch = own.get(name) ?? -1;
    const ends = from.flatMap((a, k) =>
      k !== branch && (a === post) !== (to[k] === post) ? [{ branch: k, begins: a === post }] : [],
    );
    const { resistance } = loom.supply.batteries[name] as Loom['supply']['batteries'][string];
    return { name, post, negative: at(node.negative(name)), branch, resistanceOhm: resistance, at: ends };
  });
  // What is joined gets one number: the post of a battery that of its negative end.
  const joined = new Int32Array(numberOf.size).fill(-1);
  let joinedCount = 0;
  for (const { post, negative, branch } of batteries) {
    joined[negative] = joinedCount++;
    joined[post] = branch < 0 ? joinedCount - 1 : joinedCount++;
  }
  for (let v = 0; v < joined.length; v++) if (joined[v] === -1) joined[v] = joinedCount++;
  const root = grounds.find((name) => loom.grounds[name]?.to === undefined) ?? '';
  return {
    nodes: [...numberOf.keys()],
    numberOf,
    joined,
    joinedCount,
    from: Int32Array.from(from),
    to: Int32Array.from(to),
    draftOf: Int32Array.from(draftOf),
    wayOf: Int32Array.from(wayOf),
    metalCount,
    ways,
    batteries,
    loads,
    branchOf,
    root: at(node.ground(root)),
  };
}

/**
 * The ways of a ground point that are no straps. One piece of body counts with the joint of its stud; where the metal
 * leads on in several ways they share the joint, so that it stands between stud and metal.
 */
function waysFrom(loom: Loom, name: string): Way[] {
  const { to, body, joint, bonds = [] } = loom.grounds[name] as Loom['grounds'][string];
  const stud = node.ground(name);
  const named = bondNames(name, bonds);
  /** A piece of body leads to the metal of a point, where that is told from its stud. */
  const end = (other: string): string => (piecesOf(loom, other) > 1 ? node.metal(other) : node.ground(other));
  const bodies = named.flatMap(([way, bond]) => ('body' in bond ? [[way, bond] as const] : []));
  const piece = { kind: 'body', ground: name, bearsA: null } as const;
  const first = to !== undefined && body !== undefined ? { to, body } : null;
  const list: Way[] = [];
  if (piecesOf(loom, name) > 1) {
    const metal = node.metal(name);
    list.push({ ...piece, kind: 'joint', name: stud, from: stud, to: metal, ohm: joint });
    const pieces = first === null ? bodies : [[`body ${name}`, first] as const, ...bodies];
    for (const [way, bond] of pieces) {
      list.push({ ...piece, name: way, from: metal, to: end(bond.to), ohm: bond.body });
    }
  } else if (first !== null) {
    list.push({ ...piece, name: stud, from: stud, to: end(first.to), ohm: joint + first.body });
  } else {
    for (const [way, bond] of bodies) {
      list.push({ ...piece, name: way, from: stud, to: end(bond.to), ohm: joint + bond.body });
    }
  }
  for (const [way, bond] of named) {
    if (!('stray' in bond)) continue;
    const { stray: ohm, bears: bearsA } = bond;
    list.push({ name: way, from: stud, to: node.ground(bond.to), ohm, kind: 'stray', ground: name, bearsA });
  }
  return list;
}

/** Pieces of body that lead on from a ground point. */
function piecesOf(loom: Loom, name: string): number {
  const { body, bonds = [] } = loom.grounds[name] as Loom['grounds'][string];
  return bonds.filter((bond) => 'body' in bond).length + (body === undefined ? 0 : 1);
}
