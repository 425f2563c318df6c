import type { Network } from './element.js';
import type { Riding } from './settled.js';
import type { SettledLoads } from './settle-loads.js';
import { apartV, type Wiring } from './wiring.js';

/**
 * A part that nothing but electronics without current ties to another takes its volts from there, as a meter would
 * show: a lost ground stands at the supply's volts. Part 0, the reference's, carries whatever hangs on it.
 */
export function ridingOf(network: Network, wiring: Wiring, { parts, solved, unfed }: SettledLoads): Riding {
  const groupOf = new Int32Array(parts.count);
  for (let p = 0; p < parts.count; p++) groupOf[p] = p;
  const aboveV = new Float64Array(parts.count);
  const next = new Map<number, { readonly part: number; readonly stepV: number }[]>();
  const put = (part: number, other: number, stepV: number): void => {
    const list = next.get(part);
    if (list === undefined) next.set(part, [{ part: other, stepV }]);
    else list.push({ part: other, stepV });
  };
  (network.loads ?? []).forEach((_, i) => {
    if (unfed[i] === 0) return;
    const k = wiring.branchOf.loads[i] as number;
    const a = wiring.joinedFrom[k] as number;
    const b = wiring.joinedTo[k] as number;
    const [p, q] = [parts.partOf[a] as number, parts.partOf[b] as number];
    if (p === q) return;
    // No volts across it: both ends are at the same.
    const stepV = (solved.nodeV[a] as number) - (solved.nodeV[b] as number) + apartV(wiring, k);
    put(p, q, stepV);
    put(q, p, -stepV);
  });
  const done = new Uint8Array(parts.count);
  for (let root = 0; root < parts.count; root++) {
    if (done[root] === 1) continue;
    done[root] = 1;
    const stack = next.has(root) ? [root] : [];
    for (let at = stack.pop(); at !== undefined; at = stack.pop()) {
      for (const { part, stepV } of next.get(at) ?? []) {
        if (done[part] === 1) continue;
        done[part] = 1;
        groupOf[part] = root;
        aboveV[part] = (aboveV[at] as number) + stepV;
        stack.push(part);
      }
    }
  }
  return { groupOf, aboveV };
}

/** A diode without current between two parts, and the volts that are left before it conducts, were both held at 0. */
export interface BetweenParts {
  readonly diode: number;
  readonly from: number;
  readonly to: number;
  readonly roomV: number;
}

/**
 * Diodes that must conduct although they end on parts whose volts are not fixed: there are volts for those parts that
 * suit all diodes unless a loop of diodes has less than no room (a shortest way that never ends). The diodes of one
 * such loop are given.
 */
export function loopsOfFloating(
  network: Network,
  wiring: Wiring,
  settled: SettledLoads,
  between: readonly BetweenParts[],
  close: number,
): readonly number[] {
  if (between.length === 0) return [];
  const { groupOf, aboveV } = ridingOf(network, wiring, settled);
  const single: number[] = [];
  const ways = between.flatMap(({ diode, from, to, roomV }) => {
    // v_from − v_to ≤ room, with what both parts ride on.
    const room = roomV - (aboveV[from] as number) + (aboveV[to] as number);
    const [a, b] = [groupOf[from] as number, groupOf[to] as number];
    if (a !== b) return [{ diode, a, b, room }];
    if (room < -close) single.push(diode);
    return [];
  });
  if (single.length > 0) return single;
  const most = new Map<number, number>();
  const by = new Map<number, { readonly diode: number; readonly b: number }>();
  const rounds = new Set(ways.flatMap(({ a, b }) => [a, b])).size;
  let last = -1;
  for (let round = 0; round <= rounds; round++) {
    last = -1;
    for (const { diode, a, b, room } of ways) {
      const reach = (most.get(b) ?? 0) + room;
      if (reach >= (most.get(a) ?? 0) - close) continue;
      most.set(a, reach);
      by.set(a, { diode, b });
      last = a;
    }
    if (last === -1) return [];
  }
  // Back along the way for as many steps as there are parts: then it is on the loop.
  let at = last;
  for (let k = 0; k < rounds; k++) at = by.get(at)?.b ?? at;
  const loop: number[] = [];
  const start = at;
  do {
    const step = by.get(at);
    if (step === undefined) break;
    loop.push(step.diode);
    at = step.b;
  } while (at !== start);
  return loop;
}
