import { InputError } from '../error/index.js';
import { needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needFlag, needInput, needList, needObject, needOwnName, needText } from '../error/guard.js';
import type { Network } from './element.js';

interface Element {
  readonly name: string;
  readonly from: string;
  readonly to: string;
  readonly resistanceOhm?: number;
}

/**
 * Throws unless a network is whole: every element with a name of its own, two ends and its numbers. Of loads it looks
 * at resistances and given currents; what settles the others looks at those.
 */
export function needWholeNetwork(fn: string, network: Network): void {
  needInput(fn, network);
  needText(fn, 'reference', network.reference);
  const names = new Set<string>();
  const { branches, sources, loads = [], diodes = [], switches = [] } = network;
  for (const [list, elements] of Object.entries({ branches, sources, loads, diodes, switches })) {
    needList(fn, list, elements);
    elements.forEach((element: Element, i) => {
      const at = `${list}[${i}]`;
      needObject(fn, at, element);
      needOwnName(fn, `${at}.name`, element.name, names);
      for (const field of ['from', 'to'] as const) needText(fn, `${at}.${field}`, element[field]);
      if (list !== 'loads') needOhm(fn, `${at}.resistanceOhm`, element.resistanceOhm as number);
    });
  }
  sources.forEach(({ voltageV }, i) => {
    needNoLessThan(fn, `sources[${i}].voltageV`, voltageV);
  });
  loads.forEach(({ load }, i) => {
    const at = `loads[${i}].load`;
    needObject(fn, at, load);
    if (load.kind === 'resistance') needMoreThan(fn, `${at}.resistanceOhm`, load.resistanceOhm);
    if (load.kind === 'constant-current') needMoreThan(fn, `${at}.currentA`, load.currentA);
  });
  diodes.forEach(({ forwardV }, i) => {
    needNoLessThan(fn, `diodes[${i}].forwardV`, forwardV);
  });
  switches.forEach(({ closed }, i) => {
    needFlag(fn, `switches[${i}].closed`, closed);
  });
}

/** 0 Ω joins two nodes; what lies between that and a nano-ohm is a slip. */
function needOhm(fn: string, at: string, value: number): void {
  needNoLessThan(fn, at, value);
  if (value === 0 || value >= 1e-9) return;
  throw new InputError(fn, at, 'range', value, 'must be 0 or at least 1e-9', 'is this in Ω?');
}

/** Every node that something of a network ends at, the reference first. */
export function endsOf({ reference, branches, sources, loads = [], diodes = [], switches = [] }: Network): Set<string> {
  const nodes = new Set([reference]);
  for (const { from, to } of [...branches, ...sources, ...loads, ...diodes, ...switches]) nodes.add(from).add(to);
  return nodes;
}
