import { solveLinear } from '../number/solve-linear.js';

/** A resistance between two nodes. */
export interface Edge {
  readonly from: string;
  readonly to: string;
  readonly ohm: number;
}

/** Volts of every node that has any, and the current of each edge from `from` to `to`. */
export interface Solved {
  readonly volts: ReadonlyMap<string, number>;
  readonly currentA: readonly number[];
}

/** What a part of 0 Ω counts for: a tenth of a milliohm, less than any joint has. */
export const LEAST_OHM = 1e-4;

/**
 * A network of resistances with some nodes joined and some held at given volts; null where a path of 0 Ω leads from
 * one of these to another of different volts. Nodes that nothing holds have no volts, and their edges no current.
 */
export function solveEdges(
  parts: readonly Edge[],
  holds: ReadonlyMap<string, number>,
  joins: readonly (readonly [string, string])[] = [],
): Solved | null {
  const nameOf = new Map<string, string>();
  const name = (node: string): string => nameOf.get(node) ?? node;
  for (const [a, b] of joins) {
    const from = name(a);
    const to = name(b);
    for (const [node, known] of nameOf) if (known === from) nameOf.set(node, to);
    nameOf.set(from, to).set(a, to);
  }
  const edges = parts.map(({ from, to, ohm }) => ({ from: name(from), to: name(to), ohm }));
  const held = new Map<string, number>();
  for (const [node, v] of holds) {
    if ((held.get(name(node)) ?? v) !== v) return null;
    held.set(name(node), v);
  }
  const reach = (start: string, along: (edge: Edge) => boolean): ReadonlySet<string> => {
    const found = new Set([start]);
    for (let grew = true; grew;) {
      grew = false;
      for (const edge of edges) {
        if (!along(edge) || found.has(edge.from) === found.has(edge.to)) continue;
        found.add(edge.from).add(edge.to);
        grew = true;
      }
    }
    return found;
  };
  for (const [node, v] of held) {
    const joined = reach(node, (edge) => edge.ohm === 0);
    for (const [other, w] of held) if (joined.has(other) && w !== v) return null;
  }
  const live = new Set([...held.keys()].flatMap((node) => [...reach(node, () => true)]));
  const unknown = [...live].filter((node) => !held.has(node));
  const place = new Map(unknown.map((node, i) => [node, i]));
  const n = unknown.length;
  const matrix = new Float64Array(n * n);
  const side = new Float64Array(n);
  const add = (list: Float64Array, i: number, value: number): void => {
    list[i] = (list[i] as number) + value;
  };
  for (const { from, to, ohm } of edges) {
    const g = 1 / Math.max(ohm, LEAST_OHM);
    for (const [a, b] of [
      [from, to],
      [to, from],
    ] as const) {
      const i = place.get(a);
      if (i === undefined) continue;
      add(matrix, i * n + i, g);
      const j = place.get(b);
      if (j === undefined) add(side, i, g * (held.get(b) as number));
      else add(matrix, i * n + j, -g);
    }
  }
  const x = n === 0 ? [new Float64Array(0)] : solveLinear({ matrix, sides: [side] });
  if (x === null) return null;
  const volts = new Map(held);
  unknown.forEach((node, i) => volts.set(node, (x[0] as Float64Array)[i] as number));
  for (const [node, known] of nameOf) {
    const v = volts.get(known);
    if (v !== undefined) volts.set(node, v);
  }
  return {
    volts,
    currentA: edges.map(({ from, to, ohm }) => {
      const a = volts.get(from);
      const b = volts.get(to);
      if (a === undefined || b === undefined) return 0;
      // A difference within the rounding of both is none: nothing flows in a branch that hangs in the air.
      const apart = a - b;
      return Math.abs(apart) <= 8 * Number.EPSILON * Math.max(Math.abs(a), Math.abs(b))
        ? 0
        : apart / Math.max(ohm, LEAST_OHM);
    }),
  };
}
