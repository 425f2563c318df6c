// Random networks and slow, plain ways to look at them: nothing here is shared with the code under test.
import {
  type Network,
  type NetworkBranch,
  type NetworkDiode,
  type NetworkLoad,
  type NetworkSwitch,
  settleNetwork,
} from 'loomwright';

/** A stream of numbers from 0 to 1 from a seed (Park and Miller's). */
export function stream(seed: number): () => number {
  let state = (seed * 7919 + 12345) % 2147483647;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}

/** What a random network is to have. */
export interface RandomShape {
  readonly nodes: number;
  /** Branches beyond a tree: loops and shared grounds. */
  readonly loops: number;
  readonly loads: number;
  readonly diodes: number;
  readonly switches: number;
  readonly sources: number;
}

/**
 * A vehicle drawn by lot: a ground side and a live side, each a tree with loops, sources from ground to live, loads
 * mostly from live to ground, diodes and switches anywhere. The first node is the reference.
 */
export function randomNetwork(seed: number, shape: RandomShape): Network {
  const next = stream(seed);
  const pick = <T>(list: readonly T[]): T => list[Math.floor(next() * list.length)]!;
  const ground = Array.from({ length: Math.max(2, Math.ceil(shape.nodes / 2)) }, (_, i) => `g${i}`);
  const live = Array.from({ length: Math.max(2, Math.floor(shape.nodes / 2)) }, (_, i) => `p${i}`);
  const all = [...ground, ...live];
  const two = (list: readonly string[]): readonly [string, string] => {
    const a = pick(list);
    const b = pick(list.filter((node) => node !== a));
    return [a, b];
  };
  const milliohm = (): number => Math.round((0.2 + 20 * next() ** 2) * 1000) / 1e6;
  const branches: NetworkBranch[] = [];
  for (const side of [ground, live]) {
    for (let i = 1; i < side.length; i++) {
      const to = side[Math.max(0, i - 1 - Math.floor(next() * 3))]!;
      const turned = next() < 0.5;
      branches.push({
        name: `b${branches.length}`,
        from: turned ? to : side[i]!,
        to: turned ? side[i]! : to,
        resistanceOhm: milliohm(),
      });
    }
  }
  for (let i = 0; i < shape.loops; i++) {
    const [from, to] = two(next() < 0.7 ? ground : live);
    branches.push({ name: `b${branches.length}`, from, to, resistanceOhm: milliohm() });
  }
  const loads: NetworkLoad[] = Array.from({ length: shape.loads }, (_, i) => {
    const from = pick(live);
    const to = next() < 0.85 ? pick(ground) : pick(all.filter((node) => node !== from));
    return {
      name: `r${i}`,
      from,
      to,
      load: { kind: 'resistance', resistanceOhm: Math.round(50 + 2000 * next()) / 100 },
    };
  });
  const diodes: NetworkDiode[] = Array.from({ length: shape.diodes }, (_, i) => {
    const [from, to] = two(all);
    return { name: `d${i}`, from, to, forwardV: 0.6, resistanceOhm: 0.05 };
  });
  const switches: NetworkSwitch[] = Array.from({ length: shape.switches }, (_, i) => {
    const [from, to] = two(next() < 0.5 ? live : ground);
    return { name: `s${i}`, from, to, closed: next() < 0.5, resistanceOhm: 0.004 };
  });
  return {
    reference: ground[0]!,
    branches,
    sources: Array.from({ length: shape.sources }, (_, i) => ({
      name: `v${i}`,
      from: i === 0 ? ground[0]! : pick(ground),
      to: i === 0 ? live[0]! : pick(live),
      voltageV: 12 + Math.round(25 * next()) / 10,
      resistanceOhm: 0.005 + Math.round(20 * next()) / 1000,
    })),
    loads,
    diodes,
    switches,
    ...(diodes.length > 0 ? { settle: settleNetwork } : {}),
  };
}

/** Every node of a network. */
export function nodesOf(network: Network): string[] {
  const { branches, sources, loads = [], diodes = [], switches = [] } = network;
  return [
    ...new Set([
      network.reference,
      ...[...branches, ...sources, ...loads, ...diodes, ...switches].flatMap(({ from, to }) => [from, to]),
    ]),
  ];
}

/** The nodes that can be walked to from a start, ring by ring. */
export function reached(start: string, edges: readonly (readonly [string, string])[]): ReadonlySet<string> {
  const found = new Set([start]);
  for (let ring = [start]; ring.length > 0;) {
    const next = new Set<string>();
    for (const [a, b] of edges) {
      if (ring.includes(a) && !found.has(b)) next.add(b);
      if (ring.includes(b) && !found.has(a)) next.add(a);
    }
    ring = [...next];
    next.forEach((node) => found.add(node));
  }
  return found;
}

/** The nodes that no metal and no source ties to the reference once the branches named are gone. */
export function cutOff(network: Network, lost: readonly string[]): string[] {
  const { branches, sources, switches = [] } = network;
  const ties = [
    ...branches.filter(({ name }) => !lost.includes(name)),
    ...sources,
    ...switches.filter(({ closed }) => closed),
  ];
  const held = reached(
    network.reference,
    ties.map(({ from, to }) => [from, to] as const),
  );
  return nodesOf(network).filter((node) => !held.has(node));
}

/** Volts of every node that anything ties to the reference, by elimination of a full matrix: resistances alone. */
export function denseVolts(network: Network): ReadonlyMap<string, number> {
  const { reference, branches, sources, loads = [], diodes = [], switches = [] } = network;
  if (diodes.length > 0) throw new Error('no diodes here');
  const edges = [
    ...branches.map(({ from, to, resistanceOhm }) => ({ from, to, g: 1 / resistanceOhm, emf: 0 })),
    ...switches
      .filter(({ closed }) => closed)
      .map(({ from, to, resistanceOhm }) => ({ from, to, g: 1 / resistanceOhm, emf: 0 })),
    ...sources.map(({ from, to, resistanceOhm, voltageV }) => ({ from, to, g: 1 / resistanceOhm, emf: voltageV })),
    ...loads.flatMap(({ from, to, load }) =>
      load.kind === 'resistance' ? [{ from, to, g: 1 / load.resistanceOhm, emf: 0 }] : [],
    ),
  ];
  const held = reached(
    reference,
    edges.map(({ from, to }) => [from, to] as const),
  );
  const nodes = nodesOf(network).filter((node) => node !== reference && held.has(node));
  const place = new Map(nodes.map((node, i) => [node, i]));
  const n = nodes.length;
  const matrix = Array.from({ length: n }, () => new Array<number>(n + 1).fill(0));
  for (const { from, to, g, emf } of edges) {
    if (!held.has(from) || !held.has(to)) continue;
    const i = place.get(from);
    const j = place.get(to);
    if (i !== undefined) {
      matrix[i]![i]! += g;
      matrix[i]![n]! -= g * emf;
      if (j !== undefined) matrix[i]![j]! -= g;
    }
    if (j !== undefined) {
      matrix[j]![j]! += g;
      matrix[j]![n]! += g * emf;
      if (i !== undefined) matrix[j]![i]! -= g;
    }
  }
  for (const { from, to, load } of loads) {
    if (load.kind !== 'constant-current' || !held.has(from) || !held.has(to)) continue;
    const i = place.get(from);
    const j = place.get(to);
    if (i !== undefined) matrix[i]![n]! -= load.currentA;
    if (j !== undefined) matrix[j]![n]! += load.currentA;
  }
  for (let k = 0; k < n; k++) {
    let best = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(matrix[i]![k]!) > Math.abs(matrix[best]![k]!)) best = i;
    [matrix[k], matrix[best]] = [matrix[best]!, matrix[k]!];
    for (let i = k + 1; i < n; i++) {
      const f = matrix[i]![k]! / matrix[k]![k]!;
      if (f === 0) continue;
      for (let j = k; j <= n; j++) matrix[i]![j]! -= f * matrix[k]![j]!;
    }
  }
  const volts = new Array<number>(n).fill(0);
  for (let k = n - 1; k >= 0; k--) {
    let v = matrix[k]![n]!;
    for (let j = k + 1; j < n; j++) v -= matrix[k]![j]! * volts[j]!;
    volts[k] = v / matrix[k]![k]!;
  }
  return new Map<string, number>([[reference, 0], ...nodes.map((node, i) => [node, volts[i]!] as const)]);
}
