import { formatQuantity } from '@loomwright/worked/quantity';
import type { LoomPlan } from '../loom/plan-type.js';
import { testPlan } from '../meter/test-plan.js';
import type { TestStage, TestStep } from '../meter/test-plan-type.js';
import type { Sheet, SheetColumn, SheetTable } from './type.js';

type Group = 'ohms' | 'lamp' | 'amps' | 'posts' | 'volts' | 'millivolts' | 'ground';
/** Volts at a load are shown rounded down, what is lost rounded up. */
const ROUND = { volts: 'down', millivolts: 'up', ground: 'up', amps: 'up' } as const;
const DIGITS = { V: 4, mV: 3, Ω: 3, A: 3 } as const;
const TITLE: Readonly<Record<Group, string>> = {
  ohms: 'Ohms',
  lamp: 'Lamp in series',
  amps: 'Amperes, one fuse at a time',
  posts: 'Volts at the posts',
  volts: 'Volts at the loads',
  millivolts: 'Millivolts over fuses and joints, current flowing',
  ground: 'Millivolts of ground points',
};
/** All but posts, which are read before everything else of their state. */
const GROUPS: readonly Group[] = ['ohms', 'lamp', 'amps', 'volts', 'millivolts', 'ground'];

/** What a meter should read, stage by stage, with limits and a line beside each for what it did read. */
export function readingsSheet(plan: LoomPlan): Sheet {
  const { stages, basis } = testPlan(plan);
  const keys = new Set(stages.flatMap(({ cautions }) => cautions));
  return {
    key: 'readings',
    title: 'Expected readings',
    lead: 'Stage by stage: dead, first power, standing, cranking, running. A reading outside its limits wants a reason before the next step.',
    landscape: false,
    tables: [
      ...stages.flatMap((stage) => stageTables(plan, stage)),
      ...wrongTable(stages),
      ...(stages.length === 0 ? [] : [basisTable(basis)]),
    ],
    cautions: ['local-code', 'battery', 'fuel', 'insulation-tester', 'restraint', 'prove-slowly', ...keys].filter(
      (key, i, all) => all.indexOf(key) === i,
    ) as Sheet['cautions'],
  };
}

function stageTables(plan: LoomPlan, stage: TestStage): SheetTable[] {
  const states = [null, ...plan.states.map(({ name }) => name)];
  const found = (stage.key === 'first power' ? [undefined] : states).flatMap((state) =>
    GROUPS.flatMap((group) => {
      const steps = stage.steps.filter((step) => step.kind === group && (state === undefined || step.state === state));
      const at = state === undefined || state === null ? '' : `, state: ${state}`;
      return steps.length === 0 ? [] : [{ group, at, state: state ?? null, steps }];
    }),
  );
  return found.map(({ group, at, state, steps }, i) => {
    const lower = TITLE[group].replace(/^./, (c) => c.toLowerCase());
    const name = i === 0 ? `${stage.title}: ${lower}` : TITLE[group];
    const notes = [...(i === 0 ? stage.procedure : []), postsOf(stage, state)];
    return table(group, `${name}${at}`, notes.filter(Boolean).join(' '), steps);
  });
}

function postsOf({ steps }: TestStage, state: string | null): string {
  const posts = steps.filter((step) => step.kind === 'posts' && step.state === state);
  if (posts.length === 0) return '';
  const list = posts.map(({ circuit, value }) => `${circuit} ${formatQuantity(value ?? 0, 'V', { decimals: 2 })}`);
  return `With at the posts: ${list.join(', ')}. Measure them first; all volts below follow them.`;
}

function table(group: Group, title: string, note: string, steps: readonly TestStep[]): SheetTable {
  const [{ unit } = { unit: 'V' as const }] = steps;
  const value = ({ V: 'valueV', mV: 'valueMv', Ω: 'valueOhm', A: 'valueA' } as const)[unit];
  const dead = group === 'ohms' || group === 'lamp' || group === 'amps';
  const reasons = [
    ...new Set(steps.flatMap(({ value: of, because }) => (of === null ? [because ?? 'not known'] : []))),
  ];
  const mark = (because: string | null): string => `note ${letter(reasons.indexOf(because ?? 'not known'))}`;
  const columns: SheetColumn[] = [
    { key: 'state', head: 'State', kind: 'text', dataOnly: true },
    // The name of a dead reading says whether the load is in or out; elsewhere the probes say all.
    dead
      ? { key: 'reading', head: 'Reading', kind: 'text', share: 26 }
      : { key: 'reading', head: 'Reading', kind: 'text', dataOnly: true },
    ...(dead ? [] : [{ key: 'circuit', head: 'Circuit', kind: 'text', share: 15 } as const]),
    { key: 'red', head: 'Red probe on', kind: 'text', share: dead ? 18 : 19 },
    { key: 'black', head: 'Black probe on', kind: 'text', share: dead ? 16 : 19 },
    ...(dead
      ? []
      : [{ key: 'currentA', head: 'With', kind: 'number', unit: 'A', digits: 3, round: 'up', share: 8 } as const]),
    {
      key: value,
      head: 'Expected',
      kind: 'number',
      unit,
      digits: DIGITS[unit],
      round: group in ROUND ? ROUND[group as keyof typeof ROUND] : 'nearest',
      share: 9.5,
    },
    { key: 'passes', head: 'Passes', kind: 'text', share: 14 },
    { key: 'setting', head: 'Meter on', kind: 'text', dataOnly: true },
    { key: 'ifNot', head: 'If not', kind: 'text', dataOnly: true },
    { key: 'because', head: 'Why there is no figure', kind: 'text', dataOnly: true },
    { key: 'measured', head: 'Measured', kind: 'blank', unit, share: 12 },
    { key: 'good', head: 'Good', kind: 'tick', share: 6.5 },
  ];
  const settings = [...new Set(steps.map(({ setting }) => setting))];
  const meter = settings.length === 1 ? `Meter: ${settings[0] ?? ''}.` : '';
  return {
    title,
    file: `readings-${group}`,
    note:
      [note, meter, ...reasons.map((reason, i) => `Note ${letter(i)}: ${reason}.`)].filter(Boolean).join(' ') || null,
    columns,
    rows: steps.map((step) => ({
      state: step.state ?? 'dead',
      reading: step.name,
      ...(dead ? {} : { circuit: step.circuit, currentA: step.currentA }),
      red: step.red,
      black: step.black,
      [value]: step.value ?? mark(step.because),
      passes: limitText(step),
      setting: step.setting,
      ifNot: step.ifNot,
      because: step.value === null ? (step.because ?? 'not known') : null,
    })),
    foot: [],
  };
}

/** Limits in words, drawn in towards the middle rather than out; the unit once where both have the same. */
function limitText({ lowLimit, highLimit, unit }: TestStep): string {
  const text = (value: number, round: 'up' | 'down'): string =>
    unit === 'V' || unit === 'mV'
      ? formatQuantity(value, unit, { decimals: unit === 'V' ? 2 : 1, round, plain: true })
      : formatQuantity(value, unit, { digits: 3, round, prefix: 'natural', trim: true, plain: true });
  if (lowLimit !== null && highLimit !== null) {
    const [low, high] = [text(lowLimit, 'up'), text(highLimit, 'down')];
    const end = high.slice(high.indexOf(' '));
    return `${low.endsWith(end) ? low.slice(0, -end.length) : low} to ${high}`;
  }
  if (lowLimit !== null) return `at least ${text(lowLimit, 'up')}`;
  return highLimit === null ? '' : `at most ${text(highLimit, 'down')}`;
}

/** What may be wrong, once for all rows that share it. */
function wrongTable(stages: readonly TestStage[]): SheetTable[] {
  const live = stages.flatMap(({ steps }) => steps);
  const lines = new Map(live.map(({ ifNot, kind }) => [ifNot, kind]));
  if (lines.size === 0) return [];
  return [
    {
      title: 'What may be wrong where a reading fails',
      file: 'readings-if-not',
      note: null,
      columns: [
        { key: 'of', head: 'Reading', kind: 'text', share: 25 },
        { key: 'wrong', head: 'What may be wrong', kind: 'text', share: 75 },
      ],
      rows: [...lines].map(([wrong, kind]) => ({ of: TITLE[kind], wrong })),
      foot: [],
    },
  ];
}

function basisTable(basis: readonly string[]): SheetTable {
  return {
    title: 'What the limits rest on',
    file: 'readings-basis',
    note: null,
    columns: [{ key: 'basis', head: 'Spread of healthy parts', kind: 'text', share: 100 }],
    rows: basis.map((line) => ({ basis: line })),
    foot: [],
  };
}

/** a, b … z, then a1, b1 …: a short sign for a reason that many rows share. */
function letter(index: number): string {
  const round = Math.floor(index / 26);
  return `${'abcdefghijklmnopqrstuvwxyz'.charAt(index % 26)}${round === 0 ? '' : round}`;
}
