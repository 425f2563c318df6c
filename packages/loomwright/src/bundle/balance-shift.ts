import { type Check, makeCheck, tightestCheck } from '../check/index.js';
import { InputError } from '../error/index.js';
import {
  needAbove,
  needAtLeast,
  needBetween,
  needFinite,
  needInput,
  needList,
  needOneOf,
  needText,
} from '../error/guard.js';

/** Where a thing is on the vehicle. */
export interface VehiclePlace {
  /** Behind the front axle in m; below 0 for what is ahead of it. */
  readonly behindFrontAxleM: number;
  /** Right of the middle in m, as the driver sits; below 0 for left. */
  readonly rightOfCentreM: number;
}

/** One thing that was moved, removed or added. */
export type MassChange =
  | {
      readonly kind: 'moved';
      readonly name: string;
      readonly massKg: number;
      readonly from: VehiclePlace;
      readonly to: VehiclePlace;
    }
  | { readonly kind: 'removed'; readonly name: string; readonly massKg: number; readonly from: VehiclePlace }
  | { readonly kind: 'added'; readonly name: string; readonly massKg: number; readonly to: VehiclePlace };

/** By what assumption side loads are shared between the axles. Four wheels do not tell by statics alone. */
export type CornerRule = 'same-side-share' | 'front-share';

export interface BalanceShiftInput {
  readonly wheelbaseM: number;
  /** Distance of the wheels' middles left and right, in m, above 0. */
  readonly trackM: number;
  /** Load of the front axle in kg before the changes, above 0. */
  readonly frontAxleKg: number;
  /** Load of the rear axle in kg before the changes, above 0. */
  readonly rearAxleKg: number;
  /** Load of both right wheels in kg before the changes; left out where it was not weighed. */
  readonly rightSideKg?: number;
  readonly changes: readonly MassChange[];
  /** Largest load of the front axle in kg; not judged unless given. */
  readonly frontAxleMaxKg?: number;
  /** Largest load of the rear axle in kg; not judged unless given. */
  readonly rearAxleMaxKg?: number;
  /** Assumption for corner loads; without it there are none. */
  readonly cornerRule?: CornerRule;
  /** Share of the side moment that the front axle takes, 0 to 1: with `cornerRule` 'front-share'. */
  readonly frontShareFraction?: number;
}

/** Loads of a vehicle at rest on level ground. */
export interface VehicleLoads {
  readonly massKg: number;
  readonly frontAxleKg: number;
  readonly rearAxleKg: number;
  /** Share of the mass on the front axle. */
  readonly frontFraction: number;
  /** Load of both left wheels; null where the sides were not weighed. */
  readonly leftSideKg: number | null;
  readonly rightSideKg: number | null;
  /** Centre of gravity behind the front axle in m. */
  readonly behindFrontAxleM: number;
  /** Centre of gravity right of the middle in m; null where the sides were not weighed. */
  readonly rightOfCentreM: number | null;
  /** Loads of the four wheels by the named assumption, or null. */
  readonly corners: CornerLoads | null;
}

/** Loads of the four wheels in kg. */
export interface CornerLoads {
  readonly leftFrontKg: number;
  readonly rightFrontKg: number;
  readonly leftRearKg: number;
  readonly rightRearKg: number;
}

/** What one change does to axles and sides, in kg. */
export interface LoadShift {
  readonly name: string;
  readonly massKg: number;
  readonly frontAxleKg: number;
  readonly rearAxleKg: number;
  readonly leftSideKg: number;
  readonly rightSideKg: number;
}

export interface BalanceShiftResult {
  readonly before: VehicleLoads;
  readonly after: VehicleLoads;
  /** All changes together. */
  readonly shift: LoadShift;
  /** Each change by itself; they add up. */
  readonly shifts: readonly LoadShift[];
  /** Why there are no corner loads, or null where there are. */
  readonly cornersBecause: 'no-corner-rule' | 'sides-not-weighed' | null;
  readonly ok: boolean;
  readonly checks: readonly Check[];
  /** The check with the least room; null where only the ground sets a limit, and it is met. */
  readonly decidedBy: string | null;
}

/**
 * Axle loads, side loads and centre of gravity after things were moved, removed or added.
 *
 * Use it to see what a battery in the back or a winch on the front does. What hangs ahead of the front axle loads it
 * by more than its own mass and lifts the rear. Masses count at their own centre of gravity, on level ground, at rest;
 * springs, tyres and cornering are another subject.
 *
 * $$\Delta R = m\,\frac{x}{L}, \qquad \Delta F = m\left(1 - \frac{x}{L}\right), \qquad
 * \Delta R_\mathrm{right} = m\left(\frac12 + \frac{y}{t}\right)$$
 *
 * Corner loads need an assumption. `same-side-share`: both axles carry the same share on their right wheels.
 * `front-share`: the front axle takes the given share of the side moment $M y$.
 *
 * @param input wheelbase, track, weighed loads, changes
 * @returns loads before and after, what each change does, checks
 * @throws InputError when a field is missing or out of range, or more is removed than there is
 * @source statics; faa-h-8083-25 (weight shift)
 * @example balanceShift({ wheelbaseM: 2.6, trackM: 1.5, frontAxleKg: 720, rearAxleKg: 580, changes: [{ kind: 'moved', name: 'battery', massKg: 20, from: { behindFrontAxleM: -0.4, rightOfCentreM: 0.5 }, to: { behindFrontAxleM: 2.9, rightOfCentreM: 0.5 } }] }).after.rearAxleKg //=> 605.3846
 */
export function balanceShift(input: BalanceShiftInput): BalanceShiftResult {
  needInput('balanceShift', input);
  const { wheelbaseM, trackM, frontAxleKg, rearAxleKg, rightSideKg, changes, cornerRule } = input;
  needAbove('balanceShift', 'wheelbaseM', wheelbaseM);
  needAbove('balanceShift', 'trackM', trackM);
  needAbove('balanceShift', 'frontAxleKg', frontAxleKg);
  needAbove('balanceShift', 'rearAxleKg', rearAxleKg);
  const massKg = frontAxleKg + rearAxleKg;
  if (rightSideKg !== undefined) needBetween('balanceShift', 'rightSideKg', rightSideKg, 0, massKg);
  needList('balanceShift', 'changes', changes);
  needCornerRule(input);
  const shifts = changes.map((change, i) => shiftOf(change, `changes[${i}]`, wheelbaseM, trackM));
  const shift = shifts.reduce(sum, {
    name: 'all',
    massKg: 0,
    frontAxleKg: 0,
    rearAxleKg: 0,
    leftSideKg: 0,
    rightSideKg: 0,
  });
  if (!(massKg + shift.massKg > 0)) {
    throw new InputError('balanceShift', 'changes', 'range', massKg + shift.massKg, 'must leave more than 0 kg');
  }
  const before = loadsOf(input, frontAxleKg, rearAxleKg, rightSideKg ?? null);
  const after = loadsOf(
    input,
    frontAxleKg + shift.frontAxleKg,
    rearAxleKg + shift.rearAxleKg,
    rightSideKg === undefined ? null : rightSideKg + shift.rightSideKg,
  );
  const checks = loadChecks(input, after);
  return {
    before,
    after,
    shift,
    shifts,
    cornersBecause:
      cornerRule === undefined ? 'no-corner-rule' : rightSideKg === undefined ? 'sides-not-weighed' : null,
    ok: checks.every((check) => check.ok),
    checks,
    decidedBy: tightestCheck(checks.filter(({ ok, limit }) => !ok || limit !== 0))?.name ?? null,
  };
}

function needCornerRule({ cornerRule, frontShareFraction }: BalanceShiftInput): void {
  if (cornerRule !== undefined) needOneOf('balanceShift', 'cornerRule', cornerRule, ['same-side-share', 'front-share']);
  if (cornerRule === 'front-share')
    needBetween('balanceShift', 'frontShareFraction', frontShareFraction as number, 0, 1);
  else if (frontShareFraction !== undefined) {
    throw new InputError(
      'balanceShift',
      'frontShareFraction',
      'oneOfFields',
      frontShareFraction,
      "goes with cornerRule 'front-share' only",
    );
  }
}

function shiftOf(change: MassChange, field: string, wheelbaseM: number, trackM: number): LoadShift {
  if (typeof change !== 'object' || change === null) {
    throw new InputError('balanceShift', field, 'object', change, 'must be an object with kind, name and massKg');
  }
  needOneOf('balanceShift', `${field}.kind`, change.kind, ['moved', 'removed', 'added']);
  needText('balanceShift', `${field}.name`, change.name);
  needAtLeast('balanceShift', `${field}.massKg`, change.massKg);
  const { name, massKg } = change;
  const at = (place: VehiclePlace, end: string, signedKg: number): LoadShift => {
    if (typeof place !== 'object' || place === null) {
      throw new InputError('balanceShift', `${field}.${end}`, 'missing', place, 'is required: a place on the vehicle');
    }
    const { behindFrontAxleM, rightOfCentreM } = place;
    needFinite('balanceShift', `${field}.${end}.behindFrontAxleM`, behindFrontAxleM);
    needFinite('balanceShift', `${field}.${end}.rightOfCentreM`, rightOfCentreM);
    const rear = (signedKg * behindFrontAxleM) / wheelbaseM;
    const right = signedKg * (0.5 + rightOfCentreM / trackM);
    return {
      name,
      massKg: signedKg,
      frontAxleKg: signedKg - rear,
      rearAxleKg: rear,
      leftSideKg: signedKg - right,
      rightSideKg: right,
    };
  };
  if (change.kind === 'removed') return at(change.from, 'from', -massKg);
  if (change.kind === 'added') return at(change.to, 'to', massKg);
  return sum(at(change.from, 'from', -massKg), at(change.to, 'to', massKg));
}

function sum(a: LoadShift, b: LoadShift): LoadShift {
  return {
    name: a.name,
    massKg: a.massKg + b.massKg,
    frontAxleKg: a.frontAxleKg + b.frontAxleKg,
    rearAxleKg: a.rearAxleKg + b.rearAxleKg,
    leftSideKg: a.leftSideKg + b.leftSideKg,
    rightSideKg: a.rightSideKg + b.rightSideKg,
  };
}

function loadsOf(input: BalanceShiftInput, front: number, rear: number, right: number | null): VehicleLoads {
  const { wheelbaseM, trackM } = input;
  const massKg = front + rear;
  return {
    massKg,
    frontAxleKg: front,
    rearAxleKg: rear,
    frontFraction: front / massKg,
    leftSideKg: right === null ? null : massKg - right,
    rightSideKg: right,
    behindFrontAxleM: (rear / massKg) * wheelbaseM,
    rightOfCentreM: right === null ? null : (right / massKg - 0.5) * trackM,
    corners: right === null ? null : cornersOf(input, front, rear, right),
  };
}

function cornersOf(input: BalanceShiftInput, front: number, rear: number, right: number): CornerLoads | null {
  const { cornerRule, frontShareFraction = 0 } = input;
  if (cornerRule === undefined) return null;
  const massKg = front + rear;
  const overMiddle = right - massKg / 2;
  const rightFrontKg =
    cornerRule === 'same-side-share' ? (front * right) / massKg : front / 2 + frontShareFraction * overMiddle;
  return {
    leftFrontKg: front - rightFrontKg,
    rightFrontKg,
    leftRearKg: rear - (right - rightFrontKg),
    rightRearKg: right - rightFrontKg,
  };
}

function loadChecks({ frontAxleMaxKg, rearAxleMaxKg }: BalanceShiftInput, after: VehicleLoads): Check[] {
  const given = { unit: 'kg', source: 'given-by-caller', sourceStatus: 'derived' } as const;
  const ground = { unit: 'kg', sense: 'atLeast', limit: 0, source: 'statics', sourceStatus: 'derived' } as const;
  const checks = [
    makeCheck({ ...ground, name: 'front axle stays down', value: after.frontAxleKg }),
    makeCheck({ ...ground, name: 'rear axle stays down', value: after.rearAxleKg }),
  ];
  if (after.leftSideKg !== null && after.rightSideKg !== null) {
    checks.push(makeCheck({ ...ground, name: 'left wheels stay down', value: after.leftSideKg }));
    checks.push(makeCheck({ ...ground, name: 'right wheels stay down', value: after.rightSideKg }));
  }
  if (frontAxleMaxKg !== undefined) {
    needAbove('balanceShift', 'frontAxleMaxKg', frontAxleMaxKg);
    checks.push(
      makeCheck({
        ...given,
        name: 'load of the front axle',
        value: after.frontAxleKg,
        limit: frontAxleMaxKg,
        sense: 'atMost',
      }),
    );
  }
  if (rearAxleMaxKg !== undefined) {
    needAbove('balanceShift', 'rearAxleMaxKg', rearAxleMaxKg);
    checks.push(
      makeCheck({
        ...given,
        name: 'load of the rear axle',
        value: after.rearAxleKg,
        limit: rearAxleMaxKg,
        sense: 'atMost',
      }),
    );
  }
  return checks;
}
