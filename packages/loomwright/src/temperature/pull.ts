import { InputError } from '../error/index.js';
import { needMoreThan } from '../error/bounded.js';
import { needOneOf } from '../error/guard.js';
import { divider } from '../divider/index.js';

/** Where the sensor sits: between input and ground with a pull-up, or between supply and input with a pull-down. */
export type SensorSide = 'sensor-to-ground' | 'sensor-to-supply';

/** A sensor with its fixed resistor, and the input that reads between them. */
export interface PullInput {
  /** Which side the sensor is on. */
  readonly side: SensorSide;
  /** Supply of the divider in V, above 0: what the far ends of sensor and fixed resistor hang on. */
  readonly supplyV: number;
  /** The fixed resistor (pull-up, or pull-down where the sensor goes to the supply) in Ω, above 0. */
  readonly pullOhm: number;
  /** Resistance of the input itself to ground in Ω, above 0; none worth counting unless given. */
  readonly inputOhm?: number;
}

/** Checks the fields of a sensor's divider. */
export function needPull(fn: string, { side, supplyV, pullOhm, inputOhm }: PullInput): void {
  needOneOf(fn, 'side', side, ['sensor-to-ground', 'sensor-to-supply']);
  needMoreThan(fn, 'supplyV', supplyV);
  needMoreThan(fn, 'pullOhm', pullOhm, 0, pullOhm === 0 ? 'without it the input sees no change' : undefined);
  if (inputOhm !== undefined) needMoreThan(fn, 'inputOhm', inputOhm);
}

/** Volts at the input for a sensor's resistance, and the heat in the sensor in W. */
export function pullVolts(pull: PullInput, sensorOhm: number): { inputV: number; sensorW: number } {
  const { side, supplyV, pullOhm, inputOhm } = pull;
  const beside = (ohm: number): number => (inputOhm === undefined ? ohm : 1 / (1 / ohm + 1 / inputOhm));
  const toGround = side === 'sensor-to-ground';
  const { outV } = divider({
    inV: supplyV,
    upperOhm: toGround ? pullOhm : sensorOhm,
    lowerOhm: beside(toGround ? sensorOhm : pullOhm),
  });
  const across = toGround ? outV : supplyV - outV;
  return { inputV: outV, sensorW: (across * across) / sensorOhm };
}

/**
 * The sensor's resistance for volts at the input: the divider turned round. Null at either end, where the sensor
 * is open or shorted as far as the input can tell.
 */
export function pullOhms(fn: string, pull: PullInput, inputV: number): { ohm: number } | { fault: 'open' | 'short' } {
  const { side, supplyV, pullOhm, inputOhm } = pull;
  if (!(inputV >= 0 && inputV <= supplyV)) {
    throw new InputError(fn, 'inputV', 'range', inputV, `must lie from 0 to supplyV, ${supplyV}`);
  }
  const inputS = inputOhm === undefined ? 0 : 1 / inputOhm;
  if (side === 'sensor-to-ground') {
    if (inputV === 0) return { fault: 'short' };
    const sensorS = (supplyV - inputV) / (pullOhm * inputV) - inputS;
    return sensorS > 0 ? { ohm: 1 / sensorS } : { fault: 'open' };
  }
  if (inputV === 0) return { fault: 'open' };
  const ohm = (supplyV - inputV) / (inputV * (1 / pullOhm + inputS));
  return ohm > 0 ? { ohm } : { fault: 'short' };
}
