import { type Check, makeCheck, tightestCheck } from '../check/index.js';
import { InputError } from '../error/index.js';
import { needEarthly, needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needInput } from '../error/guard.js';
import { needTolerance } from './guard.js';

export interface SwitchInputInput {
  /** Pull resistor in Ω, above 0, its tolerance as a fraction, and the volts that it pulls to. */
  readonly pullOhm: number;
  readonly pullToleranceFraction: number;
  readonly pullV: number;
  /** Volts that the switch connects: 0 for a switch to ground. Not the same as `pullV`. */
  readonly switchedV: number;
  /** Resistance of the input itself to ground in Ω, above 0; null when it draws nothing worth counting. */
  readonly inputOhm: number | null;
  /** Resistance of the wire out and back in Ω, at least 0. */
  readonly wireOhm: number;
  /** Most resistance of the closed contact in Ω, at least 0: dirty, corroded, worn. */
  readonly contactMostOhm: number;
  /** Least resistance across the open contact in Ω, above 0: damp, salt; null for dry. */
  readonly leakOhm: number | null;
  /** Volts at or below which the input surely reads low, and at or above which it surely reads high. */
  readonly lowV: number;
  readonly highV: number;
  /** Least current that keeps the contact clean in A, at least 0. */
  readonly leastWettingA: number;
}

export interface SwitchInputResult {
  /** `up`: the pull holds the input high and the switch takes it low; `down`: the other way round. */
  readonly pull: 'up' | 'down';
  /** Volts at the input with the contact closed, at its dirtiest, and open, at its dampest. */
  readonly closedV: number;
  readonly openV: number;
  /** What the input takes them for. */
  readonly closedReads: 'low' | 'high' | 'unsure';
  readonly openReads: 'low' | 'high' | 'unsure';
  /** Volts with the wire broken: a broken wire reads as an open contact. */
  readonly brokenWireV: number;
  /** Current through a clean contact in A, the pull at the high end of its tolerance. */
  readonly wettingA: number;
  /** Heat in the pull resistor with the contact closed and clean, in W. */
  readonly pullW: number;
  /** Most contact resistance that is still read as closed, in Ω; null where none is, or any is: see the code. */
  readonly contactLimitOhm: number | null;
  readonly contactLimitCode: 'limit' | 'none-reads' | 'any-reads';
  /** Least leak across an open contact that is still read as open, in Ω; null likewise. */
  readonly leakLimitOhm: number | null;
  readonly leakLimitCode: 'limit' | 'none-reads' | 'any-reads';
  readonly checks: readonly Check[];
  readonly decidedBy: string;
}

/**
 * Whether an input reads a real switch: the pull's direction, a dirty contact, damp across an open one, and enough
 * current to keep the contact clean.
 *
 * $$V = \frac{V_\mathrm{pull}/R_\mathrm{pull} + V_\mathrm{switch}/R_c}{1/R_\mathrm{pull} + 1/R_c + 1/R_\mathrm{in}}$$
 *
 * @param input pull, switch, wire, thresholds
 * @returns volts closed and open at their worst, what they read as, wetting current in A, limits of contact and leak
 * @throws InputError when a field is missing or out of range, or pull and switch go to the same volts
 * @source circuit-theory; common-practice (a silver contact wants about 10 mA, a gold one 0.1 to 1 mA)
 * @example switchInput({ pullOhm: 1000, pullToleranceFraction: 0.05, pullV: 12, switchedV: 0, inputOhm: null, wireOhm: 0.2, contactMostOhm: 50, leakOhm: 20000, lowV: 1.5, highV: 3.5, leastWettingA: 0.01 }).closedReads //=> 'low'
 */
export function switchInput(input: SwitchInputInput): SwitchInputResult {
  const fn = 'switchInput';
  guard(fn, input);
  const { pullOhm, pullToleranceFraction, pullV, switchedV, inputOhm, wireOhm, contactMostOhm, leakOhm } = input;
  const { lowV, highV, leastWettingA } = input;
  const inputS = inputOhm === null ? 0 : 1 / inputOhm;
  const strong = pullOhm * (1 - pullToleranceFraction);
  const weak = pullOhm * (1 + pullToleranceFraction);
  /** Volts at the pin with a resistance to the switched volts; Infinity for a broken wire. */
  const pin = (contactOhm: number, pull: number): number =>
    contactOhm === Infinity
      ? pullV / (1 + pull * inputS)
      : ((pullV * contactOhm) / pull + switchedV) / (contactOhm / pull + 1 + contactOhm * inputS);
  const up = pullV > switchedV;
  // Whether a strong or a weak pull is worse depends on which side the input's own resistance drags.
  const worst = (contactOhm: number, away: boolean): number => {
    const both = [pin(contactOhm, strong), pin(contactOhm, weak)];
    return away ? Math.max(...both) : Math.min(...both);
  };
  const closedV = worst(contactMostOhm + wireOhm, up);
  const openV = worst(leakOhm === null ? Infinity : leakOhm + wireOhm, !up);
  const closedOk = up ? closedV <= lowV : closedV >= highV;
  const openOk = up ? openV >= highV : openV <= lowV;
  const contactLimit = resistanceAt(up ? lowV : highV, up, strong);
  const leakLimit = resistanceAt(up ? highV : lowV, up, weak);
  const wettingA = Math.abs(pullV - pin(wireOhm, weak)) / weak;
  const given = { unit: 'V', source: 'given-by-caller', sourceStatus: 'derived' } as const;
  const low = { ...given, sense: 'atMost', limit: lowV } as const;
  const high = { ...given, sense: 'atLeast', limit: highV } as const;
  const checks: readonly Check[] = [
    makeCheck({ ...(up ? low : high), name: 'closed contact, dirty', value: closedV }),
    makeCheck({ ...(up ? high : low), name: 'open contact, damp', value: openV }),
    makeCheck({
      ...given,
      name: 'wetting current',
      value: wettingA,
      limit: leastWettingA,
      unit: 'A',
      sense: 'atLeast',
    }),
  ];
  return {
    pull: up ? 'up' : 'down',
    closedV,
    openV,
    closedReads: closedOk ? (up ? 'low' : 'high') : reads(closedV),
    openReads: openOk ? (up ? 'high' : 'low') : reads(openV),
    brokenWireV: pin(Infinity, pullOhm),
    wettingA,
    pullW: (pullV - pin(wireOhm, strong)) ** 2 / strong,
    contactLimitOhm: contactLimit.ohm === null ? null : Math.max(0, contactLimit.ohm - wireOhm),
    contactLimitCode: contactLimit.code,
    leakLimitOhm: leakLimit.ohm === null ? null : Math.max(0, leakLimit.ohm - wireOhm),
    leakLimitCode: leakLimit.code === 'limit' ? 'limit' : leakLimit.code === 'any-reads' ? 'none-reads' : 'any-reads',
    checks,
    decidedBy: tightestCheck(checks)?.name ?? '',
  };

  function reads(v: number): 'low' | 'high' | 'unsure' {
    return v <= lowV ? 'low' : v >= highV ? 'high' : 'unsure';
  }

  /** Resistance to the switched volts that puts the pin at a threshold; less of it is nearer to the switch. */
  function resistanceAt(
    v: number,
    pullsUp: boolean,
    pull: number,
  ): { ohm: number | null; code: 'limit' | 'none-reads' | 'any-reads' } {
    const fromSwitch = pullsUp ? v - switchedV : switchedV - v;
    if (fromSwitch < 0) return { ohm: null, code: 'none-reads' };
    const awayA = pullsUp ? pullV / pull - v * (1 / pull + inputS) : v * (1 / pull + inputS) - pullV / pull;
    // More than 1e12 Ω is no resistance at all.
    const ohm = awayA <= 0 ? Infinity : fromSwitch / awayA;
    return ohm > 1e12 ? { ohm: null, code: 'any-reads' } : { ohm, code: 'limit' };
  }
}

function guard(fn: string, input: SwitchInputInput): void {
  needInput(fn, input);
  needMoreThan(fn, 'pullOhm', input.pullOhm);
  needTolerance(fn, 'pullToleranceFraction', input.pullToleranceFraction);
  needEarthly(fn, 'pullV', input.pullV);
  needEarthly(fn, 'switchedV', input.switchedV);
  if (input.pullV === input.switchedV) {
    const hint = 'the switch would change nothing';
    throw new InputError(fn, 'switchedV', 'order', input.switchedV, 'must differ from pullV', hint);
  }
  if (input.inputOhm !== null) needMoreThan(fn, 'inputOhm', input.inputOhm);
  needNoLessThan(fn, 'wireOhm', input.wireOhm);
  needNoLessThan(fn, 'contactMostOhm', input.contactMostOhm);
  if (input.leakOhm !== null) needMoreThan(fn, 'leakOhm', input.leakOhm);
  needEarthly(fn, 'lowV', input.lowV);
  needMoreThan(fn, 'highV', input.highV, input.lowV);
  needNoLessThan(fn, 'leastWettingA', input.leastWettingA);
}
