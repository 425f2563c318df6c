import type { LoomPlan, PlannedFuse } from '../loom/plan-type.js';
import type { Sheet, SheetColumn, SheetRow, SheetTable } from './type.js';
import { byName, NO_SIZE } from './words.js';

const AMPS = { kind: 'number', unit: 'A', round: 'up', decimals: 2 } as const;
const RATING = { key: 'ratingA', head: 'Fuse', kind: 'number', unit: 'A', digits: 3, trim: true, share: 7 } as const;

/** Every fuse with its rating, every output with its setting, and what has neither. */
export function fuseChart(plan: LoomPlan): Sheet {
  const boxes = [...new Set(plan.fuses.flatMap(({ box }) => (box === null ? [] : [box])))].sort(byName);
  const inLine = plan.fuses.filter(({ box }) => box === null);
  const tables: SheetTable[] = boxes.map((box) => {
    const fuses = plan.fuses.filter((fuse) => fuse.box === box).sort((a, b) => (a.position ?? 0) - (b.position ?? 0));
    const used = fuses.filter(({ circuit }) => circuit !== null).length;
    return {
      title: `${box}, ${fuses[0]?.place ?? ''}`,
      file: 'fuse-chart',
      note: `${used} of ${fuses.length} positions used.`,
      columns: fuseColumns('Position'),
      rows: fuses.map((fuse) => fuseRow(plan, fuse, box, String(fuse.position ?? ''))),
      foot: [],
    };
  });
  if (inLine.length > 0) {
    tables.push({
      title: 'Fuses in the wire',
      file: 'fuse-chart',
      note: null,
      columns: fuseColumns('Fuse of'),
      rows: inLine.map((fuse) => fuseRow(plan, fuse, 'in the wire', fuse.name)),
      foot: [],
    });
  }
  if (plan.channels.length > 0) tables.push(channels(plan));
  const bare = withoutFuse(plan);
  if (bare.rows.length > 0) tables.push(bare);
  return {
    key: 'fuses',
    title: 'Fuse chart',
    lead: 'Fit no larger fuse than stands here: the wire behind it was chosen with it. Short is the least current of a short at the far end.',
    landscape: false,
    tables,
    cautions: ['local-code', 'stored-heat', 'battery'],
  };
}

function fuseColumns(first: string): SheetColumn[] {
  return [
    { key: 'box', head: 'Box', kind: 'text', dataOnly: true },
    { key: 'position', head: first, kind: 'text', share: 12 },
    RATING,
    { key: 'family', head: 'Family', kind: 'text', share: 12 },
    { key: 'circuit', head: 'Protects', kind: 'text', share: 19 },
    { key: 'size', head: 'Wire', kind: 'text', short: true, share: 10 },
    { key: 'currentA', head: 'Most current', ...AMPS, share: 10 },
    { key: 'farShortA', head: 'Short', kind: 'number', unit: 'A', decimals: 0, round: 'down', share: 8 },
    { key: 'decidedBy', head: 'Decided by', kind: 'text', share: 18 },
    { key: 'fitted', head: 'In', kind: 'tick', share: 5 },
  ];
}

function fuseRow(plan: LoomPlan, fuse: PlannedFuse, box: string, position: string): SheetRow {
  const spare = fuse.circuit === null;
  return {
    box,
    position,
    ratingA: fuse.ratingA ?? (spare ? null : 'none fits'),
    family: fuse.family.replaceAll('-', ' '),
    circuit: fuse.circuit ?? 'spare',
    size: sizeOf(plan, fuse.circuit),
    currentA: spare ? null : fuse.currentA,
    farShortA: fuse.farShortA,
    decidedBy: fuse.decidedBy ?? '',
  };
}

function channels(plan: LoomPlan): SheetTable {
  return {
    title: 'Outputs of controllers',
    file: 'outputs',
    note: 'Set to is the trip current to enter.',
    columns: [
      { key: 'channel', head: 'Output', kind: 'text' },
      { key: 'settingA', head: 'Set to', kind: 'number', unit: 'A', digits: 3, trim: true },
      { key: 'ratingA', head: 'Rating', kind: 'number', unit: 'A', digits: 3, trim: true },
      { key: 'circuit', head: 'Feeds', kind: 'text' },
      { key: 'size', head: 'Wire', kind: 'text', short: true },
      { key: 'currentA', head: 'Most current', ...AMPS },
      { key: 'set', head: 'Set', kind: 'tick' },
    ],
    rows: [...plan.channels]
      .sort((a, b) => byName(a.name, b.name))
      .map((channel) => ({
        channel: channel.name,
        settingA: channel.settingA ?? (channel.circuit === null ? null : 'none fits'),
        ratingA: channel.ratingA,
        circuit: channel.circuit ?? 'spare',
        size: sizeOf(plan, channel.circuit),
        currentA: channel.circuit === null ? null : channel.currentA,
      })),
    foot: [],
  };
}

/** Circuits that nothing protects, gathered by the reason that is given for them. */
function withoutFuse(plan: LoomPlan): SheetTable {
  const reasons = new Map<string, { circuits: string[]; currentA: number }>();
  for (const { name, protection, currentA } of plan.circuits) {
    if (protection.kind !== 'none') continue;
    const found = reasons.get(protection.because);
    reasons.set(protection.because, {
      circuits: [...(found?.circuits ?? []), name],
      currentA: Math.max(currentA, found?.currentA ?? 0),
    });
  }
  return {
    title: 'Without a fuse',
    file: 'without-a-fuse',
    note: 'Each for a reason that somebody gave. Read them.',
    columns: [
      { key: 'because', head: 'Why', kind: 'text', share: 42 },
      { key: 'circuits', head: 'Circuits', kind: 'text', share: 46 },
      { key: 'currentA', head: 'Most current', ...AMPS, share: 12 },
    ],
    rows: [...reasons]
      .map(([because, { circuits, currentA }]) => ({ because, circuits: circuits.join(', '), currentA }))
      .sort((a, b) => b.currentA - a.currentA || byName(a.because, b.because)),
    foot: [],
  };
}

function sizeOf(plan: LoomPlan, circuit: string | null): string | null {
  if (circuit === null) return null;
  return plan.circuits.find(({ name }) => name === circuit)?.size ?? NO_SIZE;
}
