import { type Check, makeCheck, tightestCheck } from '../check/index.js';
import type { WatchedPoint } from './ground-faults-prepare.js';

/** A watched point with what it bears. */
export interface WatchedGround extends WatchedPoint {
  /** Most shift either way in mV, above 0. */
  readonly permittedMv: number;
}

/** A branch that was not laid for current: a throttle cable, a shield, a sensor's ground. */
export interface LimitedBranch {
  readonly branch: string;
  /** Most current either way in A, above 0. */
  readonly limitA: number;
}

/** A watched point in one case. */
export interface WatchedShift {
  readonly name: string;
  /** Volts of `node` above `against` in mV, and how far that is from the intact network; null for no volts. */
  readonly offsetMv: number | null;
  readonly shiftMv: number | null;
}

/** A limited branch in one case, its current from `from` to `to` in A; null where its ends have no volts. */
export interface LimitedCurrent {
  readonly branch: string;
  readonly currentA: number | null;
  readonly intactA: number;
}

/** A load that hangs on a node which was cut off. */
export interface CutLoad {
  readonly name: string;
  readonly intactV: number | null;
  /** Volts across it, negative where they are turned; null where it has none. */
  readonly voltageV: number | null;
  readonly currentA: number | null;
  /** No current is left: less than 1e-9 of what it drew. */
  readonly dead: boolean;
}

/** What comes of losing one ground, or two. */
export interface GroundFaultCase {
  readonly lost: readonly string[];
  /**
   * `update`: by an update of the factored network. `anew`: factored again, because hardly a way is left beside the
   * ground. `exact`: loads and diodes settled again.
   */
  readonly solvedBy: 'update' | 'anew' | 'exact';
  /** Nodes that no metal and no source ties to the reference any more. They take the volts of what is fed through loads. */
  readonly cutOff: readonly string[];
  /** Loads with an end among them. */
  readonly cutLoads: readonly CutLoad[];
  /** Shift of every node in mV, in the order of `nodes`, null for no volts; null where only watched points were asked for. */
  readonly nodeShiftMv: readonly (number | null)[] | null;
  readonly watched: readonly WatchedShift[];
  readonly limited: readonly LimitedCurrent[];
  readonly checks: readonly Check[];
  readonly decidedBy: string;
}

/** What stands fast for all cases. */
export interface Limits {
  readonly watched: readonly WatchedGround[];
  readonly limited: readonly LimitedBranch[];
}

/** A case with its checks. */
export function judge(found: Omit<GroundFaultCase, 'checks' | 'decidedBy'>, limits: Limits): GroundFaultCase {
  const given = { sense: 'atMost', source: 'given-by-caller', sourceStatus: 'derived' } as const;
  const size = (value: number | null): number | null => (value === null ? null : Math.abs(value));
  const afloat = (value: number | null): { readonly because?: string } =>
    value === null ? { because: 'nothing ties it to the reference any more' } : {};
  const checks = [
    ...found.watched.map(({ name, shiftMv }, i) =>
      makeCheck({
        ...given,
        name: `shift of ${name}`,
        value: size(shiftMv),
        limit: (limits.watched[i] as WatchedGround).permittedMv,
        unit: 'mV',
        ...afloat(shiftMv),
      }),
    ),
    ...found.limited.map(({ branch, currentA }, i) =>
      makeCheck({
        ...given,
        name: `current in ${branch}`,
        value: size(currentA),
        limit: (limits.limited[i] as LimitedBranch).limitA,
        unit: 'A',
        ...afloat(currentA),
        okWithoutNumber: true,
      }),
    ),
    ...(found.cutOff.length === 0 ? [] : [cutOffCheck(found.cutOff)]),
  ];
  return { ...found, checks, decidedBy: tightestCheck(checks)?.name ?? '' };
}

function cutOffCheck(cutOff: readonly string[]): Check {
  return makeCheck({
    name: 'nodes cut off',
    value: cutOff.length,
    limit: 0,
    unit: '1',
    sense: 'atMost',
    source: 'circuit-theory',
    sourceStatus: 'derived',
    because: cutOff.join(', '),
  });
}

/** The worst first: the one whose tightest check has the least room. */
export function worstFirst(cases: readonly GroundFaultCase[]): GroundFaultCase[] {
  const room = ({ checks }: GroundFaultCase): number => {
    const tightest = tightestCheck(checks);
    if (tightest === null) return Infinity;
    return tightest.marginFraction ?? (tightest.ok ? Infinity : -Infinity);
  };
  const failed = ({ checks }: GroundFaultCase): boolean => checks.some(({ ok }) => !ok);
  return cases
    .map((each) => ({ each, room: room(each), failed: failed(each) }))
    .sort((p, q) => Number(q.failed) - Number(p.failed) || (p.room < q.room ? -1 : Number(p.room > q.room)))
    .map(({ each }) => each);
}

/** The tightest check of each case, with what was lost before its name. */
export function tightestOf(cases: readonly GroundFaultCase[]): Check[] {
  return cases.flatMap(({ lost, checks }) => {
    const tightest = tightestCheck(checks);
    return tightest === null ? [] : [{ ...tightest, name: `${lost.join(' and ')} lost: ${tightest.name}` }];
  });
}
