import { type Check, checkRelay, type ContactLoad, type ContactRatioTable, makeCheck, relayPickup } from 'loomwright';
import { budgetOf, familyOf, ratioOf } from '../schema/tables.js';
import { type Draft, node } from './draft.js';
import { lossesOf } from './ground-loss.js';
import type { LeftOut } from './network.js';
import { aliveOf } from './sneaks.js';
import { plannedSensorGrounds, sensorGrounds } from './sensor-ground.js';
import { MOST_ROUNDS, type Settled, wireOhm } from './settled.js';
import type {
  LoomPlan,
  PathElement,
  PlannedChannel,
  PlannedCircuit,
  PlannedFuse,
  PlannedGround,
  PlannedProtection,
  PlannedRelay,
  PlannedState,
  PlannedWay,
  PlannedWire,
} from './plan-type.js';
import type { Loom, LoomLoad } from './schema.js';
import type { Sized } from './size-draft.js';

/** The check on what a load loses, over all its states. */
export const LOST = 'voltage lost from battery to load and back';

/** The plan of a settled loom, but for readings and findings. */
export function planned(settled: Settled): LoomPlan {
  const { loom, drafts, sized, bundling, states, rounds, agreed } = settled;
  const fuses = fusesOf(settled);
  const stateList = states.map((_, i) => stateOf(settled, i));
  const loads = stateList.map((state) => new Map(state.loads.map((load) => [load.circuit, load])));
  const circuits = drafts.map((draft, i) => circuitOf(settled, draft, i, stateList, loads));
  const wires = wiresOf(settled);
  const sensors = sensorGrounds(settled);
  return {
    vehicle: { name: loom.vehicle.name, note: loom.vehicle.note ?? null },
    loom,
    circuits,
    wires,
    bundles: bundling.planned(
      sized,
      drafts.map((draft) => draft.wires.map(({ name }) => name)),
    ),
    fuses,
    channels: channelsOf(settled),
    relays: relaysOf(settled),
    grounds: groundsOf(settled),
    ways: plannedWays(settled),
    states: stateList,
    losses: lossesOf(settled, sensors),
    sensorGrounds: plannedSensorGrounds(settled, sensors),
    ...aliveOf(settled),
    readings: [],
    findings: [],
    settled: { rounds, mostRounds: MOST_ROUNDS, agreed },
    notJudged: [
      'The share of current between batteries and an alternator: volts at the posts, or at rest, are given by state.',
      'What flows over a closed isolator when the ground of a battery is lost; two grounds lost at once; what happens while one comes loose.',
      'Electronics that feed their supply from an input, and diodes inside them: a way back through those is not found.',
      'A charging current is added to the current of the straps that it may pass, whichever way it runs; it is not in the volts of a state.',
      'The current of a relay coil in the fuse before its contact (0.1 to 0.3 A) is left out of that fuse.',
      'The heat of a wire by its duty: it is judged by its whole current, for good.',
      ...(loom.rules.bears === undefined
        ? [
            'What an overload or a short does to the insulation until a fuse opens: the rules name no temperature that it bears for a while (bears).',
          ]
        : []),
      'Volts at the peak or at the first current of a load: fuses and channels are judged by them, volts by the running current.',
      'The heat around a switch: its rating is taken as the file gives it.',
      'Neighbours of a terminal in its connector: each contact is judged as if it alone carried current.',
      'Wires of sensors and buses: their size is mechanical or given; their signals are not judged here.',
    ],
  };
}

function wiresOf({ loom, drafts, sized, sizer }: Settled): readonly PlannedWire[] {
  const list = drafts.flatMap((draft, i) => {
    const { size, decidedBy, possible } = sized[i] as Sized;
    const chosen = sizer.stock[size];
    const bare = draft.protection.kind === 'none' && draft.protection.dangerous;
    return draft.wires.map((wire) => ({ draft, wire, chosen, decidedBy, possible, bare }));
  });
  list.sort((a, b) => (a.wire.name < b.wire.name ? -1 : 1));
  return list.map(({ draft, wire, chosen, decidedBy, bare }, i) => ({
    number: i + 1,
    name: wire.name,
    circuit: draft.name,
    use: wire.use,
    from: wire.from,
    to: wire.to,
    route: wire.way.routes,
    places: wire.way.places,
    routeLengthM: wire.way.lengthM,
    lengthM: wire.lengthM,
    unfusedM: wire.unfused || (bare && wire.side === 'out') ? wire.lengthM : 0,
    size: chosen?.label ?? null,
    areaMm2: chosen?.areaMm2 ?? null,
    outerDiameterMm: chosen?.outerDiameterMm ?? null,
    colour: wire.colour ?? own(loom.rules.colours, wire.use) ?? 'any',
    label: `${i + 1} ${wire.name}`,
    decidedBy,
  }));
}

type Loads = readonly ReadonlyMap<string, PlannedState['loads'][number]>[];

function circuitOf(
  settled: Settled,
  draft: Draft,
  i: number,
  states: readonly PlannedState[],
  loads: Loads,
): PlannedCircuit {
  const { sizer, bundling } = settled;
  const sized = settled.sized[i] as Sized;
  const around = settled.around[i] as Settled['around'][number];
  const chosen = sizer.stock[sized.size];
  const { currentA, currentState } = mostCurrent(settled, draft, i);
  const way = bundling.placeOf(i);
  const { factor, route } = bundling.factorOf(i);
  const worst = worstDrop(settled, draft, i, states, loads);
  return {
    name: draft.name,
    kind: draft.kind,
    serves: draft.serves,
    nodes: draft.nodes,
    wires: draft.wires.map(({ name }) => name),
    path: draft.elements.map((one) => elementOf(settled, draft, sized, one)),
    size: chosen?.label ?? null,
    areaMm2: chosen?.areaMm2 ?? null,
    decidedBy: sized.decidedBy,
    because: sized.because,
    currentA,
    currentState,
    peakA: draft.peakA,
    inrushA: draft.inrushA,
    ambientTempC: way.ambientTempC,
    hottestPlace: way.hottest,
    bundleFactor: factor,
    bundleRoute: route,
    ampacityA: sized.ampacityA,
    conductorTempC: chosen === undefined ? null : sized.conductorTempC,
    sharedDropV: around.sharedDropV,
    ownDropV: worst.ownDropV,
    dropLimitV: draft.kind === 'sensor' || draft.kind === 'bus' ? null : draft.dropLimitV,
    worstState: worst.state,
    protection: protectionOf(draft),
    checks: [
      ...worst.checks,
      ...sized.checks.filter(({ name }) => draft.load === null || draft.nodes === null || !/^voltage lost/.test(name)),
    ],
  };
}

/** Largest current of a circuit, and the state in which it flows. */
function mostCurrent(settled: Settled, draft: Draft, i: number): { currentA: number; currentState: string | null } {
  let currentA = draft.nodes === null && draft.load?.kind === 'constant-current' ? draft.load.currentA : 0;
  let currentState: string | null = null;
  for (const state of settled.states) {
    const here = settled.bundling.currentIn(i, state);
    if (here > currentA || (here === currentA && here > 0 && currentState === null)) {
      currentA = here;
      currentState = state.name;
    }
  }
  return { currentA, currentState };
}

/** The state in which most is lost from battery to load and back, with the check on it. */
function worstDrop(
  settled: Settled,
  draft: Draft,
  i: number,
  states: readonly PlannedState[],
  loads: Loads,
): { state: string | null; ownDropV: number | null; checks: readonly Check[] } {
  const { outOhm, backOhm } = settled.ohms[i] as Settled['ohms'][number];
  if (draft.nodes === null) return { state: null, ownDropV: null, checks: [] };
  if (draft.kind !== 'load') {
    let most = 0;
    let state: string | null = null;
    for (const one of settled.states) {
      const currentA = Math.abs(one.currents[i] ?? 0);
      if (currentA <= most) continue;
      most = currentA;
      state = one.name;
    }
    return { state, ownDropV: most * (outOhm + backOhm), checks: [] };
  }
  let lost = -Infinity;
  let state: string | null = null;
  let ownDropV = 0;
  let leftOut: { readonly state: string; readonly because: string } | null = null;
  states.forEach((one, s) => {
    if (one.starved.includes(draft.name)) {
      leftOut ??= { state: one.name, because: `the path cannot feed the load in state ${one.name}` };
    } else if (one.unsettled.includes(draft.name)) {
      leftOut ??= { state: one.name, because: `the load has no stable operating point in state ${one.name}` };
    }
    const load = loads[s]?.get(draft.name);
    if (load === undefined) return;
    const drop = load.outDropV + load.backDropV;
    if (drop <= lost) return;
    lost = drop;
    state = one.name;
    ownDropV = (settled.states[s]?.currents[i] ?? 0) * (outOhm + backOhm);
  });
  const budget = draft.item === null ? null : budgetOf(draft.item.budget);
  const given = {
    name: LOST,
    limit: draft.dropLimitV,
    unit: 'V',
    sense: 'atMost',
    source: budget?.source ?? 'given-by-caller',
    sourceStatus: budget?.status ?? 'derived',
  } as const;
  if (leftOut !== null) {
    const { state: of, because } = leftOut as { readonly state: string; readonly because: string };
    return {
      state: of,
      ownDropV: null,
      checks: [makeCheck({ ...given, value: null, okWithoutNumber: false, because })],
    };
  }
  if (state === null) return { state, ownDropV: null, checks: [] };
  return { state, ownDropV, checks: [makeCheck({ ...given, value: lost })] };
}

function elementOf(settled: Settled, draft: Draft, sized: Sized, one: Draft['elements'][number]): PathElement {
  const { sizer } = settled;
  const { name, kind, side } = one;
  if (one.wire !== null) {
    const resistanceOhm = wireOhm(draft, one.wire, sizer, sized, sized.conductorTempC);
    const coldOhm = wireOhm(draft, one.wire, sizer, sized, 20);
    return { name, kind, side, resistanceOhm, coldOhm, wire: draft.wires[one.wire]?.name ?? null };
  }
  if (kind === 'fuse') {
    const family = draft.protection.kind === 'position' ? settled.loom.fuseBoxes[draft.protection.box]?.family : null;
    const row =
      sized.fuse === null || family === null || family === undefined
        ? undefined
        : familyOf(family).coldMilliohm.find(([ratingA]) => ratingA === sized.fuse?.ratingA);
    const coldOhm = row === undefined ? null : row[1] / 1000;
    return { name, kind, side, resistanceOhm: one.chosen ? sized.fuseOhm : one.ohm, coldOhm, wire: null };
  }
  return { name, kind, side, resistanceOhm: one.ohm, coldOhm: one.ohm, wire: null };
}

function protectionOf(draft: Draft): PlannedProtection {
  const { protection } = draft;
  switch (protection.kind) {
    case 'position':
      return { kind: 'fuse', fuse: `${protection.box} ${protection.position}` };
    case 'in-line':
      return { kind: 'fuse', fuse: protection.name };
    case 'channel':
      return { kind: 'channel', channel: `${protection.controller} ${protection.channel}` };
    case 'none':
      return { kind: 'none', because: protection.because };
  }
}

function fusesOf(settled: Settled): readonly PlannedFuse[] {
  const { loom, drafts } = settled;
  const spare = {
    ratingA: null,
    circuit: null,
    hotOhm: null,
    coldOhm: null,
    decidedBy: null,
    currentA: 0,
    farShortA: null,
    checks: [],
  };
  const list: PlannedFuse[] = [];
  const used = new Map<string, number>();
  drafts.forEach(({ protection }, i) => {
    if (protection.kind === 'position') used.set(`${protection.box} ${protection.position}`, i);
    else if (protection.kind === 'in-line') {
      const { fuse, name } = protection;
      list.push({ ...fuseOf(settled, i, familyOf(fuse.fuse).key), name, box: null, position: null, place: fuse.at });
    }
  });
  for (const box of Object.keys(loom.fuseBoxes).sort()) {
    const { positions, family, place } = loom.fuseBoxes[box] as Loom['fuseBoxes'][string];
    for (let position = 1; position <= positions; position++) {
      const name = `${box} ${position}`;
      const i = used.get(name);
      const one = i === undefined ? { ...spare, family } : fuseOf(settled, i, family);
      list.push({ ...one, name, box, position, place });
    }
  }
  return list.sort((a, b) =>
    (a.box ?? '') !== (b.box ?? '')
      ? (a.box ?? '') < (b.box ?? '')
        ? -1
        : 1
      : a.position !== null && b.position !== null
        ? a.position - b.position
        : a.name < b.name
          ? -1
          : 1,
  );
}

function fuseOf(settled: Settled, i: number, family: string): Omit<PlannedFuse, 'name' | 'box' | 'position' | 'place'> {
  const draft = settled.drafts[i] as Draft;
  const { fuse, farShortA, fuseOhm } = settled.sized[i] as Sized;
  const fixed = draft.elements.find(({ kind }) => kind === 'fuse');
  const given = fixed !== undefined && !fixed.chosen ? fixed.ohm : null;
  const cold = fuse === null ? undefined : familyOf(family).coldMilliohm.find(([ratingA]) => ratingA === fuse.ratingA);
  return {
    family,
    ratingA: fuse?.ratingA ?? null,
    circuit: draft.name,
    hotOhm: given ?? (fuse === null ? null : (fuse.hotOhm ?? (fuseOhm > 0 ? fuseOhm : null))),
    coldOhm: cold === undefined ? null : cold[1] / 1000,
    decidedBy: fuse?.decidedBy ?? null,
    currentA: mostCurrent(settled, draft, i).currentA,
    farShortA,
    checks: [...(fuse?.checks ?? []), ...peakChecks(draft, fuse?.ratingA ?? null, 'its fuse')],
  };
}

/** Whether what protects a load carries its peak, which lasts for seconds: at most its rating or setting. */
function peakChecks(draft: Draft, limitA: number | null, of: string): readonly Check[] {
  if (draft.peakA === null || limitA === null) return [];
  return [
    makeCheck({
      name: `peak current through ${of}`,
      value: draft.peakA,
      limit: limitA,
      unit: 'A',
      sense: 'atMost',
      source: 'common-practice',
      sourceStatus: 'common-practice',
    }),
  ];
}

function channelsOf(settled: Settled): readonly PlannedChannel[] {
  const { loom, drafts, sized } = settled;
  const used = new Map<string, number>();
  drafts.forEach((draft, i) => {
    if (draft.protection.kind === 'channel') used.set(`${draft.protection.controller} ${draft.protection.channel}`, i);
    else if (draft.kind === 'coil') {
      const item = loom.items[draft.serves];
      if (item?.kind === 'load' && item.relay !== undefined && 'controller' in item.relay.control) {
        used.set(`${item.relay.control.controller} ${item.relay.control.channel}`, i);
      }
    }
  });
  return Object.keys(loom.controllers)
    .sort()
    .flatMap((controller) => {
      const { channels } = loom.controllers[controller] as Loom['controllers'][string];
      return Object.keys(channels)
        .sort()
        .map((channel): PlannedChannel => {
          const { current, settings } = channels[channel] as (typeof channels)[string];
          const name = `${controller} ${channel}`;
          const i = used.get(name);
          if (i === undefined) {
            return {
              name,
              controller,
              channel,
              circuit: null,
              settingA: null,
              ratingA: current,
              currentA: 0,
              checks: [],
            };
          }
          const draft = drafts[i] as Draft;
          const one = sized[i] as Sized;
          const { currentA } = mostCurrent(settled, draft, i);
          const least = [...settings].sort((a, b) => a - b).find((settingA) => settingA >= currentA) ?? null;
          return {
            name,
            controller,
            channel,
            circuit: draft.name,
            settingA: draft.kind === 'coil' ? least : one.settingA,
            ratingA: current,
            currentA,
            checks:
              one.channel === null
                ? [
                    makeCheck({
                      name: 'continuous current',
                      value: currentA,
                      limit: current,
                      unit: 'A',
                      sense: 'atMost',
                      source: 'given-by-caller',
                      sourceStatus: 'derived',
                    }),
                  ]
                : [...one.channel.checks, ...peakChecks(draft, one.settingA, 'its channel')],
          };
        });
    });
}

function relaysOf(settled: Settled): readonly PlannedRelay[] {
  const { loom, drafts, states, network, ohms } = settled;
  const { rules } = loom;
  const numbers = new Map(drafts.map(({ name }, i) => [name, i]));
  return drafts.flatMap((draft, i): PlannedRelay[] => {
    const { item } = draft;
    if (item?.relay === undefined) return [];
    const { type, at, control } = item.relay;
    const relay = loom.relayTypes[type] as Loom['relayTypes'][string];
    const coil = numbers.get(`coil ${draft.name}`) ?? -1;
    const { currentA } = mostCurrent(settled, draft, i);
    const lowest = states
      .filter(({ name }) => draft.on.includes(name))
      .map((state) => network.sourceV(drafts[coil] as Draft, state))
      .sort((a, b) => a - b)[0];
    const rule = ratioOf(rules.ratio);
    const contact = checkRelay({
      load: contactLoad(item, rule),
      currentA: Math.max(1e-6, currentA),
      supplyV: Math.max(...(settled.around[i]?.sourcesV ?? [1]), 1),
      ratingRule: rule,
      ratedA: relay.current,
      ratedV: relay.ratedVoltage,
      ambientTempC: loom.places[at]?.ambient ?? 20,
      fullToTempC: relay.fullTo,
      noneAtTempC: Math.max(relay.noneAt, relay.fullTo + 1),
      ...(relay.make === undefined ? {} : { makeA: relay.make }),
      ...(item.inrush === undefined ? {} : { inrushA: item.inrush }),
    });
    const path = ohms[coil] as Settled['ohms'][number];
    const pick =
      lowest === undefined || lowest <= rules.coilDriverDrop
        ? null
        : relayPickup({
            supplyV: lowest,
            driverDropV: rules.coilDriverDrop,
            wireResistanceOhm: path.outOhm + path.backOhm,
            coilResistanceOhm: relay.coil,
            ratedPickUpV: relay.pickUp,
            ratedDropOutV: relay.dropOut,
            ratedTempC: relay.ratedAt,
            coilTempC: relay.coilTemperature,
          });
    return [
      {
        name: `relay of ${draft.name}`,
        type,
        place: at,
        circuit: draft.name,
        coilCircuit: `coil ${draft.name}`,
        control: 'switch' in control ? control.switch : `${control.controller} ${control.channel}`,
        coilV: pick?.coilV ?? null,
        pickUpV: pick?.pickUpV ?? null,
        checks: [...contact.checks, ...(pick?.checks ?? [])],
      },
    ];
  });
}

/** The kind of load in a table of ratios: where it has none of the kind, the nearest, or the one that asks most. */
export function contactLoad({ nature }: LoomLoad, rule: ContactRatioTable): ContactLoad {
  const kinds = rule.rows.map(([kind]) => kind);
  if (kinds.includes(nature)) return nature;
  if (nature === 'solenoid' && kinds.includes('inductive')) return 'inductive';
  return [...rule.rows].sort((a, b) => b[2] - a[2])[0]?.[0] ?? 'resistive';
}

function groundsOf({ loom, drafts, ohms }: Settled): readonly PlannedGround[] {
  const numbers = new Map(drafts.map(({ name }, i) => [name, i]));
  const returning = new Map<string, string[]>();
  for (const { nodes, name } of drafts) {
    const end = nodes === null ? null : (nodes.to ?? nodes.load);
    if (end === null) continue;
    const list = returning.get(end);
    if (list === undefined) returning.set(end, [name]);
    else list.push(name);
  }
  return Object.keys(loom.grounds)
    .sort()
    .map((name) => {
      const ground = loom.grounds[name] as Loom['grounds'][string];
      const at = node.ground(name);
      const path = ohms[numbers.get(`strap ${name}`) ?? -1];
      const strapOhm = path === undefined ? 0 : path.outOhm + path.backOhm;
      const by = ground.to === undefined ? 'root' : ground.body === undefined ? 'strap' : 'body';
      return {
        name,
        place: ground.place,
        to: ground.to ?? null,
        by,
        circuit: by === 'strap' ? `strap ${name}` : null,
        jointOhm: ground.joint,
        resistanceOhm: by === 'root' ? 0 : by === 'strap' ? strapOhm : ground.joint + (ground.body ?? 0),
        circuits: returning.get(at) ?? [],
      };
    });
}

/** Every way between points of the grounds, by name. */
function plannedWays({ network, drafts, ohms, sized }: Settled): readonly PlannedWay[] {
  const kinds = { negative: 'cable', strap: 'strap', ground: 'wire' } as const;
  const circuits = drafts.flatMap(({ name, kind, nodes }, i): PlannedWay[] => {
    if (kind !== 'strap' || nodes === null) return [];
    const { outOhm, backOhm } = ohms[i] as Settled['ohms'][number];
    return [
      {
        name,
        from: nodes.from,
        to: nodes.load,
        kind: kinds[name.slice(0, name.indexOf(' ')) as keyof typeof kinds],
        circuit: name,
        resistanceOhm: outOhm + backOhm,
        bearsA: sized[i]?.ampacityA ?? null,
      },
    ];
  });
  const ways = network.wiring.ways.map(({ name, from, to, kind, ohm, bearsA }): PlannedWay => {
    return { name, from, to, kind, circuit: null, resistanceOhm: ohm, bearsA };
  });
  return [...circuits, ...ways].sort((a, b) => (a.name < b.name ? -1 : 1));
}

function stateOf(settled: Settled, s: number): PlannedState {
  const { drafts, ohms, network } = settled;
  const state = settled.states[s] as Settled['states'][number];
  const nodes: [string, number][] = network.nodes.map((name, i) => [name, state.volts[i] as number]);
  const currents: [string, number][] = [];
  const loads: PlannedState['loads'][number][] = [];
  drafts.forEach((draft, i) => {
    const ends = draft.nodes;
    if (ends === null) return;
    const currentA = state.currents[i] ?? 0;
    if (currentA !== 0) currents.push([draft.name, currentA]);
    if (draft.load === null || ends.back === null || ends.to === null || currentA === 0) return;
    const { outOhm, backOhm } = ohms[i] as Settled['ohms'][number];
    const plusV = network.voltsAt(ends.from, state) - currentA * outOhm;
    const minusV = network.voltsAt(ends.to, state) + currentA * backOhm;
    if (ends.load !== ends.from) nodes.push([ends.load, plusV]);
    if (ends.back !== ends.to) nodes.push([ends.back, minusV]);
    if (draft.kind !== 'load' || draft.battery === null) return;
    loads.push({
      circuit: draft.name,
      loadV: plusV - minusV,
      currentA,
      outDropV: network.voltsAt(node.post(draft.battery), state) - plusV,
      backDropV: minusV - network.voltsAt(node.negative(draft.battery), state),
    });
  });
  network.wiring.ways.forEach(({ name }, w) => {
    const currentA = state.ways[w] as number;
    if (currentA !== 0) currents.push([name, currentA]);
  });
  const leftOut = (why: LeftOut): string[] =>
    [...state.leftOut].flatMap(([i, one]) => (one === why ? [drafts[i]?.name ?? ''] : [])).sort();
  return {
    name: state.name,
    batteries: [...state.batteries].map(([name, solved]) => ({ name, ...solved })),
    nodes: byName(nodes),
    currents: byName(currents),
    loads,
    starved: leftOut('starved'),
    unsettled: leftOut('unsettled'),
  };
}

/** A record with its names in order, and none of them anything but its own. */
function byName<T>(entries: [string, T][]): Readonly<Record<string, T>> {
  return Object.fromEntries(entries.sort(([a], [b]) => (a < b ? -1 : 1)));
}

function own(map: Readonly<Record<string, string>> | undefined, name: string): string | undefined {
  return map !== undefined && Object.hasOwn(map, name) ? map[name] : undefined;
}
