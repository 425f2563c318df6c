import { describe, expect, it } from 'vitest';
import { type Loom, loomJsonSchema, type LoomPlan, parseLoom, planLoom, sheets } from '@loomwright/harness';
import { looped, loopedText } from '../support/looped-loom.js';
import { netlist } from '../support/plan-netlist.js';
import { simulate } from '../support/simulator.js';
import { sandpiperText } from '../support/small-plan.js';
import { audit } from './loom-audit.js';

const plan = planLoom(looped);
const stateOf = (of: LoomPlan, name: string) => of.states.find((state) => state.name === name)!;

describe('a plan whose grounds form loops', () => {
  it('settles, and fails in nothing', () => {
    expect(plan.settled.agreed).toBe(true);
    expect(plan.findings.filter(({ severity }) => severity === 'fail')).toEqual([]);
  });
  it('names each further way, and sizes those that are straps', () => {
    const names = plan.ways.map(({ name }) => name);
    expect(names).toEqual(
      expect.arrayContaining([
        'strap engine block',
        'strap engine block to battery starter',
        'stray engine block to dash stud',
        'strap tail stud to frame middle',
        'ground dash stud',
        'body dash stud',
        'body dash stud to bulkhead stud',
      ]),
    );
    const second = plan.circuits.find(({ name }) => name === 'strap engine block to battery starter')!;
    expect(second.areaMm2).toBeGreaterThan(0);
    expect(plan.wires.find(({ circuit }) => circuit === second.name)?.lengthM).toBe(0.7);
  });
  it('counts the joint of a stud once where its metal leads on in two ways', () => {
    const of = (name: string): number => plan.ways.find((way) => way.name === name)!.resistanceOhm;
    expect([of('ground dash stud'), of('body dash stud'), of('body dash stud to bulkhead stud')]).toEqual([
      0.0005, 0.0008, 0.0003,
    ]);
    expect(plan.ways.find(({ name }) => name === 'ground dash stud')!.kind).toBe('joint');
  });
  it('passes the auditor', () => {
    expect(audit(plan)).toEqual([]);
  });
});

describe('independent: the general circuit simulator', () => {
  it.each(looped.states === undefined ? [] : Object.keys(looped.states))('every node in state %s', async (state) => {
    const { text, names } = netlist(plan, state);
    const theirs = await simulate(text);
    const ours = stateOf(plan, state);
    let compared = 0;
    for (const [name, label] of names) {
      const volts = theirs[`v(${label})`]?.[0];
      if (volts === undefined) throw new Error(`${name} (${label}) is not in the simulator's answer`);
      expect(Math.abs((ours.nodes[name] ?? NaN) - volts), name).toBeLessThan(1e-6);
      compared++;
    }
    expect(compared).toBe(Object.keys(ours.nodes).length - 1);
  });
});

describe('batteries in parallel', () => {
  it('share the load by their resistances, and the link carries what the second gives', () => {
    const { batteries, currents } = stateOf(plan, 'rescue');
    const of = (name: string) => batteries.find((battery) => battery.name === name)!;
    expect(of('house').currentA).toBeGreaterThan(0);
    expect(of('house').currentA + of('service').currentA).toBeGreaterThan(100);
    expect(Math.abs((currents['link bank'] ?? 0) + of('house').currentA)).toBeLessThan(1e-9);
    for (const name of ['service', 'house']) {
      const { supplyV, currentA } = of(name);
      const restV = looped.states['rescue']!.atRest![name]!;
      expect(supplyV).toBeCloseTo(restV - currentA * looped.supply.batteries[name]!.resistance, 9);
    }
  });
});

describe('laws', () => {
  it('a second strap never raises the volts between its ends', () => {
    const one = structuredClone(looped) as { grounds: Record<string, { bonds?: unknown }> };
    delete one.grounds['tail stud']!.bonds;
    const without = planLoom(one as unknown as Loom);
    for (const { name, nodes } of without.states) {
      const [a, b] = [nodes['ground tail stud']!, nodes['ground frame middle']!];
      const after = stateOf(plan, name).nodes;
      const [c, d] = [after['ground tail stud']!, after['ground frame middle']!];
      expect(Math.abs(c - d)).toBeLessThanOrEqual(Math.abs(a - b) + 1e-12);
    }
  });
  it('a charging current splits over the ways of a loop by their resistances', () => {
    const bare = structuredClone(looped) as {
      items: object;
      controllers: object;
      buses: object;
      grounds: Loom['grounds'];
    };
    Object.assign(bare, { items: {}, controllers: {}, buses: {} });
    bare.grounds['engine block']!.bonds!.pop();
    const {
      supply: { isolator: _, ...supply },
    } = looped;
    const idle = planLoom({ ...(bare as unknown as Loom), supply });
    const of = (name: string) => idle.circuits.find((circuit) => circuit.name === name)!.currentA;
    const ohmOf = (name: string) => idle.ways.find((way) => way.name === name)!.resistanceOhm;
    const direct = ohmOf('strap engine block to battery starter');
    const round = ohmOf('strap engine block') + ohmOf('negative starter');
    expect(of('strap engine block to battery starter')).toBeCloseTo((140 * round) / (direct + round), 6);
    expect(of('strap engine block')).toBeCloseTo((140 * direct) / (direct + round), 6);
    expect(of('negative starter')).toBeCloseTo((140 * direct) / (direct + round), 6);
    expect(of('strap tail stud to frame middle')).toBe(0);
  });
});

describe('a load that a state is solved without', () => {
  const fridge = (change: (loom: Loom) => void): LoomPlan => {
    const loom = structuredClone(looped);
    change(loom);
    return planLoom(loom);
  };
  const found = (of: LoomPlan) =>
    of.findings.filter(
      ({ about, rule }) => about.name === 'fridge' && ['not-fed', 'no-operating-point', 'voltage-drop'].includes(rule),
    );
  // By hand: a source of E behind R gives at most E²/4R. With the key off 10 A of others run, the fridge takes 60 W.
  const weakOhm = 0.9;
  const most = (restV: number, othersA: number): number => (restV - (othersA * weakOhm) / 2) ** 2 / (4 * (weakOhm / 2));
  const weak = fridge((loom) => {
    for (const name of ['service', 'house']) Object.assign(loom.supply.batteries[name]!, { resistance: weakOhm });
  });
  const thin = fridge((loom) => void Object.assign(loom.items['fridge']!, { connector: 1.5 }));

  it('has no stable operating point beside others, though it has one alone', () => {
    expect(most(12.52, 10)).toBeLessThan(60);
    expect(most(12.5, 0)).toBeGreaterThan(60);
    expect(stateOf(weak, 'key off').unsettled).toEqual(['fridge']);
    expect(stateOf(weak, 'key off').starved).toEqual([]);
    expect(stateOf(weak, 'key off').loads.map(({ circuit }) => circuit)).not.toContain('fridge');
    const [first, ...rest] = found(weak);
    expect(rest).toEqual([]);
    expect(first).toMatchObject({ rule: 'no-operating-point', check: null });
    expect(first?.message).toMatch(/fridge: .*stable operating point.*key off/);
  });
  it('cannot be fed by its own path, all else off', () => {
    // 12.5 V behind two connectors of 1.5 Ω: 13 W at most.
    expect(12.5 ** 2 / (4 * 3)).toBeLessThan(60);
    expect(stateOf(thin, 'key off').starved).toEqual(['fridge']);
    expect(stateOf(thin, 'key off').unsettled).toEqual([]);
    const list = found(thin);
    expect(list.map(({ rule }) => rule)).toEqual(['not-fed']);
    for (const { name } of thin.states.filter(({ starved }) => starved.includes('fridge')))
      expect(list[0]?.message).toContain(name);
  });
  it('stands in the sheets of loads and findings, and is no finding of others', () => {
    const set = sheets(weak);
    const notes = set.loads.tables.map(({ note }) => note).join(' ');
    expect(notes).toMatch(/Without a stable operating point.*fridge in key off/);
    expect(JSON.stringify(set.findings.tables)).toContain('no stable operating point');
    expect(plan.findings.some(({ rule }) => rule === 'not-fed' || rule === 'no-operating-point')).toBe(false);
  });
});

describe('the file', () => {
  it('still takes a file without any of it', () => {
    const parsed = parseLoom(sandpiperText);
    expect(parsed.ok).toBe(true);
  });
  it('has the new words in its JSON Schema', () => {
    const text = JSON.stringify(loomJsonSchema());
    for (const word of ['bonds', 'stray', 'bears', 'links', 'atRest', 'sensorShift'])
      expect(text).toContain(`"${word}"`);
  });
  const bad: [string, string, string, string, RegExp][] = [
    [
      'an unknown end',
      '{ to: frame middle, strap: 1.6 m }',
      '{ to: frame midle, strap: 1.6 m }',
      'grounds.tail stud.bonds[0].to',
      /no ground/,
    ],
    [
      'its own end',
      '{ to: frame middle, strap: 1.6 m }',
      '{ to: tail stud, strap: 1.6 m }',
      'grounds.tail stud.bonds[0].to',
      /another/,
    ],
    [
      'a strap without length',
      '{ to: frame middle, strap: 1.6 m }',
      '{ to: frame middle, strap: 0 m }',
      'grounds.tail stud.bonds[0].strap',
      /above 0/,
    ],
    ['a cable without length', 'cable: 0.8 m', 'cable: 0 m', 'supply.batteries.house.cable', /above 0/],
    [
      'an unknown battery',
      '{ battery: starter, strap: 0.7 m }',
      '{ battery: startr, strap: 0.7 m }',
      'grounds.engine block.bonds[0].battery',
      /no battery/,
    ],
    [
      'a bare number',
      '{ to: bulkhead stud, body: 0.3 mΩ }',
      '{ to: bulkhead stud, body: 0.3 }',
      'grounds.dash stud.bonds[0].body',
      /unit/,
    ],
    [
      'a stray way without what it bears',
      ', bears: 5 A, note: throttle cable',
      '',
      'grounds.engine block.bonds[1].bears',
      /required/,
    ],
    [
      'volts at the posts of a battery in parallel',
      'volts: { starter: 12.6 V }, atRest: { service: 12.5 V, house: 12.52 V }',
      'volts: { starter: 12.6 V, service: 12.5 V }, atRest: { house: 12.52 V }',
      'states.key off.volts.service',
      /parallel/,
    ],
    [
      'volts given twice',
      'volts: { starter: 12.6 V }, atRest',
      'volts: { starter: 12.6 V, service: 12.5 V }, atRest',
      'states.key off.atRest.service',
      /already/,
    ],
    [
      'no volts at all',
      'atRest: { service: 12.5 V, house: 12.52 V }',
      'atRest: { service: 12.5 V }',
      'states.key off.volts',
      /needs the volts of house/,
    ],
    [
      'a link of one battery',
      'between: [service, house]',
      'between: [service, service]',
      'supply.links.bank.between[1]',
      /another/,
    ],
    [
      'a battery without resistance at rest',
      'cable: 0.8 m, resistance: 7 mΩ',
      'cable: 0.8 m, resistance: 0 mΩ',
      'states.key off.atRest.house',
      /resistance/,
    ],
  ];
  it.each(bad)('names %s by line and field', (_, from, to, field, message) => {
    expect(loopedText).toContain(from);
    const text = loopedText.replace(from, to);
    const parsed = parseLoom(text);
    if (parsed.ok) throw new Error('it was read');
    const found = parsed.problems.find((problem) => problem.field === field);
    expect(parsed.problems.map((problem) => problem.field)).toContain(field);
    expect(found?.message).toMatch(message);
    expect(found?.line).toBeGreaterThan(1);
  });
});
