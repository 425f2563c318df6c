import { InputError } from '../error/index.js';
import { needEarthly, needMoreThan } from '../error/bounded.js';
import { needInput, needOneOf } from '../error/guard.js';

export interface LinearSensorInput {
  /** Volts at two points with the rated supply, the second above the first. */
  readonly lowV: number;
  readonly highV: number;
  /** What is measured there, in the sensor's unit: not the same twice; it may fall. */
  readonly lowValue: number;
  readonly highValue: number;
  /** Whether the output is a share of the supply, or volts whatever the supply. */
  readonly output: 'ratiometric' | 'absolute';
  /** Supply that the two points are for, and the supply that is there, in V, above 0. */
  readonly ratedSupplyV: number;
  readonly supplyV: number;
  /** Volts at the input. */
  readonly inputV: number;
  /** Below and above these volts, by the rated supply, it is a fault: at or outside the two points. */
  readonly lowFaultV: number;
  readonly highFaultV: number;
}

export interface LinearSensorResult {
  /** What is measured, or null for a fault. */
  readonly value: number | null;
  readonly fault: 'low' | 'high' | null;
  /** Volts as they would be with the rated supply. */
  readonly scaledV: number;
  /** Place between the two points: 0 at the first, 1 at the second. */
  readonly spanFraction: number;
  /** What one volt more means, with the supply that is there. */
  readonly valuePerV: number;
  /** Volts at which nothing is measured, with the supply that is there: of a ±g sensor its middle. */
  readonly zeroV: number;
  /** By how much the value is off if the supply that is there is taken for the rated one; null for a fault. */
  readonly supplyErrorValue: number | null;
}

/**
 * A sensor of straight line through two points: pressure, position, acceleration.
 *
 * A ratiometric sensor gives a share of its supply. Read it with a converter on the same supply, or the supply's error
 * is the reading's. A sensor of ±g is calibrated lying on one side and on the other: −1 and +1.
 *
 * $$y = y_1 + (y_2 - y_1)\,\frac{V\,V_\mathrm{rated}/V_s - V_1}{V_2 - V_1}$$
 *
 * without $V_\mathrm{rated}/V_s$ where the output is absolute.
 *
 * @param input two points, supply, volts, limits of faults
 * @returns value or fault, volts by the rated supply, sensitivity, zero, error by the supply
 * @throws InputError when a field is missing or out of range, points are in no order, or a limit lies between them
 * @source ratiometric-sensor-pages
 * @example linearSensor({ lowV: 0.5, highV: 4.5, lowValue: 0, highValue: 10, output: 'ratiometric', ratedSupplyV: 5, supplyV: 5, inputV: 2.5, lowFaultV: 0.25, highFaultV: 4.75 }).value //=> 5
 */
export function linearSensor(input: LinearSensorInput): LinearSensorResult {
  const fn = 'linearSensor';
  needInput(fn, input);
  const { lowV, highV, lowValue, highValue, output, ratedSupplyV, supplyV, inputV, lowFaultV, highFaultV } = input;
  needEarthly(fn, 'lowV', lowV);
  needEarthly(fn, 'highV', highV);
  if (!(highV - lowV >= 1e-9)) throw new InputError(fn, 'highV', 'above', highV, `must be above lowV, ${lowV}`);
  needEarthly(fn, 'lowValue', lowValue);
  needEarthly(fn, 'highValue', highValue);
  if (Math.abs(highValue - lowValue) < 1e-12) {
    throw new InputError(fn, 'highValue', 'order', highValue, 'must differ from lowValue');
  }
  needOneOf(fn, 'output', output, ['ratiometric', 'absolute']);
  needMoreThan(fn, 'ratedSupplyV', ratedSupplyV);
  needMoreThan(fn, 'supplyV', supplyV);
  needEarthly(fn, 'inputV', inputV);
  needEarthly(fn, 'lowFaultV', lowFaultV);
  needEarthly(fn, 'highFaultV', highFaultV);
  if (lowFaultV > lowV) throw new InputError(fn, 'lowFaultV', 'atMost', lowFaultV, `must be at most lowV, ${lowV}`);
  if (highFaultV < highV) {
    throw new InputError(fn, 'highFaultV', 'atLeast', highFaultV, `must be at least highV, ${highV}`);
  }
  const factor = output === 'ratiometric' ? ratedSupplyV / supplyV : 1;
  const scaledV = inputV * factor;
  const fault = scaledV < lowFaultV ? 'low' : scaledV > highFaultV ? 'high' : null;
  const spanFraction = (scaledV - lowV) / (highV - lowV);
  const perRatedV = (highValue - lowValue) / (highV - lowV);
  return {
    value: fault === null ? lowValue + (highValue - lowValue) * spanFraction : null,
    fault,
    scaledV,
    spanFraction,
    valuePerV: perRatedV * factor,
    zeroV: (lowV - lowValue / perRatedV) / factor,
    supplyErrorValue: fault === null ? perRatedV * (inputV - scaledV) : null,
  };
}
