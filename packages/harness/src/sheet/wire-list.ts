import type { LoomPlan } from '../loom/plan-type.js';
import type { Sheet } from './type.js';
import { cutCm, DECIDED, NO_SIZE, protectionText } from './words.js';

/** Every wire, terminal to terminal. */
export function wireList(plan: LoomPlan): Sheet {
  const circuits = new Map(plan.circuits.map((circuit) => [circuit.name, circuit]));
  const rows = plan.wires.map((wire) => {
    const circuit = circuits.get(wire.circuit);
    return {
      number: wire.number,
      label: wire.label,
      wire: wire.name,
      from: wire.from.at,
      fromPlace: wire.from.place,
      to: wire.to.at,
      toPlace: wire.to.place,
      along: wire.route.join(' · '),
      size: wire.size ?? NO_SIZE,
      colour: wire.colour,
      cutM: cutCm(wire.lengthM) / 100,
      currentA: circuit?.currentA ?? null,
      protectedBy: circuit === undefined ? null : protectionText(plan, circuit),
      decidedBy: DECIDED[wire.decidedBy],
    };
  });
  return {
    key: 'wires',
    title: 'Wire list',
    lead: 'One row a wire, from terminal to terminal. Length is the length to cut, slack and ends counted. Current is the largest of any state.',
    landscape: true,
    tables: [
      {
        title: 'Wires',
        file: 'wire-list',
        note: null,
        columns: [
          { key: 'number', head: 'No.', kind: 'number', decimals: 0 },
          { key: 'label', head: 'Label', kind: 'text', short: true },
          { key: 'wire', head: 'Wire', kind: 'text' },
          { key: 'from', head: 'From', kind: 'text', under: 'fromPlace', underHead: 'From, place' },
          { key: 'to', head: 'To', kind: 'text', under: 'toPlace', underHead: 'To, place' },
          { key: 'along', head: 'Along', kind: 'text' },
          { key: 'size', head: 'Size', kind: 'text', short: true },
          { key: 'colour', head: 'Colour', kind: 'text' },
          { key: 'cutM', head: 'Length', kind: 'number', unit: 'm', decimals: 2 },
          { key: 'currentA', head: 'Current', kind: 'number', unit: 'A', decimals: 2, round: 'up' },
          { key: 'protectedBy', head: 'Protected by', kind: 'text' },
          { key: 'decidedBy', head: 'Size decided by', kind: 'text' },
          { key: 'fitted', head: 'Fitted', kind: 'tick' },
        ],
        rows,
        foot: [],
      },
    ],
    cautions: ['local-code', 'battery', 'restraint'],
  };
}
