import type { Loom } from './schema.js';

/** A way along trunks from one place to another. */
export interface Way {
  /** Routes passed, in order. */
  readonly routes: readonly string[];
  /** Places passed, both ends among them. */
  readonly places: readonly string[];
  readonly lengthM: number;
  /** Hottest air along it, in °C, and where: a place or a route. */
  readonly ambientTempC: number;
  readonly hottest: string;
}

interface Edge {
  readonly route: string;
  readonly to: string;
  readonly lengthM: number;
}

/**
 * The shortest ways between the places of a loom. Of two equally short ones that through places first in the alphabet
 * is taken, so that the order of the file means nothing.
 */
export function waysOf(loom: Loom): (from: string, to: string) => Way {
  const edges = new Map<string, Edge[]>(Object.keys(loom.places).map((name) => [name, []]));
  for (const route of Object.keys(loom.routes).sort()) {
    const { from, to, length } = loom.routes[route] as Loom['routes'][string];
    edges.get(from)?.push({ route, to, lengthM: length });
    edges.get(to)?.push({ route, to: from, lengthM: length });
  }
  const searches = new Map<string, Search>();
  const known = new Map<string, Way>();
  return (from, to) => {
    // The same way there and back: wires of one pair lie together even where two ways are equally short.
    const [a, b] = from <= to ? [from, to] : [to, from];
    const key = `${a}\u0000${b}`;
    let way = known.get(key);
    if (way === undefined) {
      const search = searches.get(a) ?? begin(a);
      searches.set(a, search);
      reach(edges, search, b);
      way = walk(loom, search.best, a, b);
      known.set(key, way);
    }
    return a === from ? way : { ...way, routes: [...way.routes].reverse(), places: [...way.places].reverse() };
  };
}

interface Reached {
  readonly lengthM: number;
  readonly via: Edge;
  readonly from: string;
}

/** A search that goes on from where it stopped: most wires end near by, and the far places are never looked at. */
interface Search {
  readonly best: Map<string, Reached>;
  readonly done: Set<string>;
  readonly heap: { readonly place: string; readonly lengthM: number }[];
}

function begin(start: string): Search {
  return { best: new Map(), done: new Set(), heap: [{ place: start, lengthM: 0 }] };
}

/** Goes on until the way to a place is the shortest. */
function reach(edges: ReadonlyMap<string, readonly Edge[]>, { best, done, heap }: Search, to: string): void {
  const before = (x: Search['heap'][number], y: Search['heap'][number]): boolean =>
    x.lengthM < y.lengthM || (x.lengthM === y.lengthM && x.place < y.place);
  while (heap.length > 0 && !done.has(to)) {
    const { place, lengthM } = pop(heap, before);
    if (done.has(place)) continue;
    done.add(place);
    for (const via of edges.get(place) ?? []) {
      if (done.has(via.to)) continue;
      const next = lengthM + via.lengthM;
      const old = best.get(via.to);
      if (old !== undefined && old.lengthM <= next) continue;
      best.set(via.to, { lengthM: next, via, from: place });
      push(heap, { place: via.to, lengthM: next }, before);
    }
  }
}

function walk(loom: Loom, tree: ReadonlyMap<string, Reached>, from: string, to: string): Way {
  const routes: string[] = [];
  const places = [to];
  let lengthM = 0;
  for (let here = to; here !== from;) {
    const step = tree.get(here);
    // `parseLoom` lets no file with a gap through.
    if (step === undefined) throw new Error(`no route leads from ${from} to ${to}`);
    routes.push(step.via.route);
    lengthM += step.via.lengthM;
    here = step.from;
    places.push(here);
  }
  routes.reverse();
  places.reverse();
  let hottest = from;
  let ambientTempC = -Infinity;
  const air = [
    ...places.map((name) => [name, loom.places[name]?.ambient] as const),
    ...routes.map((name) => [name, loom.routes[name]?.ambient] as const),
  ];
  for (const [name, tempC] of air) {
    if (tempC === undefined || tempC < ambientTempC || (tempC === ambientTempC && hottest <= name)) continue;
    ambientTempC = tempC;
    hottest = name;
  }
  return { routes, places, lengthM, ambientTempC, hottest };
}

type Before<T> = (a: T, b: T) => boolean;

function push<T>(heap: T[], value: T, before: Before<T>): void {
  let i = heap.length;
  heap.push(value);
  while (i > 0) {
    const up = (i - 1) >> 1;
    if (!before(value, heap[up] as T)) break;
    heap[i] = heap[up] as T;
    i = up;
  }
  heap[i] = value;
}

function pop<T>(heap: T[], before: Before<T>): T {
  const top = heap[0] as T;
  const last = heap.pop() as T;
  const count = heap.length;
  if (count === 0) return top;
  let i = 0;
  for (;;) {
    let down = 2 * i + 1;
    if (down >= count) break;
    if (down + 1 < count && before(heap[down + 1] as T, heap[down] as T)) down++;
    if (!before(heap[down] as T, last)) break;
    heap[i] = heap[down] as T;
    i = down;
  }
  heap[i] = last;
  return top;
}
