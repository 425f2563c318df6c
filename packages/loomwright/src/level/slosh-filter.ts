import { type Check, makeCheck, type NotPossible, tightestCheck } from '../check/index.js';
import { needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needBetween, needInput, needList, needOneOf, needOwnName } from '../error/guard.js';
import { short } from '../number/short.js';
import {
  averageShare,
  firstOrderFor,
  firstOrderShare,
  medianShare,
  type SloshKind,
  type SloshSetting,
  swayBack,
} from './slosh-ways.js';

export interface SloshFilterInput {
  /** How far the reading sways to either side with the fuel, in L, above 0. */
  readonly sloshL: number;
  /** Shortest and longest period of the sway in s; the longest is the hardest to hold. Above two samples. */
  readonly shortPeriodS: number;
  readonly longPeriodS: number;
  /** Time between two readings that the unit takes, in s, above 0. */
  readonly sampleS: number;
  /** How far the gauge may sway to either side, in L, above 0. */
  readonly mostRippleL: number;
  /** Most fuel that is used, in L/h, at least 0. */
  readonly fuelUseLPerH: number;
  /** By how much the gauge may be behind meanwhile, in L, above 0. */
  readonly mostLagL: number;
  /** Litres put in at once, at least 0, and how long the gauge may take to show them to within `mostRippleL`, in s. */
  readonly refuelL: number;
  readonly mostSettleS: number;
  /** The kinds of filter that the unit has. */
  readonly kinds: readonly SloshKind[];
}

/** One kind of filter at its least setting that keeps the ripple. */
export interface SloshWay extends SloshSetting {
  /** Whether lag and settling keep their limits too. */
  readonly meets: boolean;
  /** Most that is left of the sway, at any of the periods. */
  readonly rippleL: number;
  /** By how much the gauge is behind a steady use, until the next sample comes in. */
  readonly lagS: number;
  readonly lagL: number;
  /** From filling until the gauge is within the ripple allowed of what is in. */
  readonly settleS: number;
  /** Least distance between on and off of a warning lamp, lest it flickers as the level passes; 0 for none. */
  readonly hysteresisL: number;
  readonly checks: readonly Check[];
}

export interface SloshFilter extends SloshWay {
  readonly possible: true;
  /** Every kind asked for that can keep the ripple, in the order asked; the one chosen settles soonest. */
  readonly ways: readonly SloshWay[];
  /** The same lamp with nothing filtered. */
  readonly bareHysteresisL: number;
  readonly decidedBy: string;
}

export type SloshFilterResult = SloshFilter | NotPossible<SloshFilter>;

/** Samples that a controller can hold are few; this many are beyond any. */
const MOST_SAMPLES = 2000;

/**
 * The filter that holds a fuel gauge still while the fuel sways, and does not make it late.
 *
 * A first-order filter takes a share of each new reading. A moving average over just one period takes that period away
 * whole and others less; a median is for readings that are plainly wrong, and holds a sway back least. Each is set as
 * weakly as the ripple allows, so that it lags least. Fuel sways slowly: a capacitor before the input is too small for
 * it, see `rcFilter` for what is faster.
 *
 * $$y_n = y_{n-1} + (1 - a)(x_n - y_{n-1}), \quad a = e^{-T/\tau} \qquad
 * \left|H\right| = \frac{1 - a}{\sqrt{(1-a)^2 + 4a\sin^2(\pi T/P)}} \qquad t_\mathrm{lag} = \frac{T}{1 - a}$$
 *
 * and for a lamp, with $s = q P/(2\pi A)$ the use against the sway at its shortest period: $2A(\sqrt{1 - s^2} - s \arccos s)$ between on and off.
 *
 * @param input sway, periods, sampling, limits, kinds
 * @returns setting, ripple, lag, settling and hysteresis of each kind, and the one chosen; or not possible, because
 * @throws InputError when a field is missing or out of range, periods do not follow one another, or are not above two
 * samples: what sways faster is read as a slow wave that no filter takes away
 * @source circuit-theory (first-order step, exact between samples; averages as sums of a geometric series)
 * @example sloshFilter({ sloshL: 6, shortPeriodS: 1, longPeriodS: 2, sampleS: 0.1, mostRippleL: 0.5, fuelUseLPerH: 20, mostLagL: 0.5, refuelL: 20, mostSettleS: 60, kinds: ['first-order'] }).timeConstantS //=> 3.8222
 */
export function sloshFilter(input: SloshFilterInput): SloshFilterResult {
  guard(input);
  const { sloshL, shortPeriodS, mostRippleL, fuelUseLPerH } = input;
  const ways = input.kinds.flatMap((kind) => wayOf(input, kind) ?? []);
  const bareHysteresisL = swayBack(sloshL, shortPeriodS, fuelUseLPerH / 3600);
  const soonest = (list: readonly SloshWay[]): SloshWay | undefined =>
    list.reduce<SloshWay | undefined>((a, b) => (a === undefined || b.settleS < a.settleS ? b : a), undefined);
  const chosen = soonest(ways.filter(({ meets }) => meets));
  const nearest = chosen ?? soonest(ways);
  if (nearest === undefined) {
    const because = `no filter of up to ${MOST_SAMPLES} samples leaves less than ${mostRippleL} L of the sway`;
    return { possible: false, code: 'ripple', because, nearest: null };
  }
  const decidedBy = tightestCheck(nearest.checks)?.name ?? '';
  const answer: SloshFilter = { possible: true, ...nearest, ways, bareHysteresisL, decidedBy };
  if (chosen !== undefined) return answer;
  const late = nearest.checks.find(({ ok, name }) => !ok && name === 'lag while fuel is used');
  const because =
    late === undefined
      ? `what holds the ripple takes ${short(nearest.settleS)} s to show a filling`
      : `what holds the ripple is ${short(nearest.lagL)} L behind while fuel is used`;
  return { possible: false, code: late === undefined ? 'settling' : 'lag', because, nearest: answer };
}

function wayOf(input: SloshFilterInput, kind: SloshKind): SloshWay | null {
  const { sloshL, shortPeriodS, sampleS, mostRippleL, fuelUseLPerH, mostLagL, refuelL, mostSettleS } = input;
  const setting = settingOf(input, kind);
  if (setting === null) return null;
  const { share, lagS, samples, ...rest } = setting;
  const rippleL = sloshL * share;
  const lagL = (fuelUseLPerH / 3600) * lagS;
  const settleS = samples * sampleS;
  const given = { sense: 'atMost', source: 'given-by-caller', sourceStatus: 'derived' } as const;
  const checks = [
    makeCheck({ ...given, name: 'ripple', value: rippleL, limit: mostRippleL, unit: 'L' }),
    makeCheck({ ...given, name: 'lag while fuel is used', value: lagL, limit: mostLagL, unit: 'L' }),
    makeCheck({ ...given, name: 'time to show a filling', value: settleS, limit: mostSettleS, unit: 's' }),
  ];
  return {
    ...rest,
    kind,
    meets: checks.slice(1).every(({ ok }) => ok),
    rippleL,
    lagS,
    lagL,
    settleS,
    hysteresisL: rippleL === 0 ? 0 : swayBack(rippleL, shortPeriodS, fuelUseLPerH / 3600),
    checks: refuelL === 0 ? checks.slice(0, 2) : checks,
  };
}

interface Found extends Omit<SloshSetting, 'kind'> {
  readonly share: number;
  readonly lagS: number;
  /** Samples until a filling is shown. */
  readonly samples: number;
}

function settingOf(input: SloshFilterInput, kind: SloshKind): Found | null {
  const { sloshL, shortPeriodS, longPeriodS, sampleS, mostRippleL, refuelL } = input;
  const wanted = mostRippleL / sloshL;
  /** What may still be missing of a filling, as a share of it. */
  const rest = refuelL <= mostRippleL ? 1 : mostRippleL / refuelL;
  if (kind === 'first-order') {
    const a = firstOrderFor(wanted, sampleS, longPeriodS);
    return {
      timeConstantS: a === 0 ? 0 : -sampleS / Math.log(a),
      newFraction: 1 - a,
      sampleCount: null,
      share: firstOrderShare(a, sampleS, longPeriodS),
      lagS: sampleS / (1 - a),
      samples: rest === 1 ? 0 : a === 0 ? 1 : Math.max(1, Math.ceil(Math.log(rest) / Math.log(a) - 1e-9)),
    };
  }
  const average = kind === 'moving-average';
  // Where the samples fall on the same places of every wave, no median comes nearer to nought than half a step.
  if (!average && Math.sin(Math.min(1, (2 * sampleS) / shortPeriodS) * (Math.PI / 2)) > wanted) return null;
  const shareOf = average ? averageShare : medianShare;
  for (let n = 1; n <= MOST_SAMPLES; n += average ? 1 : 2) {
    const share = shareOf(n, sampleS, shortPeriodS, longPeriodS);
    if (share > wanted) continue;
    const samples = rest === 1 ? 0 : average ? Math.ceil(n * (1 - rest) - 1e-9) : (n + 1) / 2;
    return { timeConstantS: null, newFraction: null, sampleCount: n, share, lagS: ((n + 1) / 2) * sampleS, samples };
  }
  return null;
}

function guard(input: SloshFilterInput): void {
  const fn = 'sloshFilter';
  needInput(fn, input);
  const { shortPeriodS, longPeriodS, sampleS, kinds } = input;
  needMoreThan(fn, 'sloshL', input.sloshL);
  needBetween(fn, 'sampleS', sampleS, 1e-3, 3600);
  needMoreThan(
    fn,
    'shortPeriodS',
    shortPeriodS,
    2 * sampleS,
    'what sways faster than it is read looks like a slow wave',
  );
  needBetween(fn, 'longPeriodS', longPeriodS, shortPeriodS, 1e4 * sampleS);
  needBetween(fn, 'mostRippleL', input.mostRippleL, 1e-6 * input.sloshL, 1e12);
  needNoLessThan(fn, 'fuelUseLPerH', input.fuelUseLPerH);
  needMoreThan(fn, 'mostLagL', input.mostLagL);
  needNoLessThan(fn, 'refuelL', input.refuelL);
  needMoreThan(fn, 'mostSettleS', input.mostSettleS);
  needList(fn, 'kinds', kinds, 1);
  const named = new Set<string>();
  kinds.forEach((kind, i) => {
    needOneOf(fn, `kinds[${i}]`, kind, ['first-order', 'moving-average', 'moving-median']);
    needOwnName(fn, `kinds[${i}]`, kind, named);
  });
}
