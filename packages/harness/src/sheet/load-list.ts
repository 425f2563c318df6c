import type { LoomPlan, PlannedState } from '../loom/plan-type.js';
import type { Sheet, SheetRow, SheetTable } from './type.js';
import { byName } from './words.js';

/** Most states side by side on one sheet. */
const ABREAST = 9;

/** What runs in which state, and what that asks of each battery. */
export function loadList(plan: LoomPlan): Sheet {
  const states = plan.states.filter(({ loads }) => loads.length > 0);
  const quiet = plan.states.filter(({ loads }) => loads.length === 0).map(({ name }) => name);
  const blocks = Array.from({ length: Math.ceil(states.length / ABREAST) }, (_, i) =>
    states.slice(i * ABREAST, (i + 1) * ABREAST),
  );
  return {
    key: 'loads',
    title: 'Load list by state',
    lead: `Amperes at each load, as solved with all that runs beside it.${quiet.length === 0 ? '' : ` Nothing runs in: ${quiet.join(', ')}.`}`,
    landscape: states.length > 5,
    tables: blocks.map((block, i) => table(plan, block, blocks.length === 1 ? '' : `, ${i + 1} of ${blocks.length}`)),
    cautions: ['local-code', 'battery'],
  };
}

function table(plan: LoomPlan, states: readonly PlannedState[], part: string): SheetTable {
  const circuits = [...new Set(states.flatMap(({ loads }) => loads.map(({ circuit }) => circuit)))].sort(byName);
  const batteries = [...new Set(states.flatMap((state) => state.batteries.map(({ name }) => name)))].sort(byName);
  const row = (name: string, cell: (state: PlannedState) => number | null): SheetRow => ({
    load: name,
    ...Object.fromEntries(states.map((state) => [key(state), cell(state)])),
  });
  const amps = new Map(
    states.map(({ name, loads }) => [name, new Map(loads.map(({ circuit, currentA }) => [circuit, currentA]))]),
  );
  const leftOut = (why: string, of: (state: PlannedState) => readonly string[]): string[] => {
    const list = states.flatMap((state) => of(state).map((circuit) => `${circuit} in ${state.name}`));
    return list.length === 0 ? [] : [`${why}, and not counted: ${list.join(', ')}.`];
  };
  const notes = [
    ...leftOut('Cannot be fed', ({ starved }) => starved),
    ...leftOut('Without a stable operating point', ({ unsettled }) => unsettled),
  ];
  return {
    title: `Amperes${part}`,
    file: part === '' ? 'load-list' : `load-list${part.replace(/\D+/g, '-').replace(/-$/, '')}`,
    note: notes.length === 0 ? 'Sums are of unrounded figures.' : notes.join(' '),
    columns: [
      { key: 'load', head: 'Load', kind: 'text', share: 22 },
      ...states.map((state) => ({
        key: key(state),
        head: state.name,
        kind: 'number' as const,
        unit: 'A',
        decimals: 2,
        round: 'up' as const,
        share: 9,
      })),
    ],
    rows: circuits.map((circuit) => row(circuit, ({ name }) => amps.get(name)?.get(circuit) ?? null)),
    foot: [
      row('All loads', (state) => state.loads.reduce((sum, { currentA }) => sum + currentA, 0)),
      ...batteries.map((battery) =>
        row(`From ${battery}`, (state) => state.batteries.find(({ name }) => name === battery)?.currentA ?? null),
      ),
    ],
  };
}

/** A state's cells have its name and their unit as a key. */
function key(state: PlannedState): string {
  return `${state.name} A`;
}
