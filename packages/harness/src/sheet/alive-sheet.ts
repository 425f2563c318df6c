import type { LoomPlan, PlannedSneak } from '../loom/plan-type.js';
import type { Sheet, SheetTable } from './type.js';
import { byName } from './words.js';

/** Most states side by side on one sheet. */
const ABREAST = 9;
/** Most points that are named in a row. */
const NAMED = 6;

/** What is alive in which state, and what stays alive with a fuse out, a contact open or a battery off. */
export function aliveSheet(plan: LoomPlan): Sheet {
  return {
    key: 'alive',
    title: 'What is alive when',
    lead: 'Volts at the feed of each load, state by state; then what still has volts with one fuse out, one contact open or one battery off. Alive is more than 1 V.',
    landscape: plan.states.length > 5,
    tables: [...byState(plan), ...faults(plan)],
    cautions: ['local-code', 'battery', 'isolator', 'restraint'],
  };
}

function byState(plan: LoomPlan): SheetTable[] {
  const count = Math.ceil(plan.states.length / ABREAST);
  return Array.from({ length: count }, (_, i): SheetTable => {
    const states = plan.states.slice(i * ABREAST, (i + 1) * ABREAST).map(({ name }) => name);
    return {
      title: `With nothing wrong${count === 1 ? '' : `, ${i + 1} of ${count}`}`,
      file: count === 1 ? 'alive' : `alive-${i + 1}`,
      note: 'At the positive end of each load, against the ground that all are counted from. A load without a contact of its own is alive at all times.',
      columns: [
        { key: 'load', head: 'Load', kind: 'text', share: 22 },
        ...states.map((name) => ({
          key: `${name} V`,
          head: name,
          kind: 'number' as const,
          unit: 'V',
          decimals: 2,
          round: 'up' as const,
          share: 9,
        })),
      ],
      rows: [...plan.alive]
        .sort((a, b) => byName(a.circuit, b.circuit))
        .map(({ circuit, voltsV }) => ({
          load: circuit,
          ...Object.fromEntries(states.map((name, s) => [`${name} V`, voltsV[i * ABREAST + s] ?? 'dead'])),
        })),
      foot: [],
    };
  });
}

function faults(plan: LoomPlan): SheetTable[] {
  if (plan.sneaks.length === 0) return [];
  return [
    {
      title: 'With one fuse out, one contact open, or one battery off',
      file: 'alive-faults',
      note: 'Tried: every fuse, switch, relay, channel, isolator and battery of the file. Only where something stays alive; behind all others it is dead. Little current comes through coils, enough to hold a relay in or to keep electronics half awake.',
      columns: [
        { key: 'fault', head: 'Out, open or off', kind: 'text', share: 18 },
        { key: 'points', head: 'Still alive', kind: 'text', share: 32 },
        { key: 'voltageV', head: 'Up to', kind: 'number', unit: 'V', decimals: 2, round: 'up', share: 8 },
        { key: 'way', head: 'Fed from', kind: 'text', under: 'path', underHead: 'Through', share: 28 },
        { key: 'states', head: 'In state', kind: 'text', share: 22 },
      ],
      rows: plan.sneaks.map((sneak) => ({
        fault: sneak.fault,
        points: pointsText(sneak),
        voltageV: sneak.points[0]?.voltageV ?? null,
        way: sneak.fedFrom ?? '',
        path: pathText(sneak),
        states: sneak.states.length === plan.states.length ? 'all' : sneak.states.join(', '),
      })),
      foot: [],
    },
  ];
}

function pointsText({ points, relays }: PlannedSneak): string {
  const isBox = (node: string): number => (/^(box|controller) /.test(node) ? 0 : 1);
  const names = points.map(({ node }) => node);
  const named = [...names].sort((a, b) => isBox(a) - isBox(b) || byName(a, b)).slice(0, NAMED);
  const more = points.length > NAMED ? `, and ${points.length - NAMED} more` : '';
  const held = relays.length === 0 ? '' : `; held in: ${relays.join(', ')}`;
  return `${named.join(', ')}${more}${held}`;
}

function pathText({ by, path }: PlannedSneak): string {
  return by === 'wire' ? 'another wire' : path.join(', then ');
}
