import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { type Loom, type LoomPlan, parseLoom, planLoom, type PlannedCircuit, problemLine } from '@loomwright/harness';
import { netlist } from '../support/plan-netlist.js';
import { simulate } from '../support/simulator.js';
import { audit } from './loom-audit.js';

const TEXT = readFileSync(new URL('../../packages/cli/examples/sandpiper.yaml', import.meta.url), 'utf8');

const read = (text: string): Loom => {
  const parsed = parseLoom(text);
  if (!parsed.ok) throw new Error(parsed.problems.map((one) => problemLine('file', one)).join('\n'));
  return parsed.loom;
};
const loom = read(TEXT);
const plan = planLoom(loom);
const circuit = (of: LoomPlan, name: string): PlannedCircuit => {
  const found = of.circuits.find((one) => one.name === name);
  if (found === undefined) throw new Error(`no circuit ${name}`);
  return found;
};

describe('Sandpiper, planned', () => {
  it('is a whole vehicle, and its rounds agree', () => {
    expect(plan.circuits.filter(({ kind }) => kind === 'load').length).toBeGreaterThanOrEqual(40);
    expect(plan.settled.agreed).toBe(true);
    expect(plan.settled.rounds).toBeLessThan(plan.settled.mostRounds);
    expect(plan.wires.every(({ size, lengthM }) => size !== null && lengthM > 0)).toBe(true);
  });
  it('fails in nothing, and says what to look at', () => {
    expect(plan.findings.filter(({ severity }) => severity === 'fail')).toEqual([]);
    expect(plan.findings.some(({ rule, severity }) => rule === 'unfused-length' && severity === 'warn')).toBe(true);
    expect(plan.findings.every(({ severity, cure }) => severity === 'note' || cure !== null)).toBe(true);
  });
  it('holds no number that is none', () => {
    const walk = (value: unknown, path: string): void => {
      if (typeof value === 'number') expect(Number.isFinite(value), path).toBe(true);
      else if (typeof value === 'object' && value !== null)
        for (const [key, inner] of Object.entries(value)) walk(inner, `${path}.${key}`);
    };
    walk(plan, 'plan');
  });
  it('has readings that agree with its states and paths', () => {
    for (const { kind, state, circuit: name, value, currentA } of plan.readings) {
      const solved = plan.states.find((one) => one.name === state);
      if (kind === 'volts') expect(value).toBe(solved?.loads.find((one) => one.circuit === name)?.loadV);
      if (kind === 'millivolts') {
        expect(currentA).toBe(Math.abs(solved?.currents[name] ?? NaN));
        expect(value).toBeGreaterThanOrEqual(0);
      }
    }
    const heater = plan.readings.find(({ name }) => name === 'heated screen: ohms, load in');
    expect(heater?.value).toBeGreaterThan(0.85);
    expect(heater?.value).toBeLessThan(0.95);
  });
});

describe('the auditor', () => {
  it('finds nothing in the plan of Sandpiper', () => {
    expect(audit(plan)).toEqual([]);
  });
  it('finds nothing where much fails, since all of it is said', () => {
    const worse = structuredClone(loom) as {
      rules: { feederDrop: number };
      items: Record<string, { budget?: string }>;
    };
    worse.rules.feederDrop = 1;
    for (const item of Object.values(worse.items))
      if (item.budget !== undefined) item.budget = 'critical-feed-3-percent';
    const bad = planLoom(worse as unknown as Loom);
    expect(bad.findings.filter(({ severity }) => severity === 'fail').length).toBeGreaterThan(5);
    expect(audit(bad)).toEqual([]);
  });
  it('finds nothing where relays cannot pull in and contacts are too weak, since both are said', () => {
    const weak = structuredClone(loom) as { relayTypes: Record<string, { pickUp: number; current: number }> };
    Object.assign(weak.relayTypes['changeover relay']!, { pickUp: 9.5, current: 10 });
    const bad = planLoom(weak as unknown as Loom);
    const rules = new Set(bad.findings.filter(({ severity }) => severity === 'fail').map(({ rule }) => rule));
    expect(rules).toEqual(new Set(['relay-pick-up', 'contact']));
    expect(audit(bad)).toEqual([]);
  });
  it('finds nothing in a plan that does not look at overloads, and the plan says that it does not', () => {
    const { bears: _, ...rules } = loom.rules;
    const other = planLoom({ ...loom, rules });
    expect(audit(other)).toEqual([]);
    expect(other.notJudged.some((sentence) => sentence.includes('bears'))).toBe(true);
    expect(plan.notJudged.some((sentence) => sentence.includes('bears'))).toBe(false);
    // With the temperatures given each of these wires would be harmed before its fuse opens.
    const harmed = audit({ ...other, loom });
    expect(harmed.some((complaint) => complaint.startsWith('feeder rear box'))).toBe(true);
  });
  it('says which wires no size in stock keeps from harm', () => {
    const thin = loom.rules.stock!.filter(({ areaMm2 }) => areaMm2! <= 10);
    const bad = planLoom({
      ...loom,
      rules: { ...loom.rules, stock: thin, bears: { minutes: loom.rules.insulation, seconds: 160 } },
    });
    const found = bad.findings.filter(({ rule, severity }) => rule === 'fuse-time' && severity === 'fail');
    expect(found.map(({ about }) => about.name)).toContain('feeder rear box');
    expect(found.every(({ cure, check }) => cure !== null && check !== null)).toBe(true);
    expect(audit(bad)).toEqual([]);
  });
  type Bend = (copy: {
    wires: { lengthM: number; areaMm2: number; name: string; unfusedM: number }[];
    circuits: {
      name: string;
      areaMm2: number;
      ampacityA: number;
      currentA: number;
      bundleFactor: number;
      ambientTempC: number;
    }[];
    fuses: { ratingA: number | null; circuit: string | null }[];
    states: { loads: { loadV: number }[]; currents: Record<string, number> }[];
    bundles: { factor: number; wires: string[]; loadedFraction: number; wireCount: number }[];
    findings: unknown[];
    channels: { settingA: number | null; circuit: string | null }[];
    relays: { coilV: number | null; pickUpV: number | null }[];
  }) => void;
  const bends: [string, Bend][] = [
    ['a relay that gets more volts', (copy) => void (copy.relays[0]!.coilV! += 0.1)],
    ['a relay that needs fewer', (copy) => void (copy.relays[0]!.pickUpV! -= 0.1)],
    ['a wire cut short', (copy) => void (copy.wires[3]!.lengthM -= 0.1)],
    ['a thinner wire', (copy) => void (copy.wires.find(({ name }) => name === 'winch out')!.areaMm2 = 50)],
    ['a fuse too large', (copy) => void (copy.fuses.find(({ circuit: of }) => of === 'lift pump')!.ratingA = 100)],
    ['a fuse too small', (copy) => void (copy.fuses.find(({ circuit: of }) => of === 'lift pump')!.ratingA = 5)],
    [
      'a wire that its fuse outlasts',
      (copy) => void (copy.circuits.find(({ name }) => name === 'feeder rear box')!.areaMm2 = 6),
    ],
    ['volts too high', (copy) => void (copy.states[5]!.loads[2]!.loadV += 0.001)],
    ['a feeder that carries less', (copy) => void (copy.states[5]!.currents['feeder front box']! -= 1)],
    ['a kinder bundle', (copy) => void (copy.bundles.find(({ wireCount }) => wireCount > 9)!.factor += 0.01)],
    ['a wire lost from its bundle', (copy) => void copy.bundles.find(({ wireCount }) => wireCount > 9)!.wires.pop()],
    ['a wire that bears more', (copy) => void (copy.circuits.find(({ name }) => name === 'horn')!.ampacityA += 1)],
    ['a cooler place', (copy) => void (copy.circuits.find(({ name }) => name === 'horn')!.ambientTempC -= 5)],
    ['a silent unfused cable', (copy) => void (copy.findings = [])],
    ['metres unfused forgotten', (copy) => void (copy.wires.find(({ name }) => name === 'winch out')!.unfusedM = 0)],
    [
      'a channel set too high',
      (copy) => void (copy.channels.find(({ circuit: of }) => of === 'wipers')!.settingA = 60),
    ],
  ];
  it.each(bends)('finds %s', (_, bend) => {
    const copy = structuredClone(plan);
    bend(copy as unknown as Parameters<Bend>[0]);
    expect(audit(copy)).not.toEqual([]);
  });
});

describe('terminals', () => {
  type Bent = {
    fuseBoxes: Record<string, { takes: object }>;
    items: Record<string, { takes?: object }>;
  };
  const said = (change: (bent: Bent) => void) => {
    const bent = structuredClone(loom) as unknown as Bent;
    change(bent);
    const other = planLoom(bent as unknown as Loom);
    expect(audit(other)).toEqual([]);
    return other.findings.filter(({ rule }) => rule === 'terminal');
  };
  const sizes = { least: { areaMm2: 0.5 }, most: { areaMm2: 6 } };
  it('that carry too little where they are hot are findings', () => {
    // Front box at 70 °C: √(15² + 45/60 · (10² − 15²)) = 11.46 A. The heated screen takes some 16 A, the horn 6 A.
    const found = said(({ fuseBoxes }) => {
      fuseBoxes['front box']!.takes = { ...sizes, current: 15, hot: { at: 85, current: 10 } };
    });
    const screen = found.find(({ about }) => about.name === 'heated screen')!;
    expect(screen.severity).toBe('fail');
    expect(screen.check!.limit).toBeCloseTo(Math.sqrt(225 - 0.75 * 125), 9);
    expect(found.some(({ about }) => about.name === 'horn')).toBe(false);
  });
  it('of which nothing is known in the heat are to be looked at', () => {
    const found = said(({ items }) => {
      items['horn']!.takes = { ...sizes, current: 30 };
    });
    expect(found.map(({ severity, about }) => [severity, about.name])).toEqual([['warn', 'horn']]);
    expect(found[0]!.message).toContain('60 °C');
  });
  it('whose seal does not close on the wire, or whose crimp is too small, are findings', () => {
    const names = (change: (bent: Bent) => void): (string | undefined)[] =>
      said(change).map(({ check }) => check?.name);
    expect(
      names(({ items }) => {
        items['horn']!.takes = { ...sizes, insulation: { least: 4, most: 5 } };
      }),
    ).toEqual(['terminal at horn: seal closes on the insulation']);
    // The family of 0.5 mm takes 0.35 mm² at most and 3 A at 25 °C; the thinnest wire in stock is 0.5 mm².
    const blade = names(({ items }) => {
      items['horn']!.takes = { blade: '0.5 mm' };
    });
    expect(blade).toContain('terminal at horn: conductor goes into the crimp');
    expect(blade).toContain('terminal at horn: current of the contact');
  });
});

describe('fuses in a row', () => {
  /** Blade fuses up to 30 A, and above: per cent of the rating, soonest and latest opening in s, typed again. */
  const BLADE = [
    [110, 360000, null],
    [135, 0.75, 600],
    [160, 0.25, 50],
    [200, 0.15, 5],
    [350, 0.04, 0.5],
    [600, null, 0.1],
  ] as const;
  const along = (points: readonly (readonly [number, number])[], percent: number): number => {
    const i = points.findIndex(([at]) => percent <= at);
    const [a, b] = [points[i - 1]!, points[i]!];
    return a[1] * (b[1] / a[1]) ** (Math.log(percent / a[0]) / Math.log(b[0] / a[0]));
  };
  /** Whether a blade fuse surely opens before another, by trying currents up to where the band of that one ends. */
  const apart = (down: number, up: number, mostA: number): boolean => {
    const soonest = BLADE.flatMap(([percent, s]) => (s === null ? [] : [[percent, s] as const]));
    const latest = BLADE.flatMap(([percent, , s]) => (s === null ? [] : [[percent, s] as const]));
    if (1.35 * down > 1.1 * up) return false;
    for (let currentA = 1.35 * down * 1.0001; currentA < Math.min(3.5 * up, mostA); currentA *= 1.001) {
      const byThen =
        currentA > 6 * down ? ((6 * down) ** 2 * 0.1) / currentA ** 2 : along(latest, (100 * currentA) / down);
      const notBefore = currentA <= 1.1 * up ? 360000 : along(soonest, (100 * currentA) / up);
      if (byThen >= notBefore) return false;
    }
    return true;
  };
  /** Typical melting I²t of blade fuses in A²s, from memory, typed again. */
  const MELTING: Readonly<Record<number, number>> = { 15: 340, 20: 520, 25: 1080, 30: 1510 };
  it('the fuses of a box behind a blade fuse are judged one by one', () => {
    const chained = structuredClone(loom) as {
      rules: { feederDrop: number };
      fuseBoxes: Record<string, { from: object; protection?: object; takes?: object }>;
    };
    chained.rules.feederDrop = 1;
    delete chained.fuseBoxes['front box']!.takes;
    const { protection: _, ...box } = chained.fuseBoxes['dash box']!;
    chained.fuseBoxes['dash box'] = { ...box, from: { box: 'front box', position: 20 } };
    const other = planLoom(chained as unknown as Loom);
    const up = other.fuses.find(({ name }) => name === 'front box 20')!.ratingA!;
    expect(Object.keys(MELTING).map(Number)).toContain(up);
    let judged = 0;
    for (const { name, ratingA, box: of } of other.fuses) {
      if (of !== 'dash box' || ratingA === null) continue;
      const kept = apart(ratingA, up, 1e9) && (6 * ratingA) ** 2 * 0.1 <= 0.48 * MELTING[up]!;
      const said = other.findings.find(({ rule, about }) => rule === 'selectivity' && about.name === name);
      expect(said === undefined, name).toBe(kept);
      if (said !== undefined) expect(said).toMatchObject({ severity: 'warn', about: { kind: 'fuse' } });
      judged++;
    }
    expect(judged).toBeGreaterThan(8);
    expect(other.findings.some(({ rule }) => rule === 'selectivity')).toBe(true);
  });
  it('pairs of which nothing tells are named, and no others', () => {
    const open = plan.notJudged.filter((sentence) => sentence.startsWith('Which opens first'));
    expect(open.some((sentence) => sentence.includes('dash box 10'))).toBe(true);
    expect(open.some((sentence) => sentence.includes('power module A1'))).toBe(true);
    // Of these the file gives the melting I²t of the fuse before them.
    expect(open.some((sentence) => /front box 1|rear box 1/.test(sentence))).toBe(false);
    expect(plan.findings.some(({ rule }) => rule === 'selectivity')).toBe(false);
    const weak = structuredClone(loom) as { fuseBoxes: Record<string, { protection: { melting?: number } }> };
    // 48 % of it: 624 A²s, and a 15 A blade may let 90² · 0.1 = 810 A²s through, one of 10 A 360 A²s.
    weak.fuseBoxes['front box']!.protection.melting = 1300;
    const other = planLoom(weak as unknown as Loom);
    const said = other.findings.filter(({ rule }) => rule === 'selectivity').map(({ about }) => about.name);
    const large = other.fuses.filter(({ box, ratingA }) => box === 'front box' && ratingA !== null && ratingA >= 15);
    expect(said.sort()).toEqual(large.map(({ name }) => name).sort());
    expect(large.length).toBeGreaterThan(3);
  });
  it('a box behind an output is never kept apart from it by a fuse that is slower', () => {
    const chained = structuredClone(loom) as {
      rules: { feederDrop: number };
      fuseBoxes: Record<string, { from: object; protection?: object }>;
      controllers: Record<string, { channels: Record<string, object> }>;
      items: Record<string, object>;
    };
    chained.rules.feederDrop = 1;
    chained.items['heater fan'] = { ...chained.items['heater fan'], from: { box: 'front box', position: 21 } };
    Object.assign(chained.controllers['power module']!.channels['A4']!, { current: 40, settings: [30] });
    const { protection: _, ...box } = chained.fuseBoxes['dash box']!;
    chained.fuseBoxes['dash box'] = { ...box, from: { controller: 'power module', channel: 'A4' } };
    const other = planLoom(chained as unknown as Loom);
    expect(other.channels.find(({ name }) => name === 'power module A4')!.settingA).toBe(30);
    const said = other.findings.filter(({ rule }) => rule === 'selectivity').map(({ about }) => about.name);
    // The output opens 0.2 s after 30 A are passed. A blade fuse has surely opened by then from 200 to 600 % on: 0.5 s
    // are printed at 350 %, 0.1 s at 600 %, and straight between them 0.2 s lies near 476 %, so 6.3 A.
    const fuses = other.fuses.filter(({ box: of, ratingA }) => of === 'dash box' && ratingA !== null);
    for (const { name, ratingA } of fuses) expect(said.includes(name), name).toBe(ratingA! > 6.3);
    expect(said.length).toBeGreaterThan(1);
    expect(said.length).toBeLessThan(fuses.length);
  });
});

describe('against the general circuit simulator', () => {
  it.each(['cranking', 'night and rain', 'rescue'])('every node in state %s', async (state) => {
    const { text, names } = netlist(plan, state);
    const theirs = await simulate(text);
    const ours = plan.states.find(({ name }) => name === state)!;
    let compared = 0;
    for (const [name, label] of names) {
      const volts = theirs[`v(${label})`]?.[0];
      if (volts === undefined) throw new Error(`${name} (${label}) is not in the simulator's answer`);
      expect(Math.abs((ours.nodes[name] ?? NaN) - volts), name).toBeLessThan(1e-6);
      compared++;
    }
    expect(compared).toBe(Object.keys(ours.nodes).length - 1);
    expect(compared).toBeGreaterThan(40);
  });
});

describe('laws', () => {
  const shuffled = <T>(map: Readonly<Record<string, T>>, seed: number): Record<string, T> => {
    const names = Object.keys(map);
    let x = seed || 1;
    for (let i = names.length - 1; i > 0; i--) {
      x = (x * 48271) % 2147483647;
      const j = x % (i + 1);
      [names[i], names[j]] = [names[j]!, names[i]!];
    }
    return Object.fromEntries(names.map((name) => [name, map[name]!]));
  };
  it('a permuted file gives the same plan', () => {
    const plain = JSON.stringify({ ...plan, loom: null });
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 2147483646 }), (seed) => {
        const mixed = {
          ...loom,
          ...Object.fromEntries(
            (
              [
                'places',
                'routes',
                'grounds',
                'fuseBoxes',
                'controllers',
                'buses',
                'relayTypes',
                'items',
                'states',
              ] as const
            ).map((key, i) => [key, shuffled<unknown>(loom[key], seed + i)]),
          ),
          supply: { ...loom.supply, batteries: shuffled(loom.supply.batteries, seed) },
        };
        expect(JSON.stringify({ ...planLoom(mixed), loom: null })).toBe(plain);
      }),
      { numRuns: 8 },
    );
  });
  it('a longer route never makes a wire thinner that must not lose more', () => {
    const longer = structuredClone(loom) as { routes: Record<string, { length: number }> };
    longer.routes['rear trunk']!.length *= 2;
    const other = planLoom(longer as unknown as Loom);
    expect(circuit(other, 'bilge pump').areaMm2!).toBeGreaterThanOrEqual(circuit(plan, 'bilge pump').areaMm2!);
    expect(audit(other)).toEqual([]);
  });
  it('one more load on a feeder takes volts from all others on it', () => {
    const more = structuredClone(loom);
    const { relay: _, ...lamp } = loom.items['headlamp left dipped'] as Extract<
      Loom['items'][string],
      { kind: 'load' }
    >;
    more.items['spot lamp'] = { ...lamp, from: { box: 'front box', position: 20 } };
    const other = planLoom(more);
    const volts = (of: LoomPlan): number =>
      of.states.find(({ name }) => name === 'rescue')!.loads.find((one) => one.circuit === 'headlamp right dipped')!
        .loadV;
    if (circuit(other, 'feeder front box').size === circuit(plan, 'feeder front box').size) {
      expect(volts(other)).toBeLessThan(volts(plan));
    }
    expect(audit(other)).toEqual([]);
  });
  it.each(['eee-inst-002', 'us-33-cfr-183', 'nec-310-15', 'heat'] as const)('settles with bundles by %s', (bundle) => {
    const other = planLoom({ ...loom, rules: { ...loom.rules, bundle } });
    expect(other.settled.agreed).toBe(true);
    expect(other.bundles.every(({ factor }) => factor > 0 && factor <= 1)).toBe(true);
  });
  it('plans by a table of currents as well', () => {
    const other = planLoom({ ...loom, rules: { ...loom.rules, heating: 'us-33-cfr-183-425', insulation: 105 } });
    expect(other.settled.agreed).toBe(true);
    expect(other.circuits.length).toBe(plan.circuits.length);
  });
});
