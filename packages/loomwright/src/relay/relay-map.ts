import { needAtLeast, needBetween, needInput, needList } from '../error/guard.js';
import { type Coil, coilAt, needCoil } from './coil.js';

export interface RelayMapInput extends Coil {
  /** Voltage lost in the driver or switch of the coil, in V, at least 0. */
  readonly driverDropV: number;
  /** Resistance of the coil's wires out and back, in Ω, at least 0. */
  readonly wireResistanceOhm: number;
  /** Supplies in V to be judged, each at least 0. */
  readonly suppliesV: readonly number[];
  /** Coil temperatures in °C to be judged, −60 to 200. */
  readonly coilTempsC: readonly number[];
}

/** The relay at one coil temperature. */
export interface RelayMapRow {
  readonly coilTempC: number;
  /** Supply in V from which it pulls in, and at or below which it lets go. */
  readonly leastSupplyV: number;
  readonly dropOutSupplyV: number;
  /** State at each of the supplies. */
  readonly states: readonly ('picks' | 'holds' | 'drops')[];
}

export interface RelayMapResult {
  readonly rows: readonly RelayMapRow[];
}

/**
 * Where a relay picks up, only holds, or drops: a map over supply and coil temperature.
 *
 * Use it for the picture: what a relay does from a frozen start to a hot one, and down to which volts a relay that is
 * in stays in while the engine is cranked.
 *
 * $$V_{\mathrm{least}}(T) = V_d + V_{\mathrm{pick}}(T) \frac{R(T) + R_{\mathrm{wire}}}{R(T)}$$
 *
 * @param input the coil's data, what is lost before it, supplies and temperatures
 * @returns for each temperature the two boundaries and the state at each supply
 * @throws InputError when a field is missing or out of range
 * @source automotive-relay-notes (ratio of copper resistance through −234.5 °C)
 * @example relayMap({ driverDropV: 0.3, wireResistanceOhm: 0.5, coilResistanceOhm: 90, ratedPickUpV: 7.2, ratedDropOutV: 1.6, ratedTempC: 20, suppliesV: [2, 9, 12], coilTempsC: [105] }).rows[0].states //=> ['drops', 'holds', 'picks']
 */
export function relayMap(input: RelayMapInput): RelayMapResult {
  const fn = 'relayMap';
  needInput(fn, input);
  const { driverDropV, wireResistanceOhm, suppliesV, coilTempsC } = input;
  needAtLeast(fn, 'driverDropV', driverDropV);
  needAtLeast(fn, 'wireResistanceOhm', wireResistanceOhm);
  needCoil(fn, input);
  needList(fn, 'suppliesV', suppliesV, 1);
  suppliesV.forEach((volts, i) => {
    needAtLeast(fn, `suppliesV[${i}]`, volts);
  });
  needList(fn, 'coilTempsC', coilTempsC, 1);
  coilTempsC.forEach((tempC, i) => {
    needBetween(fn, `coilTempsC[${i}]`, tempC, -60, 200);
  });
  return {
    rows: coilTempsC.map((coilTempC) => {
      const { leastSupplyV, dropOutSupplyV } = coilAt(input, coilTempC, driverDropV, wireResistanceOhm);
      const states = suppliesV.map((volts) =>
        volts >= leastSupplyV ? 'picks' : volts > dropOutSupplyV ? 'holds' : 'drops',
      );
      return { coilTempC, leastSupplyV, dropOutSupplyV, states };
    }),
  };
}
