import type { NotPossible } from '../check/index.js';
import { InputError } from '../error/index.js';
import { needMoreThan } from '../error/bounded.js';
import { needInteger } from '../error/guard.js';
import type { PreferredSeries } from '../table/index.js';
import { checkSwitchLadder, type CheckSwitchLadderResult, gapsFromSwitch, sumsOf } from './check-switch-ladder.js';
import { figure } from './figure.js';
import {
  idleOhmSeen,
  needLadderBase,
  pressedOhm,
  shortVolts,
  type SwitchLadderBase,
  voltsFromSwitch,
} from './ladder.js';
import { needSeries, preferredBetween } from '../table/preferred-value.js';

export interface DesignSwitchLadderInput extends SwitchLadderBase {
  /** Buttons wanted, 1 to 16. */
  readonly buttonCount: number;
  /** The series that is in the drawer. */
  readonly series: PreferredSeries;
  /** Largest resistor that is to be used in Ω, above 0: damp and noise speak against large ones. */
  readonly mostOhm: number;
}

export interface SwitchLadderDesign extends CheckSwitchLadderResult {
  readonly possible: true;
  /** Resistor of each button, in the sense of `form`. */
  readonly buttonOhm: readonly number[];
}

export type DesignSwitchLadderResult = SwitchLadderDesign | NotPossible<SwitchLadderDesign>;

/**
 * The resistors of a ladder that leave the widest room between its most alike neighbours.
 *
 * The first button goes straight to its rail, unless a shorted wire must be told from it. For separate buttons the
 * result is the best that the series can do. For a chain, whose values add up, it is the best of a wide search; a
 * chain of equal values runs out after four to six buttons, separate values do better.
 *
 * @param input ladder without its resistors, number of buttons, series
 * @returns resistors with everything that `checkSwitchLadder` says of them; or not possible, because, with the most
 * buttons that can be told apart
 * @throws InputError when a field is missing or out of range
 * @source circuit-theory; iec-60063
 * @example designSwitchLadder({ supplyV: 5, pullOhm: 1000, pullTo: 'supply', form: 'separate', buttonCount: 5, series: e24, mostOhm: 100000, toleranceFraction: 0.05, pullToleranceFraction: 0.05, wireOhm: 1, contactMostOhm: 10, leakOhm: null, idleOhm: null, guardV: 0.1, tellShort: true, tellOpen: false }).possible //=> true
 */
export function designSwitchLadder(input: DesignSwitchLadderInput): DesignSwitchLadderResult {
  const fn = 'designSwitchLadder';
  needLadderBase(fn, input);
  needInteger(fn, 'buttonCount', input.buttonCount, 1);
  if (input.buttonCount > 16) {
    throw new InputError(fn, 'buttonCount', 'atMost', input.buttonCount, 'must be at most 16');
  }
  needSeries(fn, input.series);
  needMoreThan(fn, 'mostOhm', input.mostOhm);
  if (input.tellOpen && input.idleOhm === null) {
    const because = 'without a far-end resistor a broken wire reads the same as no button';
    return { possible: false, code: 'open-needs-resistor', because, nearest: designOf({ ...input, tellOpen: false }) };
  }
  const best = designOf(input);
  if (best !== null && best.smallestGapV >= 0 && leastGap(input, best.buttonOhm) >= input.guardV) return best;
  let nearest: SwitchLadderDesign | null = null;
  for (let count = input.buttonCount - 1; count > 0 && nearest === null; count--) {
    const fewer = designOf({ ...input, buttonCount: count });
    if (fewer !== null && leastGap(input, fewer.buttonOhm) >= input.guardV) nearest = fewer;
  }
  const room = best === null ? 'overlap' : `leave ${figure(leastGap(input, best.buttonOhm) * 1000)} mV`;
  const most = nearest === null ? 'not even one can be told' : `${nearest.buttonOhm.length} can be told apart`;
  return {
    possible: false,
    code: 'too-many-buttons',
    because: `${input.buttonCount} buttons ${room} where ${figure(input.guardV * 1000)} mV are wanted; ${most}`,
    nearest,
  };
}

function leastGap(input: DesignSwitchLadderInput, buttonOhm: readonly number[]): number {
  return gapsFromSwitch(input, sumsOf({ form: input.form, buttonOhm })).smallestV;
}

/**
 * The widest smallest gap: bisection on the gap, then raised step by step until nothing wider exists. For separate
 * buttons the smallest resistor that keeps the gap is always right, since it leaves the most room above it.
 */
function designOf(input: DesignSwitchLadderInput): SwitchLadderDesign | null {
  const values = preferredBetween(input.series, input.mostOhm * 1e-6, input.mostOhm);
  const build = (gapV: number): readonly number[] | null =>
    input.form === 'separate' ? buildSeparate(input, values, gapV) : buildChain(input, values, gapV);
  let best = build(0);
  if (best === null) return null;
  let low = 0;
  let high = input.supplyV;
  while (high - low > 1e-5 * input.supplyV) {
    const middle = (low + high) / 2;
    const found = build(middle);
    if (found === null) high = middle;
    else {
      low = middle;
      best = found;
    }
  }
  for (let step = 0; step < 100; step++) {
    const wider = build(leastGap(input, best) * (1 + 1e-13));
    if (wider === null || leastGap(input, wider) <= leastGap(input, best)) break;
    best = wider;
  }
  const { buttonCount, series, mostOhm, ...base } = input;
  return { possible: true, buttonOhm: best, ...checkSwitchLadder({ ...base, buttonOhm: best }) };
}

function buildSeparate(
  input: DesignSwitchLadderInput,
  values: readonly number[],
  gapV: number,
): readonly number[] | null {
  const candidates = [0, ...values];
  const chosen: number[] = [];
  let floor = input.tellShort ? shortVolts(input).high + gapV : -Infinity;
  let from = 0;
  while (chosen.length < input.buttonCount) {
    let k = from;
    let to = candidates.length;
    while (k < to) {
      const middle = (k + to) >> 1;
      const { low } = voltsFromSwitch(input, pressedOhm(input, candidates[middle] as number));
      if (low >= floor) to = middle;
      else k = middle + 1;
    }
    const ohm = candidates[k];
    if (ohm === undefined) return null;
    chosen.push(ohm);
    floor = voltsFromSwitch(input, pressedOhm(input, ohm)).high + gapV;
    from = k + 1;
  }
  return gapsFromSwitch(input, chosen).smallestV >= gapV ? chosen : null;
}

/** How many part-built chains are kept at each button, and how many rungs are tried on each. */
const KEPT = 100;
const TRIED = 5;

interface PartChain {
  readonly sumOhm: number;
  readonly rungs: readonly number[];
}

function buildChain(input: DesignSwitchLadderInput, values: readonly number[], gapV: number): readonly number[] | null {
  const first = input.tellShort ? shortVolts(input).high + gapV : -Infinity;
  const withNone = [0, ...values];
  let parts: readonly PartChain[] = [{ sumOhm: 0, rungs: [] }];
  for (let button = 0; button < input.buttonCount; button++) {
    const rungs = button === 0 ? withNone : values;
    const next = new Map<number, PartChain>();
    for (const part of parts) {
      const floor = button === 0 ? first : voltsFromSwitch(input, pressedOhm(input, part.sumOhm)).high + gapV;
      // The first rung long enough, by halving: the volts rise with the sum.
      let k = 0;
      let to = rungs.length;
      while (k < to) {
        const middle = (k + to) >> 1;
        const sum = part.sumOhm + (rungs[middle] as number);
        if (voltsFromSwitch(input, pressedOhm(input, sum)).low >= floor) to = middle;
        else k = middle + 1;
      }
      for (const ohm of rungs.slice(k, k + TRIED)) {
        const sumOhm = part.sumOhm + ohm;
        if (!next.has(sumOhm)) next.set(sumOhm, { sumOhm, rungs: [...part.rungs, ohm] });
      }
    }
    parts = [...next.values()].sort((a, b) => a.sumOhm - b.sumOhm).slice(0, KEPT);
  }
  for (const { rungs, sumOhm } of parts) {
    const top = voltsFromSwitch(input, pressedOhm(input, sumOhm)).high;
    if (voltsFromSwitch(input, idleOhmSeen(input, sumOhm)).low - top < gapV) continue;
    if (gapsFromSwitch(input, sumsOf({ form: 'chain', buttonOhm: rungs })).smallestV >= gapV) return rungs;
  }
  return null;
}
