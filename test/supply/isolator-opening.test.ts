import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { isolatorOpening, type IsolatorOpeningInput, type Network, sneakPaths, solveNetwork } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { neverRunsOut } from '../support/extremes.js';
import { swapsMatter } from '../support/law.js';
import { type Citation, computed, expectPrinted, expectWithin } from '../support/published.js';
import { simulate } from '../support/simulator.js';

const base: IsolatorOpeningInput = {
  alternatorAt: 'vehicle',
  heldV: 14.2,
  alternatorMostA: 60,
  chargingA: 18,
  loadsOhm: 1.2,
  ignitionOhm: 4,
  ignitionHoldV: 6,
  exciterOhm: 48,
  ignitionPole: false,
  resistorOhm: 3,
  runDownS: 2,
};
const of = (change: Partial<IsolatorOpeningInput>): ReturnType<typeof isolatorOpening> =>
  isolatorOpening({ ...base, ...change });

describe('published', () => {
  // A divider of 45 V over 5, 10 and 7.5 kΩ: what is fed back through the lamp is what the others have.
  const ladder: Citation = {
    source: 'lessons-electric-circuits',
    place: 'volume I, chapter 6, voltage divider',
    status: 'published',
  };
  const back = (exciterOhm: number, ignitionOhm: number): number =>
    of({ alternatorAt: 'battery', heldV: 45, exciterOhm, ignitionOhm, ignitionPole: true }).ignitionV;
  computed('10 V of 45 V over 5 kΩ', ladder, () => expectPrinted(45 - back(5e3, 17.5e3), '10'));
  computed('20 V over 10 kΩ', ladder, () => expectPrinted(45 - back(10e3, 12.5e3), '20'));
  computed('15 V over 7.5 kΩ', ladder, () => expectPrinted(45 - back(7.5e3, 15e3), '15'));
  // Three resistors side by side at 9 V: 0.9, 4.5 and 9 mA.
  const side: Citation = {
    source: 'lessons-electric-circuits',
    place: 'volume I, chapter 5, 9 V across 10, 2 and 1 kΩ',
    status: 'published',
  };
  const three = of({ heldV: 9, loadsOhm: 10e3, ignitionOhm: 2e3, resistorOhm: 1e3 });
  computed('9 mA in the resistor of 1 kΩ', side, () => expectPrinted(1000 * three.resistorA, '9'));
  computed('14.4 mA in all', side, () => expectPrinted(1000 * three.alternatorA, '14.4'));
  computed('5 A into the same three: 3125 V were it not held', { ...side, status: 'derived' }, () => {
    expectPrinted(
      of({ ...base, heldV: 1e6, alternatorMostA: 5, loadsOhm: 10e3, ignitionOhm: 2e3, resistorOhm: 1e3 }).vehicleV,
      '3125',
    );
  });
  const practice: Citation = { source: 'circuit-theory', place: '3 Ω at 14 V, by hand', status: 'derived' };
  const three14 = of({ heldV: 14 });
  computed('4.67 A', practice, () => expectPrinted(three14.resistorA, '4.67'));
  computed('65.3 W', practice, () => expectPrinted(three14.resistorW, '65.3'));
  computed('131 J in 2 s', practice, () => expectPrinted(three14.resistorJ, '131'));
});

describe('independent', () => {
  const cases = (['vehicle', 'battery'] as const).flatMap((alternatorAt) =>
    [true, false].flatMap((ignitionPole) =>
      [48, null].flatMap((exciterOhm) =>
        [3, null].flatMap((resistorOhm) =>
          [60, 9].map((alternatorMostA) => ({ alternatorAt, ignitionPole, exciterOhm, resistorOhm, alternatorMostA })),
        ),
      ),
    ),
  );
  it.each(cases)(
    '$alternatorAt, pole $ignitionPole, lamp $exciterOhm, resistor $resistorOhm, $alternatorMostA A: a circuit simulator',
    async (change) => {
      const { alternatorAt, ignitionPole, exciterOhm, resistorOhm, alternatorMostA } = change;
      const found = of(change);
      const atVehicle = alternatorAt === 'vehicle';
      const [bus, ign] = ['x', ignitionPole ? 'i' : 'x'];
      const lines = [
        `rl ${bus} 0 1.2`,
        `ri ${ign} 0 4`,
        ...(ignitionPole ? [`rb ${bus} i 1e12`] : []),
        ...(resistorOhm === null ? [] : [`rr ${bus} 0 ${resistorOhm}`]),
        ...(exciterOhm === null ? [] : [`re d ${ign} ${exciterOhm}`]),
      ];
      // Volts that are held, or the most current, whichever gives less: both are worked, the lesser volts stand.
      const sources = atVehicle
        ? [`va d 0 14.2\nvd d ${bus} 0`, `ia 0 d ${alternatorMostA}\nvd d ${bus} 0`]
        : ['va d 0 14.2\nrz x 0 1e12'];
      // One after the other: there is one simulator.
      const runs: Record<string, number[]>[] = [];
      for (const source of sources) runs.push(await simulate(`${source}\n${lines.join('\n')}\n.op`));
      const least = (node: string): number => Math.min(...runs.map((v) => v[`v(${node})`]?.[0] ?? 0));
      expect(found.vehicleV).toBeCloseTo(least(bus), 6);
      expect(found.ignitionV).toBeCloseTo(least(ign), 6);
      expect(found.runsOn).toBe(least(ign) > 6);
    },
  );
  it('the same by the network of what stays alive', () => {
    const network = (alternatorAt: 'vehicle' | 'battery'): Network => ({
      reference: 'post',
      branches: [],
      sources: [
        { name: 'battery', from: 'post', to: 'plus', voltageV: 12.6, resistanceOhm: 1e-6 },
        {
          name: 'alternator',
          from: 'post',
          to: alternatorAt === 'vehicle' ? 'bus' : 'plus',
          voltageV: 14.2,
          resistanceOhm: 1e-9,
        },
        { name: 'exciter', from: 'post', to: 'd', voltageV: 14.2, resistanceOhm: 1e-9 },
      ],
      switches: [
        { name: 'isolator', from: 'plus', to: 'bus', closed: true, resistanceOhm: 1e-6 },
        { name: 'pole', from: 'bus', to: 'ignition', closed: true, resistanceOhm: 1e-9 },
      ],
      loads: [
        { name: 'rest', from: 'bus', to: 'post', load: { kind: 'resistance', resistanceOhm: 1.2 } },
        { name: 'coil', from: 'ignition', to: 'post', load: { kind: 'resistance', resistanceOhm: 4 } },
        { name: 'lamp', from: 'd', to: 'ignition', load: { kind: 'resistance', resistanceOhm: 48 } },
      ],
    });
    for (const alternatorAt of ['vehicle', 'battery'] as const) {
      for (const ignitionPole of [true, false]) {
        const { cases: solved } = sneakPaths({
          network: network(alternatorAt),
          states: [
            { name: 'open', open: ignitionPole ? ['isolator', 'pole'] : ['isolator'], relaysBefore: 'released' },
          ],
          faults: [],
          relays: [],
          aliveV: 0.5,
          by: solveNetwork,
        });
        const volts = (name: string): number => solved[0]!.nodes.find(({ node }) => node === name)!.voltageV ?? 0;
        const found = of({ alternatorAt, ignitionPole, resistorOhm: null });
        expect(found.vehicleV).toBeCloseTo(volts('bus'), 5);
        expect(found.ignitionV).toBeCloseTo(volts('ignition'), 5);
      }
    }
  });
  it('with the resistor that does it alone the engine just stops', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 10, max: 150, noNaN: true }),
        fc.double({ min: 0.7, max: 20, noNaN: true }),
        (alternatorMostA, loadsOhm) => {
          const { aloneOhm, aloneW } = of({ alternatorMostA, loadsOhm, resistorOhm: null });
          if (aloneOhm === null) {
            expect(alternatorMostA / (1 / loadsOhm + 1 / 4)).toBeLessThanOrEqual(6 * (1 + 1e-12));
            return;
          }
          const just = of({ alternatorMostA, loadsOhm, resistorOhm: aloneOhm });
          expectWithin(just.ignitionV, 6, 1e-9);
          expectWithin(just.resistorW, aloneW!, 1e-9);
        },
      ),
    );
  });
});

describe('laws', () => {
  it('each contact that is said to be needed is: without it the engine runs on or the current has nowhere to go', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('vehicle' as const, 'battery' as const),
        fc.double({ min: 5, max: 200, noNaN: true }),
        fc.double({ min: 0.2, max: 30, noNaN: true }),
        fc.double({ min: 2, max: 60, noNaN: true }),
        (alternatorAt, alternatorMostA, loadsOhm, exciterOhm) => {
          const input = { ...base, alternatorAt, alternatorMostA, loadsOhm, exciterOhm };
          const needed = isolatorOpening(input).contacts.map(({ contact }) => contact);
          const withAll = isolatorOpening({
            ...input,
            ignitionPole: needed.includes('ignition'),
            exciterOhm: needed.includes('exciter-diode') ? null : exciterOhm,
          });
          expect(withAll.runsOn).toBe(false);
          if (needed.includes('ignition')) expect(isolatorOpening({ ...input, ignitionPole: false }).runsOn).toBe(true);
          if (needed.includes('exciter-diode'))
            expect(isolatorOpening({ ...input, ignitionPole: true }).runsOn).toBe(true);
        },
      ),
    );
  });
  it('swapping two inputs of a kind is seen', () => {
    swapsMatter(isolatorOpening, base);
    swapsMatter(isolatorOpening, { ...base, alternatorMostA: 8, exciterOhm: 5, ignitionPole: true });
  });
});

describe('edges', () => {
  it('an alternator on the vehicle’s side keeps the engine and throws off what charged', () => {
    const found = of({ resistorOhm: null });
    expect(found).toMatchObject({ vehicleV: 14.2, runsOn: true, dumpedA: 18, resistorA: 0, resistorJ: 0 });
    expect(found.contacts.map(({ contact, fitted }) => [contact, fitted])).toEqual([
      ['main', true],
      ['ignition', false],
      ['resistor', false],
    ]);
    expect(found.checks[0]!.ok).toBe(false);
  });
  it('with all contacts it stops', () => {
    const found = of({ ignitionPole: true });
    expect(found.runsOn).toBe(false);
    expect(found.contacts.every(({ fitted }) => fitted)).toBe(true);
    expect(found.decidedBy).toBe('volts of the ignition with the isolator open');
  });
  it('a lamp of few ohms feeds the ignition back past the open pole', () => {
    const found = of({ ignitionPole: true, exciterOhm: 3 });
    expect(found.runsOn).toBe(true);
    expect(found.contacts.find(({ contact }) => contact === 'exciter-diode')).toMatchObject({ fitted: false });
    expect(of({ ignitionPole: true, exciterOhm: null }).runsOn).toBe(false);
  });
  it('an alternator straight at the battery throws off nothing', () => {
    expect(of({ alternatorAt: 'battery', exciterOhm: null })).toMatchObject({
      vehicleV: 0,
      ignitionV: 0,
      runsOn: false,
      dumpedA: 0,
      aloneOhm: null,
      contacts: [{ contact: 'main' }],
    });
  });
  it('refuses nonsense', () => {
    refusesNonsense(isolatorOpening, base, {
      required: [
        'heldV',
        'alternatorMostA',
        'chargingA',
        'loadsOhm',
        'ignitionOhm',
        'ignitionHoldV',
        'exciterOhm',
        'resistorOhm',
        'runDownS',
      ],
    });
    const bad =
      (change: object): (() => unknown) =>
      () =>
        isolatorOpening({ ...base, ...change });
    expectInputError(bad({ alternatorAt: 'moon' }), 'alternatorAt', 'oneOf');
    expectInputError(bad({ ignitionPole: undefined }), 'ignitionPole', 'missing');
    expectInputError(bad({ ignitionPole: 1 }), 'ignitionPole', 'oneOf');
    expectInputError(bad({ chargingA: -1 }), 'chargingA', 'atLeast');
    expectInputError(bad({ loadsOhm: 0 }), 'loadsOhm', 'above');
    expect(bad({ ignitionHoldV: 0 })).toThrow('isolatorOpening: ignitionHoldV must be above 0, got 0');
  });
  it('never runs out of numbers', () => {
    neverRunsOut(isolatorOpening, base);
    neverRunsOut(isolatorOpening, { ...base, alternatorAt: 'battery', ignitionPole: true });
  });
});
