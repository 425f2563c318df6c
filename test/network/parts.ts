// Short ways to write the parts of a network, and what every solved network must hold, whatever it is made of.
import { expect } from 'vitest';
import type {
  Load,
  Network,
  NetworkBranch,
  NetworkDiode,
  NetworkLoad,
  NetworkSource,
  NetworkSwitch,
  SolveNetworkResult,
} from 'loomwright';

export const wire = (name: string, from: string, to: string, resistanceOhm: number): NetworkBranch => ({
  name,
  from,
  to,
  resistanceOhm,
});
export const source = (
  name: string,
  from: string,
  to: string,
  voltageV: number,
  resistanceOhm: number,
): NetworkSource => ({ name, from, to, voltageV, resistanceOhm });
export const load = (name: string, from: string, to: string, what: number | Load): NetworkLoad => ({
  name,
  from,
  to,
  load: typeof what === 'number' ? { kind: 'resistance', resistanceOhm: what } : what,
});
export const diode = (name: string, from: string, to: string, forwardV = 0.6, resistanceOhm = 0.05): NetworkDiode => ({
  name,
  from,
  to,
  forwardV,
  resistanceOhm,
});
export const toggle = (
  name: string,
  from: string,
  to: string,
  closed: boolean,
  resistanceOhm = 0.005,
): NetworkSwitch => ({ name, from, to, closed, resistanceOhm });

/** Volts of a node that has some. */
export function voltsOf({ nodes }: SolveNetworkResult, node: string): number {
  const found = nodes.find(({ name }) => name === node)?.voltageV;
  if (found === undefined || found === null) throw new Error(`no volts at ${node}`);
  return found;
}

/** Every element's ends and current, from its `from` to its `to`; a source's runs inside it, towards its `to`. */
function currents(network: Network, result: SolveNetworkResult): { from: string; to: string; a: number | null }[] {
  const { branches, sources, loads = [], diodes = [], switches = [] } = network;
  const lists = [
    [branches, result.branches],
    [sources, result.sources],
    [loads, result.loads],
    [diodes, result.diodes],
    [switches, result.switches],
  ] as const;
  return lists.flatMap(([ends, states]) => ends.map(({ from, to }, i) => ({ from, to, a: states[i]!.currentA })));
}

/** Currents add up to nothing at every node, within `share` of the largest there. */
export function addsUp(network: Network, result: SolveNetworkResult, share = 1e-9): void {
  const sum = new Map<string, number>();
  const size = new Map<string, number>();
  let most = 0;
  for (const { from, to, a } of currents(network, result)) {
    if (a === null) throw new Error('a current is not to be told');
    most = Math.max(most, Math.abs(a));
    for (const [node, sign] of [
      [from, -1],
      [to, 1],
    ] as const) {
      sum.set(node, (sum.get(node) ?? 0) + sign * a);
      size.set(node, Math.max(size.get(node) ?? 0, Math.abs(a)));
    }
  }
  for (const [node, left] of sum) {
    expect(Math.abs(left), node).toBeLessThanOrEqual(share * size.get(node)! + 1e-12 * most + 1e-18);
  }
}

/** What sources give is what is used and lost. */
export function balances({ balance }: SolveNetworkResult, share = 1e-9): void {
  const { givenW, usedW, lostW, differenceW } = balance;
  const size = Math.abs(givenW) + Math.abs(usedW) + Math.abs(lostW);
  expect(Math.abs(givenW - usedW - lostW)).toBeLessThanOrEqual(share * size + 1e-12);
  expect(Math.abs(differenceW - (givenW - usedW - lostW))).toBeLessThanOrEqual(1e-12 * size + 1e-15);
}
