import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { settleNetwork, solveNetwork, solvePath, type InputRule, type Network } from 'loomwright';
import { cpuMs } from '../support/cpu.js';
import { expectInputError } from '../support/edge.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';
import { simulate } from '../support/simulator.js';
import { addsUp, balances, diode, load, source, toggle, voltsOf, wire } from './parts.js';
import { cutOff, denseVolts, nodesOf, randomNetwork, reached, type RandomShape } from './random-network.js';

const volts = (network: Network, node: string): number => voltsOf(solveNetwork(network), node);
const amps = (network: Network, name: string): number => {
  const { branches, sources, loads, switches } = solveNetwork(network);
  return [...branches, ...sources, ...loads, ...switches].find((each) => each.name === name)!.currentA!;
};

describe('published', () => {
  const lec = (place: string) =>
    ({ source: 'lessons-electric-circuits', place: `volume I, ${place}`, status: 'published' }) as const;
  {
    const chain = (voltageV: number): Network => ({
      reference: '0',
      branches: [wire('R1', '1', '2', 5000), wire('R2', '2', '3', 10000), wire('R3', '3', '0', 7500)],
      sources: [source('V', '0', '1', voltageV, 0)],
    });
    const cite = lec('chapter 6, 5 k, 10 k, 7.5 k in series');
    const drop = (voltageV: number, i: number): number => solveNetwork(chain(voltageV)).branches[i]!.dropV;
    computed('three in series: mA', cite, () => {
      expectPrinted(amps(chain(45), 'R1') * 1000, '2');
    });
    computed('three in series: volts of each', cite, () => {
      expectPrinted(drop(45, 0), '10');
      expectPrinted(drop(45, 1), '20');
      expectPrinted(drop(45, 2), '15');
    });
    computed('three in series: R1 at 180 V', cite, () => {
      expectPrinted(drop(180, 0), '40');
    });
  }
  {
    const cite = lec('chapter 10, 28 V behind 4 Ω and 7 V behind 1 Ω');
    const two = (loads: Network['loads'], more: Network['branches'] = []): Network => ({
      reference: '0',
      branches: more,
      sources: [source('a', '0', 'n', 28, 4), source('b', '0', 'n', 7, 1)],
      ...(loads === undefined ? {} : { loads }),
    });
    const loaded = two([load('load', 'n', '0', 2)]);
    computed('two batteries: open volts', cite, () => {
      expectPrinted(volts(two([]), 'n'), '11.2');
    });
    computed('two batteries: amps into a short', cite, () => {
      expectPrinted(amps(two([], [wire('short', 'n', '0', 0)]), 'short'), '14');
    });
    computed('two batteries: source resistance', cite, () => {
      expectPrinted(volts(two([]), 'n') / amps(two([], [wire('short', 'n', '0', 0)]), 'short'), '0.8');
    });
    computed('two batteries: volts and amps of 2 Ω', cite, () => {
      expectPrinted(volts(loaded, 'n'), '8');
      expectPrinted(amps(loaded, 'load'), '4');
    });
    computed('two batteries: drops on 4, 2 and 1 Ω', cite, () => {
      expectPrinted(28 - volts(loaded, 'n'), '20');
      expectPrinted(volts(loaded, 'n'), '8');
      expectPrinted(-amps(loaded, 'b'), '1');
    });
    computed('two batteries: all three in parallel, mΩ', cite, () => {
      const beside: Network = {
        reference: '0',
        branches: [wire('4', 'n', '0', 4), wire('1', 'n', '0', 1), wire('2', 'n', '0', 2)],
        sources: [source('test', '0', 'n', 1, 0)],
      };
      expectPrinted(1000 / amps(beside, 'test'), '571.43');
    });
    computed('two batteries: 0.8 Ω takes the most power', lec('chapter 10, maximum power'), () => {
      const power = (ohm: number): number => solveNetwork(two([load('load', 'n', '0', ohm)])).loads[0]!.powerW;
      expect(power(0.8)).toBeGreaterThan(power(0.5));
      expect(power(0.8)).toBeGreaterThan(power(1.1));
    });
  }
  {
    const bridge = (voltageV: number, [r1, r2, r3, r4, r5]: readonly [number, number, number, number, number]) =>
      solveNetwork({
        reference: '0',
        branches: [wire('R1', '1', '2', r1), wire('R2', '1', '3', r2), wire('R3', '2', '3', r3)],
        sources: [source('V', '0', '1', voltageV, 0)],
        loads: [load('R4', '2', '0', r4), load('R5', '3', '0', r5)],
      });
    const one = bridge(24, [150, 50, 100, 300, 250]);
    const cite = lec('chapter 10, unbalanced bridge, listing of the simulator');
    computed('bridge of 24 V: nodes 2 and 3', cite, () => {
      expectPrinted(voltsOf(one, '2'), '17.66');
      expectPrinted(voltsOf(one, '3'), '19.31');
    });
    computed('bridge of 24 V: across R1, R2 and R3', cite, () => {
      expectPrinted(one.branches[0]!.dropV, '6.345');
      expectPrinted(one.branches[1]!.dropV, '4.690');
      expectPrinted(-one.branches[2]!.dropV, '1.655');
    });
    const other = bridge(10, [12, 18, 6, 18, 12]);
    const ten = lec('chapter 10, unbalanced bridge of 10 V, listing of the simulator');
    computed('bridge of 10 V: nodes 2 and 3', ten, () => {
      expectPrinted(voltsOf(other, '2'), '5.294');
      expectPrinted(voltsOf(other, '3'), '4.706');
    });
    computed('bridge of 10 V: across R3', ten, () => {
      expectPrinted(other.branches[2]!.dropV, '0.5882');
    });
  }
  computed('two sources, one below the reference', lec('chapter 10, node voltages, 10 V and −4 V'), () => {
    const net: Network = {
      reference: '0',
      branches: [wire('R2', '1', '0', 4), wire('R3', '1', '2', 2.5), wire('R4', '2', '0', 5)],
      sources: [source('10 V', '0', '1', 10, 2), source('4 V', '2', '0', 4, 1)],
    };
    expectPrinted(volts(net, '1'), '3.809524');
    expectPrinted(volts(net, '2'), '-1.547619');
  });
  {
    const cite = lec('chapter 16, 20 V through 2 k, 500 Ω and 3 k');
    const net = (branches: Network['branches']): Network => ({
      reference: '0',
      branches: [wire('2 k', 's', 'a', 2000), wire('3 k', 'b', '0', 3000), ...branches],
      sources: [source('V', '0', 's', 20, 0)],
    });
    const open = solveNetwork(net([wire('500', 'a', 'b', 500)])).branches[2]!.dropV;
    const shortA = amps(net([wire('500', 'a', 'b', 500), wire('short', 'a', 'b', 0)]), 'short');
    computed('what a capacitor is charged to', cite, () => {
      expectPrinted(open, '1.8182');
    });
    computed('the resistance that it is charged through', cite, () => {
      expectPrinted(open / shortA, '454.545');
    });
    computed('its time constant with 100 µF, ms', cite, () => {
      expectPrinted((open / shortA) * 100e-6 * 1000, '45.4545');
    });
  }
  {
    const cite = { source: 'circuit-tutorials', place: 'tutorial 8, answer 1', status: 'published' } as const;
    const net = (loads: Network['loads'], more: Network['branches'] = []): Network => ({
      reference: '0',
      branches: [wire('1', 's', 'm', 1), wire('5', 'm', 'n', 5), wire('4', 'n', '0', 4), ...more],
      sources: [source('V', '0', 's', 12, 0)],
      ...(loads === undefined ? {} : { loads }),
    });
    computed('a loop of 1, 5 and 4 Ω: open volts', cite, () => {
      expectPrinted(volts(net([]), 'n'), '4.8');
    });
    computed('a loop of 1, 5 and 4 Ω: source resistance', cite, () => {
      expectPrinted(volts(net([]), 'n') / amps(net([], [wire('short', 'n', '0', 0)]), 'short'), '2.4');
    });
    computed('a loop of 1, 5 and 4 Ω: amps of 0.8 Ω', cite, () => {
      expectPrinted(amps(net([load('load', 'n', '0', 0.8)]), 'load'), '1.5');
    });
    const half: Network = {
      reference: '0',
      branches: [wire('10 k', 's', 'n', 10000), wire('20 k', 'n', '0', 20000)],
      sources: [source('V', '0', 's', 15, 0)],
    };
    const exercise = { source: 'circuit-tutorials', place: 'exercise', status: 'published' } as const;
    computed('10 k over 20 k at 15 V', exercise, () => {
      expectPrinted(volts(half, 'n'), '10');
      const short = { ...half, branches: [...half.branches, wire('short', 'n', '0', 0)] };
      expectPrinted(volts(half, 'n') / amps(short, 'short') / 1000, '6.67');
    });
  }
  {
    // A loaded divider is designed for given volts. In the network the resistor that is asked for is replaced by what
    // it does: an ideal source of its volts (the theorem of substitution). Volts over the amps that come out are its ohms.
    const cite = (question: number) =>
      ({ source: 'divider-assignment', place: `question ${question}`, status: 'published' }) as const;
    const given = (name: string, node: string, currentA: number) =>
      load(name, node, '0', { kind: 'constant-current', currentA });
    const asked = (network: Network, name: string): { readonly ohm: number; readonly powerW: number } => {
      const { voltageV, currentA } = solveNetwork(network).sources.find((each) => each.name === name)!;
      return { ohm: voltageV / -currentA!, powerW: -voltageV * currentA! };
    };
    const settle = settleNetwork;
    computed('210 V from 386 V through 1.3 k: the bleeder', cite(2), () => {
      const net: Network = {
        reference: '0',
        branches: [wire('series', 's', 'n', 1300)],
        sources: [source('supply', '0', 's', 386, 0), source('bleeder', '0', 'n', 210, 0)],
        loads: [given('load', 'n', 0.032)],
        settle,
      };
      expectPrinted(asked(net, 'bleeder').ohm / 1000, '2');
      expectPrinted(asked(net, 'bleeder').powerW, '21.7');
    });
    computed('110 V from 275 V: the series resistor', cite(3), () => {
      const net: Network = {
        reference: '0',
        branches: [],
        sources: [source('supply', '0', 's', 275, 0), source('series', 'n', 's', 275 - 110, 0)],
        loads: [given('all', 'n', 0.125)],
        settle,
      };
      expectPrinted(asked(net, 'series').ohm / 1000, '1.3');
      expectPrinted(asked(net, 'series').powerW, '20.6');
    });
    computed('10 V and 28 V from 55 V: three resistors', cite(4), () => {
      const net: Network = {
        reference: '0',
        branches: [],
        sources: [
          source('supply', '0', 's', 55, 0),
          source('series', 'b', 's', 55 - 28, 0),
          source('middle', 'a', 'b', 28 - 10, 0),
        ],
        loads: [given('at 28 V', 'b', 0.029), given('at 10 V', 'a', 0.011), given('bleeder', 'a', 0.092)],
        settle,
      };
      expectPrinted(volts(net, 'a') / amps(net, 'bleeder'), '109');
      expectPrinted(solveNetwork(net).loads[2]!.powerW, '0.92');
      expectPrinted(asked(net, 'middle').ohm, '175');
      expectPrinted(asked(net, 'middle').powerW, '1.85');
      expectPrinted(asked(net, 'series').ohm, '205');
      expectPrinted(asked(net, 'series').powerW, '3.56');
    });
    computed('425 V from 525 V: two resistors', cite(5), () => {
      const net: Network = {
        reference: '0',
        branches: [],
        sources: [source('supply', '0', 's', 525, 0), source('series', 'n', 's', 525 - 425, 0)],
        loads: [given('load', 'n', 0.096), given('bleeder', 'n', 0.021)],
        settle,
      };
      expectPrinted(volts(net, 'n') / amps(net, 'bleeder') / 1000, '20');
      expectPrinted(solveNetwork(net).loads[1]!.powerW, '8.9');
      expectPrinted(asked(net, 'series').ohm, '855');
      expectPrinted(asked(net, 'series').powerW, '11.7');
    });
  }
});

const shape = (seed: number): RandomShape => ({
  nodes: 4 + (seed % 30),
  loops: seed % 6,
  loads: 1 + (seed % 7),
  diodes: 0,
  switches: seed % 4,
  sources: 1 + (seed % 3),
});

/** A random network of resistances, and the same with some of its branches taken out. */
function torn(seed: number): Network {
  const network = randomNetwork(seed, shape(seed));
  return { ...network, branches: network.branches.filter((_, i) => (i * 7 + seed) % 5 !== 0) };
}

describe('independent', () => {
  it('300 random networks, whole and torn, against elimination of a full matrix; currents and power add up', () => {
    let afloat = 0;
    for (let seed = 1; seed <= 300; seed++) {
      for (const network of [randomNetwork(seed, shape(seed)), torn(seed)]) {
        const result = solveNetwork(network);
        const wanted = denseVolts(network);
        for (const { name, voltageV } of result.nodes) {
          const v = wanted.get(name);
          if (v === undefined) {
            expect(voltageV, `${seed}: ${name}`).toBeNull();
            afloat++;
          } else expect(Math.abs(voltageV! - v), `${seed}: ${name}`).toBeLessThan(1e-9 * 14);
        }
        addsUp(network, result);
        balances(result);
        expect(result.stateCount).toBe(1);
        const settled = solveNetwork({ ...network, settle: settleNetwork });
        result.nodes.forEach(({ voltageV }, i) => {
          if (voltageV !== null) expectWithin(settled.nodes[i]!.voltageV! + 1, voltageV + 1, 1e-12);
        });
      }
    }
    expect(afloat).toBeGreaterThan(300);
  });

  it('islands of 400 torn networks against a plain walk', () => {
    let islands = 0;
    for (let seed = 1; seed <= 400; seed++) {
      const network = torn(seed);
      const result = solveNetwork(network);
      const ties = [
        ...network.branches,
        ...network.sources,
        ...network.loads!,
        ...network.switches!.filter(({ closed }) => closed),
      ].map(({ from, to }) => [from, to] as const);
      for (const { nodes, hasReference, sources } of result.islands) {
        expect(new Set(nodes), `${seed}`).toEqual(reached(nodes[0]!, ties));
        expect(hasReference).toBe(nodes.includes(network.reference));
        expect(sources).toEqual(network.sources.filter(({ to }) => nodes.includes(to)).map(({ name }) => name));
      }
      expect(result.islands.flatMap(({ nodes }) => nodes).sort()).toEqual(nodesOf(network).sort());
      for (const { name, reason, islandIndex, hangs } of result.nodes) {
        const { sources, nodes } = result.islands[islandIndex]!;
        expect(nodes).toContain(name);
        expect(reason).toBe(islandIndex === 0 ? null : sources.length > 0 ? 'no-reference' : 'no-source');
        expect(hangs).toBe(false);
      }
      if (cutOff(network, []).length > 0) islands++;
    }
    expect(islands).toBeGreaterThan(100);
  });

  it('300 random networks against the circuit simulator, to 1e-9 of their volts', async () => {
    const nets = Array.from({ length: 300 }, (_, s) =>
      randomNetwork(s + 500, { ...shape(s), nodes: 4 + (s % 20), switches: 0 }),
    );
    const lines = ['.options reltol=1e-12 abstol=1e-15 vntol=1e-12 gmin=1e-20'];
    const node = (s: number, name: string): string => (name === nets[s]!.reference ? '0' : `x${s}_${name}`);
    nets.forEach(({ branches, loads, sources }, s) => {
      const at = (name: string): string => node(s, name);
      for (const each of branches)
        lines.push(`r${s}_${each.name} ${at(each.from)} ${at(each.to)} ${each.resistanceOhm}`);
      for (const each of loads!) {
        const { resistanceOhm } = each.load as { resistanceOhm: number };
        lines.push(`r${s}_${each.name} ${at(each.from)} ${at(each.to)} ${resistanceOhm}`);
      }
      for (const { name, from, to, voltageV, resistanceOhm } of sources) {
        lines.push(`v${s}_${name} q${s}_${name} ${at(from)} ${voltageV}`);
        lines.push(`r${s}_${name} q${s}_${name} ${at(to)} ${resistanceOhm}`);
      }
    });
    const vectors = await simulate([...lines, '.op'].join('\n'));
    let compared = 0;
    nets.forEach((net, s) => {
      for (const { name, voltageV } of solveNetwork(net).nodes) {
        const wanted = vectors[`v(${node(s, name)})`]?.[0];
        if (wanted === undefined || voltageV === null) continue;
        compared++;
        expect(Math.abs(voltageV - wanted) / Math.max(Math.abs(wanted), 1e-3), `${s}: ${name}`).toBeLessThan(1e-9);
      }
    });
    expect(compared).toBeGreaterThan(3000);
  }, 120_000);

  it('one feed gives what the solver of a path gives', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 1e-4, max: 2, noNaN: true }), { minLength: 2, maxLength: 8 }),
        fc.double({ min: 6, max: 30, noNaN: true }),
        fc.double({ min: 0.5, max: 50, noNaN: true }),
        (ohms, supplyV, loadOhm) => {
          const half = ohms.length >> 1;
          const path = solvePath({
            supplyV,
            outParts: ohms.slice(0, half).map((resistanceOhm, i) => ({ name: `${i}`, resistanceOhm })),
            returnParts: ohms.slice(half).map((resistanceOhm, i) => ({ name: `${half + i}`, resistanceOhm })),
            load: { kind: 'resistance', resistanceOhm: loadOhm },
          });
          if (!path.possible) throw new Error('a resistance is always fed');
          const result = solveNetwork({
            reference: 'minus',
            branches: ohms.map((ohm, i) =>
              i < half
                ? wire(`${i}`, i === 0 ? 'plus' : `out ${i}`, `out ${i + 1}`, ohm)
                : wire(`${i}`, `back ${i}`, i === ohms.length - 1 ? 'minus' : `back ${i + 1}`, ohm),
            ),
            sources: [source('supply', 'minus', 'plus', supplyV, 0)],
            loads: [load('load', half === 0 ? 'plus' : `out ${half}`, `back ${half}`, loadOhm)],
          });
          expectWithin(result.loads[0]!.currentA, path.currentA, 1e-12);
          expectWithin(result.loads[0]!.voltageV!, path.loadV, 1e-12);
          expectWithin(result.balance.lostW, path.lossW, 1e-11);
          path.parts.forEach(({ dropV }, i) => {
            expectWithin(result.branches[i]!.dropV, dropV, 1e-12);
          });
        },
      ),
    );
  });
});

describe('laws', () => {
  const seeds = fc.integer({ min: 1, max: 100_000 });
  const near = (actual: number, wanted: number, sizeV = 14): void => {
    expect(Math.abs(actual - wanted), `${actual} against ${wanted}`).toBeLessThan(1e-10 * sizeV);
  };

  it('volts are the sum of what each source does alone', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const network = randomNetwork(seed, { ...shape(seed), sources: 2 + (seed % 3) });
        const alone = network.sources.map(({ name }) =>
          solveNetwork({
            ...network,
            sources: network.sources.map((each) => (each.name === name ? each : { ...each, voltageV: 0 })),
          }),
        );
        solveNetwork(network).nodes.forEach(({ voltageV }, i) => {
          if (voltageV !== null)
            near(
              voltageV,
              alone.reduce((sum, { nodes }) => sum + nodes[i]!.voltageV!, 0),
            );
        });
      }),
      { numRuns: 60 },
    );
  });
  it('a source in one wire drives through another what it would be driven by from there', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const { branches, ...rest } = randomNetwork(seed, { ...shape(seed), loops: 3 });
        const [a, b] = [branches[seed % branches.length]!, branches[(seed * 3 + 1) % branches.length]!];
        fc.pre(a.name !== b.name);
        const dead = { ...rest, sources: rest.sources.map((each) => ({ ...each, voltageV: 0 })) };
        // The wire with a source of 5 V in it, and the amps of the other.
        const through = (driven: typeof a, read: typeof a): number => {
          const result = solveNetwork({
            ...dead,
            branches: branches.filter(({ name }) => name !== driven.name),
            sources: [...dead.sources, { ...driven, voltageV: 5 }],
          });
          return result.branches.find(({ name }) => name === read.name)!.currentA!;
        };
        const [one, other] = [through(a, b), through(b, a)];
        expect(Math.abs(one - other)).toBeLessThan(1e-9 * (1e-3 + Math.abs(one)));
      }),
      { numRuns: 60 },
    );
  });
  it('scaling all sources scales volts and amps; scaling all ohms scales amps alone, the other way', () => {
    fc.assert(
      fc.property(seeds, fc.double({ min: 0.01, max: 100, noNaN: true }), (seed, k) => {
        const network = randomNetwork(seed, shape(seed));
        const ohms = <T extends { readonly resistanceOhm: number }>(each: T): T => ({
          ...each,
          resistanceOhm: each.resistanceOhm * k,
        });
        const before = solveNetwork(network);
        const more = solveNetwork({
          ...network,
          sources: network.sources.map((each) => ({ ...each, voltageV: each.voltageV * k })),
        });
        const thinner = solveNetwork({
          reference: network.reference,
          branches: network.branches.map(ohms),
          sources: network.sources.map(ohms),
          switches: network.switches!.map(ohms),
          loads: network.loads!.map((each) => load(each.name, each.from, each.to, ohms(each.load as never))),
        });
        before.nodes.forEach(({ voltageV }, i) => {
          if (voltageV === null) return;
          near(more.nodes[i]!.voltageV!, voltageV * k, 14 * k);
          near(thinner.nodes[i]!.voltageV!, voltageV);
        });
        before.sources.forEach(({ currentA }, i) => {
          near(more.sources[i]!.currentA!, currentA! * k, 1e3 * (1 + k));
          near(thinner.sources[i]!.currentA! * k, currentA!, 1e3);
        });
        expectWithin(more.balance.givenW + 1, before.balance.givenW * k * k + 1, 1e-8);
      }),
      { numRuns: 60 },
    );
  });
  it('another reference moves all volts alike and no current', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const network = randomNetwork(seed, shape(seed));
        const before = solveNetwork(network);
        const { name: reference, voltageV: shift } = before.nodes.find(
          ({ voltageV }, i) => i > 0 && voltageV !== null,
        )!;
        const after = solveNetwork({ ...network, reference });
        for (const { name, voltageV } of before.nodes) {
          if (voltageV !== null) near(voltsOf(after, name), voltageV - shift!);
        }
        before.branches.forEach(({ currentA }, i) => {
          near(after.branches[i]!.currentA!, currentA!, 1e3);
        });
      }),
      { numRuns: 60 },
    );
  });
  it('the order of parts, and which end of a wire is named first, change nothing but the sign', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const network = randomNetwork(seed, shape(seed));
        const before = solveNetwork(network);
        const turned = solveNetwork({
          ...network,
          branches: network.branches.map(({ from, to, ...rest }) => ({ ...rest, from: to, to: from })).reverse(),
          sources: [...network.sources].reverse(),
        });
        for (const { name, voltageV } of before.nodes) if (voltageV !== null) near(voltsOf(turned, name), voltageV);
        for (const { name, currentA } of before.branches) {
          near(-turned.branches.find((each) => each.name === name)!.currentA!, currentA!, 1e3);
        }
      }),
      { numRuns: 60 },
    );
  });
  it('a resistance more anywhere never draws more power from a single source', () => {
    fc.assert(
      fc.property(seeds, fc.double({ min: 1, max: 50, noNaN: true }), (seed, factor) => {
        const network = randomNetwork(seed, { ...shape(seed), sources: 1 });
        const i = seed % network.branches.length;
        const worse = network.branches.map((each, k) =>
          k === i ? { ...each, resistanceOhm: each.resistanceOhm * factor } : each,
        );
        const power = (branches: Network['branches']): number => solveNetwork({ ...network, branches }).balance.givenW;
        expect(power(worse)).toBeLessThanOrEqual(power(network.branches) * (1 + 1e-10) + 1e-12);
      }),
      { numRuns: 60 },
    );
  });
  it('wires of 0 Ω: volts, amps and heat are those of 1 nΩ, currents add up, and sources of 0 Ω hold their volts', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const network = randomNetwork(seed, { ...shape(seed), loops: 0 });
        // In a tree no loop of 0 Ω can come about.
        const zero = (ohm: number): Network => ({
          ...network,
          switches: [],
          branches: network.branches.map((each, i) => ((i + seed) % 3 === 0 ? { ...each, resistanceOhm: ohm } : each)),
          sources: network.sources.map((each, i) => (i === 0 ? { ...each, resistanceOhm: ohm } : each)),
        });
        const ideal = solveNetwork(zero(0));
        const almost = solveNetwork(zero(1e-9));
        for (const { name, voltageV } of almost.nodes) {
          if (voltageV !== null) expect(Math.abs(voltsOf(ideal, name) - voltageV)).toBeLessThan(1e-4);
        }
        almost.branches.forEach(({ currentA }, i) => {
          expect(Math.abs(ideal.branches[i]!.currentA! - currentA!)).toBeLessThan(1e-3 * (1 + Math.abs(currentA!)));
        });
        addsUp(zero(0), ideal);
        balances(ideal);
        const { from, to, voltageV } = zero(0).sources[0]!;
        near(voltsOf(ideal, to) - voltsOf(ideal, from), voltageV);
      }),
      { numRuns: 60 },
    );
  });
});

describe('edges', () => {
  const simple: Network = {
    reference: 'post',
    branches: [wire('strap', 'engine', 'post', 0.01)],
    sources: [source('battery', 'post', 'plus', 12, 0.02)],
    loads: [load('starter', 'plus', 'engine', 0.03)],
    switches: [toggle('key', 'plus', 'bus', false)],
  };

  it('nothing at all: the reference alone', () => {
    expect(solveNetwork({ reference: 'post', branches: [], sources: [] })).toEqual({
      nodes: [{ name: 'post', voltageV: 0, reason: null, hangs: false, islandIndex: 0 }],
      islands: [{ nodes: ['post'], hasReference: true, sources: [] }],
      branches: [],
      sources: [],
      loads: [],
      diodes: [],
      switches: [],
      balance: { givenW: 0, lostW: 0, usedW: 0, differenceW: 0 },
      stateCount: 1,
      stepCount: 0,
    });
  });
  it('a floating node has no volts, and says why; an open switch shows no volts across it', () => {
    const { nodes, switches, islands } = solveNetwork({
      ...simple,
      sources: [...simple.sources, source('spare battery', 'spare −', 'spare +', 12, 0.01)],
    });
    expect(nodes.find(({ name }) => name === 'bus')).toMatchObject({ voltageV: null, reason: 'no-source' });
    expect(nodes.find(({ name }) => name === 'spare +')).toMatchObject({ voltageV: null, reason: 'no-reference' });
    expect(switches[0]).toEqual({ name: 'key', closed: false, currentA: 0, dropV: null, lossW: 0 });
    expect(islands.map((each) => each.nodes)).toEqual([['post', 'engine', 'plus'], ['spare −', 'spare +'], ['bus']]);
  });
  it('a source on an island of its own is solved there', () => {
    const { sources, loads } = solveNetwork({
      ...simple,
      sources: [...simple.sources, source('spare battery', 'spare −', 'spare +', 12, 1)],
      loads: [...simple.loads!, load('lamp', 'spare +', 'spare −', 3)],
    });
    expectWithin(sources[1]!.currentA!, 3, 1e-12);
    expectWithin(loads[1]!.voltageV!, 9, 1e-12);
  });
  it('a loop of ideal sources: refused where its volts differ, not to be told where they do not', () => {
    const loop = (other: number): Network => ({
      reference: 'n',
      branches: [],
      sources: [source('a', 'n', 'p', 12, 0), source('b', 'n', 'p', other, 0)],
      loads: [load('load', 'p', 'n', 6)],
    });
    expect(() => solveNetwork(loop(13))).toThrow(
      "solveNetwork: sources[1].resistanceOhm must be above 0: 'b' closes a loop of 0 Ω with 1 V around it, and nothing limits its current, got 0",
    );
    // A microvolt is no rounding of 12 V.
    expectInputError(() => solveNetwork(loop(12.000001)), 'sources[1].resistanceOhm', 'above');
    const { sources, loads, balance } = solveNetwork(loop(12));
    expect(sources.map(({ currentA, powerW, voltageV }) => [currentA, powerW, voltageV])).toEqual([
      [null, null, 12],
      [null, null, 12],
    ]);
    expect(loads[0]!.currentA).toBe(2);
    expect(balance).toEqual({ givenW: 24, lostW: 0, usedW: 24, differenceW: 0 });
    // Around three, through switches and wires of 0 Ω too.
    const round: Network = {
      reference: 'a',
      branches: [wire('w', 'c', 'a', 0)],
      sources: [source('v', 'a', 'b', 1.5, 0)],
      switches: [toggle('s', 'b', 'c', true, 0)],
    };
    expectInputError(() => solveNetwork(round), 'switches[0].resistanceOhm', 'above');
    expectInputError(
      () => solveNetwork({ ...round, sources: [source('v', 'a', 'a', 1.5, 0)] }),
      'sources[0].resistanceOhm',
    );
    expect(solveNetwork({ ...round, switches: [toggle('s', 'b', 'c', false, 0)] }).nodes[1]!.voltageV).toBe(0);
  });
  it('a short across the battery: what its own ohms allow, or an error where it has none', () => {
    const short = (inside: number): Network => ({
      reference: 'post',
      branches: [wire('spanner', 'plus', 'post', 0)],
      sources: [source('battery', 'post', 'plus', 12, inside)],
    });
    const { branches, sources, balance } = solveNetwork(short(0.01));
    expect(branches[0]).toEqual({ name: 'spanner', currentA: 1200, dropV: 0, lossW: 0 });
    expectWithin(sources[0]!.lossW, 1200 * 1200 * 0.01, 1e-12);
    expectWithin(balance.lostW, 14400, 1e-12);
    expect(Math.abs(sources[0]!.voltageV)).toBeLessThan(1e-12);
    expect(() => solveNetwork(short(0))).toThrow(/'battery' closes a loop of 0 Ω with 12 V around it/);
  });
  it('both ends on one node: no current in what has no source, a short in what has one', () => {
    const ring: Network = {
      reference: 'post',
      branches: [wire('ring', 'post', 'post', 0.5), wire('zero', 'post', 'post', 0)],
      sources: [source('cell', 'post', 'post', 3, 1.5)],
      loads: [load('lamp', 'post', 'post', 5)],
      switches: [toggle('key', 'post', 'post', true)],
    };
    const { branches, sources, loads, switches } = solveNetwork(ring);
    expect(branches[0]).toEqual({ name: 'ring', currentA: 0, dropV: 0, lossW: 0 });
    // Its own loop is of nothing but 0 Ω.
    expect(branches[1]).toEqual({ name: 'zero', currentA: null, dropV: 0, lossW: 0 });
    expect(sources[0]).toMatchObject({ currentA: 2, voltageV: 0, lossW: 6 });
    expect(loads[0]).toMatchObject({ voltageV: 0, currentA: 0, powerW: 0, fed: true });
    expect(switches[0]).toMatchObject({ currentA: 0, dropV: 0 });
  });
  it('zero ohms in a chain: currents follow from the rest', () => {
    const { branches, nodes } = solveNetwork({
      reference: 'a',
      branches: [wire('1', 'b', 'a', 0), wire('2', 'c', 'b', 0), wire('3', 'd', 'c', 0), wire('tie', 'b', 'c', 0)],
      sources: [source('s', 'a', 'p', 12, 1)],
      loads: [load('x', 'p', 'd', 5)],
    });
    expect(branches.map(({ currentA }) => currentA)).toEqual([2, null, 2, null]);
    expect(nodes.filter(({ voltageV }) => voltageV === 0)).toHaveLength(4);
  });
  it('ohms from 1 nΩ to 1e12 in one network', () => {
    const { loads, sources } = solveNetwork({
      reference: '0',
      branches: [wire('bar', 'p', 'q', 1e-9), wire('leak', 'q', '0', 1e12)],
      sources: [source('s', '0', 'p', 12, 1e-9)],
      loads: [load('x', 'q', '0', 1e6)],
    });
    expectWithin(loads[0]!.currentA, 12 / 1e6, 1e-12);
    expectWithin(sources[0]!.currentA!, 12 / 1e6 + 12 / 1e12, 1e-11);
  });
  it.each([
    ['a chain', (i: number) => i],
    ['a star', () => 0],
    ['a tree', (i: number) => (i * 48271) % (i + 1)],
  ])('100 000 nodes in %s: right, within seconds and a few hundred megabytes', (_, parent) => {
    const count = 100_000;
    const begun = cpuMs();
    const memory = process.memoryUsage().heapUsed;
    const result = solveNetwork({
      reference: 'n0',
      branches: Array.from({ length: count }, (_, i) => wire(`b${i}`, `n${i + 1}`, `n${parent(i)}`, 0.001)),
      sources: [source('s', 'n0', `n${count}`, 12, 0.5)],
      loads: [load('x', `n${count - 1}`, 'n0', 20)],
    });
    expect(cpuMs() - begun).toBeLessThan(20_000);
    expect(process.memoryUsage().heapUsed - memory).toBeLessThan(600e6);
    expect(result.nodes).toHaveLength(count + 1);
    balances(result);
    expect(result.nodes.every(({ voltageV }) => voltageV !== null && voltageV >= -1e-9 && voltageV <= 12)).toBe(true);
  });
  it('100 000 nodes with a loop at each, and a chain of 100 000 wires of 0 Ω', () => {
    const count = 100_000;
    const side = Math.round(Math.sqrt(count));
    const ladder: Network = {
      reference: 'n0',
      branches: Array.from({ length: count }, (_, i) => [
        wire(`b${i}`, `n${i + 1}`, `n${i}`, 0.001),
        ...(i % 7 === 3 ? [wire(`c${i}`, `n${i + 1}`, `n${Math.max(0, i - side)}`, 0.02)] : []),
      ]).flat(),
      sources: [source('s', 'n0', `n${count}`, 12, 0.5)],
    };
    const begun = cpuMs();
    const result = solveNetwork(ladder);
    balances(result);
    const ideal = solveNetwork({
      reference: 'n0',
      branches: Array.from({ length: count }, (_, i) => wire(`b${i}`, `n${i + 1}`, `n${i}`, 0)),
      sources: [source('s', 'n0', `n${count}`, 12, 0.5)],
    });
    expect(ideal.branches[count >> 1]!.currentA).toBe(24);
    expect(cpuMs() - begun).toBeLessThan(40_000);
  });

  it('refuses what is not whole, and says which part it is', () => {
    for (const value of [undefined, null, 3, 'abc', []]) {
      expectInputError(() => solveNetwork(value as never), 'input', 'object');
    }
    const bad = (over: object, field: string, rule: InputRule): void => {
      expectInputError(() => solveNetwork({ ...simple, ...over }), field, rule);
    };
    bad({ reference: undefined }, 'reference', 'missing');
    bad({ reference: '' }, 'reference', 'text');
    bad({ settle: 3 }, 'settle', 'object');
    bad({ settle: null }, 'settle', 'object');
    bad({ branches: undefined }, 'branches', 'missing');
    bad({ sources: 7 }, 'sources', 'list');
    for (const list of ['branches', 'sources', 'loads', 'diodes', 'switches']) {
      bad({ [list]: 5 }, list, 'list');
      bad({ [list]: [null] }, `${list}[0]`, 'object');
      bad({ [list]: [undefined] }, `${list}[0]`, 'missing');
      const whole = { name: 'x', from: 'a', to: 'b', resistanceOhm: 1, voltageV: 1, forwardV: 0.5, closed: true };
      const one = { ...whole, load: { kind: 'resistance', resistanceOhm: 1 } };
      for (const field of ['name', 'from', 'to']) {
        bad({ [list]: [{ ...one, [field]: undefined }] }, `${list}[0].${field}`, 'missing');
        bad({ [list]: [{ ...one, [field]: '' }] }, `${list}[0].${field}`, 'text');
        bad({ [list]: [{ ...one, [field]: 7 }] }, `${list}[0].${field}`, 'text');
      }
      bad({ [list]: [one, one], settle: settleNetwork }, `${list}[1].name`, 'order');
      if (list === 'loads') continue;
      const ohms = (resistanceOhm: unknown, rule: InputRule): void => {
        bad({ [list]: [{ ...one, resistanceOhm }] }, `${list}[0].resistanceOhm`, rule);
      };
      ohms(undefined, 'missing');
      ohms('3', 'number');
      ohms(NaN, 'finite');
      ohms(Infinity, 'finite');
      ohms(-0.001, 'atLeast');
      ohms(1e-10, 'range');
      ohms(1e13, 'range');
    }
    bad({ sources: [source('battery', 'post', 'plus', -1, 0)] }, 'sources[0].voltageV', 'atLeast');
    bad({ sources: [source('battery', 'post', 'plus', NaN, 0)] }, 'sources[0].voltageV', 'finite');
    bad({ diodes: [diode('d', 'plus', 'bus', -0.1)] }, 'diodes[0].forwardV', 'atLeast');
    bad({ switches: [{ ...toggle('key', 'plus', 'bus', true), closed: undefined }] }, 'switches[0].closed', 'missing');
    bad({ switches: [{ ...toggle('key', 'plus', 'bus', true), closed: 'yes' }] }, 'switches[0].closed', 'oneOf');
    bad({ loads: [load('x', 'plus', 'post', 0)] }, 'loads[0].load.resistanceOhm', 'above');
    bad({ loads: [load('x', 'plus', 'post', 1e-13)] }, 'loads[0].load.resistanceOhm', 'range');
    bad({ loads: [{ ...load('x', 'plus', 'post', 1), load: undefined }] }, 'loads[0].load', 'missing');
    bad({ loads: [{ ...load('x', 'plus', 'post', 1), load: 5 }] }, 'loads[0].load', 'object');
    bad({ loads: [load('strap', 'plus', 'post', 1)] }, 'loads[0].name', 'order');
    expect(() => solveNetwork({ ...simple, branches: [wire('strap', 'engine', 'post', 1e-10)] })).toThrow(
      'solveNetwork: branches[0].resistanceOhm must be 0 or at least 1e-9, got 1e-10: is this in Ω?',
    );
  });
  it('asks for what settles diodes and loads, by the name of the first', () => {
    const lamp = load('radio', 'plus', 'post', { kind: 'constant-power', powerW: 10 });
    expect(() => solveNetwork({ ...simple, loads: [lamp] })).toThrow(
      "solveNetwork: settle is required: 'radio' is no resistance, got nothing: hand in settleNetwork",
    );
    expectInputError(() => solveNetwork({ ...simple, diodes: [diode('d', 'plus', 'bus')] }), 'settle', 'missing');
    expect(solveNetwork({ ...simple, loads: [lamp], settle: settleNetwork }).loads[0]!.fed).toBe(true);
  });
});
