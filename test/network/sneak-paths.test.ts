import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  type Network,
  type NetworkLoad,
  type SneakCase,
  type SneakLoad,
  type SneakNode,
  sneakPaths,
  type SneakPathsInput,
  type SneakRelayState,
  solveNetwork,
} from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { computed, expectWithin } from '../support/published.js';
import { denseVolts, nodesOf, randomNetwork, reached, stream } from './random-network.js';

const ohms = (name: string, from: string, to: string, resistanceOhm: number): NetworkLoad => ({
  name,
  from,
  to,
  load: { kind: 'resistance', resistanceOhm },
});
const node = ({ nodes }: SneakCase, name: string): SneakNode => nodes.find((each) => each.node === name)!;
const load = ({ loads }: SneakCase, name: string): SneakLoad => loads.find((each) => each.name === name)!;
const relay = ({ relays }: SneakCase, coil: string): SneakRelayState => relays.find((each) => each.coil === coil)!;
const caseOf = (input: SneakPathsInput, state: string, fault: string | null = null): SneakCase =>
  sneakPaths(input).cases.find((each) => each.state === state && each.fault === fault)!;

// A tail with brake lamp and tail lamp on one ground; the tail lamp's feed also has a parking lamp at the front.
const tail: Network = {
  reference: 'post',
  branches: [{ name: 'tail strap', from: 'tail', to: 'post', resistanceOhm: 0.004 }],
  sources: [{ name: 'battery', from: 'post', to: 'plus', voltageV: 12.6, resistanceOhm: 0.01 }],
  switches: [
    { name: 'brake switch', from: 'plus', to: 'brake feed', closed: false, resistanceOhm: 0.02 },
    { name: 'lighting switch', from: 'plus', to: 'lamp feed', closed: false, resistanceOhm: 0.02 },
  ],
  loads: [
    ohms('brake lamp', 'brake feed', 'tail', 6.86),
    ohms('tail lamp', 'lamp feed', 'tail', 28.8),
    ohms('parking lamp', 'lamp feed', 'post', 28.8),
  ],
};
const braking: SneakPathsInput = {
  network: tail,
  states: [
    {
      name: 'braking by day',
      closed: ['brake switch'],
      relaysBefore: 'released',
      deadNodes: ['lamp feed'],
      deadLoads: ['parking lamp', 'tail lamp'],
    },
  ],
  faults: [{ name: 'tail ground lost', lost: ['tail strap'] }],
  relays: [],
  aliveV: 0.5,
  by: solveNetwork,
};

// A relay whose contact feeds the ignition rail, and a warning lamp from the rail back to the coil's feed.
const held: Network = {
  reference: 'post',
  branches: [],
  sources: [{ name: 'battery', from: 'post', to: 'plus', voltageV: 12, resistanceOhm: 0.02 }],
  switches: [
    { name: 'key', from: 'plus', to: 'coil feed', closed: true, resistanceOhm: 0.05 },
    { name: 'main contact', from: 'plus', to: 'rail', closed: false, resistanceOhm: 0.005 },
  ],
  loads: [
    ohms('main coil', 'coil feed', 'post', 80),
    ohms('warning lamp', 'rail', 'coil feed', 60),
    ohms('ignition', 'rail', 'post', 4),
  ],
};
const keyOff: SneakPathsInput = {
  network: held,
  states: [
    { name: 'running', relaysBefore: 'released' },
    { name: 'key off', open: ['key'], relaysBefore: 'energised', deadNodes: ['rail'], deadLoads: ['ignition'] },
    { name: 'battery put back', open: ['key'], relaysBefore: 'released', deadNodes: ['rail'] },
  ],
  faults: [],
  relays: [
    { coil: 'main coil', pickUpV: 7.5, holdV: 3, contacts: [{ switch: 'main contact', closedWhile: 'energised' }] },
  ],
  aliveV: 1,
  by: solveNetwork,
};

describe('published', () => {
  const hand = (place: string) =>
    ({ source: 'circuit-theory', place: `worked by hand: ${place}`, status: 'derived' }) as const;
  const lost = caseOf(braking, 'braking by day', 'tail ground lost');
  // One loop is left: battery, brake switch, brake lamp, tail lamp, parking lamp. I = E / ΣR.
  const currentA = 12.6 / (0.01 + 0.02 + 6.86 + 28.8 + 28.8);
  computed('two lamps with a lost common ground: the current of the loop', hand('lamps in series'), () => {
    expectWithin(load(lost, 'brake lamp').currentA, currentA, 1e-12);
    expectWithin(load(lost, 'tail lamp').currentA, -currentA, 1e-12);
    expectWithin(load(lost, 'parking lamp').currentA, currentA, 1e-12);
  });
  computed('its volts: the tail ground stands high, the tail lamp is turned', hand('lamps in series'), () => {
    expectWithin(node(lost, 'tail').voltageV!, currentA * (28.8 + 28.8), 1e-12);
    expectWithin(node(lost, 'lamp feed').voltageV!, currentA * 28.8, 1e-12);
    expectWithin(load(lost, 'tail lamp').voltageV!, -currentA * 28.8, 1e-12);
    expectWithin(load(lost, 'brake lamp').voltageV!, currentA * 6.86, 1e-12);
  });
  computed('its path', hand('lamps in series'), () => {
    expect(node(lost, 'lamp feed')).toMatchObject({
      fedFrom: 'battery',
      path: ['brake switch', 'brake lamp', 'tail lamp'],
    });
    expect(load(lost, 'tail lamp')).toMatchObject({ path: ['brake switch', 'brake lamp'], backPath: ['parking lamp'] });
    const { unwanted } = sneakPaths(braking);
    // All three have the same volts: their order tells nothing.
    expect(unwanted.map(({ name, fault }) => `${name}, ${fault}`).sort()).toEqual([
      'lamp feed, tail ground lost',
      'parking lamp, tail ground lost',
      'tail lamp, tail ground lost',
    ]);
  });
  const off = caseOf(keyOff, 'key off');
  // The rail stays on the battery through the contact: E in series with 0.02 and 0.005, then 4 Ω beside 60 + 80.
  const aside = 1 / (1 / 4 + 1 / (60 + 80));
  const railV = (12 * aside) / (0.02 + 0.005 + aside);
  computed('a relay holds itself through a warning lamp', hand('relay held in'), () => {
    expectWithin(node(off, 'rail').voltageV!, railV, 1e-12);
    expectWithin(relay(off, 'main coil').coilV, (railV * 80) / (60 + 80), 1e-12);
    expect(relay(off, 'main coil')).toMatchObject({ position: 'held', path: ['main contact', 'warning lamp'] });
    expect(sneakPaths(keyOff).unwanted.map(({ state, name }) => [state, name])).toEqual([
      ['key off', 'rail'],
      ['key off', 'ignition'],
    ]);
  });
  computed('the same relay does not pull in by itself', hand('relay held in'), () => {
    expect(relay(caseOf(keyOff, 'battery put back'), 'main coil')).toMatchObject({ position: 'released', coilV: 0 });
    expect(relay(caseOf(keyOff, 'running'), 'main coil').position).toBe('pulls-in');
  });
});

describe('independent', () => {
  /** The least ohms of all ways without a turn back, along which volts do not rise: every way is walked. */
  function leastOhms(
    edges: readonly { readonly name: string; readonly from: string; readonly to: string; readonly ohm: number }[],
    starts: readonly string[],
    goal: string,
    volts: ReadonlyMap<string, number>,
  ): number {
    let least = Infinity;
    const walk = (at: string, ohm: number, been: readonly string[]): void => {
      if (at === goal) least = Math.min(least, ohm);
      for (const edge of edges) {
        const other = edge.from === at ? edge.to : edge.to === at ? edge.from : null;
        if (other === null || been.includes(other) || !volts.has(other)) continue;
        if (volts.get(other)! > volts.get(at)! + 1e-8) continue;
        walk(other, ohm + edge.ohm, [...been, other]);
      }
    };
    for (const start of starts) walk(start, 0, [start]);
    return least;
  }

  it('volts and shortest ways of 300 random vehicles with switches thrown and branches lost', () => {
    let alive = 0;
    for (let seed = 1; seed <= 300; seed++) {
      const network = randomNetwork(seed, {
        nodes: 5 + (seed % 5),
        loops: seed % 3,
        loads: 2 + (seed % 4),
        diodes: 0,
        switches: 1 + (seed % 3),
        sources: 1 + (seed % 2),
      });
      const next = stream(seed);
      const some = <T extends { readonly name: string }>(list: readonly T[] = []): string[] =>
        list.filter(() => next() < 0.3).map(({ name }) => name);
      const open = some(network.switches);
      const closed = (network.switches ?? []).map(({ name }) => name).filter((name) => !open.includes(name));
      const lost = some(network.branches);
      const away = network.sources.length > 1 && seed % 3 === 0 ? ['v1'] : [];
      const [, one] = sneakPaths({
        network,
        states: [{ name: 'state', open, closed, away, relaysBefore: 'released' }],
        faults: [{ name: 'fault', lost }],
        relays: [],
        aliveV: 0.5,
        by: solveNetwork,
      }).cases;
      const changed: Network = {
        ...network,
        branches: network.branches.filter(({ name }) => !lost.includes(name)),
        sources: network.sources.filter(({ name }) => !away.includes(name)),
        switches: network.switches!.map((each) => ({ ...each, closed: closed.includes(each.name) })),
      };
      const volts = denseVolts(changed);
      const edges = [
        ...changed.branches,
        ...changed.switches!.filter((each) => each.closed),
        ...changed.loads!.map(({ load: it, ...rest }) => ({ ...rest, ...(it as { resistanceOhm: number }) })),
        // A battery that is charged passes current on.
        ...changed.sources.filter(
          ({ from, to, voltageV }) => volts.has(from) && volts.has(to) && volts.get(to)! - volts.get(from)! > voltageV,
        ),
      ].map(({ name, from, to, resistanceOhm }) => ({ name, from, to, ohm: resistanceOhm }));
      const ohmOf = new Map(edges.map(({ name, ohm }) => [name, ohm]));
      const starts = changed.sources.map(({ to }) => to);
      for (const each of one!.nodes) {
        const v = volts.get(each.node);
        if (v === undefined) {
          expect(each.voltageV).toBeNull();
          continue;
        }
        expect(Math.abs(each.voltageV! - v)).toBeLessThan(1e-9);
        expect(each.alive).toBe(Math.abs(v) > 0.5);
        if (!(v > 0.5)) continue;
        alive++;
        const least = leastOhms(edges, starts, each.node, volts);
        expect(least).toBeLessThan(Infinity);
        const found = each.path.reduce((sum, name) => sum + ohmOf.get(name)!, 0);
        expectWithin(found + 1, least + 1, 1e-12);
        // The elements follow one another from the source's positive end to the node.
        let at = changed.sources.find(({ name }) => name === each.fedFrom)!.to;
        for (const name of each.path) {
          const edge = edges.find((candidate) => candidate.name === name)!;
          expect([edge.from, edge.to]).toContain(at);
          at = edge.from === at ? edge.to : edge.from;
        }
        expect(at).toBe(each.node);
      }
      for (const each of one!.loads) {
        if (each.voltageV === null || Math.abs(each.voltageV) < 1e-6) continue;
        // Out and back make a loop from a source's positive end to a negative one.
        const own = changed.loads!.find(({ name }) => name === each.name)!;
        let at = each.voltageV > 0 ? own.to : own.from;
        for (const name of each.backPath) {
          const edge = edges.find((candidate) => candidate.name === name)!;
          at = edge.from === at ? edge.to : edge.from;
        }
        expect(changed.sources.map(({ from }) => from)).toContain(at);
      }
    }
    expect(alive).toBeGreaterThan(500);
  });

  it('a node without any tie has no volts and is not alive', () => {
    for (let seed = 1; seed <= 60; seed++) {
      const network = randomNetwork(seed, { nodes: 10, loops: 1, loads: 2, diodes: 0, switches: 2, sources: 1 });
      const lost = network.branches.filter((_, i) => (i + seed) % 2 === 0).map(({ name }) => name);
      const [one] = sneakPaths({
        network,
        states: [{ name: 'lost', lost, relaysBefore: 'released' }],
        faults: [],
        relays: [],
        aliveV: 0.1,
        by: solveNetwork,
      }).cases;
      const tied = reached(
        network.reference,
        [
          ...network.branches.filter(({ name }) => !lost.includes(name)),
          ...network.switches!.filter(({ closed }) => closed),
          ...network.sources,
          ...network.loads!,
        ].map(({ from, to }) => [from, to] as const),
      );
      for (const name of nodesOf(network)) {
        expect(node(one!, name).voltageV === null, name).toBe(!tied.has(name));
      }
    }
  });
});

describe('laws', () => {
  it('the order of states and faults changes nothing but the order', () => {
    const turned = sneakPaths({ ...keyOff, states: [...keyOff.states].reverse() });
    expect([...turned.cases].reverse()).toEqual(sneakPaths(keyOff).cases);
  });
  it('a relay that is in stays in for every lower volts of holding, and lets go above its volts', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 7.5, noNaN: true }), (holdV) => {
        const [only] = keyOff.relays;
        const at = caseOf({ ...keyOff, relays: [{ ...only!, holdV }] }, 'key off');
        const aside = 1 / (1 / 4 + 1 / 140);
        const coilV = ((12 * aside) / (0.025 + aside)) * (80 / 140);
        expect(relay(at, 'main coil').position).toBe(coilV >= holdV ? 'held' : 'released');
      }),
      { numRuns: 50 },
    );
  });
  it('more volts to count as alive never makes more alive', () => {
    const count = (aliveV: number): number =>
      sneakPaths({ ...braking, aliveV }).cases.flatMap(({ nodes }) => nodes.filter(({ alive }) => alive)).length;
    expect(count(0.5)).toBeGreaterThan(count(6));
    expect(count(6)).toBeGreaterThan(count(13));
  });
  it('two relays in a chain fall one after the other', () => {
    const chain: SneakPathsInput = {
      ...keyOff,
      network: {
        ...held,
        switches: [
          ...held.switches!,
          { name: 'pump contact', from: 'plus', to: 'pump feed', closed: false, resistanceOhm: 0.005 },
        ],
        loads: [...held.loads!, ohms('pump coil', 'rail', 'post', 90), ohms('pump', 'pump feed', 'post', 2)],
      },
      relays: [
        { ...keyOff.relays[0]!, holdV: 7 },
        { coil: 'pump coil', pickUpV: 7, holdV: 3, contacts: [{ switch: 'pump contact', closedWhile: 'energised' }] },
      ],
    };
    const at = caseOf(chain, 'key off');
    expect(at.relays.map(({ position }) => position)).toEqual(['released', 'released']);
    expect(node(at, 'pump feed').alive).toBe(false);
    expect(caseOf(chain, 'running').relays.map(({ position }) => position)).toEqual(['pulls-in', 'pulls-in']);
  });
  it('a break contact in its own feed buzzes', () => {
    const buzzer: SneakPathsInput = {
      ...keyOff,
      network: {
        ...held,
        switches: [{ name: 'own contact', from: 'plus', to: 'coil feed', closed: true, resistanceOhm: 0.05 }],
        loads: [ohms('coil', 'coil feed', 'post', 80)],
      },
      states: [{ name: 'on', relaysBefore: 'released' }],
      relays: [{ coil: 'coil', pickUpV: 7, holdV: 3, contacts: [{ switch: 'own contact', closedWhile: 'released' }] }],
    };
    expect(caseOf(buzzer, 'on').relays[0]!.position).toBe('buzzes');
  });
});

describe('edges', () => {
  it('everything lost: nothing is alive', () => {
    const all = sneakPaths({
      ...braking,
      states: [{ ...braking.states[0]!, away: ['battery'] }],
    });
    expect(all.unwanted).toEqual([]);
    expect(all.cases.every(({ nodes }) => nodes.every(({ alive }) => !alive))).toBe(true);
    expect(all.checks.every(({ ok }) => ok)).toBe(true);
  });
  it('a load with both ends on one node, and a source below the reference', () => {
    const odd = sneakPaths({
      ...braking,
      network: {
        ...tail,
        sources: [...tail.sources, { name: 'bias', from: 'minus', to: 'post', voltageV: 5, resistanceOhm: 1 }],
        loads: [...tail.loads!, ohms('ring', 'tail', 'tail', 5), ohms('pull', 'minus', 'sense', 100)],
      },
    });
    expect(load(odd.cases[0]!, 'ring')).toMatchObject({ voltageV: 0, currentA: 0, alive: false });
    expect(node(odd.cases[0]!, 'sense')).toMatchObject({ voltageV: -5, alive: true, fedFrom: 'bias', path: ['pull'] });
  });
  it('refuses what it cannot know', () => {
    refusesNonsense(sneakPaths, braking, { required: ['aliveV'] });
    const state = (over: object): SneakPathsInput => ({ ...braking, states: [{ ...braking.states[0]!, ...over }] });
    const bad = (input: SneakPathsInput, field: string, rule?: 'oneOf' | 'missing' | 'list' | 'order' | 'atMost') => {
      expectInputError(() => sneakPaths(input), field, rule);
    };
    bad(state({ open: ['no such switch'] }), 'states[0].open[0]', 'oneOf');
    bad(state({ open: ['brake switch'] }), 'states[0].closed', 'oneOf');
    bad(state({ away: ['no such battery'] }), 'states[0].away[0]', 'oneOf');
    bad(state({ lost: ['no such strap'] }), 'states[0].lost[0]', 'oneOf');
    bad(state({ deadNodes: ['nowhere'] }), 'states[0].deadNodes[0]', 'oneOf');
    bad(state({ deadLoads: ['nothing'] }), 'states[0].deadLoads[0]', 'oneOf');
    bad(state({ relaysBefore: undefined }), 'states[0].relaysBefore', 'missing');
    bad({ ...braking, states: [] }, 'states', 'list');
    bad({ ...braking, states: [braking.states[0]!, braking.states[0]!] }, 'states[1].name', 'order');
    bad({ ...braking, faults: [{ name: 'x', lost: ['nothing'] }] }, 'faults[0].lost[0]', 'oneOf');
    const twice = braking.network.branches[0]!.name;
    const same = { name: 'x', lost: [twice] };
    bad({ ...braking, faults: [same, same] }, 'faults[1].name', 'order');
    bad({ ...keyOff, relays: [{ ...keyOff.relays[0]!, coil: 'nothing' }] }, 'relays[0].coil', 'oneOf');
    expectInputError(() => sneakPaths({ ...keyOff, relays: [null as never] }), 'relays[0]', 'object');
    bad({ ...keyOff, relays: [{ ...keyOff.relays[0]!, contacts: 'x' as never }] }, 'relays[0].contacts', 'list');
    bad({ ...keyOff, relays: [{ ...keyOff.relays[0]!, holdV: 8 }] }, 'relays[0].holdV', 'atMost');
    bad(
      { ...keyOff, relays: [{ ...keyOff.relays[0]!, contacts: [{ switch: 'x', closedWhile: 'energised' }] }] },
      'relays[0].contacts[0].switch',
      'oneOf',
    );
    bad({ ...braking, network: { ...tail, reference: '' } }, 'reference');
    bad({ ...braking, network: { ...tail, branches: [...tail.branches, ...tail.branches] } }, 'branches[1].name');
    bad({ ...braking, network: null as never }, 'network');
  });
});
