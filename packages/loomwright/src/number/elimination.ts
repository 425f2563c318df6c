import { listNeighbours, newGraph, peel, takeColumn, takeRest, tie } from './elimination-graph.js';

/** The order in which unknowns are eliminated, and which unknowns each is then tied to. */
export interface Elimination {
  /** Old number of each unknown in its turn. */
  readonly order: Int32Array;
  /** Where the pattern of each turn begins; one more than there are turns. */
  readonly start: Int32Array;
  /** Old numbers of the unknowns, still to come, that each turn is tied to. */
  readonly pattern: Int32Array;
}

/** Unknowns by their number of neighbours: doubly linked lists, one a number. */
interface Buckets {
  readonly head: Int32Array;
  readonly next: Int32Array;
  readonly before: Int32Array;
  least: number;
}

/**
 * Minimum degree: next is always what has the fewest neighbours among those left, and its neighbours become one
 * another's. Memory and time stay within a few times what the factor itself takes: a list never holds more than
 * twice the neighbours that will stand in the factor, and adding to it costs what eliminating costs there.
 */
export function eliminate(count: number, rows: Int32Array, columns: Int32Array): Elimination {
  const graph = newGraph(count, rows.length);
  const degree = new Int32Array(count);
  peel(graph, rows, columns, degree);
  let left = count - graph.turn;
  if (left > 0) {
    listNeighbours(graph, rows, columns, degree);
    const buckets: Buckets = {
      head: new Int32Array(count + 1).fill(-1),
      next: new Int32Array(count),
      before: new Int32Array(count),
      least: 0,
    };
    for (let v = 0; v < count; v++) if (graph.gone[v] === 0) put(buckets, v, degree[v] as number);
    while (left > 0) {
      const v = first(buckets);
      remove(buckets, v, degree[v] as number);
      const begin = takeColumn(graph, v);
      left--;
      const end = graph.filled;
      if (end - begin === left) {
        takeRest(graph, begin);
        break;
      }
      for (let p = begin; p < end; p++) {
        const u = graph.pattern[p] as number;
        const was = degree[u] as number;
        const is = Math.min(tie(graph, u, begin, was), left - 1);
        if (is === was) continue;
        remove(buckets, u, was);
        degree[u] = is;
        put(buckets, u, is);
      }
    }
  }
  return { order: graph.order, start: graph.start, pattern: graph.pattern.subarray(0, graph.filled) };
}

function put(buckets: Buckets, v: number, d: number): void {
  const { head, next, before } = buckets;
  const other = head[d] as number;
  next[v] = other;
  before[v] = -1;
  if (other >= 0) before[other] = v;
  head[d] = v;
  if (d < buckets.least) buckets.least = d;
}

function remove({ head, next, before }: Buckets, v: number, d: number): void {
  const after = next[v] as number;
  const prior = before[v] as number;
  if (prior < 0) head[d] = after;
  else next[prior] = after;
  if (after >= 0) before[after] = prior;
}

function first(buckets: Buckets): number {
  const { head } = buckets;
  let { least } = buckets;
  while ((head[least] as number) < 0) least++;
  buckets.least = least;
  return head[least] as number;
}
