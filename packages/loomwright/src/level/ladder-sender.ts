import { type Check, makeCheck, tightestCheck } from '../check/index.js';
import { InputError } from '../error/index.js';
import { needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needBetween, needInput, needList } from '../error/guard.js';
import { type Interval, parallel, share } from '../number/interval.js';
import { needTolerance } from '../divider/guard.js';
import { needSteadyOhm, needStrapping } from './guard.js';
import { type LadderFault, ladderFaults } from './ladder-faults.js';
import { type LevelPoint, volumeAt } from './strapping.js';

export interface LadderSenderInput {
  /** Volts that the pull-up goes to, above 0. */
  readonly supplyV: number;
  /** Pull-up in Ω, above 0, and its tolerance as a fraction, 0 to below 1. */
  readonly pullUpOhm: number;
  readonly pullToleranceFraction: number;
  /** Resistance of the input itself to ground in Ω, above 0; null when it draws nothing worth counting. */
  readonly inputOhm: number | null;
  /** Resistance of the sender's wire out and back in Ω, at least 0: counted in the worst cases. */
  readonly wireOhm: number;
  /** Ω between the leads with one contact closed, from the empty tank to the full one: only rising or only falling, 2 to 100. */
  readonly stepOhm: readonly number[];
  /** Level at which the float stands in the middle of each contact, 0 to 1, rising. */
  readonly stepLevelFraction: readonly number[];
  /** Tolerance of each resistor of the chain as a fraction, 0 to below 1. */
  readonly toleranceFraction: number;
  /** Length of the level over which two neighbours are closed together, at least 0; less than any step. */
  readonly overlapFraction: number;
  /** Ω between the leads with no contact closed, at least 0; null where that is open. */
  readonly idleOhm: number | null;
  /** Strapping table of the tank, from level 0 to 1. Two rows for one with straight walls. */
  readonly strapping: readonly LevelPoint[];
  /** Room that must be left between worst cases, in V, at least 0. */
  readonly guardV: number;
  /** Most current that the sender may carry in A, above 0; null for no limit. */
  readonly sensorMostA: number | null;
  /** Highest volts that a chafed wire could put on the sender, at least `supplyV`: the battery's. */
  readonly faultV: number;
}

/** What one contact stands for. */
export interface LadderStep {
  readonly senderOhm: number;
  /** Volts at the pin as marked, and the worst cases. */
  readonly pinV: number;
  readonly lowV: number;
  readonly highV: number;
  /** Between which levels this contact is what is read, the best single figure for it, and how far that may be off. */
  readonly fromFraction: number;
  readonly toFraction: number;
  readonly bestFraction: number;
  readonly uncertaintyFraction: number;
  /** The same in litres. */
  readonly fromL: number;
  readonly toL: number;
  readonly bestL: number;
  readonly uncertaintyL: number;
  /** What a gauge shows that takes the sender for a smooth one, straight in ohms between its ends, and its worst error. */
  readonly straightFraction: number;
  readonly straightErrorFraction: number;
}

export interface LadderSenderResult {
  /** One a contact, from empty to full. */
  readonly steps: readonly LadderStep[];
  /** Volts between neighbours at which to decide, from empty to full: one fewer than the steps. */
  readonly thresholdV: readonly number[];
  /** Beyond these the wire is broken, or shorted to ground. */
  readonly openThresholdV: number;
  readonly shortThresholdV: number;
  /** Narrowest room between neighbours at their worst cases; below 0 when they overlap. */
  readonly smallestGapV: number;
  /** Largest uncertainty of any step. */
  readonly worstUncertaintyFraction: number;
  readonly worstUncertaintyL: number;
  /** Worst error of a gauge that takes the sender for a smooth one. */
  readonly straightWorstErrorFraction: number;
  /** Most current through the sender in A, the pull-up low. */
  readonly sensorA: number;
  /** Current and heat in the sender at its lowest with its wire on `faultV`; null where it has 0 Ω: no limit but a fuse. */
  readonly faultA: number | null;
  readonly faultW: number | null;
  /** What each fault shows. */
  readonly faults: readonly LadderFault[];
  readonly checks: readonly Check[];
  readonly decidedBy: string;
}

/**
 * What an input reads of a level sender made of contacts on a chain of resistors, and how little it knows in between.
 *
 * A float closes one contact after another, so the sender has steps and no resolution between them: the best figure
 * for a step is the middle of the levels that it covers, and half of these is its uncertainty. Where two contacts are
 * closed the one of fewer ohms is read, so an overlap moves the borders. Not for a wiper on a wire-wound card, which
 * is smooth.
 *
 * $$V_k = V_s\,\frac{R_k}{R_k + R_\mathrm{up}} \qquad
 * V_\mathrm{threshold} = \tfrac12 (V_{k,\mathrm{high}} + V_{k+1,\mathrm{low}}) \qquad
 * \hat h_k = \tfrac12 (h_{k,\mathrm{from}} + h_{k,\mathrm{to}})$$
 *
 * @param input chain, contacts, pull-up, tank, limits
 * @returns volts, level and litres of each step with their uncertainty, thresholds, every fault, checks
 * @throws InputError when a field is missing or out of range, or resistances or levels do not follow one another
 * @source circuit-theory; corners by interval arithmetic, exact because each resistor is named once
 * @example ladderSender({ supplyV: 5, pullUpOhm: 240, pullToleranceFraction: 0, inputOhm: null, wireOhm: 0, stepOhm: [240, 132, 33], stepLevelFraction: [0, 0.5, 1], toleranceFraction: 0, overlapFraction: 0, idleOhm: null, strapping: [{ levelFraction: 0, volumeL: 0 }, { levelFraction: 1, volumeL: 60 }], guardV: 0.1, sensorMostA: 0.02, faultV: 14.4 }).thresholdV //=> [2.1371, 1.18929]
 */
export function ladderSender(input: LadderSenderInput): LadderSenderResult {
  guard(input);
  const { supplyV, pullUpOhm, pullToleranceFraction, stepOhm, inputOhm, wireOhm, toleranceFraction } = input;
  const weak = pullUpOhm * (1 + pullToleranceFraction);
  const strong = pullUpOhm * (1 - pullToleranceFraction);
  const pin = (ohm: number, pull: number): number => supplyV * share(pull, parallel(ohm, inputOhm ?? Infinity));
  const volts = stepOhm.map((ohm) => ({
    low: pin(ohm * (1 - toleranceFraction), weak),
    high: pin(ohm * (1 + toleranceFraction) + wireOhm, strong),
  }));
  const ranges = rangesOf(input);
  const steps = stepOhm.map((senderOhm, i) =>
    stepOf(input, senderOhm, pin(senderOhm, pullUpOhm), at(volts, i), at(ranges, i)),
  );
  const falls = (stepOhm[0] as number) > (stepOhm[1] as number);
  const gaps = volts.slice(1).map((after, i) => {
    const [lower, upper] = falls ? [after, at(volts, i)] : [at(volts, i), after];
    return { gapV: upper.low - lower.high, thresholdV: (upper.low + lower.high) / 2 };
  });
  const lowest = at(volts, falls ? volts.length - 1 : 0);
  const highest = at(volts, falls ? 0 : volts.length - 1);
  const openLowV = pin(Infinity, weak);
  const shortHighV = pin(wireOhm, strong);
  const thresholdV = gaps.map((gap) => gap.thresholdV);
  const openThresholdV = (highest.high + openLowV) / 2;
  const shortThresholdV = (lowest.low + shortHighV) / 2;
  const leastOhm = Math.min(...stepOhm);
  const faultA = leastOhm === 0 ? null : input.faultV / leastOhm;
  const sensorA = supplyV / (strong + leastOhm * (1 - toleranceFraction));
  const given = { source: 'given-by-caller', sourceStatus: 'derived' } as const;
  const room = { ...given, limit: input.guardV, unit: 'V', sense: 'atLeast' } as const;
  const checks: Check[] = gaps.map((gap, i) =>
    makeCheck({ ...room, name: `gap between steps ${i + 1} and ${i + 2}`, value: gap.gapV }),
  );
  checks.push(
    makeCheck({ ...room, name: 'gap to a broken wire', value: openLowV - highest.high }),
    makeCheck({ ...room, name: 'gap to a wire shorted to ground', value: lowest.low - shortHighV }),
  );
  if (input.sensorMostA !== null) {
    const limit = { ...given, limit: input.sensorMostA, unit: 'A', sense: 'atMost' } as const;
    checks.push(makeCheck({ ...limit, name: 'current in the sender', value: sensorA }));
  }
  return {
    steps,
    thresholdV,
    openThresholdV,
    shortThresholdV,
    smallestGapV: Math.min(...gaps.map((gap) => gap.gapV)),
    worstUncertaintyFraction: Math.max(...steps.map((step) => step.uncertaintyFraction)),
    worstUncertaintyL: Math.max(...steps.map((step) => step.uncertaintyL)),
    straightWorstErrorFraction: Math.max(...steps.map((step) => step.straightErrorFraction)),
    sensorA,
    faultA,
    faultW: faultA === null ? null : faultA * input.faultV,
    faults: ladderFaults({ stepOhm, idleOhm: input.idleOhm, steps, read }),
    checks,
    decidedBy: tightestCheck(checks)?.name ?? '',
  };

  /** What the input takes a resistance for; null is an open circuit. */
  function read(senderOhm: number | null): number | 'open' | 'short' {
    const v = pin(senderOhm ?? Infinity, pullUpOhm);
    if (v > openThresholdV) return 'open';
    if (v < shortThresholdV) return 'short';
    // A reading on a threshold belongs to the step of fewer volts.
    return falls ? thresholdV.filter((t) => v <= t).length : thresholdV.filter((t) => v > t).length;
  }
}

const at = <T>(list: readonly T[], i: number): T => list[i] as T;

function guard(input: LadderSenderInput): void {
  const fn = 'ladderSender';
  needInput(fn, input);
  const { stepOhm, stepLevelFraction, overlapFraction } = input;
  needMoreThan(fn, 'supplyV', input.supplyV);
  needMoreThan(fn, 'pullUpOhm', input.pullUpOhm);
  needTolerance(fn, 'pullToleranceFraction', input.pullToleranceFraction);
  if (input.inputOhm !== null) needMoreThan(fn, 'inputOhm', input.inputOhm);
  needNoLessThan(fn, 'wireOhm', input.wireOhm);
  needSteadyOhm(fn, 'stepOhm', stepOhm);
  needTolerance(fn, 'toleranceFraction', input.toleranceFraction);
  needNoLessThan(fn, 'overlapFraction', overlapFraction);
  needList(fn, 'stepLevelFraction', stepLevelFraction, stepOhm.length);
  if (stepLevelFraction.length > stepOhm.length) {
    throw new InputError(fn, 'stepLevelFraction', 'list', stepLevelFraction, 'must have one entry a contact');
  }
  stepLevelFraction.forEach((level, i) => {
    needBetween(fn, `stepLevelFraction[${i}]`, level, 0, 1);
    if (i === 0) return;
    const step = level - (stepLevelFraction[i - 1] as number);
    if (!(step > 0)) {
      throw new InputError(fn, `stepLevelFraction[${i}]`, 'order', level, 'must lie above the one before');
    }
    if (overlapFraction >= step) {
      throw new InputError(fn, 'overlapFraction', 'below', overlapFraction, 'must be below each step of the level');
    }
  });
  if (input.idleOhm !== null) needNoLessThan(fn, 'idleOhm', input.idleOhm);
  needStrapping(fn, 'strapping', input.strapping);
  needNoLessThan(fn, 'guardV', input.guardV);
  if (input.sensorMostA !== null) needMoreThan(fn, 'sensorMostA', input.sensorMostA);
  needNoLessThan(fn, 'faultV', input.faultV, input.supplyV);
}

/** The levels at which each contact is the one that is read: of two closed ones, the one of fewer ohms. */
function rangesOf({ stepOhm, stepLevelFraction, overlapFraction }: LadderSenderInput): readonly Interval[] {
  const border = (i: number): number => {
    if (i < 0) return 0;
    if (i === stepOhm.length - 1) return 1;
    const middle = ((stepLevelFraction[i] as number) + (stepLevelFraction[i + 1] as number)) / 2;
    return middle + ((stepOhm[i + 1] as number) < (stepOhm[i] as number) ? -overlapFraction : overlapFraction) / 2;
  };
  return stepOhm.map((_, i) => ({ low: border(i - 1), high: border(i) }));
}

function stepOf(
  { stepOhm, strapping }: LadderSenderInput,
  senderOhm: number,
  pinV: number,
  volts: Interval,
  { low, high }: Interval,
): LadderStep {
  const first = stepOhm[0] as number;
  const straightFraction = (first - senderOhm) / (first - (stepOhm.at(-1) as number));
  const fromL = volumeAt(strapping, low);
  const toL = volumeAt(strapping, high);
  return {
    senderOhm,
    pinV,
    lowV: volts.low,
    highV: volts.high,
    fromFraction: low,
    toFraction: high,
    bestFraction: (low + high) / 2,
    uncertaintyFraction: (high - low) / 2,
    fromL,
    toL,
    bestL: (fromL + toL) / 2,
    uncertaintyL: (toL - fromL) / 2,
    straightFraction,
    straightErrorFraction: Math.max(straightFraction - low, high - straightFraction),
  };
}
