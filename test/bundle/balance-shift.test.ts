import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { balanceShift, centreOfMass, type BalanceShiftInput, type MassChange, type VehiclePlace } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenly, evenlyWithEnds, swapsMatter } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';

const LB = 0.45359237;
const IN = 0.0254;
const truck: BalanceShiftInput = {
  wheelbaseM: 2.6,
  trackM: 1.5,
  frontAxleKg: 720,
  rearAxleKg: 580,
  rightSideKg: 640,
  changes: [],
};
const place = (behindFrontAxleM: number, rightOfCentreM = 0): VehiclePlace => ({ behindFrontAxleM, rightOfCentreM });
const added = (massKg: number, to: VehiclePlace): MassChange => ({ kind: 'added', name: 'thing', massKg, to });
const removed = (massKg: number, from: VehiclePlace): MassChange => ({ kind: 'removed', name: 'thing', massKg, from });
const moved = (massKg: number, from: VehiclePlace, to: VehiclePlace): MassChange => ({
  kind: 'moved',
  name: 'thing',
  massKg,
  from,
  to,
});

describe('published', () => {
  /** A vehicle of a mass and a centre, stations counted from its front axle; the wheelbase is ours. */
  const stations = (pounds: number, centre: number, changes: readonly MassChange[]) => {
    const massKg = pounds * LB;
    const rearAxleKg = (massKg * centre) / 200;
    const wheelbaseM = 200 * IN;
    const input = { wheelbaseM, trackM: 1.5, frontAxleKg: massKg - rearAxleKg, rearAxleKg, changes };
    return balanceShift(input);
  };
  const phak = { source: 'faa-h-8083-25', place: 'weight and balance, weight shift', status: 'published' } as const;
  const cargo = stations(8000, 77, [moved(100 * LB, place(30 * IN), place(150 * IN))]);
  computed('8000 lb at 77.0, 100 lb from 30 to 150: centre at 78.5', phak, () =>
    expectPrinted(cargo.after.behindFrontAxleM / IN, '78.5'),
  );
  computed('it moves 1.5 in aft', phak, () =>
    expectPrinted((cargo.after.behindFrontAxleM - cargo.before.behindFrontAxleM) / IN, '1.5'),
  );
  computed('the moment grows by 12 000 lb·in', phak, () =>
    expectPrinted((cargo.shift.rearAxleKg / LB) * 200, '12000', 1e-6),
  );
  computed('to 628 000 lb·in', phak, () => expectPrinted((cargo.after.rearAxleKg / LB) * 200, '628000', 1e-6));
  const limit = { source: 'faa-h-8083-25', place: 'weight shift, limit exceeded', status: 'published' } as const;
  computed('65 lb from 150 to 30 bring 7800 lb from 81.5 to 80.5', limit, () => {
    const { after } = stations(7800, 81.5, [moved(65 * LB, place(150 * IN), place(30 * IN))]);
    expectPrinted(after.behindFrontAxleM / IN, '80.5');
  });
  const school = { source: 'weight-shift-examples', place: '2886 lb, four changes', status: 'published' } as const;
  const four = stations(2886, 101673.78 / 2886, [
    removed(30 * LB, place(71 * IN)),
    added(97 * LB, place(71 * IN)),
    added(20 * LB, place(71 * IN)),
    added(30 * LB, place(94 * IN)),
  ]);
  computed('one thing out, three in: 3003 lb', school, () => expectPrinted(four.after.massKg / LB, '3003'));
  computed('centre at 36.85', school, () => expectPrinted(four.after.behindFrontAxleM / IN, '36.85'));
  computed('moment 110 670.78', school, () => expectPrinted((four.after.rearAxleKg / LB) * 200, '110670.78'));
});

describe('independent', () => {
  it('a winch ahead of the axle loads it by more than its mass and lifts the rear, by the lever', () => {
    const { shift } = balanceShift({ ...truck, changes: [added(40, place(-0.65))] });
    expectWithin(shift.frontAxleKg, 40 * (1 + 0.65 / 2.6), 1e-12);
    expectWithin(shift.rearAxleKg, -10, 1e-12);
  });
  it('agrees with the centre of gravity of the parts', () => {
    const changes = [
      removed(18, place(-0.4, 0.5)),
      added(25, place(2.9, -0.3)),
      moved(70, place(1.1, -0.4), place(1.6, 0.4)),
    ];
    const { before, after } = balanceShift({ ...truck, changes });
    const centre = centreOfMass({
      masses: [
        { massKg: 1300, alongM: before.behindFrontAxleM, acrossM: before.rightOfCentreM! },
        { massKg: -18, alongM: -0.4, acrossM: 0.5 },
        { massKg: 25, alongM: 2.9, acrossM: -0.3 },
        { massKg: -70, alongM: 1.1, acrossM: -0.4 },
        { massKg: 70, alongM: 1.6, acrossM: 0.4 },
      ],
    });
    expectWithin(after.massKg, centre.massKg, 1e-12);
    expectWithin(after.behindFrontAxleM, centre.alongM, 1e-12);
    expectWithin(after.rightOfCentreM!, centre.acrossM, 1e-12);
  });
});

const somePlace = fc.record({
  behindFrontAxleM: evenly(-1, 4),
  rightOfCentreM: evenly(-0.9, 0.9),
});
const someMass = fc.double({ min: 0.1, max: 60, noNaN: true });

describe('laws', () => {
  it('moving a mass there and back restores every load', () => {
    fc.assert(
      fc.property(someMass, somePlace, somePlace, (massKg, a, b) => {
        const { before, after } = balanceShift({ ...truck, changes: [moved(massKg, a, b), moved(massKg, b, a)] });
        expectWithin(after.frontAxleKg, before.frontAxleKg, 1e-12);
        expectWithin(after.rearAxleKg, before.rearAxleKg, 1e-12);
        expectWithin(after.leftSideKg!, before.leftSideKg!, 1e-12);
        expectWithin(after.rightSideKg!, before.rightSideKg!, 1e-12);
      }),
    );
  });
  it('moving is removing and adding, axles and sides carry the whole, and the changes add up', () => {
    fc.assert(
      fc.property(someMass, somePlace, somePlace, (massKg, a, b) => {
        const one = balanceShift({ ...truck, changes: [moved(massKg, a, b)] });
        const two = balanceShift({ ...truck, changes: [removed(massKg, a), added(massKg, b)] });
        expectWithin(two.after.frontAxleKg, one.after.frontAxleKg, 1e-12);
        expectWithin(two.after.rightSideKg!, one.after.rightSideKg!, 1e-12);
        const { after, shifts, shift } = two;
        expectWithin(after.frontAxleKg + after.rearAxleKg, after.massKg, 1e-12);
        expectWithin(after.leftSideKg! + after.rightSideKg!, after.massKg, 1e-12);
        const sum = shifts.reduce((total, { frontAxleKg }) => total + frontAxleKg, 0);
        expect(Math.abs(sum - shift.frontAxleKg)).toBeLessThan(1e-9);
      }),
    );
  });
  it('corners add up to axles and sides under either assumption', () => {
    fc.assert(
      fc.property(someMass, somePlace, evenlyWithEnds(0, 1), (massKg, to, share) => {
        for (const rule of [
          { cornerRule: 'same-side-share' },
          { cornerRule: 'front-share', frontShareFraction: share },
        ] as const) {
          const { after } = balanceShift({ ...truck, ...rule, changes: [added(massKg, to)] });
          const { leftFrontKg, rightFrontKg, leftRearKg, rightRearKg } = after.corners!;
          expectWithin(leftFrontKg + rightFrontKg, after.frontAxleKg, 1e-9);
          expectWithin(leftRearKg + rightRearKg, after.rearAxleKg, 1e-9);
          expectWithin(rightFrontKg + rightRearKg, after.rightSideKg!, 1e-9);
        }
      }),
    );
  });
  it('further back loads the rear more, further right the right', () => {
    fc.assert(
      fc.property(someMass, somePlace, fc.double({ min: 0.01, max: 2, noNaN: true }), (massKg, at, more) => {
        const here = balanceShift({ ...truck, changes: [added(massKg, at)] }).after;
        const back = place(at.behindFrontAxleM + more, at.rightOfCentreM);
        const right = place(at.behindFrontAxleM, at.rightOfCentreM + more);
        expect(balanceShift({ ...truck, changes: [added(massKg, back)] }).after.rearAxleKg).toBeGreaterThan(
          here.rearAxleKg,
        );
        expect(balanceShift({ ...truck, changes: [added(massKg, right)] }).after.rightSideKg!).toBeGreaterThan(
          here.rightSideKg!,
        );
      }),
    );
  });
  it('two swapped inputs of one kind do not go unseen', () => {
    swapsMatter(balanceShift, { ...truck, changes: [moved(20, place(-0.4, 0.5), place(2.9, -0.2))] });
    const ends = (from: VehiclePlace, to: VehiclePlace) =>
      balanceShift({ ...truck, changes: [moved(20, from, to)] }).after;
    expect(ends(place(0, 1), place(1, 1))).not.toEqual(ends(place(1, 1), place(0, 1)));
    expect(ends(place(0, 0), place(1, 0.4))).not.toEqual(ends(place(0, 0), place(0.4, 1)));
  });
});

describe('edges', () => {
  it('with no change nothing changes', () => {
    const { before, after, shift, shifts } = balanceShift(truck);
    expect(after).toEqual(before);
    expect(shifts).toEqual([]);
    expect(shift).toMatchObject({ massKg: 0, frontAxleKg: 0 });
  });
  it('sides that were not weighed are null, with the reason for corners', () => {
    const input: BalanceShiftInput = { ...truck, cornerRule: 'same-side-share', changes: [added(10, place(1, 0.5))] };
    const { rightSideKg: _, ...blind } = input;
    const { after, shift, cornersBecause } = balanceShift(blind);
    expect(after).toMatchObject({ leftSideKg: null, rightSideKg: null, rightOfCentreM: null, corners: null });
    expect(cornersBecause).toBe('sides-not-weighed');
    expectWithin(shift.rightSideKg, 10 * (0.5 + 0.5 / 1.5), 1e-12);
    expect(balanceShift(truck).cornersBecause).toBe('no-corner-rule');
    expect(balanceShift(input).cornersBecause).toBeNull();
  });
  it('an axle that lifts, or is loaded above its limit, fails its check', () => {
    const lift = balanceShift({ ...truck, changes: [added(900, place(4.8))] });
    expect(lift).toMatchObject({ ok: false, decidedBy: 'front axle stays down' });
    const heavy: BalanceShiftInput = {
      ...truck,
      frontAxleMaxKg: 730,
      rearAxleMaxKg: 900,
      changes: [added(20, place(0))],
    };
    expect(balanceShift(heavy)).toMatchObject({ ok: false, decidedBy: 'load of the front axle' });
    expect(balanceShift({ ...heavy, changes: [added(10, place(0))] }).ok).toBe(true);
    const tip = balanceShift({ ...truck, changes: [added(2000, place(1, 2))] });
    expect(tip.checks.find(({ name }) => name === 'left wheels stay down')!.ok).toBe(false);
  });
  it('refuses nonsense with the field that is at fault', () => {
    refusesNonsense(balanceShift, truck, {
      required: ['wheelbaseM', 'trackM', 'frontAxleKg', 'rearAxleKg'],
      optional: ['rightSideKg', 'frontAxleMaxKg', 'rearAxleMaxKg'],
    });
    const of = (change: unknown) => () => balanceShift({ ...truck, changes: [change as MassChange] });
    expectInputError(() => balanceShift({ ...truck, changes: undefined as never }), 'changes', 'missing');
    expectInputError(of(null), 'changes[0]', 'object');
    expectInputError(of({ kind: 'thrown', name: 'x', massKg: 1 }), 'changes[0].kind', 'oneOf');
    expectInputError(of({ kind: 'added', massKg: 1, to: place(0) }), 'changes[0].name', 'missing');
    expectInputError(of({ kind: 'added', name: 'x', massKg: -1, to: place(0) }), 'changes[0].massKg', 'atLeast');
    expectInputError(of({ kind: 'added', name: 'x', massKg: 1 }), 'changes[0].to', 'missing');
    expectInputError(of({ kind: 'moved', name: 'x', massKg: 1, to: place(0) }), 'changes[0].from', 'missing');
    expectInputError(
      of(added(1, { behindFrontAxleM: NaN, rightOfCentreM: 0 })),
      'changes[0].to.behindFrontAxleM',
      'finite',
    );
    expectInputError(of(removed(1, { behindFrontAxleM: 0 } as never)), 'changes[0].from.rightOfCentreM', 'missing');
    expectInputError(of(removed(1300, place(1))), 'changes', 'range');
    expectInputError(() => balanceShift({ ...truck, rightSideKg: 1301 }), 'rightSideKg', 'atMost');
    expectInputError(() => balanceShift({ ...truck, cornerRule: 'x' as never }), 'cornerRule', 'oneOf');
    expectInputError(() => balanceShift({ ...truck, cornerRule: 'front-share' }), 'frontShareFraction', 'missing');
    expectInputError(() => balanceShift({ ...truck, frontShareFraction: 0.5 }), 'frontShareFraction', 'oneOfFields');
    expect(of(added(1, place(NaN)))).toThrow(
      'balanceShift: changes[0].to.behindFrontAxleM must be a finite number, got NaN',
    );
  });
});
