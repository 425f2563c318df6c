import { type Check, makeCheck, tightestCheck } from '../check/index.js';
import { InputError } from '../error/index.js';
import { needNoLessThan } from '../error/bounded.js';
import { needList, needText } from '../error/guard.js';
import { type Interval, parallel, share } from '../number/interval.js';
import {
  idleOhmSeen,
  needLadderBase,
  pressedOhm,
  shortVolts,
  type SwitchLadderBase,
  voltsFromSwitch,
} from './ladder.js';

export interface CheckSwitchLadderInput extends SwitchLadderBase {
  /**
   * Separate: the resistor of each button, rising, each at least 0 and above the one before. Chain: the resistor
   * between the button before (or the pin) and this one; only the first may be 0.
   */
  readonly buttonOhm: readonly number[];
  /** Names of the buttons in the same order; `button 1` … unless given. */
  readonly names?: readonly string[];
}

/** One thing that the input may read. */
export interface LadderState {
  readonly name: string;
  /** Volts at the pin with everything as marked, and the worst cases. */
  readonly pinV: number;
  readonly lowV: number;
  readonly highV: number;
  /** The reading as a fraction of the supply. */
  readonly pinFraction: number;
}

/** What lies between neighbours, from low volts to high. */
export interface LadderGap {
  readonly below: string;
  readonly above: string;
  /** Room between the worst cases; below 0 when they overlap. */
  readonly gapV: number;
  /** Middle of that room, where the input should decide; the same for every unit built. */
  readonly thresholdV: number;
}

/** Two buttons pressed at once. */
export interface LadderPair {
  readonly first: string;
  readonly second: string;
  readonly lowV: number;
  readonly highV: number;
  /** What the input takes it for; more than one where it may be either. */
  readonly readsAs: readonly string[];
}

export interface CheckSwitchLadderResult {
  /** Every state from low volts to high: the buttons and `none`. */
  readonly states: readonly LadderState[];
  readonly gaps: readonly LadderGap[];
  readonly smallestGapV: number;
  /** Volts of the pin with the wire shorted to the buttons' side, and their distance from the nearest state. */
  readonly shortV: number;
  readonly shortGapV: number;
  /** Volts of the pin with the wire broken, and their distance from `none`: 0 or less when they look the same. */
  readonly openV: number;
  readonly openGapV: number;
  readonly pairs: readonly LadderPair[];
  /** Buttons, counted from the first, that can be told apart with the guard, were the ladder cut off after them. */
  readonly distinctCount: number;
  /** Most current through a contact in A, first button pressed. */
  readonly contactA: number;
  readonly checks: readonly Check[];
  readonly decidedBy: string;
}

/**
 * Whether an input can tell the buttons of a resistor ladder apart, at the worst corners of every part.
 *
 * Parts of tolerance, wire and contact resistance, damp, a shorted and a broken wire, two buttons at once. The
 * thresholds are fixed for every unit, so each state is taken at its own worst corner.
 *
 * $$V = V_s\,\frac{R}{R + R_\mathrm{pull}}$$
 *
 * @param input ladder, tolerances, wire, contacts, guard
 * @returns volts of each state with worst cases, gaps, thresholds, faults, pairs, checks
 * @throws InputError when a field is missing or out of range, or the resistors do not rise
 * @source circuit-theory; corners by interval arithmetic, exact for a dry ladder without far-end resistor, else safe
 * @example checkSwitchLadder({ supplyV: 5, pullOhm: 1000, pullTo: 'supply', form: 'separate', buttonOhm: [110, 360, 750], toleranceFraction: 0.05, pullToleranceFraction: 0.05, wireOhm: 0, contactMostOhm: 0, leakOhm: null, idleOhm: null, guardV: 0.1, tellShort: true, tellOpen: false }).smallestGapV //=> 0.598084
 */
export function checkSwitchLadder(input: CheckSwitchLadderInput): CheckSwitchLadderResult {
  const fn = 'checkSwitchLadder';
  needLadderBase(fn, input);
  const { supplyV, pullOhm, pullTo, buttonOhm, guardV, idleOhm } = input;
  needList(fn, 'buttonOhm', buttonOhm, 1);
  buttonOhm.forEach((ohm, i) => {
    needNoLessThan(fn, `buttonOhm[${i}]`, ohm);
    const before = input.form === 'chain' ? 0 : (buttonOhm[i - 1] as number);
    if (i > 0 && !(ohm > before)) {
      const must = input.form === 'chain' ? 'must be above 0' : 'must be above the one before';
      throw new InputError(fn, `buttonOhm[${i}]`, 'order', ohm, must);
    }
  });
  const names = namesOf(fn, input);
  const sums = sumsOf(input);
  const ladder = gapsFromSwitch(input, sums);
  const pin = (v: number): number => (pullTo === 'supply' ? v : supplyV - v);
  const nominal = [
    ...sums.map((ohm) => nominalOhm(input, ohm)),
    idleOhm === null ? Infinity : idleOhm + (input.form === 'chain' ? (sums.at(-1) as number) : 0),
  ];
  const fromSwitch = nominal.map((ohm) => supplyV * share(pullOhm, ohm));
  const states = ladder.volts.map((volts, i) =>
    stateOf([...names, 'none'][i] as string, fromSwitch[i] as number, volts),
  );
  const ordered = pullTo === 'supply' ? states : [...states].reverse();
  const gaps = ordered.slice(1).map((above, i) => gapOf(ordered[i] as LadderState, above));
  const smallestGapV = Math.min(...gaps.map((gap) => gap.gapV));
  const checks = checksOf(input, gaps, ladder);
  const first = ladder.volts[0] as Interval;
  return {
    states: ordered,
    gaps,
    smallestGapV,
    shortV: pin(0),
    shortGapV: first.low - shortVolts(input).high,
    openV: pin(supplyV),
    openGapV: supplyV - (ladder.volts.at(-1) as Interval).high,
    pairs: pairsOf(input, names, sums, ordered, gaps),
    distinctCount: distinctCount(input, sums),
    contactA:
      supplyV / (pullOhm * (1 - input.pullToleranceFraction) + (sums[0] as number) * (1 - input.toleranceFraction)),
    checks,
    decidedBy: tightestCheck(checks)?.name ?? '',
  };

  function stateOf(name: string, v: number, { low, high }: Interval): LadderState {
    const [lowV, highV] = pullTo === 'supply' ? [low, high] : [supplyV - high, supplyV - low];
    return { name, pinV: pin(v), lowV, highV, pinFraction: pin(v) / supplyV };
  }

  function gapOf(below: LadderState, above: LadderState): LadderGap {
    const gapV = above.lowV - below.highV;
    return { below: below.name, above: above.name, gapV, thresholdV: below.highV + gapV / 2 };
  }

  function checksOf(base: SwitchLadderBase, all: readonly LadderGap[], { volts }: Ladder): readonly Check[] {
    const limit = {
      limit: guardV,
      unit: 'V',
      sense: 'atLeast',
      source: 'given-by-caller',
      sourceStatus: 'derived',
    } as const;
    const list: Check[] = all.map((gap) =>
      makeCheck({ ...limit, name: `gap between ${gap.below} and ${gap.above}`, value: gap.gapV }),
    );
    if (base.tellShort) {
      const value = (volts[0] as Interval).low - shortVolts(base).high;
      list.push(makeCheck({ ...limit, name: 'gap between a shorted wire and the first button', value }));
    }
    if (base.tellOpen) {
      const name = 'gap between no button and a broken wire';
      list.push(
        base.idleOhm === null
          ? makeCheck({ ...limit, name, value: null, because: 'without a far-end resistor both read the same' })
          : makeCheck({ ...limit, name, value: supplyV - (volts.at(-1) as Interval).high }),
      );
    }
    return list;
  }
}

interface Ladder {
  /** Volts from the buttons' side of each button and of none. */
  readonly volts: readonly Interval[];
  readonly smallestV: number;
}

/** Resistance up to each button as marked. */
export function sumsOf(input: {
  readonly form: 'separate' | 'chain';
  readonly buttonOhm: readonly number[];
}): readonly number[] {
  let sum = 0;
  return input.buttonOhm.map((ohm) => {
    sum += ohm;
    return input.form === 'chain' ? sum : ohm;
  });
}

/** Worst cases of every state and the smallest room between neighbours, those that must be told included. */
export function gapsFromSwitch(base: SwitchLadderBase, sums: readonly number[]): Ladder {
  const volts = sums.map((ohm) => voltsFromSwitch(base, pressedOhm(base, ohm)));
  volts.push(voltsFromSwitch(base, idleOhmSeen(base, sums.at(-1) ?? 0)));
  let smallestV = base.tellShort ? (volts[0] as Interval).low - shortVolts(base).high : Infinity;
  for (let i = 1; i < volts.length; i++) {
    smallestV = Math.min(smallestV, (volts[i] as Interval).low - (volts[i - 1] as Interval).high);
  }
  if (base.tellOpen) {
    smallestV = base.idleOhm === null ? -Infinity : Math.min(smallestV, base.supplyV - (volts.at(-1) as Interval).high);
  }
  return { volts, smallestV };
}

function nominalOhm(base: SwitchLadderBase, ohm: number): number {
  return base.form === 'separate' ? parallel(ohm, base.idleOhm ?? Infinity) : ohm;
}

function namesOf(fn: string, { names, buttonOhm }: CheckSwitchLadderInput): readonly string[] {
  if (names === undefined) return buttonOhm.map((_, i) => `button ${i + 1}`);
  needList(fn, 'names', names, buttonOhm.length);
  names.forEach((name, i) => {
    needText(fn, `names[${i}]`, name);
  });
  return names.slice(0, buttonOhm.length);
}

function distinctCount(base: SwitchLadderBase, sums: readonly number[]): number {
  for (let count = sums.length; count > 0; count--) {
    if (gapsFromSwitch(base, sums.slice(0, count)).smallestV >= base.guardV) return count;
  }
  return 0;
}

function pairsOf(
  base: SwitchLadderBase,
  names: readonly string[],
  sums: readonly number[],
  ordered: readonly LadderState[],
  gaps: readonly LadderGap[],
): readonly LadderPair[] {
  const pairs: LadderPair[] = [];
  for (let i = 0; i < sums.length; i++) {
    for (let j = i + 1; j < sums.length; j++) {
      const { low, high } = voltsFromSwitch(base, pressedOhm(base, sums[i] as number, sums[j]));
      const [lowV, highV] = base.pullTo === 'supply' ? [low, high] : [base.supplyV - high, base.supplyV - low];
      const readsAs = ordered
        .filter((_, k) => {
          const from = k === 0 ? -Infinity : (gaps[k - 1] as LadderGap).thresholdV;
          const to = k === gaps.length ? Infinity : (gaps[k] as LadderGap).thresholdV;
          return highV >= from && lowV < to;
        })
        .map((state) => state.name);
      pairs.push({ first: names[i] as string, second: names[j] as string, lowV, highV, readsAs });
    }
  }
  return pairs;
}
