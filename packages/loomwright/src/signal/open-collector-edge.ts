import { type Check, makeCheck, tightestCheck } from '../check/index.js';
import { needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needBetween, needInput } from '../error/guard.js';
import { crossing } from './rc-step.js';

export interface OpenCollectorEdgeInput {
  /** Volts that the pull-up goes to, above 0. */
  readonly supplyV: number;
  /** Pull-up in Ω, above 0. */
  readonly pullUpOhm: number;
  /** Capacitance of sensor, wire and input together in F, above 0: about 100 pF a metre of wire, 1 to 10 nF of filter. */
  readonly capacitanceF: number;
  /** Resistance of the input to ground in Ω, above 0; null when it draws nothing worth counting. */
  readonly inputOhm: number | null;
  /** Volts that the sensor's transistor leaves when it conducts, at least 0, and the most current that it may sink in A. */
  readonly saturationV: number;
  readonly sinkMostA: number;
  /** Volts at or above which the input surely reads high, and at or below which it surely reads low. */
  readonly highV: number;
  readonly lowV: number;
  /** Highest frequency in Hz, above 0, and the part of each period in which the transistor is off, 0.01 to 0.99. */
  readonly frequencyHz: number;
  readonly offFraction: number;
  /** Most of that part which the edge may take, as a fraction, above 0, at most 1. */
  readonly mostRiseFraction: number;
}

export interface OpenCollectorEdgeResult {
  /** Time until the input reads high, in s; null where it never does. */
  readonly riseS: number | null;
  /** From 10 to 90 % of the edge, in s. */
  readonly rise10To90S: number;
  /** Time that the transistor is off in each period, in s. */
  readonly offS: number;
  /** Volts of the line with the transistor off and on. */
  readonly offV: number;
  readonly onV: number;
  /** Current that the transistor sinks in A. */
  readonly sinkA: number;
  /** Highest frequency in Hz at which the edge takes no more than its part; null where the input never reads high. */
  readonly mostHz: number | null;
  readonly checks: readonly Check[];
  readonly decidedBy: string;
}

/**
 * Whether the slow edge of an open-collector sensor fits its pulse.
 *
 * The transistor pulls the line down at once; up it goes only through the pull-up, which must fill the wire and the
 * input's filter. A weak pull-up loses pulses at speed, a strong one overloads the transistor.
 *
 * $$t = R\,C \ln\frac{V_\mathrm{off} - V_\mathrm{on}}{V_\mathrm{off} - V_\mathrm{high}}$$
 *
 * with $R$ the pull-up in parallel with the input.
 *
 * @param input supply, pull-up, capacitance, transistor, thresholds, frequency
 * @returns rise time in s, levels in V, sink current in A, highest frequency in Hz, checks
 * @throws InputError when a field is missing or out of range
 * @source circuit-theory
 * @example openCollectorEdge({ supplyV: 5, pullUpOhm: 4700, capacitanceF: 1e-8, inputOhm: null, saturationV: 0.4, sinkMostA: 0.02, highV: 3.5, lowV: 1, frequencyHz: 2000, offFraction: 0.5, mostRiseFraction: 0.3 }).riseS //=> 0.0000526678
 */
export function openCollectorEdge(input: OpenCollectorEdgeInput): OpenCollectorEdgeResult {
  const fn = 'openCollectorEdge';
  needInput(fn, input);
  const { supplyV, pullUpOhm, capacitanceF, inputOhm, saturationV, sinkMostA, highV, lowV } = input;
  const { frequencyHz, offFraction, mostRiseFraction } = input;
  needMoreThan(fn, 'supplyV', supplyV);
  needMoreThan(fn, 'pullUpOhm', pullUpOhm);
  needMoreThan(fn, 'capacitanceF', capacitanceF);
  if (inputOhm !== null) needMoreThan(fn, 'inputOhm', inputOhm);
  needBetween(fn, 'saturationV', saturationV, 0, supplyV);
  needMoreThan(fn, 'sinkMostA', sinkMostA);
  needNoLessThan(fn, 'lowV', lowV);
  needMoreThan(fn, 'highV', highV, lowV);
  needMoreThan(fn, 'frequencyHz', frequencyHz);
  needBetween(fn, 'offFraction', offFraction, 0.01, 0.99);
  needMoreThan(fn, 'mostRiseFraction', mostRiseFraction);
  needBetween(fn, 'mostRiseFraction', mostRiseFraction, 0, 1);
  const share = inputOhm === null ? 1 : inputOhm / (inputOhm + pullUpOhm);
  const offV = supplyV * share;
  const onV = Math.min(saturationV, offV);
  const timeConstantS = pullUpOhm * share * capacitanceF;
  const riseS = onV >= highV ? 0 : crossing(onV, offV, highV, timeConstantS);
  const offS = offFraction / frequencyHz;
  const sinkA = (supplyV - onV) / pullUpOhm;
  const given = { source: 'given-by-caller', sourceStatus: 'derived' } as const;
  const checks: readonly Check[] = [
    makeCheck({ ...given, name: 'line high', value: offV, limit: highV, unit: 'V', sense: 'atLeast' }),
    makeCheck({ ...given, name: 'line low', value: onV, limit: lowV, unit: 'V', sense: 'atMost' }),
    makeCheck({
      ...given,
      name: 'current of the transistor',
      value: sinkA,
      limit: sinkMostA,
      unit: 'A',
      sense: 'atMost',
    }),
    makeCheck({
      ...given,
      name: 'rise within the pulse',
      value: riseS,
      limit: mostRiseFraction * offS,
      unit: 's',
      sense: 'atMost',
      ...(riseS === null ? { because: 'the line never reaches the volts that read as high' } : {}),
    }),
  ];
  return {
    riseS,
    rise10To90S: timeConstantS * Math.log(9),
    offS,
    offV,
    onV,
    sinkA,
    mostHz: riseS === null || riseS === 0 ? null : (mostRiseFraction * offFraction) / riseS,
    checks,
    decidedBy: tightestCheck(checks)?.name ?? '',
  };
}
