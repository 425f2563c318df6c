import { needInput } from '../error/guard.js';
import { ZERO_C_IN_K } from '../unit/index.js';
import { pressureRatioAt } from './standard-pressure.js';
import { radiationWPerM, solveSurfaceK, surfaceWPerM } from './surface.js';
import { insulationKPerWM, needMaxConductorTempC, needWireInAir, type WireInAir, zeroOf } from './wire-in-air.js';

export interface AmpacityInput extends WireInAir {
  /** Highest conductor temperature in °C that the insulation bears all day. */
  readonly maxConductorTempC: number;
}

export interface AmpacityResult {
  /** Steady current in A that brings the conductor to its limit; 0 where the air alone does. */
  readonly currentA: number;
  /** Surface temperature at that current, in °C. */
  readonly surfaceTempC: number;
  /** Heat given off by one metre, in W/m. */
  readonly lossWPerM: number;
  /** Of that, given to the air. */
  readonly convectionWPerM: number;
  /** Of that, radiated. */
  readonly radiationWPerM: number;
  /** `air-at-limit` where the air is already as hot as the limit and the current is 0. */
  readonly reason: 'air-at-limit' | null;
}

/**
 * Steady current that a wire bears, alone, level, in still air: the inverse of `conductorTemperature`.
 *
 * Use it for one wire in the open, and multiply by `bundleFactor` in company. Codes set their own limits, which may be
 * lower; a local code and a licensed practitioner decide.
 *
 * $$T_s + R_i Q(T_s) = T_\mathrm{max},\qquad I = \sqrt{\frac{Q(T_s)}{r}\,\frac{T_0 + T_\mathrm{rated}}{T_0 + T_\mathrm{max}}}$$
 *
 * with $Q$ the heat given off at the surface as in `conductorTemperature`, and one root, in $T_s$, found to 10⁻⁶ K.
 *
 * @param input conductor limit, resistance a metre, diameters, insulation, ambient, altitude
 * @returns current in A, surface temperature in °C, heat in W/m and its two ways out
 * @throws InputError when a field is missing, out of range or not a known word
 * @source churchill-chu-1975 or morgan-1975 (convection); uw-mhtl-8406 (air); heat-balance
 * @example ampacity({ maxConductorTempC: 105, resistanceOhmPerM: 0.0076, ratedTempC: 20, conductorDiameterMm: 2.1, outerDiameterMm: 3, insulationConductivityWPerMK: 0.17, ambientTempC: 40, altitudeM: 0 }).currentA //=> 36.7639
 */
export function ampacity(input: AmpacityInput): AmpacityResult {
  needInput('ampacity', input);
  needWireInAir('ampacity', input);
  const { maxConductorTempC, resistanceOhmPerM, ratedTempC, outerDiameterMm, ambientTempC, altitudeM } = input;
  needMaxConductorTempC('ampacity', maxConductorTempC, ambientTempC);
  if (maxConductorTempC <= ambientTempC) {
    const nothing = { lossWPerM: 0, convectionWPerM: 0, radiationWPerM: 0 };
    return { currentA: 0, surfaceTempC: ambientTempC, ...nothing, reason: 'air-at-limit' };
  }
  const { emissivity = 0.9 } = input;
  const byMorgan = input.convection === 'morgan';
  const diameterM = outerDiameterMm / 1000;
  const ambientK = ambientTempC + ZERO_C_IN_K;
  const limitK = maxConductorTempC + ZERO_C_IN_K;
  const pressureRatio = pressureRatioAt(altitudeM);
  const insulation = insulationKPerWM(input);
  let surfaceK = limitK;
  if (insulation > 0) {
    // Begin where a usual conductance of the surface would put it.
    const guessK = ambientK + (limitK - ambientK) / (1 + insulation * Math.PI * (12 * diameterM + 0.03));
    surfaceK = solveSurfaceK(
      'ampacity',
      insulation,
      1,
      -limitK,
      guessK,
      limitK,
      ambientK,
      diameterM,
      emissivity,
      pressureRatio,
      byMorgan,
    );
  }
  const radiation = radiationWPerM(surfaceK, ambientK, diameterM, emissivity);
  const convection = surfaceWPerM(surfaceK, ambientK, diameterM, 0, pressureRatio, byMorgan);
  const zero = zeroOf(input.metal);
  const hotOhmPerM = (resistanceOhmPerM * (zero + maxConductorTempC)) / (zero + ratedTempC);
  return {
    currentA: Math.sqrt((convection + radiation) / hotOhmPerM),
    surfaceTempC: surfaceK - ZERO_C_IN_K,
    lossWPerM: convection + radiation,
    convectionWPerM: convection,
    radiationWPerM: radiation,
    reason: null,
  };
}
