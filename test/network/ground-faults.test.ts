import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  filamentLamp,
  type GroundFaultCase,
  groundFaults,
  groundFaultsEach,
  type GroundFaultsInput,
  type InputRule,
  type Load,
  type Network,
  type NetworkBranch,
  type NetworkLoad,
  prepareGroundFaults,
  settleNetwork,
  solveNetwork,
} from 'loomwright';
import { expectInputError } from '../support/edge.js';
import { computed, expectWithin } from '../support/published.js';
import { simulate } from '../support/simulator.js';
import { cutOff, denseVolts, nodesOf, randomNetwork, type RandomShape } from './random-network.js';

const wire = (name: string, from: string, to: string, resistanceOhm: number): NetworkBranch => ({
  name,
  from,
  to,
  resistanceOhm,
});
const load = (name: string, from: string, to: string, what: number | Load): NetworkLoad => ({
  name,
  from,
  to,
  load: typeof what === 'number' ? { kind: 'resistance', resistanceOhm: what } : what,
});
const battery = (voltageV: number, resistanceOhm: number): Network['sources'] => [
  { name: 'battery', from: 'post', to: 'plus', voltageV, resistanceOhm },
];
const without = (network: Network, lost: readonly string[]): Network => ({
  ...network,
  branches: network.branches.filter(({ name }) => !lost.includes(name)),
});
const caseOf = (input: GroundFaultsInput, ...lost: readonly string[]): GroundFaultCase =>
  groundFaults(input).cases.find((each) => each.lost.join() === lost.join())!;

// A starter on an engine with a strap, a body with another, and a throttle cable between them.
const starter: GroundFaultsInput = {
  network: {
    reference: 'post',
    branches: [
      wire('engine strap', 'engine', 'post', 0.0005),
      wire('body strap', 'body', 'post', 0.001),
      wire('throttle cable', 'engine', 'body', 0.02),
    ],
    sources: battery(12.6, 0.006),
    loads: [load('starter', 'plus', 'engine', 0.045)],
  },
  grounds: ['engine strap', 'body strap'],
  pairs: false,
  watched: [{ name: 'coolant sensor', node: 'engine', against: 'body', permittedMv: 20 }],
  limited: [{ branch: 'throttle cable', limitA: 1 }],
  detail: 'every-node',
  exact: false,
  prepare: prepareGroundFaults,
  by: solveNetwork,
};

// Two lamps on one ground at the tail, and a third at the front on the feed of the second.
const lamps: GroundFaultsInput = {
  ...starter,
  network: {
    reference: 'post',
    branches: [wire('tail strap', 'tail', 'post', 0.004), wire('brake wire', 'plus', 'brake feed', 0.03)],
    sources: battery(12.6, 0.01),
    loads: [
      load('brake lamp', 'brake feed', 'tail', 6.86),
      load('tail lamp', 'lamp feed', 'tail', 28.8),
      load('parking lamp', 'lamp feed', 'post', 28.8),
    ],
  },
  grounds: ['tail strap'],
  watched: [{ name: 'tail ground', node: 'tail', against: 'post', permittedMv: 100 }],
  limited: [],
};

// A fan on the nose; sensors are grounded on the engine, their controller on the body.
const fan: GroundFaultsInput = {
  ...starter,
  network: {
    reference: 'post',
    branches: [
      wire('engine strap', 'engine', 'post', 0.0005),
      wire('body strap', 'body', 'post', 0.001),
      wire('braid', 'engine', 'body', 0.004),
    ],
    sources: battery(13.8, 0.01),
    loads: [load('fan', 'plus', 'body', { kind: 'constant-current', currentA: 22 })],
    settle: settleNetwork,
  },
  grounds: ['engine strap', 'body strap', 'braid'],
  watched: [{ name: 'coolant sensor', node: 'engine', against: 'body', permittedMv: 10 }],
  limited: [],
};

describe('published', () => {
  const hand = (place: string) =>
    ({ source: 'circuit-theory', place: `worked by hand: ${place}`, status: 'derived' }) as const;
  const beside = (a: number, b: number): number => (a * b) / (a + b);
  {
    // Intact: the strap beside cable and body strap. Lost: cable and body strap in series are the only way back.
    const backOhm = beside(0.0005, 0.02 + 0.001);
    const intactA = 12.6 / (0.006 + 0.045 + backOhm);
    const lostA = 12.6 / (0.006 + 0.045 + 0.02 + 0.001);
    const lost = caseOf(starter, 'engine strap');
    const cite = hand('a starter through a throttle cable');
    computed('current in the cable, strap on and off', cite, () => {
      expectWithin(lost.limited[0]!.intactA, (intactA * backOhm) / 0.021, 1e-12);
      expectWithin(lost.limited[0]!.currentA!, lostA, 1e-12);
    });
    computed('engine and sensor shift by what the cable loses', cite, () => {
      const engine = groundFaults(starter).nodes.indexOf('engine');
      expectWithin(lost.nodeShiftMv![engine]!, 1000 * (lostA * 0.021 - intactA * backOhm), 1e-12);
      expectWithin(lost.watched[0]!.offsetMv!, 1000 * lostA * 0.02, 1e-12);
      expectWithin(lost.watched[0]!.shiftMv!, 1000 * 0.02 * (lostA - (intactA * backOhm) / 0.021), 1e-12);
    });
    computed('the cable decides, by 175 times its limit', cite, () => {
      expect(lost.decidedBy).toBe('current in throttle cable');
      const check = lost.checks.find(({ name }) => name === 'current in throttle cable')!;
      expectWithin(check.value!, 12.6 / 0.072, 1e-12);
      expect(check.ok).toBe(false);
      expect(groundFaults(starter).cases[0]!.lost).toEqual(['engine strap']);
    });
  }
  {
    // E over the sum of one loop: battery, brake wire, brake lamp, tail lamp, parking lamp.
    const currentA = 12.6 / (0.01 + 0.03 + 6.86 + 28.8 + 28.8);
    const lost = caseOf(lamps, 'tail strap');
    const cite = hand('two lamps with a lost common ground');
    computed('the tail ground rises', cite, () => {
      expectWithin(lost.watched[0]!.offsetMv!, 1000 * currentA * 57.6, 1e-12);
    });
    computed('both lamps on it keep some volts, one turned round', cite, () => {
      expect(lost.cutOff).toEqual(['tail']);
      expect(lost.cutLoads.map(({ name, dead }) => [name, dead])).toEqual([
        ['brake lamp', false],
        ['tail lamp', false],
      ]);
      expectWithin(lost.cutLoads[0]!.voltageV!, currentA * 6.86, 1e-11);
      expectWithin(lost.cutLoads[1]!.voltageV!, -currentA * 28.8, 1e-11);
    });
  }
  {
    // 22 A into the body, which has two ways to the post: its strap, and braid with engine strap.
    const backOhm = beside(0.001, 0.004 + 0.0005);
    const braidA = (22 * backOhm) / (0.004 + 0.0005);
    const cite = hand('a fan shifts a sensor');
    computed('offset of the sensor with all straps on', cite, () => {
      expectWithin(groundFaults(fan).intact.watched[0]!.offsetMv!, -1000 * braidA * 0.004, 1e-12);
    });
    computed('body strap lost: all goes through the braid', cite, () => {
      expectWithin(caseOf(fan, 'body strap').watched[0]!.offsetMv!, -1000 * 22 * 0.004, 1e-12);
      expectWithin(caseOf(fan, 'body strap').watched[0]!.shiftMv!, -4 * (22 - braidA), 1e-12);
    });
    computed('engine strap lost: nothing flows in the braid', cite, () => {
      expect(Math.abs(caseOf(fan, 'engine strap').watched[0]!.offsetMv!)).toBeLessThan(1e-9);
    });
    computed('braid lost: the whole of the body strap stands between', cite, () => {
      expectWithin(caseOf(fan, 'braid').watched[0]!.offsetMv!, -1000 * 22 * 0.001, 1e-12);
    });
  }
});

describe('independent', () => {
  const shape = (seed: number): RandomShape => ({
    nodes: 6 + (seed % 12),
    loops: seed % 5,
    loads: 2 + (seed % 6),
    diodes: 0,
    switches: seed % 3,
    sources: 1 + (seed % 2),
  });
  const asked = (seed: number, network: Network): GroundFaultsInput => {
    const nodes = nodesOf(network);
    return {
      network,
      grounds: network.branches.slice(0, 6).map(({ name }) => name),
      pairs: true,
      watched: [1, 2, 3].map((i) => ({
        name: `w${i}`,
        node: nodes[(seed * i) % nodes.length]!,
        against: nodes[(seed + i) % nodes.length]!,
        permittedMv: 10,
      })),
      limited: network.branches.slice(-3).map(({ name }) => ({ branch: name, limitA: 1 })),
      detail: 'every-node',
      exact: false,
      prepare: prepareGroundFaults,
      by: solveNetwork,
    };
  };

  it('300 random networks with loops and shared grounds, every loss and every pair, against full elimination', () => {
    const how: Record<string, number> = {};
    for (let seed = 1; seed <= 300; seed++) {
      const network = randomNetwork(seed, shape(seed));
      const input = asked(seed, network);
      const before = denseVolts(network);
      const result = groundFaults(input);
      const brief = groundFaults({ ...input, detail: 'watched' });
      const single = groundFaults({ ...input, detail: 'watched', pairs: false });
      for (const each of result.cases) {
        how[each.solvedBy] = (how[each.solvedBy] ?? 0) + 1;
        const after = denseVolts(without(network, each.lost));
        const shift = (node: string): number | null => {
          const [v, w] = [before.get(node), after.get(node)];
          return v === undefined || w === undefined ? null : w - v;
        };
        const near = (actual: number | null, wanted: number | null, what: string): void => {
          if (wanted === null) expect(actual, what).toBeNull();
          else expect(Math.abs(actual! / 1000 - wanted), what).toBeLessThanOrEqual(1e-9);
        };
        result.nodes.forEach((node, i) => {
          near(each.nodeShiftMv![i]!, shift(node), `${seed}: ${node} without ${each.lost.join()}`);
        });
        each.watched.forEach(({ shiftMv }, i) => {
          const { node, against } = input.watched[i]!;
          const [v, w] = [shift(node), shift(against)];
          near(shiftMv, v === null || w === null ? null : v - w, `${seed}: ${node} against ${against}`);
        });
        each.limited.forEach(({ branch, currentA }) => {
          const { from, to, resistanceOhm } = network.branches.find(({ name }) => name === branch)!;
          const [v, w] = [after.get(from), after.get(to)];
          if (each.lost.includes(branch)) expect(currentA).toBe(0);
          else if (v === undefined || w === undefined) expect(currentA).toBeNull();
          else expect(Math.abs(currentA! - (v - w) / resistanceOhm)).toBeLessThan(1e-8 * (1 + Math.abs(currentA!)));
        });
        for (const other of each.lost.length === 1 ? [brief, single] : [brief]) {
          const same = other.cases.find(({ lost }) => lost.join() === each.lost.join())!;
          expect(same.nodeShiftMv).toBeNull();
          same.watched.forEach(({ shiftMv }, i) => {
            const whole = each.watched[i]!.shiftMv;
            if (whole === null) expect(shiftMv).toBeNull();
            else expect(Math.abs(shiftMv! - whole)).toBeLessThan(1e-6);
          });
        }
      }
    }
    // Both ways are walked.
    expect(how['update']).toBeGreaterThan(1000);
    expect(how['anew']).toBeGreaterThan(1000);
  });

  it('what is cut off, in 400 random networks with diodes, against a plain walk', () => {
    let islands = 0;
    for (let seed = 1; seed <= 400; seed++) {
      const network = { ...randomNetwork(seed, { ...shape(seed), diodes: seed % 4 }), diodes: [] };
      const result = groundFaults({ ...asked(seed, network), watched: [], limited: [], detail: 'watched' });
      const loose = new Set(cutOff(network, []));
      expect(new Set(result.looseNodes)).toEqual(loose);
      for (const { lost, cutOff: found } of result.cases) {
        const wanted = cutOff(network, lost).filter((node) => !loose.has(node));
        if (wanted.length > 0) islands++;
        expect([...found].sort(), `${seed}: ${lost.join()}`).toEqual(wanted.sort());
      }
    }
    expect(islands).toBeGreaterThan(1000);
  });

  it('the whole-array form gives the same shifts, by either detail', () => {
    for (let seed = 1; seed <= 100; seed++) {
      const network = randomNetwork(seed, { ...shape(seed), loops: 6 });
      const { grounds, watched } = asked(seed, network);
      const before = denseVolts(network);
      const prepared = prepareGroundFaults({ network, grounds, watched, by: solveNetwork });
      const every = groundFaultsEach({ prepared, detail: 'every-node' });
      const few = groundFaultsEach({ prepared, detail: 'watched' });
      grounds.forEach((name, k) => {
        expect(Math.abs(every.otherShare[k]! - few.otherShare[k]!)).toBeLessThan(1e-10);
        if (every.otherShare[k]! < 1e-5) return;
        const after = denseVolts(without(network, [name]));
        const shift = (node: string): number => after.get(node)! - before.get(node)!;
        prepared.nodes.forEach((node, i) => {
          if (!before.has(node)) return;
          expect(Math.abs(every.shiftV[k * prepared.nodes.length + i]! - shift(node))).toBeLessThan(1e-9);
        });
        watched.forEach(({ node, against }, r) => {
          if (!before.has(node) || !before.has(against)) return;
          expect(Math.abs(few.shiftV[k * watched.length + r]! - shift(node) + shift(against))).toBeLessThan(1e-9);
        });
      });
    }
  });

  it('a circuit simulator gives the same volts with a ground lost', async () => {
    for (let seed = 1; seed <= 24; seed++) {
      const network = randomNetwork(seed, { ...shape(seed), switches: 0, loops: 3 + (seed % 3) });
      const [first] = network.branches.filter(({ from, to }) => from.startsWith('g') && to.startsWith('g'));
      const lost = first!.name;
      const input = { ...asked(seed, network), grounds: [lost], pairs: false };
      if (cutOff(network, [lost]).length > 0) continue;
      const result = groundFaults(input);
      const node = (name: string): string => (name === network.reference ? '0' : name);
      const vectors = await simulate(
        [
          ...without(network, [lost]).branches.map(
            (b) => `r${b.name} ${node(b.from)} ${node(b.to)} ${b.resistanceOhm}`,
          ),
          ...network.loads!.map(
            (l) => `rl${l.name} ${node(l.from)} ${node(l.to)} ${(l.load as { resistanceOhm: number }).resistanceOhm}`,
          ),
          ...network.sources.flatMap((s) => [
            `v${s.name} x${s.name} ${node(s.from)} ${s.voltageV}`,
            `ri${s.name} x${s.name} ${node(s.to)} ${s.resistanceOhm}`,
          ]),
          '.option reltol=1e-12 abstol=1e-15 vntol=1e-15 gmin=1e-20',
          '.op',
        ].join('\n'),
      );
      result.nodes.forEach((name, i) => {
        if (name === network.reference) return;
        const volts = result.intactV[i]! + result.cases[0]!.nodeShiftMv![i]! / 1000;
        expect(Math.abs(volts - vectors[`v(${name})`]![0]!), `${seed}: ${name}`).toBeLessThan(1e-9 * 14);
      });
    }
  });
});

describe('loads and diodes', () => {
  const volts = (network: Network): ReadonlyMap<string, number | null> =>
    new Map(solveNetwork(network).nodes.map(({ name, voltageV }) => [name, voltageV]));
  const same = (input: GroundFaultsInput, each: GroundFaultCase, nodes: readonly string[], within: number): void => {
    const before = volts(input.network);
    const after = volts(without(input.network, each.lost));
    nodes.forEach((node, i) => {
      const [v, w] = [before.get(node) ?? null, after.get(node) ?? null];
      const shift = each.nodeShiftMv![i]!;
      if (v === null || w === null) expect(shift, node).toBeNull();
      else expect(Math.abs(shift / 1000 - (w - v)), `${node} without ${each.lost.join()}`).toBeLessThan(within);
    });
  };

  it('linear networks: every loss is what the network without the branch settles at', () => {
    for (let seed = 1; seed <= 60; seed++) {
      const network = randomNetwork(seed, { nodes: 12, loops: 4, loads: 5, diodes: 0, switches: 2, sources: 2 });
      const grounds = network.branches.slice(0, 5).map(({ name }) => name);
      const input = { ...starter, network, grounds, watched: [], limited: [] };
      const { cases, nodes } = groundFaults(input);
      for (const each of cases) same(input, each, nodes, 1e-9);
    }
  });
  it('diodes: where one would change its state the case settles again', () => {
    const how: Record<string, number> = {};
    for (let seed = 1; seed <= 120; seed++) {
      const network = randomNetwork(seed, {
        nodes: 10,
        loops: 4,
        loads: 5,
        diodes: 1 + (seed % 3),
        switches: 1,
        sources: 2,
      });
      const grounds = network.branches.slice(0, 5).map(({ name }) => name);
      const input = { ...starter, network, grounds, watched: [], limited: [] };
      const { cases, nodes } = groundFaults(input);
      for (const each of cases) {
        how[each.solvedBy] = (how[each.solvedBy] ?? 0) + 1;
        same(input, each, nodes, 1e-8);
      }
    }
    expect(how['exact']).toBeGreaterThan(3);
    expect(how['update']).toBeGreaterThan(100);
  });
  it('lamps settle again where asked, and are near it where not', () => {
    const lamp = (ratedPowerW: number): Load => ({ kind: 'lamp', ratedPowerW, ratedV: 12, law: filamentLamp });
    const network: Network = {
      ...lamps.network,
      loads: [
        load('brake lamp', 'brake feed', 'tail', lamp(21)),
        load('tail lamp', 'lamp feed', 'tail', lamp(5)),
        load('parking lamp', 'lamp feed', 'post', lamp(5)),
      ],
      settle: settleNetwork,
    };
    const exact = { ...lamps, network, exact: true };
    const { cases, nodes } = groundFaults(exact);
    expect(cases[0]!.solvedBy).toBe('exact');
    same(exact, cases[0]!, nodes, 1e-9);
    expect(caseOf({ ...exact, exact: false }, 'tail strap').solvedBy).not.toBe('exact');
  });
  it('a given current that finds no volts settles again', () => {
    const input: GroundFaultsInput = {
      ...starter,
      network: {
        ...starter.network,
        loads: [load('pump', 'plus', 'engine', { kind: 'constant-current', currentA: 300 })],
        settle: settleNetwork,
      },
    };
    const weak = {
      ...input,
      network: {
        ...input.network,
        branches: [...input.network.branches.slice(0, 2), wire('throttle cable', 'engine', 'body', 0.2)],
      },
    };
    const each = caseOf(weak, 'engine strap');
    expect(each.solvedBy).toBe('exact');
    expect(solveNetwork(without(weak.network, ['engine strap'])).loads[0]!.fed).toBe(false);
  });
});

describe('laws', () => {
  it('shifts grow with the volts of a linear network', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 10, noNaN: true }), (k) => {
        const scaled = { ...starter, network: { ...starter.network, sources: battery(12.6 * k, 0.006) } };
        expectWithin(
          caseOf(scaled, 'engine strap').watched[0]!.shiftMv!,
          k * caseOf(starter, 'engine strap').watched[0]!.shiftMv!,
          1e-10,
        );
      }),
      { numRuns: 20 },
    );
  });
  it('the order of the grounds changes nothing', () => {
    expect(groundFaults({ ...fan, grounds: [...fan.grounds].reverse() }).cases.map(({ lost }) => lost)).toEqual(
      groundFaults(fan).cases.map(({ lost }) => lost),
    );
  });
});

describe('edges', () => {
  it('no grounds, all grounds, both ends on one node, 0 Ω', () => {
    expect(groundFaults({ ...starter, grounds: [] }).cases).toEqual([]);
    const all = caseOf({ ...starter, pairs: true }, 'engine strap', 'body strap');
    expect([...all.cutOff].sort()).toEqual(['body', 'engine']);
    expect(all.cutLoads).toMatchObject([{ name: 'starter', dead: true }]);
    const ring = { ...starter.network, branches: [...starter.network.branches, wire('ring', 'body', 'body', 0.01)] };
    expect(
      Math.abs(caseOf({ ...starter, network: ring, grounds: ['ring'] }, 'ring').watched[0]!.shiftMv!),
    ).toBeLessThan(1e-9);
    const ideal = {
      ...starter.network,
      branches: [wire('engine strap', 'engine', 'post', 0), ...starter.network.branches.slice(1)],
    };
    const lost = caseOf({ ...starter, network: ideal }, 'engine strap');
    expectWithin(lost.limited[0]!.currentA!, 12.6 / 0.072, 1e-12);
    expectInputError(
      () => prepareGroundFaults({ network: ideal, grounds: ['engine strap'], watched: [], by: solveNetwork }),
      'grounds[0]',
      'above',
    );
  });
  it('refuses what it cannot know', () => {
    const bad = (over: Partial<GroundFaultsInput>, field: string, rule?: InputRule): void => {
      expectInputError(() => groundFaults({ ...starter, ...over }), field, rule);
    };
    bad({ grounds: ['no such strap'] }, 'grounds[0]', 'oneOf');
    bad({ grounds: ['body strap', 'body strap'] }, 'grounds[1]', 'order');
    bad({ watched: [{ ...starter.watched[0]!, node: 'nowhere' }] }, 'watched[0].node', 'oneOf');
    bad({ watched: [{ ...starter.watched[0]!, permittedMv: 0 }] }, 'watched[0].permittedMv', 'above');
    bad({ limited: [{ branch: 'no such wire', limitA: 1 }] }, 'limited[0].branch', 'oneOf');
    bad({ limited: [{ branch: 'throttle cable', limitA: -1 }] }, 'limited[0].limitA', 'above');
    bad({ detail: 'some' as never }, 'detail', 'oneOf');
    bad({ pairs: undefined as never }, 'pairs', 'missing');
    bad({ exact: 1 as never }, 'exact', 'oneOf');
    bad({ network: null as never }, 'network', 'object');
    for (const value of [undefined, null, 3, []])
      expectInputError(() => groundFaults(value as never), 'input', 'object');
  });
});
