import { type Check, makeCheck, tightestCheck } from '../check/index.js';
import { needAbove, needAtLeast, needBetween, needConductorTempC, needInput } from '../error/guard.js';
import { InputError } from '../error/index.js';
import { type Coil, coilAt, heatedTempC, needCoil } from './coil.js';

export interface RelayPickupInput extends Coil {
  /** Voltage at the relay's feed in V at the worst moment (while cranking, say), above 0. */
  readonly supplyV: number;
  /** Voltage lost in the driver or switch of the coil, in V, at least 0. */
  readonly driverDropV: number;
  /** Resistance of the coil's wires out and back, in Ω, at least 0. */
  readonly wireResistanceOhm: number;
  /** Temperature of the coil in °C: ambient plus its own heating. −60 to 200. This, or the three below. */
  readonly coilTempC?: number;
  /** Air around the relay in °C, −60 to 200. */
  readonly ambientTempC?: number;
  /** Supply in V that has held the coil long enough to warm it, at least 0; 0 for one that was off. */
  readonly heatedByV?: number;
  /** Rise of the coil over the air in K for each W in it, at least 0: 30 to 60 for a small relay. */
  readonly thermalResistanceKPerW?: number;
  /** Most temperature of the coil in °C: judged where given. */
  readonly mostCoilTempC?: number;
}

export interface RelayPickupResult {
  /** Temperature of the coil in °C. */
  readonly coilTempC: number;
  /** How much of it is the coil's own heating, in K; null where the coil's temperature was given. */
  readonly selfHeatingK: number | null;
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
  /** Heat in the coil in W. */
  readonly coilPowerW: number;
  /** Least supply in V at which it pulls in. */
  readonly leastSupplyV: number;
  /** Supply in V at or below which it lets go. */
  readonly dropOutSupplyV: number;
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
 * by as much. Give the coil's temperature, not the air's; or let it be worked out from the air and from the volts that
 * have held the coil: then the worst case, a relay let go for a moment and wanted again while cranking, is seen.
 *
 * $$V_{\mathrm{pick}}(T) = V_{\mathrm{pick}}(T_0)\,\frac{234.5 + T}{234.5 + T_0} \qquad
 * T = T_{\mathrm{amb}} + R_{\mathrm{th}} \frac{(V_h - V_d)^2}{R(T)}$$
 *
 * The wire is left out of the heating: the coil comes out hotter by less than it, on the safe side.
 *
 * @param input supply, what is lost before the coil, the coil's data and its temperature or what warms it
 * @returns volts needed and given, the state, the least supply, checks
 * @throws InputError when a field is missing or out of range, or the coil's temperature is given in both ways or none
 * @source automotive-relay-notes (ratio of copper resistance through −234.5 °C); circuit-theory (self-heating)
 * @example relayPickup({ supplyV: 11, driverDropV: 0.3, wireResistanceOhm: 0.5, coilResistanceOhm: 90, ratedPickUpV: 7.2, ratedDropOutV: 1.6, ratedTempC: 20, coilTempC: 105 }).pickUpV //=> 9.6047
 */
export function relayPickup(input: RelayPickupInput): RelayPickupResult {
  const fn = 'relayPickup';
  needInput(fn, input);
  const { supplyV, driverDropV, wireResistanceOhm, mostCoilTempC } = input;
  needAbove(fn, 'supplyV', supplyV);
  needBetween(fn, 'driverDropV', driverDropV, 0, supplyV);
  needAtLeast(fn, 'wireResistanceOhm', wireResistanceOhm);
  needCoil(fn, input);
  if (mostCoilTempC !== undefined) needConductorTempC(fn, 'mostCoilTempC', mostCoilTempC);
  const { coilTempC, selfHeatingK } = temperature(fn, input);
  const at = coilAt(input, coilTempC, driverDropV, wireResistanceOhm);
  const coilCurrentA = (supplyV - driverDropV) / (at.coilHotOhm + wireResistanceOhm);
  const coilV = coilCurrentA * at.coilHotOhm;
  const checks = [
    makeCheck({
      name: 'pull-in voltage at the hot coil',
      value: coilV,
      limit: at.pickUpV,
      unit: 'V',
      sense: 'atLeast',
      source: 'automotive-relay-notes',
      sourceStatus: 'published',
    }),
  ];
  if (mostCoilTempC !== undefined) {
    checks.push(
      makeCheck({
        name: 'coil temperature',
        value: coilTempC,
        limit: mostCoilTempC,
        unit: '°C',
        sense: 'atMost',
        source: 'given-by-caller',
        sourceStatus: 'derived',
      }),
    );
  }
  return {
    coilTempC,
    selfHeatingK,
    ...at,
    coilV,
    coilCurrentA,
    coilPowerW: coilV * coilCurrentA,
    state: coilV >= at.pickUpV ? 'picks' : coilV > at.dropOutV ? 'holds' : 'drops',
    checks,
    decidedBy: tightestCheck(checks)?.name ?? '',
  };
}

/** The coil's temperature as given, or from what warms it. */
function temperature(fn: string, input: RelayPickupInput): { coilTempC: number; selfHeatingK: number | null } {
  const { coilTempC, ambientTempC, heatedByV, thermalResistanceKPerW, driverDropV } = input;
  const others = [ambientTempC, heatedByV, thermalResistanceKPerW];
  if (others.every((value) => value === undefined)) {
    needBetween(fn, 'coilTempC', coilTempC as number, -60, 200);
    return { coilTempC: coilTempC as number, selfHeatingK: null };
  }
  if (coilTempC !== undefined) {
    const must = 'and what warms the coil must not both be given';
    throw new InputError(fn, 'coilTempC', 'oneOfFields', coilTempC, must);
  }
  needBetween(fn, 'ambientTempC', ambientTempC as number, -60, 200);
  needAtLeast(fn, 'heatedByV', heatedByV as number);
  needBetween(fn, 'heatedByV', heatedByV as number, 0, 1000);
  needBetween(fn, 'thermalResistanceKPerW', thermalResistanceKPerW as number, 0, 1000);
  const heldV = Math.max(0, (heatedByV as number) - driverDropV);
  const hotC = heatedTempC(input, ambientTempC as number, heldV, thermalResistanceKPerW as number);
  return { coilTempC: hotC, selfHeatingK: hotC - (ambientTempC as number) };
}
