import type { LoomPlan, PlannedWire } from '../loom/plan-type.js';
import type { Sheet } from './type.js';
import { cutCm, DECIDED, NO_SIZE, protectionText, ratingsOf } from './words.js';

/** Every wire, terminal to terminal. */
export function wireList(plan: LoomPlan): Sheet {
  const circuits = new Map(plan.circuits.map((circuit) => [circuit.name, circuit]));
  const ratings = ratingsOf(plan);
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
      way: wayText(wire),
      size: wire.size ?? NO_SIZE,
      colour: wire.colour,
      cutM: cutCm(wire.lengthM) / 100,
      currentA: circuit?.currentA ?? null,
      protectedBy: circuit === undefined ? null : protectionText(ratings, circuit),
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
          { key: 'number', head: 'No.', kind: 'number', decimals: 0, dataOnly: true },
          { key: 'label', head: 'Label', kind: 'text', share: 18 },
          { key: 'wire', head: 'Wire', kind: 'text', dataOnly: true },
          { key: 'from', head: 'From', kind: 'text', share: 15 },
          { key: 'fromPlace', head: 'From, place', kind: 'text', dataOnly: true },
          { key: 'to', head: 'To', kind: 'text', share: 15 },
          { key: 'toPlace', head: 'To, place', kind: 'text', dataOnly: true },
          { key: 'way', head: 'Way', kind: 'text', share: 18 },
          { key: 'size', head: 'Size', kind: 'text', share: 7 },
          { key: 'colour', head: 'Colour', kind: 'text', share: 6 },
          { key: 'cutM', head: 'Length', kind: 'number', unit: 'm', decimals: 2, share: 7.5 },
          { key: 'currentA', head: 'Current', kind: 'number', unit: 'A', decimals: 2, round: 'up', share: 7.5 },
          { key: 'protectedBy', head: 'Protected by', kind: 'text', share: 15 },
          { key: 'decidedBy', head: 'Decided by', kind: 'text', share: 9 },
          { key: 'fitted', head: 'Fitted', kind: 'tick', share: 5 },
        ],
        rows,
        foot: [],
      },
    ],
    cautions: ['local-code', 'battery', 'restraint'],
  };
}

/** `dash to rear by dash trunk, rear trunk`; the place alone where a wire stays in it. */
function wayText({ from, to, route }: PlannedWire): string {
  if (route.length === 0) return `in ${from.place}`;
  return `${from.place} to ${to.place} by ${route.join(', ')}`;
}
