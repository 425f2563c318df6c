import { InputError } from '../error/index.js';
import { needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needInput, needOneOf } from '../error/guard.js';
import type { SensorSide } from './pull.js';

export interface FindPullUpInput {
  /** Which side the sensor is on. */
  readonly side: SensorSide;
  /** Volts at the input with the sensor unplugged (sensor to ground), or at the sensor's supply pin. */
  readonly supplyV: number;
  /** A resistor of known value put in the sensor's place, in Ω, above 0. */
  readonly knownOhm: number;
  /** Volts at the input with it, between 0 and the supply. */
  readonly inputV: number;
  /** How far either voltage may be off, in V, at least 0. */
  readonly meterToleranceV: number;
}

export interface FindPullUpResult {
  /** The fixed resistor in Ω. */
  readonly pullOhm: number;
  /** Least that it can be with both voltages at their worst, in Ω. */
  readonly lowestOhm: number;
  /** Most that it can be, in Ω, or null where the voltages do not bound it. */
  readonly highestOhm: number | null;
}

/**
 * The fixed resistor inside a controller, from one known resistor in the sensor's place and two voltages.
 *
 * Take a resistor near the expected value: the answer is sharpest where the input lies at half of the supply. A
 * table of temperatures holds for its own pull-up alone, so find it before you copy one.
 *
 * $$R_\mathrm{pull} = R_\mathrm{known}\,\frac{V_s - V}{V} \quad\text{(sensor to ground)}$$
 *
 * @param input side, supply, known resistor, volts, tolerance of the meter
 * @returns the fixed resistor with its bounds, in Ω
 * @throws InputError when a field is missing or out of range, or the voltages do not differ by more than the meter
 * can be off
 * @source circuit-theory
 * @example findPullUp({ side: 'sensor-to-ground', supplyV: 5, knownOhm: 2200, inputV: 2.345, meterToleranceV: 0.01 }).pullOhm //=> 2490.8
 */
export function findPullUp(input: FindPullUpInput): FindPullUpResult {
  const fn = 'findPullUp';
  needInput(fn, input);
  const { side, supplyV, knownOhm, inputV, meterToleranceV } = input;
  needOneOf(fn, 'side', side, ['sensor-to-ground', 'sensor-to-supply']);
  needMoreThan(fn, 'supplyV', supplyV);
  needMoreThan(fn, 'knownOhm', knownOhm);
  needMoreThan(fn, 'inputV', inputV);
  needNoLessThan(fn, 'meterToleranceV', meterToleranceV);
  if (!(supplyV - inputV > meterToleranceV * 2)) {
    const hint = 'no current flows: is the known resistor connected?';
    throw new InputError(fn, 'inputV', 'below', inputV, `must lie clearly below supplyV, ${supplyV}`, hint);
  }
  const at = (supply: number, volts: number): number => {
    const sensorV = side === 'sensor-to-ground' ? volts : supply - volts;
    return sensorV <= 0 ? Infinity : (knownOhm * (supply - sensorV)) / sensorV;
  };
  const corners = [-1, 1].flatMap((i) =>
    [-1, 1].map((j) => at(supplyV + i * meterToleranceV, inputV + j * meterToleranceV)),
  );
  const highestOhm = Math.max(...corners);
  return {
    pullOhm: at(supplyV, inputV),
    lowestOhm: Math.max(0, Math.min(...corners)),
    highestOhm: highestOhm === Infinity ? null : highestOhm,
  };
}
