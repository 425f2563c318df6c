import { needAtLeast, needInput } from '../error/guard.js';
import { ZERO_C_IN_K } from '../unit/index.js';
import { pressureRatioAt } from './standard-pressure.js';
import { convectionWPerM, hottestSurfaceK, nusseltOf, radiationWPerM, rayleighOf, solveSurfaceK } from './surface.js';
import {
  HOTTEST_C,
  insulationKPerWM,
  needWireInAir,
  type NoTemperature,
  type WireInAir,
  zeroOf,
} from './wire-in-air.js';

export interface ConductorTemperatureInput extends WireInAir {
  /** Steady current in A, at least 0: the r.m.s. value where it changes fast. */
  readonly currentA: number;
}

export interface ConductorTemperatureResult {
  /** Temperature of the conductor in °C, or null where `reason` says why there is none. */
  readonly conductorTempC: number | null;
  /** Temperature of the surface in °C, or null. */
  readonly surfaceTempC: number | null;
  /** Heat made and given off by one metre, in W/m, or null. */
  readonly lossWPerM: number | null;
  /** Of that, given to the air. */
  readonly convectionWPerM: number | null;
  /** Of that, radiated. */
  readonly radiationWPerM: number | null;
  /** Rayleigh number of the wire's diameter, or null. */
  readonly rayleigh: number | null;
  /** Nusselt number, or null. */
  readonly nusselt: number | null;
  /**
   * Why there is no temperature. `beyond-air-data`: the air film would pass 227 °C or the conductor 400 °C.
   * `runs-away`: the insulation's own resistance to heat makes every balance impossible. Both are far above what
   * an insulation bears.
   */
  readonly reason: NoTemperature | null;
}

/**
 * Steady temperature of a wire that carries a current, alone, level, in still air.
 *
 * Use it for one wire in the open. In a bundle, a sleeve or a conduit it runs hotter: see `bundleFactor` and
 * `bundleTemperature`. A wind or contact with metal makes it cooler. For how long a wire takes see `timeToTemperature`.
 *
 * $$I^2 r\,\frac{T_0 + T_c}{T_0 + T_\mathrm{rated}} = \frac{2\pi k_i (T_c - T_s)}{\ln(D/d)}
 * = \pi k\,\mathrm{Nu}\,(T_s - T_a) + \pi D \varepsilon\sigma (T_s^4 - T_a^4)$$
 *
 * Nu from `nusseltHorizontalCylinder`, the air by `airProperties` at the mean of $T_s$ and $T_a$. The surface
 * temperature is found to 10⁻⁶ K. Against measurements such a balance is good to about 10 % of the rise.
 *
 * @param input current, resistance a metre, diameters, insulation, ambient, altitude
 * @returns temperatures in °C, heat in W/m and its two ways out; null with a reason where there is no balance
 * @throws InputError when a field is missing, out of range or not a known word
 * @source churchill-chu-1975 or morgan-1975 (convection); uw-mhtl-8406 (air); heat-balance
 * @example conductorTemperature({ currentA: 15, resistanceOhmPerM: 0.0076, ratedTempC: 20, conductorDiameterMm: 2.1, outerDiameterMm: 3, insulationConductivityWPerMK: 0.17, ambientTempC: 40, altitudeM: 0 }).conductorTempC //=> 51.7245
 */
export function conductorTemperature(input: ConductorTemperatureInput): ConductorTemperatureResult {
  needInput('conductorTemperature', input);
  needAtLeast('conductorTemperature', 'currentA', input.currentA);
  needWireInAir('conductorTemperature', input);
  const { currentA, resistanceOhmPerM, ratedTempC, outerDiameterMm, ambientTempC, altitudeM, emissivity = 0.9 } = input;
  const byMorgan = input.convection === 'morgan';
  const diameterM = outerDiameterMm / 1000;
  const ambientK = ambientTempC + ZERO_C_IN_K;
  const pressureRatio = pressureRatioAt(altitudeM);
  const zero = zeroOf(input.metal);
  const insulation = insulationKPerWM(input);
  // Heat a metre is s (T0 + Tc), with Tc = Ts + Q Ri: so Q (1 - s Ri) - s (T0 + Ts) = 0 in the surface temperature.
  const s = (currentA * currentA * resistanceOhmPerM) / (zero + ratedTempC);
  const a = 1 - s * insulation;
  if (!(a > 0)) return none('runs-away');
  let surfaceK = ambientK;
  if (s > 0) {
    const guess = (s * (zero + ambientTempC)) / (Math.PI * (9 * diameterM + 0.02));
    const c = -s * (zero - ZERO_C_IN_K);
    const most = hottestSurfaceK(ambientK);
    surfaceK = solveSurfaceK(
      'conductorTemperature',
      a,
      -s,
      c,
      ambientK + guess,
      most,
      ambientK,
      diameterM,
      emissivity,
      pressureRatio,
      byMorgan,
    );
    if (surfaceK !== surfaceK) return none('beyond-air-data');
  }
  const rayleigh = rayleighOf(surfaceK, ambientK, diameterM, pressureRatio);
  const nusselt = nusseltOf(rayleigh, 0.5 * (surfaceK + ambientK), byMorgan);
  const convection = convectionWPerM(nusselt, surfaceK, ambientK);
  const radiation = radiationWPerM(surfaceK, ambientK, diameterM, emissivity);
  const surfaceTempC = s > 0 ? surfaceK - ZERO_C_IN_K : ambientTempC;
  const conductorTempC = surfaceTempC + (convection + radiation) * insulation;
  if (conductorTempC > HOTTEST_C) return none('beyond-air-data');
  return {
    conductorTempC,
    surfaceTempC,
    lossWPerM: convection + radiation,
    convectionWPerM: convection,
    radiationWPerM: radiation,
    rayleigh,
    nusselt,
    reason: null,
  };
}

/** The answer where there is none. */
function none(reason: NoTemperature): ConductorTemperatureResult {
  return {
    conductorTempC: null,
    surfaceTempC: null,
    lossWPerM: null,
    convectionWPerM: null,
    radiationWPerM: null,
    rayleigh: null,
    nusselt: null,
    reason,
  };
}
