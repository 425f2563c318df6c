import type { ExpectedReading, LoomPlan } from '../loom/plan-type.js';
import type { Sheet, SheetColumn, SheetTable } from './type.js';

const UNIT = { volts: 'V', millivolts: 'mV', ohms: 'Ω' } as const;
/** Volts at a load are shown rounded down, what is lost rounded up. */
const ROUND = { volts: 'down', millivolts: 'up', ohms: 'nearest' } as const;
const DIGITS = { volts: 4, millivolts: 3, ohms: 3 } as const;

/** What a meter should read, with a line beside each for what it did read. */
export function readingsSheet(plan: LoomPlan): Sheet {
  const of = (kind: ExpectedReading['kind']): readonly ExpectedReading[] =>
    plan.readings.filter((reading) => reading.kind === kind);
  const states = plan.states.map(({ name }) => name);
  const live = (kind: 'volts' | 'millivolts', title: string): SheetTable[] =>
    [...states, null].flatMap((state) => {
      const readings = of(kind).filter((reading) => reading.state === state);
      return readings.length === 0
        ? []
        : [table(kind, state === null ? title : `${title}, state: ${state}`, batteriesOf(plan, state), readings)];
    });
  const ohms = of('ohms');
  return {
    key: 'readings',
    title: 'Expected readings',
    lead: 'Dead first, then alive, one state after another. Predictions by the plan, without tolerance: a reading that is far off wants a reason before the next step.',
    landscape: false,
    tables: [
      ...(ohms.length === 0
        ? []
        : [
            table(
              'ohms',
              'Dead: ohms',
              'Battery negatives off, all switches and relays open unless a row says otherwise. An ohmmeter finds opens and shorts; it does not prove a joint.',
              ohms,
            ),
          ]),
      ...live('volts', 'Volts at the loads'),
      ...live('millivolts', 'Millivolts over fuses and joints, current flowing'),
    ],
    cautions: ['local-code', 'battery', 'fuel', 'insulation-tester', 'restraint', 'prove-slowly'],
  };
}

function batteriesOf(plan: LoomPlan, state: string | null): string | null {
  const found = plan.states.find(({ name }) => name === state);
  if (found === undefined) return null;
  const posts = found.batteries.map(({ name, supplyV }) => `${name} ${supplyV} V`).join(', ');
  return `With at the posts: ${posts}. Measure them first; all volts below follow them.`;
}

function table(
  kind: ExpectedReading['kind'],
  title: string,
  note: string | null,
  readings: readonly ExpectedReading[],
): SheetTable {
  const unit = UNIT[kind];
  const value = { volts: 'valueV', millivolts: 'valueMv', ohms: 'valueOhm' }[kind];
  const dead = kind === 'ohms';
  const reasons = [
    ...new Set(readings.flatMap(({ value, because }) => (value === null ? [because ?? 'not known'] : []))),
  ];
  const mark = (because: string | null): string => `note ${letter(reasons.indexOf(because ?? 'not known'))}`;
  const columns: SheetColumn[] = [
    { key: 'state', head: 'State', kind: 'text', dataOnly: true },
    // The name of a dead reading says whether the load is in or out; elsewhere the probes say all.
    dead
      ? { key: 'reading', head: 'Reading', kind: 'text', share: 31 }
      : { key: 'reading', head: 'Reading', kind: 'text', dataOnly: true },
    ...(dead ? [] : [{ key: 'circuit', head: 'Circuit', kind: 'text', share: 20 } as const]),
    { key: 'red', head: 'Red probe on', kind: 'text', share: dead ? 23 : 24 },
    { key: 'black', head: 'Black probe on', kind: 'text', share: dead ? 20 : 24 },
    ...(dead
      ? []
      : [{ key: 'currentA', head: 'With', kind: 'number', unit: 'A', digits: 3, round: 'up', share: 8 } as const]),
    {
      key: value,
      head: 'Expected',
      kind: 'number',
      unit,
      digits: DIGITS[kind],
      round: ROUND[kind],
      share: 10,
    },
    { key: 'because', head: 'Why there is no figure', kind: 'text', dataOnly: true },
    { key: 'measured', head: 'Measured', kind: 'blank', unit, share: 13 },
    { key: 'good', head: 'Good', kind: 'tick', share: 6.5 },
  ];
  return {
    title,
    file: `readings-${kind}`,
    note:
      [note ?? '', ...reasons.map((reason, i) => `Note ${letter(i)}: ${reason}.`)].filter(Boolean).join(' ') || null,
    columns,
    rows: readings.map(({ name, circuit, state, probes, value: expected, because, currentA }) => ({
      state: state ?? 'dead',
      reading: name,
      ...(dead ? {} : { circuit }),
      red: probes[0],
      black: probes[1],
      ...(dead ? {} : { currentA }),
      [value]: expected ?? mark(because),
      because: expected === null ? (because ?? 'not known') : null,
    })),
    foot: [],
  };
}

/** a, b … z, then a1, b1 …: a short sign for a reason that many rows share. */
function letter(index: number): string {
  const round = Math.floor(index / 26);
  return `${'abcdefghijklmnopqrstuvwxyz'.charAt(index % 26)}${round === 0 ? '' : round}`;
}
