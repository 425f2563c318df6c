import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  type BudgetLoad,
  type BudgetState,
  energyBudget,
  type EnergyBudgetInput,
  restVoltsTrade,
  type SolvedBudgetState,
  textbookLoads,
} from 'loomwright';
import { expectInputError } from '../support/edge.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';

const idle: BudgetState = { name: 'idle', engineRpm: 800, outputFactor: 1 };
const cruise: BudgetState = { name: 'cruise', engineRpm: 2200, outputFactor: 1 };
const hot: BudgetState = { name: 'hot idle', engineRpm: 800, outputFactor: 0.8 };
const parked: BudgetState = { name: 'parked', engineRpm: 0, outputFactor: 1, wantedTimeH: 3 };
const all = (duty: number): Readonly<Record<string, number>> => ({
  idle: duty,
  cruise: duty,
  'hot idle': duty,
});
const base: EnergyBudgetInput = {
  alternator: {
    points: [
      { rotorRpm: 1100, currentA: 0 },
      { rotorRpm: 1500, currentA: 28 },
      { rotorRpm: 2000, currentA: 45 },
      { rotorRpm: 4000, currentA: 72 },
      { rotorRpm: 6000, currentA: 80 },
    ],
    curveV: 13.5,
    pulleyRatio: 2.5,
    mostRotorRpm: 15000,
  },
  states: [idle, cruise, hot, parked],
  loads: [
    { name: 'engine', currentA: 12, priority: null, dutyByState: all(1) },
    { name: 'fan', currentA: 20, priority: 1, dutyByState: { ...all(0.4), cruise: 0.1 } },
    { name: 'lamps', powerW: 135, priority: 2, dutyByState: all(1) },
    { name: 'screen', currentA: 16, priority: 3, dutyByState: all(0.5) },
    { name: 'fridge', currentA: 6, priority: 4, dutyByState: { ...all(0.5), parked: 0.5 } },
  ],
  battery: {
    ratedChargeAh: 60,
    ratedTimeH: 20,
    peukertExponent: 1.2,
    startChargeFraction: 1,
    end: { kind: 'charge', chargeFraction: 0.5 },
    acceptanceA: 20,
    chargeEfficiency: 0.85,
  },
};
/** The same with one state, and duties in it alone. */
const only = (state: BudgetState, change: Partial<EnergyBudgetInput> = {}): EnergyBudgetInput => ({
  ...base,
  states: [state],
  loads: base.loads.map((load) => ({ ...load, dutyByState: { [state.name]: load.dutyByState[state.name] ?? 0 } })),
  ...change,
});
const one = (input: EnergyBudgetInput): SolvedBudgetState => energyBudget(input).states[0]!;
const drawn = (currentA: number, dutyFraction: number): EnergyBudgetInput => ({
  ...base,
  states: [{ ...idle, engineRpm: 0 }],
  loads: [{ name: 'it', currentA, priority: 1, dutyByState: { idle: dutyFraction } }],
});

describe('published', () => {
  const cell = {
    source: 'lessons-electric-circuits',
    place: 'volume I, chapter 11, batteries',
    status: 'published',
  } as const;
  const ideal = {
    ...base.battery,
    ratedChargeAh: 70,
    peukertExponent: 1,
    end: { kind: 'charge', chargeFraction: 0 },
    chargeEfficiency: 1,
  } as const;
  computed('70 Ah at 3.5 A: 20 h', cell, () => {
    expectPrinted(one({ ...drawn(3.5, 1), battery: ideal }).lastsTimeH!, '20');
  });
  computed('put back at 7 A, ideally: 10 h', cell, () => {
    const charging = one(only(cruise, { battery: { ...ideal, acceptanceA: 7 } }));
    expectPrinted(charging.rechargeTimeH!, '10');
  });
  const guide = {
    source: 'alternator-pulley-guides',
    place: 'rotor by the diameters of the pulleys',
    status: 'published',
  } as const;
  computed('three to one: 2400 rpm of the rotor at 800 rpm', guide, () => {
    const { alternator } = base;
    expectPrinted(one(only(idle, { alternator: { ...alternator, pulleyRatio: 3 } })).rotorRpm, '2400');
  });
  const law = { source: 'peukert-law', place: '100 Ah at 20 h, k 1.2, 20 A', status: 'derived' } as const;
  computed('a shortage of 20 A: 3.789 h', law, () => {
    const battery = { ...base.battery, ratedChargeAh: 100, end: { kind: 'charge', chargeFraction: 0 } } as const;
    expectPrinted(one({ ...drawn(20, 1), battery }).lastsTimeH!, '3.789');
  });
  const three = { source: 'circuit-theory', place: '24 A at a duty of 0.60', status: 'derived' } as const;
  computed('14.40 A for the battery', three, () => expectPrinted(one(drawn(24, 0.6)).meanA, '14.40'));
  computed('and 24.00 A as the peak', three, () => expectPrinted(one(drawn(24, 0.6)).mostA, '24.00'));
  const book = {
    source: 'vehicle-load-textbook',
    place: 'intermittent loads, a tenth of their total',
    status: 'memory',
  } as const;
  computed('intermittent loads at a tenth: 170 W', book, () => {
    const intermittent = textbookLoads.rows.slice(10);
    const loads = intermittent.map(([name, powerW]): BudgetLoad => {
      return { name, powerW, priority: 1, dutyByState: { idle: 0.1 } };
    });
    const budget = one(only(idle, { alternator: { ...base.alternator, curveV: 12 }, loads }));
    expectPrinted(budget.meanA * 12, '17e1');
  });
});

describe('independent', () => {
  it('every state by hand', () => {
    const [atIdle, atCruise, hotIdle, standing] = energyBudget(base).states as [
      SolvedBudgetState,
      SolvedBudgetState,
      SolvedBudgetState,
      SolvedBudgetState,
    ];
    // Rotor 2000: 45 A. Rotor 5500: 72 + 8 × 0.75. Loads: 12 + 8 + 10 + 8 + 3, at cruise the fan 2.
    expect(atIdle).toMatchObject({ rotorRpm: 2000, outputA: 45, meanA: 41, balanceA: 4, lastsTimeH: null, shed: [] });
    expect(atIdle.mostA).toBeCloseTo(12 + 20 + 10 + 16 + 6, 12);
    expect(atCruise).toMatchObject({ rotorRpm: 5500, outputA: 78, rechargeA: 20 });
    expectWithin(atCruise.rechargeTimeH!, 30 / (0.85 * 20), 1e-12);
    expect(hotIdle.outputA).toBe(36);
    expect(hotIdle.shed).toEqual(['screen']);
    expect(hotIdle.shedBalanceA).toBeCloseTo(3, 12);
    // All on together: 64 A for 0.4 of the time, 44 A for 0.1, then 22 A, which 36 A feed. 5 A of 12 A are not put back.
    const full = (amps: number): number => 20 * (60 / (amps * 20)) ** 1.2;
    const rate = (0.4 / full(28) + 0.1 / full(8)) * (5 / (0.4 * 28 + 0.1 * 8));
    expectWithin(hotIdle.lastsTimeH!, 0.5 / rate, 1e-12);
    expectWithin(standing.lastsTimeH!, (0.5 * full(6)) / 0.5, 1e-12);
    // 41 A lie on the second piece: 1500 + 500 × 13/17 of the rotor.
    expectWithin(atIdle.balanceEngineRpm!, (1500 + (500 * 13) / 17) / 2.5, 1e-12);
  });
  it('shedding: every set tried; kept by importance first, and nothing shed that need not be', () => {
    const load = fc.record({ currentA: fc.integer({ min: 1, max: 20 }), priority: fc.integer({ min: 1, max: 8 }) });
    fc.assert(
      fc.property(fc.uniqueArray(load, { maxLength: 7, minLength: 1, selector: (l) => l.priority }), (list) => {
        const loads = list.map((l, i): BudgetLoad => ({ ...l, name: `l${i}`, dutyByState: { idle: 1 } }));
        const { shed, shedEnough } = one(only(idle, { loads }));
        expect(shedEnough).toBe(true);
        const byImportance = [...loads].sort((a, b) => a.priority! - b.priority!);
        // The best set keeps the most important that it can, then the next: the greatest binary number that fits.
        let best = 0;
        for (let set = 0; set < 2 ** loads.length; set++) {
          const kept = byImportance.filter((_, i) => (set >> (loads.length - 1 - i)) & 1);
          if (kept.reduce((sum, l) => sum + l.currentA!, 0) <= 45) best = Math.max(best, set);
        }
        const expected = byImportance.filter((_, i) => !((best >> (loads.length - 1 - i)) & 1)).map((l) => l.name);
        expect([...shed].sort()).toEqual(expected.sort());
        for (const name of shed) {
          const back = loads.filter((l) => !shed.includes(l.name) || l.name === name);
          expect(back.reduce((sum, l) => sum + l.currentA!, 0)).toBeGreaterThan(45);
        }
      }),
    );
  });
});

describe('laws', () => {
  it('output less mean is the balance; the curve and its share scale it', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 450, max: 2400, noNaN: true }),
        fc.double({ min: 0.1, max: 1, noNaN: true }),
        (rpm, f) => {
          const whole = one(only({ ...idle, engineRpm: rpm }));
          const part = one(only({ ...idle, engineRpm: rpm, outputFactor: f }));
          expectWithin(part.outputA, f * whole.outputA, 1e-12);
          expect(part.balanceA).toBeCloseTo(part.outputA - part.meanA, 9);
          expect(part.lastsTimeH === null).toBe(part.balanceA > -1e-9 * 60);
          expect(part.rechargeA === null).toBe(part.balanceA <= 0);
        },
      ),
    );
  });
  it('parked, no other timing of the same shares drains the battery sooner, and the mean promises more', () => {
    const load = fc.record({
      currentA: fc.integer({ min: 1, max: 40 }),
      tenths: fc.uniqueArray(fc.integer({ min: 0, max: 9 }), { minLength: 1 }),
    });
    fc.assert(
      fc.property(fc.array(load, { minLength: 1, maxLength: 5 }), (list) => {
        // Each load is on in some tenths of the hour, as they fall; every tenth is a stage of Peukert's law.
        const loads = list.map(({ currentA, tenths }, i): BudgetLoad => {
          return { name: `l${i}`, currentA, priority: null, dutyByState: { parked: tenths.length / 10 } };
        });
        const taken = (amps: number): number => (amps === 0 ? 0 : 1 / (20 * Math.min(3 / amps, (3 / amps) ** 1.2)));
        let perH = 0;
        for (let tenth = 0; tenth < 10; tenth++) {
          perH += taken(list.reduce((sum, l) => sum + (l.tenths.includes(tenth) ? l.currentA : 0), 0)) / 10;
        }
        const found = one(only(parked, { loads }));
        expect(found.lastsTimeH!).toBeLessThanOrEqual((0.5 / perH) * (1 + 1e-12));
        expect(found.lastsTimeH!).toBeLessThanOrEqual((0.5 / taken(found.meanA)) * (1 + 1e-12));
        // One load alone has no timing.
        if (list.length === 1) expectWithin(found.lastsTimeH!, 0.5 / perH, 1e-12);
      }),
    );
  });
  it('at the speed of balance it balances', () => {
    const { balanceEngineRpm } = one(only(hot));
    const found = one(only({ ...hot, engineRpm: balanceEngineRpm! }));
    expect(found.balanceA).toBeCloseTo(0, 9);
  });
  it('swapping engine speed and wanted time, output and duty is seen', () => {
    const before = JSON.stringify(energyBudget(base));
    const twisted = { ...base, alternator: { ...base.alternator, curveV: 2.5, pulleyRatio: 1.35 } };
    expect(JSON.stringify(energyBudget(twisted))).not.toBe(before);
  });
});

describe('edges', () => {
  it('the marks of ISO 8854 are the curve at 1500 and 6000 rpm, where it goes so far', () => {
    expect(energyBudget(base)).toMatchObject({ lowMarkA: 28, ratedMarkA: 80 });
    const points = base.alternator.points.slice(2, 4);
    const short = energyBudget(only(idle, { alternator: { ...base.alternator, points, pulleyRatio: 2.5 } }));
    expect(short).toMatchObject({ lowMarkA: null, ratedMarkA: null });
  });
  it('below the speed of nothing there is nothing; beyond the curve there is no answer', () => {
    expect(one(only({ ...idle, engineRpm: 100 })).outputA).toBe(0);
    const beyond = (): unknown => energyBudget(only({ ...idle, engineRpm: 2401 }));
    expectInputError(beyond, 'states[0].engineRpm', 'range');
    expect(beyond).toThrow('it turns at 6002.5 rpm');
    const points = base.alternator.points.slice(1);
    const under = only({ ...idle, engineRpm: 500 }, { alternator: { ...base.alternator, points } });
    expectInputError(() => energyBudget(under), 'states[0].engineRpm', 'range');
  });
  it('what must stay on is never shed, and says where that is not enough', () => {
    const loads: readonly BudgetLoad[] = [
      { name: 'a', currentA: 50, priority: null, dutyByState: { idle: 1 } },
      { name: 'b', currentA: 1, priority: 1, dutyByState: { idle: 1 } },
    ];
    expect(one(only(idle, { loads }))).toMatchObject({ shed: ['b'], shedEnough: false, shedBalanceA: -5 });
  });
  it('exactly balanced is balanced', () => {
    const loads: readonly BudgetLoad[] = [
      { name: 'a', currentA: 44.9, priority: 1, dutyByState: { idle: 1 } },
      { name: 'b', currentA: 0.1, priority: 2, dutyByState: { idle: 1 } },
    ];
    const budget = energyBudget(only(idle, { loads }));
    expect(budget.states[0]).toMatchObject({ shed: [], shedEnough: true, lastsTimeH: null });
    expect(budget.checks[0]!.ok).toBe(true);
  });
  it('a time that is wanted is checked in place of the balance; the rotor has a limit', () => {
    const { checks } = energyBudget(base);
    expect(checks.find(({ name }) => name === 'parked: lasts')).toMatchObject({ limit: 3, ok: true });
    expect(checks.some(({ name }) => name === 'parked: mean current')).toBe(false);
    expect(checks.find(({ name }) => name === 'cruise: speed of the rotor')).toMatchObject({ value: 5500, ok: true });
    expect(energyBudget(base).decidedBy).toBe('hot idle: mean current');
    const resting = energyBudget({ ...base, loads: [], states: [parked] });
    expect(resting.checks[0]).toMatchObject({ value: null, ok: true });
  });
  it('volts to be left stand for their charge', () => {
    const end = { kind: 'volts', openV: 12.24, list: restVoltsTrade } as const;
    const found = energyBudget({ ...base, battery: { ...base.battery, end } });
    expect(found.endChargeFraction).toBeCloseTo(0.5, 12);
  });
  it('refuses nonsense', () => {
    const { alternator, battery } = base;
    const [first, ...rest] = base.loads;
    const bad =
      (change: Partial<EnergyBudgetInput>): (() => unknown) =>
      () =>
        energyBudget({ ...base, ...change });
    for (const value of [undefined, null, 3, []])
      expectInputError(() => energyBudget(value as never), 'input', 'object');
    // A name that every object knows is a name like any other.
    const odd = energyBudget({
      ...base,
      states: [{ ...idle, name: 'constructor' }],
      loads: [{ ...first!, dutyByState: {} }],
    });
    expect(odd.states[0]!.meanA).toBe(0);
    for (const field of ['curveV', 'pulleyRatio', 'mostRotorRpm'] as const)
      for (const value of [NaN, Infinity, 0, -1, 'a'])
        expectInputError(bad({ alternator: { ...alternator, [field]: value } }), `alternator.${field}`);
    for (const field of ['ratedChargeAh', 'ratedTimeH', 'peukertExponent', 'acceptanceA', 'chargeEfficiency'] as const)
      for (const value of [NaN, Infinity, 0, 'a'])
        expectInputError(bad({ battery: { ...battery, [field]: value } }), `battery.${field}`);
    expectInputError(
      bad({ battery: { ...battery, startChargeFraction: 1.1 } }),
      'battery.startChargeFraction',
      'atMost',
    );
    expectInputError(bad({ battery: { ...battery, startChargeFraction: 0.5 } }), 'battery.end.chargeFraction', 'below');
    expectInputError(bad({ battery: undefined as never }), 'battery', 'missing');
    const points = (list: readonly unknown[]): (() => unknown) =>
      bad({ alternator: { ...alternator, points: list as never } });
    expectInputError(points([]), 'alternator.points', 'list');
    expectInputError(points([alternator.points[1], alternator.points[0]]), 'alternator.points[1].rotorRpm', 'order');
    expectInputError(points([{ rotorRpm: -1, currentA: 0 }, alternator.points[1]]), 'alternator.points[0].rotorRpm');
    expectInputError(points([{ rotorRpm: 0, currentA: NaN }, alternator.points[1]]), 'alternator.points[0].currentA');
    expectInputError(bad({ states: [] }), 'states', 'list');
    expectInputError(bad({ states: [idle, idle] }), 'states[1].name', 'order');
    expectInputError(bad({ states: [{ ...idle, outputFactor: 1.1 }] }), 'states[0].outputFactor', 'atMost');
    expectInputError(bad({ states: [{ ...idle, engineRpm: -1 }] }), 'states[0].engineRpm', 'atLeast');
    expectInputError(bad({ states: [{ ...parked, wantedTimeH: 0 }], loads: [] }), 'states[0].wantedTimeH', 'above');
    const load = (change: object): (() => unknown) => bad({ loads: [{ ...first!, ...change }, ...rest] });
    expectInputError(load({ currentA: 0 }), 'loads[0].currentA', 'above');
    expectInputError(load({ powerW: 10 }), 'loads[0].powerW', 'oneOfFields');
    expectInputError(load({ currentA: undefined }), 'loads[0].currentA', 'oneOfFields');
    expectInputError(load({ priority: 0 }), 'loads[0].priority', 'atLeast');
    expectInputError(load({ priority: 1.5 }), 'loads[0].priority', 'integer');
    expectInputError(load({ dutyByState: { idle: 2 } }), 'loads[0].dutyByState.idle', 'atMost');
    expectInputError(load({ dutyByState: { sailing: 1 } }), 'loads[0].dutyByState', 'oneOf');
    expectInputError(load({ name: 'fan' }), 'loads[1].name', 'order');
    expect(load({ dutyByState: { sailing: 1 } })).toThrow(
      "energyBudget: loads[0].dutyByState must name one of idle, cruise, hot idle, parked, got 'sailing'",
    );
  });
});
