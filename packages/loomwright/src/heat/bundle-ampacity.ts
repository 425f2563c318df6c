import { needAbove, needBetween, needInput, needInteger } from '../error/guard.js';
import { ZERO_C_IN_K } from '../unit/index.js';
import { ampacity, type AmpacityInput } from './ampacity.js';
import { bundleConductivity } from './bundle-conductivity.js';
import { pressureRatioAt } from './standard-pressure.js';
import { solveSurfaceK, surfaceWPerM } from './surface.js';
import { insulationKPerWM, needMaxConductorTempC, needWireInAir, zeroOf } from './wire-in-air.js';

export interface BundleAmpacityInput extends AmpacityInput {
  /** Number of equal wires in the bundle, at least 1. */
  readonly wireCount: number;
  /** Share of the bundle's total capacity in use at once, above 0 to 1. */
  readonly loadedFraction: number;
  /** Diameter over the bundle in mm; 1.2 √N wire diameters unless given (common practice). */
  readonly bundleDiameterMm?: number;
}

export interface BundleAmpacityResult {
  /** Current in A that each loaded wire bears. */
  readonly currentA: number;
  /** Current in A that one of the wires bears alone. */
  readonly singleCurrentA: number;
  /** The one over the other, never above 1; null where the air is as hot as the limit. */
  readonly factor: number | null;
  /** Temperature of the bundle's surface in °C. */
  readonly surfaceTempC: number;
  /** Heat given off by a metre of the bundle, in W/m. */
  readonly lossWPerM: number;
  /** Diameter of the bundle used, in mm. */
  readonly bundleDiameterMm: number;
  /** Conductivity across the bundle used, in W/(m·K); null for one wire. */
  readonly bundleConductivityWPerMK: number | null;
  /** `air-at-limit` where the air is already as hot as the limit and the current is 0. */
  readonly reason: 'air-at-limit' | null;
}

/**
 * Current that each wire of a bundle of equal wires bears, by our own heat balance of the bundle.
 *
 * The share in use is taken in the hottest way: so many wires carry the whole current and the rest none, the hottest
 * one lies in the middle, and the heat of the others is spread around it. All heat leaves through one surface, the
 * circle around the bundle, in still air. For a bundle of different wires use `bundleTemperature`.
 *
 * $$T_\mathrm{max} = T_s + q\left[R_i + \frac{\ln(R/a)}{2\pi k}\right]
 * + \frac{(m - 1) q}{2\pi k}\left[\frac12 - \frac{a^2\ln(R/a)}{R^2 - a^2}\right],\qquad m\,q = Q(T_s)$$
 *
 * with $m = \max(1, s N)$ wires' worth of heat, $R$ and $a$ the radii of bundle and wire, $k$ the least conductivity
 * that insulation, metal and still air can have together. Contact between the wires makes it cooler.
 *
 * @param input a wire with its limit, number of wires, share in use
 * @returns current a wire, alone and in the bundle, factor, surface temperature, heat, what was used
 * @throws InputError when a field is missing, out of range or not a known word
 * @source heat-balance; hashin-shtrikman-1962 (conductivity, lower bound); common-practice (diameter 1.2 √N d)
 * @example bundleAmpacity({ wireCount: 8, loadedFraction: 0.6, maxConductorTempC: 105, resistanceOhmPerM: 0.0076, ratedTempC: 20, conductorDiameterMm: 2.1, outerDiameterMm: 3, insulationConductivityWPerMK: 0.17, ambientTempC: 40, altitudeM: 0 }).factor //=> 0.606208
 */
export function bundleAmpacity(input: BundleAmpacityInput): BundleAmpacityResult {
  needInput('bundleAmpacity', input);
  needWireInAir('bundleAmpacity', input);
  const { maxConductorTempC, ambientTempC, outerDiameterMm, wireCount, loadedFraction } = input;
  needMaxConductorTempC('bundleAmpacity', maxConductorTempC, ambientTempC);
  needInteger('bundleAmpacity', 'wireCount', wireCount, 1);
  needBetween('bundleAmpacity', 'wireCount', wireCount, 1, 1000);
  needShare('bundleAmpacity', loadedFraction);
  const bundleDiameterMm =
    input.bundleDiameterMm ?? outerDiameterMm * (wireCount === 1 ? 1 : 1.2 * Math.sqrt(wireCount));
  const least = outerDiameterMm * (wireCount === 1 ? 1 : 1.05 * Math.sqrt(wireCount)) * (1 - 1e-9);
  needBetween('bundleAmpacity', 'bundleDiameterMm', bundleDiameterMm, least, 1000, 'the wires need that much room');

  const ambientK = ambientTempC + ZERO_C_IN_K;
  const limitK = maxConductorTempC + ZERO_C_IN_K;
  const wires = Array.from({ length: wireCount }, () => input);
  const k = wireCount === 1 ? null : bundleConductivity(wires, bundleDiameterMm, ambientK);
  const used = { bundleDiameterMm, bundleConductivityWPerMK: k };
  const { currentA: singleCurrentA } = ampacity(input);
  if (singleCurrentA === 0) {
    const none = { currentA: 0, singleCurrentA, factor: null, surfaceTempC: ambientTempC, lossWPerM: 0 };
    return { ...none, ...used, reason: 'air-at-limit' };
  }
  const heats = Math.max(1, loadedFraction * wireCount);
  let inside = insulationKPerWM(input); // rise of the hottest wire over the surface for 1 W/m in each loaded wire
  if (k !== null) {
    const log = Math.log(bundleDiameterMm / outerDiameterMm);
    const ratio = (bundleDiameterMm / outerDiameterMm) ** 2;
    inside += (log + (heats - 1) * (0.5 - log / (ratio - 1))) / (2 * Math.PI * k);
  }
  const diameterM = bundleDiameterMm / 1000;
  const { emissivity = 0.9, altitudeM } = input;
  const pressureRatio = pressureRatioAt(altitudeM);
  const byMorgan = input.convection === 'morgan';
  let surfaceK = limitK;
  if (inside > 0) {
    surfaceK = solveSurfaceK(
      'bundleAmpacity',
      inside / heats,
      1,
      -limitK,
      ambientK + (limitK - ambientK) / (1 + (inside / heats) * Math.PI * (12 * diameterM + 0.03)),
      limitK,
      ambientK,
      diameterM,
      emissivity,
      pressureRatio,
      byMorgan,
    );
  }
  const lossWPerM = surfaceWPerM(surfaceK, ambientK, diameterM, emissivity, pressureRatio, byMorgan);
  const zero = zeroOf(input.metal);
  const hotOhmPerM = (input.resistanceOhmPerM * (zero + maxConductorTempC)) / (zero + input.ratedTempC);
  // Idle wires widen the surface of a loaded one; we grant nothing for that.
  const currentA = Math.min(singleCurrentA, Math.sqrt(lossWPerM / heats / hotOhmPerM));
  return {
    currentA,
    singleCurrentA,
    factor: currentA / singleCurrentA,
    surfaceTempC: surfaceK - ZERO_C_IN_K,
    lossWPerM,
    ...used,
    reason: null,
  };
}

/** A share in use: above 0 to 1. */
export function needShare(fn: string, loadedFraction: number): void {
  needBetween(fn, 'loadedFraction', loadedFraction, 0, 1, loadedFraction > 1 ? 'is this in per cent?' : '');
  if (loadedFraction === 0) needAbove(fn, 'loadedFraction', loadedFraction);
}
