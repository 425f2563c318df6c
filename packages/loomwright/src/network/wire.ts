import { InputError } from '../error/index.js';
import type { Network } from './element.js';
import type { IdealElement, Wiring } from './wiring.js';

/** Numbers nodes and elements, and joins what 0 Ω joins. */
export function wire(fn: string, network: Network): Wiring {
  const { branches, sources, loads = [], diodes = [], switches = [] } = network;
  const indexOf = new Map<string, number>([[network.reference, 0]]);
  const nodes = [network.reference];
  const place = (node: string): number => {
    const known = indexOf.get(node);
    if (known !== undefined) return known;
    indexOf.set(node, nodes.length);
    return nodes.push(node) - 1;
  };
  const size = branches.length + sources.length + loads.length + diodes.length + switches.length;
  const from = new Int32Array(size);
  const to = new Int32Array(size);
  const perOhm = new Float64Array(size);
  const emfV = new Float64Array(size);
  const ideal: IdealElement[] = [];
  let count = 0;
  const add = (element: { readonly from: string; readonly to: string }, g: number, emf: number): number => {
    from[count] = place(element.from);
    to[count] = place(element.to);
    perOhm[count] = g;
    emfV[count] = emf;
    return count++;
  };
  type Ohmic = Network['branches'][number];
  const ohmic = (list: IdealElement['list'], element: Ohmic, index: number, emf: number): number => {
    if (element.resistanceOhm > 0) return add(element, 1 / element.resistanceOhm, emf);
    ideal.push({ list, index, from: place(element.from), to: place(element.to), emfV: emf });
    return -1;
  };
  const branchOf = {
    branches: Int32Array.from(branches, (each, i) => ohmic('branches', each, i, 0)),
    sources: Int32Array.from(sources, (each, i) => ohmic('sources', each, i, each.voltageV)),
    loads: Int32Array.from(loads, (each) =>
      add(each, each.load.kind === 'resistance' ? 1 / each.load.resistanceOhm : 0, 0),
    ),
    diodes: Int32Array.from(diodes, (each) => add(each, 0, -each.forwardV)),
    switches: Int32Array.from(switches, (each, i) => {
      if (each.closed) return ohmic('switches', each, i, 0);
      place(each.from);
      place(each.to);
      return -1;
    }),
  };
  const { joined, joinedCount, offsetV } = join(fn, nodes.length, ideal, network);
  const ends = { from: from.subarray(0, count), to: to.subarray(0, count) };
  return {
    nodes,
    joined,
    joinedCount,
    offsetV,
    ...ends,
    joinedFrom: ends.from.map((node) => joined[node] as number),
    joinedTo: ends.to.map((node) => joined[node] as number),
    perOhm: perOhm.subarray(0, count),
    emfV: emfV.subarray(0, count),
    branchOf,
    ideal,
  };
}

type Joined = Pick<Wiring, 'joined' | 'joinedCount' | 'offsetV'>;

/** Union by 0 Ω, with the volts of each node above that which stands for it; the reference is number 0. */
function join(fn: string, count: number, ideal: readonly IdealElement[], network: Network): Joined {
  const parent = new Int32Array(count);
  for (let i = 0; i < count; i++) parent[i] = i;
  const above = new Float64Array(count);
  // Halves the way up each time that it is gone, so that long chains stay short.
  let offset = 0;
  const find = (node: number): number => {
    let at = node;
    offset = 0;
    for (let up = parent[at] as number; up !== at; up = parent[at] as number) {
      above[at] = (above[at] as number) + (up === parent[up] ? 0 : (above[up] as number));
      parent[at] = parent[up] as number;
      offset += above[at] as number;
      at = parent[at] as number;
    }
    return at;
  };
  for (const { list, index, from, to, emfV } of ideal) {
    const a = find(from);
    const aV = offset;
    const b = find(to);
    const bV = offset;
    const stepV = aV + emfV - bV;
    if (a === b) {
      // Volts around a loop of nothing but 0 Ω.
      if (Math.abs(stepV) <= 1e-12 * (Math.abs(aV) + Math.abs(bV) + emfV)) continue;
      const name = network[list]?.[index]?.name ?? '';
      const must = `must be above 0: '${name}' closes a loop of 0 Ω with ${stepV} V around it, and nothing limits its current`;
      throw new InputError(fn, `${list}[${index}].resistanceOhm`, 'above', 0, must);
    }
    if (a < b) {
      parent[b] = a;
      above[b] = stepV;
    } else {
      parent[a] = b;
      above[a] = -stepV;
    }
  }
  const joined = new Int32Array(count);
  const offsetV = new Float64Array(count);
  const number = new Int32Array(count).fill(-1);
  let joinedCount = 0;
  for (let i = 0; i < count; i++) {
    const root = find(i);
    offsetV[i] = offset;
    if (number[root] === -1) number[root] = joinedCount++;
    joined[i] = number[root] as number;
  }
  return { joined, joinedCount, offsetV };
}
