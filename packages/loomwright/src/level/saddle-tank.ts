import { type Check, makeCheck, tightestCheck } from '../check/index.js';
import { InputError } from '../error/index.js';
import { needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needBetween, needInput, needObject, needOneOf } from '../error/guard.js';
import { needSeries, preferredAbove } from '../table/preferred-value.js';
import type { PreferredSeries } from '../table/index.js';
import { needStrapping } from './guard.js';
import { type SaddleFault, saddleFaults } from './saddle-faults.js';
import { litresFor, lobeOhm, pairOhm, type SaddleLobe } from './saddle-split.js';
import { crossing, cutsOf, mostAlong, type Place, walk, wayOf } from './saddle-way.js';
import { volumeAt } from './strapping.js';

export interface SaddleTankInput {
  readonly left: SaddleLobe;
  readonly right: SaddleLobe;
  /** The side that the engine's pump draws from; a transfer pump brings over what is in the other. */
  readonly pumpSide: 'left' | 'right';
  /** Both senders on one wire, in series or in parallel, or each on an input of its own. */
  readonly wiring: 'series' | 'parallel' | 'two-inputs';
  /** Fixed resistor at the tank's end of each wire in Ω, at least 0; 0 for none. */
  readonly fixedOhm: number;
  /** Volts behind the bias resistor of each input, above 0, and that resistor in Ω, 0.001 to 1e8. */
  readonly biasV: number;
  readonly biasOhm: number;
  /** Resistance of each input itself to ground in Ω, 0.001 to 1e8; null when it draws nothing worth counting. */
  readonly inputOhm: number | null;
  /** Highest volts that a chafed wire could meet, at least `biasV`: the battery's. */
  readonly faultV: number;
  /** Least distance from every healthy reading at which a fault is told, in V, at least 0. */
  readonly guardV: number;
  /** The series that a fixed resistor is taken from. */
  readonly series: PreferredSeries;
}

/** One state of the tank. */
export interface SaddlePoint {
  readonly leftFraction: number;
  readonly rightFraction: number;
  readonly volumeL: number;
  /** Volts at the input, or at the two inputs, left first. */
  readonly pinV: readonly number[];
  /** Least and most litres of all splits between the sides that give the same reading. */
  readonly leastL: number;
  readonly mostL: number;
}

export interface SaddleTankResult {
  readonly totalL: number;
  /** From full to empty with the transfer at work: down to the saddle, then the far side, then the pump's. */
  readonly path: readonly SaddlePoint[];
  /** From full to where the pump draws air, the transfer dead: the far side stays full to the saddle. */
  readonly lostPath: readonly SaddlePoint[];
  /** Litres that then stay in the far side. */
  readonly trappedL: number;
  /** Most litres that then are shown above what the pump can still reach, at any place of the way. */
  readonly lostOverL: number;
  /** Left × right, eleven by eleven. */
  readonly map: readonly SaddlePoint[];
  /**
   * Widest room between the least and the most litres of one reading, on the way from full to empty: at every row of
   * the tables, at 36 even steps, and about the widest of them.
   */
  readonly mostAmbiguityL: number;
  /** Least and most volts of a healthy input. */
  readonly lowestPinV: number;
  readonly highestPinV: number;
  /** From a wire on ground to the lowest healthy reading, and from the highest to a broken wire. */
  readonly shortGapV: number;
  readonly openGapV: number;
  /** Least fixed resistor of the series with which a wire on ground is told by the guard; 0 for none, null: none can. */
  readonly leastFixedOhm: number | null;
  readonly faults: readonly SaddleFault[];
  readonly checks: readonly Check[];
  readonly decidedBy: string;
}

/**
 * A tank with two floats: litres, the readings that stand for more than one amount, the way it empties, and what every
 * fault shows.
 *
 * Above the saddle both sides fall together. Then the transfer empties the far side into the pump's, and last the
 * pump's own falls. One wire carries the sum of two senders, so one reading may stand for many splits; the litres are
 * exact along the way that was calibrated and no other. Two inputs know both sides.
 *
 * $$V = V_b\,\frac{R + R_\mathrm{fix}}{R + R_\mathrm{fix} + R_b} \qquad R = R_l + R_r \quad\text{or}\quad
 * R = \frac{R_l R_r}{R_l + R_r}$$
 *
 * An input that loads the bias counts as a bias of fewer volts and ohms.
 *
 * @param input both sides, pump, wiring, bias, guard
 * @returns path, map, ambiguity in litres, what a dead transfer hides, the fixed resistor, every fault, checks
 * @throws InputError when a field is missing or out of range, when senders on one wire move against one another, or when one of two in parallel has 0 Ω
 * @source circuit-theory (litres between rows of the tables are straight; extremes of the splits in closed form; whether a fault is told, and the most that it shows wrong, are exact along the way: volts go one way on it, and litres bend at the rows alone)
 * @example saddleTank({ left: { strapping: [{ levelFraction: 0, volumeL: 0 }, { levelFraction: 1, volumeL: 30 }], emptyOhm: 90, fullOhm: 10, saddleFraction: 0.5 }, right: { strapping: [{ levelFraction: 0, volumeL: 0 }, { levelFraction: 1, volumeL: 30 }], emptyOhm: 90, fullOhm: 10, saddleFraction: 0.5 }, pumpSide: 'left', wiring: 'parallel', fixedOhm: 0, biasV: 5, biasOhm: 180, inputOhm: null, faultV: 14.4, guardV: 0.1, series: e12 }).trappedL //=> 15
 */
export function saddleTank(input: SaddleTankInput): SaddleTankResult {
  guard(input);
  const unit = withoutLoad(input);
  const { left, right, pumpSide, wiring, fixedOhm, biasV, biasOhm, guardV } = unit;
  const pinOf = (ohm: number): number => (biasV * (ohm + fixedOhm)) / (ohm + fixedOhm + biasOhm);
  const ohmsAt = (l: number, r: number): readonly number[] =>
    wiring === 'two-inputs'
      ? [lobeOhm(left, l), lobeOhm(right, r)]
      : [pairOhm(wiring, lobeOhm(left, l), lobeOhm(right, r))];
  const litres = (l: number, r: number): number => volumeAt(left.strapping, l) + volumeAt(right.strapping, r);
  const point = ([l, r]: Place): SaddlePoint => {
    const ohms = ohmsAt(l, r);
    const volumeL = litres(l, r);
    const { leastL, mostL } =
      wiring === 'two-inputs' ? { leastL: volumeL, mostL: volumeL } : litresFor(wiring, left, right, ohms[0] as number);
    return {
      leftFraction: l,
      rightFraction: r,
      volumeL,
      pinV: ohms.map(pinOf),
      leastL: Math.min(leastL, volumeL),
      mostL: Math.max(mostL, volumeL),
    };
  };
  const way = wayOf(input, true);
  const path = walk(way, 3).map(point);
  const lost = wayOf(input, false);
  const lostPath = walk(lost, 2).map(point);
  const far = pumpSide === 'left' ? right : left;
  const ends = [0, 1].flatMap((l) => [0, 1].map((r) => ohmsAt(l, r)));
  const all = ends.flat();
  const lowestPinV = pinOf(Math.min(...all));
  const highestPinV = pinOf(Math.max(...all));
  /** Ω of the first wire along a way. */
  const ohmAt =
    (along: typeof way) =>
    (u: number): number =>
      ohmsAt(...along(u))[0] as number;
  const cuts = cutsOf(way, 3, unit);
  const bends = (seenOhm: (u: number) => number, end: number): readonly number[] =>
    wiring === 'two-inputs' ? [] : cuts.map((u) => crossing(seenOhm, ohmAt(way)(u), end));
  /** Litres that the calibrated way has at these ohms. */
  const shownL = (ohms: readonly number[]): number => {
    const bound = (lobe: SaddleLobe, ohm: number): number =>
      Math.min(1, Math.max(0, (ohm - lobe.emptyOhm) / (lobe.fullOhm - lobe.emptyOhm)));
    if (wiring === 'two-inputs') return litres(bound(left, ohms[0] as number), bound(right, ohms[1] as number));
    return litres(...way(crossing(ohmAt(way), ohms[0] as number, 3)));
  };
  const trappedL = volumeAt(far.strapping, far.saddleFraction);
  const needOhm = guardV < biasV ? (biasOhm * guardV) / (biasV - guardV) - Math.min(...all) : null;
  const given = {
    limit: guardV,
    unit: 'V',
    sense: 'atLeast',
    source: 'given-by-caller',
    sourceStatus: 'derived',
  } as const;
  const checks = [
    makeCheck({ ...given, name: 'gap to a wire on ground', value: lowestPinV }),
    makeCheck({ ...given, name: 'gap to a broken wire', value: biasV - highestPinV }),
  ];
  return {
    totalL: litres(1, 1),
    path,
    lostPath,
    trappedL,
    lostOverL: mostAlong([...cutsOf(lost, 2, unit), ...bends(ohmAt(lost), 2)], (u) => {
      const [l, r] = lost(u);
      return Math.max(0, shownL(ohmsAt(l, r)) - (litres(l, r) - trappedL));
    }),
    map: Array.from({ length: 121 }, (_, i) => point([Math.floor(i / 11) / 10, (i % 11) / 10])),
    mostAmbiguityL: mostAlong(cuts, (u) => {
      const { leastL, mostL } = point(way(u));
      return mostL - leastL;
    }),
    lowestPinV,
    highestPinV,
    shortGapV: lowestPinV,
    openGapV: biasV - highestPinV,
    leastFixedOhm: needOhm === null ? null : needOhm <= 0 ? 0 : preferredAbove(input.series, needOhm),
    faults: saddleFaults({ input: unit, way, cuts, bends, litres, pinOf, shownL, lowestPinV, highestPinV }),
    checks,
    decidedBy: tightestCheck(checks)?.name ?? '',
  };
}

/** A bias behind an input that loads it, as the bias without load that does the same: Thévenin's. */
function withoutLoad(input: SaddleTankInput): SaddleTankInput {
  const { biasV, biasOhm, inputOhm } = input;
  if (inputOhm === null) return input;
  const share = inputOhm / (inputOhm + biasOhm);
  return { ...input, biasV: biasV * share, biasOhm: biasOhm * share };
}

function guard(input: SaddleTankInput): void {
  const fn = 'saddleTank';
  needInput(fn, input);
  needOneOf(fn, 'pumpSide', input.pumpSide, ['left', 'right']);
  needOneOf(fn, 'wiring', input.wiring, ['series', 'parallel', 'two-inputs']);
  for (const side of ['left', 'right'] as const) {
    const lobe = input[side];
    needObject(fn, side, lobe);
    needStrapping(fn, `${side}.strapping`, lobe.strapping);
    for (const field of ['emptyOhm', 'fullOhm'] as const) {
      needBetween(fn, `${side}.${field}`, lobe[field], 0, 1e8);
      if (lobe[field] !== 0) needMoreThan(fn, `${side}.${field}`, lobe[field]);
      if (input.wiring === 'parallel') {
        needMoreThan(fn, `${side}.${field}`, lobe[field], 0, 'in parallel a sender of 0 Ω hides the other');
      }
    }
    if (Math.abs(lobe.emptyOhm - lobe.fullOhm) < 1e-6) {
      throw new InputError(fn, `${side}.fullOhm`, 'order', lobe.fullOhm, 'must differ from emptyOhm');
    }
    needMoreThan(fn, `${side}.saddleFraction`, lobe.saddleFraction);
    needBetween(fn, `${side}.saddleFraction`, lobe.saddleFraction, 0, 1);
  }
  const rises = ({ emptyOhm, fullOhm }: SaddleLobe): boolean => fullOhm > emptyOhm;
  if (input.wiring !== 'two-inputs' && rises(input.left) !== rises(input.right)) {
    const must = 'must move the same way as that of the left side';
    throw new InputError(fn, 'right.fullOhm', 'order', input.right.fullOhm, must, 'on one wire they would cancel');
  }
  needNoLessThan(fn, 'fixedOhm', input.fixedOhm);
  needMoreThan(fn, 'biasV', input.biasV);
  needBetween(fn, 'biasOhm', input.biasOhm, 0.001, 1e8);
  if (input.inputOhm !== null) needBetween(fn, 'inputOhm', input.inputOhm, 0.001, 1e8);
  needNoLessThan(fn, 'faultV', input.faultV, input.biasV);
  needNoLessThan(fn, 'guardV', input.guardV);
  needSeries(fn, input.series);
}
