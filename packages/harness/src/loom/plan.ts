import { type Draft, draftsOf, node } from './draft.js';
import { Bundling } from './bundling.js';
import { findingsOf } from './findings.js';
import { type Metal, Network, type PathOhm, type SolvedState } from './network.js';
import { planned } from './planned.js';
import type { LoomPlan } from './plan-type.js';
import { readingsOf } from './readings.js';
import type { Loom } from './schema.js';
import { MOST_ROUNDS, type Settled, wireOhm } from './settled.js';
import { openPairs, pairsOf } from './selectivity.js';
import { type Sized, Sizer, type Surroundings } from './size-draft.js';

/** Rounds after which a size may no longer shrink. */
const GROW_ONLY_AFTER = 8;

/**
 * A whole vehicle planned: the way and length of every wire, bundles, sizes with what decided them, fuses and channel
 * settings, relays, returns, and the volts at every load in every state.
 *
 * Use it on what `parseLoom` has read. Sizes, bundles and currents depend on each other: thicker wires make room in a
 * bundle and lose fewer volts. They are gone through until a round changes nothing; from the ninth round on a size may
 * only grow, so that this ends. Whether it did is said (`settled`). In each round every state is solved as one network,
 * with shared feeders, shared ways back and all loops of the grounds; in the end each ground is lost in turn. Nothing
 * depends on the order of the file.
 *
 * $$\sum_k g_k\,(v_i - v_k) + \sum_l I_l(v_i - v_l) = 0 \quad\text{at each point } i$$
 *
 * @param loom what `parseLoom` gives
 * @returns the plan, with every finding
 * @throws nothing for a loom that `parseLoom` gives
 * @source circuit-theory; the sources of each rule, named in each check
 */
export function planLoom(loom: Loom): LoomPlan {
  const settled = settle(loom);
  const plan = planned(settled);
  const pairs = pairsOf(plan);
  return {
    ...plan,
    readings: readingsOf(settled, plan),
    findings: findingsOf(settled, plan, pairs),
    notJudged: [...plan.notJudged, ...openPairs(pairs)],
  };
}

function settle(loom: Loom): Settled {
  const drafts = draftsOf(loom);
  const sizer = new Sizer(loom);
  const network = new Network(loom, drafts);
  const bundling = new Bundling(loom, drafts, sizer);
  const stateNames = Object.keys(loom.states).sort();
  let sized: (Sized | null)[] = drafts.map(() => null);
  let around: Surroundings[] = [];
  let keys: string[] = [];
  let ohms: PathOhm[] = drafts.map((draft) => pathOhm(draft, sizer, null));
  let metal = network.metal(ohms);
  let states = stateNames.map((name) => network.solve(name, drafts, metal));
  let rounds = 0;
  let agreed = false;
  while (rounds < MOST_ROUNDS && !agreed) {
    rounds++;
    const sizes = sized.map((one) => one?.size ?? -1);
    bundling.judge(sized, around, states);
    const farthestOhm = network.farthestOhm(metal);
    const next = drafts.map((draft, i) =>
      surroundings(
        loom,
        draft,
        i,
        network,
        metal,
        states,
        bundling,
        rounds > GROW_ONLY_AFTER ? (sizes[i] ?? 0) : 0,
        farthestOhm,
        around[i],
      ),
    );
    const nextKeys = next.map((one) => JSON.stringify(one));
    // A circuit whose surroundings are the same has the same size: it is not gone through again.
    const before = sized;
    const now = drafts.map((draft, i) =>
      before[i] !== null && before[i] !== undefined && nextKeys[i] === keys[i]
        ? before[i]
        : sizer.size(draft, next[i] as Surroundings, before[i] ?? null),
    );
    agreed = nextKeys.every((key, i) => key === keys[i]);
    sized = now;
    around = next;
    keys = nextKeys;
    ohms = drafts.map((draft, i) => pathOhm(draft, sizer, now[i] as Sized));
    const newMetal = network.metal(ohms);
    const earlier = states;
    metal = newMetal;
    states = stateNames.map((name, s) => network.solve(name, drafts, newMetal, earlier[s]));
  }
  return {
    loom,
    drafts,
    sizer,
    sized: sized as Sized[],
    around,
    bundling,
    network,
    ohms,
    metal,
    states,
    rounds,
    agreed,
  };
}

/** Resistance of a path, wires hot. */
function pathOhm(draft: Draft, sizer: Sizer, sized: Sized | null): PathOhm {
  let outOhm = 0;
  let backOhm = 0;
  for (const one of draft.elements) {
    let { ohm } = one;
    if (one.wire !== null) ohm = sized === null ? 0 : wireOhm(draft, one.wire, sizer, sized, sized.conductorTempC);
    else if (one.chosen) ohm = sized?.fuseOhm ?? 0;
    if (one.side === 'out') outOhm += ohm;
    else backOhm += ohm;
  }
  return { outOhm, backOhm };
}

/** What a circuit meets, in figures rounded to the safe side, so that rounds settle instead of creeping. */
function surroundings(
  loom: Loom,
  draft: Draft,
  i: number,
  network: Network,
  metal: Metal,
  states: readonly SolvedState[],
  bundling: Bundling,
  floor: number,
  farthestOhm: number,
  before: Surroundings | undefined,
): Surroundings {
  const { nodes, load } = draft;
  const batteryV = ({ batteries }: SolvedState): number =>
    draft.battery === null
      ? Math.min(...[...batteries.values()].map(({ supplyV }) => supplyV))
      : (batteries.get(draft.battery)?.supplyV ?? 0);
  let currentA = 0;
  let sharedDropV = 0;
  let sourcesV: number[] = [];
  const given = network.wiring.batteries.find(({ name }) => name === draft.battery);
  // The resistance of a battery at rest is in the network already.
  let sourceOhm = given === undefined || given.branch >= 0 ? 0 : given.resistanceOhm;
  for (const state of states) {
    if (load !== null && (nodes === null ? draft.on.length > 0 : true) && !draft.on.includes(state.name)) continue;
    if (load !== null && nodes !== null) {
      const sourceV = Math.max(0.1, network.sourceV(draft, state));
      sourcesV.push(sourceV);
      sharedDropV = Math.max(sharedDropV, batteryV(state) - sourceV);
      currentA = Math.max(currentA, state.currents[i] ?? 0);
    } else {
      sourcesV.push(batteryV(state));
      currentA = Math.max(currentA, Math.abs(state.currents[i] ?? 0) + (state.extraA[i] ?? 0));
    }
  }
  if (load?.kind === 'constant-current') ({ currentA } = load);
  if (draft.kind === 'sensor') sourcesV = [5];
  if (sourcesV.length === 0) sourcesV = states.map(batteryV);
  if (draft.battery !== null && nodes !== null) {
    const negative = node.negative(draft.battery);
    // Of a feeder the short may be to any metal: as far from the battery as a ground point can be, by way of the root.
    sourceOhm +=
      nodes.to !== null
        ? network.ohmBetween(nodes.from, nodes.to, metal)
        : network.ohmBetween(nodes.from, negative, metal) + farthestOhm + network.ohmToRoot(negative, metal);
  }
  const way = bundling.placeOf(i);
  const here: Surroundings = {
    currentA: up(currentA, 1e-3),
    sourcesV: [...new Set(sourcesV.map((volts) => down(volts, 1e-3)))].sort((a, b) => a - b),
    sharedDropV: up(sharedDropV, 1e-3),
    ambientTempC: way.ambientTempC,
    bundleFactor: bundling.factorOf(i).factor,
    sourceOhm: up(sourceOhm, 1e-4),
    floor,
  };
  return before !== undefined && stillSafe(before, here) ? before : here;
}

/** Whether figures of the round before are still on the safe side, and near: then they stand, and nothing creeps. */
function stillSafe(before: Surroundings, now: Surroundings): boolean {
  const within = (above: number, below: number, room: number): boolean => above >= below && above - below <= room;
  return (
    before.floor === now.floor &&
    before.bundleFactor === now.bundleFactor &&
    within(before.currentA, now.currentA, 0.005 * now.currentA + 0.001) &&
    within(before.sharedDropV, now.sharedDropV, 0.004) &&
    within(before.sourceOhm, now.sourceOhm, 5e-4) &&
    before.sourcesV.length === now.sourcesV.length &&
    before.sourcesV.every((volts, i) => within(now.sourcesV[i] as number, volts, 0.004))
  );
}

function up(value: number, step: number): number {
  return Math.ceil(value / step - 1e-6) * step;
}

function down(value: number, step: number): number {
  return Math.floor(value / step + 1e-6) * step;
}
