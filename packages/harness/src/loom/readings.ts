import type { Settled } from './settled.js';
import type { ExpectedReading, LoomPlan, PathElement } from './plan-type.js';

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
 * What a meter should read on a plan as built: volts across each load in each of its states; millivolts over each
 * fuse, contact and joint in the state of most current; ohms of each path with its load out, and with it in where its
 * resistance is known.
 */
export function readingsOf({ drafts }: Settled, plan: LoomPlan): readonly ExpectedReading[] {
  const list: ExpectedReading[] = [];
  for (const state of plan.states) {
    for (const { circuit, loadV, currentA } of state.loads) {
      list.push({
        name: `${circuit}: volts, ${state.name}`,
        kind: 'volts',
        state: state.name,
        circuit,
        probes: [`${circuit} +`, `${circuit} −`],
        value: loadV,
        because: null,
        currentA,
      });
    }
  }
  const states = new Map(plan.states.map((state) => [state.name, state]));
  plan.circuits.forEach((circuit, i) => {
    const draft = drafts[i];
    if (draft === undefined || circuit.nodes === null || circuit.kind === 'coil') return;
    const most = busiest(plan, circuit.name);
    const currentA = most === null ? 0 : Math.abs(states.get(most)?.currents[circuit.name] ?? 0);
    for (const { name, kind, resistanceOhm } of circuit.path) {
      if (!METERED.has(kind) || most === null) continue;
      list.push({
        name: `${circuit.name}: millivolts over ${name}`,
        kind: 'millivolts',
        state: most,
        circuit: circuit.name,
        probes: [`before ${name}`, `behind ${name}`],
        value: currentA * resistanceOhm * 1000,
        because: null,
        currentA,
      });
    }
    if (circuit.kind !== 'load' || circuit.path.length === 0) return;
    const { load } = draft;
    const cold = circuit.path.reduce<number | null>(
      (sum, one) => (sum === null || one.coldOhm === null ? null : sum + one.coldOhm),
      0,
    );
    const head = { kind: 'ohms', state: null, circuit: circuit.name, currentA: 0 } as const;
    list.push({
      ...head,
      name: `${circuit.name}: ohms, load out`,
      probes: [`${circuit.name} + plug`, `${circuit.name} − plug`],
      value: null,
      because: 'open: more than the meter shows. Less means a short or a forgotten way',
    });
    const known = load?.kind === 'resistance' && cold !== null;
    list.push({
      ...head,
      name: `${circuit.name}: ohms, load in`,
      probes: ['behind its fuse or contact, closed', 'its way back'],
      value: known ? load.resistanceOhm + cold : null,
      because: known
        ? null
        : load?.kind === 'motor'
          ? 'a winding at rest: about its own resistance, which changes as it is turned'
          : load?.kind === 'resistance'
            ? 'the cold resistance of its fuse is not known'
            : 'the file gives its current, not its resistance',
    });
  });
  for (const way of plan.ways) {
    if (way.kind !== 'body' && way.kind !== 'joint') continue;
    const most = busiest(plan, way.name);
    if (most === null) continue;
    // The probes go so that the reading is above 0: where it runs the other way they change places.
    const flowA = states.get(most)?.currents[way.name] ?? 0;
    const currentA = Math.abs(flowA);
    list.push({
      name: `${way.name}: millivolts over ${way.kind === 'joint' ? 'its joint' : 'joint and body'}`,
      kind: 'millivolts',
      state: most,
      circuit: way.name,
      probes: flowA < 0 ? [way.to, way.from] : [way.from, way.to],
      value: currentA * way.resistanceOhm * 1000,
      because: null,
      currentA,
    });
  }
  return list;
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
