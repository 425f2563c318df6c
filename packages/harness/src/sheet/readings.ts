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
  const columns: SheetColumn[] = [
    { key: 'state', head: 'State', kind: 'text', inTitle: true },
    { key: 'reading', head: 'Reading', kind: 'text', share: 28 },
    { key: 'red', head: 'Red probe on', kind: 'text', share: 20 },
    { key: 'black', head: 'Black probe on', kind: 'text', share: 20 },
    ...(kind === 'ohms'
      ? []
      : [{ key: 'currentA', head: 'With', kind: 'number', unit: 'A', digits: 3, round: 'up', share: 8 } as const]),
    { key: value, head: 'Expected', kind: 'number', unit, digits: DIGITS[kind], round: ROUND[kind], share: 11 },
    { key: 'measured', head: 'Measured', kind: 'blank', unit, share: 14 },
    { key: 'good', head: 'Good', kind: 'tick', share: 6 },
  ];
  return {
    title,
    file: `readings-${kind}`,
    note,
    columns,
    rows: readings.map(({ name, state, probes, value: expected, because, currentA }) => ({
      state: state ?? 'dead',
      reading: name,
      red: probes[0],
      black: probes[1],
      ...(kind === 'ohms' ? {} : { currentA }),
      [value]: expected ?? because ?? 'not known',
    })),
    foot: [],
  };
}
