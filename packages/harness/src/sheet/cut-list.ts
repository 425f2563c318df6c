import type { LoomPlan, PlannedWire } from '../loom/plan-type.js';
import type { Sheet, SheetTable } from './type.js';
import { byName, cutCm } from './words.js';

interface Spool {
  readonly size: string;
  readonly areaMm2: number;
  readonly colour: string;
  readonly wires: readonly PlannedWire[];
}

/** What to cut from each spool, longest first, and how much of each to buy. */
export function cutList(plan: LoomPlan): Sheet {
  const spools = spoolsOf(plan.wires);
  const unsized = plan.wires.filter(({ size }) => size === null).map(({ label, name }) => `${label} ${name}`);
  const totals: SheetTable = {
    title: 'Spools',
    file: 'spools',
    note:
      unsized.length === 0
        ? 'Buy more: nothing is counted for a mistake.'
        : `Not counted, because no size is possible: ${unsized.join(', ')}.`,
    columns: [
      { key: 'size', head: 'Size', kind: 'text', short: true },
      { key: 'colour', head: 'Colour', kind: 'text' },
      { key: 'pieceCount', head: 'Pieces', kind: 'number', decimals: 0 },
      { key: 'longestM', head: 'Longest', kind: 'number', unit: 'm', decimals: 2 },
      { key: 'totalM', head: 'In all', kind: 'number', unit: 'm', decimals: 2 },
      { key: 'here', head: 'Here', kind: 'tick' },
    ],
    rows: spools.map(({ size, colour, wires }) => ({
      size,
      colour,
      pieceCount: wires.length,
      longestM: Math.max(...wires.map(({ lengthM }) => cutCm(lengthM))) / 100,
      totalM: totalCm(wires) / 100,
    })),
    foot: [
      {
        size: 'All',
        colour: null,
        pieceCount: spools.reduce((sum, { wires }) => sum + wires.length, 0),
        longestM: null,
        totalM: spools.reduce((sum, { wires }) => sum + totalCm(wires), 0) / 100,
      },
    ],
  };
  const pieces = spools.map(({ size, colour, wires }): SheetTable => ({
    title: `${size}, ${colour}`,
    file: 'cut-list',
    note: null,
    columns: [
      { key: 'size', head: 'Size', kind: 'text', dataOnly: true },
      { key: 'colour', head: 'Colour', kind: 'text', dataOnly: true },
      { key: 'cutM', head: 'Cut', kind: 'number', unit: 'm', decimals: 2, share: 8 },
      { key: 'label', head: 'Label', kind: 'text', share: 28 },
      { key: 'wire', head: 'Wire', kind: 'text', dataOnly: true },
      { key: 'from', head: 'From', kind: 'text', share: 29 },
      { key: 'to', head: 'To', kind: 'text', share: 29 },
      { key: 'done', head: 'Done', kind: 'tick', share: 6.5 },
    ],
    rows: wires.map((wire) => ({
      size,
      colour,
      cutM: cutCm(wire.lengthM) / 100,
      label: wire.label,
      wire: wire.name,
      from: wire.from.at,
      to: wire.to.at,
    })),
    foot: [],
  }));
  return {
    key: 'cuts',
    title: 'Cut list',
    lead: 'Cut the longest first: a piece cut too short still serves for a shorter one. Label both ends before it leaves the bench.',
    landscape: false,
    tables: [totals, ...pieces],
    cautions: ['local-code'],
  };
}

function totalCm(wires: readonly PlannedWire[]): number {
  return wires.reduce((sum, { lengthM }) => sum + cutCm(lengthM), 0);
}

/** Wires of one size and colour come from one spool; thinnest spool first. */
function spoolsOf(wires: readonly PlannedWire[]): Spool[] {
  const spools = new Map<string, Spool>();
  for (const wire of wires) {
    if (wire.size === null) continue;
    const key = `${wire.size}\n${wire.colour}`;
    const spool = spools.get(key) ?? { size: wire.size, areaMm2: wire.areaMm2 ?? 0, colour: wire.colour, wires: [] };
    spools.set(key, { ...spool, wires: [...spool.wires, wire] });
  }
  return [...spools.values()]
    .map((spool) => ({
      ...spool,
      wires: [...spool.wires].sort((a, b) => cutCm(b.lengthM) - cutCm(a.lengthM) || a.number - b.number),
    }))
    .sort((a, b) => a.areaMm2 - b.areaMm2 || byName(a.size, b.size) || byName(a.colour, b.colour));
}
