import type { Load } from '../load/index.js';
import type { Network, NetworkLoad, NetworkSource, NetworkSwitch } from './element.js';
import { natureOf, restPerOhm } from './load-line.js';
import type { SolveNetworkResult } from './network-result.js';
import { leastDiodeOhm } from './wiring.js';

/** Whether a network has resistances alone: one solution, whatever is taken away. */
export function isLinear({ loads = [], diodes = [] }: Network): boolean {
  return diodes.length === 0 && loads.every(({ load }) => load.kind === 'resistance');
}

/** Whether a network that is held is the same as one that settles, as long as every given current finds volts. */
export function isHeldAlready({ loads = [], diodes = [] }: Network): boolean {
  return (
    diodes.length === 0 && loads.every(({ load }) => load.kind === 'constant-current' || natureOf(load) === 'linear')
  );
}

/**
 * Conductance in 1/Ω of a load: its own, or that at its volts; at no volts that of a lamp at its rated ones, of a
 * motor's winding, and 0 for electronics, which are taken to pass nothing.
 */
export function heldPerOhm(load: Load, voltageV: number | null, currentA: number): number {
  if (natureOf(load) !== 'linear' && currentA !== 0 && voltageV !== null && voltageV !== 0) return currentA / voltageV;
  return restPerOhm(load);
}

/**
 * A network held as it has settled: loads at the resistance that they have, given currents as they are, diodes that
 * conduct as the source against them that they are. What passes nothing is an open switch.
 */
export function heldNetwork(network: Network, settled: SolveNetworkResult): Network {
  const loads: NetworkLoad[] = [];
  const open: NetworkSwitch[] = [];
  const on: NetworkSource[] = [];
  const away = ({ name, from, to }: { readonly name: string; readonly from: string; readonly to: string }): void => {
    open.push({ name, from, to, closed: false, resistanceOhm: 0 });
  };
  network.loads?.forEach((each, i) => {
    const { voltageV, currentA } = settled.loads[i] as SolveNetworkResult['loads'][number];
    if (each.load.kind === 'resistance' || (each.load.kind === 'constant-current' && currentA !== 0)) {
      loads.push(each);
      return;
    }
    const perOhm = each.load.kind === 'constant-current' ? 0 : heldPerOhm(each.load, voltageV, currentA);
    if (perOhm === 0) away(each);
    else loads.push({ ...each, load: { kind: 'resistance', resistanceOhm: 1 / perOhm } });
  });
  network.diodes?.forEach((each, i) => {
    const { name, from, to, forwardV, resistanceOhm } = each;
    if (settled.diodes[i]?.conducts !== true) away(each);
    else on.push({ name, from: to, to: from, voltageV: forwardV, resistanceOhm: leastDiodeOhm(resistanceOhm) });
  });
  const { sources, switches = [] } = network;
  return { ...network, loads, diodes: [], sources: [...sources, ...on], switches: [...switches, ...open] };
}
