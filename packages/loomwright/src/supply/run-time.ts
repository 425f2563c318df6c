import type { NotPossible } from '../check/index.js';
import { InputError } from '../error/index.js';
import { needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needBetween, needInput, needList, needObject, needOneOf } from '../error/guard.js';

/** A part of a discharge at one current. */
export interface DischargeStage {
  /** Current in A, at least 0. */
  readonly currentA: number;
  /** How long, in h, at least 0. */
  readonly runTimeH: number;
}

export interface RunTimeInput {
  /** `referenced` counts from the hour rate; `unreferenced`, t = C / I^k, is refused with what it is off by. */
  readonly form: 'referenced' | 'unreferenced';
  /** Rated charge C in Ah, above 0. */
  readonly ratedChargeAh: number;
  /** Hour rate H in h that C is for: 20 for most starter and service batteries. Above 0. */
  readonly ratedTimeH: number;
  /** Exponent k, 1 to 2; 1 for plain ampere-hours. */
  readonly peukertExponent: number;
  /** Charge at the start as a fraction, above 0 and at most 1. */
  readonly startChargeFraction: number;
  /** Charge to be left, at least 0 and below the start. */
  readonly endChargeFraction: number;
  /** Current in A from now on, or after the stages; at least 0. */
  readonly currentA: number;
  /** What is drawn before, one after the other. */
  readonly stages?: readonly DischargeStage[];
  /** Below the rated current: `rated-charge` takes no more than C, `peukert` lets the law promise more. */
  readonly belowRate: 'rated-charge' | 'peukert';
}

/** A stage with what it takes. */
export interface SolvedStage extends DischargeStage {
  /** Hours that a full battery lasts at this current; null without a current. */
  readonly fullTimeH: number | null;
  /** Share of the whole charge that the stage takes, and what is left after it. */
  readonly takenFraction: number;
  readonly leftFraction: number;
}

export interface RunTime {
  readonly possible: true;
  /** Hours at the current, after the stages, until the charge to be left; null where there is no number. */
  readonly runTimeH: number | null;
  /** Why there is none. */
  readonly runTimeReason: 'no-current' | null;
  /** The stages before it and this time; null likewise. */
  readonly totalTimeH: number | null;
  /** Ampere-hours drawn in that time, stages not counted; null likewise. */
  readonly drawnAh: number | null;
  /** Hours from full to empty at the current, and the charge then had in Ah; null without a current. */
  readonly fullTimeH: number | null;
  readonly effectiveChargeAh: number | null;
  /** Hours that plain ampere-hours would promise for the same part of the charge; null without a current. */
  readonly plainTimeH: number | null;
  /** Current in A that the rated charge is for. */
  readonly ratedCurrentA: number;
  /** Charge left after the stages, as a fraction. */
  readonly afterStagesFraction: number;
  readonly stages: readonly SolvedStage[];
  /** Hours by t = C / I^k from full to empty; null without a current. */
  readonly unreferencedTimeH: number | null;
  /** What that form gives over what the referenced one gives, at any current. */
  readonly unreferencedRatio: number;
}

export type RunTimeResult = RunTime | NotPossible<RunTime>;

/**
 * How long a battery lasts at a current, by Peukert's law counted from its hour rate; in one go or in stages.
 *
 * Use it for winches, inverters and fridges on a parked vehicle. The other form in print, C / Iᵏ, forgets that C is
 * for H hours and is refused: its result has the wrong size by (H/C)ᵏ⁻¹, whatever the current.
 *
 * $$t = H \Bigl(\frac{C}{I H}\Bigr)^{k} \qquad \frac{C / I^{k}}{t} = \Bigl(\frac{H}{C}\Bigr)^{k-1}$$
 *
 * Each stage takes its share of a full battery's time at its own current; pauses give nothing back.
 *
 * @param input form, rated charge and rate, exponent, charge from and to, current, stages
 * @returns hours and ampere-hours, stages, what plain ampere-hours and the other form would say; not possible where
 * the stages empty the battery before, or for the form that is refused, with the referenced result as nearest
 * @throws InputError when a field is missing or out of range
 * Valid near the rated temperature and above the rated current; a cold battery gives less.
 * @source peukert-law; peukert-unreferenced (the form that is refused)
 * @example runTime({ form: 'referenced', ratedChargeAh: 120, ratedTimeH: 20, peukertExponent: 1.4, startChargeFraction: 1, endChargeFraction: 0, currentA: 120, belowRate: 'rated-charge' }).runTimeH //=> 0.301709
 */
export function runTime(input: RunTimeInput): RunTimeResult {
  guard(input);
  const { form, ratedChargeAh: C, ratedTimeH: H, peukertExponent: k, currentA, startChargeFraction: start } = input;
  const { endChargeFraction: end, belowRate } = input;
  const fullTime = (amps: number): number | null => {
    if (amps === 0) return null;
    const ratio = C / (amps * H);
    return H * (belowRate === 'rated-charge' && ratio > 1 ? ratio : ratio ** k);
  };
  let left = start;
  const stages = (input.stages ?? []).map((stage): SolvedStage => {
    const fullTimeH = fullTime(stage.currentA);
    const takenFraction = fullTimeH === null ? 0 : stage.runTimeH / fullTimeH;
    left -= takenFraction;
    return { ...stage, fullTimeH, takenFraction, leftFraction: left };
  });
  const fullTimeH = fullTime(currentA);
  const share = Math.max(left - end, 0);
  const runTimeH = fullTimeH === null ? null : share * fullTimeH;
  const before = stages.reduce((sum, stage) => sum + stage.runTimeH, 0);
  const unreferencedRatio = (H / C) ** (k - 1);
  const found: RunTime = {
    possible: true,
    runTimeH,
    runTimeReason: runTimeH === null ? 'no-current' : null,
    totalTimeH: runTimeH === null ? null : before + runTimeH,
    drawnAh: runTimeH === null ? null : currentA * runTimeH,
    fullTimeH,
    effectiveChargeAh: fullTimeH === null ? null : currentA * fullTimeH,
    plainTimeH: currentA === 0 ? null : (share * C) / currentA,
    ratedCurrentA: C / H,
    afterStagesFraction: left,
    stages,
    unreferencedTimeH: currentA === 0 ? null : C / currentA ** k,
    unreferencedRatio,
  };
  if (form === 'unreferenced') {
    const ratio = Number(unreferencedRatio.toPrecision(3));
    const because = `C / I^k has ampere-hours over amperes to the power ${k}, which is no time unless C is for 1 A; with ${C} Ah at ${H} h it gives ${ratio} times the referenced time, at every current`;
    return { possible: false, code: 'unreferenced-form', because, nearest: found };
  }
  if (left < end) {
    const at = stages.findIndex((stage) => stage.leftFraction < end) + 1;
    const because = `stage ${at} of ${stages.length} takes more than the charge that may be drawn`;
    return { possible: false, code: 'empty-before', because, nearest: found };
  }
  return found;
}

function guard(input: RunTimeInput): void {
  const fn = 'runTime';
  needInput(fn, input);
  const { ratedTimeH, startChargeFraction, endChargeFraction, stages } = input;
  needOneOf(fn, 'form', input.form, ['referenced', 'unreferenced']);
  needMoreThan(fn, 'ratedChargeAh', input.ratedChargeAh);
  needMoreThan(fn, 'ratedTimeH', ratedTimeH);
  needBetween(fn, 'peukertExponent', input.peukertExponent, 1, 2);
  needBetween(fn, 'startChargeFraction', startChargeFraction, 0, 1, '80 % is 0.8');
  needBetween(fn, 'endChargeFraction', endChargeFraction, 0, 1, '20 % is 0.2');
  if (!(endChargeFraction < startChargeFraction)) {
    const must = `must be below startChargeFraction, ${startChargeFraction}`;
    throw new InputError(fn, 'endChargeFraction', 'below', endChargeFraction, must);
  }
  needNoLessThan(fn, 'currentA', input.currentA);
  if (input.currentA > 0) needMoreThan(fn, 'currentA', input.currentA);
  needOneOf(fn, 'belowRate', input.belowRate, ['rated-charge', 'peukert']);
  if (stages === undefined) return;
  needList(fn, 'stages', stages);
  stages.forEach((stage, i) => {
    needObject(fn, `stages[${i}]`, stage);
    needNoLessThan(fn, `stages[${i}].currentA`, stage.currentA);
    if (stage.currentA > 0) needMoreThan(fn, `stages[${i}].currentA`, stage.currentA);
    needNoLessThan(fn, `stages[${i}].runTimeH`, stage.runTimeH);
  });
}
