import { ConvergenceError } from '../error/index.js';
import type { Network, SettleNetworkInput } from './element.js';
import { type SettledLoads, settleLoads } from './settle-loads.js';
import { loopsOfFloating } from './floating.js';
import { acrossV, type Wiring } from './wiring.js';

/** A network whose diodes are at rest. */
export interface SettledDiodes extends SettledLoads {
  readonly conducts: Uint8Array;
  /** How many states of the diodes were solved. */
  readonly stateCount: number;
}

// A diode's volts count as those at which it begins to conduct within this share of all volts.
const CLOSE = 1e-11;

/**
 * Finds which diodes conduct. All begin without current; then all whose volts or current contradict their state change
 * it together. Each state is remembered: when one would come back, only the first diode at fault is changed from then
 * on (the least-index rule, which cannot cycle where a network's own resistances decide, as the matrix is positive
 * definite). Should a state come back even so, it is an error that names the diodes that went round. There is an end:
 * states are finite in number, and none is solved twice by the same rule.
 */
export function settleDiodes(input: SettleNetworkInput): SettledDiodes {
  const { fn, network, wiring } = input;
  const diodes = network.diodes ?? [];
  const conducts = new Uint8Array(diodes.length);
  let seen = new Map<string, number>();
  const changes: (readonly number[])[] = [];
  let oneByOne = false;
  let settled: SettledLoads | null = null;
  // Far above what any network needs; it only keeps a contrived one from going through all of its states.
  const most = 200 + 20 * diodes.length;
  for (let state = 0; ; state++) {
    settled = settleLoads(input, conducts, settled);
    const wrong = wrongOf(network, wiring, conducts, settled);
    if (wrong.length === 0) return { ...settled, conducts, stateCount: state + 1 };
    const key = conducts.join('');
    const first = seen.get(key);
    if (first !== undefined && !oneByOne) {
      oneByOne = true;
      seen = new Map();
    }
    if ((oneByOne && seen.has(key)) || state >= most) {
      const round = new Set(changes.slice(seen.get(key) ?? 0).flat());
      const names = [...round].map((i) => `'${diodes[i]?.name ?? ''}'`).join(', ');
      throw new ConvergenceError(fn, state, round.size, wrong.length, `the diodes ${names}, whose states go round`);
    }
    seen.set(key, changes.length);
    const flipped = oneByOne ? [Math.min(...wrong)] : wrong;
    for (const i of flipped) conducts[i] = 1 - (conducts[i] as number);
    changes.push(flipped);
  }
}

/** The diodes whose state contradicts their volts. */
function wrongOf(network: Network, wiring: Wiring, conducts: Uint8Array, settled: SettledLoads): readonly number[] {
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
