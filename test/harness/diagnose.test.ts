// Diagnosis from readings. The vehicle that is read is the general circuit simulator's, with a fault seeded, every
// healthy part at a resistance of its own, and the steps of a meter's display.
import { describe, expect, it } from 'vitest';
import {
  diagnose,
  type Diagnosis,
  type Loom,
  type LoomPlan,
  type MeterReading,
  parseLoom,
  planLoom,
  type PlannedCircuit,
  type PlannedState,
  testPlan,
} from '@loomwright/harness';
import { expectInputError } from '../support/edge.js';
import { looped } from '../support/looped-loom.js';
import { Bench, randomFrom, seeded, type SeedPart, shown } from '../support/seeded-fault.js';
import { sandpiperText } from '../support/small-plan.js';

const parsed = parseLoom(sandpiperText);
if (!parsed.ok) throw new Error('Sandpiper cannot be read');
const plan = planLoom(parsed.loom);
const relay: SeedPart = { circuit: 'lift pump', name: 'contact of relay of lift pump' };

/** Readings that a person takes on one circuit: the posts, its ends, and some of its parts. */
function readCircuit(bench: Bench, of: LoomPlan, state: PlannedState, circuit: PlannedCircuit, random: () => number) {
  const { from, load, back } = circuit.nodes!;
  const readings: MeterReading[] = state.batteries.map(({ name }) =>
    bench.volts(state.name, `battery ${name} +`, `battery ${name} −`),
  );
  readings.push(back === null ? bench.volts(state.name, from, load) : bench.volts(state.name, load, back));
  for (const { name, kind } of circuit.path) {
    if (kind !== 'wire' && random() < 0.6) readings.push(bench.over(state.name, { circuit: circuit.name, name }));
  }
  return readings;
}

/** Every ground point and strap end against the negative post of a battery. */
function readGrounds(bench: Bench, of: LoomPlan, state: PlannedState): MeterReading[] {
  const negative = `battery ${state.batteries[0]!.name} −`;
  return [
    ...state.batteries.map(({ name }) => bench.volts(state.name, `battery ${name} +`, `battery ${name} −`)),
    ...of.grounds.map(({ name }) => bench.volts(state.name, `ground ${name}`, negative)),
    ...state.batteries.slice(1).map(({ name }) => bench.volts(state.name, `battery ${name} −`, negative)),
  ];
}

const names = (found: Diagnosis): string[] => found.suspects.map(({ circuit, name }) => `${circuit} / ${name}`);

/** A healthy vehicle as it may be built: each part by a factor of its own. */
const builtBy = (random: () => number) => (kind: string) =>
  kind === 'wire' ? 0.92 + 0.08 * random() : kind === 'fuse' ? 0.9 + 0.2 * random() : 0.5 + 0.9 * random();

interface Seeded {
  readonly title: string;
  readonly found: Diagnosis;
  readonly hit: boolean;
}

/** Seeds one fault after another, each 0.5 V to 2 V at the planned current, and asks. */
async function seedCircuits(of: LoomPlan, count: number, seed: number): Promise<Seeded[]> {
  const random = randomFrom(seed);
  const list: Seeded[] = [];
  for (let i = 0; i < count; i++) {
    const state = of.states[Math.floor(random() * of.states.length)]!;
    const live = of.circuits.filter(
      ({ name, path, nodes }) => nodes !== null && path.length > 0 && Math.abs(state.currents[name] ?? 0) > 0.5,
    );
    const circuit = live[Math.floor(random() * live.length)]!;
    const part = circuit.path[Math.floor(random() * circuit.path.length)]!;
    const extraOhm = (0.5 + 1.5 * random()) / Math.abs(state.currents[circuit.name]!);
    const vehicle = seeded(of, { circuit: circuit.name, name: part.name }, extraOhm, builtBy(random));
    const bench = await Bench.of(vehicle, [state.name]);
    const found = diagnose(of, readCircuit(bench, of, state, circuit, random));
    const hit = names(found).includes(`${circuit.name} / ${part.name}`);
    list.push({ title: `${i} ${state.name}: ${circuit.name} / ${part.name} ${extraOhm}`, found, hit });
  }
  return list;
}

/**
 * Seeds ways of the grounds: straps, cables, body, joints, with volts of all ground points read. In a loop the other way
 * may take the current over: where no reading moves by 50 mV against the same vehicle without the fault, another is
 * seeded.
 */
async function seedGrounds(of: LoomPlan, count: number, seed: number): Promise<Seeded[]> {
  const random = randomFrom(seed);
  const list: Seeded[] = [];
  for (let i = 0; list.length < count; i++) {
    expect(i).toBeLessThan(20 * count);
    const state = of.states[Math.floor(random() * of.states.length)]!;
    const live = of.ways.filter(({ name }) => Math.abs(state.currents[name] ?? 0) > 3);
    const way = live[Math.floor(random() * live.length)]!;
    const extraOhm = (0.2 + 0.6 * random()) / Math.abs(state.currents[way.name]!);
    const path = of.circuits.find(({ name }) => name === way.circuit)?.path ?? [];
    const name = path[Math.floor(random() * path.length)]?.name ?? way.name;
    const built = 1000 * seed + i;
    const vehicle = seeded(of, { circuit: way.name, name }, extraOhm, builtBy(randomFrom(built)));
    const readings = readGrounds(await Bench.of(vehicle, [state.name]), of, state);
    const without = readGrounds(
      await Bench.of(seeded(of, null, 0, builtBy(randomFrom(built))), [state.name]),
      of,
      state,
    );
    if (!readings.some(({ readsV }, k) => Math.abs(readsV! - without[k]!.readsV!) > 0.05)) continue;
    const found = diagnose(of, readings);
    const hit = names(found).includes(`${way.name} / ${name}`);
    list.push({ title: `${i} ${state.name}: ${way.name} / ${name} ${extraOhm}`, found, hit });
  }
  return list;
}

/** The looped vehicle with joints, body and stray ways of other resistances. */
function variant(seed: number): LoomPlan {
  const random = randomFrom(seed);
  const other = structuredClone(looped) as unknown as {
    grounds: Record<string, { joint: number; body?: number; bonds?: { body?: number; stray?: number }[] }>;
  };
  const vary = (value: number): number => value * (0.5 + 1.5 * random());
  for (const ground of Object.values(other.grounds)) {
    ground.joint = vary(ground.joint);
    if (ground.body !== undefined) ground.body = vary(ground.body);
    for (const bond of ground.bonds ?? []) {
      if (bond.body !== undefined) bond.body = vary(bond.body);
      if (bond.stray !== undefined) bond.stray = vary(bond.stray);
    }
  }
  return planLoom(other as unknown as Loom);
}

describe('independent: faults seeded in the general circuit simulator', () => {
  const misses = (list: readonly Seeded[]): string[] =>
    list
      .filter(({ hit }) => !hit)
      .map(({ title, found }) => `${title} → ${found.verdict}: ${found.sentences.join(' ')}`);

  it('120 parts of Sandpiper: the bad one is found, or is among those that cannot be told apart', async () => {
    const list = await seedCircuits(plan, 120, 11);
    expect(misses(list)).toEqual([]);
    expect(list.filter(({ found }) => found.suspects.length === 1).length).toBeGreaterThan(40);
  }, 180_000);
  it('100 parts and ways of five vehicles with looped grounds', async () => {
    const list: Seeded[] = [];
    for (let seed = 1; seed <= 5; seed++) {
      const other = variant(seed);
      list.push(...(await seedCircuits(other, 10, seed)), ...(await seedGrounds(other, 10, 100 + seed)));
    }
    expect(list).toHaveLength(100);
    expect(misses(list)).toEqual([]);
  }, 180_000);
  it('healthy vehicles, each part with a resistance of its own: nothing is found', async () => {
    const random = randomFrom(5);
    for (let i = 0; i < 30; i++) {
      const of = i < 24 ? plan : variant(20 + i);
      const state = of.states[i % of.states.length]!;
      const bench = await Bench.of(seeded(of, null, 0, builtBy(random)), [state.name]);
      const live = of.circuits.filter(
        ({ name, path, nodes }) => nodes !== null && path.length > 0 && Math.abs(state.currents[name] ?? 0) > 0.5,
      );
      const circuit = live[Math.floor(random() * live.length)]!;
      const readings = i % 2 === 0 ? readCircuit(bench, of, state, circuit, random) : readGrounds(bench, of, state);
      const found = diagnose(of, readings);
      expect(found.verdict, `${i} ${state.name} ${circuit.name}: ${found.sentences.join(' ')}`).toBe('nothing found');
    }
  }, 120_000);
  it('the further reading that is named parts the suspects, and keeps the bad one', async () => {
    const random = randomFrom(3);
    for (let i = 0; i < 8; i++) {
      const circuits = plan.circuits.filter(
        ({ kind, name }) =>
          kind === 'load' && (plan.states.find((one) => one.name === 'road')!.currents[name] ?? 0) > 1,
      );
      const circuit = circuits[Math.floor(random() * circuits.length)]!;
      const part = circuit.path[Math.floor(random() * circuit.path.length)]!;
      const vehicle = seeded(plan, { circuit: circuit.name, name: part.name }, 0.8 / circuit.currentA);
      const bench = await Bench.of(vehicle, ['road']);
      const readings: MeterReading[] = [
        ...['starter', 'service'].map((name) => bench.volts('road', `battery ${name} +`, `battery ${name} −`)),
        bench.volts('road', circuit.nodes!.load, circuit.nodes!.back!),
      ];
      let found = diagnose(plan, readings);
      for (let step = 0; found.further !== null; step++) {
        expect(step).toBeLessThan(10);
        const before = found.suspects.length;
        const { red, black, state, circuit: of } = found.further;
        const along = plan.circuits.find(({ name }) => name === of) ?? circuit;
        const readsV = shown(
          readBetween(bench, vehicle, state, along, red) - readBetween(bench, vehicle, state, along, black),
        );
        readings.push({ state, red, black, circuit: along.name, readsV });
        found = diagnose(plan, readings);
        expect(found.suspects.length).toBeLessThan(before);
        expect(names(found)).toContain(`${circuit.name} / ${part.name}`);
      }
      expect(found.suspects.length).toBeLessThan(12);
    }
  }, 120_000);
});

/** Volts of a point along a path, from those of its ends in the simulator. */
function readBetween(bench: Bench, of: LoomPlan, state: string, { name }: PlannedCircuit, point: string): number {
  const { path, nodes } = of.circuits.find((one) => one.name === name)!;
  const found = /^(before|behind) (.*)$/.exec(point);
  if (found === null) return bench.at(state, point);
  const place = path.findIndex((one) => one.name === found[2]) + (found[1] === 'behind' ? 1 : 0);
  const amps = bench.amps(state, name);
  const ohm = (list: PlannedCircuit['path']): number => list.reduce((sum, one) => sum + one.resistanceOhm, 0);
  return path[Math.min(place, path.length - 1)]!.side === 'back' && path[place - 1]?.side !== 'out'
    ? bench.at(state, nodes!.to!) + amps * ohm(path.slice(place))
    : bench.at(state, nodes!.from) - amps * ohm(path.slice(0, place));
}

describe('what the readings tell', () => {
  const road = async (extraOhm: number, part: SeedPart | null = relay) =>
    Bench.of(seeded(plan, part, extraOhm), ['road']);
  const posts = (bench: Bench) => bench.volts('road', 'battery starter +', 'battery starter −');
  const load = (bench: Bench) => bench.volts('road', 'lift pump +', 'lift pump −');

  it('ohms and watts of the joint: 0.2 Ω more in a contact that passes 7.5 A', async () => {
    const bench = await road(0.2);
    const { verdict, suspects, confidence } = diagnose(plan, [posts(bench), load(bench), bench.over('road', relay)]);
    expect([verdict, confidence, suspects.length]).toEqual(['part', 'strong', 1]);
    const [one] = suspects;
    expect(one!.extraOhm).toBeCloseTo(0.2, 2);
    expect(one!.lowOhm).toBeLessThan(0.2);
    expect(one!.highOhm).toBeGreaterThan(0.2);
    expect(one!.powerW).toBeCloseTo(7.5 ** 2 * 0.205, 0);
    expect(one!.currentA).toBeCloseTo(7.5, 6);
  });
  it('a low battery comes first: with its posts unread it explains a dim load, with them read it is ruled out', async () => {
    const bench = await road(0.2);
    const unread = diagnose(plan, [load(bench)]);
    expect(unread.verdict).toBe('supply');
    expect(unread.supply[0]).toMatchObject({ battery: 'starter', state: 'road', read: false });
    expect(unread.sentences.join(' ')).toMatch(/posts/);
    expect(diagnose(plan, [posts(bench), load(bench)]).verdict).toBe('part');
  });
  it('a battery that was read low explains all that follows it', async () => {
    const low = structuredClone(plan) as { loom: { states: Record<string, { volts: Record<string, number> }> } };
    low.loom.states['road']!.volts['starter'] = 12.6;
    const bench = await Bench.of(low as unknown as LoomPlan, ['road']);
    const found = diagnose(plan, [
      posts(bench),
      load(bench),
      bench.volts('road', 'radiator fan low +', 'radiator fan low −'),
    ]);
    expect(found.verdict).toBe('supply');
    expect(found.supply[0]!.read).toBe(true);
    expect(found.supply[0]!.foundV).toBeCloseTo(12.6, 1);
  });
  it('and beside it a bad joint is found all the same', async () => {
    const low = structuredClone(seeded(plan, relay, 0.2)) as {
      loom: { states: Record<string, { volts: Record<string, number> }> };
    };
    low.loom.states['road']!.volts['starter'] = 13;
    const bench = await Bench.of(low as unknown as LoomPlan, ['road']);
    const found = diagnose(plan, [posts(bench), load(bench), bench.over('road', relay)]);
    expect(found.verdict).toBe('part');
    expect(names(found)).toEqual(['lift pump / contact of relay of lift pump']);
    expect(found.supply.map(({ battery }) => battery)).toEqual(['starter']);
  });
  it('an open circuit: no volts at the load, all of them over the part that is open', async () => {
    // With no current every point before the open part is at its source, every one behind it at its way back.
    const bench = await road(0, null);
    const box = bench.at('road', 'box dash box') - bench.at('road', 'ground frame rear');
    const readings = [
      posts(bench),
      { state: 'road', red: 'lift pump +', black: 'lift pump −', readsV: 0 },
      { state: 'road', over: relay.name, readsV: shown(box + 0.02) },
    ];
    const found = diagnose(plan, readings);
    expect(found.verdict).toBe('part');
    expect(names(found)).toEqual(['lift pump / contact of relay of lift pump']);
    expect(found.suspects[0]).toMatchObject({ open: true, extraOhm: null, highOhm: null, powerW: null, currentA: 0 });
    expect(found.sentences[0]).toMatch(/is open/);
  });
  it('ohms on a dead circuit: a way out that is open, and ohms where there should be none', () => {
    const open = diagnose(plan, [{ name: 'lift pump: ohms, way back', readsOhm: 'open' }]);
    expect(open.verdict).toBe('part');
    expect(names(open)).toContain('lift pump / lift pump back');
    expect(open.suspects.every((one) => one.open && one.circuit === 'lift pump')).toBe(true);
    const short = diagnose(plan, [{ name: 'lift pump: ohms, load out', readsOhm: 12 }]);
    expect([short.verdict, short.suspects]).toEqual(['short', []]);
    expect(short.sentences.join(' ')).toMatch(/12\sΩ/);
    expect(diagnose(plan, [{ name: 'lift pump: ohms, load out', readsOhm: 'open' }]).verdict).toBe('nothing found');
  });
  it('probes changed over are taken as such, and said', async () => {
    const bench = await road(0.2);
    const over = bench.over('road', relay);
    const found = diagnose(plan, [posts(bench), { ...load(bench), readsV: -load(bench).readsV! }, over]);
    expect(found.changedOver).toEqual([1]);
    expect(names(found)).toEqual(['lift pump / contact of relay of lift pump']);
    expect(found.sentences.join(' ')).toMatch(/changed over/);
  });
  it('a reading that the others contradict is named', async () => {
    const bench = await road(0, null);
    const fine = [
      posts(bench),
      load(bench),
      bench.over('road', relay),
      bench.volts('road', 'battery starter +', 'lift pump +'),
      bench.volts('road', 'lift pump −', 'battery starter −'),
    ];
    const wrong = fine.map((one, i) => (i === 1 ? { ...one, readsV: 9.1 } : one));
    const found = diagnose(plan, wrong);
    expect([found.verdict, found.contradicting]).toEqual(['reading', [1]]);
    expect(found.suspects).toEqual([]);
  });
  it('two faults at once are not one cause', async () => {
    const first = seeded(plan, relay, 0.2);
    const bench = await Bench.of(seeded(first, { circuit: 'lift pump', name: 'terminal at ground frame rear' }, 0.15), [
      'road',
    ]);
    const found = diagnose(plan, [
      posts(bench),
      load(bench),
      bench.over('road', relay),
      bench.over('road', { circuit: 'lift pump', name: 'terminal at ground frame rear' }),
    ]);
    expect(found.verdict).toBe('not one cause');
    expect(found.suspects).toEqual([]);
    expect(found.sentences.join(' ')).toMatch(/two faults/);
  });
  it('a load that draws twice as much is told from a joint', async () => {
    const heavy = structuredClone(plan) as { loom: { items: Record<string, { load: { current: number } }> } };
    heavy.loom.items['lift pump']!.load.current *= 2;
    const bench = await Bench.of(heavy as unknown as LoomPlan, ['road']);
    const parts = plan.circuits.find(({ name }) => name === 'lift pump')!.path.filter(({ kind }) => kind !== 'wire');
    const found = diagnose(plan, [
      posts(bench),
      load(bench),
      ...parts.map(({ name }) => bench.over('road', { circuit: 'lift pump', name })),
    ]);
    expect(found.suspects.map(({ kind, name }) => [kind, name])).toEqual([['load', 'lift pump']]);
    expect(found.suspects[0]!.currentA).toBeCloseTo(15, 0);
  });
});

describe('laws', () => {
  it('a plan read as planned is healthy, in all its readings at once', () => {
    const steps = testPlan(plan).stages.flatMap((stage) => stage.steps);
    const readings = steps.flatMap(({ name, kind, unit, value }): MeterReading[] => {
      if (value === null || kind === 'lamp') return [];
      if (unit === 'Ω') return [{ name, readsOhm: Math.round(value * 10) / 10 }];
      return unit === 'A' ? [{ name, readsA: value }] : [{ name, readsV: shown(unit === 'mV' ? value / 1000 : value) }];
    });
    expect(readings.length).toBeGreaterThan(500);
    const found = diagnose(plan, readings);
    expect(found.verdict).toBe('nothing found');
    expect(found.seenCount).toBeGreaterThan(300);
  }, 60_000);
  it('the order of the readings changes nothing', async () => {
    const bench = await Bench.of(seeded(plan, relay, 0.1), ['road']);
    const list = [
      bench.volts('road', 'battery starter +', 'battery starter −'),
      bench.volts('road', 'lift pump +', 'lift pump −'),
      bench.over('road', relay),
    ];
    const [one, other] = [diagnose(plan, list), diagnose(plan, [...list].reverse())];
    expect(names(other)).toEqual(names(one));
    expect(other.suspects[0]!.extraOhm).toBeCloseTo(one.suspects[0]!.extraOhm!, 6);
  });
  it('a larger fault is found with more ohms and more evidence', async () => {
    let last = { ohm: 0, away: 0 };
    for (const extraOhm of [0.05, 0.1, 0.2, 0.4]) {
      const bench = await Bench.of(seeded(plan, relay, extraOhm), ['road']);
      const found = diagnose(plan, [
        bench.volts('road', 'battery starter +', 'battery starter −'),
        bench.volts('road', 'lift pump +', 'lift pump −'),
        bench.over('road', relay),
      ]);
      expect(found.suspects[0]!.extraOhm).toBeGreaterThan(last.ohm);
      expect(found.awaySigma).toBeGreaterThan(last.away);
      last = { ohm: found.suspects[0]!.extraOhm!, away: found.awaySigma };
    }
  });
  it('nothing is NaN or infinite, and no suspect is certain beyond its readings', () => {
    const found = diagnose(plan, [{ state: 'road', over: 'contact of relay of lift pump', readsV: 1.5 }]);
    expect(found.sentences.join(' ')).toMatch(/one reading alone/);
    const walk = (value: unknown): void => {
      if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true);
      else if (typeof value === 'object' && value !== null) Object.values(value).forEach(walk);
    };
    walk(found);
  });
});

describe('edges', () => {
  const one: MeterReading = { state: 'road', red: 'lift pump +', black: 'lift pump −', readsV: 13 };
  const refused: readonly (readonly [string, MeterReading, string, RegExp?])[] = [
    ['a state that does not exist', { ...one, state: 'raod' }, 'readings[0].state', /'road'/],
    ['a point that does not exist', { ...one, red: 'lift pmp +' }, 'readings[0].red', /'lift pump \+'/],
    [
      'a part that does not exist',
      { state: 'road', over: 'contact of relay of lift pmp', readsV: 1 },
      'readings[0].over',
      /lift pump'/,
    ],
    [
      'a part of several circuits',
      { state: 'road', over: 'ring at battery starter +', readsV: 1 },
      'readings[0].over',
      /say circuit/,
    ],
    ['a name that is none', { name: 'lift pump: volts, raod', readsV: 1 }, 'readings[0].name', /road/],
    ['no state', { red: 'lift pump +', black: 'lift pump −', readsV: 13 }, 'readings[0].state'],
    ['no point', { state: 'road', black: 'lift pump −', readsV: 13 }, 'readings[0].red'],
    ['no value', { state: 'road', red: 'lift pump +', black: 'lift pump −' }, 'readings[0].readsV'],
    ['two values', { ...one, readsOhm: 3 }, 'readings[0].readsOhm'],
    ['ohms for volts', { name: 'lift pump: volts, road', readsOhm: 3 }, 'readings[0].readsV'],
    ['NaN', { ...one, readsV: NaN }, 'readings[0].readsV'],
    ['infinity', { ...one, readsV: Infinity }, 'readings[0].readsV'],
    ['too many volts', { ...one, readsV: 1e6 }, 'readings[0].readsV'],
    ['ohms below none', { name: 'lift pump: ohms, way back', readsOhm: -1 }, 'readings[0].readsOhm'],
    ['ohms across circuits', { red: 'lift pump +', black: 'horn +', readsOhm: 1 }, 'readings[0].black'],
    ['a circuit that does not exist', { ...one, circuit: 'lift pmp' }, 'readings[0].circuit', /'lift pump'/],
    ['name and points', { ...one, name: 'lift pump: volts, road' }, 'readings[0].name'],
  ];
  it.each(refused.map((each) => [each[0], each] as const))(
    '%s is refused by field',
    (_, [, reading, field, message]) => {
      expectInputError(() => diagnose(plan, [reading]), field);
      if (message !== undefined) expect(() => diagnose(plan, [reading])).toThrow(message);
    },
  );
  it('no readings, too many, no plan', () => {
    expectInputError(() => diagnose(plan, []), 'readings', 'list');
    expectInputError(() => diagnose(plan, undefined as never), 'readings', 'missing');
    expectInputError(
      () =>
        diagnose(
          plan,
          Array.from({ length: 1001 }, () => one),
        ),
      'readings',
      'list',
    );
    expectInputError(() => diagnose(undefined as never, [one]), 'plan', 'missing');
    expectInputError(() => diagnose(plan, [null as never]), 'readings[0]', 'object');
  });
  it('a hyphen typed for the minus of a point is taken for it', () => {
    expect(diagnose(plan, [{ ...one, black: 'lift pump -' }]).readings[0]!.expectedValue).toBeCloseTo(
      plan.states.find(({ name }) => name === 'road')!.loads.find(({ circuit }) => circuit === 'lift pump')!.loadV,
      6,
    );
  });
});
