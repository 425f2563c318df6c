import { needAbove, needBetween, needConductorTempC } from '../error/guard.js';

/** What a data sheet says of a relay's coil. */
export interface Coil {
  /** Coil resistance in Ω at `ratedTempC`, above 0. */
  readonly coilResistanceOhm: number;
  /** Voltage in V at which the relay is sure to pull in at `ratedTempC`, above 0. */
  readonly ratedPickUpV: number;
  /** Voltage in V at which it is sure to let go at `ratedTempC`; at least 0 and below `ratedPickUpV`. */
  readonly ratedDropOutV: number;
  /** Temperature in °C for which the three figures hold; 20 or 23 in most data. */
  readonly ratedTempC: number;
}

/** Throws unless the coil's data are whole and in range. */
export function needCoil(fn: string, coil: Coil, at = ''): void {
  needAbove(fn, `${at}coilResistanceOhm`, coil.coilResistanceOhm);
  needAbove(fn, `${at}ratedPickUpV`, coil.ratedPickUpV);
  needBetween(fn, `${at}ratedDropOutV`, coil.ratedDropOutV, 0, coil.ratedPickUpV);
  needConductorTempC(fn, `${at}ratedTempC`, coil.ratedTempC);
}

/** A coil at a temperature, behind a driver and a wire. */
export interface CoilAt {
  readonly coilHotOhm: number;
  readonly pickUpV: number;
  readonly dropOutV: number;
  readonly leastSupplyV: number;
  readonly dropOutSupplyV: number;
}

export function coilAt(coil: Coil, coilTempC: number, driverDropV: number, wireResistanceOhm: number): CoilAt {
  const hot = (234.5 + coilTempC) / (234.5 + coil.ratedTempC);
  const coilHotOhm = coil.coilResistanceOhm * hot;
  const pickUpV = coil.ratedPickUpV * hot;
  const dropOutV = coil.ratedDropOutV * hot;
  const supply = (volts: number): number => driverDropV + (volts * (coilHotOhm + wireResistanceOhm)) / coilHotOhm;
  return { coilHotOhm, pickUpV, dropOutV, leastSupplyV: supply(pickUpV), dropOutSupplyV: supply(dropOutV) };
}

/** The temperature at which a coil's heat, less as it warms, is carried off: the root of u² − (T₀ + Tₐ) u − K = 0. */
export function heatedTempC(coil: Coil, ambientTempC: number, coilV: number, thermalResistanceKPerW: number): number {
  const k = (thermalResistanceKPerW * coilV * coilV * (234.5 + coil.ratedTempC)) / coil.coilResistanceOhm;
  const cold = 234.5 + ambientTempC;
  // Written as the rise, so that a little heat is not lost in a large sum.
  return ambientTempC + (2 * k) / (cold + Math.sqrt(cold * cold + 4 * k));
}
