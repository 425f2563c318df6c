import { type Check, makeCheck, tightestCheck } from '../check/index.js';
import { InputError } from '../error/index.js';
import { needEarthly, needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needInput } from '../error/guard.js';

export interface LoadedDividerInput {
  /** Volts of the signal before its own resistance. */
  readonly inV: number;
  /** Resistance of the signal's source and wire in Ω, at least 0. */
  readonly sourceOhm: number;
  /** Resistance from the signal to the pin in Ω, at least 0. */
  readonly upperOhm: number;
  /** Resistance from the pin to ground in Ω, above 0; null when there is none. */
  readonly lowerOhm: number | null;
  /** Resistance of the input itself to ground in Ω, above 0; null when it draws nothing worth counting. */
  readonly inputOhm: number | null;
  /** The input's own pull-up in Ω, above 0, and the volts that it pulls to. Both or neither. */
  readonly pullUpOhm?: number;
  readonly pullUpV?: number;
  /** The input's own pull-down in Ω, above 0. */
  readonly pullDownOhm?: number;
  /** Volts of the pin's full scale, above 0. */
  readonly fullScaleV?: number;
  /** Volts at which the pin's protection begins to conduct, above 0; often the supply of the chip and 0.6 V. */
  readonly clampV?: number;
  /** Most that anything connected may move the reading, in V, above 0. */
  readonly allowedErrorV?: number;
}

export interface LoadedDividerResult {
  /** Volts at the pin with everything connected, the protection apart. */
  readonly outV: number;
  /** Volts that the two resistors alone would give from a stiff source. */
  readonly idealV: number;
  /** The difference: below 0 where something drags the pin down. */
  readonly shiftV: number;
  /** Part of it that is due to the pull-up and the pull-down. */
  readonly pullShiftV: number;
  /** Resistance in Ω at the pin, everything in parallel. */
  readonly nodeOhm: number;
  /** Current taken from the signal in A. */
  readonly signalA: number;
  /** Volts at the pin when the signal's wire is off; null when nothing else holds the pin and it floats. */
  readonly openWireV: number | null;
  /** Volts at the pin when the lower resistor has lost its ground. */
  readonly groundLostV: number;
  /** Volts at the pin once its protection conducts. */
  readonly pinV: number;
  /** Current into the protection in A; 0 while it does not conduct. */
  readonly clampA: number;
  /** The same with the lower resistor's ground lost. */
  readonly groundLostClampA: number;
  readonly checks: readonly Check[];
  /** The check with the least room, or null where no limit was given and nothing pulls. */
  readonly decidedBy: string | null;
}

/**
 * Volts at a pin behind a divider, with what is really connected: the signal's own resistance, the input's
 * resistance, its pull-up or pull-down, its protection.
 *
 * An input with a pull-up of 1 kΩ reads nearly its own supply through a divider of 10 kΩ, whatever the signal does.
 *
 * $$V_\mathrm{pin} = \frac{\dfrac{V_\mathrm{in}}{R_s + R_1} + \dfrac{V_\mathrm{pull}}{R_\mathrm{pull}}}
 * {\dfrac{1}{R_s + R_1} + \dfrac{1}{R_2} + \dfrac{1}{R_\mathrm{in}} + \dfrac{1}{R_\mathrm{pull}}}$$
 *
 * @param input signal, resistors, what the input itself connects, limits
 * @returns pin volts, what each thing shifts, wire off and ground lost, clamp current in A, checks
 * @throws InputError when a field is missing or out of range, or nothing at all stands between signal and pin and
 * its source is stiff
 * @source circuit-theory (Millman's theorem); common-practice (a pull should move a reading by 1 % at most)
 * @example loadedDivider({ inV: 13.8, sourceOhm: 0, upperOhm: 18000, lowerOhm: 10000, inputOhm: null, pullUpOhm: 1000, pullUpV: 5 }).outV //=> 4.99038
 */
export function loadedDivider(input: LoadedDividerInput): LoadedDividerResult {
  const fn = 'loadedDivider';
  needInput(fn, input);
  const { inV, sourceOhm, upperOhm, lowerOhm, inputOhm, pullUpOhm, pullUpV, pullDownOhm } = input;
  const { fullScaleV, clampV, allowedErrorV } = input;
  needEarthly(fn, 'inV', inV);
  needNoLessThan(fn, 'sourceOhm', sourceOhm);
  needNoLessThan(fn, 'upperOhm', upperOhm);
  if (lowerOhm !== null) needMoreThan(fn, 'lowerOhm', lowerOhm);
  if (inputOhm !== null) needMoreThan(fn, 'inputOhm', inputOhm);
  if (pullUpOhm !== undefined) needMoreThan(fn, 'pullUpOhm', pullUpOhm);
  if (pullUpV !== undefined) needEarthly(fn, 'pullUpV', pullUpV);
  if ((pullUpOhm === undefined) !== (pullUpV === undefined)) {
    const field = pullUpOhm === undefined ? 'pullUpOhm' : 'pullUpV';
    throw new InputError(fn, field, 'missing', undefined, 'is required: a pull-up has ohms and volts');
  }
  if (pullDownOhm !== undefined) needMoreThan(fn, 'pullDownOhm', pullDownOhm);
  if (fullScaleV !== undefined) needMoreThan(fn, 'fullScaleV', fullScaleV);
  if (clampV !== undefined) needMoreThan(fn, 'clampV', clampV);
  if (allowedErrorV !== undefined) needMoreThan(fn, 'allowedErrorV', allowedErrorV);
  const seriesOhm = sourceOhm + upperOhm;
  needMoreThan(fn, 'upperOhm', seriesOhm, 0, 'a stiff source straight on the pin has no divider');

  const lowerS = lowerOhm === null ? 0 : 1 / lowerOhm;
  const inputS = inputOhm === null ? 0 : 1 / inputOhm;
  const pullS = (pullUpOhm === undefined ? 0 : 1 / pullUpOhm) + (pullDownOhm === undefined ? 0 : 1 / pullDownOhm);
  const pullA = pullUpOhm === undefined ? 0 : (pullUpV as number) / pullUpOhm;
  const signalS = 1 / seriesOhm;
  const outV = (inV * signalS + pullA) / (signalS + lowerS + inputS + pullS);
  const withoutPullV = (inV * signalS) / (signalS + lowerS + inputS);
  const idealV = lowerOhm === null ? inV : (inV * lowerOhm) / (upperOhm + lowerOhm);
  const restS = lowerS + inputS + pullS;
  const groundLostV = (inV * signalS + pullA) / (signalS + inputS + pullS);
  const clampOf = (v: number, conductanceS: number): number =>
    clampV === undefined || v <= clampV ? 0 : (v - clampV) * conductanceS;
  const checks = checksOf(input, { outV, shiftV: outV - idealV, pullShiftV: outV - withoutPullV, idealV });
  return {
    outV,
    idealV,
    shiftV: outV - idealV,
    pullShiftV: outV - withoutPullV,
    nodeOhm: 1 / (signalS + restS),
    signalA: (inV - outV) * signalS,
    openWireV: restS === 0 ? null : pullA / restS,
    groundLostV,
    pinV: clampV === undefined ? outV : Math.min(outV, clampV),
    clampA: clampOf(outV, signalS + restS),
    groundLostClampA: clampOf(groundLostV, signalS + inputS + pullS),
    checks,
    decidedBy: tightestCheck(checks)?.name ?? null,
  };
}

interface Found {
  readonly outV: number;
  readonly shiftV: number;
  readonly pullShiftV: number;
  readonly idealV: number;
}

function checksOf(input: LoadedDividerInput, found: Found): readonly Check[] {
  const { fullScaleV, allowedErrorV, pullUpOhm, pullDownOhm } = input;
  const given = { unit: 'V', sense: 'atMost', source: 'given-by-caller', sourceStatus: 'derived' } as const;
  const checks: Check[] = [];
  if (fullScaleV !== undefined) {
    checks.push(makeCheck({ ...given, name: 'pin within full scale', value: found.outV, limit: fullScaleV }));
  }
  if (allowedErrorV !== undefined) {
    const value = Math.abs(found.shiftV);
    checks.push(makeCheck({ ...given, name: 'shift by everything connected', value, limit: allowedErrorV }));
  }
  if (pullUpOhm !== undefined || pullDownOhm !== undefined) {
    const value = Math.abs(found.pullShiftV);
    const name = 'shift by the pull of the input';
    checks.push(
      allowedErrorV !== undefined
        ? makeCheck({ ...given, name, value, limit: allowedErrorV })
        : makeCheck({
            ...given,
            name,
            value,
            limit: 0.01 * Math.abs(found.idealV),
            source: 'common-practice',
            sourceStatus: 'common-practice',
            because: '1 % of the reading, where no other limit is given',
          }),
    );
  }
  return checks;
}
