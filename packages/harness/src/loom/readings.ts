import { type Draft, node } from './draft.js';
import type { SolvedState } from './network.js';
import type { Settled } from './settled.js';
import { coldSpreadOf, LOAD_SPREAD, type Spread, spreadOfElement, spreadOfWay } from './spread.js';
import type { ExpectedReading, LoomPlan, PathElement, PlannedCircuit, PlannedState } from './plan-type.js';

const METERED = new Set<PathElement['kind']>([
  'fuse',
  'relay',
  'switch',
  'channel',
  'terminal',
  'connector',
  'joint',
  'body',
]);

/**
 * What a meter should read on a plan as built, from the least to the most that a healthy one may show: volts at the
 * posts and across each load in each of its states; millivolts over each fuse, contact and joint in the state of most
 * current, and of each ground point; amperes in the place of each fuse; ohms of each fuse, of each path with its load
 * out, and with it in where its resistance is known.
 */
export function readingsOf(settled: Settled, plan: LoomPlan): readonly ExpectedReading[] {
  const most = new Map<string, string>();
  const spreads = spreadsOf(plan);
  const edges = edgesOf(settled, plan, spreads);
  const stateOf = new Map(plan.states.map((state) => [state.name, state]));
  const currentA = (circuit: string, state: string): number => stateOf.get(state)?.currents[circuit] ?? 0;
  for (const name of [...plan.circuits, ...plan.ways].map((one) => one.name)) {
    const state = busiest(plan, name);
    if (state !== null) most.set(name, state);
  }
  return [
    ...postsOf(plan),
    ...voltsOf(settled, plan, edges),
    ...plan.circuits.flatMap((circuit, i) => [
      ...millivoltsOf(circuit, most.get(circuit.name), currentA, spreads),
      ...ohmsOf(circuit, settled.drafts[i], spreads),
    ]),
    ...waysOf(plan, most, currentA),
    ...groundsOf(settled, plan, edges),
    ...fusesOf(plan),
  ];
}

/** Current in A of a circuit or way, by its name, in a state. */
type CurrentIn = (name: string, state: string) => number;

/** All states with every part at its least, or at its most, and the resistance of each path then. */
interface Edge {
  readonly states: readonly SolvedState[];
  readonly pathOhm: readonly number[];
}

/** States with every part at its least and at its most. */
function edgesOf({ network, drafts, ohms, states }: Settled, plan: LoomPlan, { built }: Spreads): readonly Edge[] {
  const { ways, from, wayOf } = network.wiring;
  return (['leastOhm', 'mostOhm'] as const).map((edge) => {
    const paths = plan.circuits.map(({ path }) => path.map((one) => [one.side, built(one)[edge]] as const));
    const sum = (i: number, side: 'out' | 'back'): number =>
      (paths[i] ?? []).reduce((all, [where, ohm]) => (where === side ? all + ohm : all), 0);
    const metal = network.metal(ohms.map((_, i) => ({ outOhm: sum(i, 'out'), backOhm: sum(i, 'back') })));
    const perOhm = metal.perOhm.slice();
    for (let k = 0; k < from.length; k++) {
      const way = ways[wayOf[k] as number];
      if (way === undefined || way.ohm === 0) continue;
      const spread = spreadOfWay({ kind: way.kind, resistanceOhm: way.ohm });
      perOhm[k] = ((perOhm[k] as number) * way.ohm) / spread[edge];
    }
    return {
      states: states.map((state) => network.solve(state.name, drafts, { ...metal, perOhm }, state)),
      pathOhm: ohms.map((_, i) => sum(i, 'out') + sum(i, 'back')),
    };
  });
}

/** Spread of any element of a plan: as built, and on a dead circuit. */
export interface Spreads {
  readonly built: (one: PathElement) => Spread;
  readonly cold: (one: PathElement) => Spread;
}

/** Finds the wires of a plan once, for all its elements. */
export function spreadsOf({ wires }: Pick<LoomPlan, 'wires'>): Spreads {
  const byName = new Map(wires.map((wire) => [wire.name, wire]));
  const wireOf = ({ wire }: PathElement) => (wire === null ? null : (byName.get(wire) ?? null));
  return {
    built: (one) => spreadOfElement(one, wireOf(one)),
    cold: (one) => coldSpreadOf(one, wireOf(one)),
  };
}

function postsOf(plan: LoomPlan): ExpectedReading[] {
  return plan.states.flatMap(({ name: state, batteries }) =>
    batteries.map(({ name, supplyV, currentA }) => ({
      name: `battery ${name}: volts at its posts, ${state}`,
      kind: 'posts' as const,
      state,
      circuit: name,
      part: null,
      probes: [node.post(name), node.negative(name)] as const,
      value: supplyV,
      lowValue: null,
      highValue: null,
      because: null,
      currentA,
    })),
  );
}

function voltsOf(settled: Settled, plan: LoomPlan, edges: readonly Edge[]): ExpectedReading[] {
  const { drafts, network } = settled;
  const number = new Map(drafts.map(({ name }, i) => [name, i]));
  return plan.states.flatMap((state, s) =>
    state.loads.map(({ circuit, loadV, currentA }) => {
      const i = number.get(circuit) ?? -1;
      const draft = drafts[i] as Draft;
      const supplyV = state.batteries.find(({ name }) => name === draft.battery)?.supplyV ?? loadV;
      const lost = edges.map(({ states, pathOhm }) => {
        const solved = states[s] as SolvedState;
        return supplyV - network.sourceV(draft, solved) + (solved.currents[i] ?? 0) * (pathOhm[i] ?? 0);
      });
      return {
        name: `${circuit}: volts, ${state.name}`,
        kind: 'volts' as const,
        state: state.name,
        circuit,
        part: null,
        probes: [`${circuit} +`, `${circuit} −`] as const,
        value: loadV,
        lowValue: Math.min(loadV, supplyV - (lost[1] ?? 0) * (1 + LOAD_SPREAD)),
        highValue: Math.max(loadV, supplyV - (lost[0] ?? 0) * (1 - LOAD_SPREAD)),
        because: null,
        currentA,
      };
    }),
  );
}

function millivoltsOf(
  circuit: PlannedCircuit,
  state: string | undefined,
  currentIn: CurrentIn,
  { built }: Spreads,
): ExpectedReading[] {
  if (circuit.nodes === null || circuit.kind === 'coil' || state === undefined) return [];
  const currentA = Math.abs(currentIn(circuit.name, state));
  return circuit.path
    .filter(({ kind }) => METERED.has(kind))
    .map((one) => ({
      name: `${circuit.name}: millivolts over ${one.name}`,
      kind: 'millivolts' as const,
      state,
      circuit: circuit.name,
      part: one.name,
      probes: [`before ${one.name}`, `behind ${one.name}`] as const,
      ...millivolts(currentA, one.resistanceOhm, built(one)),
      because: null,
      currentA,
    }));
}

function millivolts(currentA: number, ohm: number, { leastOhm, mostOhm }: Spread) {
  return {
    value: currentA * ohm * 1000,
    lowValue: currentA * (1 - LOAD_SPREAD) * leastOhm * 1000,
    highValue: currentA * (1 + LOAD_SPREAD) * mostOhm * 1000,
  };
}

/** Dead: the path out, the path back, the load out and in. */
function ohmsOf(circuit: PlannedCircuit, draft: Draft | undefined, spreads: Spreads): ExpectedReading[] {
  const { kind, path, nodes, name } = circuit;
  if (draft === undefined || nodes === null || path.length === 0 || kind === 'coil') return [];
  const head = { kind: 'ohms', state: null, circuit: name, part: null, currentA: 0 } as const;
  const way = (what: string, probes: readonly [string, string], parts: readonly PathElement[]): ExpectedReading => ({
    ...head,
    name: `${name}: ohms${what}`,
    probes,
    ...coldOf(parts, spreads),
  });
  if (kind !== 'load') return [way('', [nodes.from, nodes.load], path)];
  const out = path.filter(({ side }) => side === 'out');
  const back = path.filter(({ side }) => side === 'back');
  // An electronic output is no metal: the way begins behind it.
  const output = out.findIndex((one) => one.kind === 'channel');
  const begin = output < 0 ? nodes.from : `behind ${out[output]?.name ?? ''}`;
  const { load } = draft;
  const cold = coldOf(path, spreads);
  const known = load?.kind === 'resistance' && cold.value !== null;
  const because =
    load?.kind === 'motor'
      ? 'a winding at rest: about its own resistance, which changes as it is turned'
      : load?.kind === 'resistance'
        ? 'the cold resistance of its fuse is not known'
        : 'the file gives its current, not its resistance';
  const ohm = load?.kind === 'resistance' ? load.resistanceOhm : 0;
  return [
    way(', way out, contacts closed', [begin, nodes.load], out.slice(output + 1)),
    ...(nodes.back === null || nodes.to === null || back.length === 0
      ? []
      : [way(', way back', [nodes.back, nodes.to], back)]),
    {
      ...head,
      name: `${name}: ohms, load out`,
      probes: [`${name} + plug`, `${name} − plug`],
      value: null,
      lowValue: null,
      highValue: null,
      because: 'open: more than the meter shows. Less means a short or a forgotten way',
    },
    {
      ...head,
      name: `${name}: ohms, load in`,
      probes: ['behind its fuse or contact, closed', 'its way back'],
      value: known ? ohm + (cold.value ?? 0) : null,
      lowValue: known ? ohm * (1 - LOAD_SPREAD) + (cold.lowValue ?? 0) : null,
      highValue: known ? ohm * (1 + LOAD_SPREAD) + (cold.highValue ?? 0) : null,
      because: known ? null : because,
    },
  ];
}

/** Cold resistance of some parts in a row, in Ω. */
function coldOf(
  parts: readonly PathElement[],
  { cold }: Spreads,
): Pick<ExpectedReading, 'value' | 'lowValue' | 'highValue' | 'because'> {
  let value = 0;
  let lowValue = 0;
  let highValue = 0;
  for (const one of parts) {
    if (one.coldOhm === null) {
      return { value: null, lowValue: null, highValue: null, because: 'the cold resistance of its fuse is not known' };
    }
    const spread = cold(one);
    value += one.coldOhm;
    lowValue += spread.leastOhm;
    highValue += spread.mostOhm;
  }
  return { value, lowValue, highValue, because: null };
}

function waysOf(plan: LoomPlan, most: ReadonlyMap<string, string>, currentIn: CurrentIn): ExpectedReading[] {
  return plan.ways.flatMap((way): ExpectedReading[] => {
    const state = most.get(way.name);
    if ((way.kind !== 'body' && way.kind !== 'joint') || state === undefined) return [];
    // The probes go so that the reading is above 0: where it runs the other way they change places.
    const flowA = currentIn(way.name, state);
    const currentA = Math.abs(flowA);
    return [
      {
        name: `${way.name}: millivolts over ${way.kind === 'joint' ? 'its joint' : 'joint and body'}`,
        kind: 'millivolts',
        state,
        circuit: way.name,
        part: way.name,
        probes: flowA < 0 ? [way.to, way.from] : [way.from, way.to],
        ...millivolts(currentA, way.resistanceOhm, spreadOfWay(way)),
        because: null,
        currentA,
      },
    ];
  });
}

/** Each ground point against the negative post of the battery whose circuits return there, in its worst state. */
function groundsOf(settled: Settled, plan: LoomPlan, edges: readonly Edge[]): ExpectedReading[] {
  const batteries = new Map(settled.drafts.map(({ name, battery }) => [name, battery]));
  return plan.grounds.flatMap(({ name, circuits }): ExpectedReading[] => {
    const battery = circuits.flatMap((one) => batteries.get(one) ?? [])[0];
    if (battery === undefined) return [];
    const [a, b] = [node.ground(name), node.negative(battery)];
    const above = ({ nodes }: PlannedState): number => (nodes[a] ?? 0) - (nodes[b] ?? 0);
    const s = plan.states.reduce(
      (worst, state, i) => (Math.abs(above(state)) > Math.abs(above(plan.states[worst] ?? state)) ? i : worst),
      0,
    );
    const state = plan.states[s];
    if (state === undefined || above(state) === 0) return [];
    const probes = above(state) < 0 ? ([b, a] as const) : ([a, b] as const);
    const volts = Math.abs(above(state));
    const [least = volts, most = volts] = edges.map(({ states }) => {
      const one = states[s] as SolvedState;
      return settled.network.voltsAt(probes[0], one) - settled.network.voltsAt(probes[1], one);
    });
    const [low, high] = [least * (1 - LOAD_SPREAD), most * (1 + LOAD_SPREAD)];
    return [
      {
        name: `ground ${name}: millivolts above battery ${battery} −`,
        kind: 'ground',
        state: state.name,
        circuit: name,
        part: null,
        probes,
        value: volts * 1000,
        lowValue: Math.min(low, high, volts) * 1000,
        highValue: Math.max(low, high, volts) * 1000,
        because: null,
        currentA: state.batteries.find((one) => one.name === battery)?.currentA ?? 0,
      },
    ];
  });
}

/** Each fuse: ohms out of its holder, amperes in its place in the state that draws least in all. */
function fusesOf(plan: LoomPlan): ExpectedReading[] {
  const drawnA = ({ batteries }: PlannedState): number =>
    batteries.reduce((all, { currentA }) => all + Math.abs(currentA), 0);
  const calm = [...plan.states].sort((a, b) => drawnA(a) - drawnA(b) || (a.name < b.name ? -1 : 1));
  const circuits = new Map(plan.circuits.map((one) => [one.name, one]));
  return plan.fuses.flatMap(({ name, circuit, coldOhm, ratingA }): ExpectedReading[] => {
    if (circuit === null || ratingA === null) return [];
    const element = circuits.get(circuit)?.path.find(({ kind }) => kind === 'fuse');
    const part = element?.name ?? null;
    const state = calm.find((one) => (one.currents[circuit] ?? 0) !== 0);
    const currentA = Math.abs(state?.currents[circuit] ?? 0);
    const spread = element === undefined ? null : coldSpreadOf(element, null);
    return [
      {
        name: `fuse ${name}: ohms, out of its holder`.replace('fuse fuse', 'fuse'),
        kind: 'ohms',
        state: null,
        circuit,
        part,
        probes: ['one blade of the fuse', 'its other blade'],
        value: coldOhm,
        lowValue: coldOhm === null || spread === null ? null : spread.leastOhm,
        highValue: coldOhm === null || spread === null ? null : spread.mostOhm,
        because: coldOhm === null ? 'the cold resistance of the fuse is not known' : null,
        currentA: 0,
      },
      ...(state === undefined || part === null
        ? []
        : [
            {
              name: `fuse ${name}: amperes in its place, ${state.name}`.replace('fuse fuse', 'fuse'),
              kind: 'amps' as const,
              state: state.name,
              circuit,
              part,
              probes: [`before ${part}`, `behind ${part}`] as const,
              value: currentA,
              lowValue: currentA * (1 - LOAD_SPREAD),
              highValue: currentA * (1 + LOAD_SPREAD),
              because: null,
              currentA,
            },
          ]),
    ];
  });
}

/** The state in which most flows through a circuit, or null where nothing ever does. */
function busiest(plan: LoomPlan, circuit: string): string | null {
  let found: string | null = null;
  let mostA = 0;
  for (const { name, currents } of plan.states) {
    const currentA = Math.abs(currents[circuit] ?? 0);
    if (currentA <= mostA) continue;
    mostA = currentA;
    found = name;
  }
  return found;
}
