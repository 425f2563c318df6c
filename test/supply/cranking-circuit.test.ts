import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  crankingBudgetGuideline,
  crankingBudgetParts,
  crankingBudgetSides,
  type CrankingCircuit,
  crankingCircuit,
  type CrankingCircuitInput,
  type CrankingPart,
  type CrankingResistance,
  type CrankingStarter,
  geometric,
  iec60228Class5,
  iso19642,
  type MotorStarter,
  type ResistanceBasis,
  solvePath,
} from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { neverRunsOut } from '../support/extremes.js';
import { evenly, evenlyWithEnds, swapsMatter } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';
import { simulate } from '../support/simulator.js';

const motor: MotorStarter = {
  kind: 'series',
  lockedV: 4,
  lockedA: 500,
  freeV: 11.5,
  freeA: 80,
  freeRpm: 6000,
  crankingA: 220,
  gearRatio: 12,
};
const input: CrankingCircuitInput = {
  openV: 12.6,
  batteryResistanceOhm: 0.009,
  outParts: [
    { name: 'post clamp', role: 'connection', resistanceOhm: 0.0002 },
    { name: 'long cable', role: 'cable', areaMm2: 50, lengthM: 4.6, resistanceBasis: iso19642, conductorTempC: 40 },
    { name: 'solenoid contact', role: 'contact', resistanceOhm: 0.0005 },
  ],
  returnParts: [
    { name: 'engine strap', role: 'cable', resistanceOhm: 0.0003, ratedTempC: 20, conductorTempC: 60 },
    { name: 'frame', role: 'body', resistanceOhm: 0.0005 },
    { name: 'ground clamp', role: 'connection', resistanceOhm: 0.0002 },
  ],
  starter: motor,
  controller: { outAfter: 'post clamp', groundBefore: 'frame', leastV: 8, firstLeastV: 6 },
  budgets: [crankingBudgetParts, crankingBudgetSides],
  deviationV: 0.05,
};
const solved = (over: Partial<CrankingCircuitInput> = {}): CrankingCircuit => {
  const result = crankingCircuit({ ...input, ...over });
  if (!result.possible) throw new Error(result.because);
  return result;
};
const bare = (starter: CrankingStarter, openV: number, ohm: number, parts: readonly CrankingPart[] = []) =>
  solved({ openV, batteryResistanceOhm: ohm, outParts: parts, returnParts: [], starter, controller: null });
const joint = (resistanceOhm: number): CrankingResistance => ({ name: 'joint', role: 'connection', resistanceOhm });

describe('published', () => {
  const physics = {
    source: 'college-physics-starter',
    place: '0.0500 Ω starter, 12.0 V behind 0.0100 Ω',
    status: 'published',
  } as const;
  const starter: CrankingStarter = { kind: 'resistor', resistanceOhm: 0.05 };
  const sound = bare(starter, 12, 0.01);
  const corroded = bare(starter, 12, 0.01, [joint(0.09)]);
  computed('200 A', physics, () => expectPrinted(sound.currentA, '200'));
  computed('10.0 V', physics, () => expectPrinted(sound.starterV, '10.0'));
  computed('2.00 kW', physics, () => expectPrinted(sound.starterPowerW / 1000, '2.00'));
  computed('0.0900 Ω of corrosion: 80 A', physics, () => expectPrinted(corroded.currentA, '80'));
  computed('0.0900 Ω of corrosion: 4.00 V', physics, () => expectPrinted(corroded.starterV, '4.00'));
  computed('0.0900 Ω of corrosion: 320 W', physics, () => expectPrinted(corroded.starterPowerW, '320'));

  const lessons = {
    source: 'lessons-electric-circuits',
    place: 'vol. I, batteries: 10 V behind 0.2 Ω, 1 Ω across it',
    status: 'published',
  } as const;
  const cell = bare({ kind: 'resistor', resistanceOhm: 1 }, 10, 0.2);
  computed('8.333 A', lessons, () => expectPrinted(cell.currentA, '8.333'));
  computed('8.333 V', lessons, () => expectPrinted(cell.postV, '8.333'));
  computed('a short: 50 A', lessons, () =>
    expectPrinted(bare({ kind: 'resistor', resistanceOhm: 1e-12 }, 10, 0.2).currentA, '50'),
  );

  // Motors of constant field as a machine room has them: the same line, at other volts. The first speed is the
  // speed "free" at its current, and `crankingA` the current asked for.
  const machines = { source: 'dc-motor-examples', status: 'published' } as const;
  const machine = (ohm: number, freeV: number, freeA: number, freeRpm: number, crankingA: number): MotorStarter => ({
    kind: 'permanent-magnet',
    lockedV: ohm * 1000,
    lockedA: 1000,
    freeV,
    freeA,
    freeRpm,
    crankingA,
  });
  computed('230 V, 0.4 Ω, 650 rpm at 15 A, 1.0 Ω added: 606.5 rpm', { ...machines, place: 'full load' }, () =>
    expectPrinted(bare(machine(0.4, 230, 15, 650, 15), 230, 0, [joint(1)]).speedRpm!, '606.5'),
  );
  // Half the load: the same motor known at 7.5 A, its speed there from the EMF of the source's first line.
  computed('the same at half load: 636.9 rpm', { ...machines, place: 'half load' }, () => {
    const halfRpm = (650 * (230 - 7.5 * 0.4)) / (230 - 15 * 0.4);
    expectPrinted(bare(machine(0.4, 230, 7.5, halfRpm, 7.5), 230, 0, [joint(1)]).speedRpm!, '636.9');
  });
  const ohio = { ...machines, place: '230 V, 0.05 Ω, 1120 rpm at 3.93 A' };
  computed('42.93 A: 1111 rpm', ohio, () =>
    // Through its constant rounded to 0.0668 the source comes to 1111.1; unrounded it is 1110.50.
    expectPrinted(bare(machine(0.05, 230, 3.93, 1120, 42.93), 230, 0).speedRpm!, '1111', 0.51),
  );
  computed('42.93 A, 0.1 Ω added: 1090 rpm', ohio, () =>
    // Through the same constant 1090.1; unrounded 1089.57.
    expectPrinted(bare(machine(0.05, 230, 3.93, 1120, 42.93), 230, 0, [joint(0.1)]).speedRpm!, '1090'),
  );

  const strap = {
    source: 'nbs-hb-100',
    place: 'copper 0.017241 Ω·mm²/m: strap of 25 mm², 0.3 m',
    status: 'derived',
  } as const;
  const cable = (areaMm2: number, lengthM: number, conductorTempC: number, resistanceBasis: ResistanceBasis) =>
    bare({ kind: 'measured-current', currentA: 80 }, 12, 0, [
      { name: 'cable', role: 'cable', areaMm2, lengthM, conductorTempC, resistanceBasis },
    ]);
  computed('0.207 mΩ', strap, () =>
    expectPrinted(cable(25, 0.3, 20, geometric).parts[1]!.resistanceOhm * 1000, '0.207'),
  );
  const copper = { source: 'nbs-hb-100', place: '80 A, 3.0 m in all, 60 °C, ideal copper', status: 'derived' } as const;
  for (const [areaMm2, print] of [
    [10, '0.479'],
    [16, '0.299'],
    [25, '0.192'],
  ] as const) {
    computed(`${areaMm2} mm²: ${print} V`, copper, () => expectPrinted(cable(areaMm2, 3, 60, geometric).dropV, print));
  }
  computed('16 mm² of class 5: 0.336 V', { ...copper, source: 'iec-60228', place: '80 A, 3.0 m, 60 °C' }, () =>
    expectPrinted(cable(16, 3, 60, iec60228Class5).dropV, '0.336'),
  );
  for (const [areaMm2, print] of [
    [10, '0.5055'],
    [16, '0.3222'],
    [20, '0.2652'],
    [25, '0.2064'],
  ] as const) {
    const cite = { source: 'iso-19642', place: '80 A, 3.0 m, 60 °C', status: 'memory' } as const;
    computed(`${areaMm2} mm² of vehicle cable: ${print} V`, cite, () =>
      // 0.743 mΩ/m comes to 0.20635: the last digit was rounded twice.
      expectPrinted(cable(areaMm2, 3, 60, iso19642).dropV, print, areaMm2 === 25 ? 0.54 : 0.5),
    );
  }

  const limits = { source: 'service-drop-limits', place: 'limits while cranking', status: 'published' } as const;
  for (const [role, print] of [
    ['connection', '0.5'],
    ['cable', '1.0'],
    ['contact', '1.5'],
  ] as const) {
    // 0.1, 0.2 and 0.3 V over 200 A.
    computed(`at 200 A a ${role} may have ${print} mΩ`, { ...limits, status: 'derived' }, () => {
      const starterAt200: CrankingStarter = { kind: 'measured-current', currentA: 200 };
      const part = bare(starterAt200, 12.6, 0.01, [{ ...joint(0), role }]).parts[1]!;
      expectPrinted(part.limitOhm! * 1000, print);
    });
  }
  computed('0.5 V on the one side and 0.3 V on the other are met, and so is their sum of 0.8 V', limits, () => {
    // 1/8 and 3/40 mΩ: no rounding hides on which side of the limit it falls.
    const { checks, dropV } = solved({
      outParts: [{ ...joint(0.0025), name: 'out' }],
      returnParts: [{ ...joint(0.0014999), name: 'back' }],
      starter: { kind: 'measured-current', currentA: 200 },
      budgets: [crankingBudgetSides],
      controller: null,
    });
    expectPrinted(dropV, '0.8', 0.01);
    expect(checks.map(({ ok }) => ok)).toEqual([true, true, true]);
  });
  computed('1.01 V in all is a fault', limits, () => {
    const { checks } = bare({ kind: 'measured-current', currentA: 101 }, 12.6, 0.01, [
      { ...joint(0.01), role: 'body' },
    ]);
    expect(checks.find(({ name }) => name === 'from post to post (each part)')?.ok).toBe(false);
  });
});

describe('independent', { timeout: 60_000 }, () => {
  const ohms = (parts: CrankingCircuit['parts'], side: string): number[] =>
    parts.filter((part) => part.side === side).map((part) => part.resistanceOhm);

  it('agrees with a circuit simulator on 60 random circuits of five kinds of starter, to 1e-6', async () => {
    const ohm = fc.double({ min: 1e-5, max: 0.004, noNaN: true });
    const cases = fc.sample(
      fc.record({
        openV: fc.double({ min: 10, max: 13, noNaN: true }),
        batteryOhm: fc.double({ min: 0.003, max: 0.02, noNaN: true }),
        out: fc.array(ohm, { minLength: 1, maxLength: 6 }),
        back: fc.array(ohm, { minLength: 1, maxLength: 4 }),
        crankingA: fc.double({ min: 90, max: 240, noNaN: true }),
      }),
      { numRuns: 12, seed: 20260611 },
    );
    let compared = 0;
    for (const { openV, batteryOhm, out, back, crankingA } of cases) {
      const parts = (list: readonly number[], name: string): CrankingPart[] =>
        list.map((resistanceOhm, i) => ({ name: `${name}${i}`, role: 'body', resistanceOhm }));
      const locked = motor.lockedV / motor.lockedA;
      const constant = (motor.freeV - motor.freeA * locked) / motor.freeRpm;
      // The machine as a torque balance: a winding, an EMF of its speed, and a current source for the torque. The
      // speed is the volts of node `w`, so that EMF and field meet in the simulator and not here.
      const pm = `RL n${out.length} e ${locked}\nIL e m0 ${crankingA}\nBW w 0 V=V(e,m0)/${constant}`;
      const series = `RL n${out.length} e ${locked}\nVI e f 0\nIL f m0 ${crankingA}\nBW w 0 V=V(e,m0)*${motor.freeA}/(${constant}*I(VI))`;
      const kinds: readonly (readonly [CrankingStarter, string])[] = [
        [{ kind: 'resistor', resistanceOhm: 0.05 }, `RL n${out.length} m0 0.05`],
        [{ kind: 'measured-current', currentA: crankingA }, `IL n${out.length} m0 ${crankingA}`],
        [{ ...motor, kind: 'permanent-magnet', crankingA }, pm],
        [{ ...motor, crankingA }, series],
        [{ ...motor, crankingA: 1e5 }, `RL n${out.length} m0 ${locked}`],
      ];
      for (const [starter, element] of kinds) {
        const ours = solved({
          openV,
          batteryResistanceOhm: batteryOhm,
          outParts: parts(out, 'o'),
          returnParts: parts(back, 'b'),
          starter,
          controller: { outAfter: 'o0', groundBefore: `b${back.length - 1}`, leastV: 8, firstLeastV: null },
        });
        const lines = [`V1 p 0 ${openV}`, `RB p n0 ${batteryOhm}`];
        ours.parts
          .filter(({ side }) => side === 'out')
          .forEach((part, i) => lines.push(`Ro${i} n${i} n${i + 1} ${part.resistanceOhm}`));
        const last = back.length - 1;
        ohms(ours.parts, 'return').forEach((r, i) => lines.push(`Rb${i} m${i} ${i === last ? '0' : `m${i + 1}`} ${r}`));
        const v = await simulate(`${lines.join('\n')}\n${element}\n.options reltol=1e-9 abstol=1e-12 vntol=1e-9\n.op`);
        const node = (name: string): number => (name === 'm0' && v['v(m0)'] === undefined ? NaN : v[`v(${name})`]![0]!);
        expectWithin(ours.currentA, -v['i(v1)']![0]!, 1e-6);
        expectWithin(ours.postV, node('n0'), 1e-6);
        expectWithin(ours.starterV, node(`n${out.length}`) - node('m0'), 1e-6);
        expectWithin(ours.controllerV!, node('n1') - node(`m${last}`), 1e-6);
        ours.ladder.forEach(({ aboveNegativeV }, i) => {
          const theirs =
            i <= out.length ? node(`n${i}`) : i === ours.ladder.length - 1 ? 0 : node(`m${i - out.length - 1}`);
          expect(Math.abs(aboveNegativeV - theirs)).toBeLessThan(1e-6);
        });
        if (ours.speedRpm !== null && !ours.stalled) expectWithin(ours.speedRpm, node('w'), 1e-6);
        compared++;
      }
    }
    expect(compared).toBe(60);
  });

  it('agrees with solvePath, part by part', () => {
    const ours = solved();
    const path = solvePath({
      supplyV: input.openV,
      outParts: ours.parts.filter(({ side }) => side !== 'return'),
      returnParts: ours.parts.filter(({ side }) => side === 'return'),
      load: {
        kind: 'motor',
        windingResistanceOhm: 4 / 500,
        speedConstantRpmPerV: 1,
        ratedCurrentA: motor.crankingA,
        ratedV: 11.5,
        torque: 'constant',
      },
    });
    if (!path.possible) throw new Error(path.because);
    expectWithin(ours.currentA, path.currentA, 1e-12);
    expectWithin(ours.starterV, path.loadV, 1e-12);
    ours.parts.forEach(({ dropV, dropFraction }, i) => {
      expectWithin(dropV, path.parts[i]!.dropV, 1e-12);
      expectWithin(dropFraction, path.parts[i]!.dropFraction, 1e-12);
    });
    expectWithin(ours.ladder[1]!.aboveNegativeV, path.parts[1]!.afterV, 1e-12);
  });

  it('the first moment is a plain resistance', () => {
    const { firstMoment } = solved();
    const still = solved({
      starter: { kind: 'resistor', resistanceOhm: 4 / 500 },
      controller: { ...input.controller!, firstLeastV: null },
    });
    expectWithin(firstMoment!.currentA, still.currentA, 1e-12);
    expectWithin(firstMoment!.controllerV!, still.controllerV!, 1e-12);
    expect(still.firstMoment).toBeNull();
  });

  it('a cable by its size and by its ohms, warmed, are one', () => {
    const bySize = solved().parts[2]!.resistanceOhm;
    expectWithin(bySize, (0.368e-3 * 4.6 * (234.5 + 40)) / 254.5, 1e-9);
    const strap = solved().parts[4]!.resistanceOhm;
    expectWithin(strap, (0.0003 * (234.5 + 60)) / 254.5, 1e-3);
  });
});

describe('laws', () => {
  const ohm = evenlyWithEnds(0, 0.005);
  const random = fc.record({
    batteryResistanceOhm: evenlyWithEnds(0, 0.03),
    out: fc.array(ohm, { maxLength: 6 }),
    back: fc.array(ohm, { maxLength: 4 }),
    starter: fc.oneof(
      fc.record({
        kind: fc.constant('resistor' as const),
        resistanceOhm: evenly(0.005, 1),
      }),
      fc.record({
        ...Object.fromEntries(Object.entries(motor).map(([key, value]) => [key, fc.constant(value)])),
        kind: fc.constantFrom('series' as const, 'permanent-magnet' as const),
        crankingA: fc.double({ min: 80, max: 900, noNaN: true }),
      }) as fc.Arbitrary<MotorStarter>,
    ),
  });
  const build = (r: { batteryResistanceOhm: number; out: number[]; back: number[]; starter: CrankingStarter }) =>
    solved({
      batteryResistanceOhm: r.batteryResistanceOhm,
      outParts: r.out.map((resistanceOhm, i) => ({ name: `o${i}`, role: 'connection', resistanceOhm })),
      returnParts: r.back.map((resistanceOhm, i) => ({ name: `b${i}`, role: 'cable', resistanceOhm })),
      starter: r.starter,
      controller: null,
    });

  it('loses nothing: volts add up, shares add to one, the ladder falls from post to post', () => {
    fc.assert(
      fc.property(random, (r) => {
        const c = build(r);
        expectWithin(c.batteryDropV + c.dropV + c.starterV, 12.6, 1e-9);
        expectWithin(c.positiveDropV + c.negativeDropV, c.dropV, 1e-12);
        const heatW = c.parts.reduce((sum, part) => sum + part.lossW, 0);
        expectWithin(heatW + c.starterPowerW, 12.6 * c.currentA, 1e-9);
        const shares = c.parts.reduce((sum, part) => sum + part.dropFraction, 0);
        expect(shares === 0 || Math.abs(shares - 1) < 1e-9).toBe(true);
        expect(c.ladder.length).toBe(Math.max(r.out.length, 1) + Math.max(r.back.length, 1) + 2);
        c.ladder
          .slice(1)
          .forEach(({ aboveNegativeV }, i) =>
            expect(aboveNegativeV).toBeLessThanOrEqual(c.ladder[i]!.aboveNegativeV + 1e-12),
          );
        expect(c.ladder.at(-1)!.aboveNegativeV).toBe(0);
        const caseAt = c.ladder.findIndex(({ name }) => name === 'starter case');
        expectWithin(c.ladder[caseAt - 1]!.aboveNegativeV - c.ladder[caseAt]!.aboveNegativeV, c.starterV, 1e-9);
      }),
    );
  });
  it('one joint more never gives the starter more volts, more current or more speed', () => {
    fc.assert(
      fc.property(random, fc.double({ min: 1e-5, max: 0.01, noNaN: true }), (r, more) => {
        const before = build(r);
        const after = build({ ...r, out: [...r.out, more] });
        expect(after.starterV).toBeLessThanOrEqual(before.starterV + 1e-12);
        expect(after.currentA).toBeLessThanOrEqual(before.currentA * (1 + 1e-12));
        if (before.speedRpm !== null) expect(after.speedRpm!).toBeLessThanOrEqual(before.speedRpm + 1e-9);
        if (before.stalled) expect(after.stalled).toBe(true);
      }),
    );
  });
  it('the line runs from standing still to the bench test run free, torque falling all the way', () => {
    for (const kind of ['series', 'permanent-magnet'] as const) {
      const { line, firstMoment, currentA, speedRpm } = solved({ starter: { ...motor, kind } });
      expect(line[0]!.speedRpm).toBe(0);
      expectWithin(line[0]!.currentA, firstMoment!.currentA, 1e-12);
      expectWithin(line.at(-1)!.currentA, motor.freeA, 1e-12);
      expect(Math.abs(line.at(-1)!.torqueFraction)).toBeLessThan(1e-12);
      line.slice(1).forEach((point, i) => {
        expect(point.speedRpm).toBeGreaterThan(line[i]!.speedRpm);
        expect(point.torqueFraction).toBeLessThan(line[i]!.torqueFraction);
      });
      const near = line.find((point) => point.currentA <= currentA)!;
      expect(near.speedRpm).toBeGreaterThanOrEqual(speedRpm!);
    }
  });
  it('a bench test run free at its own volts is what it says', () => {
    for (const kind of ['series', 'permanent-magnet'] as const) {
      const free = bare({ ...motor, kind, crankingA: motor.freeA }, motor.freeV, 0);
      expectWithin(free.speedRpm!, motor.freeRpm, 1e-12);
      expectWithin(free.engineRpm!, 500, 1e-12);
      const held = bare({ ...motor, kind, crankingA: 1e5 }, motor.lockedV, 0);
      expect(held).toMatchObject({ stalled: true, speedRpm: 0 });
      expectWithin(held.currentA, motor.lockedA, 1e-12);
      expectWithin(held.line[0]?.torqueFraction ?? 1, 1, 1e-12);
    }
  });
  it('swapped inputs do not go unseen, and no number runs out', () => {
    const byStarter = (starter: MotorStarter) => crankingCircuit({ ...input, starter });
    swapsMatter(byStarter, motor);
    swapsMatter(byStarter, { ...motor, kind: 'permanent-magnet' });
    neverRunsOut(byStarter, motor);
    neverRunsOut(byStarter, { ...motor, kind: 'permanent-magnet' });
    swapsMatter(crankingCircuit, { ...input, readings: [{ name: 'frame', readingV: 0.3 }], readingA: 180 });
    neverRunsOut(crankingCircuit, { ...input, readings: [{ name: 'frame', readingV: 0.3 }], readingA: 180 });
  });
});

describe('readings', () => {
  it('names the bad joint, the worst first, with the resistance that is too much', () => {
    const { badParts, parts } = solved({
      readings: [
        { name: 'ground clamp', readingV: 0.4 },
        { name: 'post clamp', readingV: 0.06 },
        { name: 'engine strap', readingV: 0.9 },
      ],
    });
    expect(badParts).toEqual(['engine strap', 'ground clamp']);
    const clamp = parts.find(({ name }) => name === 'ground clamp')!;
    expectWithin(clamp.extraOhm!, (0.4 - 220 * 0.0002) / 220, 1e-9);
    expect(parts.find(({ name }) => name === 'post clamp')!.verdict).toBe('sound');
    expect(parts.find(({ name }) => name === 'frame')!).toMatchObject({ readingV: null, verdict: null });
  });
  it('a measured current moves what is expected, not what is predicted', () => {
    const half = solved({ readingA: 110, readings: [{ name: 'frame', readingV: 0.11 }] });
    const frame = half.parts.find(({ name }) => name === 'frame')!;
    expectWithin(frame.expectedV, 0.055, 1e-9);
    expectWithin(frame.badAboveV, 0.105, 1e-9);
    expect(frame.verdict).toBe('bad');
    expectWithin(frame.dropV, 0.11, 1e-9);
  });
  it('on the limit is sound; far below says so', () => {
    const at = (readingV: number): string | null =>
      solved({
        deviationV: 0.03125,
        batteryResistanceOhm: 0.0078125,
        starter: { kind: 'measured-current', currentA: 256 },
        controller: null,
        readings: [{ name: 'battery', readingV }],
      }).parts[0]!.verdict;
    expect(at(2.03125)).toBe('sound');
    expect(at(2.0312501)).toBe('bad');
    expect(at(1.96875)).toBe('sound');
    expect(at(1.9687499)).toBe('below');
  });
});

describe('checks', () => {
  it('judges each part by its kind, sides and sum, and what the caller asks for', () => {
    const { checks, decidedBy } = solved({
      leastEngineRpm: 100,
      budgets: [crankingBudgetParts, crankingBudgetSides, crankingBudgetGuideline],
    });
    const names = checks.map(({ name }) => name);
    expect(names).toContain('long cable (each part)');
    expect(names).toContain('solenoid contact (guideline)');
    expect(names).not.toContain('frame (each part)');
    expect(names).not.toContain('battery (each part)');
    expect(names).toContain('ground side (each side)');
    expect(names).toContain('controller while cranking');
    expect(names).toContain('controller in the first moment');
    expect(names).toContain('speed of the engine');
    expect(names).toContain(decidedBy);
    // 50 mm², 4.6 m at 220 A: 0.402 V against 0.2 V.
    expect(decidedBy).toBe('long cable (each part)');
  });
  it('takes the tightest limit of a kind among the sets', () => {
    const cable = (budgets: CrankingCircuitInput['budgets']) => solved({ budgets }).parts[2]!;
    expect(cable([crankingBudgetSides]).limitV).toBeNull();
    expect(cable([crankingBudgetGuideline, crankingBudgetParts])).toMatchObject({
      limitV: 0.2,
      budget: 'cranking-budget-guideline',
    });
  });
  it('a starter that stalls fails, and says by how much current', () => {
    const { stalled, checks, engineRpm } = solved({ starter: { ...motor, crankingA: 800 }, leastEngineRpm: 100 });
    expect(stalled).toBe(true);
    expect(engineRpm).toBe(0);
    const current = checks.find(({ name }) => name.startsWith('current that the circuit gives'))!;
    expect(current).toMatchObject({ ok: false, limit: 800, unit: 'A' });
    expect(checks.find(({ name }) => name === 'speed of the engine')!.ok).toBe(false);
  });
  it('a first moment that cannot be known fails rather than passes', () => {
    const { checks } = solved({ starter: { kind: 'measured-current', currentA: 200 } });
    const first = checks.find(({ name }) => name === 'controller in the first moment')!;
    expect(first).toMatchObject({ ok: false, value: null });
    expect(first.because).toContain('bench test');
  });
  it('a controller at the posts has what the posts have, one at the starter loses with it', () => {
    const posts = solved({ controller: { outAfter: null, groundBefore: null, leastV: 8, firstLeastV: null } });
    expect(posts.controllerV).toBe(posts.postV);
    const far = solved({
      controller: { outAfter: 'solenoid contact', groundBefore: 'engine strap', leastV: 8, firstLeastV: null },
    });
    expectWithin(far.controllerV!, far.starterV, 1e-12);
  });
});

describe('edges', () => {
  it('a measured current that would take all volts is not possible, and says what is', () => {
    const result = crankingCircuit({
      ...input,
      batteryResistanceOhm: 0.1,
      starter: { kind: 'measured-current', currentA: 200 },
    });
    expect(result).toMatchObject({ possible: false, code: 'no-volts-left' });
    if (!result.possible) expect(result.nearest!.currentA).toBeLessThan(200);
  });
  it('no parts and an ideal battery: all volts at the starter', () => {
    const c = bare({ kind: 'resistor', resistanceOhm: 0.05 }, 12, 0);
    expect(c).toMatchObject({ starterV: 12, postV: 12, dropV: 0 });
    expect(c.ladder.map(({ aboveNegativeV }) => aboveNegativeV)).toEqual([12, 12, 0, 0]);
    expect(c.parts[0]!.dropFraction).toBe(0);
  });
  it('refuses nonsense', () => {
    refusesNonsense(crankingCircuit, input, {
      required: ['openV', 'batteryResistanceOhm', 'outParts', 'returnParts', 'budgets', 'deviationV'],
      optional: ['readings', 'readingA', 'leastEngineRpm'],
    });
    const starter = (over: object) => () => crankingCircuit({ ...input, starter: { ...motor, ...over } });
    for (const field of ['lockedV', 'lockedA', 'freeV', 'freeA', 'freeRpm', 'crankingA', 'gearRatio']) {
      for (const value of [NaN, 0, -1, Infinity, 'abc'])
        expectInputError(starter({ [field]: value }), `starter.${field}`);
    }
    expectInputError(starter({ kind: 'hand' }), 'starter.kind', 'oneOf');
    expectInputError(starter({ freeA: 500 }), 'starter.freeA', 'below');
    expectInputError(starter({ crankingA: 79 }), 'starter.crankingA', 'atLeast');
    expectInputError(starter({ freeV: 0.64 }), 'starter.freeV', 'above');
    const other = (given: unknown) => () => crankingCircuit({ ...input, starter: given as CrankingStarter });
    expectInputError(other(undefined), 'starter', 'missing');
    expectInputError(other({ kind: 'resistor', resistanceOhm: 0 }), 'starter.resistanceOhm', 'above');
    expectInputError(other({ kind: 'measured-current', currentA: -1 }), 'starter.currentA', 'above');
  });
  it('refuses parts that are not whole', () => {
    const out = (part: object) => () =>
      crankingCircuit({ ...input, controller: null, outParts: [part as CrankingPart] });
    const cable = { name: 'c', role: 'cable', areaMm2: 50, lengthM: 1, resistanceBasis: iso19642, conductorTempC: 20 };
    expectInputError(out({ ...cable, name: '' }), 'outParts[0].name', 'text');
    expectInputError(out({ ...cable, lengthM: -1 }), 'outParts[0].lengthM', 'atLeast');
    expectInputError(out({ ...cable, areaMm2: 51 }), 'outParts[0].areaMm2', 'inTable');
    expect(out({ ...cable, areaMm2: 51 })).toThrow('crankingCircuit: outParts[0].areaMm2 must be a size of iso-19642');
    expectInputError(out({ ...cable, conductorTempC: undefined }), 'outParts[0].conductorTempC', 'missing');
    expectInputError(out({ ...cable, role: 'contact' }), 'outParts[0].role', 'oneOf');
    expectInputError(out({ ...cable, resistanceOhm: 1 }), 'outParts[0].lengthM', 'oneOfFields');
    expectInputError(out({ name: 'j', role: 'connection' }), 'outParts[0].lengthM', 'oneOfFields');
    expectInputError(out({ ...joint(-1) }), 'outParts[0].resistanceOhm', 'atLeast');
    expectInputError(out({ ...joint(1), ratedTempC: 20 }), 'outParts[0].conductorTempC', 'missing');
    expectInputError(out({ ...joint(1), conductorTempC: 20 }), 'outParts[0].ratedTempC', 'missing');
    expectInputError(out({ ...joint(1), role: 'nut' }), 'outParts[0].role', 'oneOf');
    expectInputError(out({ ...joint(1), name: 'battery' }), 'outParts[0].name', 'order');
    const twice = [{ ...joint(0), name: 'a' }];
    const both = (): unknown => crankingCircuit({ ...input, controller: null, outParts: twice, returnParts: twice });
    expectInputError(both, 'returnParts[0].name', 'order');
  });
  it('refuses taps, readings and limits that are not there', () => {
    const controller = (over: object) => () =>
      crankingCircuit({ ...input, controller: { ...input.controller!, ...over } });
    expectInputError(controller({ outAfter: 'frame' }), 'controller.outAfter', 'inTable');
    expectInputError(controller({ groundBefore: 'long cable' }), 'controller.groundBefore', 'inTable');
    expectInputError(controller({ outAfter: undefined }), 'controller.outAfter', 'missing');
    expectInputError(controller({ leastV: 0 }), 'controller.leastV', 'above');
    expectInputError(controller({ firstLeastV: -1 }), 'controller.firstLeastV', 'above');
    expectInputError(() => crankingCircuit({ ...input, controller: undefined as never }), 'controller', 'missing');
    const readings = (list: object[]) => () => crankingCircuit({ ...input, readings: list as never });
    expectInputError(readings([{ name: 'strut', readingV: 1 }]), 'readings[0].name', 'inTable');
    expectInputError(readings([{ name: 'frame', readingV: -1 }]), 'readings[0].readingV', 'atLeast');
    const frame = { name: 'frame', readingV: 0 };
    expectInputError(readings([frame, frame]), 'readings[1].name', 'order');
    expectInputError(() => crankingCircuit({ ...input, budgets: [] }), 'budgets', 'list');
    expectInputError(() => crankingCircuit({ ...input, budgets: [undefined as never] }), 'budgets[0]', 'missing');
    expectInputError(() => crankingCircuit({ ...input, budgets: [{} as never] }), 'budgets[0]', 'object');
    const geared: MotorStarter = { ...motor };
    delete (geared as { gearRatio?: number }).gearRatio;
    const speed = (): unknown => crankingCircuit({ ...input, starter: geared, leastEngineRpm: 100 });
    expectInputError(speed, 'starter.gearRatio', 'missing');
    expectInputError(() => crankingCircuit({ ...input, leastEngineRpm: 0 }), 'leastEngineRpm', 'above');
  });
});
