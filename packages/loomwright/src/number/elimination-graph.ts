/**
 * What an elimination works on: for each unknown a list of those that it is tied to. All lists stand in one pool, and
 * one that outgrows its room moves to the pool's end. Its arrays are changed as the elimination goes on.
 */
interface WorkingGraph {
  readonly order: Int32Array;
  readonly start: Int32Array;
  /** Columns that are done, one after another: `filled` numbers, of `turn` unknowns. */
  pattern: Int32Array;
  filled: number;
  turn: number;
  readonly gone: Uint8Array;
  pool: Int32Array;
  tail: number;
  /** Of each list: where it begins, its length, the room it has, and its length when it was last cleaned. */
  readonly at: Int32Array;
  readonly length: Int32Array;
  readonly room: Int32Array;
  readonly cleanLength: Int32Array;
  readonly mark: Int32Array;
  stamp: number;
}

/** It is worked on, and so not read-only. */
export type EliminationGraph = WorkingGraph;

// Lists up to this long, or up to a few times what is being added, are cleaned at each change. Longer ones belong to
// hubs, such as a ground that hundreds of wires meet at: these are cleaned when they have doubled.
const SHORT = 64;

export function newGraph(count: number, edges: number): EliminationGraph {
  return {
    order: new Int32Array(count),
    start: new Int32Array(count + 1),
    pattern: new Int32Array(count + 2 * edges),
    filled: 0,
    turn: 0,
    gone: new Uint8Array(count),
    pool: new Int32Array(0),
    tail: 0,
    at: new Int32Array(count),
    length: new Int32Array(count),
    room: new Int32Array(count),
    cleanLength: new Int32Array(count),
    mark: new Int32Array(count),
    stamp: 0,
  };
}

/**
 * Takes whatever is tied to one other unknown alone, again and again: a tree goes whole, without any list. The
 * neighbours of an unknown are kept as their number and their exclusive or, which is the last one when one is left.
 */
export function peel(graph: EliminationGraph, rows: Int32Array, columns: Int32Array, degree: Int32Array): void {
  const { gone, order, start, pattern } = graph;
  const last = new Int32Array(degree.length);
  for (let e = 0; e < rows.length; e++) {
    const i = rows[e] as number;
    const j = columns[e] as number;
    degree[i] = (degree[i] as number) + 1;
    degree[j] = (degree[j] as number) + 1;
    last[i] = (last[i] as number) ^ j;
    last[j] = (last[j] as number) ^ i;
  }
  let turn = 0;
  let filled = 0;
  for (let s = 0; s < degree.length; s++) {
    let v = s;
    while (degree[v] === 1) {
      const u = last[v] as number;
      degree[v] = 0;
      gone[v] = 1;
      order[turn++] = v;
      pattern[filled++] = u;
      start[turn] = filled;
      last[u] = (last[u] as number) ^ v;
      degree[u] = (degree[u] as number) - 1;
      v = u;
    }
    if (degree[v] === 0 && gone[v] === 0) {
      gone[v] = 1;
      order[turn++] = v;
      start[turn] = filled;
    }
  }
  graph.turn = turn;
  graph.filled = filled;
}

/** Lists the neighbours of what is left, each neighbour once. */
export function listNeighbours(
  graph: EliminationGraph,
  rows: Int32Array,
  columns: Int32Array,
  degree: Int32Array,
): void {
  const { at, length, room, gone } = graph;
  let size = 0;
  for (let v = 0; v < degree.length; v++) {
    at[v] = size;
    if (gone[v] === 0) {
      const wanted = withSlack(degree[v] as number);
      room[v] = wanted;
      size += wanted;
    }
  }
  const pool = new Int32Array(size + (size >> 1) + SHORT);
  graph.pool = pool;
  graph.tail = size;
  for (let e = 0; e < rows.length; e++) {
    const i = rows[e] as number;
    const j = columns[e] as number;
    if (gone[i] !== 0 || gone[j] !== 0) continue;
    pool[(at[i] as number) + (length[i] as number)] = j;
    length[i] = (length[i] as number) + 1;
    pool[(at[j] as number) + (length[j] as number)] = i;
    length[j] = (length[j] as number) + 1;
  }
  for (let v = 0; v < degree.length; v++) if (gone[v] === 0) degree[v] = clean(graph, v);
}

/** Leaves out of a list what is gone or there twice; gives what is left of it. Afterwards these bear the stamp. */
function clean(graph: EliminationGraph, v: number): number {
  const { pool, mark, gone, at, length, cleanLength } = graph;
  const stamp = ++graph.stamp;
  mark[v] = stamp;
  const from = at[v] as number;
  const end = from + (length[v] as number);
  let kept = from;
  for (let p = from; p < end; p++) {
    const w = pool[p] as number;
    if (gone[w] !== 0 || mark[w] === stamp) continue;
    mark[w] = stamp;
    pool[kept++] = w;
  }
  length[v] = kept - from;
  cleanLength[v] = kept - from;
  return kept - from;
}

/** The list of an unknown becomes its column; gives where that begins. */
export function takeColumn(graph: EliminationGraph, v: number): number {
  const size = clean(graph, v);
  reserve(graph, size);
  const { pool, pattern, filled } = graph;
  const from = graph.at[v] as number;
  for (let p = 0; p < size; p++) pattern[filled + p] = pool[from + p] as number;
  graph.filled = filled + size;
  take(graph, v);
  return filled;
}

/** All that is left is tied to all that is left: any order will do. */
export function takeRest(graph: EliminationGraph, begin: number): void {
  const rest = graph.pattern.slice(begin, graph.filled);
  rest.forEach((v, k) => {
    const size = rest.length - k - 1;
    reserve(graph, size);
    graph.pattern.set(rest.subarray(k + 1), graph.filled);
    graph.filled += size;
    take(graph, v);
  });
}

function take(graph: EliminationGraph, v: number): void {
  graph.gone[v] = 1;
  graph.order[graph.turn++] = v;
  graph.start[graph.turn] = graph.filled;
}

/**
 * Ties an unknown to all of the column that begins there and that it is in. Gives its number of neighbours: exact for a
 * short list, else at least what is true.
 */
export function tie(graph: EliminationGraph, u: number, begin: number, degree: number): number {
  const { room, cleanLength, mark } = graph;
  const size = graph.filled - begin;
  const old = graph.length[u] as number;
  const exact = old <= 8 * size + SHORT || old > 2 * (cleanLength[u] as number) + SHORT;
  if (exact) clean(graph, u);
  else {
    graph.stamp++;
    mark[u] = graph.stamp;
  }
  let length = graph.length[u] as number;
  // It is in the column itself: one less can be new.
  if (length + size > (room[u] as number) + 1) move(graph, u, length + size - 1);
  const { pool, pattern, stamp, filled } = graph;
  const from = graph.at[u] as number;
  for (let p = begin; p < filled; p++) {
    const w = pattern[p] as number;
    if (mark[w] !== stamp) pool[from + length++] = w;
  }
  graph.length[u] = length;
  if (!exact) return degree + size - 2;
  cleanLength[u] = length;
  return length;
}

/** Makes sure that the pattern can take so many more numbers. */
function reserve(graph: EliminationGraph, more: number): void {
  if (graph.filled + more <= graph.pattern.length) return;
  const larger = new Int32Array(Math.max(2 * graph.pattern.length, graph.filled + more));
  larger.set(graph.pattern.subarray(0, graph.filled));
  graph.pattern = larger;
}

/** Room for a list of so many, so that it does not outgrow that at the next change. */
function withSlack(size: number): number {
  return size + (size >> 1) + 2;
}

function move(graph: EliminationGraph, u: number, need: number): void {
  const room = withSlack(need);
  if (graph.tail + room > graph.pool.length) compact(graph, room);
  const from = graph.at[u] as number;
  graph.pool.copyWithin(graph.tail, from, from + (graph.length[u] as number));
  graph.at[u] = graph.tail;
  graph.room[u] = room;
  graph.tail += room;
}

/** A new pool, with what is still in use and half as much again. */
function compact(graph: EliminationGraph, more: number): void {
  const { gone, at, length, room, pool } = graph;
  let live = 0;
  for (let v = 0; v < gone.length; v++) if (gone[v] === 0) live += withSlack(length[v] as number);
  const fresh = new Int32Array(live + (live >> 1) + 2 * more + SHORT);
  let tail = 0;
  for (let v = 0; v < gone.length; v++) {
    if (gone[v] !== 0) continue;
    const from = at[v] as number;
    const size = length[v] as number;
    for (let p = 0; p < size; p++) fresh[tail + p] = pool[from + p] as number;
    at[v] = tail;
    const wanted = withSlack(size);
    room[v] = wanted;
    tail += wanted;
  }
  graph.pool = fresh;
  graph.tail = tail;
}
