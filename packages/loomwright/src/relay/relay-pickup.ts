import { type Check, makeCheck } from '../check/index.js';
import { needAbove, needAtLeast, needBetween, needConductorTempC, needInput } from '../error/guard.js';

export interface RelayPickupInput {
  /** Voltage at the relay's feed in V at the worst moment (while cranking, say), above 0. */
  readonly supplyV: number;
  /** Voltage lost in the driver or switch of the coil, in V, at least 0. */
  readonly driverDropV: number;
  /** Resistance of the coil's wires out and back, in Ω, at least 0. */
  readonly wireResistanceOhm: number;
  /** Coil resistance in Ω at `ratedTempC`, above 0. */
  readonly coilResistanceOhm: number;
  /** Voltage in V at which the relay is sure to pull in at `ratedTempC`, above 0. */
  readonly ratedPickUpV: number;
  /** Voltage in V at which it is sure to let go at `ratedTempC`; at least 0 and below `ratedPickUpV`. */
  readonly ratedDropOutV: number;
  /** Temperature in °C for which the three figures hold; 20 or 23 in most data. */
  readonly ratedTempC: number;
  /** Temperature of the coil in °C: ambient plus its own heating. −60 to 200. */
  readonly coilTempC: number;
}

export interface RelayPickupResult {
  /** Voltage needed at the hot coil to pull in, in V. */
  readonly pickUpV: number;
  /** Voltage at the hot coil at which it lets go, in V. */
  readonly dropOutV: number;
  /** Coil resistance hot, in Ω. */
  readonly coilHotOhm: number;
  /** Voltage that the coil gets, in V. */
  readonly coilV: number;
  /** Coil current in A. */
  readonly coilCurrentA: number;
  /** Least supply in V at which it pulls in. */
  readonly leastSupplyV: number;
  /** `picks` up, only `holds` if it was already in, or `drops`. */
  readonly state: 'picks' | 'holds' | 'drops';
  readonly checks: readonly Check[];
  /** The check with the least room. */
  readonly decidedBy: string;
}

/**
 * Whether a relay pulls in with its coil hot and its supply low.
 *
 * A coil pulls by its current. Its copper gains about 4 % resistance every 10 K, so the voltage that it needs rises
 * by as much. Give the coil's temperature, not the air's: a coil held in for long is 30 to 60 K hotter.
 *
 * $$V_{\mathrm{pick}}(T) = V_{\mathrm{pick}}(T_0)\,\frac{234.5 + T}{234.5 + T_0}$$
 *
 * @param input supply, what is lost before the coil, the coil's data and its temperature
 * @returns volts needed and given, the state, the least supply, checks
 * @throws InputError when a field is missing or out of range
 * @source automotive-relay-notes (ratio of copper resistance through −234.5 °C)
 * @example relayPickup({ supplyV: 11, driverDropV: 0.3, wireResistanceOhm: 0.5, coilResistanceOhm: 90, ratedPickUpV: 7.2, ratedDropOutV: 1.6, ratedTempC: 20, coilTempC: 105 }).pickUpV //=> 9.6047
 */
export function relayPickup(input: RelayPickupInput): RelayPickupResult {
  needInput('relayPickup', input);
  const { supplyV, driverDropV, wireResistanceOhm, coilResistanceOhm } = input;
  const { ratedPickUpV, ratedDropOutV, ratedTempC, coilTempC } = input;
  needAbove('relayPickup', 'supplyV', supplyV);
  needBetween('relayPickup', 'driverDropV', driverDropV, 0, supplyV);
  needAtLeast('relayPickup', 'wireResistanceOhm', wireResistanceOhm);
  needAbove('relayPickup', 'coilResistanceOhm', coilResistanceOhm);
  needAbove('relayPickup', 'ratedPickUpV', ratedPickUpV);
  needBetween('relayPickup', 'ratedDropOutV', ratedDropOutV, 0, ratedPickUpV);
  needConductorTempC('relayPickup', 'ratedTempC', ratedTempC);
  needBetween('relayPickup', 'coilTempC', coilTempC, -60, 200);
  const hot = (234.5 + coilTempC) / (234.5 + ratedTempC);
  const coilHotOhm = coilResistanceOhm * hot;
  const pickUpV = ratedPickUpV * hot;
  const dropOutV = ratedDropOutV * hot;
  const coilCurrentA = (supplyV - driverDropV) / (coilHotOhm + wireResistanceOhm);
  const coilV = coilCurrentA * coilHotOhm;
  const checks = [
    makeCheck({
      name: 'pull-in voltage at the hot coil',
      value: coilV,
      limit: pickUpV,
      unit: 'V',
      sense: 'atLeast',
      source: 'automotive-relay-notes',
      sourceStatus: 'published',
    }),
  ];
  return {
    pickUpV,
    dropOutV,
    coilHotOhm,
    coilV,
    coilCurrentA,
    leastSupplyV: driverDropV + (pickUpV * (coilHotOhm + wireResistanceOhm)) / coilHotOhm,
    state: coilV >= pickUpV ? 'picks' : coilV > dropOutV ? 'holds' : 'drops',
    checks,
    decidedBy: 'pull-in voltage at the hot coil',
  };
}
