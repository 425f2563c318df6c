// An auditor of plans. It shares no code with the planner: it reads the plan's lists and the file that it was planned
// from, types its tables again, and does every sum in plain arithmetic. What one size bears alone it takes from the
// library's own `ampacity`, which is proved in its own tests.
import { ampacity } from 'loomwright';
import type { LoomPlan, PlannedCircuit } from '@loomwright/harness';

/** Something that the plan says and the auditor does not find, or finds and the plan does not say. */
export type Complaint = string;

/** Largest resistance at 20 °C in mΩ/m, conductor and outer diameter in mm, by area in mm²: typed again. */
const WIRE: Readonly<Record<number, readonly [milliohmPerM: number, conductorMm: number, outerMm: number]>> = {
  0.5: [37.1, 1.1, 1.6],
  0.75: [24.7, 1.3, 1.9],
  1: [18.5, 1.5, 2.1],
  1.5: [12.7, 1.8, 2.4],
  2.5: [7.6, 2.2, 3],
  4: [4.71, 2.8, 3.7],
  6: [3.14, 3.4, 4.3],
  10: [1.82, 4.5, 6],
  16: [1.16, 5.8, 7.2],
  25: [0.743, 7.2, 8.7],
  35: [0.527, 8.5, 10.4],
  50: [0.368, 10.5, 12.2],
  70: [0.259, 12.5, 14.4],
  95: [0.196, 14.8, 16.7],
  120: [0.153, 16.5, 19.7],
};

/** Volts that a class of circuit may lose, typed again. */
const BUDGET: Readonly<Record<string, number>> = {
  'critical-feed-3-percent': 0.36,
  'general-feed-10-percent': 1.2,
  'ac-43-13-1b-14-v-continuous': 0.5,
  'ac-43-13-1b-14-v-intermittent': 1,
  'starter-0-8-v': 0.8,
  'charging-0-7-v': 0.7,
  'lamp-0-5-v': 0.5,
};

/** Share of a blade fuse's rating left by its temperature, typed again. */
const RERATING: readonly (readonly [tempC: number, share: number])[] = [
  [20, 1],
  [65, 0.85],
  [85, 0.75],
  [110, 0.625],
  [125, 0.55],
];

/** Aviation bundle curves at 20, 40, 60, 80 and 100 % in use, typed again. */
const CURVES: Readonly<Record<number, readonly (number | null)[]>> = {
  1: [1, 1, 1, 1, 1],
  2: [0.9675, 0.92, 0.91, 0.87, 0.825],
  3: [0.935, 0.855, 0.815, 0.77, 0.725],
  4: [0.9075, 0.805, 0.75, 0.705, 0.66],
  5: [0.875, 0.76, 0.695, 0.65, 0.61],
  6: [0.85, 0.725, 0.655, 0.605, 0.5725],
  7: [0.82, 0.695, 0.625, 0.57, 0.54],
  8: [0.795, 0.6675, 0.595, 0.5425, 0.5125],
  9: [0.775, 0.645, 0.575, 0.52, 0.485],
  10: [0.755, 0.6225, 0.55, 0.5, 0.465],
  11: [0.735, 0.6, 0.53, 0.48, 0.445],
  12: [0.715, 0.585, 0.515, 0.465, 0.43],
  13: [0.6975, 0.5675, 0.495, 0.4475, 0.415],
  14: [0.685, 0.5525, 0.48, 0.435, 0.3975],
  15: [0.67, 0.54, 0.465, 0.42, 0.385],
  16: [0.6575, 0.5275, 0.455, 0.41, 0.37],
  17: [0.645, 0.515, 0.4425, 0.3975, 0.36],
  18: [0.635, 0.505, 0.4325, 0.3875, 0.35],
  19: [0.625, 0.495, 0.4225, 0.38, 0.3425],
  20: [0.615, 0.48, null, null, null],
  35: [0.52, null, null, null, null],
};

/** Longest opening times of fuses in s by per cent of their rating, typed again. */
const LONGEST: Readonly<Record<string, readonly (readonly [percent: number, timeS: number])[]>> = {
  'blade-fuse': [
    [135, 600],
    [160, 50],
    [200, 5],
    [350, 0.5],
    [600, 0.1],
  ],
  'bolt-in-fuse': [
    [135, 1800],
    [200, 20],
    [350, 5],
    [600, 1],
  ],
};

/** What 1 mm² of copper bears from the class to a limit in at most 5 s, in A²s: the constants of IEC 60949. */
const withstand = (fromC: number, toC: number): number => 226 ** 2 * Math.log((234.5 + toC) / (234.5 + fromC));

/** How long copper stays below a limit while a current flows, all else left to its balance: small steps of time. */
function staysS(
  areaMm2: number,
  ampacityA: number,
  currentA: number,
  airC: number,
  fromC: number,
  toC: number,
): number {
  // Heat kept by 1 mm² for a rise of 1 K at 0 °C, over its resistance there: what `withstand` is the integral of.
  const held = 226 ** 2 * areaMm2 ** 2;
  const lossA2PerK = (ampacityA ** 2 * (234.5 + fromC)) / (fromC - airC);
  if (currentA ** 2 * (234.5 + toC) <= lossA2PerK * (toC - airC)) return Infinity;
  let tempC = fromC;
  let timeS = 0;
  while (tempC < toC && timeS < 4000) {
    const stepS = Math.max(1e-3, timeS / 2000);
    tempC += ((currentA ** 2 * (234.5 + tempC) - lossA2PerK * (tempC - airC)) / held) * stepS;
    timeS += stepS;
  }
  return timeS;
}

const hot = (tempC: number): number => (234.5 + tempC) / 254.5;
const near = (a: number, b: number, within: number): boolean =>
  Math.abs(a - b) <= within * Math.max(Math.abs(a), Math.abs(b), 1e-9);

/** Everything that does not add up in a plan of ISO 19642 wire judged by the heat balance and the aviation curves. */
export function audit(plan: LoomPlan): readonly Complaint[] {
  const { rules } = plan.loom;
  if (rules.wire !== 'iso-19642' || rules.bundle !== 'mil-w-5088' || rules.heating !== 'heat-balance') {
    throw new Error('this auditor knows other rules');
  }
  return [
    ...lengths(plan),
    ...resistances(plan),
    ...kirchhoff(plan),
    ...(isTree(plan) ? volts(plan) : []),
    ...drops(plan),
    ...bundles(plan),
    ...heat(plan),
    ...fuses(plan),
    ...mechanics(plan),
    ...unfused(plan),
    ...relays(plan),
    ...numbering(plan),
  ];
}

/** Lengths: shortest ways by trying every place in between, slack and ends added. */
function lengths({ loom, wires }: LoomPlan): Complaint[] {
  const places = Object.keys(loom.places);
  const far = new Map(places.map((a) => [a, new Map(places.map((b) => [b, a === b ? 0 : Infinity]))]));
  for (const { from, to, length } of Object.values(loom.routes)) {
    far.get(from)!.set(to, Math.min(length, far.get(from)!.get(to)!));
    far.get(to)!.set(from, Math.min(length, far.get(to)!.get(from)!));
  }
  for (const via of places)
    for (const a of places)
      for (const b of places) {
        const through = far.get(a)!.get(via)! + far.get(via)!.get(b)!;
        if (through < far.get(a)!.get(b)!) far.get(a)!.set(b, through);
      }
  return wires.flatMap((wire) => {
    const fixed = /^negative /.test(wire.circuit)
      ? loom.supply.batteries[wire.circuit.slice(9)]?.cable
      : /^strap /.test(wire.circuit)
        ? strapOf(loom, wire.circuit.slice(6))
        : /^link /.test(wire.circuit)
          ? loom.supply.links?.[wire.circuit.slice(5)]?.cable
          : undefined;
    if (fixed !== undefined)
      return wire.lengthM === fixed ? [] : [`${wire.name}: ${wire.lengthM} m, the file says ${fixed}`];
    const shortest = far.get(wire.from.place)!.get(wire.to.place)!;
    const along = wire.route.reduce((sum, route) => sum + loom.routes[route]!.length, 0);
    const cut = shortest * (1 + loom.rules.slack) + 2 * loom.rules.ends;
    const found: Complaint[] = [];
    if (!near(along, shortest, 1e-9))
      found.push(`${wire.name}: ${along} m along its routes, the shortest is ${shortest}`);
    if (!near(wire.lengthM, cut, 1e-9)) found.push(`${wire.name}: cut to ${wire.lengthM} m, should be ${cut}`);
    wire.route.forEach((route, i) => {
      const ends = [loom.routes[route]!.from, loom.routes[route]!.to].sort().join();
      if (ends !== [wire.places[i]!, wire.places[i + 1]!].sort().join()) found.push(`${wire.name}: jumps at ${route}`);
    });
    return found;
  });
}

/** Length of a strap by what follows `strap` in its name: a ground point, or one and the end of a further way. */
function strapOf({ grounds }: LoomPlan['loom'], name: string): number | undefined {
  const own = grounds[name]?.strap;
  if (own !== undefined) return own;
  const [ground = '', end = ''] = name.split(' to ');
  const bond = grounds[ground]?.bonds?.find((one) => ('to' in one ? one.to : `battery ${one.battery}`) === end);
  return bond !== undefined && 'strap' in bond ? bond.strap : undefined;
}

function resistances({ circuits, wires }: LoomPlan): Complaint[] {
  const by = new Map(wires.map((wire) => [wire.name, wire]));
  return circuits.flatMap((circuit) =>
    circuit.path.flatMap((one): Complaint[] => {
      if (one.wire === null) return [];
      const wire = by.get(one.wire)!;
      const cold = (wire.lengthM * WIRE[wire.areaMm2!]![0]) / 1000;
      const warm = cold * hot(circuit.conductorTempC!);
      if (!near(one.coldOhm!, cold, 1e-9)) return [`${one.name}: ${one.coldOhm} Ω cold, should be ${cold}`];
      return near(one.resistanceOhm, warm, 1e-9) ? [] : [`${one.name}: ${one.resistanceOhm} Ω, should be ${warm}`];
    }),
  );
}

const ohm = (circuit: PlannedCircuit): number => circuit.path.reduce((sum, one) => sum + one.resistanceOhm, 0);

/** Whether nothing closes a loop: then currents add up along ways, and `volts` can tell. */
function isTree({ loom }: LoomPlan): boolean {
  return loom.supply.links === undefined && Object.values(loom.grounds).every(({ bonds }) => bonds === undefined);
}

/**
 * Each state by the two laws of Kirchhoff, whatever the grounds look like: what flows into a point flows out of it, and
 * every piece between two points has the volts of its current. Which pieces there are is read from the file.
 */
function kirchhoff(plan: LoomPlan): Complaint[] {
  const { loom, circuits, states } = plan;
  const found: Complaint[] = [];
  const pieces: { name: string; from: string; to: string; ohm: number }[] = [];
  for (const circuit of circuits) {
    const { nodes, name } = circuit;
    if (nodes !== null && nodes.back === null)
      pieces.push({ name, from: nodes.from, to: nodes.load, ohm: ohm(circuit) });
  }
  const bodies = (name: string): number =>
    (loom.grounds[name]!.bonds ?? []).filter((bond) => 'body' in bond).length +
    (loom.grounds[name]!.body === undefined ? 0 : 1);
  const metal = (name: string): string => (bodies(name) > 1 ? `metal at ${name}` : `ground ${name}`);
  for (const [name, { to, body, joint, bonds = [] }] of Object.entries(loom.grounds)) {
    const split = bodies(name) > 1;
    const stud = `ground ${name}`;
    const inJoint = split ? 0 : joint;
    if (split) pieces.push({ name: stud, from: stud, to: metal(name), ohm: joint });
    if (to !== undefined && body !== undefined) {
      pieces.push({ name: split ? `body ${name}` : stud, from: metal(name), to: metal(to), ohm: body + inJoint });
    }
    for (const bond of bonds) {
      if ('body' in bond) {
        const end = metal(bond.to);
        pieces.push({ name: `body ${name} to ${bond.to}`, from: metal(name), to: end, ohm: bond.body + inJoint });
      } else if ('stray' in bond) {
        pieces.push({ name: `stray ${name} to ${bond.to}`, from: stud, to: `ground ${bond.to}`, ohm: bond.stray });
      }
    }
  }
  const root = Object.keys(loom.grounds).find((name) => loom.grounds[name]!.to === undefined);
  for (const state of states) {
    const into = new Map<string, number>();
    const flows = (from: string, to: string, currentA: number): void => {
      into.set(from, (into.get(from) ?? 0) - currentA);
      into.set(to, (into.get(to) ?? 0) + currentA);
    };
    for (const { name, from, to, ohm: resistance } of pieces) {
      const currentA = state.currents[name] ?? 0;
      flows(from, to, currentA);
      const dropV = state.nodes[from]! - state.nodes[to]!;
      if (Math.abs(dropV - currentA * resistance) > 1e-6) {
        found.push(`${state.name}: ${name} has ${dropV} V, its current makes ${currentA * resistance}`);
      }
    }
    for (const { nodes, name } of circuits) {
      if (nodes !== null && nodes.to !== null && nodes.back !== null) {
        flows(nodes.from, nodes.to, state.currents[name] ?? 0);
      }
    }
    for (const { name, currentA, supplyV } of state.batteries) {
      flows(`battery ${name} −`, `battery ${name} +`, currentA);
      const restV = loom.states[state.name]!.atRest?.[name];
      const postsV = state.nodes[`battery ${name} +`]! - state.nodes[`battery ${name} −`]!;
      const wanted =
        restV === undefined
          ? loom.states[state.name]!.volts[name]!
          : restV - currentA * loom.supply.batteries[name]!.resistance;
      if (!near(supplyV, wanted, 1e-9) || !near(postsV, wanted, 1e-9)) {
        found.push(`${state.name}: ${name} has ${supplyV} V at its posts, should have ${wanted}`);
      }
    }
    for (const [point, sumA] of into) {
      if (Math.abs(sumA) > 1e-6) found.push(`${state.name}: ${point} is ${sumA} A out of balance`);
    }
    if (state.nodes[`ground ${root ?? ''}`] !== 0) found.push(`${state.name}: the root is not at 0 V`);
    for (const { circuit, loadV, currentA } of state.loads) {
      const item = loom.items[circuit];
      const of = circuits.find(({ name }) => name === circuit)!;
      const sourceV = state.nodes[of.nodes!.from]! - state.nodes[of.nodes!.to!]!;
      if (!near(loadV, sourceV - currentA * ohm(of), 1e-7)) found.push(`${state.name}: ${circuit} has ${loadV} V`);
      if (item?.kind !== 'load') continue;
      const wanted = wantedA(item.load, loadV);
      if (!near(currentA, wanted, 1e-6)) found.push(`${state.name}: ${circuit} draws ${currentA} A, should ${wanted}`);
    }
  }
  return found;
}

type FileLoad = Extract<LoomPlan['loom']['items'][string], { kind: 'load' }>['load'];

/** What a load draws at its volts; a motor of constant torque its rated current. */
function wantedA(load: FileLoad, loadV: number): number {
  if (load.kind === 'constant current') return load.current;
  if (load.kind === 'resistance') return loadV / load.resistance;
  return load.kind === 'constant power' ? load.power / loadV : load.ratedCurrent;
}

/** Every edge of the two trees by the node at its lower end. */
function edges({ circuits, grounds, loom }: LoomPlan) {
  const list = new Map<string, { parent: string; ohm: number; name: string }>();
  for (const circuit of circuits) {
    const { nodes, name } = circuit;
    if (nodes === null || nodes.back !== null) continue;
    const down = circuit.kind === 'feeder' || name === `negative ${circuit.serves}`;
    const [child, parent] = down ? [nodes.load, nodes.from] : [nodes.from, nodes.load];
    list.set(child, { parent, ohm: ohm(circuit), name });
  }
  for (const { name, to, by } of grounds) {
    const { joint, body = 0 } = loom.grounds[name]!;
    if (by === 'body')
      list.set(`ground ${name}`, { parent: `ground ${to}`, ohm: joint + body, name: `ground ${name}` });
  }
  return list;
}

/** Ways from a node to its root: the names of the edges passed. */
function chain(list: ReturnType<typeof edges>, start: string): string[] {
  const passed: string[] = [];
  for (let here = start; list.has(here); here = list.get(here)!.parent) passed.push(here);
  return passed;
}

/** Volts of each load by adding up what every other load makes it lose: superposition, one pair after another. */
function volts(plan: LoomPlan): Complaint[] {
  const list = edges(plan);
  const found: Complaint[] = [];
  const loadsOf = plan.circuits.filter(({ nodes }) => nodes?.back !== undefined && nodes?.back !== null);
  const supplied = new Map(loadsOf.map((one) => [one.name, chain(list, one.nodes!.from)]));
  const returned = new Map(loadsOf.map((one) => [one.name, chain(list, one.nodes!.to!)]));
  const rootOf = (node: string): string => chain(list, node).reduce((_, edge) => list.get(edge)!.parent, node);
  const batteryOf = (circuit: PlannedCircuit): string => /^battery (.*) \+$/.exec(rootOf(circuit.nodes!.from))![1]!;
  for (const state of plan.states) {
    const flowing = loadsOf.filter(({ name }) => (state.currents[name] ?? 0) > 0);
    // Sum over all loads of the current that each sends through an edge, up positive.
    const through = new Map<string, number>();
    const add = (edge: string, currentA: number): void => void through.set(edge, (through.get(edge) ?? 0) + currentA);
    for (const one of flowing) {
      const currentA = state.currents[one.name]!;
      for (const edge of supplied.get(one.name)!) add(edge, currentA);
      for (const edge of returned.get(one.name)!) add(edge, currentA);
      for (const edge of chain(list, `battery ${batteryOf(one)} −`)) add(edge, -currentA);
    }
    for (const [child, { name }] of list) {
      const turned = /^negative /.test(name) ? -1 : 1;
      const said = (state.currents[name] ?? 0) * turned;
      const sum = through.get(child) ?? 0;
      if (Math.abs(said - sum) > 1e-6) found.push(`${state.name}: ${name} carries ${said} A, the sum is ${sum}`);
    }
    for (const one of flowing) {
      const currentA = state.currents[one.name]!;
      const battery = batteryOf(one);
      const up = (start: string): number =>
        chain(list, start).reduce((sum, edge) => sum + (through.get(edge) ?? 0) * list.get(edge)!.ohm, 0);
      const supplyV = plan.loom.states[state.name]!.volts[battery]!;
      const out = up(one.nodes!.from);
      const back = up(one.nodes!.to!) - up(`battery ${battery} −`);
      const loadV = supplyV - out - back - currentA * ohm(one);
      const said = state.loads.find(({ circuit }) => circuit === one.name);
      if (one.kind === 'load' && !near(said?.loadV ?? 0, loadV, 1e-7)) {
        found.push(`${state.name}: ${one.name} has ${said?.loadV} V, should have ${loadV}`);
      }
      const item = plan.loom.items[one.name];
      if (item?.kind !== 'load') continue;
      const wanted = wantedA(item.load, loadV);
      if (!near(currentA, wanted, 1e-6)) found.push(`${state.name}: ${one.name} draws ${currentA} A, should ${wanted}`);
    }
  }
  return found;
}

const failed = (plan: LoomPlan, name: string, rule: string): boolean =>
  plan.findings.some(({ severity, about, rule: of }) => severity === 'fail' && about.name === name && of === rule);

/** Holds a limit against the findings: a broken one must be said, a kept one must not. */
function held(plan: LoomPlan, name: string, rule: string, ok: boolean, what: string): Complaint[] {
  const said = failed(plan, name, rule);
  if (ok && said) return [`${name}: ${rule} is said to fail, and holds: ${what}`];
  return ok || said ? [] : [`${name}: ${rule} fails and is not said: ${what}`];
}

function drops(plan: LoomPlan): Complaint[] {
  return plan.circuits.flatMap((circuit) => {
    if (circuit.kind === 'load') {
      const item = plan.loom.items[circuit.name];
      const budget = item?.kind === 'load' ? item.budget : plan.loom.controllers[circuit.name]?.budget;
      const limit = BUDGET[budget ?? '']!;
      const lost = Math.max(
        ...plan.states.map(({ loads }) => {
          const one = loads.find((load) => load.circuit === circuit.name);
          return one === undefined ? -Infinity : one.outDropV + one.backDropV;
        }),
      );
      return held(plan, circuit.name, 'voltage-drop', lost <= limit, `${lost} V of ${limit}`);
    }
    if (circuit.kind !== 'feeder' && circuit.kind !== 'strap') return [];
    const limit = circuit.kind === 'feeder' ? plan.loom.rules.feederDrop : plan.loom.rules.strapDrop;
    const most = Math.max(...plan.states.map(({ currents }) => Math.abs(currents[circuit.name] ?? 0)));
    // A strap is judged with charging currents added: it may fail where this sum holds, never the other way round.
    const ok = most * ohm(circuit) <= limit;
    return ok ? [] : held(plan, circuit.name, 'voltage-drop', ok, `${most * ohm(circuit)} V of ${limit}`);
  });
}

/** What a size bears alone: the library's own balance, fed from the table above. */
function aloneA(plan: LoomPlan, areaMm2: number, ambientTempC: number): number {
  const [milliohmPerM, conductorDiameterMm, outerDiameterMm] = WIRE[areaMm2]!;
  const { insulation, coverConductivity, altitude } = plan.loom.rules;
  return ampacity({
    maxConductorTempC: insulation,
    resistanceOhmPerM: milliohmPerM / 1000,
    ratedTempC: 20,
    conductorDiameterMm,
    outerDiameterMm,
    insulationConductivityWPerMK: coverConductivity,
    ambientTempC,
    altitudeM: altitude,
  }).currentA;
}

const warms = ({ kind }: PlannedCircuit): boolean => kind !== 'sensor' && kind !== 'bus';

/** Largest charging current that may be added to a strap: those of the alternator and of the isolator. */
function currentIn(plan: LoomPlan, circuit: PlannedCircuit, state: string): number {
  if (!warms(circuit)) return 0;
  const { alternator, isolator } = plan.loom.supply;
  const given = plan.loom.states[state]!;
  if (circuit.name === 'alternator') return given.alternator === 'off' ? 0 : alternator!.current;
  if (circuit.serves === 'isolator') return given.isolator === 'closed' ? isolator!.current : 0;
  return Math.abs(plan.states.find(({ name }) => name === state)!.currents[circuit.name] ?? 0);
}

/** Factor of the aviation curves: the row of at least so many wires, on a double-logarithmic line between shares. */
function curve(wireCount: number, share: number): number | null {
  const rows = Object.keys(CURVES)
    .map(Number)
    .sort((a, b) => a - b);
  const row = CURVES[rows.find((count) => count >= wireCount) ?? 0];
  if (row === undefined) return null;
  const percent = Math.max(20, 100 * share);
  const i = Math.max(1, Math.ceil(percent / 20 - 1e-9) - 1);
  const [low, high] = percent <= 20 ? [row[0], row[0]] : [row[i - 1], row[i]];
  if (low === null || high === null || low === undefined || high === undefined) return null;
  const part = percent <= 20 ? 0 : Math.log(percent / (20 * i)) / Math.log((i + 1) / i);
  return low * (high / low) ** part;
}

function bundles(plan: LoomPlan): Complaint[] {
  const circuits = new Map(plan.circuits.map((circuit) => [circuit.name, circuit]));
  return plan.bundles.flatMap((bundle) => {
    const inside = plan.wires.filter(({ route }) => route.includes(bundle.route));
    const found: Complaint[] = [];
    if (
      inside
        .map(({ name }) => name)
        .sort()
        .join() !== [...bundle.wires].sort().join()
    )
      found.push(`${bundle.route}: other wires`);
    if (inside.length === 0) return found;
    let wholeA = 0;
    for (const { circuit } of inside) {
      const of = circuits.get(circuit)!;
      if (warms(of)) wholeA += aloneA(plan, of.areaMm2!, of.ambientTempC);
    }
    const share =
      Math.max(
        0,
        ...plan.states.map(({ name }) =>
          inside.reduce((sum, { circuit }) => sum + currentIn(plan, circuits.get(circuit)!, name), 0),
        ),
      ) / wholeA;
    // The plan rounds the share up, by four thousandths at most.
    const least = Math.min(1, share);
    if (wholeA > 0 && (bundle.loadedFraction < least - 1e-9 || bundle.loadedFraction > least + 0.0041)) {
      found.push(`${bundle.route}: ${bundle.loadedFraction} in use, should be ${least}`);
    }
    const factor = curve(inside.length, bundle.loadedFraction);
    if (factor !== null && !near(factor, bundle.factor, 1e-9))
      found.push(`${bundle.route}: factor ${bundle.factor}, should be ${factor}`);
    if (
      factor === null &&
      !plan.findings.some(({ rule, about }) => rule === 'bundle-beyond-table' && about.name === bundle.route)
    )
      found.push(`${bundle.route}: beyond the table and not said`);
    // No bundle is thinner than its wires laid without a gap.
    const squares = inside.reduce((sum, { areaMm2 }) => sum + WIRE[areaMm2!]![2] ** 2, 0);
    if (bundle.diameterMm! ** 2 < squares * (1 - 1e-9))
      found.push(`${bundle.route}: ${bundle.diameterMm} mm is too thin`);
    return found;
  });
}

function heat(plan: LoomPlan): Complaint[] {
  const factors = new Map(plan.bundles.map(({ route, factor }) => [route, factor]));
  return plan.circuits.flatMap((circuit) => {
    if (circuit.wires.length === 0 || circuit.kind === 'bus') return [];
    const mine = plan.wires.filter(({ circuit: of }) => of === circuit.name);
    const found: Complaint[] = [];
    const air = Math.max(
      ...mine.flatMap(({ places, route }) => [
        ...places.map((name) => plan.loom.places[name]!.ambient),
        ...route.map((name) => plan.loom.routes[name]!.ambient ?? -Infinity),
      ]),
    );
    if (air !== circuit.ambientTempC)
      found.push(`${circuit.name}: ${circuit.ambientTempC} °C around it, should be ${air}`);
    const factor = Math.min(1, ...mine.flatMap(({ route }) => route.map((name) => factors.get(name)!)));
    if (!near(factor, circuit.bundleFactor, 1e-12))
      found.push(`${circuit.name}: factor ${circuit.bundleFactor}, should be ${factor}`);
    if (circuit.size === null) return found;
    const bears = aloneA(plan, circuit.areaMm2!, air) * factor;
    if (circuit.ampacityA !== null && !near(bears, circuit.ampacityA, 1e-6))
      found.push(`${circuit.name}: bears ${circuit.ampacityA} A, should ${bears}`);
    const ok = circuit.currentA <= bears * (1 + 1e-9);
    // A current within a thousandth of the limit is rounded up by the plan, and may fail there.
    if (Math.abs(circuit.currentA - bears) > 0.002)
      found.push(...held(plan, circuit.name, 'conductor-temperature', ok, `${circuit.currentA} A of ${bears}`));
    if (circuit.currentA > 0 && circuit.conductorTempC! < air - 1e-9)
      found.push(`${circuit.name}: colder than its air`);
    return found;
  });
}

function rerating(tempC: number): number {
  if (tempC <= 20) return 1;
  const i = RERATING.findIndex(([at]) => tempC <= at);
  const [t0, f0] = RERATING[i - 1]!;
  const [t1, f1] = RERATING[i]!;
  return f0 + ((f1 - f0) * (tempC - t0)) / (t1 - t0);
}

function fuses(plan: LoomPlan): Complaint[] {
  const { rules } = plan.loom;
  if (rules.overload !== 'iec-60364-4-43') throw new Error('this auditor knows another rule of overload');
  const circuits = new Map(plan.circuits.map((circuit) => [circuit.name, circuit]));
  const found: Complaint[] = [];
  const seen = new Set<string>();
  for (const fuse of plan.fuses) {
    if (seen.has(fuse.name)) found.push(`${fuse.name}: twice in the chart`);
    seen.add(fuse.name);
    if (fuse.circuit === null) continue;
    const circuit = circuits.get(fuse.circuit)!;
    if (fuse.ratingA === null) {
      if (!failed(plan, circuit.name, 'protection')) found.push(`${fuse.name}: no rating, and no finding`);
      continue;
    }
    const inLine =
      fuse.box !== null
        ? null
        : circuit.name === 'alternator'
          ? plan.loom.supply.alternator!.protection
          : circuit.serves === 'isolator'
            ? plan.loom.supply.isolator!.protection[
                plan.loom.supply.isolator!.between.findIndex((battery) => `isolator ${battery}` === circuit.name)
              ]!
            : (
                plan.loom.fuseBoxes[circuit.serves] ??
                plan.loom.controllers[circuit.serves] ??
                (circuit.name === `link ${circuit.serves}` ? plan.loom.supply.links?.[circuit.serves] : undefined) ??
                (plan.loom.items[circuit.name] as { protection?: never })
              ).protection!;
    const given = inLine !== null && 'rerating' in inLine ? inLine.rerating : undefined;
    const share =
      given ??
      rerating(fuse.box === null ? plan.loom.places[fuse.place]!.ambient : plan.loom.fuseBoxes[fuse.box]!.temperature);
    const may = fuse.ratingA * share * rules.continuousShare;
    const says = (ok: boolean, what: string): void => {
      if (!ok && !failed(plan, circuit.name, 'protection')) found.push(`${fuse.name}: ${what}, and no finding`);
    };
    if (circuit.peakA !== null)
      found.push(...held(plan, fuse.name, 'peak', circuit.peakA <= fuse.ratingA, `a peak of ${circuit.peakA} A`));
    says(circuit.currentA <= may * (1 + 1e-9), `${circuit.currentA} A on a fuse that carries ${may}`);
    says(fuse.ratingA <= circuit.ampacityA!, `${fuse.ratingA} A before a wire of ${circuit.ampacityA}`);
    says(
      1.35 * fuse.ratingA <= 1.45 * circuit.ampacityA!,
      `opens at ${1.35 * fuse.ratingA} A, wire ${circuit.ampacityA}`,
    );
    // A short at the far end: low battery, everything as hot as the insulation bears, its own path alone is a bound.
    const path = circuit.path.reduce(
      (sum, one) => sum + (one.wire === null ? one.resistanceOhm : one.coldOhm! * hot(rules.insulation)),
      0,
    );
    const most = rules.shortVoltage / path;
    if (fuse.farShortA! > most * (1 + 1e-9))
      found.push(`${fuse.name}: a short of ${fuse.farShortA} A, at most ${most} can flow`);
    found.push(...outlasts(plan, circuit, fuse.family, fuse.ratingA));
    says(fuse.farShortA! >= 2 * fuse.ratingA, `a short of ${fuse.farShortA} A hardly opens ${fuse.ratingA} A`);
  }
  for (const [box, { positions }] of Object.entries(plan.loom.fuseBoxes)) {
    const listed = plan.fuses.filter((fuse) => fuse.box === box).length;
    if (listed !== positions) found.push(`${box}: ${listed} positions in the chart of ${positions}`);
  }
  for (const channel of plan.channels) {
    if (channel.circuit === null) continue;
    const ok = channel.settingA !== null && channel.settingA >= channel.currentA && channel.currentA <= channel.ratingA;
    if (!ok && !plan.findings.some(({ severity, about }) => severity === 'fail' && about.name === channel.name)) {
      found.push(`${channel.name}: ${channel.currentA} A on a setting of ${channel.settingA} A, and no finding`);
    }
    const bears = circuits.get(channel.circuit)!.ampacityA;
    const coil = circuits.get(channel.circuit)!.kind === 'coil';
    if (
      !coil &&
      channel.settingA !== null &&
      channel.settingA > bears! &&
      !failed(plan, channel.circuit, 'protection')
    ) {
      found.push(`${channel.name}: set to ${channel.settingA} A before a wire of ${bears}`);
    }
  }
  return found;
}

/** The wire against the longest time of its fuse at each printed current. */
function outlasts(plan: LoomPlan, circuit: PlannedCircuit, family: string, ratingA: number): Complaint[] {
  const { bears, insulation } = plan.loom.rules;
  const { areaMm2, ampacityA, ambientTempC, name } = circuit;
  if (bears === undefined || areaMm2 === null || ampacityA === null || failed(plan, name, 'fuse-time')) return [];
  const row = family === 'blade-fuse' && ratingA > 30 ? [600, 0.15] : null;
  const points = LONGEST[family.startsWith('bolt-in') ? 'bolt-in-fuse' : family];
  if (points === undefined) throw new Error(`this auditor knows no ${family}`);
  return points.flatMap(([percent, timeS]) => {
    const longestS = row !== null && percent === 600 ? row[1]! : timeS;
    const currentA = (percent / 100) * ratingA;
    const i2tA2s = currentA ** 2 * longestS;
    const briefly = longestS <= 5 && i2tA2s <= withstand(insulation, bears.seconds) * areaMm2 ** 2 * (1 + 1e-9);
    const stays = staysS(areaMm2, ampacityA, currentA, ambientTempC, insulation, bears.minutes);
    return briefly || stays >= 0.99 * longestS
      ? []
      : [`${name}: ${ratingA} A may let ${currentA} A flow for ${longestS} s, the wire bears it for ${stays}`];
  });
}

function mechanics(plan: LoomPlan): Complaint[] {
  const { rules, fuseBoxes } = plan.loom;
  return plan.circuits.flatMap((circuit) => {
    if (circuit.size === null || circuit.kind === 'bus') return [];
    const signal = circuit.kind === 'sensor' || circuit.kind === 'coil' || circuit.kind === 'switch';
    const least = signal ? rules.leastSignalArea : rules.leastArea;
    const found = held(
      plan,
      circuit.name,
      'mechanical-minimum',
      circuit.areaMm2! >= least,
      `${circuit.areaMm2} mm² of ${least}`,
    );
    const item = plan.loom.items[circuit.name];
    if (item?.kind !== 'load' || !('box' in item.from)) return found;
    const { takes, temperature } = fuseBoxes[item.from.box]!;
    if (takes === undefined || 'blade' in takes || item.takes !== undefined) return found;
    const most = takes.most.areaMm2 ?? Infinity;
    // Between its two figures a contact's current falls in its square, as heat does.
    const { current = Infinity, hot } = takes;
    const share = hot === undefined ? 0 : Math.max(0, (temperature - 25) / (hot.at - 25));
    const may = hot === undefined ? current : Math.sqrt(current ** 2 + share * (hot.current ** 2 - current ** 2));
    const fits = circuit.areaMm2! <= most && circuit.currentA <= may;
    const what = `${circuit.areaMm2} mm² in ${most}, ${circuit.currentA} A of ${may}`;
    return [...found, ...held(plan, circuit.name, 'terminal', fits, what)];
  });
}

/** Metres before the first fuse: what leaves a battery's post and does not end at a fuse of its own within reach. */
function unfused(plan: LoomPlan): Complaint[] {
  return plan.wires.flatMap((wire) => {
    const circuit = plan.circuits.find(({ name }) => name === wire.circuit)!;
    const item = plan.loom.items[circuit.name];
    const bare =
      item?.kind === 'load' && 'battery' in item.from && item.protection !== undefined && 'none' in item.protection;
    const out = circuit.path.find((one) => one.wire === wire.name)?.side === 'out';
    const before =
      (/^battery .* \+$/.test(wire.from.at) && /^fuse of /.test(wire.to.at)) || /^link /.test(wire.circuit);
    const wanted = before || (bare && out) ? wire.lengthM : 0;
    if (wire.unfusedM !== wanted) return [`${wire.name}: ${wire.unfusedM} m unfused, should be ${wanted}`];
    const warned = plan.findings.some(({ rule, about }) => rule === 'unfused-length' && about.name === wire.name);
    return wanted > plan.loom.rules.unfused && !warned ? [`${wire.name}: ${wanted} m unfused and not said`] : [];
  });
}

/** Relays: volts at the hot coil in the lowest state against those that it needs, and the contact against its load. */
function relays(plan: LoomPlan): Complaint[] {
  const { rules, relayTypes, items, places } = plan.loom;
  if (rules.ratio !== 'ac-43-13-1b-switch-12-v') throw new Error('this auditor knows another rule of contacts');
  // Nominal rating of a switch on 12 V over its load, typed again; what the table has not asks for the most.
  const ratios: Readonly<Record<string, number>> = { lamp: 5, inductive: 2, solenoid: 2, resistive: 1, motor: 2 };
  return plan.relays.flatMap((relay) => {
    const item = items[relay.circuit];
    if (item?.kind !== 'load') return [`${relay.name}: of no load`];
    const type = relayTypes[relay.type]!;
    const coil = plan.circuits.find(({ name }) => name === relay.coilCircuit)!;
    const lowest = Math.min(
      ...plan.states
        .filter(({ name }) => item.on.includes(name))
        .map(({ nodes }) => nodes[coil.nodes!.from]! - nodes[coil.nodes!.to!]!),
    );
    const hotCoil = (234.5 + type.coilTemperature) / (234.5 + type.ratedAt);
    const coilV = ((lowest - rules.coilDriverDrop) * type.coil * hotCoil) / (type.coil * hotCoil + ohm(coil));
    const pickUpV = type.pickUp * hotCoil;
    const found: Complaint[] = [];
    if (!near(relay.coilV!, coilV, 1e-6)) found.push(`${relay.name}: ${relay.coilV} V at its coil, should be ${coilV}`);
    if (!near(relay.pickUpV!, pickUpV, 1e-9))
      found.push(`${relay.name}: needs ${relay.pickUpV} V, should be ${pickUpV}`);
    found.push(...held(plan, relay.name, 'relay-pick-up', coilV >= pickUpV, `${coilV} V of ${pickUpV}`));
    const { currentA } = plan.circuits.find(({ name }) => name === relay.circuit)!;
    const needA = currentA * (ratios[item.nature] ?? 5);
    const left = (type.noneAt - places[relay.place]!.ambient) / (type.noneAt - type.fullTo);
    const mayA = type.current * Math.min(1, Math.max(0, left));
    const first = item.inrush ?? currentA;
    const ok = needA <= mayA && (type.make === undefined || first <= type.make);
    // Above its rated volts a contact bears less: the plan may then fail what holds here, never the other way round.
    if (!ok) found.push(...held(plan, relay.name, 'contact', ok, `${needA} A of ${mayA}, first ${first}`));
    return found;
  });
}

function numbering(plan: LoomPlan): Complaint[] {
  const found: Complaint[] = [];
  plan.wires.forEach((wire, i) => {
    if (wire.number !== i + 1) found.push(`${wire.name}: number ${wire.number} at place ${i + 1}`);
    if (!plan.circuits.some(({ name, wires }) => name === wire.circuit && wires.includes(wire.name)))
      found.push(`${wire.name}: in no circuit`);
  });
  if (new Set(plan.wires.map(({ name }) => name)).size !== plan.wires.length) found.push('two wires of one name');
  for (const [name, item] of Object.entries(plan.loom.items)) {
    if (item.kind === 'load' && !plan.circuits.some((circuit) => circuit.name === name))
      found.push(`${name}: not planned`);
  }
  return found;
}
