import { type Check, makeCheck, type NotPossible, tightestCheck } from '../check/index.js';
import { InputError } from '../error/index.js';
import { needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needInput } from '../error/guard.js';
import { type Interval, parallel, productOf, shareOf, spread } from '../number/interval.js';
import type { PreferredSeries } from '../table/index.js';
import { figure } from './figure.js';
import { needTolerance } from './guard.js';
import { needSeries, preferredAt, preferredBetween, preferredIndex } from '../table/preferred-value.js';

export interface DesignDividerInput {
  /** Least volts of the signal that are to be read, at least 0. */
  readonly lowestInV: number;
  /** Most volts of the signal that are to be read, above the least. */
  readonly highestInV: number;
  /** Most volts that may ever arrive and must do no harm: surge, jump start. At least `highestInV`. */
  readonly surgeV: number;
  /** Volts of the pin's full scale, above 0. */
  readonly fullScaleV: number;
  /** Resistance of the input itself to ground in Ω, above 0; null when it draws nothing worth counting. */
  readonly inputOhm: number | null;
  /** Window for the resistance that the pin sees (both resistors in parallel), in Ω, above 0. */
  readonly leastSourceOhm: number;
  readonly mostSourceOhm: number;
  /** Most heat that one resistor may make in W, above 0: its rating after derating. */
  readonly resistorMostW: number;
  /** Volts at which the pin's protection begins to conduct, above 0. */
  readonly clampV: number;
  /** Most current that the protection may carry in A, above 0. */
  readonly clampMostA: number;
  /** Most of the full scale that may stay unused at the most volts to be read, as a fraction, above 0 and below 1. */
  readonly mostUnusedFraction: number;
  /** The series that is in the drawer. */
  readonly series: PreferredSeries;
  /** Tolerance of both resistors as a fraction, 0 to below 1. */
  readonly toleranceFraction: number;
}

export interface DividerDesign {
  readonly possible: true;
  readonly upperOhm: number;
  readonly lowerOhm: number;
  /** Resistance that the pin sees in Ω. */
  readonly sourceOhm: number;
  /** Share of the signal that reaches the pin: as marked, and at the corners of the tolerance. */
  readonly outFraction: number;
  readonly lowOutFraction: number;
  readonly highOutFraction: number;
  /** Volts at the pin for the least and the most volts to be read, as marked. */
  readonly outAtLowestV: number;
  readonly outAtHighestV: number;
  /** Worst part of the full scale that is left unused, as a fraction: what the design makes small. */
  readonly unusedFraction: number;
  /** Worst error of a reading if the marked values are taken as true, as a fraction of it. */
  readonly readErrorFraction: number;
  /** Volts at the pin in a surge if nothing clamped it. */
  readonly surgeOutV: number;
  /** Current into the protection in a surge, at the worst corner, in A. */
  readonly clampA: number;
  /** The same when the lower resistor has lost its ground: the whole surge stands behind the upper one. */
  readonly groundLostClampA: number;
  /** The most heat of each resistor in a surge, tolerance and lost ground included, in W. */
  readonly upperW: number;
  readonly lowerW: number;
  readonly checks: readonly Check[];
  readonly decidedBy: string;
}

export type DesignDividerResult = DividerDesign | NotPossible<DividerDesign>;

type Rule = 'scale-unused' | 'impedance-window' | 'clamp-current' | 'resistor-power';

/**
 * The best real pair of resistors that brings a signal down to a pin.
 *
 * Never over full scale at the most volts to be read, whatever the tolerance; among the pairs that also keep the
 * impedance window, the heat and the clamp current, in a surge and with the divider's ground lost, the one whose
 * worst corner leaves the least of the scale unused. Of pairs with the same error the one nearest to the middle of
 * the window, by ratio.
 *
 * $$k = \frac{1}{1 + R_1/R_2} \qquad k_\mathrm{high} V_\mathrm{max} \le V_\mathrm{full} \qquad
 * \min_{R_1, R_2} \left(1 - \frac{k_\mathrm{low} V_\mathrm{max}}{V_\mathrm{full}}\right)$$
 *
 * @param input signal, pin, limits, series
 * @returns the pair with its corners, faults and checks; or not possible, because, with the nearest pair
 * @throws InputError when a field is missing or out of range
 * @source circuit-theory; corners by interval arithmetic, exact because each resistor is named once; iec-60063
 * @example designDivider({ lowestInV: 0, highestInV: 20, surgeV: 40, fullScaleV: 5, inputOhm: null, leastSourceOhm: 1000, mostSourceOhm: 10000, resistorMostW: 0.125, clampV: 5.6, clampMostA: 0.005, mostUnusedFraction: 0.2, series: e24, toleranceFraction: 0 }).possible //=> true
 */
export function designDivider(input: DesignDividerInput): DesignDividerResult {
  guard(input);
  const { highestInV, fullScaleV } = input;
  if (highestInV <= fullScaleV) {
    return {
      possible: false,
      code: 'already-in-range',
      because: `the signal never passes the full scale of ${fullScaleV} V: a series resistor is enough`,
      nearest: null,
    };
  }
  const best = search(input, RULE_ORDER);
  if (best !== null) return best;
  // What is nearest keeps what protects the pin and gives up scale first.
  for (const dropped of RULE_ORDER) {
    const nearest = search(
      input,
      RULE_ORDER.filter((rule) => rule !== dropped),
    );
    if (nearest !== null) return { possible: false, code: dropped, because: reason(input, dropped, nearest), nearest };
  }
  const nearest = search(input, []);
  const because = 'no pair of the series keeps the limits on impedance, clamp current and heat together';
  return { possible: false, code: 'several-limits', because, nearest };
}

const RULE_ORDER: readonly Rule[] = ['scale-unused', 'impedance-window', 'clamp-current', 'resistor-power'];

function guard(input: DesignDividerInput): void {
  const fn = 'designDivider';
  needInput(fn, input);
  needNoLessThan(fn, 'lowestInV', input.lowestInV);
  needMoreThan(fn, 'highestInV', input.highestInV, input.lowestInV);
  needNoLessThan(fn, 'surgeV', input.surgeV, input.highestInV);
  needMoreThan(fn, 'fullScaleV', input.fullScaleV);
  if (input.inputOhm !== null) needMoreThan(fn, 'inputOhm', input.inputOhm);
  needMoreThan(fn, 'leastSourceOhm', input.leastSourceOhm);
  needNoLessThan(fn, 'mostSourceOhm', input.mostSourceOhm, input.leastSourceOhm);
  if (input.leastSourceOhm < 0.01 || input.mostSourceOhm > 1e9) {
    throw new InputError(fn, 'mostSourceOhm', 'range', input.mostSourceOhm, 'must leave a window within 0.01 to 1e9');
  }
  needMoreThan(fn, 'resistorMostW', input.resistorMostW);
  needMoreThan(fn, 'clampV', input.clampV);
  needMoreThan(fn, 'clampMostA', input.clampMostA);
  needMoreThan(fn, 'mostUnusedFraction', input.mostUnusedFraction);
  needTolerance(fn, 'mostUnusedFraction', input.mostUnusedFraction);
  needSeries(fn, input.series);
  needTolerance(fn, 'toleranceFraction', input.toleranceFraction);
}

/**
 * Every lower value with, for each, the upper values from the first that keeps the pin within full scale: the error
 * grows with the upper value, so the first that keeps the rules is the best for this lower one.
 */
function search(input: DesignDividerInput, rules: readonly Rule[]): DividerDesign | null {
  const { highestInV, fullScaleV, surgeV, clampV, clampMostA, toleranceFraction, series } = input;
  const { leastSourceOhm, mostSourceOhm } = input;
  const wanted = fullScaleV / highestInV;
  const windowed = rules.includes('impedance-window');
  const leastLower = windowed ? leastSourceOhm : leastSourceOhm / 1000;
  const mostLower = (windowed ? mostSourceOhm : mostSourceOhm * 1000) / (1 - wanted);
  const middleOhm = Math.sqrt(leastSourceOhm * mostSourceOhm);
  const fromClamp = rules.includes('clamp-current') ? Math.max(0, surgeV - clampV) / clampMostA : 0;
  const mostUnused = rules.includes('scale-unused') ? input.mostUnusedFraction : 0.999;
  let best: { readonly upperOhm: number; readonly lowerOhm: number } | null = null;
  let bestUnused = Infinity;
  let bestOff = Infinity;
  for (const lowerOhm of preferredBetween(series, leastLower, Math.min(mostLower, 1e12))) {
    const fromScale = lowerOhm * (1 + toleranceFraction) * (1 / wanted - 1);
    for (let k = preferredIndex(series, Math.max(fromScale, fromClamp) / (1 - toleranceFraction)); ; k++) {
      const upperOhm = preferredAt(series, k);
      const out = outOf(input, upperOhm, lowerOhm);
      if (out.high * highestInV > fullScaleV) continue;
      const unused = 1 - (out.low * highestInV) / fullScaleV;
      if (unused > mostUnused || unused > bestUnused + 1e-12) break;
      const sourceOhm = parallel(upperOhm, lowerOhm);
      if (windowed && sourceOhm > mostSourceOhm) break;
      if (windowed && sourceOhm < leastSourceOhm) continue;
      const stress = stressOf(input, upperOhm, lowerOhm);
      if (rules.includes('clamp-current') && stress.groundLostClampA > clampMostA) continue;
      if (rules.includes('resistor-power') && Math.max(stress.upperW, stress.lowerW) > input.resistorMostW) continue;
      const off = Math.abs(Math.log(sourceOhm / middleOhm));
      if (unused < bestUnused - 1e-12 || off < bestOff - 1e-12) {
        best = { upperOhm, lowerOhm };
        bestUnused = unused;
        bestOff = off;
      }
      break;
    }
  }
  return best === null ? null : judge(input, best.upperOhm, best.lowerOhm);
}

/** Clamp current and heat at the worst corners. */
function stressOf(
  { surgeV, clampV, toleranceFraction }: DesignDividerInput,
  upperOhm: number,
  lowerOhm: number,
): Pick<DividerDesign, 'clampA' | 'groundLostClampA' | 'upperW' | 'lowerW'> {
  const upper = spread(upperOhm, toleranceFraction);
  const lower = spread(lowerOhm, toleranceFraction);
  const surge = productOf({ low: surgeV, high: surgeV }, shareOf(upper, lower));
  // The protection holds the pin down, which is the most that the upper one can see; the lower one sees at most the
  // clamp volts. Mixing the corners keeps both on the safe side.
  const acrossUpperV = surgeV - Math.min(surge.low, clampV);
  const acrossLowerV = Math.min(surge.high, clampV);
  return {
    clampA: Math.max(0, (surgeV - clampV) / upper.low - clampV / lower.high),
    groundLostClampA: Math.max(0, surgeV - clampV) / upper.low,
    upperW: (acrossUpperV * acrossUpperV) / upper.low,
    lowerW: (acrossLowerV * acrossLowerV) / lower.low,
  };
}

/** The share that reaches the pin at the corners: a load only lowers it, so it counts in the low corner alone. */
function outOf(input: DesignDividerInput, upperOhm: number, lowerOhm: number): Interval {
  const { inputOhm, toleranceFraction } = input;
  const upper = spread(upperOhm, toleranceFraction);
  const lower = spread(lowerOhm, toleranceFraction);
  return shareOf(upper, { low: parallel(lower.low, inputOhm ?? Infinity), high: lower.high });
}

/** Which rule a check belongs to. */
const RULES: Readonly<Record<string, Rule>> = {
  'scale left unused': 'scale-unused',
  'resistance at the pin, least': 'impedance-window',
  'resistance at the pin, most': 'impedance-window',
  'clamp current in a surge': 'clamp-current',
  'clamp current with the ground lost': 'clamp-current',
  'heat of the upper resistor': 'resistor-power',
  'heat of the lower resistor': 'resistor-power',
};

function judge(input: DesignDividerInput, upperOhm: number, lowerOhm: number): DividerDesign {
  const { lowestInV, highestInV, surgeV, fullScaleV, inputOhm, clampMostA, resistorMostW } = input;
  const out = outOf(input, upperOhm, lowerOhm);
  const sourceOhm = parallel(upperOhm, lowerOhm);
  const unusedFraction = 1 - (out.low * highestInV) / fullScaleV;
  const outFraction = 1 / (1 + upperOhm / parallel(lowerOhm, inputOhm ?? Infinity));
  const stress = stressOf(input, upperOhm, lowerOhm);
  const { clampA, groundLostClampA, upperW, lowerW } = stress;
  const given = { source: 'given-by-caller', sourceStatus: 'derived' } as const;
  const most = { ...given, sense: 'atMost' } as const;
  const checks = [
    makeCheck({ ...most, name: 'pin within full scale', value: out.high * highestInV, limit: fullScaleV, unit: 'V' }),
    makeCheck({
      ...most,
      name: 'scale left unused',
      value: unusedFraction,
      limit: input.mostUnusedFraction,
      unit: 'fraction',
    }),
    makeCheck({
      ...given,
      sense: 'atLeast',
      name: 'resistance at the pin, least',
      value: sourceOhm,
      limit: input.leastSourceOhm,
      unit: 'Ω',
    }),
    makeCheck({
      ...most,
      name: 'resistance at the pin, most',
      value: sourceOhm,
      limit: input.mostSourceOhm,
      unit: 'Ω',
    }),
    makeCheck({ ...most, name: 'clamp current in a surge', value: clampA, limit: clampMostA, unit: 'A' }),
    makeCheck({
      ...most,
      name: 'clamp current with the ground lost',
      value: groundLostClampA,
      limit: clampMostA,
      unit: 'A',
    }),
    makeCheck({ ...most, name: 'heat of the upper resistor', value: upperW, limit: resistorMostW, unit: 'W' }),
    makeCheck({ ...most, name: 'heat of the lower resistor', value: lowerW, limit: resistorMostW, unit: 'W' }),
  ];
  return {
    possible: true,
    upperOhm,
    lowerOhm,
    sourceOhm,
    outFraction,
    lowOutFraction: out.low,
    highOutFraction: out.high,
    outAtLowestV: outFraction * lowestInV,
    outAtHighestV: outFraction * highestInV,
    unusedFraction,
    readErrorFraction: Math.max(out.high / outFraction - 1, 1 - out.low / outFraction),
    surgeOutV: outFraction * surgeV,
    ...stress,
    checks,
    decidedBy: tightestCheck(checks)?.name ?? '',
  };
}

function reason(input: DesignDividerInput, rule: Rule, nearest: DividerDesign): string {
  if (rule === 'scale-unused') {
    const inTheWay = RULE_ORDER.filter(
      (other) =>
        other !== rule &&
        search(
          input,
          RULE_ORDER.filter((kept) => kept !== other),
        ) !== null,
    );
    const names =
      inTheWay.length === 0 ? 'the series and its tolerance' : inTheWay.map((name) => WORDS[name]).join(' or ');
    return `the best safe pair leaves ${figure(nearest.unusedFraction * 100)} % of the scale unused; in the way: ${names}`;
  }
  const failed = nearest.checks.filter((check) => RULES[check.name] === rule && !check.ok);
  const found = failed.map(
    (check) => `${check.name}: ${figure(check.value)} ${check.unit}, limit ${figure(check.limit)}`,
  );
  return `no pair of the series keeps every limit; of the best pair without this one, ${found.join('; ')}`;
}

const WORDS: Readonly<Record<Rule, string>> = {
  'scale-unused': 'the use of the scale',
  'impedance-window': 'the impedance window',
  'clamp-current': 'the clamp current',
  'resistor-power': 'the heat of a resistor',
};
