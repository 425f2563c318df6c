import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  filamentLamp,
  halogenLamp,
  type InputRule,
  type Load,
  type MotorLoad,
  type Network,
  type NetworkLoad,
  settleNetwork,
  type SettleNetworkInput,
  solveNetwork,
  type SolveNetworkResult,
  solvePath,
} from 'loomwright';
import { expectInputError } from '../support/edge.js';
import { computed, expectWithin } from '../support/published.js';
import { simulate } from '../support/simulator.js';
import { addsUp, balances, diode, load, source, voltsOf, wire } from './parts.js';
import { denseVolts, nodesOf, randomNetwork, stream } from './random-network.js';

const settle = settleNetwork;
const motor = (torque: MotorLoad['torque']): MotorLoad => ({
  kind: 'motor',
  windingResistanceOhm: 0.12,
  speedConstantRpmPerV: 250,
  ratedCurrentA: 12,
  ratedV: 12,
  torque,
});

/** One of each kind, and the current that its own law gives it at volts above 0: written once more, from the laws. */
const KINDS: readonly (readonly [name: string, load: Load, lawA: (v: number) => number])[] = [
  ['a resistance', { kind: 'resistance', resistanceOhm: 3 }, (v) => v / 3],
  ['a heater, warm', { kind: 'heater', resistanceOhm: 2.5, coldResistanceOhm: 1.6 }, (v) => v / 2.5],
  [
    'a solenoid, hot',
    { kind: 'solenoid', resistanceOhm: 12, ratedTempC: 20, coilTempC: 105, inductanceH: 0.02 },
    (v) => v / ((12 * (234.5 + 105)) / (234.5 + 20)),
  ],
  [
    'a starter solenoid, both windings',
    { kind: 'starter-solenoid', pullInResistanceOhm: 0.4, holdInResistanceOhm: 1.1, stage: 'pull-in' },
    (v) => v / 0.4 + v / 1.1,
  ],
  [
    'a starter solenoid that holds',
    { kind: 'starter-solenoid', pullInResistanceOhm: 0.4, holdInResistanceOhm: 1.1, stage: 'hold' },
    (v) => v / 1.1,
  ],
  [
    'a lamp',
    { kind: 'lamp', ratedPowerW: 55, ratedV: 12, law: filamentLamp },
    (v) => (55 / 12) * (v / 12) ** filamentLamp.currentExponent,
  ],
  [
    'a halogen lamp',
    { kind: 'lamp', ratedPowerW: 100, ratedV: 13.2, law: halogenLamp },
    (v) => (100 / 13.2) * (v / 13.2) ** halogenLamp.currentExponent,
  ],
  ['a given current', { kind: 'constant-current', currentA: 9 }, () => 9],
  ['a given power', { kind: 'constant-power', powerW: 70 }, (v) => 70 / v],
  [
    'a converter with a capacitor',
    { kind: 'capacitor-input', powerW: 45, capacitanceF: 1e-3, capacitorResistanceOhm: 0.1 },
    (v) => 45 / v,
  ],
  ['an LED driver', { kind: 'led-driver', powerW: 27, efficiency: 0.9, leastV: 7 }, (v) => 30 / v],
  // At constant torque the rated current, and what the winding lets through once it stands.
  ['a motor that lifts', motor('constant'), (v) => Math.min(12, v / 0.12)],
  [
    'a motor that blows',
    motor('speed-squared'),
    // Back-EMF E and current k E², with V = E + R k E²: by bisection.
    (v) => 12 * (bisect((e) => e + (0.12 * 12 * e * e) / (12 - 1.44) ** 2 - v, 0, v) / (12 - 1.44)) ** 2,
  ],
  [
    'a motor on a bridge',
    { kind: 'h-bridge-motor', motor: motor('constant'), bridgeResistanceOhm: 0.03, dutyFraction: 0.6 },
    (v) => Math.min(12, (0.6 * v) / 0.15),
  ],
  [
    'a heater switched fast',
    { kind: 'pwm', load: { kind: 'resistance', resistanceOhm: 1.5 }, dutyFraction: 0.3 },
    (v) => v / 1.5,
  ],
];

/** Where a function that goes from below to above 0 passes it. */
function bisect(f: (x: number) => number, low: number, high: number): number {
  let [a, b] = [low, high];
  for (let i = 0; i < 200; i++) {
    const x = (a + b) / 2;
    if (f(x) < 0) a = x;
    else b = x;
  }
  return (a + b) / 2;
}

/** The highest volts at which what a line gives is what a law takes: from the top down, then by bisection. */
function highestV(emfV: number, ohm: number, takenA: (v: number) => number): number {
  const lack = (v: number): number => (emfV - v) / ohm - takenA(v);
  const step = emfV / 20_000;
  let v = emfV;
  while (v > step && lack(v) < 0) v -= step;
  if (v <= step) throw new Error('it cannot be fed');
  return bisect((x) => -lack(x), v, Math.min(emfV, v + step));
}

const alone = (what: Load, ohm = 0.2, voltageV = 13.8): Network => ({
  reference: 'minus',
  branches: [wire('line', 'plus', 'load', ohm)],
  sources: [source('battery', 'minus', 'plus', voltageV, 0)],
  loads: [load('load', 'load', 'minus', what)],
  settle,
});
const only = (network: Network): SolveNetworkResult['loads'][number] => solveNetwork(network).loads[0]!;

describe('published', () => {
  const hand = (place: string) =>
    ({ source: 'circuit-theory', place: `worked by hand: ${place}`, status: 'derived' }) as const;
  computed('22 W behind 0.5 Ω at 12 V: 11 V and 2 A, not 1 V and 22 A', hand('12 = V + 0.5 · 22 / V'), () => {
    const { voltageV, currentA } = only(alone({ kind: 'constant-power', powerW: 22 }, 0.5, 12));
    expectWithin(voltageV!, 11, 1e-12);
    expectWithin(currentA, 2, 1e-12);
  });
  computed('two batteries on one bus through diodes: the higher feeds alone', hand('14 − 0.6 = 13.4 V'), () => {
    const { diodes, loads } = solveNetwork({
      reference: '0',
      branches: [],
      sources: [source('a', '0', 'a', 14, 0), source('b', '0', 'b', 12.5, 0)],
      diodes: [diode('from a', 'a', 'bus', 0.6, 0.1), diode('from b', 'b', 'bus', 0.6, 0.1)],
      loads: [load('load', 'bus', '0', 6.6)],
      settle,
    });
    expectWithin(loads[0]!.currentA, 2, 1e-12);
    expect(diodes.map(({ conducts }) => conducts)).toEqual([true, false]);
    expectWithin(diodes[0]!.lossW, 2 * (0.6 + 0.2), 1e-12);
    expectWithin(diodes[1]!.dropV!, 12.5 - 13.2, 1e-12);
  });
  computed('a bridge of four diodes turns a source round', hand('12 − 2 · 0.7 over 5.3 Ω'), () => {
    for (const [from, to] of [
      ['x', 'y'],
      ['y', 'x'],
    ] as const) {
      const { loads, diodes } = solveNetwork({
        reference: '−',
        branches: [],
        sources: [source('s', from, to, 12, 0)],
        diodes: [
          diode('1', 'x', '+', 0.7, 0),
          diode('2', 'y', '+', 0.7, 0),
          diode('3', '−', 'x', 0.7, 0),
          diode('4', '−', 'y', 0.7, 0),
        ],
        loads: [load('load', '+', '−', 5.3)],
        settle,
      });
      // A diode of 0 Ω counts as 1 µΩ.
      expectWithin(loads[0]!.currentA, 2, 1e-6);
      expect(diodes.filter(({ conducts }) => conducts)).toHaveLength(2);
    }
  });
});

describe('independent', () => {
  it.each(KINDS)('%s behind a line: its own law, and what the solver of a path says', (_, what, lawA) => {
    for (const [ohm, voltageV] of [
      [0.2, 13.8],
      [0.02, 11.5],
      [0.35, 16],
    ] as const) {
      const { voltageV: v, currentA, powerW, fed, code, dutyFraction } = only(alone(what, ohm, voltageV));
      expect([fed, code]).toEqual([true, null]);
      // A motor on a bridge takes its current from the line only while it is on: its means see a share of the line.
      const wanted = highestV(voltageV, ohm, lawA);
      expectWithin(v!, wanted, 1e-8);
      expectWithin(currentA, lawA(wanted), 1e-7);
      expectWithin(powerW, v! * currentA, 1e-12);
      const parts = { outParts: [{ name: 'line', resistanceOhm: ohm }], returnParts: [] };
      const path = solvePath({ supplyV: voltageV, ...parts, load: what });
      if (!path.possible) throw new Error(path.because);
      expectWithin(currentA, path.currentA, 1e-9);
      expectWithin(path.meanA, path.currentA * dutyFraction, 1e-12);
    }
  });

  it('two loads of any two kinds on one line, against the highest volts that suit both', () => {
    for (const [, one, oneA] of KINDS) {
      for (const [, other, otherA] of KINDS) {
        const ohm = 0.06;
        const both = {
          ...alone(one, ohm),
          loads: [load('1', 'load', 'minus', one), load('2', 'load', 'minus', other)],
        };
        const result = solveNetwork(both);
        const wanted = highestV(13.8, ohm, (v) => oneA(v) + otherA(v));
        expectWithin(voltsOf(result, 'load'), wanted, 1e-8);
        addsUp(both, result);
        balances(result);
      }
    }
  });

  it('300 networks with diodes against every state tried', () => {
    let conducting = 0;
    for (let seed = 1; seed <= 300; seed++) {
      const network = randomNetwork(seed + 900, {
        nodes: 4 + (seed % 10),
        loops: seed % 4,
        loads: 1 + (seed % 4),
        diodes: 1 + (seed % 6),
        switches: 0,
        sources: 1 + (seed % 3),
      });
      const diodes = network.diodes!;
      const result = solveNetwork(network);
      const suits: ReadonlyMap<string, number>[] = [];
      for (let state = 0; state < 1 << diodes.length; state++) {
        const on = diodes.filter((_, i) => (state >> i) & 1);
        const volts = denseVolts({
          ...network,
          diodes: [],
          sources: [
            ...network.sources,
            ...on.map((each) => source(each.name, each.to, each.from, each.forwardV, each.resistanceOhm)),
          ],
        });
        const holds = diodes.every(({ from, to, forwardV }, i) => {
          const over = volts.get(from)! - volts.get(to)! - forwardV;
          return (state >> i) & 1 ? over >= -1e-9 : over <= 1e-9;
        });
        if (holds) suits.push(volts);
      }
      expect(suits.length, `${seed}`).toBeGreaterThan(0);
      for (const node of nodesOf(network)) {
        expect(Math.abs(voltsOf(result, node) - suits[0]!.get(node)!), `${seed}: ${node}`).toBeLessThan(1e-7);
      }
      addsUp(network, result, 1e-8);
      balances(result, 1e-8);
      conducting += result.diodes.filter(({ conducts }) => conducts).length;
    }
    expect(conducting).toBeGreaterThan(200);
  });

  it('300 networks with loops, shared grounds, diodes, lamps and electronics against the circuit simulator', async () => {
    let compared = 0;
    let conducting = 0;
    for (let batch = 0; batch < 30; batch++) {
      const nets = Array.from({ length: 10 }, (_, i): Network => {
        const seed = 4000 + 10 * batch + i;
        const network = randomNetwork(seed, {
          nodes: 6 + (seed % 14),
          loops: 1 + (seed % 5),
          loads: 2 + (seed % 4),
          diodes: 1 + (seed % 4),
          switches: 0,
          sources: 1 + (seed % 2),
        });
        // From the live side to the ground: fed well enough for any kind.
        const more: NetworkLoad[] = [
          load('lamp', 'p1', 'g1', { kind: 'lamp', ratedPowerW: 21, ratedV: 12, law: filamentLamp }),
          load('radio', 'p0', 'g1', { kind: 'constant-power', powerW: 10 + (seed % 30) }),
          load('pump', 'p1', 'g0', { kind: 'constant-current', currentA: 3 + (seed % 8) }),
        ];
        return { ...network, loads: [...network.loads!, ...more] };
      });
      const lines = ['.options reltol=1e-11 abstol=1e-13 vntol=1e-12 gmin=1e-20 itl1=2000'];
      const node = (s: number, name: string): string => (name === nets[s]!.reference ? '0' : `x${s}_${name}`);
      nets.forEach(({ branches, loads, sources, diodes }, s) => {
        const at = (name: string): string => node(s, name);
        const law = (name: string, from: string, to: string, text: (v: string) => string): void => {
          lines.push(`b${s}_${name} ${at(from)} ${at(to)} I=${text(`(V(${at(from)})-V(${at(to)}))`)}`);
          if (name === 'radio') lines.push(`.nodeset V(${at(from)})=12.5`);
        };
        for (const { name, from, to, resistanceOhm } of branches) {
          lines.push(`r${s}_${name} ${at(from)} ${at(to)} ${resistanceOhm}`);
        }
        for (const { name, from, to, voltageV, resistanceOhm } of sources) {
          lines.push(`v${s}_${name} q${s}_${name} ${at(from)} ${voltageV}`);
          lines.push(`r${s}_${name} q${s}_${name} ${at(to)} ${resistanceOhm}`);
        }
        for (const { name, from, to, load: what } of loads!) {
          if (what.kind === 'resistance') lines.push(`r${s}_${name} ${at(from)} ${at(to)} ${what.resistanceOhm}`);
          if (what.kind === 'constant-current') lines.push(`i${s}_${name} ${at(from)} ${at(to)} ${what.currentA}`);
          if (what.kind === 'constant-power') law(name, from, to, (v) => `${what.powerW}/(${v} > 1 ? ${v} : 1)`);
          if (what.kind === 'lamp') {
            const { ratedPowerW: p, ratedV: r, law: own } = what;
            law(name, from, to, (v) => `${p / r}*((${v} > 0.1 ? ${v} : 0.1)/${r})^${own.currentExponent}`);
          }
        }
        for (const { name, from, to, forwardV, resistanceOhm } of diodes!) {
          law(name, from, to, (v) => `(${v} > ${forwardV}) ? (${v}-${forwardV})/${resistanceOhm} : 0`);
        }
      });
      const vectors = await simulate([...lines, '.op'].join('\n'));
      nets.forEach((net, s) => {
        const result = solveNetwork(net);
        expect(result.loads.every(({ fed }) => fed)).toBe(true);
        conducting += result.diodes.filter(({ conducts }) => conducts).length;
        for (const { name, voltageV } of result.nodes) {
          const wanted = vectors[`v(${node(s, name)})`]?.[0];
          if (wanted === undefined || voltageV === null) continue;
          compared++;
          expect(Math.abs(voltageV - wanted), `${batch}, ${s}: ${name}`).toBeLessThan(1e-7);
        }
      });
    }
    expect(compared).toBeGreaterThan(2500);
    expect(conducting).toBeGreaterThan(150);
  }, 180_000);
});

/** Networks drawn by lot in which anything may stand anywhere, fed or not. */
function wild(seed: number): Network {
  const next = stream(seed);
  const count = 3 + Math.floor(next() * 6);
  const pick = (): string => `n${Math.floor(next() * (count + 1))}`;
  const some = <T>(most: number, make: (i: number) => T): T[] =>
    Array.from({ length: Math.floor(next() * (most + 1)) }, (_, i) => make(i));
  const ohm = (): number => Math.round((0.05 + 3 * next() ** 2) * 1000) / 1000;
  return {
    reference: 'n0',
    branches: [
      ...Array.from({ length: count }, (_, i) => wire(`b${i}`, `n${i + 1}`, `n${Math.floor(next() * (i + 1))}`, ohm())),
      ...some(3, (i) => wire(`c${i}`, pick(), pick(), ohm())),
    ].filter(() => next() < 0.9),
    sources: [source('v', 'n0', pick(), 12, ohm()), ...some(1, (i) => source(`v${i}`, pick(), pick(), 12, ohm()))],
    loads: some(4, (i) => load(`l${i}`, pick(), pick(), KINDS[Math.floor(next() * KINDS.length)]![1])),
    diodes: some(4, (i) => diode(`d${i}`, pick(), pick(), 0.6, 0.05)),
    settle,
  };
}

/** What every answer must hold: currents add up, loads take what their law says or nothing, diodes suit their volts. */
function suits(network: Network, result: SolveNetworkResult): void {
  addsUp(network, result, 1e-7);
  balances(result, 1e-7);
  network.loads!.forEach(({ load: what }, i) => {
    const { voltageV, currentA, fed, code, because } = result.loads[i]!;
    expect(code === null).toBe(fed);
    expect(because === null).toBe(fed);
    if (!fed) {
      expect(currentA).toBe(0);
      return;
    }
    const lawA = KINDS.find(([, one]) => one === what)![2];
    const v = Math.abs(voltageV!);
    if (v < 1e-4) return;
    expect(Math.abs(Math.abs(currentA) - lawA(v))).toBeLessThan(1e-4 * (lawA(v) + 1e-3));
    expect(Math.sign(currentA) * Math.sign(voltageV!)).toBe(1);
  });
  result.diodes.forEach(({ conducts, currentA, dropV }, i) => {
    const { forwardV, resistanceOhm } = network.diodes![i]!;
    if (conducts) {
      expect(currentA).toBeGreaterThanOrEqual(-1e-8);
      expectWithin(dropV! + 1, forwardV + currentA * resistanceOhm + 1, 1e-8);
    } else {
      expect(currentA).toBe(0);
      if (dropV !== null) expect(dropV).toBeLessThanOrEqual(forwardV + 1e-8);
    }
  });
}

describe('laws', () => {
  it('whatever stands wherever: an answer, and one that suits every part', () => {
    let unfed = 0;
    let on = 0;
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 2_000_000 }), (seed) => {
        const network = wild(seed);
        const result = solveNetwork(network);
        suits(network, result);
        unfed += result.loads.filter(({ fed }) => !fed).length;
        on += result.diodes.filter(({ conducts }) => conducts).length;
      }),
      { numRuns: 400 },
    );
    expect(unfed).toBeGreaterThan(30);
    expect(on).toBeGreaterThan(30);
  });
  it('lamps and motors the other way round take the same, backwards; a motor turns backwards', () => {
    for (const [name, what] of KINDS) {
      const network = alone(what);
      const { to, ...line } = network.branches[0]!;
      const turned = {
        ...network,
        sources: [source('battery', 'plus', 'minus', 13.8, 0)],
        branches: [{ ...line, to }],
      };
      const [one, other] = [only(network), only(turned)];
      if (/power|current|LED|converter/.test(name)) {
        expect(other).toMatchObject({ fed: false, code: 'no-volts', currentA: 0 });
        expect(other.because).toBe('its volts are the wrong way round');
        continue;
      }
      expectWithin(other.currentA, -one.currentA, 1e-9);
      expectWithin(other.powerW, one.powerW, 1e-9);
      if (one.speedRpm === null) expect(other.speedRpm).toBeNull();
      else expectWithin(other.speedRpm!, -one.speedRpm, 1e-9);
    }
  });
  it('a motor stands still where it gets no more than its torque asks for', () => {
    const weak = only(alone(motor('constant'), 1.5, 12));
    expect(weak).toMatchObject({ stalled: true, speedRpm: 0 });
    expectWithin(weak.currentA, 12 / 1.62, 1e-9);
    const { stalled, speedRpm } = only(alone(motor('constant'), 0.05, 12));
    expect(stalled).toBe(false);
    expectWithin(speedRpm!, (12 - 12 * 0.17) * 250, 1e-9);
  });
  it('less line never leaves electronics with less', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 1, noNaN: true }),
        fc.double({ min: 1, max: 60, noNaN: true }),
        (ohm, powerW) => {
          const [one, other] = [ohm, ohm * 0.9].map((each) => only(alone({ kind: 'constant-power', powerW }, each)));
          if (one!.fed) expect(other!.voltageV!).toBeGreaterThanOrEqual(one!.voltageV!);
        },
      ),
      { numRuns: 50 },
    );
  });
  it('the order of diodes changes nothing', () => {
    for (let seed = 1; seed <= 60; seed++) {
      const network = randomNetwork(seed, { nodes: 9, loops: 3, loads: 4, diodes: 5, switches: 0, sources: 2 });
      const turned = solveNetwork({ ...network, diodes: [...network.diodes!].reverse() });
      for (const { name, voltageV } of solveNetwork(network).nodes) {
        expect(Math.abs(voltsOf(turned, name) - voltageV!)).toBeLessThan(1e-9);
      }
    }
  });
});

describe('edges', () => {
  it('a microvolt above what a diode begins to conduct at is enough, and one below is not', () => {
    const at = (forwardV: number): SolveNetworkResult =>
      solveNetwork({
        reference: '0',
        branches: [],
        sources: [source('s', '0', 'p', 12, 0)],
        diodes: [diode('d', 'p', 'q', forwardV, 0.001)],
        loads: [load('x', 'q', '0', 1e-6)],
        settle,
      });
    const [over] = at(12 - 1e-6).diodes;
    expect(over!.conducts).toBe(true);
    expect(Math.abs(over!.currentA - 1e-6 / 0.001001)).toBeLessThan(1e-9);
    expect(at(12 + 1e-6).diodes[0]).toMatchObject({ conducts: false, currentA: 0 });
  });
  const supply = { reference: '0', branches: [], sources: [source('s', '0', 'p', 12, 1)], settle };

  it('electronics that are not fed say why', () => {
    const codeOf = (what: Load, ohm: number): string | null => only(alone(what, ohm, 12)).code;
    expect(codeOf({ kind: 'constant-power', powerW: 37 }, 1)).toBe('power-beyond-line');
    expect(codeOf({ kind: 'constant-power', powerW: 35 }, 1)).toBeNull();
    expect(codeOf({ kind: 'constant-current', currentA: 12.1 }, 1)).toBe('no-volts-left');
    expect(codeOf({ kind: 'constant-current', currentA: 11.9 }, 1)).toBeNull();
    const led = (leastV: number): Load => ({ kind: 'led-driver', powerW: 20, efficiency: 1, leastV });
    // 12 V behind 1 Ω: 10 V and 2 A.
    expect(codeOf(led(10.1), 1)).toBe('below-least-volts');
    expect(codeOf(led(9.9), 1)).toBeNull();
    expect(only(alone(led(10.1), 1, 12)).because).toMatch(/the driver would get .* V and needs 10.1 V/);
    const off = { ...alone({ kind: 'constant-power', powerW: 5 }), branches: [] };
    expect(only(off)).toMatchObject({ code: 'no-way', voltageV: null, currentA: 0 });
    const both = { ...supply, loads: [load('ring', 'p', 'p', { kind: 'constant-power', powerW: 5 })] };
    expect(only(both)).toMatchObject({ code: 'no-volts', because: 'there are no volts across it' });
  });
  it('of two that cannot be fed together, one is; the other could be fed alone', () => {
    const { loads } = solveNetwork({
      ...supply,
      loads: [
        load('big', 'p', '0', { kind: 'constant-power', powerW: 24 }),
        load('small', 'p', '0', { kind: 'constant-power', powerW: 20 }),
      ],
    });
    expect(loads.filter(({ fed }) => fed)).toHaveLength(1);
    expect(loads.find(({ fed }) => !fed)).toMatchObject({ code: 'not-beside-the-others', currentA: 0 });
  });
  it('what hangs on electronics alone takes their volts, and says that it hangs', () => {
    const { nodes } = solveNetwork({
      ...supply,
      loads: [load('radio', 'p', 'its ground', { kind: 'constant-power', powerW: 5 })],
    });
    expect(nodes.find(({ name }) => name === 'its ground')).toMatchObject({ voltageV: 12, hangs: true, reason: null });
  });
  it('electronics that only a diode the wrong way could feed draw nothing', () => {
    // 12 V behind 6 Ω give 2 A at most; a diode beside a load of 3 A holds 0.6 V and passes nothing backwards.
    const { loads, diodes } = solveNetwork({
      ...supply,
      sources: [source('s', '0', 'p', 12, 6)],
      loads: [load('pump', 'p', '0', { kind: 'constant-current', currentA: 3 })],
      diodes: [diode('clamp', 'p', '0', 0.6, 0.05)],
    });
    expect(loads[0]).toMatchObject({ fed: false, code: 'against-a-diode', currentA: 0 });
    expect(diodes[0]!.conducts).toBe(true);
    expectWithin(diodes[0]!.currentA, (12 - 0.6) / 6.05, 1e-12);
  });
  it('a loop of diodes with nothing in it carries nothing, and one with a source in it is found to conduct', () => {
    const ring = [diode('1', 'a', 'b', 0), diode('2', 'b', 'c', 0), diode('3', 'c', 'a', 0)];
    const idle = solveNetwork({ ...supply, branches: [wire('w', 'a', '0', 1)], diodes: ring });
    expect(idle.diodes.map(({ currentA }) => currentA)).toEqual([0, 0, 0]);
    // Two islands, tied by nothing but diodes: a source on one drives round through both.
    const driven = solveNetwork({
      reference: '0',
      branches: [wire('far', 'x', 'y', 1)],
      sources: [source('s', '0', 'p', 12, 0)],
      diodes: [diode('out', 'p', 'x', 0.5, 0.25), diode('back', 'y', '0', 0.5, 0.25)],
      settle,
    });
    expect(driven.diodes.map(({ conducts }) => conducts)).toEqual([true, true]);
    expectWithin(driven.branches[0]!.currentA!, 11 / 1.5, 1e-12);
  });
  it('diodes whose states go round are an error that names them', () => {
    // No network of ours does so: equations that turn all volts round at each asking stand in for one.
    let turn = -1;
    const contrary: Network = {
      ...supply,
      loads: [load('x', 'p', '0', 5)],
      diodes: [diode('first', 'p', 'q'), diode('second', 'q', '0'), diode('idle', 'z', 'y')],
      settle: (input: SettleNetworkInput) =>
        settleNetwork({
          ...input,
          circuitOf: (perOhm, before) => {
            const circuit = input.circuitOf(perOhm, before);
            return {
              ...circuit,
              solve: (g, a) => {
                turn = -turn;
                const solved = circuit.solve(g, a)!;
                return { ...solved, nodeV: solved.nodeV.map((v, i) => turn * (v + i)) };
              },
            };
          },
        }),
    };
    let error: unknown;
    try {
      solveNetwork(contrary);
    } catch (thrown) {
      error = thrown;
    }
    expect(error).toMatchObject({ code: 'LOOMWRIGHT_CONVERGENCE', fn: 'solveNetwork' });
    expect(String(error)).toMatch(/the diodes '(first|second)'.*, whose states go round/);
    expect(String(error)).not.toContain('idle');
  });
  it('3000 diodes and 3000 lamps come to rest', () => {
    const n = 3000;
    const network: Network = {
      reference: '0',
      branches: Array.from({ length: n }, (_, i) => wire(`w${i}`, `b${i}`, i === 0 ? 'p' : `b${i - 1}`, 1e-4)),
      sources: [source('s', '0', 'p', 12, 0.001)],
      diodes: Array.from({ length: n }, (_, i) =>
        i % 2 === 0 ? diode(`d${i}`, `b${i}`, `l${i}`) : diode(`d${i}`, `l${i}`, `b${i}`),
      ),
      loads: Array.from({ length: n }, (_, i) =>
        load(`l${i}`, `l${i}`, '0', { kind: 'lamp', ratedPowerW: 5, ratedV: 12, law: filamentLamp }),
      ),
      settle,
    };
    const result = solveNetwork(network);
    expect(result.diodes.every(({ conducts }, i) => conducts === (i % 2 === 0))).toBe(true);
    addsUp(network, result, 1e-7);
  });
  it('refuses loads that are not whole, in the name of who asked', () => {
    const bad = (what: unknown, field: string, rule: InputRule): void => {
      expectInputError(() => solveNetwork(alone(what as Load)), `loads[0].load${field}`, rule);
    };
    bad({ kind: 'nothing' }, '.kind', 'oneOf');
    bad({}, '.kind', 'missing');
    bad({ kind: 'constant-power' }, '.powerW', 'missing');
    bad({ kind: 'constant-power', powerW: -5 }, '.powerW', 'above');
    bad({ kind: 'constant-current', currentA: NaN }, '.currentA', 'finite');
    bad({ kind: 'lamp', ratedPowerW: 5, ratedV: 12 }, '.law', 'missing');
    bad({ ...motor('constant'), ratedCurrentA: 200 }, '.ratedCurrentA', 'below');
    bad({ ...motor('constant'), torque: 'none' }, '.torque', 'oneOf');
    bad({ kind: 'pwm', dutyFraction: 2, load: { kind: 'resistance', resistanceOhm: 1 } }, '.dutyFraction', 'atMost');
    expect(() => solveNetwork(alone({ kind: 'constant-power', powerW: 0 }))).toThrow(
      'solveNetwork: loads[0].load.powerW must be above 0, got 0',
    );
    for (const value of [undefined, null, 5]) expectInputError(() => settleNetwork(value as never), 'input', 'object');
  });
});
