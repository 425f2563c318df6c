import { InputError } from '../error/index.js';
import { needNoLessThan } from '../error/bounded.js';
import { needInput, needList, needText } from '../error/guard.js';
import { needLoad } from '../load/load.js';
import type { Network } from './element.js';

type Element = Network['branches'][number] | Network['sources'][number] | NonNullable<Network['loads']>[number];

/** Throws unless a network is whole: every element with a name of its own, two ends and its numbers. */
export function needWholeNetwork(fn: string, network: Network): void {
  needInput(fn, network);
  needText(fn, 'reference', network.reference);
  const names = new Set<string>();
  const { branches, sources, loads = [], diodes = [], switches = [] } = network;
  for (const [list, elements] of Object.entries({ branches, sources, loads, diodes, switches })) {
    needList(fn, list, elements);
    elements.forEach((element: Element, i) => {
      const at = `${list}[${i}]`;
      if (typeof element !== 'object' || element === null) {
        throw new InputError(fn, at, element === undefined ? 'missing' : 'object', element, 'must be an object');
      }
      needText(fn, `${at}.name`, element.name);
      needText(fn, `${at}.from`, element.from);
      needText(fn, `${at}.to`, element.to);
      if (names.has(element.name)) {
        throw new InputError(fn, `${at}.name`, 'order', element.name, 'must be a name of its own', 'it stands twice');
      }
      names.add(element.name);
      if (list !== 'loads') needOhm(fn, at, (element as Network['branches'][number]).resistanceOhm);
    });
  }
  sources.forEach(({ voltageV }, i) => needNoLessThan(fn, `sources[${i}].voltageV`, voltageV));
  loads.forEach(({ load }, i) => needLoad(fn, load, `loads[${i}].load`));
  diodes.forEach(({ forwardV }, i) => needNoLessThan(fn, `diodes[${i}].forwardV`, forwardV));
  switches.forEach(({ closed }, i) => {
    if (typeof closed === 'boolean') return;
    const rule = closed === undefined ? 'missing' : 'oneOf';
    throw new InputError(fn, `switches[${i}].closed`, rule, closed, 'must be true or false');
  });
}

/** 0 Ω joins two nodes; what lies between that and a nano-ohm is a slip. */
function needOhm(fn: string, at: string, value: number): void {
  needNoLessThan(fn, `${at}.resistanceOhm`, value);
  if (value === 0 || value >= 1e-9) return;
  throw new InputError(fn, `${at}.resistanceOhm`, 'range', value, 'must be 0 or at least 1e-9', 'is this in Ω?');
}
