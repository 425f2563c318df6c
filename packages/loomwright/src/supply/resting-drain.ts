import { type Check, makeCheck, tightestCheck } from '../check/index.js';
import { InputError } from '../error/index.js';
import { needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needBetween, needInput, needList, needObject, needOwnName, needText } from '../error/guard.js';
import type { FuseFamily } from '../table/index.js';
import { coldFuseOhm, type FuseReading, needDropMv, needFuseTolerance, readFuse } from './fuse-reading.js';
import { endCharge, type RestEnd } from './rest-end.js';

/** Something that draws with everything off. */
export interface RestDrain {
  readonly name: string;
  /** Current in A while it draws, at least 0. */
  readonly currentA: number;
  /** Share of the time that it draws, 0 to 1; 1 for what never sleeps. */
  readonly dutyFraction: number;
  /** Name of the fuse it hangs on; null where it hangs on none. */
  readonly fuse: string | null;
}

/** A fuse that stays live at rest. */
export interface RestFuse {
  readonly name: string;
  readonly family: FuseFamily;
  /** Its rating in A. */
  readonly ratingA: number;
  /** What a meter showed across it in mV, at least 0; left out where nothing was measured. */
  readonly measuredMv?: number;
}

export interface RestingDrainInput {
  readonly drains: readonly RestDrain[];
  readonly fuses: readonly RestFuse[];
  /** Tolerance of a fuse's resistance as a fraction, at least 0 and below 1: makers differ by about 0.15. */
  readonly fuseToleranceFraction: number;
  /** Charge of the full battery in Ah, above 0: what it has, not what it had when new. */
  readonly fullChargeAh: number;
  /** Charge as it is parked, 0 to 1, above what is to be left. */
  readonly startChargeFraction: number;
  readonly end: RestEnd;
  /** What the battery loses by itself: share of the full charge in a day, at least 0. */
  readonly selfDischargeFractionPerDay: number;
  /** Most mean drain that is taken as healthy, in A, above 0: 25 to 50 mA in service literature. */
  readonly limitA: number;
}

/** A fuse with what a meter should show, and what it did. */
export interface SolvedRestFuse {
  readonly name: string;
  readonly ratingA: number;
  /** Typical resistance of the cold fuse in Ω. */
  readonly coldOhm: number;
  /** Listed current in A: with only what never sleeps, on average, and with all of it at once. */
  readonly steadyA: number;
  readonly meanA: number;
  readonly mostA: number;
  /** Millivolts for these on a typical fuse. */
  readonly steadyMv: number;
  readonly meanMv: number;
  readonly mostMv: number;
  /** The reading as amperes; null where nothing was measured. */
  readonly measured: FuseReading | null;
  /**
   * `as-listed`: the list explains the reading within the fuse's tolerance. `more`: something else draws as well.
   * `less`: something on the list is not there, or the fuse is another.
   */
  readonly verdict: 'as-listed' | 'more' | 'less' | null;
}

export interface RestingDrainResult {
  /** Mean of all drains, and all at once, in A. */
  readonly meanA: number;
  readonly mostA: number;
  /** Part of the mean that hangs on no fuse, in A. */
  readonly unfusedA: number;
  /** Charge lost in a day in Ah: by the drains, and by the battery itself. */
  readonly drainAhPerDay: number;
  readonly selfAhPerDay: number;
  /** Charge that is to be left, as a fraction, and what may be lost until then in Ah. */
  readonly endChargeFraction: number;
  readonly usableAh: number;
  /** Days until then; null where nothing is lost. */
  readonly standingDays: number | null;
  readonly standingReason: 'nothing-drains' | null;
  readonly fuses: readonly SolvedRestFuse[];
  readonly checks: readonly Check[];
  readonly decidedBy: string;
}

/**
 * How many days a battery stands with everything off, and what a meter should show across each fuse meanwhile.
 *
 * Use it for vehicles that stand for weeks. The list of drains comes from data sheets or from readings over fuses; where
 * both are known, they are compared fuse by fuse.
 *
 * $$t = \frac{(q_1 - q_2)\,C}{24\,\sum I\,d + s\,C} \qquad U = I\,R_\mathrm{cold}$$
 *
 * @param input drains, fuses with readings, battery from and to, self-discharge, limit
 * @returns drain in A and Ah a day, days, millivolts a fuse, readings as amperes with a verdict, checks
 * @throws InputError when a field is missing or out of range, or a drain names a fuse that is not listed
 * Valid for weeks rather than years: a battery's own loss doubles with every 10 K or so.
 * @source circuit-theory; the fuse families' cold resistances; the list of volts at rest
 * @example restingDrain({ drains: [{ name: 'clock', currentA: 0.01, dutyFraction: 1, fuse: null }], fuses: [], fuseToleranceFraction: 0.15, fullChargeAh: 60, startChargeFraction: 1, end: { kind: 'charge', chargeFraction: 0.6 }, selfDischargeFractionPerDay: 0, limitA: 0.05 }).standingDays //=> 100
 */
export function restingDrain(input: RestingDrainInput): RestingDrainResult {
  const endChargeFraction = guard(input);
  const { drains, fuses, fullChargeAh, startChargeFraction, selfDischargeFractionPerDay, limitA } = input;
  const meanA = sum(drains, (d) => d.currentA * d.dutyFraction);
  const drainAhPerDay = 24 * meanA;
  const selfAhPerDay = selfDischargeFractionPerDay * fullChargeAh;
  const usableAh = (startChargeFraction - endChargeFraction) * fullChargeAh;
  const lossAhPerDay = drainAhPerDay + selfAhPerDay;
  const solved = fuses.map((fuse, i) => solveFuse(input, fuse, i));
  const given = { unit: 'A', sense: 'atMost', source: 'given-by-caller', sourceStatus: 'derived' } as const;
  const checks = [
    makeCheck({ ...given, name: 'mean drain, as listed', value: meanA, limit: limitA }),
    ...solved.flatMap(({ name, measured, mostA }) =>
      measured === null
        ? []
        : [
            makeCheck({
              ...given,
              name: `${name}: least that the reading can mean`,
              value: measured.lowA,
              limit: mostA,
            }),
          ],
    ),
  ];
  return {
    meanA,
    mostA: sum(drains, mostOf),
    unfusedA: sum(
      drains.filter(({ fuse }) => fuse === null),
      (d) => d.currentA * d.dutyFraction,
    ),
    drainAhPerDay,
    selfAhPerDay,
    endChargeFraction,
    usableAh,
    standingDays: lossAhPerDay === 0 ? null : usableAh / lossAhPerDay,
    standingReason: lossAhPerDay === 0 ? 'nothing-drains' : null,
    fuses: solved,
    checks,
    decidedBy: tightestCheck(checks)?.name ?? '',
  };
}

const mostOf = ({ currentA, dutyFraction }: RestDrain): number => (dutyFraction === 0 ? 0 : currentA);

function sum(drains: readonly RestDrain[], of: (drain: RestDrain) => number): number {
  return drains.reduce((total, drain) => total + of(drain), 0);
}

function solveFuse(input: RestingDrainInput, fuse: RestFuse, i: number): SolvedRestFuse {
  const { name, family, ratingA, measuredMv } = fuse;
  const t = input.fuseToleranceFraction;
  const coldOhm = coldFuseOhm('restingDrain', family, ratingA, `fuses[${i}].`);
  const mine = input.drains.filter((drain) => drain.fuse === name);
  const steadyA = sum(mine, (d) => (d.dutyFraction === 1 ? d.currentA : 0));
  const meanA = sum(mine, (d) => d.currentA * d.dutyFraction);
  const mostA = sum(mine, mostOf);
  const measured = measuredMv === undefined ? null : readFuse(family, ratingA, coldOhm, measuredMv, t);
  return {
    name,
    ratingA,
    coldOhm,
    steadyA,
    meanA,
    mostA,
    steadyMv: 1000 * steadyA * coldOhm,
    meanMv: 1000 * meanA * coldOhm,
    mostMv: 1000 * mostA * coldOhm,
    measured,
    verdict:
      measured === null ? null : measured.lowA > mostA ? 'more' : measured.highA < steadyA ? 'less' : 'as-listed',
  };
}

/** Guards the input and returns the charge that is to be left. */
function guard(input: RestingDrainInput): number {
  const fn = 'restingDrain';
  needInput(fn, input);
  const { drains, fuses, startChargeFraction, end } = input;
  needList(fn, 'fuses', fuses);
  const own = new Set<string>();
  const names = fuses.map((fuse, i) => {
    needObject(fn, `fuses[${i}]`, fuse);
    needOwnName(fn, `fuses[${i}].name`, fuse.name, own);
    if (fuse.measuredMv !== undefined) needDropMv(fn, `fuses[${i}].measuredMv`, fuse.measuredMv);
    return fuse.name;
  });
  needList(fn, 'drains', drains);
  drains.forEach((drain, i) => {
    needObject(fn, `drains[${i}]`, drain);
    needText(fn, `drains[${i}].name`, drain.name);
    needNoLessThan(fn, `drains[${i}].currentA`, drain.currentA);
    needBetween(fn, `drains[${i}].dutyFraction`, drain.dutyFraction, 0, 1);
    if (drain.fuse !== null && !names.includes(drain.fuse)) {
      const must = 'must be the name of a fuse in the list, or null';
      throw new InputError(fn, `drains[${i}].fuse`, 'oneOf', drain.fuse, must);
    }
  });
  needFuseTolerance(fn, 'fuseToleranceFraction', input.fuseToleranceFraction);
  needMoreThan(fn, 'fullChargeAh', input.fullChargeAh);
  needBetween(fn, 'startChargeFraction', startChargeFraction, 0, 1, '80 % is 0.8');
  needNoLessThan(fn, 'selfDischargeFractionPerDay', input.selfDischargeFractionPerDay);
  needMoreThan(fn, 'limitA', input.limitA);
  return endCharge(fn, end, startChargeFraction);
}
