import type { LoomPlan, PlannedLoss, PlannedState } from '../loom/plan-type.js';
import type { Sheet, SheetRow, SheetTable } from './type.js';
import { withoutCoils } from '../loom/ground-findings.js';
import { byName, NO_SIZE } from './words.js';

/** Most states side by side on one sheet. */
const ABREAST = 9;
const KIND = {
  strap: 'strap',
  cable: 'battery cable',
  wire: 'wire',
  body: 'body',
  joint: 'joint',
  stray: 'not laid for current',
} as const;

/** The ways of the grounds, their millivolts by state, and what comes of losing each. */
export function groundsSheet(plan: LoomPlan): Sheet {
  const root = plan.grounds.find(({ by }) => by === 'root')?.name ?? '';
  return {
    key: 'grounds',
    title: 'Grounds',
    lead: `Every way that current takes back, its millivolts and milliohms, and what happens if it comes loose. Volts count from ${root}.`,
    landscape: plan.states.length > 5,
    tables: [ways(plan), ...points(plan, root), ...sensors(plan), losses(plan)].filter(({ rows }) => rows.length > 0),
    cautions: ['local-code', 'battery', 'isolator'],
  };
}

function ways(plan: LoomPlan): SheetTable {
  const circuits = new Map(plan.circuits.map((circuit) => [circuit.name, circuit]));
  return {
    title: 'Ways',
    file: 'ground-ways',
    note: 'Amperes of the state with the most, without charging currents; these are counted where a size was chosen.',
    columns: [
      { key: 'way', head: 'Way', kind: 'text', share: 19 },
      { key: 'kind', head: 'By', kind: 'text', share: 11 },
      { key: 'from', head: 'From', kind: 'text', share: 15 },
      { key: 'to', head: 'To', kind: 'text', share: 15 },
      { key: 'size', head: 'Size', kind: 'text', short: true, share: 8 },
      { key: 'resistanceOhm', head: 'Hot', kind: 'number', unit: 'Ω', digits: 3, round: 'up', share: 9 },
      { key: 'currentA', head: 'Most', kind: 'number', unit: 'A', decimals: 2, round: 'up', share: 8 },
      { key: 'state', head: 'In state', kind: 'text', share: 11 },
      { key: 'bearsA', head: 'Bears', kind: 'number', unit: 'A', decimals: 1, round: 'down', share: 8 },
      { key: 'dropMv', head: 'Expected', kind: 'number', unit: 'mV', decimals: 1, round: 'up', share: 10 },
      { key: 'measured', head: 'Measured', kind: 'blank', unit: 'mV', share: 14 },
    ],
    rows: plan.ways.map(({ name, kind, circuit, from, to, resistanceOhm, bearsA }) => {
      const most = plan.states.reduce<{ state: string; currentA: number }>(
        (worst, { name: state, currents }) => {
          const currentA = Math.abs(currents[name] ?? 0);
          return currentA > worst.currentA ? { state, currentA } : worst;
        },
        { state: '', currentA: 0 },
      );
      return {
        way: name,
        kind: KIND[kind],
        from,
        to,
        size: circuit === null ? '' : (circuits.get(circuit)?.size ?? NO_SIZE),
        resistanceOhm,
        currentA: most.currentA,
        state: most.state,
        bearsA,
        dropMv: most.currentA * resistanceOhm * 1000,
      };
    }),
    foot: [],
  };
}

function points(plan: LoomPlan, root: string): SheetTable[] {
  const names = [...new Set(plan.ways.flatMap(({ from, to }) => [from, to]))].filter(
    (name) => name !== `ground ${root}`,
  );
  const count = Math.ceil(plan.states.length / ABREAST);
  return Array.from({ length: count }, (_, i): SheetTable => {
    const states = plan.states.slice(i * ABREAST, (i + 1) * ABREAST);
    return {
      title: `Millivolts by state${count === 1 ? '' : `, ${i + 1} of ${count}`}`,
      file: count === 1 ? 'ground-volts' : `ground-volts-${i + 1}`,
      note: `Of each point against ${root}: a meter's black probe stays there.`,
      columns: [
        { key: 'point', head: 'Point', kind: 'text', share: 22 },
        ...states.map(({ name }) => ({
          key: stateKey(name),
          head: name,
          kind: 'number' as const,
          unit: 'mV',
          decimals: 1,
          share: 9,
        })),
      ],
      rows: names.sort(byName).map((point) => ({
        point,
        ...Object.fromEntries(states.map(({ name, nodes }) => [stateKey(name), (nodes[point] ?? 0) * 1000])),
      })),
      foot: [],
    };
  });
}

/** Load that switches on by error of a sensor. */
function sensors(plan: LoomPlan): SheetTable[] {
  const list = plan.sensorGrounds;
  if (list.length === 0) return [];
  const names = [...new Set(list.flatMap(({ loads }) => loads.slice(0, 20).map(({ circuit }) => circuit)))].sort(
    byName,
  );
  const most = (of: (typeof list)[number]): number =>
    of.states.reduce((worst, { offsetMv }) => (Math.abs(offsetMv) > Math.abs(worst) ? offsetMv : worst), 0);
  const row = (load: string, value: (of: (typeof list)[number]) => number | null): SheetRow => ({
    load,
    ...Object.fromEntries(list.map((of) => [`${of.circuit} mV`, value(of)])),
  });
  return [
    {
      title: 'Load that switches on by error of a sensor',
      file: 'ground-sensors',
      note: 'Each load alone, by its largest current. The last line is the most that the sensor is off in any state.',
      columns: [
        { key: 'load', head: 'Load', kind: 'text', share: 22 },
        ...list.map(({ circuit }) => ({
          key: `${circuit} mV`,
          head: circuit,
          kind: 'number' as const,
          unit: 'mV',
          decimals: 2,
          share: 12,
        })),
      ],
      rows: names.map((name) =>
        row(name, ({ loads }) => loads.find(({ circuit }) => circuit === name)?.shiftMv ?? null),
      ),
      foot: [row('Most in a state', most)],
    },
  ];
}

function losses(plan: LoomPlan): SheetTable {
  return {
    title: 'If one is lost',
    file: 'ground-losses',
    note: 'One at a time, all else as planned. Volts of what is cut off are those to which its own loads lift it.',
    columns: [
      { key: 'lost', head: 'Lost', kind: 'text', share: 18 },
      { key: 'cut', head: 'Without a way back', kind: 'text', share: 32 },
      { key: 'islandV', head: 'Stands at', kind: 'number', unit: 'V', decimals: 1, share: 8 },
      { key: 'moved', head: 'Moves most', kind: 'text', under: 'movedState', underHead: 'In state', share: 16 },
      { key: 'shiftMv', head: 'By', kind: 'number', unit: 'mV', decimals: 0, share: 8 },
      { key: 'over', head: 'Carries too much', kind: 'text', share: 26 },
    ],
    rows: plan.losses.map(lossRow),
    foot: [],
  };
}

function lossRow({ lost, cutCircuits, states }: PlannedLoss): SheetRow {
  const islandV = states.reduce<number | null>(
    (most, { islandV: volts }) => (volts !== null && Math.abs(volts) > Math.abs(most ?? 0) ? volts : most),
    null,
  );
  const moved = states.reduce<{ node: string; shiftMv: number; state: string } | null>((most, { state, shifts }) => {
    const [first] = shifts;
    return first !== undefined && Math.abs(first.shiftMv) > Math.abs(most?.shiftMv ?? 0) ? { ...first, state } : most;
  }, null);
  const over = new Map<string, { text: string; currentA: number }>();
  for (const { state, overloads } of states) {
    for (const { name, currentA, bearsA } of overloads) {
      if ((over.get(name)?.currentA ?? 0) >= currentA) continue;
      const text = `${name}: ${amps(currentA)} A of ${amps(bearsA)} A, ${state}`;
      over.set(name, { text, currentA });
    }
  }
  const starved = [...new Set(states.flatMap((state) => state.starved))].map((name) => `${name}: not fed`);
  return {
    lost,
    cut: withoutCoils(cutCircuits).join(', '),
    islandV,
    moved: moved?.node ?? '',
    movedState: moved?.state ?? '',
    shiftMv: moved?.shiftMv ?? null,
    over: [...[...over.values()].map(({ text }) => text), ...starved].join('; '),
  };
}

function amps(value: number): string {
  return String(Number(value.toPrecision(3)));
}

/** A state's cells have its name and their unit as a key. */
function stateKey(name: PlannedState['name']): string {
  return `${name} mV`;
}
