import { ConvergenceError } from '../error/index.js';
import type { NetworkLoad, SettleNetworkInput } from './element.js';
import { type SettledLoads, settleLoads } from './settle-loads.js';
import { loopsOfFloating } from './floating.js';
import { natureOf } from './load-line.js';
import { acrossV } from './wiring.js';

/** A network whose diodes are at rest. */
export interface SettledDiodes extends SettledLoads {
  readonly conducts: Uint8Array;
  /** 1 for electronics that could only be fed through a diode that passes current backwards. */
  readonly backwards: Uint8Array;
  /** How many states of the diodes were solved. */
  readonly stateCount: number;
}

// A diode's volts count as those at which it begins to conduct within this share of all volts.
const CLOSE = 1e-11;

/**
 * Finds which diodes conduct. All begin without current; then all whose volts or current contradict their state change
 * it together. Each state is remembered: when one would come back, only the first diode at fault is changed from then
 * on (the least-index rule, which cannot cycle where a network's own resistances decide, as the matrix is positive
 * definite). Where a state comes back even so, some of the electronics could be fed only through a diode that passes
 * current backwards: they are taken off for good, and it begins again. Where none is left to take off, the error names
 * the diodes that went round. There is an end: states are finite in number, none is solved twice by the same rule, and
 * loads are taken off once.
 */
export function settleDiodes(input: SettleNetworkInput): SettledDiodes {
  const { fn, network } = input;
  const { diodes = [], loads = [] } = network;
  const conducts = new Uint8Array(diodes.length);
  const backwards = new Uint8Array(loads.length);
  let seen = new Map<string, number>();
  let past: PastState[] = [];
  let oneByOne = false;
  let settled: SettledLoads | null = null;
  // Far above what any network needs; it only keeps a contrived one from going through all of its states.
  const most = 200 + 20 * diodes.length;
  for (let state = 0; ; state++) {
    settled = settleLoads(input, conducts, backwards, settled);
    const wrong = wrongOf(input, conducts, settled);
    if (wrong.length === 0) return { ...settled, conducts, backwards, stateCount: state + 1 };
    const key = conducts.join('');
    const first = seen.get(key);
    if ((first !== undefined && oneByOne) || state >= most) {
      const round = past.slice(first ?? 0);
      const off = state < most ? unsureOf(settled, round) : [];
      if (off.length === 0) {
        const turned = new Set(round.flatMap(({ flipped }) => flipped));
        const names = [...turned].map((i) => `'${diodes[i]?.name ?? ''}'`).join(', ');
        throw new ConvergenceError(fn, state, turned.size, wrong.length, `the diodes ${names}, whose states go round`);
      }
      for (const i of off) backwards[i] = 1;
    }
    if (first !== undefined) {
      oneByOne = !oneByOne;
      seen = new Map();
      past = [];
    }
    seen.set(key, past.length);
    const flipped = oneByOne ? [Math.min(...wrong)] : wrong;
    for (const i of flipped) conducts[i] = 1 - (conducts[i] as number);
    past.push({ flipped, unfed: settled.unfed, loadV: settled.equations.loadV });
  }
}

interface PastState {
  readonly flipped: readonly number[];
  readonly unfed: Uint8Array;
  readonly loadV: Float64Array;
}

/**
 * The electronics that keep diodes going round: those that are fed in some states and not in others, else that whose
 * volts change the most.
 */
function unsureOf({ unfed, equations: { loads, loadV } }: SettledLoads, round: readonly PastState[]): number[] {
  const electronics = loads.map((_, i) => i).filter((i) => natureOf((loads[i] as NetworkLoad).load) === 'active');
  const unsure = electronics.filter((i) => round.some((each) => each.unfed[i] !== unfed[i]));
  const fed = electronics.filter((i) => unfed[i] === 0);
  if (unsure.length > 0 || fed.length === 0) return unsure;
  const change = (i: number): number =>
    round.reduce((most, each) => Math.max(most, Math.abs((each.loadV[i] as number) - (loadV[i] as number))), 0);
  return [fed.reduce((a, b) => (change(b) > change(a) ? b : a))];
}

/** The diodes whose state contradicts their volts. */
function wrongOf(
  { network, wiring }: SettleNetworkInput,
  conducts: Uint8Array,
  settled: SettledLoads,
): readonly number[] {
  const diodes = network.diodes ?? [];
  const { parts, solved, equations } = settled;
  const { joinedFrom, joinedTo, branchOf } = wiring;
  const { nodeV } = solved;
  const close = CLOSE * equations.topV;
  const wrong: number[] = [];
  const between: { readonly diode: number; readonly from: number; readonly to: number; readonly roomV: number }[] = [];
  diodes.forEach(({ forwardV }, i) => {
    const k = branchOf.diodes[i] as number;
    const a = joinedFrom[k] as number;
    const b = joinedTo[k] as number;
    const overV = acrossV(wiring, nodeV, k) - forwardV;
    if (conducts[i] === 1) {
      if (overV < -close) wrong.push(i);
      return;
    }
    const from = parts.partOf[a] as number;
    const to = parts.partOf[b] as number;
    if (from !== to) between.push({ diode: i, from, to, roomV: -overV });
    else if (overV > close) wrong.push(i);
  });
  return [...wrong, ...loopsOfFloating(network, wiring, settled, between, close)];
}
