import { type Check, makeCheck, tightestCheck } from '../check/index.js';
import { needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needBetween, needInput } from '../error/guard.js';

export interface CurrentLoopInput {
  /** What is measured, as a fraction of its range, 0 to 1. */
  readonly valueFraction: number;
  /** Current at the start and at the end of the range in A: 0.004 and 0.02 for a 4–20 mA loop; the start at least 0. */
  readonly lowA: number;
  readonly highA: number;
  /** Resistor that turns the current into volts, in Ω, above 0. */
  readonly loadOhm: number;
  /** Lowest supply of the loop in V, above 0, the wires' resistance in Ω, at least 0, and what the sensor needs in V. */
  readonly lowestSupplyV: number;
  readonly wireOhm: number;
  readonly sensorLeastV: number;
}

export interface CurrentLoopResult {
  /** Current in the loop in A, and volts across the resistor. */
  readonly currentA: number;
  readonly outV: number;
  /** Volts across the resistor at the start and at the end of the range. */
  readonly startV: number;
  readonly endV: number;
  /** Volts left for the sensor at the end of the range. */
  readonly sensorV: number;
  /** Largest resistor in Ω that leaves the sensor enough; 0 or less when none does. */
  readonly mostLoadOhm: number;
  readonly checks: readonly Check[];
  readonly decidedBy: string;
}

/**
 * A current loop, such as 4–20 mA, into a resistor.
 *
 * A current ignores the resistance of the wire until the supply runs out; and with a start above zero a broken wire
 * shows itself.
 *
 * $$I = I_\mathrm{low} + x (I_\mathrm{high} - I_\mathrm{low}) \qquad V = I R$$
 *
 * @param input value, currents, resistor, supply
 * @returns current in A, volts across the resistor, volts left for the sensor, largest resistor in Ω, checks
 * @throws InputError when a field is missing or out of range
 * @source lessons-electric-circuits, volume I, chapter 9 (4–20 mA into 250 Ω)
 * @example currentLoop({ valueFraction: 0.5, lowA: 0.004, highA: 0.02, loadOhm: 250, lowestSupplyV: 18, wireOhm: 5, sensorLeastV: 8 }).outV //=> 3
 */
export function currentLoop(input: CurrentLoopInput): CurrentLoopResult {
  const fn = 'currentLoop';
  needInput(fn, input);
  const { valueFraction, lowA, highA, loadOhm, lowestSupplyV, wireOhm, sensorLeastV } = input;
  needBetween(fn, 'valueFraction', valueFraction, 0, 1);
  needNoLessThan(fn, 'lowA', lowA);
  needMoreThan(fn, 'highA', highA, lowA, 'amperes are wanted: 20 mA is 0.02');
  needMoreThan(fn, 'loadOhm', loadOhm);
  needMoreThan(fn, 'lowestSupplyV', lowestSupplyV);
  needNoLessThan(fn, 'wireOhm', wireOhm);
  needMoreThan(fn, 'sensorLeastV', sensorLeastV);
  const currentA = lowA + valueFraction * (highA - lowA);
  const sensorV = lowestSupplyV - highA * (loadOhm + wireOhm);
  const checks: readonly Check[] = [
    makeCheck({
      name: 'volts left for the sensor',
      value: sensorV,
      limit: sensorLeastV,
      unit: 'V',
      sense: 'atLeast',
      source: 'given-by-caller',
      sourceStatus: 'derived',
    }),
  ];
  return {
    currentA,
    outV: currentA * loadOhm,
    startV: lowA * loadOhm,
    endV: highA * loadOhm,
    sensorV,
    mostLoadOhm: (lowestSupplyV - sensorLeastV) / highA - wireOhm,
    checks,
    decidedBy: tightestCheck(checks)?.name ?? '',
  };
}
