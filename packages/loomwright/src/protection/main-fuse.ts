import { type Check, makeCheck, type NotPossible, tightestCheck } from '../check/index.js';
import { InputError } from '../error/index.js';
import { needFlag, needInput, needOneOf } from '../error/guard.js';
import { needNoLessThan } from '../error/bounded.js';
import type { SourceKey, SourceStatus } from '../source/index.js';
import type { FuseFamily } from '../table/index.js';
import { MM_PER_INCH } from '../unit/index.js';
import { bandAt } from './fuse-band.js';
import { carries, type FuseCircuit, type JudgedFuse, judgeFuse, needCircuit } from './fuse-circuit.js';
import { limitsOf } from './fuse-data.js';
import type { FusedWire } from './fused-wire.js';
import { needSteps, type SurgeStep } from './trip.js';

/** A cable at the battery. `starter` carries the cranking current, `charge` the alternator's, `feed` everything else. */
export type MainCable = 'starter' | 'charge' | 'feed';

export interface MainFuseInput extends FuseCircuit {
  readonly cable: MainCable;
  /** Current in A that may flow for good; of a charge cable what the alternator gives at most. Above 0. */
  readonly continuousA: number;
  /** Currents of cranking, one after another; empty for a cable that does not crank. */
  readonly crankSteps: readonly SurgeStep[];
  /** What the cable bears for a while. */
  readonly wire: FusedWire;
  /** Largest current in A of a short right behind the fuse, above 0. */
  readonly prospectiveA: number;
  /** Cable between the battery's post and the fuse in m, at least 0: no fuse protects it. */
  readonly unfusedLengthM: number;
  /** Whether that stretch lies in a sheath or enclosure all the way. */
  readonly sheathed: boolean;
}

/** One thing that must hold, in words, with where it comes from. */
export interface MustHold {
  readonly code:
    | 'short-and-guarded'
    | 'no-chafe'
    | 'isolator'
    | 'nothing-else-on-it'
    | 'inspected'
    | 'fuse-at-battery'
    | 'load-dump';
  readonly text: string;
  readonly source: SourceKey;
  readonly sourceStatus: SourceStatus;
}

/** A rating of a main fuse, judged. */
export interface JudgedMainFuse extends JudgedFuse {
  /** Share of the shortest opening that the cranking uses up: 1 and it may open; null where a current is beyond print. */
  readonly crankShare: number | null;
}

/** A cable that a fuse protects. */
export interface MainFuseResult extends JudgedMainFuse {
  readonly possible: true;
  /** The check with the least room. */
  readonly decidedBy: string;
  /** Key of the family. */
  readonly family: string;
  /** What must hold beside the fuse. */
  readonly mustHold: readonly MustHold[];
}

/** A cable that no fuse of the family protects. */
export interface UnprotectedCable extends NotPossible<JudgedMainFuse> {
  readonly code: 'unprotected';
  /** What must then hold in the fuse's place. */
  readonly mustHold: readonly MustHold[];
}

const FN = 'mainFuse';

/**
 * The fuse of a battery cable: the smallest of a family that outlasts the cranking and still protects the cable.
 *
 * Use it for the starter cable, for the charge cable at the battery's end, and for the main feed. Often no fuse does
 * both for a starter: the answer is then `unprotected`, with what must hold in its place. A charge cable is fused at
 * the battery's end, since the battery feeds a fault there; and above what the alternator gives, since a fuse that
 * opens under charge leaves a voltage surge behind.
 *
 * $$\sum_j \frac{t_j}{t_\mathrm{shortest}(I_j / k_\mathrm{amb})} \le 1$$
 *
 * beside all that `checkFuse` judges. The shares of the cranking add up; how often a fuse bears that is not printed.
 *
 * @param input cable, family, currents, cable data, shorts, unfused length
 * @returns the fuse with its checks and what must hold beside it, or `possible: false` with code `unprotected`
 * @throws InputError when a field is missing or out of range, a starter cable is given no cranking, or the family has
 * no re-rating and none is given
 * @source iso-8820-5 (opening times, from memory); us-33-cfr-183 (183.455 (b), 183.425 (g)); common-practice
 * @example mainFuse({ cable: 'charge', family: boltInFuseSf51, continuousA: 90, continuousFraction: 0.75, ambientTempC: 60, ambientFactor: 0.9, ampacityA: 280, overloadRule: 'iec-60364-4-43', farShortA: 1200, clearWithinS: 1, crankSteps: [], wire: { areaMm2: 50, ambientTempC: 60, maxConductorTempC: 125, overloadTempC: 150, shortTempC: 250 }, prospectiveA: 1500, interruptA: 2000, unfusedLengthM: 0.15, sheathed: false }).ratingA //=> 150
 */
export function mainFuse(input: MainFuseInput): MainFuseResult | UnprotectedCable {
  needInput(FN, input);
  const share = guard(input);
  const { family, cable } = input;
  let nearest: JudgedMainFuse | null = null;
  for (const ratingA of family.ratingsA) {
    const crank = crankCheck(input, ratingA, share);
    if (!crank.ok || !carries(FN, input, ratingA, share)) continue;
    const judged = judgeMain(input, ratingA, share, crank);
    if (judged.checks.every((check) => check.ok)) {
      const decidedBy = tightestCheck(judged.checks)?.name ?? '';
      return { possible: true, ...judged, decidedBy, family: family.key, mustHold: beside(cable) };
    }
    nearest ??= judged;
  }
  const last = family.ratingsA.at(-1) as number;
  nearest ??= judgeMain(input, last, share, crankCheck(input, last, share));
  const failed = nearest.checks.filter((check) => !check.ok).map((check) => check.name);
  return {
    possible: false,
    code: 'unprotected',
    because: `no rating of ${family.key} outlasts the load and protects the cable; the nearest, ${nearest.ratingA} A, fails: ${failed.join(', ')}`,
    nearest,
    mustHold: instead(cable),
  };
}

function judgeMain(input: MainFuseInput, ratingA: number, share: number, crank: Check): JudgedMainFuse {
  const judged = judgeFuse(FN, input, ratingA, share);
  const extra = input.crankSteps.length === 0 ? [] : [crank];
  return { ...judged, checks: [...judged.checks, ...extra, lengthCheck(input)], crankShare: crank.value };
}

/** Cranking against the shortest opening, the rating taken down to what its surroundings leave. */
function crankCheck({ family, crankSteps }: MainFuseInput, ratingA: number, share: number): Check {
  const used = crankShare(family, crankSteps, ratingA, share);
  return makeCheck({
    name: 'cranking against the shortest opening',
    value: used,
    limit: 1,
    unit: '',
    sense: 'atMost',
    source: family.source,
    sourceStatus: limitsOf(family, ratingA).status,
    okWithoutNumber: false,
    ...(used === null ? { because: 'a current of the cranking is above the last printed shortest time' } : {}),
  });
}

function crankShare(
  family: FuseFamily,
  steps: readonly SurgeStep[],
  ratingA: number,
  ambientFactor: number,
): number | null {
  let used = 0;
  for (const { currentA, durationS } of steps) {
    if (currentA === 0) continue;
    const { shortestS } = bandAt(limitsOf(family, ratingA), currentA / (ratingA * ambientFactor));
    if (shortestS === null) return null;
    used += durationS / shortestS;
  }
  return used;
}

/** Where the fuse sits along the cable. */
function lengthCheck({ unfusedLengthM, sheathed }: MainFuseInput): Check {
  const inches = sheathed ? 40 : 7;
  return makeCheck({
    name: sheathed ? 'cable before the fuse, sheathed' : 'cable before the fuse',
    value: unfusedLengthM,
    limit: (inches * MM_PER_INCH) / 1000,
    unit: 'm',
    sense: 'atMost',
    source: 'us-33-cfr-183',
    sourceStatus: 'published',
    because: `${inches} in, a code for boats; 72 in straight at the battery, sheathed, is a voluntary allowance from memory`,
  });
}

const practice = { source: 'common-practice', sourceStatus: 'common-practice' } as const;

/** What must hold though a fuse protects the cable. */
function beside(cable: MainCable): MustHold[] {
  const list: MustHold[] = [
    {
      code: 'short-and-guarded',
      text: 'The stretch before the fuse is not protected by anything: keep it short, sheathed and away from metal.',
      ...practice,
    },
  ];
  if (cable === 'charge') list.push(...charge());
  return list;
}

function charge(): MustHold[] {
  return [
    {
      code: 'fuse-at-battery',
      text: 'The fuse sits at the end of the battery: a fuse at the alternator does not see what the battery feeds into a fault.',
      ...practice,
    },
    {
      code: 'load-dump',
      text: 'It must not open under charge: the alternator then gives a surge of tens of volts to whatever hangs on it.',
      ...practice,
    },
  ];
}

/** What must hold where no fuse protects the cable. */
function instead(cable: MainCable): MustHold[] {
  const list: MustHold[] = [
    {
      code: 'short-and-guarded',
      text: 'As short as can be, in its own sheath over the whole length, clear of hot, sharp and moving parts and of other cables.',
      ...practice,
    },
    {
      code: 'no-chafe',
      text: 'Fixed so that it can touch no metal even with one clamp gone; grommets at every hole; boots over every post.',
      ...practice,
    },
    {
      code: 'isolator',
      text: 'An isolator at the battery that can break the current of cranking and can be reached without opening anything.',
      ...practice,
    },
    {
      code: 'nothing-else-on-it',
      text: 'Nothing else is fed from its far end without a fuse of its own at that point.',
      ...practice,
    },
    {
      code: 'inspected',
      text: 'Looked over for chafe and heat at every service, and after every hard use.',
      ...practice,
    },
  ];
  if (cable === 'starter') {
    list.push({
      code: 'short-and-guarded',
      text: 'A code for boats excepts the conductors of cranking motors from its table of currents; the rules of your country or your sport may not.',
      source: 'us-33-cfr-183',
      sourceStatus: 'published',
    });
  }
  if (cable === 'charge') list.push(...charge());
  return list;
}

function guard(input: MainFuseInput): number {
  const { cable, crankSteps, wire, prospectiveA, unfusedLengthM, sheathed } = input;
  needOneOf(FN, 'cable', cable, ['starter', 'charge', 'feed']);
  needSteps(FN, 'crankSteps', crankSteps, cable === 'starter' ? 1 : 0);
  needNoLessThan(FN, 'unfusedLengthM', unfusedLengthM);
  needFlag(FN, 'sheathed', sheathed);
  for (const [field, value] of [
    ['wire', wire],
    ['prospectiveA', prospectiveA],
  ] as const) {
    if (value === undefined) throw new InputError(FN, field, 'missing', value, 'is required');
  }
  return needCircuit(FN, input);
}
