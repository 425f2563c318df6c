import { needAbove, needBetween } from '../error/guard.js';
import { ZERO_C_IN_K } from '../unit/index.js';
import { pressureRatioAt } from './standard-pressure.js';
import { surfaceWPerM } from './surface.js';
import { insulationKPerWM, needWireInAir, type WireInAir, zeroOf } from './wire-in-air.js';

/** A single wire in still air with what it takes to warm it. */
export interface WireInTime extends WireInAir {
  /** Area of the metal in mm², above 0 and no more than the conductor's circle. */
  readonly areaMm2: number;
  /** Heat that the insulation takes, in J/(cm³·K), 0.1 to 10; required unless bare. PVC about 1.7. */
  readonly insulationHeatJPerCm3K?: number;
}

/** Heat that the metals take, in J/(K·mm³) (IEC 60949 table I, from memory). */
const METAL_HEAT = { copper: 3.45e-3, 'tinned-copper': 3.45e-3, aluminium: 2.5e-3 } as const;

/** Throws unless the wire is whole. */
export function needWireInTime(fn: string, wire: WireInTime): void {
  needWireInAir(fn, wire);
  const { areaMm2, conductorDiameterMm, outerDiameterMm, insulationHeatJPerCm3K } = wire;
  needAbove(fn, 'areaMm2', areaMm2);
  const circle = (Math.PI / 4) * conductorDiameterMm * conductorDiameterMm;
  needBetween(fn, 'areaMm2', areaMm2, 0, circle * (1 + 1e-3), 'it must fit into the conductor diameter');
  if (insulationHeatJPerCm3K !== undefined || outerDiameterMm > conductorDiameterMm) {
    needBetween(fn, 'insulationHeatJPerCm3K', insulationHeatJPerCm3K as number, 0.1, 10);
  }
}

/** A metre of wire as a chain: the conductor, then shells of insulation out to the surface. */
export interface Lumps {
  /** Heat of the metal alone, in J/(K·m). */
  readonly metal: number;
  /** Heat of each place of the chain in J/(K·m), the conductor first and the surface last; one place where bare. */
  readonly heats: readonly number[];
  /** Thermal resistance between neighbouring places in K·m/W, the same for each. */
  readonly between: number;
  /** Thermal resistance of the whole insulation in K·m/W. */
  readonly insulation: number;
  /** Electrical resistance of a metre over (T0 + T), in Ω/(m·K). */
  readonly ohmPerMK: number;
  /** T0: the inferred zero-resistance temperature in °C below zero. */
  readonly zero: number;
  /** Heat given off in W/m by a surface at a temperature in °C. */
  readonly surface: (tempC: number) => number;
}

/** Shells of insulation. One would let the cover help the copper too early; more than four change little. */
const SHELLS = 4;

/**
 * Lumps of a wire. The insulation is cut into shells of equal thermal resistance, and the heat of each is shared
 * between its two faces as IEC 60853-2 does (van Wormer): p = 1/(2 ln x) − 1/(x² − 1) to the inner one, with x the
 * ratio of its radii.
 */
export function lumpsOf(wire: WireInTime): Lumps {
  const { metal = 'copper', conductorDiameterMm: d, outerDiameterMm, emissivity = 0.9, convection } = wire;
  const metalHeat = METAL_HEAT[metal] * wire.areaMm2 * 1000;
  const insulation = insulationKPerWM(wire);
  const heats = [metalHeat];
  if (insulation > 0) {
    const x = (outerDiameterMm / d) ** (1 / SHELLS);
    const p = 1 / (2 * Math.log(x)) - 1 / (x * x - 1);
    for (let i = 0; i < SHELLS; i++) {
      const inside = d * x ** i;
      const heat = (Math.PI / 4) * inside * inside * (x * x - 1) * (wire.insulationHeatJPerCm3K as number);
      heats[i] = (heats[i] as number) + p * heat;
      heats.push((1 - p) * heat);
    }
  }
  const zero = zeroOf(metal);
  const ambientK = wire.ambientTempC + ZERO_C_IN_K;
  const pressureRatio = pressureRatioAt(wire.altitudeM);
  const byMorgan = convection === 'morgan';
  return {
    metal: metalHeat,
    heats,
    between: insulation / SHELLS,
    insulation,
    ohmPerMK: wire.resistanceOhmPerM / (zero + wire.ratedTempC),
    zero,
    surface: (tempC) =>
      surfaceWPerM(tempC + ZERO_C_IN_K, ambientK, outerDiameterMm / 1000, emissivity, pressureRatio, byMorgan),
  };
}

/** Rates of change of the temperatures along the chain at a current. */
export function ratesOf(lumps: Lumps, currentA: number): (y: Float64Array, out: Float64Array) => void {
  const { heats, between, ohmPerMK, zero, surface } = lumps;
  const s = currentA * currentA * ohmPerMK;
  const last = heats.length - 1;
  return (y, out) => {
    let flow = s * (zero + (y[0] as number)); // heat into each place from inside
    for (let i = 0; i < last; i++) {
      const on = ((y[i] as number) - (y[i + 1] as number)) / between;
      out[i] = (flow - on) / (heats[i] as number);
      flow = on;
    }
    out[last] = (flow - surface(y[last] as number)) / (heats[last] as number);
  };
}
